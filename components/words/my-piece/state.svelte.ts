/** What the learner's own work measures: read, compared with the pattern, explained, and what can still be done. */
import {
  formatLength,
  parseLength,
  SAME,
  type Explanation,
  type MeasuredReading,
  type Remedy,
  type Subject,
} from '../../../src/core/index.ts';
import { asRecord, load, onStorageChange, pagePath, save } from '../../page/storage.ts';
import type { Learner } from '../../page/learner.svelte.ts';

export type SizeName = 'width' | 'height';
export const sizeNames: readonly SizeName[] = ['width', 'height'];
export const sizeTitles: Readonly<Record<SizeName, string>> = { width: 'Width', height: 'Height' };

type CarryOn = Extract<Remedy, { kind: 'carry-on' }>;
type Judging = typeof import('../../ui/question/judging.ts');

export class MyPieceState {
  readonly #learner: Learner;
  readonly #subject: Subject;
  readonly #name: string;
  typed = $state<Record<SizeName, string>>({ width: '', height: '' });
  #judging = $state.raw<Judging>();
  /** What was compared, in mm; sizes typed since then are not yet. */
  #measured = $state.raw<Partial<Record<SizeName, number>>>();
  trouble = $state<{ way?: SizeName; sentence: string }>();

  constructor(learner: Learner, subject: Subject, name: string) {
    this.#learner = learner;
    this.#subject = subject;
    this.#name = name;
    if (typeof document !== 'undefined') this.#recall();
  }

  /** Worked out anew when the learner's size changes. While the page shows the work as made, it stays as it was. */
  readonly reading: MeasuredReading | undefined = $derived.by(() => {
    const { project, settings } = this.#learner;
    const measured = this.#measured;
    return (
      measured &&
      this.#judging?.explainMeasured(measured, this.#subject, { file: project.file, settings, made: made() })
    );
  });

  async compare(): Promise<void> {
    const measured: Partial<Record<SizeName, number>> = {};
    this.trouble = undefined;
    for (const way of sizeNames) {
      if (this.typed[way].trim() === '') continue;
      const read = parseLength(this.typed[way], this.#learner.edition);
      const sentence = read.ok ? (read.value > SAME ? undefined : 'A size is more than nothing.') : read.fault.message;
      if (sentence !== undefined) {
        this.trouble = { way, sentence };
        return;
      }
      if (read.ok) measured[way] = read.value;
    }
    if (Object.keys(measured).length === 0) {
      this.trouble = { way: 'width', sentence: 'Write what you measured: the width, the height, or both.' };
      return;
    }
    if (!(await this.#prepare())) {
      this.trouble = { sentence: 'The comparison could not be fetched. Try again when you are connected.' };
      return;
    }
    this.#measured = measured;
    if (!this.reading) this.trouble = { sentence: 'A feature of your project leaves this out.' };
    this.#keep();
  }

  type(way: SizeName, text: string): void {
    this.typed[way] = text;
    this.#measured = undefined;
    this.trouble = undefined;
    this.#keep();
  }

  /** With what came of it: a teacher learns from it what went wrong on the tables. */
  #keep(): void {
    const { width, height } = this.typed;
    const { reading } = this;
    const mistakes = [...new Set(reading?.explanations.map(({ kind }) => kind))];
    const found = reading && { measured: this.#measured, verdict: reading.verdict, mistakes };
    save(this.#key, width === '' && height === '' ? undefined : { width, height, ...found });
  }

  carryOn(remedy: CarryOn): void {
    this.#learner.carryOn(remedy.pattern);
  }

  backToPlan(): void {
    this.#learner.carryOn(undefined);
  }

  /** The piece that was measured, which is cut already. */
  get cutPiece(): string | undefined {
    return this.#measured && 'piece' in this.#subject ? this.#subject.piece : undefined;
  }

  /** Whether the page shows the sizes that this remedy carries on with, and not those of another piece. */
  isShown(remedy: CarryOn): boolean {
    return this.#learner.asMade === remedy.pattern;
  }

  follow(): () => void {
    return onStorageChange(this.#key, () => this.#recall());
  }

  /** How well a mistake explains what was measured, each way. */
  fit(explanation: Explanation): string {
    return sizeNames
      .flatMap((way) => {
        const miss = explanation.miss[way];
        if (miss === undefined) return [];
        return [Math.abs(miss) < SAME ? `${way} exactly` : `${way} to within ${this.show(Math.abs(miss))}`];
      })
      .join(', ');
  }

  show(mm: number): string {
    const { edition, grid } = this.#learner.settledPattern;
    return formatLength(mm, edition, { grid, style: 'set' });
  }

  /** A difference with its sign in words. */
  off(mm: number | undefined): string {
    if (mm === undefined) return '–';
    return Math.abs(mm) < SAME ? 'as it should be' : `${this.show(Math.abs(mm))} too ${mm > 0 ? 'large' : 'small'}`;
  }

  get #key(): string {
    return `measured:${pagePath()}#${this.#name}`;
  }

  /** What was compared before is compared again, by what it measured: a bare number says less in another edition. */
  #recall(): void {
    const { width, height, measured } = load(this.#key, asRecord) ?? {};
    this.typed = { width: typeof width === 'string' ? width : '', height: typeof height === 'string' ? height : '' };
    this.#measured = undefined;
    const before = asRecord(measured);
    const sizes = sizeNames.flatMap((way) => {
      const mm = before?.[way];
      return typeof mm === 'number' && mm > SAME ? [[way, mm] as const] : [];
    });
    if (sizes.length > 0) void this.#compareAgain(Object.fromEntries(sizes));
  }

  async #compareAgain(measured: Partial<Record<SizeName, number>>): Promise<void> {
    const typed = this.typed;
    if ((await this.#prepare()) && this.typed === typed) this.#measured = measured;
  }

  async #prepare(): Promise<boolean> {
    try {
      this.#judging ??= await import('../../ui/question/judging.ts');
      return true;
    } catch {
      return false;
    }
  }
}

const pieces = new Map<string, MyPieceState>();

/** What was measured on this page is cut: what can be done about one piece asks for no new size of another. */
const made = (): string[] => [...new Set([...pieces.values()].flatMap(({ cutPiece }) => cutPiece ?? []))];

/** What was measured of a piece, the same wherever the page asks for it. On the server nobody has measured anything. */
export function measuring(learner: Learner, subject: Subject, name: string): MyPieceState {
  if (typeof document === 'undefined') return new MyPieceState(learner, subject, name);
  const key = `${learner.project.id} ${name}`;
  let found = pieces.get(key);
  if (!found) pieces.set(key, (found = new MyPieceState(learner, subject, name)));
  return found;
}
