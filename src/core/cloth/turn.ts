import { asOneStep, foldInHand } from './group.ts';
import { cross, distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { lineThrough, sides } from '../geometry/index.ts';
import { movedPly } from './move.ts';
import { offsets, ON, stretches } from './ring.ts';
import { otherWay } from './edge.ts';
import { turnedOver } from './lie.ts';
import type { ClothFault } from './fault.ts';
import type { InHand } from './group.ts';
import type { Line, Side } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { Ply, Round, Sewn, Stitch, Work } from './work.ts';

/**
 * Turns a pair that was sewn round right side out. The two layers change places, so that the sides that touched are
 * outside; at each sewn edge the allowances are folded in along the stitches, between the layers; at inner corners they
 * are clipped to the stitches. What was caught in between comes out. The gap's allowances are turned in with the rest;
 * nothing holds the edges there until the gap is closed. A pair of w x h sewn at s comes to (w - 2 s) x (h - 2 s).
 *
 * Faults: `not-sewn-round`; `no-gap` when it was sewn shut; `sewn-down` when other rows join the two layers; those of
 * folding.
 *
 * @example
 * size(turn(sewRound(front, lining, { allowance: 6, gap: { edge: 'bottom', length: 60 } }).value).value)
 */
export function turn(work: Work): Sewn {
  const seam = work.stitches.findLast((stitch) => stitch.round !== undefined);
  if (!seam?.round) return fail({ code: 'not-sewn-round', message: 'Only a pair that is sewn round can be turned.' });
  const { round } = seam;
  if (!round.gap && round.allowances.every((width) => width > 0)) {
    return fail({ code: 'no-gap', message: 'There is no gap to turn the work through.' });
  }
  const at = work.plies.findIndex((ply) => ply.id === round.over);
  const caught = work.plies.filter((ply) => round.caught.includes(ply.id));
  const lower = work.plies.slice(0, at).filter((ply) => !round.caught.includes(ply.id));
  const upper = work.plies.slice(at);
  const rows = rowsLeft(work, seam, new Set(lower.map(({ id }) => id)));
  if (!rows.ok) return rows;

  const out: Ply[] = [];
  for (const ply of caught) {
    const there = comesOut(ply, round);
    if (!there.ok) return there;
    out.unshift(there.value);
  }
  // Without the seam itself, which lies on every fold line and would be asked about each.
  const start: Work = { ...work, plies: [...upper, ...out, ...lower], stitches: rows.value };
  const folds = foldsIn(round);
  const up = foldedIn({ work: start, hand: new Set(upper.map(({ id }) => id)) }, folds, 'over');
  if (!up.ok) return up;
  const down = foldedIn({ work: up.value, hand: new Set(lower.map(({ id }) => id)) }, folds, 'under');
  if (!down.ok) return down;

  const order = new Map(down.value.plies.map((ply, i) => [ply.id, i]));
  const level = (id: number) => order.get(id) ?? -1;
  const runs = seam.runs.map((run) => ({ ...run, plies: [...run.plies].sort((a, b) => level(a) - level(b)) }));
  const stitches = [...down.value.stitches, { ...seam, runs }].sort((a, b) => a.id - b.id);
  return ok(asOneStep(work.done, { ...down.value, stitches }, { did: 'turn' }));
}

/** The rows of each layer by itself. Basting that joins the two comes out; another row would keep them together. */
function rowsLeft(work: Work, seam: Stitch, lower: ReadonlySet<number>): Result<Stitch[], ClothFault> {
  const joins = (stitch: Stitch) =>
    stitch.runs.some((run) => run.plies.some((id) => lower.has(id)) && run.plies.some((id) => !lower.has(id)));
  const rest = work.stitches.filter((stitch) => stitch !== seam);
  const held = rest.find((stitch) => joins(stitch) && stitch.kind !== 'baste' && stitch.kind !== 'gather');
  if (held) return fail({ code: 'sewn-down', message: `A row of ${held.kind} stitches joins the two layers.` });
  return ok(rest.filter((stitch) => !joins(stitch)));
}

type FoldIn = { readonly line: Line; readonly name: string; readonly within: readonly Line[] };

/** The folds along the stitch line, one for each sewn edge. */
function foldsIn({ ring, allowances }: Round): FoldIn[] {
  const edges = sides(ring);
  const n = edges.length;
  return edges.flatMap((edge, i) => {
    if (allowances[i] === 0 || distance(edge.from, edge.to) < ON) return [];
    const line = lineThrough(edge.from, edge.to);
    const outer = offsets(ring, line).every((off) => off > -ON);
    if (outer) return [{ line, name: edge.name, within: [] }];
    // The line of an edge beside an inner corner also runs through other parts of the work, which stay.
    const width = (k: number) => allowances[(i + k + n) % n]!;
    const [before, after] = [edges[(i + n - 1) % n]!, edges[(i + 1) % n]!];
    const start = bound(before, edge, edge, width(0), width(-1));
    const end = bound(edge, after, edge, width(0), width(1));
    return [{ line, name: edge.name, within: [start, otherWay(end)] }];
  });
}

/**
 * What bounds the allowance of an edge at a corner: at an inner corner the bisector, along which it is clipped; at an
 * outer corner a line square to the edge, as far out as the two allowances reach. Both run out of the cloth.
 */
function bound(before: Side, after: Side, edge: Side, width: number, next: number): Line {
  const [a, b] = [unit(minus(before.to, before.from)), unit(minus(after.to, after.from))];
  const at = after.from;
  const sine = cross(a, b);
  if (sine < 0) {
    const way = plus(a, b);
    return { at, angle: (Math.atan2(-way.x, way.y) * 180) / Math.PI };
  }
  const reach = sine < 1e-6 ? 0 : Math.min((next + width * dot(a, b)) / sine, 4 * Math.max(width, next));
  const way = unit(minus(edge.to, edge.from));
  const out = Math.max(reach, 0) + ON;
  const far = plus(at, times(way, edge === after ? -out : out));
  return { at: far, angle: (Math.atan2(-way.x, way.y) * 180) / Math.PI };
}

/** Where a caught ply comes out: over the stitches that go through it. */
function comesOut(ply: Ply, { ring, allowances }: Round): Result<Ply, ClothFault> {
  for (const [i, edge] of sides(ring).entries()) {
    const size = distance(edge.from, edge.to);
    const sewnOn = allowances[i]! > 0 && stretches(ply.outline, edge.from, edge.to).some(([a, b]) => b > 0 && a < size);
    if (sewnOn) return ok(movedPly(ply, turnedOver(lineThrough(edge.from, edge.to))));
  }
  return fail({ code: 'misses', message: `The stitches miss ${ply.piece}.`, piece: ply.piece });
}

/** Folds the allowances of one layer in, one edge after another, each next to the layer itself. */
function foldedIn(start: InHand, folds: readonly FoldIn[], lands: 'over' | 'under'): Sewn {
  let now: InHand = start;
  for (const how of folds) {
    const { line } = how;
    const some = now.work.plies.some(
      ({ id, outline }) => now.hand.has(id) && offsets(outline, line).some((o) => o < -ON),
    );
    // An edge whose allowance was trimmed to nothing has nothing to fold.
    if (!some) continue;
    const folded = foldInHand(now, { ...how, lands, inside: true });
    if (!folded.ok) return folded;
    now = folded.value;
  }
  return ok(now.work);
}
