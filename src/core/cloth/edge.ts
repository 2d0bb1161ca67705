import { direction, distance } from '../geometry/point.ts';
import { closest, fail, ok, quote, SAME } from '../measure/index.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Ply, PlyEdge, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/** A straight edge of a work, walked with the cloth on its left. */
export type WorkEdge = {
  /** What it was asked for by. */
  readonly name: string;
  /** What the cloth's own edge there is called: `right` where a piece that was turned over ends at the left. */
  readonly own: string;
  /** The pieces whose edges lie there. */
  readonly pieces: readonly string[];
  readonly line: Line;
  readonly from: Point;
  readonly to: Point;
  /** In mm, from one end of the edge to the other. */
  readonly length: number;
  /** The plies of what the edge belongs to: a row along it ends where they end. All of the work if left out. */
  readonly plies?: readonly number[];
};

/** An edge by its name, or one that was found in the same work before. */
export type EdgeReference = string | WorkEdge;

/** What an edge is called. */
export const nameOf = (asked: EdgeReference): string => (typeof asked === 'string' ? asked : asked.name);

type Found = { ply: Ply; piece: string; edge: PlyEdge; to: Point };

/**
 * Finds an edge by its name (`top`), or by piece and name where several pieces have one (`facing top`). Folded edges
 * count, raw edges that a seam holds already do not. All edges of that name must lie on one line.
 *
 * Faults: `unknown-edge`, `ambiguous-edge`, `not-straight`.
 */
export function findEdge(work: Work, asked: EdgeReference): Result<WorkEdge, ClothFault> {
  if (typeof asked !== 'string') return ok(asked);
  const found = freeEdgesNamed(work, asked);
  if (found.length === 0) return fail(unknownEdge(work, asked));
  const longest = found.reduce((best, one) =>
    distance(one.edge.from, one.to) > distance(best.edge.from, best.to) ? one : best,
  );
  const line = lineThrough(longest.edge.from, longest.to);
  const off = found.find(
    ({ edge, to }) => Math.abs(leftOf(line, edge.from)) > SAME || Math.abs(leftOf(line, to)) > SAME,
  );
  if (off) return fail(notOneLine(found, asked));
  const way = direction(line.angle);
  const along = (p: Point) => way.x * (p.x - line.at.x) + way.y * (p.y - line.at.y);
  const ends = found.flatMap(({ edge, to }) => [along(edge.from), along(to)]);
  const [first, last] = [Math.min(...ends), Math.max(...ends)];
  const at = (t: number): Point => ({ x: line.at.x + way.x * t, y: line.at.y + way.y * t });
  const pieces = [...new Set(found.map(({ piece }) => piece))];
  const { name } = found[0]!.edge;
  return ok({ name, own: name, pieces, line, from: at(first), to: at(last), length: last - first });
}

/** The edges of that name that are not held by a seam. */
export function freeEdgesNamed(work: Work, asked: string): Found[] {
  const pieces = new Set(work.plies.map((ply) => ply.piece));
  const piece = [...pieces].find((name) => asked.startsWith(`${name} `));
  const named = (name: string, of?: string): Found[] =>
    work.plies.flatMap((ply) =>
      of !== undefined && ply.piece !== of
        ? []
        : ply.outline.flatMap((edge, i) =>
            edge.name === name && edge.held === undefined
              ? [{ ply, piece: ply.piece, edge, to: ply.outline[(i + 1) % ply.outline.length]!.from }]
              : [],
          ),
    );
  const plain = named(asked);
  return plain.length > 0 || piece === undefined ? plain : named(asked.slice(piece.length + 1), piece);
}

function unknownEdge(work: Work, asked: string): ClothFault {
  const edges = work.plies.flatMap(({ piece, outline }) => outline.map(({ name, held }) => ({ piece, name, held })));
  const free = edges.filter(({ held }) => held === undefined);
  const names = new Set(free.map(({ name }) => name));
  const called = (among: typeof edges) => among.flatMap(({ piece, name }) => [name, `${piece} ${name}`]);
  // A name that is written well is no guess: its edge is there, and sewn.
  const isHeld = called(edges).includes(asked);
  const several = asked.split(/\s*(?:,|\band\b)\s*/u);
  const near = isHeld
    ? undefined
    : (sideMeant(asked, names) ?? closest(asked, asked.includes(' ') ? called(free) : names));
  const message = isHeld
    ? `The edge ${quote(asked)} is held by a seam already.`
    : `There is no free edge ${quote(asked)}.`;
  if (several.length > 1 && several.every((one) => names.has(one))) {
    return { code: 'unknown-edge', message, edge: asked, fix: `Write [${several.join(', ')}].` };
  }
  const fix = near ? ` Did you mean ${quote(near)}?` : ` ${isHeld ? 'Free' : 'There'} are ${[...names].join(', ')}.`;
  return { code: 'unknown-edge', message: message + (isHeld && names.size === 0 ? '' : fix), edge: asked };
}

/** `upper edge`, `left-hand side`: a side as people say it. */
function sideMeant(asked: string, names: ReadonlySet<string>): string | undefined {
  const plain = asked.toLowerCase().replace(/(?:-hand)?(?: edge| side)?$/u, '');
  const side = { upper: 'top', lower: 'bottom', up: 'top', down: 'bottom' }[plain] ?? plain;
  return side !== asked && names.has(side) ? side : undefined;
}

function notOneLine(found: Found[], asked: string): ClothFault {
  const pieces = [...new Set(found.map(({ piece }) => piece))];
  return pieces.length > 1
    ? {
        code: 'ambiguous-edge',
        message: `Several pieces have an edge ${asked}: ${pieces.join(', ')}. Name the piece too, as in ${quote(`${pieces[0]!} ${asked}`)}.`,
        edge: asked,
      }
    : { code: 'not-straight', message: `The edge ${asked} does not lie on one straight line.`, edge: asked };
}

/** Whether a straight stretch lies on a line, or within so many mm of it. */
export const liesOn = (
  line: Line,
  { from, to }: { readonly from: Point; readonly to: Point },
  within = SAME,
): boolean => Math.max(Math.abs(leftOf(line, from)), Math.abs(leftOf(line, to))) <= within;

/** The line parallel to another, so many mm to its left; to its right when negative. */
export function lineLeft({ at, angle }: Line, by: number): Line {
  const way = direction(angle);
  return { at: { x: at.x - way.y * by, y: at.y + way.x * by }, angle };
}

/** The line parallel to an edge, so many mm inside the work; the cloth stays on its left. */
export const lineInside = (edge: WorkEdge, by: number): Line => lineLeft(edge.line, by);

/** The same line walked the other way. */
export const reversedEdge = (line: Line): Line => ({ at: line.at, angle: line.angle + 180 });
