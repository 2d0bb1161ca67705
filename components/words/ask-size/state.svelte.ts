/** A question that asks for a size: what was typed, what came of it, and how it stands at the learner's size now. */
import { inText, SAME, type Edition, type Judgement, type Quantity } from '../../../src/core/index.ts';
import { asRecord } from '../../page/storage.ts';
import { type Learner } from '../../page/learner.svelte.ts';
import { valueOf } from '../../page/quantity.ts';
import { Attempt, type AttemptStatus } from '../../ui/question/attempt.svelte.ts';

/** As an author writes it. */
export type SizeQuestionFields = {
  of: string;
  tolerance?: string | undefined;
  hint?: string | undefined;
  id?: string | undefined;
  /** Wrong sums the author expects, and what to say to each. */
  slips?: Record<string, string> | undefined;
  /** Other sentences for slips, by key or kind. */
  reword?: Record<string, string> | undefined;
  /** Keys or kinds of slips that are not thought of here. */
  forbid?: string[] | undefined;
};

/** What must be known of a judged answer: in mm, mm² or a number, and what was said to it. */
type Note = { value: number; wanted: number; edition: Edition; sentence: string };

type Judging = typeof import('../../ui/question/judging.ts');

export class SizeQuestion {
  readonly attempt: Attempt<string, Note>;
  readonly #learner: Learner;
  readonly #written: SizeQuestionFields;
  #judging = $state.raw<Judging>();
  #unread = $state<string>();
  #hintsAskedFor = $state(1);
  solutionShown = $state(false);

  constructor(learner: Learner, written: SizeQuestionFields) {
    this.#learner = learner;
    this.#written = written;
    this.attempt = new Attempt({ name: written.id ?? written.of, blank: '', readGiven: asText, readNote });
  }

  /** Fetches what judges. A page does so when an answer is begun, so that the first check need not wait. */
  async prepare(): Promise<Judging | undefined> {
    try {
      return (this.#judging ??= await import('../../ui/question/judging.ts'));
    } catch {
      return undefined;
    }
  }

  readonly wanted: Quantity | undefined = $derived.by(() => valueOf(this.#written.of, this.#learner.settledPattern));

  /** Judged at another size, so that it must be seen whether it is still right. */
  readonly moved: boolean = $derived.by(() => {
    const note = this.attempt.current?.note;
    return note !== undefined && this.wanted !== undefined && Math.abs(note.wanted - this.wanted.value) > SAME;
  });

  /** An answer stands there that was judged and is not right. */
  get isWrong(): boolean {
    return this.attempt.current?.right === false;
  }

  readonly status: AttemptStatus = $derived.by(() => {
    if (!this.wanted) return 'away';
    if (this.#unread !== undefined) return 'unread';
    const { current } = this.attempt;
    if (!current || !this.moved) return this.attempt.status;
    return current.right && this.#judged(inUnits(current.note.value, this.wanted))?.verdict === 'right'
      ? 'right'
      : 'moved';
  });

  /** What stands beside the answer, in one or two sentences. */
  readonly feedback: string = $derived.by(() => {
    const said = this.attempt.current?.note;
    switch (this.status) {
      case 'open':
        return '';
      case 'unread':
        return this.#unread ?? '';
      case 'away':
        return 'A feature of your project leaves this out. Take it in again, and the question is back.';
      case 'moved':
        return `${said?.edition === this.#learner.edition ? 'Your size changed' : 'The edition changed'}: the answer is now different. Work it out again.`;
      case 'again':
        return `${this.#saidNow} Try once more.`;
      case 'wrong':
        return `${this.#saidNow} The worked solution shows the way.`;
      case 'right':
        return this.moved ? this.#saidNow : (said?.sentence ?? '');
    }
  });

  /** What is said to the answer at the learner's size now: its sentence may hold sizes that no answer depends on. */
  readonly #saidNow: string = $derived.by(() => {
    const said = this.attempt.current?.note;
    const anew = said && this.wanted && this.#judged(inUnits(said.value, this.wanted));
    return (anew && 'value' in anew ? anew : said)?.sentence ?? '';
  });

  /** The hints shown so far, for whoever was wrong once. */
  readonly hints: string[] = $derived.by(() => this.#allHints.slice(0, this.#hintsAskedFor));
  readonly hasMoreHints: boolean = $derived.by(() => this.#allHints.length > this.#hintsAskedFor);

  readonly #allHints: string[] = $derived.by(() => {
    if (this.attempt.tries === 0 || this.status === 'right' || this.status === 'away') return [];
    const own = this.#written.hint === undefined ? [] : [inText(this.#written.hint, this.#learner.settledPattern)];
    return this.#judging
      ? this.#judging
          .hintsFor(this.#question(this.#judging), this.#learner.settledPattern)
          .map(({ sentence }) => sentence)
      : own;
  });

  nextHint(): void {
    this.#hintsAskedFor += 1;
  }

  /** The worked solution is there for whoever has tried twice, or is right. */
  get solutionOffered(): boolean {
    return this.attempt.tries > 1 || this.status === 'right';
  }

  type(text: string): void {
    this.attempt.change(text);
    this.#unread = undefined;
  }

  async check(): Promise<void> {
    const { wanted } = this;
    if (!wanted) return;
    const text = this.attempt.given;
    this.#unread = text.trim() === '' ? 'Write your answer first.' : undefined;
    if (this.#unread !== undefined) return;
    if (!(await this.prepare())) {
      this.#unread = 'The part that checks answers could not be fetched. Check again when you are connected.';
      return;
    }
    const judged = this.#judged(text);
    if (!judged || text !== this.attempt.given) return;
    if (!('value' in judged)) {
      this.#unread = judged.sentence;
      return;
    }
    if (this.moved) this.attempt.beginAnew();
    const note = {
      value: judged.value,
      wanted: judged.wanted.value,
      edition: this.#learner.edition,
      sentence: judged.sentence,
    };
    this.attempt.settle(judged.verdict === 'right', note, slipOf(judged));
  }

  #judged(text: string) {
    const judging = this.#judging;
    return judging?.judge(text, this.#question(judging), this.#learner.settledPattern);
  }

  #question({ readTolerance }: Judging) {
    return questionOf(this.#written, (text) => readTolerance(text, this.#learner.project.edition));
  }
}

/** A question as the core asks it. */
export function questionOf(
  { of, tolerance, hint, slips, reword, forbid }: SizeQuestionFields,
  readTolerance: (text: string) => Record<Edition, number> | undefined,
) {
  const allowed = tolerance === undefined ? undefined : readTolerance(tolerance);
  return {
    of,
    ...(allowed && { tolerance: allowed }),
    ...(hint !== undefined && { hints: [hint] }),
    ...(slips && { slips: Object.entries(slips).map(([is, say]) => ({ is, say })) }),
    ...(reword && { reword }),
    ...(forbid && { forbid }),
  };
}

/** What was behind a wrong answer: the key of its slip, `near` for one beside a mark, `other` for what cannot be told. */
export function slipOf(judged: Judgement): string | undefined {
  if (judged.verdict === 'right') return undefined;
  if (judged.verdict === 'slip') return judged.slip.key;
  return judged.verdict === 'near' ? 'near' : 'other';
}

/** A value as a text that says its unit, so that it is read alike in both editions. */
export function inUnits(value: number, { dimension }: Quantity): string {
  if (dimension === 0) return String(value);
  return dimension === 1 ? `${value.toFixed(6)} mm` : `${value.toFixed(6)} sq mm`;
}

const asText = (kept: unknown) => (typeof kept === 'string' ? kept : undefined);

function readNote(kept: unknown): Note | undefined {
  const { value, wanted, edition, sentence } = asRecord(kept) ?? {};
  if (typeof value !== 'number' || typeof wanted !== 'number' || typeof sentence !== 'string') return undefined;
  return edition === 'inch' || edition === 'metric' ? { value, wanted, edition, sentence } : undefined;
}
