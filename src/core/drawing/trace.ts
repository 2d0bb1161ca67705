import { inverse, transformPoint } from '../geometry/transform.ts';
import { DART } from '../cloth/dart.ts';
import { copiesIn } from '../cloth/combine.ts';
import { covers } from '../cloth/ring.ts';
import type { Point } from '../geometry/index.ts';
import type { Ply, Work } from '../cloth/work.ts';

/** A straight line on one of the works before a step. */
export type Trace = { readonly work: number; readonly ply: Ply; readonly from: Point; readonly to: Point };

/** A fold that a step makes, where it will be on the work before. */
export type FoldTrace = Trace & {
  readonly name: string;
  /** As seen from the side that is up. */
  readonly kind: 'valley' | 'mountain';
  /** A point of the cloth that turns over, on the work before. */
  readonly moves: Point;
};

/** As near as this, in mm, two lines are one. */
const NEAR = 0.05;

/** How many of each piece the works before a step hold before each of them, as their stack counts on. */
type Counted = readonly { readonly work: Work; readonly first: (piece: string) => number }[];

function counted(before: readonly Work[]): Counted {
  const sum = new Map<string, number>();
  return before.map((work) => {
    const first = new Map(sum);
    for (const [piece, copies] of copiesIn(work.plies)) sum.set(piece, (sum.get(piece) ?? 0) + copies);
    return { work, first: (piece) => first.get(piece) ?? 0 };
  });
}

/** Where a line on a ply lay on the works before, told by its piece, which one of several alike, and the place on it. */
function traced(before: Counted, ply: Ply, a: Point, b: Point): Trace[] {
  const home = inverse(ply.transform);
  const [p, q] = [transformPoint(home, a), transformPoint(home, b)];
  const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
  return before.flatMap(({ work, first }, i) =>
    work.plies
      // Parts of a strip that goes round corners lie each in its own way.
      .filter(
        (one) =>
          !one.bent && isPart(one, ply, first(ply.piece)) && covers(one.outline, transformPoint(one.transform, middle)),
      )
      .map((one) => ({
        work: i,
        ply: one,
        from: transformPoint(one.transform, p),
        to: transformPoint(one.transform, q),
      })),
  );
}

/** Which of the works before a step each ply after it came from, by the numbers of the plies. */
export function cameFrom(works: readonly Work[], after: Work): ReadonlyMap<number, number> {
  const before = counted(works);
  return new Map(
    after.plies.map((ply) => [
      ply.id,
      before.findIndex(({ work, first }) => work.plies.some((one) => isPart(one, ply, first(ply.piece)))),
    ]),
  );
}

/** Whether a ply of a work before is of the same piece as one of the work after, where `first` of it came before. */
const isPart = (one: Ply, ply: Ply, first: number): boolean =>
  one.piece === ply.piece && first + (one.copy ?? 0) === (ply.copy ?? 0);

/** Rows of stitches where they will run on the works before they are sewn. */
export function tracedRows(works: readonly Work[], after: Work, ids: ReadonlySet<number>): Trace[] {
  const before = counted(works);
  const plies = new Map(after.plies.map((ply) => [ply.id, ply]));
  const found = new Map<string, Trace>();
  for (const { id, runs } of after.stitches) {
    if (!ids.has(id)) continue;
    for (const run of runs) {
      for (const ply of run.plies) {
        const there = plies.get(ply);
        if (!there) continue;
        for (const trace of traced(before, there, run.from, run.to)) found.set(keyOf(trace), trace);
      }
    }
  }
  return [...found.values()];
}

/** The folds that a step makes, on the works before it. */
export function tracedFolds(works: readonly Work[], after: Work): FoldTrace[] {
  const before = counted(works);
  const sides = after.plies.flatMap((ply, level) =>
    ply.outline.flatMap((edge, i) =>
      // Interfacing folds with its cloth; a strip bent round a cord does not tell where it lay.
      edge.fold === undefined || ply.fusedTo !== undefined || ply.bent
        ? []
        : [{ ply, level, edge, to: ply.outline[(i + 1) % ply.outline.length]!.from }],
    ),
  );
  const found = new Map<string, FoldTrace>();
  const hasDart = (piece: string) =>
    works.some(({ plies }) =>
      plies.some((ply) => ply.piece === piece && ply.outline.some(({ name }) => name === DART)),
    );
  for (const side of sides) {
    // Beside a dart cloth lies drawn in, and does not tell where it lay.
    if (side.edge.name === DART && hasDart(side.ply.piece)) continue;
    for (const trace of traced(before, side.ply, side.edge.from, side.to)) {
      // The side of the fold that has been turned over, next to the one that lies as it did.
      if (trace.ply.face === side.ply.face || onEdge(trace)) continue;
      const other = sides.find(
        (one) =>
          one.edge.fold === side.edge.fold &&
          one.ply.face !== side.ply.face &&
          one.ply.piece === side.ply.piece &&
          one.ply.copy === side.ply.copy,
      );
      if (!other) continue;
      const kind = side.level > other.level ? 'valley' : 'mountain';
      const home = transformPoint(inverse(side.ply.transform), middleOf(side.ply));
      const fold = { ...trace, name: side.edge.name, kind, moves: transformPoint(trace.ply.transform, home) } as const;
      found.set(keyOf(trace), fold);
    }
  }
  return [...found.values()];
}

const middleOf = ({ outline }: Ply): Point => ({
  x: outline.reduce((sum, { from }) => sum + from.x, 0) / outline.length,
  y: outline.reduce((sum, { from }) => sum + from.y, 0) / outline.length,
});

/** Lines are one wherever they begin, and on whichever of the plies that lie on each other there. */
function keyOf({ work, from, to }: Trace): string {
  const ends = [from, to].map(({ x, y }) => `${Math.round(x / NEAR)} ${Math.round(y / NEAR)}`);
  return [work, ...ends.sort()].join(' ');
}

/** Whether a line runs along an edge: a fold that was there before, or a seam. */
function onEdge({ ply, from, to }: Trace): boolean {
  const p = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  return ply.outline.some(({ from: a }, i) => {
    const b = ply.outline[(i + 1) % ply.outline.length]!.from;
    const [x, y] = [b.x - a.x, b.y - a.y];
    const long = Math.hypot(x, y) || 1;
    const along = ((p.x - a.x) * x + (p.y - a.y) * y) / long;
    return along >= 0 && along <= long && Math.abs((p.x - a.x) * y - (p.y - a.y) * x) / long <= NEAR;
  });
}

/** The lines along which a step cuts cloth away, on the works before it. */
export function tracedCuts(works: readonly Work[], after: Work): Trace[] {
  const before = counted(works);
  const found = new Map<string, Trace>();
  for (const ply of after.plies) {
    // The ends of piping are cut where they meet, wherever that is on the strip.
    if (ply.bent) continue;
    for (const [i, { fold, from }] of ply.outline.entries()) {
      if (fold !== undefined) continue;
      const to = ply.outline[(i + 1) % ply.outline.length]!.from;
      for (const trace of traced(before, ply, from, to)) if (!onEdge(trace)) found.set(keyOf(trace), trace);
    }
  }
  return [...found.values()];
}
