/** What becomes of a finished size when every seam is a little too wide. */
import { formatLength, type Edition } from '../../../src/core/index.ts';
import type { Learner } from '../../page/learner.svelte.ts';
import { valueOf } from '../../page/quantity.ts';
import type { RulerRange } from '../../ui/ruler-slider/ruler.ts';
import { OFF, startOf, type DriftStudyFields } from './start.ts';
import { drift, FINE, type Drifting } from './sums.ts';

/** As many seams as the slider goes to, at least. */
const MANY = 12;

export class DriftState {
  readonly #learner: Learner;
  readonly #asked: DriftStudyFields;
  #seams = $state<number>();
  #off = $state<Partial<Record<Edition, number>>>({});

  constructor(learner: Learner, asked: DriftStudyFields) {
    this.#learner = learner;
    this.#asked = asked;
  }

  /** The finished size in mm; undefined where the project leaves it out. */
  readonly meant: number | undefined = $derived.by(() => valueOf(this.#asked.of, this.#learner.settledPattern)?.value);

  readonly now: Drifting = $derived.by(() => {
    const { edition } = this.#learner;
    const start = startOf(this.#asked, edition);
    return { ...start, seams: this.#seams ?? start.seams, off: this.#off[edition] ?? start.off };
  });

  readonly lost = $derived.by(() => drift(this.now));

  get changed(): boolean {
    return this.#seams !== undefined || this.#off[this.#learner.edition] !== undefined;
  }

  get seamsRange(): RulerRange & { lesson: number } {
    const { seams } = this.#asked;
    return { kind: 'count', min: 1, max: Math.max(MANY, seams), step: 1, lesson: seams };
  }

  get offRange(): RulerRange & { lesson: number } {
    const { start, most, step } = OFF[this.#learner.edition];
    return { kind: 'length', min: 0, max: most, step, lesson: start };
  }

  setSeams(seams: number): void {
    this.#seams = seams === this.#asked.seams ? undefined : seams;
  }

  setOff(mm: number): void {
    const { edition } = this.#learner;
    if (Math.abs(mm - OFF[edition].start) < 1e-6) delete this.#off[edition];
    else this.#off[edition] = mm;
  }

  back(): void {
    this.#seams = undefined;
    this.#off = {};
  }

  readonly happened: string = $derived.by(() => {
    const { meant, now, lost } = this;
    if (meant === undefined) return '';
    if (now.off === 0) return `Every seam is right, and so is the size: ${this.show(meant)}.`;
    const seams = now.seams === 1 ? 'One seam' : `${now.seams} seams`;
    const sentence = `${seams}, each too wide by ${this.show(now.off)}: at worst ${this.show(lost.worst)} is lost.`;
    if (lost.worst >= meant) return `${sentence} Nothing is left of ${this.show(meant)}.`;
    return `${sentence} Then ${this.show(meant)} comes out as ${this.show(meant - lost.worst)}.`;
  });

  /** On finer marks than the project's own. */
  show(mm: number): string {
    return formatLength(mm, this.#learner.edition, { grid: FINE, style: 'set' });
  }
}
