/** A question that asks for a size: what was typed, what came of it, and how it stands at the learner's size now. */
import { SAME, type Edition, type Quantity } from '../../../src/core/index.ts';
import { asRecord, keep, recall } from '../../keep.ts';
import { showQuantity, valueOf, type Learner } from '../../learner.svelte.ts';
import { isRight, ONE_MARK, readAnswer, readTolerance } from './answer.ts';

export type Question = { of: string; tolerance?: string; hint?: string; id?: string };

/**
 * `open`: not checked yet. `unread`: it could not be judged, which costs nothing. `again`: the first try was wrong.
 * `wrong`: the second was. `moved`: it was judged at another size. `away`: an option leaves out what is asked.
 */
export type Standing = 'open' | 'unread' | 'right' | 'again' | 'wrong' | 'moved' | 'away';

/** An answer that was judged, and what was wanted then. In mm, or a number. */
type Checked = { text: string; value: number; wanted: number; edition: Edition };

/** Told to the page when an answer was judged; the lesson's tape marks the step as done. */
export const ANSWERED = 'course-kit:answered';

export class AskedSize {
  readonly #learner: Learner;
  readonly #question: Question;
  #text = $state('');
  #checked = $state<Checked>();
  #tries = $state(0);
  #unread = $state<string>();
  solutionShown = $state(false);

  constructor(learner: Learner, question: Question) {
    this.#learner = learner;
    this.#question = question;
    this.#recall();
  }

  get text(): string {
    return this.#text;
  }

  get hint(): string | undefined {
    return this.#tries > 0 && this.standing !== 'right' ? this.#question.hint : undefined;
  }

  /** The worked solution is there for whoever has tried twice, or is right. */
  get solutionOffered(): boolean {
    return this.#tries > 1 || this.standing === 'right';
  }

  readonly wanted: Quantity | undefined = $derived.by(() => valueOf(this.#question.of, this.#learner.pattern));

  readonly standing: Standing = $derived.by(() => {
    const { wanted } = this;
    if (!wanted) return 'away';
    if (this.#unread !== undefined) return 'unread';
    const checked = this.#checked;
    if (!checked || checked.text !== this.#text) return 'open';
    const moved = Math.abs(checked.wanted - wanted.value) > SAME;
    if (this.#isRight(checked.value, wanted)) {
      const before = this.#isRight(checked.value, { ...wanted, value: checked.wanted });
      return before || !moved ? 'right' : 'moved';
    }
    if (moved) return 'moved';
    return this.#tries > 1 ? 'wrong' : 'again';
  });

  /** What stands beside the answer, in one or two sentences. */
  readonly feedback: string = $derived.by(() => {
    const checked = this.#checked;
    switch (this.standing) {
      case 'open':
        return '';
      case 'unread':
        return this.#unread ?? '';
      case 'away':
        return 'A feature of your project leaves this out. Take it in again, and the question is back.';
      case 'moved':
        return `${checked?.edition === this.#learner.edition ? 'Your size changed' : 'The edition changed'}: the answer is now different. Work it out again.`;
      case 'right': {
        const near = checked && this.wanted && Math.abs(checked.value - this.wanted.value) > SAME;
        return near
          ? `Right. It is ${this.#show(this.wanted?.value)}; yours is near enough.`
          : `Right, ${this.#show(checked?.value)}.`;
      }
      case 'again':
        return `Not yet: ${this.#show(checked?.value)} is ${this.#way}. Try once more.`;
      case 'wrong':
        return `Not this time: ${this.#show(checked?.value)} is ${this.#way}. The worked solution shows the way.`;
    }
  });

  type(text: string): void {
    this.#text = text;
    this.#unread = undefined;
    this.#keep();
  }

  check(): void {
    const { wanted } = this;
    if (!wanted) return;
    const read = readAnswer(this.#text, wanted, this.#learner.edition);
    this.#unread = read.ok ? undefined : read.sentence;
    if (!read.ok) return;
    if (this.#checked && Math.abs(this.#checked.wanted - wanted.value) > SAME) this.#tries = 0;
    // The same answer checked twice is one try.
    const repeated = this.#tries > 0 && this.#checked?.value === read.value;
    this.#checked = { text: this.#text, value: read.value, wanted: wanted.value, edition: this.#learner.edition };
    if (!repeated) this.#tries += 1;
    this.#keep();
    document.dispatchEvent(new CustomEvent(ANSWERED));
  }

  get #way(): string {
    return (this.#checked?.value ?? 0) > (this.wanted?.value ?? 0) ? 'too much' : 'too little';
  }

  #isRight(value: number, wanted: Quantity): boolean {
    const { edition, project } = this.#learner;
    const written = this.#question.tolerance;
    const tolerance = (written && readTolerance(written, project.edition)) || ONE_MARK;
    return isRight(value, wanted, tolerance[edition]);
  }

  #show(value = 0): string {
    return showQuantity({ value, dimension: this.wanted?.dimension ?? 1 }, this.#learner.pattern);
  }

  get #key(): string {
    return `answer:${location.pathname}#${this.#question.id ?? this.#question.of}`;
  }

  #keep(): void {
    const { text, tries, checked } = { text: this.#text, tries: this.#tries, checked: $state.snapshot(this.#checked) };
    keep(this.#key, text === '' && tries === 0 ? undefined : { text, tries, checked });
  }

  #recall(): void {
    if (typeof document === 'undefined') return;
    const kept = recall(this.#key, asRecord);
    if (typeof kept?.text !== 'string') return;
    this.#text = kept.text;
    this.#checked = asChecked(kept.checked);
    if (this.#checked && typeof kept.tries === 'number' && kept.tries > 0) this.#tries = kept.tries;
  }
}

function asChecked(kept: unknown): Checked | undefined {
  const { text, value, wanted, edition } = asRecord(kept) ?? {};
  if (typeof text !== 'string' || typeof value !== 'number' || typeof wanted !== 'number') return undefined;
  return edition === 'inch' || edition === 'metric' ? { text, value, wanted, edition } : undefined;
}
