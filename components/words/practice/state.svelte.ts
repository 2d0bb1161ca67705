/** The same question again and again, each time with other numbers, until enough in a row were right at once. */
import { resolveProject, type Pattern, type Quantity } from '../../../src/core/index.ts';
import { asRecord, load, onStorageChange, pagePath, save } from '../../page/storage.ts';
import { type Learner } from '../../page/learner.svelte.ts';
import { valueOf } from '../../page/quantity.ts';
import { questionOf, slipOf, type SizeQuestionFields } from '../ask-size/state.svelte.ts';
import { asTexts, withSlip, type Judged, type AttemptStatus } from '../../ui/question/attempt.svelte.ts';
import type { SetQuestion } from '../word.ts';
import type { Level } from './levels.ts';

type Judging = typeof import('../../ui/question/judging.ts');
const levels: readonly Level[] = ['rising', 1, 2, 3];

/** A question of the set; without words, those between the tags are asked. */
export type SumQuestion = { of: string; words?: string };

/** How often numbers are drawn anew before the same come twice in a row after all. */
const DRAWS = 8;

export class PracticeState {
  readonly #learner: Learner;
  readonly #written: Omit<SizeQuestionFields, 'of'>;
  /** From the fewest sums to the most. */
  readonly #asks: readonly SumQuestion[];
  /** Those that take no sum: each comes up after a sum that was right. */
  readonly #others: readonly SetQuestion[];
  readonly wanted: number;
  #judging = $state.raw<Judging>();
  /** Whether each exercise so far was right at the first try, in order. */
  firstTries = $state.raw<readonly boolean[]>([]);
  level = $state<Level>('rising');
  /** The question of the exercise at hand. */
  ask = $state.raw<SumQuestion>({ of: '' });
  /** What is asked in place of it, when another kind has its turn. */
  other = $state.raw<SetQuestion>();
  /** Mixes what can be chosen in it. */
  seed = '';
  /** How many others were left without an answer. */
  #left = 0;
  /** Which series of numbers: every start of a set has its own. */
  #series = $state(0);
  #drawn = $state(0);
  pattern = $state.raw<Pattern>();
  text = $state('');
  #result = $state.raw<{ status: AttemptStatus; sentence: string }>();
  #tries = $state(0);
  #judged: number | undefined;
  trouble = $state('');
  /** The keys of slips so far, each once, for whoever hands them in. */
  #slips: string[] = [];

  constructor(
    learner: Learner,
    written: Omit<SizeQuestionFields, 'of'>,
    { asks, others }: { asks: readonly SumQuestion[]; others: readonly SetQuestion[] },
    wanted: number,
    level: Level,
  ) {
    this.#learner = learner;
    this.#written = written;
    this.#asks = asks;
    this.#others = others;
    this.wanted = wanted;
    this.level = level;
    if (typeof document !== 'undefined') this.#recall();
  }

  get isDone(): boolean {
    return this.firstTries.length >= this.wanted && this.firstTries.slice(-this.wanted).every(Boolean);
  }

  /** How many of the last were right at once. */
  get inARow(): number {
    return this.firstTries.length - 1 - this.firstTries.findLastIndex((right) => !right);
  }

  get status(): AttemptStatus {
    return this.#result?.status ?? 'open';
  }

  get feedback(): string {
    return this.#result?.sentence ?? '';
  }

  get tries(): number {
    return this.#tries;
  }

  readonly asked: Quantity | undefined = $derived.by(() => this.pattern && valueOf(this.ask.of, this.pattern));

  /** The names the sum is made of, for the list of what is given. */
  readonly given: string[] = $derived.by(() => {
    const sum = this.pattern && this.#judging?.sumFor(this.ask.of, this.pattern);
    return sum?.ok ? sum.value.formula.names : [];
  });

  readonly hints: string[] = $derived.by(() => {
    if (!this.pattern || !this.#judging || this.#tries === 0 || this.status === 'right') return [];
    return this.#judging
      .hintsFor(this.#question(this.#judging), this.pattern)
      .slice(0, this.#tries)
      .map(({ sentence }) => sentence);
  });

  /** Begins a set, or goes on with the one that was left. */
  async begin(): Promise<void> {
    try {
      this.#judging ??= await import('../../ui/question/judging.ts');
    } catch {
      this.trouble = 'The exercises could not be fetched. Try again when you are connected.';
      return;
    }
    if (this.isDone) {
      this.firstTries = [];
      this.#series += 1;
    }
    this.#draw();
  }

  next(): void {
    if (this.other && this.#tries === 0) this.#left += 1;
    this.#drawn += 1;
    this.#draw();
  }

  setLevel(level: Level): void {
    this.level = level;
    this.#draw();
    this.#keep();
  }

  type(text: string): void {
    this.text = text;
    this.#result = undefined;
  }

  check(): void {
    if (!this.pattern || !this.#judging || this.status === 'right') return;
    const judged = this.#judging.judge(this.text, this.#question(this.#judging), this.pattern);
    if (!('value' in judged)) {
      const sentence = this.text.trim() === '' ? 'Write your answer first.' : judged.sentence;
      this.#result = { status: 'unread', sentence };
      return;
    }
    const right = judged.verdict === 'right';
    // The same answer checked twice is one try.
    const repeated = this.#tries > 0 && this.#judged === judged.value;
    this.#count(right, slipOf(judged), repeated);
    this.#judged = judged.value;
    const status = right ? 'right' : this.#tries > 1 ? 'wrong' : 'again';
    const more = right ? '' : status === 'again' ? ' Try once more.' : ' The worked solution shows the way.';
    this.#result = { status, sentence: `${judged.sentence}${more}` };
  }

  /** Hears how a question of another kind was answered; it says itself what came of it. */
  readonly judged: Judged = (right, slip) => {
    this.#count(right, slip, false);
    this.#result = { status: right ? 'right' : 'again', sentence: '' };
  };

  /** Only first tries make a row. */
  #count(right: boolean, slip: string | undefined, repeated: boolean): void {
    if (this.#tries === 0) this.firstTries = [...this.firstTries, right].slice(-50);
    if (!repeated) this.#tries += 1;
    this.#slips = withSlip(this.#slips, slip);
    this.#keep();
  }

  /** The part that asks could not be fetched. */
  lack(): void {
    this.trouble = 'This question could not be fetched. Go on to another, or connect first.';
  }

  /** New numbers, on the marks of the edition that is shown. */
  #draw(): void {
    const { project, edition } = this.#learner;
    const judging = this.#judging;
    if (!judging) return;
    this.text = '';
    this.trouble = '';
    this.#result = undefined;
    this.#tries = 0;
    this.#judged = undefined;
    const before = this.asked?.value;
    const turn = () => `${this.#key} ${this.#series} ${this.#drawn} ${this.firstTries.length}`;
    const passed = this.#left + this.firstTries.filter((right) => !right).length;
    const other = judging.questionWithoutSumAt(this.#others, this.inARow, `${this.#key} ${this.#series}`, passed);
    this.seed = turn();
    this.other = other && { ...other };
    const rung = (rungs: number) => judging.rungAt(this.inARow, this.wanted, rungs);
    this.ask = this.#asks[rung(this.#asks.length)]!;
    const level = this.level === 'rising' ? ((1 + rung(3)) as 1 | 2 | 3) : this.level;
    const resolve = (values: Record<string, number>) =>
      resolveProject(project.file, { edition, values, materials: project.materials });
    for (let draw = 0; draw < DRAWS; draw++) {
      this.pattern = judging.practise(this.#question(judging), resolve, turn(), level)?.pattern;
      if (!this.pattern) {
        this.trouble = 'Nothing in this question can be changed, so there is nothing to practise.';
        return;
      }
      if (this.asked?.value !== before) return;
      this.#drawn += 1;
    }
  }

  #question({ readTolerance }: Judging) {
    return questionOf({ ...this.#written, of: this.ask.of }, (text) =>
      readTolerance(text, this.#learner.project.edition),
    );
  }

  /** Follows other tabs, and the edition: the numbers must be on its marks. Call in an effect. */
  follow(): () => void {
    return onStorageChange(this.#key, () => this.#recall());
  }

  onEdition(): void {
    if (this.pattern && this.pattern.edition !== this.#learner.edition) this.#draw();
  }

  get #key(): string {
    return `practice:${pagePath()}#${this.#written.id ?? this.#asks[0]?.of}`;
  }

  #keep(): void {
    save(this.#key, { firstTries: this.firstTries, level: this.level, series: this.#series, slips: this.#slips });
  }

  #recall(): void {
    const { firstTries, level, series, slips } = load(this.#key, asRecord) ?? {};
    if (Array.isArray(firstTries) && firstTries.every((one) => typeof one === 'boolean')) this.firstTries = firstTries;
    this.level = levels.find((one) => one === level) ?? this.level;
    if (typeof series === 'number' && Number.isInteger(series)) this.#series = series;
    this.#slips = asTexts(slips) ?? [];
  }
}
