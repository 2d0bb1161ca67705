import { lineThrough } from '../geometry/index.ts';
import { between, direction, distance } from '../geometry/point.ts';
import { ON } from './ring.ts';
import { boxOf } from './size.ts';
import type { Ply, Run, Stitch, StitchKind, Work } from './work.ts';
import type { Box, Point } from '../geometry/index.ts';

/** A stretch of a row that goes through the same plies all along. */
export type StitchStretch = {
  readonly from: Point;
  readonly to: Point;
  /** In mm. */
  readonly length: number;
  /** The plies it goes through, bottom to top as they lie now. */
  readonly plies: readonly Ply[];
  /** Whether the thread is seen from the front or from the back: not covered, and not down in a fold. */
  readonly front: boolean;
  readonly back: boolean;
};

/** A row of stitches as it lies now. */
export type StitchLine = {
  readonly id: number;
  readonly kind: StitchKind;
  /** Stitch type after ISO 4915. */
  readonly class: string;
  /** In mm. */
  readonly length: number;
  readonly stretches: readonly StitchStretch[];
};

/**
 * Every row of stitches with its length and what it goes through at each stretch.
 *
 * @example
 * stitchLines(hemmed).map(({ kind, class: type, length }) => [kind, type, length]) // => [['hem', '301', 100]]
 */
export function stitchLines({ plies, stitches }: Work): StitchLine[] {
  const spread = plies.map((ply) => ({ ply, box: boxOf([ply]) }));
  return stitches.map((stitch) => stitchLine(spread, stitch));
}

/** A ply with the box it lies in. */
type Spread = { ply: Ply; box: Box };

function stitchLine(spread: readonly Spread[], { id, kind, class: type, runs }: Stitch): StitchLine {
  const stretches = runs.flatMap((run) => stretchesOf(spread, run));
  const length = stretches.reduce((sum, one) => sum + one.length, 0);
  return { id, kind, class: type, length, stretches };
}

function stretchesOf(spread: readonly Spread[], run: Run): StitchStretch[] {
  const long = distance(run.from, run.to);
  if (long === 0) return [];
  const way = direction(lineThrough(run.from, run.to).angle);
  const sewn = new Set(run.plies);
  const lying = spread.flatMap(({ ply, box }) => (isAway(run, box) ? [] : stretchesUnder(ply, run.from, way, long)));
  const ends = [0, ...lying.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b), long];
  const seen = (one: Lying | undefined) => one !== undefined && sewn.has(one.ply.id) && !one.inFold;
  const found: StitchStretch[] = [];
  let start = 0;
  for (const end of ends) {
    if (end - start <= ON) continue;
    const middle = (start + end) / 2;
    const here = lying.filter(({ from, to }) => from < middle && to > middle);
    const plies = here.flatMap(({ ply }) => (sewn.has(ply.id) ? [ply] : []));
    const [front, back] = [seen(here.at(-1)), seen(here[0])];
    const to = between(run.from, run.to, end / long);
    const before = found.at(-1);
    if (before?.front === front && before.back === back && isSame(before.plies, plies))
      found[found.length - 1] = { ...before, to, length: before.length + end - start };
    else found.push({ from: between(run.from, run.to, start / long), to, length: end - start, plies, front, back });
    start = end;
  }
  return found;
}

/** Most plies lie beside a row, or before or beyond it. */
const isAway = ({ from, to }: Run, { x, y, width, height }: Box): boolean =>
  Math.max(from.x, to.x) < x - ON ||
  Math.min(from.x, to.x) > x + width + ON ||
  Math.max(from.y, to.y) < y - ON ||
  Math.min(from.y, to.y) > y + height + ON;

const isSame = (a: readonly Ply[], b: readonly Ply[]): boolean =>
  a.length === b.length && a.every((ply, i) => ply === b[i]);

/** A stretch of a row that a ply lies under; `inFold` where one of the ply's folds runs along it. */
type Lying = { ply: Ply; from: number; to: number; inFold: boolean };

/** Where a ply lies under a row from `at` that goes `long` that way, its edges counted in. */
function stretchesUnder(ply: Ply, at: Point, { x: cos, y: sin }: Point, long: number): Lying[] {
  const { outline } = ply;
  const n = outline.length;
  const off: number[] = [];
  const along: number[] = [];
  for (const { from } of outline) {
    off.push(cos * (from.y - at.y) - sin * (from.x - at.x));
    along.push(cos * (from.x - at.x) + sin * (from.y - at.y));
  }
  if (off.every((o) => o > ON) || off.every((o) => o < -ON)) return [];
  const cuts = [0, long];
  for (let i = 0; i < n; i++) {
    const k = (i + 1) % n;
    if (Math.abs(off[i]!) <= ON) cuts.push(along[i]!);
    else if (off[i]! > ON !== off[k]! > ON && Math.abs(off[k]!) > ON) {
      cuts.push(along[i]! + ((along[k]! - along[i]!) * off[i]!) / (off[i]! - off[k]!));
    }
  }
  const inside = cuts.filter((cut) => cut >= 0 && cut <= long).sort((a, b) => a - b);
  const found: Lying[] = [];
  for (let i = 0; i + 1 < inside.length; i++) {
    const [from, to] = [inside[i]!, inside[i + 1]!];
    if (to - from <= ON) continue;
    const middle = (from + to) / 2;
    const on = edgeAlong(off, along, middle);
    if (on >= 0) found.push({ ply, from, to, inFold: outline[on]!.fold !== undefined });
    else if (isInside(off, along, middle)) found.push({ ply, from, to, inFold: false });
  }
  return found;
}

/** Which edge of a ring runs along the line there, told by its corners' places at the line; -1 if none does. */
function edgeAlong(off: readonly number[], along: readonly number[], at: number): number {
  for (let i = 0, n = off.length; i < n; i++) {
    const k = (i + 1) % n;
    if (Math.abs(off[i]!) > ON || Math.abs(off[k]!) > ON) continue;
    if (Math.min(along[i]!, along[k]!) < at && Math.max(along[i]!, along[k]!) > at) return i;
  }
  return -1;
}

/** Whether the point of the line at a distance along it lies inside a ring, told by its corners' places at the line. */
function isInside(off: readonly number[], along: readonly number[], at: number): boolean {
  let inside = false;
  for (let i = 0, n = off.length; i < n; i++) {
    const k = (i + 1) % n;
    const [p, q] = [off[i]!, off[k]!];
    if (p > 0 !== q > 0 && at < along[i]! + ((along[k]! - along[i]!) * p) / (p - q)) inside = !inside;
  }
  return inside;
}
