/** Reads QR codes with a camera, one after the other, for as long as somebody wants. */
import decodeQR from 'qr/decode.js';

/** In pixels: a code that fills half of the picture is read well, and quickly. */
const LONGEST = 1000;
/** In ms: between two looks, and for one. */
const [PAUSE, MOST_TIME] = [150, 400];

/** Why there is no picture, in a sentence. */
export type CameraTrouble = string;

/**
 * Shows the camera's picture in `video` and tells each code once, until `signal` ends it. Nothing of the picture is kept.
 *
 * @param started is called once there is a picture
 * @returns why there is no picture; undefined once it was ended
 */
export async function readByCamera(
  video: HTMLVideoElement,
  signal: AbortSignal,
  found: (text: string) => void,
  started: () => void,
): Promise<CameraTrouble | undefined> {
  let stream: MediaStream;
  try {
    if (!('mediaDevices' in navigator)) return NONE;
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
  } catch (cause) {
    return troubleIn(cause);
  }
  try {
    video.srcObject = stream;
    await video.play();
    started();
    const told = new Set<string>();
    while (!signal.aborted) {
      const text = codeIn(video);
      if (text !== undefined && !told.has(text)) {
        told.add(text);
        found(text);
      }
      if (stream.getVideoTracks().every(({ readyState }) => readyState === 'ended')) return GONE;
      await new Promise((done) => setTimeout(done, PAUSE));
    }
    return undefined;
  } catch (cause) {
    return signal.aborted ? undefined : troubleIn(cause);
  } finally {
    for (const track of stream.getTracks()) track.stop();
    video.srcObject = null;
  }
}

const OTHERWISE = 'Open a photo or a screenshot of the code as a file instead, or paste it.';
const NONE = `This browser gives the page no camera. ${OTHERWISE}`;
const GONE = `The camera was switched off. ${OTHERWISE}`;

function troubleIn(cause: unknown): CameraTrouble {
  const name = cause instanceof DOMException ? cause.name : '';
  if (name === 'NotAllowedError') {
    return `The camera may not be used here. Allow it in your browser and press the button again. ${OTHERWISE}`;
  }
  if (name === 'NotFoundError' || name === 'OverconstrainedError') return `No camera was found. ${OTHERWISE}`;
  return `The camera does not start; another program may be using it. ${OTHERWISE}`;
}

/** The text of a code in the picture at this moment. */
function codeIn(video: HTMLVideoElement): string | undefined {
  const { videoWidth, videoHeight } = video;
  if (videoWidth === 0 || videoHeight === 0) return undefined;
  const scale = Math.min(1, LONGEST / Math.max(videoWidth, videoHeight));
  const [width, height] = [videoWidth, videoHeight].map((side) => Math.max(1, Math.round(side * scale)));
  const context = new OffscreenCanvas(width!, height!).getContext('2d', { willReadFrequently: true });
  if (!context) return undefined;
  context.drawImage(video, 0, 0, width!, height!);
  try {
    return decodeQR(context.getImageData(0, 0, width!, height!), { timeLimit: MOST_TIME });
  } catch {
    return undefined;
  }
}
