import { acrossWork, runsAlong, sewn } from './stitch.ts';
import { asOneStep } from './group.ts';
import { cross, direction, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { fail, ok, SAME } from '../measure/index.ts';
import { leftOf } from '../geometry/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { fold } from './fold.ts';
import { linesMeet } from '../geometry/arc.ts';
import { offsets, ON } from './ring.ts';
import { atOpening, rowInside } from './openings.ts';
import { boxesStand } from './box.ts';
import { withPlies } from './combine.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, PlyEdge, Sewn, StitchKind, Work } from './work.ts';
import type { Result } from '../measure/index.ts';
import type { AtWall, Opening } from './openings.ts';
import type { EdgeReference, WorkEdge } from './edge.ts';

/** How edges are hemmed. */
export type Hem = {
  /** The edges, by name or as they were found, in the order in which they are turned. */
  readonly edges: readonly EdgeReference[];
  /** How much is turned in first, in mm. */
  readonly turn: number;
  /** How much is turned in the second time; left out, the hem is turned once. */
  readonly then?: number;
  /** At corners between hemmed edges: one hem on the other, or mitred by folding the corner in. */
  readonly corners?: 'square' | 'mitred';
  /** To which side; under, the wrong side of a work that lies right side up, if left out. */
  readonly to?: 'under' | 'over';
  /** How far inside the inner fold (of a single turn, the raw edge) the row runs, in mm. */
  readonly inside?: number;
  /** From where to where a row runs so far inside the edge; with the cloth if left out. */
  readonly rowInside?: (by: number) => readonly [Point, Point];
  /** How much of the row is left open in its middle, in mm, to draw something in. */
  readonly gap?: number;
  /** What the hem is sewn with; `none` leaves it only pressed. */
  readonly stitch?: StitchKind | 'none';
};

/** A row inside the fold of a hem: 2 mm, common practice, no source. */
const INSIDE = 2;

/**
 * Turns edges in once or twice and sews them down. A hem of f and then h takes f + h at each edge. Folded edges get the
 * names of the edges they came from.
 *
 * Mitred, the corner is folded in square to its bisector through the corner of the finished outline after the first
 * turns and before the second ones, so that the hems meet on the bisector of a right angle.
 *
 * Faults: those of finding the edges; `not-finite`; `too-deep` when the hem is deeper than the work; those of folding.
 *
 * @example
 * size(hem(cloth, { edges: ['bottom', 'right', 'top', 'left'], turn: 10, then: 20 }).value) // => 60 mm less each way
 */
export function hem(work: Work, how: Hem): Sewn {
  const { edges, turn, then: second, corners = 'square', to = 'under' } = how;
  const depth = turn + (second ?? 0);
  if (!Number.isFinite(depth) || turn <= 0 || (second !== undefined && second <= 0)) {
    return fail({ code: 'not-finite', message: 'A hem is turned in by a length.' });
  }
  const found = findAll(work, edges);
  if (!found.ok) return found;
  const deep = tooDeep(work, found.value, how);
  if (deep) return fail(deep);
  const turns = turnsOf(found.value, how);
  const mitres = corners === 'mitred' ? mitresOf(found.value, depth, to) : [];

  // Square corners: each edge is finished before the next. Mitred: all first turns, the corners, all last turns.
  const steps =
    corners === 'mitred'
      ? [...turns.flatMap((edge) => edge.slice(0, -1)), ...mitres, ...turns.map((edge) => edge.at(-1)!)]
      : turns.flat();
  let now: Work = work;
  for (const step of steps) {
    const folded = fold(now, step);
    if (!folded.ok) return folded;
    now = folded.value;
  }
  const after = sewnDown(
    now,
    found.value.map((edge) => ({ edge, raw: rawOn(work, edge) })),
    how,
    work.stitches.length,
  );
  const stitches = after.stitches.slice(work.stitches.length).map((stitch) => stitch.id);
  return ok(asOneStep(work.done, after, { did: 'hem', stitches }));
}

/**
 * Hems an opening all round: the edge of each wall is turned to its wrong side, and one row goes round, through one wall at a
 * time.
 *
 * Faults: those of a hem.
 *
 * @example
 * hemOpening(bag, openingsOf(bag)[0], { turn: 6, then: 20 }) // => a bag 26 mm shorter, and as wide as before
 */
export function hemOpening(
  work: Work,
  opening: Opening,
  how: Omit<Hem, 'edges' | 'to' | 'corners' | 'rowInside' | 'then' | 'gap'> & {
    readonly then?: number | undefined;
    readonly gap?: number | undefined;
  },
): Sewn {
  const { then: second, gap, ...rest } = how;
  const width = opening.round / 2;
  if (gap !== undefined && !(gap > 0 && gap < width)) {
    const message = 'The way in is longer than one side of the opening.';
    return fail({ code: 'too-deep', message, field: 'way in', amount: gap - width });
  }
  const act: AtWall = (wall, edge, wrong, which) =>
    hem(wall, {
      ...rest,
      edges: [edge],
      to: wrong,
      rowInside: (by) => rowInside(work, opening, by),
      ...(second !== undefined && { then: second }),
      ...(gap !== undefined && which === 'upper' && { gap }),
    });
  const done = atOpening(work, opening, act, { did: 'hem', takes: how.turn + (second ?? 0) });
  return boxesStand(work, done);
}

function findAll(work: Work, names: readonly EdgeReference[]): Result<WorkEdge[], ClothFault> {
  const found: WorkEdge[] = [];
  for (const name of names) {
    const edge = findEdge(work, name);
    if (!edge.ok) return edge;
    found.push(edge.value);
  }
  return ok(found);
}

/** What is turned in must lie on what is left of the work, and not stick out beyond it on the other side. */
function tooDeep(work: Work, edges: readonly WorkEdge[], { turn, then: second }: Hem): ClothFault | undefined {
  const [depth, wide] = [turn + (second ?? 0), second ?? turn];
  for (const edge of edges) {
    const across = Math.max(...work.plies.flatMap((ply) => offsets(ply.outline, edge.line)));
    const both = edges.some((other) => dot(direction(edge.line.angle), direction(other.line.angle)) < -1 + 1e-6);
    const needed = (both ? 2 : 1) * depth + wide;
    if (across > needed - SAME) continue;
    const message = `The hem at the edge ${edge.name} is deeper than the work.`;
    return { code: 'too-deep', message, edge: edge.name, amount: needed - across };
  }
  return undefined;
}

/** The folds of each edge, the outer one first. */
function turnsOf(edges: readonly WorkEdge[], { turn, then: second, to = 'under' }: Hem) {
  return edges.map((edge) => {
    const depths = second === undefined ? [turn] : [turn, turn + second];
    return depths.map((depth) => ({ line: lineInside(edge, depth), lands: to, name: edge.own }));
  });
}

/** The folds that turn corners in: through the finished corner, square to its bisector. */
function mitresOf(edges: readonly WorkEdge[], depth: number, lands: 'over' | 'under') {
  return cornersBetween(edges).map(([before, after]) => {
    const [a, b] = [lineInside(before, depth), lineInside(after, depth)];
    const at = meeting(a, b)!;
    const along = unit(plus(direction(a.angle), direction(b.angle)));
    const angle = (Math.atan2(along.y, along.x) * 180) / Math.PI;
    return { line: { at, angle }, lands, name: 'mitre' };
  });
}

/** Pairs of edges that follow one another round an outer corner. */
function cornersBetween(edges: readonly WorkEdge[]): [WorkEdge, WorkEdge][] {
  const touch = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y) < 0.05;
  return edges.flatMap((before) =>
    edges
      .filter((after) => touch(before.to, after.from))
      .filter((after) => cross(direction(before.line.angle), direction(after.line.angle)) > 1e-6)
      .map((after): [WorkEdge, WorkEdge] => [before, after]),
  );
}

const meeting = (a: Line, b: Line): Point | undefined => linesMeet(a.at, direction(a.angle), b.at, direction(b.angle));

/** A hemmed edge, and the raw edges that lay there, each as its piece and its name. */
type Hemmed = { readonly edge: WorkEdge; readonly raw: ReadonlySet<string> };

const keyOf = (ply: Ply, edge: PlyEdge): string => JSON.stringify([ply.piece, edge.name]);

function rawOn(work: Work, { line }: WorkEdge): ReadonlySet<string> {
  const lies = (ply: Ply, i: number) => Math.abs(leftOf(line, ply.outline[i % ply.outline.length]!.from)) <= SAME;
  return new Set(
    work.plies.flatMap((ply) =>
      ply.outline.flatMap((edge, i) => (lies(ply, i) && lies(ply, i + 1) ? [keyOf(ply, edge)] : [])),
    ),
  );
}

/** The rows that hold a hem, each from the row of the edge before it to that of the edge after it. */
function sewnDown(work: Work, hemmed: readonly Hemmed[], how: Hem, before: number): Work {
  const edges = hemmed.map(({ edge }) => edge);
  const { turn, then: second, stitch = 'hem', inside = INSIDE } = how;
  if (stitch === 'none') return work;
  const depth = turn + (second ?? 0);
  const row = depth + (second ?? turn) - inside;
  const corners = cornersBetween(edges);
  let now = work;
  for (const edge of edges) {
    const line = lineInside(edge, row);
    let [from, to] = how.rowInside?.(row) ?? acrossWork(now, line);
    for (const [a, b] of corners) {
      const at = meeting(lineInside(a, row), lineInside(b, row))!;
      if (a === edge) to = at;
      if (b === edge) from = at;
    }
    now = how.gap === undefined ? sewn(now, stitch, [from, to]) : sewnBut(now, stitch, [from, to], how.gap);
  }
  const rows = new Set(now.stitches.slice(before).map(({ id }) => id));
  return withPlies(now, (ply) => heldIn(ply, hemmed, rows, now));
}

/** A row that is left open in its middle. */
function sewnBut(work: Work, kind: StitchKind, [from, to]: [Point, Point], gap: number): Work {
  const [middle, way] = [times(plus(from, to), 0.5), unit(minus(to, from))];
  const [end, start] = [plus(middle, times(way, -gap / 2)), plus(middle, times(way, gap / 2))];
  const runs = [...runsAlong(work.plies, from, end), ...runsAlong(work.plies, start, to)];
  const row = sewn(work, kind, [from, to]);
  return { ...row, stitches: row.stitches.with(-1, { ...row.stitches.at(-1)!, runs }) };
}

/** The raw edges that were turned in are held by the row that goes through their ply. */
function heldIn(ply: Ply, hemmed: readonly Hemmed[], rows: ReadonlySet<number>, work: Work): Ply {
  const row = work.stitches.find(({ id, runs }) => rows.has(id) && runs.some((run) => run.plies.includes(ply.id)));
  const turned = ply.outline.map((edge, i) => {
    const where = hemmed.find(({ raw }) => raw.has(keyOf(ply, edge)))?.edge;
    if (!where || edge.fold !== undefined || edge.held !== undefined) return edge;
    const to = ply.outline[(i + 1) % ply.outline.length]!.from;
    // A raw edge that still runs across a hemmed edge, or belongs to the body, is not turned in.
    const middle = times(plus(edge.from, to), 0.5);
    const inside = cross(direction(where.line.angle), minus(middle, where.line.at));
    return inside > ON ? { ...edge, held: row?.id ?? [...rows][0]! } : edge;
  });
  return { ...ply, outline: turned };
}
