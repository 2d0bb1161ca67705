/** One question and its learner: what the answer is now, what came of checking it, and how often it was tried. */
import { inText, type Pattern } from '../../../src/core/index.ts';
import { ANSWERED } from '../../page/answered.ts';
import { asRecord, load, onStorageChange, pagePath, save } from '../../page/storage.ts';

/**
 * `open`: not checked yet. `unread`: it could not be judged, which costs nothing. `again`: the first try was wrong.
 * `wrong`: a later one was. `moved`: it was judged at another size. `away`: an option leaves out what is asked.
 */
export type AttemptStatus = 'open' | 'unread' | 'right' | 'again' | 'wrong' | 'moved' | 'away';

/** The last answer that was judged. `note` is what this kind of question must know of it later, `slip` what was behind it. */
export type Checked<Given, Note> = { given: Given; right: boolean; note: Note; slip?: string | undefined };

/** Called with each answer that is judged, and the slip behind it. */
export type Judged = (right: boolean, slip?: string) => void;

export type AttemptSettings<Given, Note> = {
  /** Names the question on its page. */
  name: string;
  blank: Given;
  /** Read what was kept; anything may lie in storage. Undefined: not of this shape. */
  readGiven: (kept: unknown) => Given | undefined;
  readNote: (kept: unknown) => Note | undefined;
  /** In a set of practice: the set hears of each answer, and keeps what it needs. Nothing is kept here. */
  judged?: Judged | undefined;
};

/** Enough slips to see what somebody struggles with; more is only a longer list. */
const MOST_SLIPS = 12;

export class Attempt<Given, Note = null> {
  readonly #settings: AttemptSettings<Given, Note>;
  #given: Given = $state.raw() as Given;
  #checked = $state.raw<Checked<Given, Note>>();
  #tries = $state(0);
  /** The keys of slips so far, each once: what the class misunderstood is read from them. */
  #slips: string[] = [];
  #firstRight: boolean | undefined;

  constructor(settings: AttemptSettings<Given, Note>) {
    this.#settings = settings;
    this.#given = settings.blank;
    if (typeof document !== 'undefined' && !settings.judged) this.#recall();
  }

  get given(): Given {
    return this.#given;
  }

  get tries(): number {
    return this.#tries;
  }

  get checked(): Checked<Given, Note> | undefined {
    return this.#checked;
  }

  /** What came of the answer as it stands there now; undefined when it was changed since, or never checked. */
  get current(): Checked<Given, Note> | undefined {
    return this.#checked && same(this.#checked.given, this.#given) ? this.#checked : undefined;
  }

  get status(): 'open' | 'right' | 'again' | 'wrong' {
    if (!this.current) return 'open';
    if (this.current.right) return 'right';
    return this.#tries > 1 ? 'wrong' : 'again';
  }

  /** In a set of practice: a step of the lesson is done without it. */
  get isPractice(): boolean {
    return this.#settings.judged !== undefined;
  }

  /** A hint is for who has tried, and has not got it right. Its sizes are those of `pattern`. */
  hints(hint: string | undefined, status: AttemptStatus, pattern: Pattern | undefined): string[] {
    return hint !== undefined && this.#tries > 0 && status !== 'right' ? [inText(hint, pattern)] : [];
  }

  change(given: Given): void {
    this.#given = given;
    this.#keep();
  }

  /** Takes down what came of the answer. The same answer checked twice is one try. */
  settle(right: boolean, note: Note, slip?: string): void {
    const repeated = this.#tries > 0 && this.current !== undefined;
    this.#checked = { given: this.#given, right, note, slip };
    if (!repeated) this.#tries += 1;
    this.#firstRight ??= right;
    const { judged } = this.#settings;
    if (judged) {
      if (!repeated) judged(right, slip);
      return;
    }
    this.#slips = withSlip(this.#slips, slip);
    this.#keep();
    document.dispatchEvent(new CustomEvent(ANSWERED));
  }

  /** At another size it is another question: tries are counted anew. */
  beginAnew(): void {
    this.#tries = 0;
  }

  /** Tells the page how it stands, and follows what other tabs of the same lesson do. Call in an effect; returns the way to stop. */
  follow(): (() => void) | undefined {
    if (this.#settings.judged) return undefined;
    document.dispatchEvent(new CustomEvent(ANSWERED));
    return onStorageChange(this.#key, () => {
      this.#recall();
      document.dispatchEvent(new CustomEvent(ANSWERED));
    });
  }

  get #key(): string {
    return `answer:${pagePath()}#${this.#settings.name}`;
  }

  #keep(): void {
    if (this.#settings.judged) return;
    const untouched = this.#tries === 0 && this.#checked === undefined && same(this.#given, this.#settings.blank);
    const { given, right, note, slip } = this.#checked ?? {};
    save(
      this.#key,
      untouched
        ? undefined
        : {
            given: this.#given,
            tries: this.#tries,
            ...(this.#checked && { checked: { given, right, note, slip } }),
            ...(this.#slips.length > 0 && { slips: this.#slips }),
            ...(this.#firstRight !== undefined && { firstRight: this.#firstRight }),
          },
    );
  }

  #recall(): void {
    const { readGiven, readNote, blank } = this.#settings;
    const kept = load(this.#key, asRecord) ?? {};
    this.#given = readGiven(kept.given) ?? blank;
    const checked = asRecord(kept.checked);
    const given = readGiven(checked?.given);
    const note = readNote(checked?.note);
    const whole = given !== undefined && note !== undefined && typeof checked?.right === 'boolean';
    const slip = typeof checked?.slip === 'string' ? checked.slip : undefined;
    this.#checked = whole ? { given, note, right: checked.right === true, slip } : undefined;
    this.#tries = whole && typeof kept.tries === 'number' && kept.tries > 0 ? Math.floor(kept.tries) : 0;
    this.#slips = asTexts(kept.slips) ?? [];
    this.#firstRight = typeof kept.firstRight === 'boolean' ? kept.firstRight : undefined;
  }
}

/** A list of slips with one more, each once. */
export const withSlip = (slips: string[], slip: string | undefined): string[] =>
  slip === undefined || slips.includes(slip) || slips.length >= MOST_SLIPS ? slips : [...slips, slip];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** A list of texts as it may have been kept. */
export const asTexts = (kept: unknown): string[] | undefined =>
  Array.isArray(kept) && kept.every((one) => typeof one === 'string') ? kept : undefined;

/** The note of questions that have none. */
export const noNote = (): null => null;

/** Stands beside an answer that was wrong: what to do next. */
export const goOn = (status: AttemptStatus): string =>
  status === 'again' ? ' Try once more.' : status === 'wrong' ? ' Look at it again, there is no hurry.' : '';
