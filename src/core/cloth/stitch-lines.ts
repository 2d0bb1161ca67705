import { alongLine, lineThrough } from '../geometry/index.ts';
import { between, distance } from '../geometry/point.ts';
import { offsets, ON } from './ring.ts';
import type { Ply, Run, Stitch, StitchKind, Work } from './work.ts';
import type { Line, Point } from '../geometry/index.ts';

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
export const stitchLines = (work: Work): StitchLine[] => work.stitches.map((stitch) => stitchLine(work, stitch));

function stitchLine(work: Work, { id, kind, class: type, runs }: Stitch): StitchLine {
  const stretches = runs.flatMap((run) => stretchesOf(work, run));
  const length = stretches.reduce((sum, one) => sum + one.length, 0);
  return { id, kind, class: type, length, stretches };
}

function stretchesOf(work: Work, run: Run): StitchStretch[] {
  const long = distance(run.from, run.to);
  if (long === 0) return [];
  const line = lineThrough(run.from, run.to);
  const sewn = new Set(run.plies);
  const over = work.plies
    .map((ply) => stretchesUnder(ply, line, long))
    .map((stretches, level) => ({ level, stretches }));
  const cuts = over.flatMap(({ stretches }) => stretches.flatMap(({ from, to }) => [from, to]));
  const ends = [0, ...cuts.sort((a, b) => a - b), long];
  const found: StitchStretch[] = [];
  let [start, last]: [number, string | undefined] = [0, undefined];
  for (const end of ends) {
    if (end - start <= ON) continue;
    const middle = (start + end) / 2;
    const here = over.flatMap(({ level, stretches }) =>
      stretches
        .filter(({ from, to }) => from < middle && to > middle)
        .map(({ inFold }) => ({ ply: work.plies[level]!, inFold })),
    );
    const seen = (one: (typeof here)[number] | undefined) => one !== undefined && sewn.has(one.ply.id) && !one.inFold;
    const through = here.filter(({ ply }) => sewn.has(ply.id)).map(({ ply }) => ply);
    const [front, back] = [seen(here.at(-1)), seen(here[0])];
    const now = JSON.stringify([through.map((ply) => ply.id), front, back]);
    const to = between(run.from, run.to, end / long);
    const before = found.at(-1);
    if (before && now === last) found[found.length - 1] = { ...before, to, length: before.length + end - start };
    else
      found.push({
        from: between(run.from, run.to, start / long),
        to,
        length: end - start,
        plies: through,
        front,
        back,
      });
    [start, last] = [end, now];
  }
  return found;
}

/** Where a ply lies under a line, its edges counted in; `inFold` where one of its folds runs along the line. */
function stretchesUnder({ outline }: Ply, line: Line, long: number): { from: number; to: number; inFold: boolean }[] {
  const off = offsets(outline, line);
  if (off.every((o) => o > ON) || off.every((o) => o < -ON)) return [];
  const n = outline.length;
  const along = outline.map(({ from }) => alongLine(line, from));
  const cuts = [0, long];
  for (let i = 0; i < n; i++) {
    const k = (i + 1) % n;
    if (Math.abs(off[i]!) <= ON) cuts.push(along[i]!);
    else if (off[i]! > ON !== off[k]! > ON && Math.abs(off[k]!) > ON) {
      cuts.push(along[i]! + ((along[k]! - along[i]!) * off[i]!) / (off[i]! - off[k]!));
    }
  }
  const inside = cuts.filter((cut) => cut >= 0 && cut <= long).sort((a, b) => a - b);
  const found: { from: number; to: number; inFold: boolean }[] = [];
  for (let i = 0; i + 1 < inside.length; i++) {
    const [from, to] = [inside[i]!, inside[i + 1]!];
    if (to - from <= ON) continue;
    const middle = (from + to) / 2;
    const on = outline.findIndex((_, e) => {
      const k = (e + 1) % n;
      const lying = Math.abs(off[e]!) <= ON && Math.abs(off[k]!) <= ON;
      return lying && Math.min(along[e]!, along[k]!) < middle && Math.max(along[e]!, along[k]!) > middle;
    });
    if (on >= 0) found.push({ from, to, inFold: outline[on]!.fold !== undefined });
    else if (isInside(off, along, middle)) found.push({ from, to, inFold: false });
  }
  return found;
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
