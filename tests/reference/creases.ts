import { inverse, transformPoint } from '../../src/core/geometry/transform.ts';
import { cross, distance, dot, minus, plus, times, unit } from '../../src/core/geometry/point.ts';
import { ON } from '../../src/core/cloth/ring.ts';
import { SAME } from '../../src/core/measure/index.ts';
import type { Ply, Work } from '../../src/core/cloth/work.ts';
import type { Point } from '../../src/core/geometry/index.ts';

/** A fold line on a piece as it was cut. */
export type Crease = {
  readonly from: Point;
  readonly to: Point;
  /** Seen from the right side: a mountain turns the right side out. */
  readonly kind: 'mountain' | 'valley';
};

/** One side of a fold where it lies on the piece. */
type Side = { ply: Ply; level: number; from: Point; to: Point };

/**
 * The fold lines of one piece, where they would be seen if it were unfolded and laid right side up.
 *
 * @example
 * creases(pleated, 'pocket strip').map((crease) => crease.kind) // => ['mountain', 'valley']
 */
export function creases(work: Work, piece: string): Crease[] {
  const folds = new Map<number, Side[]>();
  for (const [level, ply] of work.plies.entries()) {
    if (ply.piece !== piece) continue;
    const uncut = inverse(ply.transform);
    for (const [i, { fold, from }] of ply.outline.entries()) {
      if (fold === undefined) continue;
      const to = ply.outline[(i + 1) % ply.outline.length]!.from;
      const side = { ply, level, from: transformPoint(uncut, from), to: transformPoint(uncut, to) };
      folds.set(fold, [...(folds.get(fold) ?? []), side]);
    }
  }
  return [...folds.values()].flatMap((sides) =>
    sides.flatMap((a, i) => sides.slice(i + 1).flatMap((b) => creaseBetween(a, b))),
  );
}

function creaseBetween(a: Side, b: Side): Crease[] {
  // Cloth that lies the same way up on both sides was opened again: nothing is folded there.
  if (a.ply.face === b.ply.face) return [];
  const size = distance(a.from, a.to);
  const way = unit(minus(a.to, a.from));
  const off = (p: Point) => Math.abs(cross(way, minus(p, a.from)));
  if (size <= ON || off(b.from) > SAME || off(b.to) > SAME) return [];
  const along = (p: Point) => dot(way, minus(p, a.from));
  const [start, end] = [
    Math.max(0, Math.min(along(b.from), along(b.to))),
    Math.min(size, Math.max(along(b.from), along(b.to))),
  ];
  if (end - start <= ON) return [];
  const at = (t: number) => plus(a.from, times(way, t));
  const right = a.ply.face === 'right' ? a : b;
  const kind = right.level > (right === a ? b : a).level ? 'mountain' : 'valley';
  return [{ from: at(start), to: at(end), kind }];
}
