import { visibleMarks, visibleFrom } from '../cloth/visible.ts';
import { rowsOf } from './rows.ts';
import { turnedUp } from './nap.ts';
import { polyline } from './path.ts';
import { inStrokes } from './strokes.ts';
import { boxOf } from '../cloth/size.ts';
import { viewed } from './view.ts';
import { hardwareMark, zigzag, zipTeeth } from './marks.ts';
import { covers, stretches } from '../cloth/ring.ts';
import { teethIn } from '../project/zips.ts';
import { isDirectional, surfaceOf, wrongSideOf } from './surface.ts';
import type { EdgeStretch, VisiblePart } from '../cloth/visible.ts';
import type { Point } from '../geometry/index.ts';
import type { Ply, StitchKind, Work } from '../cloth/work.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Command, Onto } from './path.ts';
import type { PieceSetting } from './surface.ts';
import type { Shape, ShapeRole } from './scene.ts';
import type { View } from './view.ts';

/** What a face of a ply looks like. */
export function faceOf({ material }: Ply, face: 'right' | 'wrong', materials: Pattern['materials'] = {}): ShapeRole {
  const surface = surfaceOf({ material }, materials);
  return face === 'right' ? surface : wrongSideOf(surface);
}

/** Rings of points as closed paths. */
export const ringsPath = (rings: readonly (readonly Point[])[], onto: Onto): Command[] =>
  rings.flatMap((ring) => [...polyline(...ring.map(onto)), ['Z'] as const]);

/** How a row of a kind is drawn, if not as any row of a machine. */
const rowRoles: Partial<Record<StitchKind, ShapeRole>> = {
  baste: 'basting',
  gather: 'basting',
  zigzag: 'zigzag',
  overlock: 'zigzag',
  slipstitch: 'hand stitch',
};

export const rowRole = (kind: StitchKind = 'seam'): ShapeRole => rowRoles[kind] ?? 'stitch';

/** Lines of one role, gathered to be drawn in one go. */
export class WorkLines {
  readonly #found = new Map<string, { role: ShapeRole; turn?: number; now?: boolean; path: Command[] }>();

  add(role: ShapeRole, path: readonly Command[], more: { turn?: number; now?: boolean } = {}): void {
    const key = `${role}${more.turn ? ` turned ${more.turn}` : ''}${more.now ? ' now' : ''}`;
    const found = this.#found.get(key);
    if (found) found.path.push(...path);
    else this.#found.set(key, { role, ...more, path: [...path] });
  }

  /** One shape for each role, named after it and after the work. */
  shapes(name: string): Shape[] {
    return [...this.#found].flatMap(([key, { path, ...rest }]) =>
      path.length === 0 ? [] : [{ kind: 'path', name: `${name} ${key}`, path: inStrokes(path), ...rest }],
    );
  }
}

/**
 * A work as it lies, seen from one side: surfaces, hidden edges, raw and folded edges, rows of stitches, hardware.
 * Rows with the numbers in `now` are the ones to look at.
 */
export function shapesOf(
  name: string,
  view: View,
  onto: Onto,
  { materials = {}, pieces }: Pick<PieceSetting, 'materials' | 'pieces'> = {},
  now: ReadonlySet<number> = new Set(),
): Shape[] {
  const there = viewed(view, onto);
  const lines = new WorkLines();
  const { parts, edges, hidden } = visibleFrom(view.work, view.side);
  for (const part of parts) {
    const role = faceOf(part.ply, part.face, materials);
    const turn = isDirectional(role) ? turnedUp(part.ply.transform, view.side) : 0;
    lines.add(role, ringsPath(part.rings, there), turn === 0 ? {} : { turn });
  }
  for (const { ply } of parts) if (ply.fullness > GATHERED) lines.add('raw edge', ripples(ply, view.work, there));
  const line = ({ from, to }: EdgeStretch) => polyline(there(from), there(to));
  for (const one of hidden) if (!isGlued(one.ply) || one.edge.fold !== undefined) lines.add('hidden', line(one));
  for (const edge of edges) {
    const role = edgeRole(edge);
    lines.add(role, role === 'pinked' ? zigzag(there(edge.from), there(edge.to)) : line(edge));
  }
  rows(view, there, now, lines);
  for (const teeth of pieces ? teethIn(view.work, { materials, pieces }) : []) {
    const seen = parts.filter(({ ply }) => ply === teeth.ply);
    for (const [from, to] of seen.flatMap(({ rings }) => onRings(rings, teeth.from, teeth.to))) {
      const isHere = (p: Point | undefined): p is Point =>
        p !== undefined && [from, to].some((end) => Math.hypot(end.x - p.x, end.y - p.y) < 0.1);
      const [first, last] = teeth.stops;
      const slider = isHere(first) ? there(first) : undefined;
      lines.add('teeth', zipTeeth(there(from), there(to), [first, last].filter(isHere).map(there), slider));
    }
  }
  for (const { kind, what, at } of visibleMarks(view.work, view.side))
    if (kind === 'hardware') lines.add('hardware', hardwareMark(what, there(at)));
  return lines.shapes(name);
}

/** Cloth is gathered where it is fuller than this. */
const GATHERED = 1.05;
/** Between two ripples of gathers where the cloth is twice as full as it is long, in mm of the sheet. */
const RIPPLE = 1.3;
/** How far ripples run on into the cloth below, in depths of what is gathered: a short and a long one by turns. */
const RUNS = [1.2, 2.4, 0.8, 1.8];

/** Folds of gathers: lines from the gathered edge into the cloth, closer together the fuller it is. */
function ripples(ply: Ply, { plies }: Work, there: Onto): Command[] {
  const { x, y, width, height } = boxOf([ply]);
  const isLevel = width >= height;
  const at = (along: number, across: number): Point =>
    isLevel ? { x: x + along * width, y: y + across * height } : { x: x + across * width, y: y + along * height };
  const goesOn = (across: number) =>
    plies.some((one) => one !== ply && one.piece === ply.piece && covers(one.outline, at(0.5, across)));
  const [from, way] = goesOn(-0.5) ? [1, -1] : goesOn(1.5) ? [0, 1] : [0, 0];
  const [a, b] = [there(at(0, 0)), there(at(1, 0))];
  const count = Math.min(200, Math.floor((Math.hypot(b.x - a.x, b.y - a.y) * (ply.fullness - 1)) / RIPPLE));
  return Array.from({ length: count }, (_, i) => (i + 0.5) / count).flatMap((along, i) => {
    const run = way === 0 ? 1 : 1 + RUNS[i % RUNS.length]!;
    // They fan out to the fullness of the cloth below.
    const out = way === 0 ? along : along + (along - 0.5) * 0.12 * run;
    return polyline(there(at(along, from)), there(at(out, from + (way || 1) * run)));
  });
}

/** The stretches of a straight line that lie in rings. */
function onRings(rings: readonly (readonly Point[])[], from: Point, to: Point): [Point, Point][] {
  const size = Math.hypot(to.x - from.x, to.y - from.y);
  const at = (t: number) => ({ x: from.x + ((to.x - from.x) * t) / size, y: from.y + ((to.y - from.y) * t) / size });
  return rings.slice(0, 1).flatMap((ring) => {
    const outline = ring.map((point) => ({ name: '', from: point, bulge: 0 }));
    return stretches(outline, from, to).flatMap(([a, b]): [Point, Point][] => {
      const [start, end] = [Math.max(a, 0), Math.min(b, size)];
      return end - start > 0.5 ? [[at(start), at(end)]] : [];
    });
  });
}

const isGlued = (ply: Ply): boolean => ply.fusedTo !== undefined;

/** Glue holds the edges of interfacing: they are no raw edges to mind. */
function edgeRole({ ply, edge }: EdgeStretch): ShapeRole {
  if (edge.fold !== undefined) return edge.name === 'seam' ? 'seam' : 'fold edge';
  if (isGlued(ply)) return 'leader';
  return edge.finish === 'pinked' ? 'pinked' : 'raw edge';
}

/** Rows whose thread is seen, and those to look at now wherever they lie; these come last, over all others. */
function rows({ work, side }: View, there: Onto, now: ReadonlySet<number>, lines: WorkLines): void {
  const sorted = rowsOf(work).toSorted((a, b) => Number(now.has(a.id)) - Number(now.has(b.id)));
  // What runs over each other on both walls is drawn once: two rows of dashes would be one line.
  const drawn = new Set<string>();
  for (const { id, kind, stretches } of sorted) {
    const role = rowRole(kind);
    for (const stretch of stretches) {
      if (!now.has(id) && !stretch[side]) continue;
      const [from, to] = [there(stretch.from), there(stretch.to)];
      const ends = [from, to].map(({ x, y }) => `${x.toFixed(2)} ${y.toFixed(2)}`).sort();
      const key = [role, now.has(id), ...ends].join(' ');
      if (drawn.has(key)) continue;
      drawn.add(key);
      lines.add(role, role === 'zigzag' ? zigzag(from, to) : polyline(from, to), now.has(id) ? { now: true } : {});
    }
  }
}

/** What is seen of a work, piece by piece, the largest first. */
export function seenParts(parts: readonly VisiblePart[]): { piece: string; ply: Ply; face: 'right' | 'wrong' }[] {
  const areas = new Map<string, { piece: string; ply: Ply; face: 'right' | 'wrong'; area: number }>();
  for (const { ply, face, area } of parts) {
    const key = `${ply.piece} ${face}`;
    const found = areas.get(key) ?? { piece: ply.piece, ply, face, area: 0 };
    areas.set(key, { ...found, area: found.area + area });
  }
  return [...areas.values()].sort((a, b) => b.area - a.area);
}
