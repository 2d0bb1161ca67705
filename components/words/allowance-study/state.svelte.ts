/** What if the piece were another size, or had other allowances? The page's own numbers stay as they are. */
import {
  addAllowance,
  bounds,
  formatLength,
  markOf,
  translate,
  type Edition,
  type Piece,
} from '../../../src/core/index.ts';
import type { Learner } from '../../page/learner.svelte.ts';
import { rangeAround, type RulerRange } from '../../ui/ruler-slider/ruler.ts';
import { SIDES, sizesOf, type SideName, type Sizes } from './sums.ts';

export type Chosen = 'all' | SideName;
type More = Partial<Sizes>;

/** As far as the sliders go: an inch or 25 mm either way, and allowances up to an inch or 25 mm. */
const SPAN: Record<Edition, number> = { inch: 25.4, metric: 25 };

export class AllowanceState {
  readonly #learner: Learner;
  readonly #name: string;
  /** How much more than the piece has, in each edition's own marks. */
  #more = $state<Record<Edition, More>>({ inch: {}, metric: {} });
  /** Which edge the allowance's slider moves. */
  edge = $state<Chosen>('all');

  constructor(learner: Learner, name: string) {
    this.#learner = learner;
    this.#name = name;
  }

  get pattern() {
    return this.#learner.settledPattern;
  }

  get own(): Piece | undefined {
    return this.pattern.pieces[this.#name];
  }

  readonly start: Sizes | undefined = $derived.by(() => this.own && sizesOf(this.own));

  readonly sizes: Sizes | undefined = $derived.by(() => {
    const { start } = this;
    if (!start) return undefined;
    const more = this.#more[this.#learner.edition];
    const sum = { ...start };
    for (const key of Object.keys(start) as (keyof Sizes)[]) sum[key] = Math.max(0, start[key] + (more[key] ?? 0));
    return sum;
  });

  get changed(): boolean {
    return Object.values(this.#more[this.#learner.edition]).some((more) => more !== 0);
  }

  /** The allowance that the slider shows: of one edge, or the widest of all. */
  get allowance(): number {
    const { sizes } = this;
    if (!sizes) return 0;
    return this.edge === 'all' ? Math.max(...SIDES.map((side) => sizes[side])) : sizes[this.edge];
  }

  /** One mark of the edition's ruler, in mm. */
  get #mark(): number {
    const { edition, grid } = this.pattern;
    return markOf(edition, grid);
  }

  rangeOf(side: 'width' | 'height'): RulerRange & { lesson: number } {
    return rangeAround(this.start?.[side] ?? 0, SPAN[this.pattern.edition], this.#mark);
  }

  get allowanceRange(): RulerRange & { lesson?: number | undefined } {
    const { start, edge } = this;
    const own = start && (edge === 'all' ? undefined : start[edge]);
    return { kind: 'length', min: 0, max: SPAN[this.pattern.edition], step: this.#mark, lesson: own };
  }

  set(key: keyof Sizes, value: number): void {
    const own = this.start?.[key];
    if (own === undefined) return;
    const more = value - own;
    this.#more[this.#learner.edition][key] = Math.abs(more) < 1e-6 ? 0 : more;
  }

  setAllowance(value: number): void {
    for (const side of this.edge === 'all' ? SIDES : [this.edge]) this.set(side, value);
  }

  back(): void {
    this.#more = { inch: {}, metric: {} };
    this.edge = 'all';
  }

  /** The piece as it would be. Corners keep their shape; an edge between two others takes the wider allowance. */
  readonly piece: Piece | undefined = $derived.by(() => {
    const { own, start, sizes } = this;
    if (!own || !start || !sizes) return undefined;
    const outline = stretched(own, sizes.width - start.width, sizes.height - start.height);
    const allowance = Object.fromEntries(
      Object.entries(own.allowance).map(([edge, mm]) => {
        if (isSide(edge)) return [edge, sizes[edge]];
        const beside = SIDES.filter((side) => edge.includes(side)).map((side) => sizes[side]);
        return [edge, beside.length > 0 ? Math.max(...beside) : mm];
      }),
    );
    const cut = addAllowance(outline, allowance);
    if (!cut.ok) return own;
    const corner = bounds(cut.value);
    const home = { x: -corner.x, y: -corner.y };
    return {
      ...own,
      ...{ outline: translate(outline, home), cutOutline: translate(cut.value, home), allowance },
      ...{ size: { width: corner.width, height: corner.height }, sewn: { width: sizes.width, height: sizes.height } },
      ...{ notches: [], folds: [] },
    };
  });

  /** What the moves did to the cut size. */
  readonly happened: string = $derived.by(() => {
    const { start, sizes } = this;
    if (!start || !sizes) return '';
    const changes = (Object.keys(sizes) as (keyof Sizes)[]).flatMap((key) => {
      const more = sizes[key] - start[key];
      return Math.abs(more) < 1e-6 ? [] : [{ key, more }];
    });
    if (changes.length === 0) return 'The cut size is the finished size and one allowance at each side of it.';
    const [first] = changes;
    const evenly =
      changes.length === 4 &&
      changes.every(({ key, more }) => isSide(key) && Math.abs(more - (first?.more ?? 0)) < 1e-6);
    const causes = evenly
      ? [`every allowance ${this.#difference(first?.more ?? 0)}`]
      : changes.map(
          ({ key, more }) => `the ${isSide(key) ? `${key} allowance` : `finished ${key}`} ${this.#difference(more)}`,
        );
    const cut = (of: Sizes) => ({ width: of.left + of.width + of.right, height: of.bottom + of.height + of.top });
    const [before, after] = [cut(start), cut(sizes)];
    const width = this.#difference(after.width - before.width);
    const height = this.#difference(after.height - before.height);
    const effect =
      width === height ? `both cut sizes are ${width}` : `the cut width is ${width} and the cut height is ${height}`;
    return `With ${listed(causes)}, ${effect}${evenly ? ': once at each side' : ''}.`;
  });

  #difference(mm: number): string {
    if (Math.abs(mm) < 1e-6) return 'the same';
    const { edition, grid } = this.pattern;
    return `${formatLength(Math.abs(mm), edition, { grid, style: 'set' })} ${mm > 0 ? 'more' : 'less'}`;
  }
}

const isSide = (edge: string): edge is SideName => (SIDES as readonly string[]).includes(edge);

const listed = (parts: string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Moves what lies beyond the middle of a stitch line, so that its corners keep their shape. */
function stretched(piece: Piece, wider: number, higher: number): Piece['outline'] {
  const box = bounds(piece.outline);
  const [middle, level] = [box.x + box.width / 2, box.y + box.height / 2];
  return piece.outline.map((edge) => ({
    ...edge,
    from: {
      x: edge.from.x + (edge.from.x > middle ? wider : 0),
      y: edge.from.y + (edge.from.y > level ? higher : 0),
    },
  }));
}
