import { FillRule, JoinType, EndType, differenceD, inflatePathsD, intersectD, unionD } from 'clipper2-ts';
import { sample } from './readings.ts';
import type { Outline } from './outline.ts';

/** Digits after the decimal point that the clipping library keeps, in mm. */
const PRECISION = 6;
/** How far chords may leave arcs, in mm. */
const TOLERANCE = 0.02;

const paths = (outlines: readonly Outline[]): { x: number; y: number }[][] =>
  outlines.map((outline) => sample(outline, TOLERANCE));

/**
 * Holes come back as rings too, clockwise, as the library gives them: the sum of the signed areas is the area.
 * Edge names are lost.
 */
const outlines = (rings: { x: number; y: number }[][]): Outline[] =>
  rings.map((ring) => ring.map(({ x, y }, i) => ({ name: `edge ${i + 1}`, from: { x, y }, bulge: 0 })));

/** The places covered by any of the outlines. Holes come back as clockwise rings. */
export function union(a: readonly Outline[], b: readonly Outline[] = []): Outline[] {
  return outlines(unionD(paths(a), paths(b), FillRule.NonZero, PRECISION));
}

/** The places covered by `a` and not by `b`. Holes come back as clockwise rings. */
export function difference(a: readonly Outline[], b: readonly Outline[]): Outline[] {
  return outlines(differenceD(paths(a), paths(b), FillRule.NonZero, PRECISION));
}

/** The places covered by `a` and by `b`. Holes come back as clockwise rings. */
export function intersection(a: readonly Outline[], b: readonly Outline[]): Outline[] {
  return outlines(intersectD(paths(a), paths(b), FillRule.NonZero, PRECISION));
}

/**
 * The same distance on every edge, by the clipping library; for one outline with named edges use `addAllowance`.
 *
 * @param by mm outward; negative is inward
 */
export function offset(
  shapes: readonly Outline[],
  by: number,
  corner: 'mitred' | 'blunted' | 'rounded' = 'mitred',
): Outline[] {
  const join = { mitred: JoinType.Miter, blunted: JoinType.Square, rounded: JoinType.Round }[corner];
  return outlines(inflatePathsD(paths(shapes), by, join, EndType.Polygon, 4, PRECISION, TOLERANCE));
}
