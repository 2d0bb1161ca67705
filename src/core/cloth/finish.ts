import { chainInside, chainsIn, lengthOf } from './curve.ts';
import { distance, dot, minus, unit } from '../geometry/point.ts';
import { edgeOn, namedEdges, notAllRound } from './sides.ts';
import { exposedEdges } from './exposed.ts';
import { fail, ok, plainName, SAME } from '../measure/index.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { nextNumber, noted } from './work.ts';
import { runsAlong, stitchClass } from './stitch.ts';
import type { ClothFault } from './fault.ts';
import type { EdgeFinish, Ply, PlyEdge, Run, Sewn, Stitch, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';

/** How far in from the edge the middle of an overcast row lies, in mm: it is about twice as wide. Common practice, no source. */
const INSIDE = 1.5;

/** Raw edges to finish: so many edges of the ring of each ply, by the number of the ply. */
type Raw = ReadonlyMap<number, ReadonlySet<number>>;

/**
 * Keeps raw edges from fraying: a row of zigzag or overlock over them, or pinked with shears, which takes off what no ruler
 * measures. `at` names sides, a piece’s own edges also where a seam holds them, or `seams`: all allowances of seams that one
 * can get at. Edges that lie on one another are finished together, and with nothing that lies under them.
 *
 * Faults: those of finding the edge; `misses` where no raw edge lies there, or all are finished; `enclosed` where the
 * allowances lie inside; `too-deep` where a curve is too tight.
 *
 * @example
 * finish(front, ['left', 'right'], 'zigzag') // two rows, each 1.5 mm from its edge
 */
export function finish(work: Work, at: readonly string[], how: EdgeFinish): Sewn {
  const all = new Map<number, Set<number>>();
  for (const { name, isAll } of namedEdges(at)) {
    const raw = rawAt(work, name);
    if (!raw.ok) return isAll ? fail(notAllRound(work, raw.fault)) : raw;
    for (const [id, edges] of raw.value) all.set(id, new Set([...(all.get(id) ?? []), ...edges]));
  }
  const plies = work.plies.map((ply): Ply => {
    const edges = all.get(ply.id);
    return edges ? { ...ply, outline: ply.outline.map((e, i) => (edges.has(i) ? { ...e, finish: how } : e)) } : ply;
  });
  if (how === 'pinked') return ok(noted({ ...work, plies }, { did: 'finish' }));
  const rows = rowsOver(work, all, how);
  if (!rows.ok) return rows;
  const ids = rows.value.map(({ id }) => id);
  return ok(noted({ ...work, plies, stitches: [...work.stitches, ...rows.value] }, { did: 'finish', stitches: ids }));
}

/** The raw edges that a name stands for and that are not finished yet. */
function rawAt(work: Work, asked: string): Result<Raw, ClothFault> {
  const isSeams = plainName(asked) === 'seams';
  const named = isSeams ? ok(seamEdges(work)) : edgesCalled(work, asked);
  if (!named.ok) return named;
  const raw = named.value.filter(({ edge, ply }) => edge.fold === undefined && ply.fusedTo === undefined);
  const left = raw.filter(({ edge }) => edge.finish === undefined);
  const where = isSeams ? { field: 'at' } : { edge: asked };
  if (left.length === 0) {
    const message = isSeams
      ? `No seam here has an allowance that is ${raw.length > 0 ? 'still raw' : 'raw'}.`
      : raw.length > 0
        ? `The ${asked} is finished already.`
        : `The ${asked} is folded there, and no raw edge.`;
    return fail({ code: 'misses', message, ...where, fix: 'Leave it out here, or name another edge.' });
  }
  const open = new Set(exposedEdges(work).map(({ edge }) => edge));
  const reached = left.filter(({ edge }) => open.has(edge));
  if (reached.length === 0) {
    const message = isSeams
      ? 'The allowances of all seams lie inside, where nobody gets at them.'
      : `The raw edge at the ${asked} lies inside, where nobody gets at it.`;
    return fail({ code: 'enclosed', message, ...where });
  }
  const found = new Map<number, Set<number>>();
  for (const { ply, i } of reached) found.set(ply.id, (found.get(ply.id) ?? new Set()).add(i));
  return ok(found);
}

type Named = { readonly ply: Ply; readonly edge: PlyEdge; readonly i: number };

const edgesWhere = (work: Work, is: (ply: Ply, edge: PlyEdge, to: Point) => boolean): Named[] =>
  work.plies.flatMap((ply) =>
    ply.outline.flatMap((edge, i): Named[] =>
      is(ply, edge, ply.outline[(i + 1) % ply.outline.length]!.from) ? [{ ply, edge, i }] : [],
    ),
  );

/** The raw edges that seams hold. */
function seamEdges(work: Work): Named[] {
  const seams = new Set(work.stitches.flatMap(({ id, kind }) => (kind === 'seam' ? id : [])));
  return edgesWhere(work, (_, { held, fold }) => held !== undefined && fold === undefined && seams.has(held));
}

/** The edges on a side of the work as it lies, or else a piece’s own, wherever they went. */
function edgesCalled(work: Work, asked: string): Result<Named[], ClothFault> {
  const found = edgeOn(work, asked);
  if (found.ok) {
    const { line, from, to, plies } = found.value;
    const way = unit(minus(to, from));
    const along = (p: Point) => dot(way, minus(p, from));
    const isThere = (ply: Ply, edge: PlyEdge, end: Point) => {
      const [a, b] = [along(edge.from), along(end)];
      const isOver = Math.min(Math.max(a, b), distance(from, to)) - Math.max(Math.min(a, b), 0) > SAME;
      const isOn = [edge.from, end].every((p) => Math.abs(leftOf(line, p)) <= SAME);
      return isOver && isOn && (plies?.includes(ply.id) ?? true);
    };
    return ok(edgesWhere(work, isThere));
  }
  const own = edgesWhere(
    work,
    ({ piece }, { name, fold }) =>
      fold === undefined && [name, `${piece} ${name}`].some((one) => plainName(one) === plainName(asked)),
  );
  return own.length > 0 ? ok(own) : found;
}

/** Rows over raw edges: one where several lie on one another, and through those alone. */
function rowsOver(work: Work, raw: Raw, kind: 'zigzag' | 'overlock'): Result<Stitch[], ClothFault> {
  const chains = work.plies.flatMap((ply) =>
    chainsIn(
      ply,
      [...(raw.get(ply.id) ?? [])].sort((a, b) => a - b),
    ),
  );
  const ways: Point[][] = [];
  for (const chain of chains.toSorted((a, b) => lengthOf(b) - lengthOf(a)))
    if (!ways.some((way) => liesOn(chain, way))) ways.push(chain);
  const stitches: Stitch[] = [];
  for (const way of ways) {
    const inside = chainInside(way, INSIDE);
    if (!inside) {
      const message = 'The edge bends so tightly that no row follows it.';
      return fail({ code: 'too-deep', message, field: 'at', fix: 'Pink it, or bind it.' });
    }
    const runs = inside.slice(1).flatMap((to, i): Run[] => {
      const middle = { x: (inside[i]!.x + to.x) / 2, y: (inside[i]!.y + to.y) / 2 };
      const here = work.plies.filter((ply) => isBeside(ply, raw.get(ply.id), middle));
      return runsAlong(here, inside[i]!, to);
    });
    stitches.push({ id: nextNumber(work) + stitches.length, kind, class: stitchClass[kind], runs });
  }
  return ok(stitches);
}

/** Whether all corners of a way lie on another. */
const liesOn = (way: readonly Point[], other: readonly Point[]): boolean =>
  way.every((p) => other.slice(1).some((to, i) => toStretch(p, other[i]!, to) < SAME));

/** Whether one of the edges of a ply that are finished lies beside a point of the row. */
const isBeside = ({ outline }: Ply, edges: ReadonlySet<number> | undefined, p: Point): boolean =>
  [...(edges ?? [])].some(
    (i) => toStretch(p, outline[i]!.from, outline[(i + 1) % outline.length]!.from) < INSIDE + SAME,
  );

/** How far a point is from a straight stretch, in mm. */
function toStretch(p: Point, from: Point, to: Point): number {
  const size = distance(from, to);
  if (size < SAME) return distance(p, from);
  const t = Math.min(size, Math.max(0, dot(unit(minus(to, from)), minus(p, from))));
  return t === 0 || t === size
    ? Math.min(distance(p, from), distance(p, to))
    : Math.abs(leftOf(lineThrough(from, to), p));
}
