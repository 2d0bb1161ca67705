/** Two pieces and the seam between them: what they start as, and what the learner makes of them. */
import { formatLength, markOf, type Edition } from '../../../src/core/index.ts';
import type { Learner } from '../../page/learner.svelte.ts';
import { rangeAround, type RulerRange } from '../../ui/ruler-slider/ruler.ts';
import { startOf, type SeamStudyFields } from './start.ts';
import { joined, type SeamSizes } from './sums.ts';

export type Pressed = 'open' | 'to second';

/** As far as the sliders go: two inches or 50 mm either way, and allowances up to an inch or 25 mm. */
const SPAN: Record<Edition, { width: number; allowance: number }> = {
  inch: { width: 50.8, allowance: 25.4 },
  metric: { width: 50, allowance: 25 },
};

export class SeamState {
  readonly #learner: Learner;
  readonly #asked: SeamStudyFields;
  /** How much more than at the start, in each edition's own marks. */
  #more = $state<Record<Edition, Partial<SeamSizes>>>({ inch: {}, metric: {} });
  pressed = $state<Pressed>('open');

  constructor(learner: Learner, asked: SeamStudyFields) {
    this.#learner = learner;
    this.#asked = asked;
  }

  readonly start: SeamSizes = $derived.by(() => startOf(this.#asked, this.#learner.settledPattern));

  readonly sizes: SeamSizes = $derived.by(() => {
    const more = this.#more[this.#learner.edition];
    const { start } = this;
    const size = (key: keyof SeamSizes) => Math.max(0, start[key] + (more[key] ?? 0));
    return { a: size('a'), b: size('b'), first: size('first'), second: size('second') };
  });

  get changed(): boolean {
    return this.pressed !== 'open' || Object.values(this.#more[this.#learner.edition]).some((more) => more !== 0);
  }

  get #mark(): number {
    const { edition, grid } = this.#learner.settledPattern;
    return markOf(edition, grid);
  }

  rangeOf(key: keyof SeamSizes): RulerRange & { lesson: number } {
    const lesson = this.start[key];
    const { width, allowance } = SPAN[this.#learner.edition];
    if (key === 'first' || key === 'second')
      return { kind: 'length', min: 0, max: allowance, step: this.#mark, lesson };
    return rangeAround(lesson, width, this.#mark);
  }

  set(key: keyof SeamSizes, value: number): void {
    const more = value - this.start[key];
    this.#more[this.#learner.edition][key] = Math.abs(more) < 1e-6 ? 0 : more;
  }

  back(): void {
    this.#more = { inch: {}, metric: {} };
    this.pressed = 'open';
  }

  /** Why the seam cannot be sewn, in a sentence. */
  readonly trouble: string | undefined = $derived.by(() => {
    const { a, b, first, second } = this.sizes;
    if (first < a && second < b) return undefined;
    return `The allowance takes all of the ${first < a ? 'right' : 'left'} piece. Make it narrower.`;
  });

  readonly happened: string = $derived.by(() => {
    if (this.trouble !== undefined) return this.trouble;
    const { sizes, start } = this;
    const lost = sizes.first + sizes.second;
    const sentence = `The seam takes ${this.#show(lost)}: the joined piece is ${this.#show(joined(sizes))} wide.`;
    const more = joined(sizes) - joined(start);
    if (Math.abs(more) < 0.05) return sentence;
    return `${sentence} That is ${this.#show(Math.abs(more))} ${more > 0 ? 'more' : 'less'} than at the start.`;
  });

  #show(mm: number): string {
    const { edition, grid } = this.#learner.settledPattern;
    return formatLength(mm, edition, { grid, style: 'set' });
  }
}
