import type { MendedWord, MendResult, SaidState } from './messages.ts';

const SILENT = 'npm start does not answer. Is it still running?';

/** What is said in the recordings of a project, and which of its words are put right. */
export class SaidClient {
  readonly #address: string;
  #state = $state.raw<SaidState>({ recordings: [] });
  /** For screen readers, and for everyone above the list. */
  message = $state('');
  /** While a word is being written. */
  isBusy = $state(false);

  constructor(address: string) {
    this.#address = address;
  }

  get recordings(): SaidState['recordings'] {
    return this.#state.recordings;
  }

  async read(): Promise<void> {
    const answer = await fetch(this.#address).catch(() => undefined);
    if (answer?.ok) this.#state = (await answer.json()) as SaidState;
  }

  /** Puts a word into the list of its course. */
  async accept(word: MendedWord): Promise<void> {
    if (this.isBusy) return;
    this.isBusy = true;
    const answer = await this.#send(word);
    this.isBusy = false;
    if (answer.kind === 'refused') {
      this.message = `Not written. ${answer.message} ${answer.fix ?? ''}`.trim();
      return;
    }
    this.message = `Written to line ${answer.line} of ${answer.file}: “${word.heard}” is “${word.meant}” in every recording of the course.`;
    if (answer.said) this.#state = answer.said;
  }

  async #send(word: MendedWord): Promise<MendResult> {
    try {
      const response = await fetch(this.#address, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(word),
      });
      if (response.ok) return (await response.json()) as MendResult;
      const { message } = (await response.json()) as { message: string };
      return { kind: 'refused', message };
    } catch {
      return { kind: 'refused', message: SILENT };
    }
  }
}
