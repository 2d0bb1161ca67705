import { boxOf, size } from '../cloth/size.ts';
import { runLeftOf } from '../cloth/fold.ts';
import { faceOf, shapesOf } from './work-shapes.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { openingsOf } from '../cloth/openings.ts';
import { polyline } from './path.ts';
import { between, direction, plus, times } from '../geometry/point.ts';
import { covers, split } from '../cloth/ring.ts';
import { viewOf } from './view.ts';
import type { Inset } from './view.ts';
import { visibleFrom } from '../cloth/visible.ts';
import { isOwnCloth, wallsOf } from '../cloth/walls.ts';
import type { Command, Onto, Path } from './path.ts';
import type { Opening } from '../cloth/openings.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { PieceSetting } from './surface.ts';
import type { Ply, Work } from '../cloth/work.ts';
import type { Shape, ShapeRole } from './scene.ts';

/** Depth runs up and to the right, by these shares of its length. */
const [ASIDE, UP] = [0.42, 0.3];

/** The number of the edge where the front turns round to the side, so that it is drawn as a fold. */
const TURNS = -1;

/**
 * A work whose two lower corners are boxed as it stands when it is filled: its front, one of its sides, and of an open
 * one the inside of its back. A closed one rises to the seam at its top, where it is as wide as it lies flat. All is to
 * scale, and what lies on the front is where it lies on the flat work. Undefined where the work cannot stand so.
 */
export function standing(work: Work, setting: PieceSetting): Inset | undefined {
  const boxed = work.marks.filter(({ kind, corner }) => kind === 'box' && corner !== undefined);
  const at = (side: 1 | -1) =>
    boxed.filter(({ at, corner }) => corner!.y < at.y && (corner!.x - at.x) * side > 0).map((mark) => mark.at);
  const [lefts, rights] = [at(-1), at(1)];
  const isTube = work.stitches.some(({ joins }) => joins?.turned);
  if (lefts.length === 0 || lefts.length !== rights.length || 2 * lefts.length < boxed.length || isTube)
    return undefined;
  const [found, ...others] = openingsOf(work);
  if (others.length > 0 || (found && found.name !== 'top opening')) return undefined;
  const opening = found && !closesByZip(work, found, setting) ? found : undefined;
  const { width, height, depth } = size(work);
  const left = Math.max(...lefts.map(({ x }) => x));
  const low = Math.max(...lefts.map(({ y }) => y));
  const [right, high] = [left + width, low + height];
  // A closed top lies flat, and the front leans back to it.
  const [lean, wider] = opening ? [0, 0] : [0.5, depth / 2];
  const deep = { x: depth * ASIDE, y: depth * UP };
  const there = ({ x, y }: Point, back = 0): Point => {
    const share = back + lean * Math.max(0, Math.min(1, (y - low) / height));
    return { x: x - left + wider + share * deep.x, y: y - low + share * deep.y };
  };
  const corners = {
    a: { x: left, y: low },
    b: { x: right, y: low },
    c: { x: right + wider, y: high },
    d: { x: left - wider, y: high },
  };
  const lines = [
    lineThrough(corners.a, corners.b),
    lineThrough(corners.b, corners.c),
    lineThrough(corners.c, corners.d),
    lineThrough(corners.d, corners.a),
  ];
  const front = lines.reduce(onLeft, work);
  const beyond = onLeft(work, lineThrough(corners.d, corners.c));
  const box = boxOf(work.plies);
  const rise = opening ? Math.max(0, box.y + box.height - high) : 0;
  const [back, near] = handlesOf(beyond);
  const side = lookOf(onLeft(work, lineThrough(corners.c, corners.b)), work, setting);
  return {
    width: width + 2 * wider + deep.x,
    height: height + rise + deep.y,
    shapes: (name, onto) => {
      const place = (p: Point, back = 0) => onto(there(p, back));
      const ring = (...points: Point[]): Command[] => [...polyline(...points), ['Z']];
      const path = (what: string, role: ShapeRole, drawn: Path): Shape => ({
        kind: 'path',
        name: `${name} ${what}`,
        role,
        path: drawn,
      });
      const flat = (what: string, one: Work, back: number) =>
        one.plies.length === 0 ? [] : shown(`${name} ${what}`, one, (p) => place(p, back), setting);
      const { a, b, c, d } = corners;
      const top = opening ? [place(c), place(c, 1), place(d, 1), place(d)] : [];
      const sideRing = opening ? [place(b), place(b, 1), place(c, 1), place(c)] : [place(b), place(b, 1), place(c)];
      const middle = [place(b, 0.5), opening ? place(c, 0.5) : place(c)];
      return [
        ...(rise > 0 ? flat('back handle', back, 1) : []),
        ...(opening ? [path('inside', insideOf(work, opening, setting), ring(...top))] : []),
        path('side', side, ring(...sideRing)),
        path('side seam', 'seam', polyline(...middle)),
        path('side edges', 'fold edge', [
          ...ring(...sideRing),
          ...(opening ? ring(...top) : []),
          ...polyline(place(a), place(b)),
        ]),
        ...flat('front', front, 0),
        ...(rise > 0 ? flat('front handle', near, 0) : []),
      ];
    },
  };
}

/** What lies left of a line; where it is cut it is drawn as if it were folded. */
function onLeft(work: Work, line: Line): Work {
  const plies = work.plies.flatMap((ply): Ply[] =>
    split(ply.outline, line, { name: 'turns', bulge: 0, fold: TURNS }).left.map((outline) => ({ ...ply, outline })),
  );
  const stitches = work.stitches.map(({ round: _, ...stitch }) => ({
    ...stitch,
    runs: stitch.runs.flatMap((run) => runLeftOf(run, line)),
  }));
  return { ...work, plies, stitches, marks: work.marks.filter(({ at }) => leftOf(line, at) >= 0) };
}

/** What stands up from the wall behind and from the wall in front: that of one copy of a piece is one handle. */
function handlesOf(beyond: Work): [Work, Work] {
  const top = beyond.plies.at(-1);
  const isNear = ({ piece, copy = 0 }: Ply) => piece === top?.piece && copy === (top.copy ?? 0);
  const only = (keep: (ply: Ply) => boolean): Work => ({ ...beyond, plies: beyond.plies.filter(keep) });
  return [only((ply) => !isNear(ply)), only(isNear)];
}

/** Whether both lips of an opening are the halves of a zip, so that it is closed. */
export const closesByZip = ({ plies }: Work, { line }: Opening, { materials = {} }: PieceSetting): boolean =>
  plies.some(
    ({ material, outline }) =>
      materials[material]?.material?.hardware === 'zip' && outline.some(({ from }) => Math.abs(leftOf(line, from)) < 1),
  );

/** A part of the work without lettering and without what is hidden, as `place` puts it. */
function shown(name: string, work: Work, place: Onto, setting: PieceSetting): Shape[] {
  const { x, y } = boxOf(work.plies);
  const view = { ...viewOf(work, 'front'), at: { x, y } };
  return shapesOf(name, view, place, setting).filter((shape) => shape.kind === 'text' || shape.role !== 'hidden');
}

/** What is seen most of a part of the work, or of all of it where that is none. */
function lookOf(part: Work, work: Work, { materials }: PieceSetting): ShapeRole {
  const { parts } = visibleFrom(part.plies.length > 0 ? part : work);
  const most = parts.reduce((best, one) => (one.area > best.area ? one : best));
  return faceOf(most.ply, most.face, materials);
}

/** What one sees looking into an open work: the face of its lower wall that is up, below hems and allowances. */
export function insideOf(work: Work, { row, from, to, line }: Opening, { materials }: PieceSetting): ShapeRole {
  const own = wallsOf(work, row).lower.filter(isOwnCloth(work, row));
  const { width, height } = boxOf(own);
  const way = direction(line.angle + 90);
  const inside = plus(between(from, to, 0.5), times(way, 0.4 * Math.min(width, height)));
  const seen = own.findLast(({ outline }) => covers(outline, inside)) ?? own.at(-1);
  return seen ? faceOf(seen, seen.face, materials) : 'wrong side';
}
