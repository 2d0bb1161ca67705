import { distance } from '../geometry/point.ts';
import type { Ply, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** A raw edge that can fray. */
export type FreeEdge = {
  readonly ply: Ply;
  readonly edge: string;
  /** Its way with the cloth on the left; curves are chords. */
  readonly path: readonly Point[];
  /** In mm. */
  readonly length: number;
};

/**
 * The raw edges that nothing holds: not a fold, not held by stitches. The edges of fused interfacing are held by its
 * glue and left out.
 *
 * @example
 * freeEdges(cut({ piece: 'flap', material: 'linen', outline: rectangle(80, 60) }).value).map((one) => one.edge) // => ['bottom', 'right', 'top', 'left']
 */
export function freeEdges(work: Work): FreeEdge[] {
  return work.plies.filter((ply) => ply.fusedTo === undefined).flatMap(freeEdgesOf);
}

function freeEdgesOf(ply: Ply): FreeEdge[] {
  const ring = ply.outline;
  const free = ring.map(({ fold, held }) => fold === undefined && held === undefined);
  const goesOn = (i: number) => free[i]! && free.at(i - 1)! && ring[i]!.name === ring.at(i - 1)!.name;
  // Begin where an edge begins, so that none is cut in two where the ring happens to start.
  const first = Math.max(
    0,
    ring.findIndex((_, i) => !goesOn(i)),
  );
  const found: { ply: Ply; edge: string; path: Point[]; length: number }[] = [];
  for (let step = 0; step < ring.length; step++) {
    const i = (first + step) % ring.length;
    if (!free[i]) continue;
    const [from, to] = [ring[i]!.from, ring[(i + 1) % ring.length]!.from];
    if (step === 0 || !goesOn(i)) found.push({ ply, edge: ring[i]!.name, path: [from], length: 0 });
    const last = found.at(-1)!;
    last.path.push(to);
    last.length += distance(from, to);
  }
  return found;
}
