import { alongLine, lineThrough, leftOf } from '../geometry/index.ts';
import { asOneStep } from './group.ts';
import { fail, ok } from '../measure/index.ts';
import { minus, unit } from '../geometry/point.ts';
import { nextNumber, putsIn, wasLaidAs } from './work.ts';
import { ON } from './ring.ts';
import { sewn } from './stitch.ts';
import { wallsOf } from './walls.ts';
import { withPlies } from './combine.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, PlyEdge, Sewn, Work } from './work.ts';

/**
 * Closes the gap of a turned pair: by hand along its folded edges, or by machine so many mm inside them (2 mm, common
 * practice, no source).
 *
 * Faults: `no-gap`; `not-finite`.
 *
 * @example
 * closeGap(turned, 'edgestitch') // => a row through both layers, 2 mm inside the edge
 */
export function closeGap(work: Work, how: 'slipstitch' | 'edgestitch' = 'slipstitch', inside = 2): Sewn {
  const at = work.stitches.findLastIndex(({ round }) => round?.gap !== undefined && !round.gap.closed);
  const stitch = work.stitches[at];
  const gap = stitch?.round?.gap;
  if (!stitch?.round || !gap) return fail({ code: 'no-gap', message: 'There is no open gap to close.' });
  if (!Number.isFinite(inside))
    return fail({ code: 'not-finite', message: 'The distance of the row is not a number.' });
  const way = unit(minus(gap.to, gap.from));
  // Slip stitches lie in the folded edges themselves.
  const by = how === 'slipstitch' ? 2 * ON : inside;
  const shift = (p: Point) => ({ x: p.x - way.y * by, y: p.y + way.x * by });
  const closed = { ...stitch, round: { ...stitch.round, gap: { ...gap, closed: true } } };
  const stitches = work.stitches.with(at, closed);
  const { lower, upper } = wallsOf(work, stitch.id);
  const { put } = stitch.round;
  const inner = putsIn(work, put);
  // What lies in this work, or round it, is held aside.
  const isOwn = (ply: Ply) => (!put || wasLaidAs(ply, put)) && !inner.some((one) => wasLaidAs(ply, one));
  const own = { plies: [...lower, ...upper].filter(isOwn) };
  const alone = sewn({ ...work, ...own, stitches }, how, [shift(gap.from), shift(gap.to)], { id: nextNumber(work) });
  const sewnUp = { ...alone, plies: work.plies };
  const row = sewnUp.stitches.at(-1)!;
  const line = lineThrough(gap.from, gap.to);
  const length = alongLine(line, gap.to);
  const held = withPlies(sewnUp, (ply) => heldInGap(ply, line, length, gap.edge, row.id));
  return ok(asOneStep(work.done, held, { did: 'close gap', stitches: [row.id] }));
}

/** The raw edges of the gap's allowances, turned in, are held from now on. */
function heldInGap(ply: Ply, line: Line, length: number, name: string, stitch: number): Ply {
  const isRaw = (edge: PlyEdge) => edge.name === name && edge.fold === undefined && edge.held === undefined;
  if (!ply.outline.some(isRaw)) return ply;
  const outline = ply.outline.map((edge, i) => {
    if (!isRaw(edge)) return edge;
    const to = ply.outline[(i + 1) % ply.outline.length]!.from;
    const middle = (alongLine(line, edge.from) + alongLine(line, to)) / 2;
    return middle > 0 && middle < length && leftOf(line, to) > 0 ? { ...edge, held: stitch } : edge;
  });
  return { ...ply, outline };
}
