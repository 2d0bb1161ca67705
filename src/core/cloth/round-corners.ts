/** The corners of a stitch line that goes round. */
import { cross, dot, minus, unit } from '../geometry/point.ts';
import { sides } from '../geometry/index.ts';
import type { Point, Side } from '../geometry/index.ts';
import type { SewnRound } from './work.ts';

/**
 * Where a stitch line turns by less than this, in degrees, it follows a curve; where by more, it has a corner. The
 * chords of a curve of 3 mm turn by 21 degrees.
 */
const CURVE = 30;

/** A corner of the stitch line, between two of its edges that are sewn. */
export type RoundCorner = {
  readonly at: Point;
  readonly before: Side;
  readonly after: Side;
  /** Ways along both edges, each 1 long. */
  readonly a: Point;
  readonly b: Point;
  /** Widths of their allowances, in mm. */
  readonly widths: readonly [number, number];
  /** How far the line turns to the left here, in degrees; less than 0 at an inner corner. */
  readonly turn: number;
  /** It is a place of a curve, and no corner. */
  readonly isCurve: boolean;
};

/** Whether the stitch line turns so little that it follows a curve, outward or inward. */
export const isBend = ({ turn }: RoundCorner): boolean => Math.abs(turn) < CURVE;

/** The corner at the start of each edge of the stitch line, between edges that are sewn or not. */
export function roundCorners({ ring, allowances }: Pick<SewnRound, 'ring' | 'allowances'>): RoundCorner[] {
  const edges = sides(ring);
  return edges.map((after, i) => {
    const k = (i + edges.length - 1) % edges.length;
    const before = edges[k]!;
    const [a, b] = [unit(minus(before.to, before.from)), unit(minus(after.to, after.from))];
    const turn = (Math.atan2(cross(a, b), dot(a, b)) * 180) / Math.PI;
    const widths = [allowances[k]!, allowances[i]!] as const;
    const isCurve = turn > 0 && turn < CURVE && widths[0] > 0 && widths[1] > 0;
    return { at: after.from, before, after, a, b, widths, turn, isCurve };
  });
}
