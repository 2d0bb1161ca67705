/**
 * Reading aloud, by a voice that lives on this device alone: others would send the text to a host. Nothing is ever
 * listened to.
 */
export class ReadAloud {
  #voice: SpeechSynthesisVoice | undefined = $state.raw();
  /** Whether each step is read as it comes. */
  isOn = $state(false);

  /** Begins to look for voices; call in an effect. Returns the way to stop. */
  follow(): () => void {
    const speech = synthesis();
    if (!speech) return () => {};
    const look = () => (this.#voice = ownVoice(speech.getVoices(), document.documentElement.lang));
    look();
    // Browsers find their voices after a while.
    speech.addEventListener('voiceschanged', look);
    return () => {
      speech.removeEventListener('voiceschanged', look);
      this.stop();
    };
  }

  /** Whether there is a voice. */
  get can(): boolean {
    return this.#voice !== undefined;
  }

  read(text: string): void {
    const speech = synthesis();
    if (!speech || !this.#voice) return;
    speech.cancel();
    const said = new SpeechSynthesisUtterance(text);
    // Always named: what a browser takes by itself may be a voice of some host.
    said.voice = this.#voice;
    said.lang = this.#voice.lang;
    speech.speak(said);
  }

  stop(): void {
    this.isOn = false;
    synthesis()?.cancel();
  }
}

const synthesis = (): SpeechSynthesis | undefined => ('speechSynthesis' in globalThis ? speechSynthesis : undefined);

/**
 * A voice of this device that speaks the language of the page: one of the very same country first.
 *
 * @param language a tag such as en-GB
 */
export function ownVoice(voices: readonly SpeechSynthesisVoice[], language: string): SpeechSynthesisVoice | undefined {
  // Android writes en_GB.
  const tagOf = (tag: string) => tag.replace('_', '-').toLowerCase();
  const [wanted, family] = [tagOf(language), tagOf(language).split('-')[0]!];
  const own = voices.filter(({ localService, lang }) => localService === true && tagOf(lang).split('-')[0] === family);
  return own.find(({ lang }) => tagOf(lang) === wanted) ?? own.find((voice) => voice.default) ?? own[0];
}
