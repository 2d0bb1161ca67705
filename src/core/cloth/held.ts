import { inverse, transformPoint } from '../geometry/transform.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { direction, distance } from '../geometry/point.ts';
import { offsets, ON } from './ring.ts';
import { SAME } from '../measure/index.ts';
import type { ClothFault } from './fault.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { FoldPart } from './fold.ts';
import type { PlyOutline, Ply } from './work.ts';

/** A stretch of a line, as distances along it. */
type Stretch = { from: number; to: number };

const overlap = (a: Stretch, b: Stretch): boolean => Math.min(a.to, b.to) - Math.max(a.from, b.from) > ON;

/**
 * Why moving parts would tear: a fold that lies beyond the line joins a moving part to one that stays, or interfacing
 * is fused to it.
 */
export function holdsBack(parts: readonly FoldPart[], line: Line): ClothFault | undefined {
  if (parts.every((part) => part.chosen)) return undefined;
  const staying = new Map<number, { at: Stretch; on: Line; ply: Ply }[]>();
  for (const { ply, chosen } of parts) {
    if (chosen) continue;
    for (const { fold, at, on } of foldsBeyond(ply.outline, line)) {
      staying.set(fold, [...(staying.get(fold) ?? []), { at, on, ply }]);
    }
  }
  for (const { ply, moves } of parts) {
    if (!moves) continue;
    for (const { fold, at, on } of foldsBeyond(ply.outline, line)) {
      // A fold that crosses a seam goes two ways once the seam is opened, and one that was pleated lies on itself: only
      // where both are the same place of the cloth does one hold the other.
      const holds = (other: { at: Stretch; on: Line; ply: Ply }) =>
        overlap(other.at, at) && isOneLine(other.on, on) && sameCloth({ at, ply }, other, on);
      if (staying.get(fold)?.some(holds)) {
        const message = `A fold holds the moving part of ${ply.piece} to a layer that stays.`;
        return { code: 'held', message, piece: ply.piece };
      }
    }
  }
  return torn(parts, line);
}

/** Fused layers go together wherever there is cloth of theirs beyond the line. */
function torn(parts: readonly FoldPart[], line: Line): ClothFault | undefined {
  if (parts.every(({ from }) => from.fusedTo === undefined)) return undefined;
  const chosen = new Set(parts.filter((part) => part.chosen).map((part) => part.from.id));
  const apart = parts.find(
    ({ from }) =>
      from.fusedTo !== undefined &&
      chosen.has(from.id) !== chosen.has(from.fusedTo) &&
      offsets(from.outline, line).some((off) => off < -ON),
  );
  if (!apart) return undefined;
  const { piece } = apart.from;
  return { code: 'held', message: `${piece} is fused to a layer that does not fold with it.`, piece };
}

/** Whether two lines lie on one another, whichever way each is walked. */
function isOneLine(a: Line, b: Line): boolean {
  const [p, q] = [direction(a.angle), direction(b.angle)];
  return Math.abs(p.x * q.y - p.y * q.x) < 1e-3 && Math.abs(leftOf(a, b.at)) < SAME;
}

/** The fold edges of a ring that reach beyond the line; where they lie is told along their own line. */
function foldsBeyond(ring: PlyOutline, line: Line): { fold: number; at: Stretch; on: Line }[] {
  const found: { fold: number; at: Stretch; on: Line }[] = [];
  for (let i = 0; i < ring.length; i++) {
    const { fold, from } = ring[i]!;
    if (fold === undefined) continue;
    const to = ring[(i + 1) % ring.length]!.from;
    const [offFrom, offTo] = [leftOf(line, from), leftOf(line, to)];
    if (Math.min(offFrom, offTo) >= -ON) continue;
    found.push({ fold, at: along(from, to, offFrom, offTo), on: lineThrough(from, to) });
  }
  return found;
}

/** Where an edge lies, across or else up, whichever way round it is walked; only what is beyond the line counts. */
function along(a: Point, b: Point, offA: number, offB: number): Stretch {
  const cut = (from: Point, to: Point, p: number, q: number): Point =>
    p >= 0 && q < 0
      ? { x: from.x + ((to.x - from.x) * p) / (p - q), y: from.y + ((to.y - from.y) * p) / (p - q) }
      : from;
  const [p, q] = [cut(a, b, offA, offB), cut(b, a, offB, offA)];
  const level = Math.abs(b.x - a.x) >= Math.abs(b.y - a.y);
  const [s, t] = level ? [p.x, q.x] : [p.y, q.y];
  return { from: Math.min(s, t), to: Math.max(s, t) };
}

/** One side of a fold: where it lies along the line, how high in the stack, and on which side of the line its cloth is. */
type End = { at: Stretch; level: number; left: boolean; ply: Ply };

/**
 * Why a stack cannot lie so: a ply passes between the two sides of a fold on a line and goes on beyond it, or two folds
 * on the line would be caught in one another.
 */
export function barred(plies: readonly Ply[], line: Line): ClothFault | undefined {
  const folds = new Map<number, End[]>();
  const way = direction(line.angle);
  for (const [level, ply] of plies.entries()) {
    for (const { fold, at, left } of foldsOn(ply.outline, line, way)) {
      const end = { at, left, level, ply };
      const ends = folds.get(fold);
      if (ends) ends.push(end);
      else folds.set(fold, [end]);
    }
  }
  const turns = [...folds].flatMap(([fold, ends]) => pairs(ends, line).map(([a, b]) => ({ fold, a, b })));
  if (turns.length === 0) return undefined;
  // Few plies lie inside a fold, and only what those cross is asked for.
  const crossed = new Map<number, Stretch[]>();
  const crossingsAt = (level: number): Stretch[] => {
    let found = crossed.get(level);
    if (!found) crossed.set(level, (found = crossings(plies[level]!.outline, line)));
    return found;
  };
  for (const { fold, a, b } of turns) {
    const [low, high] = [Math.min(a.level, b.level), Math.max(a.level, b.level)];
    const within = ({ at, level }: { at: Stretch; level: number }) => level > low && level < high && overlap(at, a.at);
    for (let level = low + 1; level < high; level++) {
      if (!crossingsAt(level).some((at) => overlap(at, a.at))) continue;
      const { piece } = plies[level]!;
      const message = `${piece} is in the way: it lies inside a fold and goes on beyond it.`;
      return { code: 'blocked', message, piece };
    }
    if (a.left !== b.left) continue;
    const caught = turns.some(
      ({ fold: other, a: c, b: d }) =>
        other !== fold && c.left === a.left && d.left === a.left && within(c) !== within(d),
    );
    if (caught) return { code: 'blocked', message: 'Another fold on the same line is in the way.' };
  }
  return undefined;
}

/** The lines of folds that have one side below some levels of the stack and one above them, each once. */
export function linesRound(plies: readonly Ply[], low: number, high: number): Line[] {
  const below = new Set<number>();
  for (const { outline } of plies.slice(0, low)) {
    for (const { fold } of outline) if (fold !== undefined) below.add(fold);
  }
  const lines: Line[] = [];
  for (const { outline } of plies.slice(high)) {
    for (let i = 0; i < outline.length; i++) {
      const { fold, from } = outline[i]!;
      if (fold === undefined || !below.has(fold)) continue;
      const to = outline[(i + 1) % outline.length]!.from;
      const known = (line: Line) => [from, to].every((point) => Math.abs(leftOf(line, point)) <= ON);
      if (!lines.some(known)) lines.push(lineThrough(from, to));
    }
  }
  return lines;
}

/**
 * The two sides of a fold where they are the same place of the cloth. A fold that was folded again has several pairs,
 * which may lie on one another.
 */
function pairs(sides: readonly End[], line: Line): [End, End][] {
  const found: [End, End][] = [];
  for (let i = 0; i < sides.length; i++) {
    for (let k = i + 1; k < sides.length; k++) {
      const [a, b] = [sides[i]!, sides[k]!];
      if (overlap(a.at, b.at) && sameCloth(a, b, line, true)) found.push([a, b]);
    }
  }
  return found;
}

/** Whether two plies lie with the same place of their piece in the middle of where both go along a line. */
function sameCloth(a: Pick<End, 'at' | 'ply'>, b: Pick<End, 'at' | 'ply'>, line: Line, along = false): boolean {
  const way = direction(line.angle);
  const t = (Math.max(a.at.from, b.at.from) + Math.min(a.at.to, b.at.to)) / 2;
  const size = along ? t : Math.abs(way.x) >= Math.abs(way.y) ? (t - line.at.x) / way.x : (t - line.at.y) / way.y;
  const there = { x: line.at.x + way.x * size, y: line.at.y + way.y * size };
  return (
    distance(transformPoint(inverse(a.ply.transform), there), transformPoint(inverse(b.ply.transform), there)) < SAME
  );
}

/** The fold edges of a ring that lie on a line, which goes that way. */
function foldsOn(ring: PlyOutline, line: Line, way: Point): { fold: number; at: Stretch; left: boolean }[] {
  const off = ({ x, y }: Point) => way.x * (y - line.at.y) - way.y * (x - line.at.x);
  const found: { fold: number; at: Stretch; left: boolean }[] = [];
  for (let i = 0; i < ring.length; i++) {
    const { fold, from } = ring[i]!;
    if (fold === undefined || Math.abs(off(from)) > ON) continue;
    const to = ring[(i + 1) % ring.length]!.from;
    if (Math.abs(off(to)) > ON) continue;
    const [a, b] = [alongWay(way, line, from), alongWay(way, line, to)];
    found.push({ fold, at: { from: Math.min(a, b), to: Math.max(a, b) }, left: b > a });
  }
  return found;
}

const alongWay = (way: Point, { at }: Line, p: Point): number => way.x * (p.x - at.x) + way.y * (p.y - at.y);

/** Where a ring goes across a line: stretches with cloth on both sides. */
function crossings(ring: PlyOutline, line: Line): Stretch[] {
  const off = offsets(ring, line);
  if (off.every((o) => o > -ON) || off.every((o) => o < ON)) return [];
  const way = direction(line.angle);
  const cuts: number[] = [];
  for (let i = 0; i < ring.length; i++) {
    const k = (i + 1) % ring.length;
    const [p, q] = [off[i]!, off[k]!];
    if (p >= 0 === q >= 0) continue;
    const [a, b] = [alongWay(way, line, ring[i]!.from), alongWay(way, line, ring[k]!.from)];
    cuts.push(a + ((b - a) * p) / (p - q));
  }
  cuts.sort((a, b) => a - b);
  return cuts.flatMap((from, i) => (i % 2 === 0 && cuts[i + 1]! - from > ON ? [{ from, to: cuts[i + 1]! }] : []));
}
