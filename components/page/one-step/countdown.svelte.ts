/** A wait at the iron: it counts down by the clock, so that a screen that slept does not make it longer. */

/** In ms. */
const LOOK = 200;

export class Countdown {
  /** Whole seconds left; undefined while nothing is waited for. */
  left: number | undefined = $state();
  /** It has run out and nobody has taken notice yet. */
  isOver = $state(false);
  #until = 0;
  #looking: ReturnType<typeof setInterval> | undefined;

  /** @param seconds above 0 */
  start(seconds: number): void {
    this.stop();
    this.#until = Date.now() + seconds * 1000;
    this.#looking = setInterval(() => this.#look(), LOOK);
    this.#look();
  }

  stop(): void {
    clearInterval(this.#looking);
    this.left = undefined;
    this.isOver = false;
  }

  #look(): void {
    const left = Math.ceil((this.#until - Date.now()) / 1000);
    if (left > 0) {
      this.left = left;
      return;
    }
    this.stop();
    this.isOver = true;
    sound();
  }
}

/** A short tone and a buzz, where the device has them: the eyes are at the iron. */
function sound(): void {
  try {
    navigator.vibrate?.([200, 100, 200]);
    const audio = new AudioContext();
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    loud.gain.value = 0.2;
    tone.frequency.value = 880;
    tone.connect(loud).connect(audio.destination);
    tone.onended = () => void audio.close();
    tone.start();
    tone.stop(audio.currentTime + 0.6);
  } catch {
    // A device without a loudspeaker: the screen says it as well.
  }
}
