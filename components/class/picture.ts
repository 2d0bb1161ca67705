/** Reads the QR code in a picture: a screenshot that a learner sent, or a photo of their screen. */
import decodeQR from 'qr/decode.js';

/** In pixels. More says nothing more of a code, and takes long. */
const LONGEST = 2000;
/** In ms; a picture that has no code is searched for so long. */
const MOST_TIME = 1500;

/** The text of the code; undefined where none can be read, or where the file is no picture after all. */
export async function readPicture(file: Blob): Promise<string | undefined> {
  try {
    const picture = await createImageBitmap(file);
    const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
    const [width, height] = [picture.width, picture.height].map((side) => Math.max(1, Math.round(side * scale)));
    const context = new OffscreenCanvas(width!, height!).getContext('2d', { willReadFrequently: true });
    if (!context) return undefined;
    // What is clear in a picture is paper.
    context.fillStyle = '#fff';
    context.fillRect(0, 0, width!, height!);
    context.drawImage(picture, 0, 0, width!, height!);
    picture.close();
    return decodeQR(context.getImageData(0, 0, width!, height!), { effort: Infinity, timeLimit: MOST_TIME });
  } catch {
    return undefined;
  }
}
