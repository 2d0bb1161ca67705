import { arcOf, lineMeetsCircle, part, pointAlong, shareOfArc } from './arc.ts';
import { area, bounds, type Box } from './readings.ts';
import { alongLine, leftOf, lineThrough } from './line.ts';
import { direction, plus, times } from './point.ts';
import { sides } from './outline.ts';
import type { Edge, Outline, Side } from './outline.ts';
import type { Line } from './line.ts';

/** A point nearer to the line than this, in mm, counts as on it. */
const ON_LINE = 1e-6;
/** Scraps below this area, in mm², are left out. */
const SCRAP = 1e-6;

/**
 * Cuts an outline along an endless line. Edges keep their names; the new edges along the line are called `cut`, or
 * what `name` says. An edge that already lies on the line keeps its own name.
 *
 * @example
 * clip(rectangle(20, 10), { at: { x: 0, y: 4 }, angle: 0 }).left // => [a 20 x 6 rectangle]
 * clip(rectangle(20, 10), { at: { x: 0, y: 40 }, angle: 0 }).left // => []
 */
export function clip(outline: Outline, line: Line, name = 'cut'): { left: Outline[]; right: Outline[] } {
  const off = outline.map((edge) => leftOf(line, edge.from));
  const straight = outline.every((edge) => edge.bulge === 0);
  if (straight && off.every((distance) => distance >= -ON_LINE)) return { left: [outline], right: [] };
  if (straight && off.every((distance) => distance <= ON_LINE)) return { left: [], right: [outline] };
  const pieces = sides(outline).flatMap((side) => cutSide(side, line));
  return { left: oneHalf(pieces, line, 1, name), right: oneHalf(pieces, line, -1, name) };
}

/** A part of a side that lies on one side of the line: 1 left, -1 right, 0 on the line. */
type Piece = { side: Side; where: 1 | 0 | -1; from: OnLine; to: OnLine };
/** How far along the line an end lies, or undefined when that end is off the line. */
type OnLine = number | undefined;

function cutSide(side: Side, line: Line): Piece[] {
  const shares = [0, ...crossings(side, line), 1];
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < shares.length; i++) {
    const [start, end] = [shares[i]!, shares[i + 1]!];
    const cut = start === 0 && end === 1 ? side : part(side, start, end);
    const middle = leftOf(line, pointAlong(cut, 0.5));
    const from = onLine(cut.from, line);
    const to = onLine(cut.to, line);
    const lies = side.bulge === 0 && from !== undefined && to !== undefined;
    pieces.push({ side: cut, where: lies || middle === 0 ? 0 : middle > 0 ? 1 : -1, from, to });
  }
  return pieces;
}

function onLine(point: Side['from'], line: Line): OnLine {
  return Math.abs(leftOf(line, point)) <= ON_LINE ? alongLine(line, point) : undefined;
}

/** Where along a side, as shares of its way, it meets the line between its ends. */
function crossings(side: Side, line: Line): number[] {
  if (side.bulge === 0) {
    const [a, b] = [leftOf(line, side.from), leftOf(line, side.to)];
    if (Math.abs(a) <= ON_LINE || Math.abs(b) <= ON_LINE || a > 0 === b > 0) return [];
    return [a / (a - b)];
  }
  const arc = arcOf(side);
  const near = (ON_LINE * 2) / (arc.radius * Math.abs(arc.sweep));
  return lineMeetsCircle(line.at, direction(line.angle), arc.centre, arc.radius)
    .map((point) => shareOfArc(arc, point))
    .filter((share) => share > near && share < 1 - near)
    .sort((a, b) => a - b);
}

/**
 * Rings of one half. Seen from the half plane, the ring is cut into chains that leave the line and come back to it.
 * Just off the line the cloth covers separate stretches; each begins where one chain comes back and ends where another
 * leaves, so ordering both along the line pairs them up.
 */
function oneHalf(pieces: Piece[], line: Line, half: 1 | -1, name: string): Outline[] {
  const chains = chainsOf(pieces, half);
  if (chains.length === 0) return [];
  if (chains.length === 1 && chains[0]!.leaves === undefined) return [edgesOf(chains[0]!.pieces)];
  const whole = chains as { pieces: Piece[]; leaves: number; comes: number }[];
  const byLeaving = [...whole].sort((a, b) => (a.leaves - b.leaves) * half);
  const byComing = [...whole].sort((a, b) => (a.comes - b.comes) * half);
  const next = new Map(byComing.map((chain, i) => [chain, byLeaving[i]!]));
  const lying = pieces.filter((piece) => piece.where === 0 && (piece.to! - piece.from!) * half > 0);

  const rings: Outline[] = [];
  const left = new Set(whole);
  for (const first of whole) {
    if (!left.has(first)) continue;
    const ring: Edge[] = [];
    for (let chain = first; left.has(chain); chain = next.get(chain)!) {
      left.delete(chain);
      ring.push(...edgesOf(chain.pieces));
      ring.push(...alongTheLine(chain.comes, next.get(chain)!.leaves, lying, line, half, name));
    }
    if (Math.abs(area(ring)) > SCRAP) rings.push(ring);
  }
  return rings;
}

type Chain = { pieces: Piece[]; leaves: OnLine; comes: OnLine };

function chainsOf(pieces: Piece[], half: 1 | -1): Chain[] {
  // Start where a chain starts, so that none is cut in two by the ring's first edge.
  const start = pieces.findIndex((piece) => piece.where === half && piece.from !== undefined);
  if (start < 0) {
    return pieces.every((piece) => piece.where === half) ? [{ pieces, leaves: undefined, comes: undefined }] : [];
  }
  const chains: Chain[] = [];
  for (let i = 0; i < pieces.length; i++) {
    const piece = pieces[(start + i) % pieces.length]!;
    if (piece.where !== half) continue;
    if (piece.from !== undefined) chains.push({ pieces: [], leaves: piece.from, comes: undefined });
    const chain = chains.at(-1)!;
    chain.pieces.push(piece);
    if (piece.to !== undefined) chain.comes = piece.to;
  }
  return chains;
}

const edgesOf = (pieces: Piece[]): Edge[] =>
  pieces.map(({ side }) => ({ name: side.name, from: side.from, bulge: side.bulge }));

/** The new edges along the line, named after the old edges that lie there already. */
function alongTheLine(from: number, to: number, lying: Piece[], line: Line, half: 1 | -1, name: string): Edge[] {
  if (Math.abs(to - from) <= ON_LINE) return [];
  const at = (along: number) => plus(line.at, times(direction(line.angle), along));
  const edges: Edge[] = [];
  let reached = from;
  const within = lying
    .filter((piece) => (piece.from! - from) * half > -ON_LINE && (to - piece.to!) * half > -ON_LINE)
    .sort((a, b) => (a.from! - b.from!) * half);
  for (const piece of within) {
    if ((piece.from! - reached) * half > ON_LINE) edges.push({ name, from: at(reached), bulge: 0 });
    edges.push({ name: piece.side.name, from: piece.side.from, bulge: 0 });
    reached = piece.to!;
  }
  if ((to - reached) * half > ON_LINE) edges.push({ name, from: at(reached), bulge: 0 });
  return edges;
}

/** How far an outline may reach beyond a box, in mm, and still count as inside: rounding of floating-point sums. */
const BEYOND = 1e-6;

/**
 * What of an outline lies in an upright box, its largest part. The new edges are called after the side of the box;
 * one that runs on in an edge of the same name becomes one with it. An outline inside the box comes back as it is.
 *
 * @example
 * clipToBox(rectangle(20, 10), { x: 0, y: 0, width: 15, height: 10 }) // => a 15 x 10 rectangle
 */
export function clipToBox(outline: Outline, box: Box): Outline {
  const has = bounds(outline);
  const [right, top] = [box.x + box.width, box.y + box.height];
  const beyond = {
    bottom: box.y - has.y,
    right: has.x + has.width - right,
    top: has.y + has.height - top,
    left: box.x - has.x,
  };
  const lines = {
    bottom: { at: { x: box.x, y: box.y }, angle: 0 },
    right: { at: { x: right, y: box.y }, angle: 90 },
    top: { at: { x: right, y: top }, angle: 180 },
    left: { at: { x: box.x, y: top }, angle: 270 },
  };
  let inside = outline;
  for (const side of ['bottom', 'right', 'top', 'left'] as const) {
    if (beyond[side] <= BEYOND) continue;
    const parts = clip(inside, lines[side], side).left;
    inside = parts.reduce((best, part) => (area(part) > area(best) ? part : best), parts[0] ?? inside);
  }
  return inside === outline ? outline : runOn(inside);
}

/** Straight edges of one name that run on in one line become one edge. */
function runOn(outline: Outline): Outline {
  const ring = sides(outline);
  return ring
    .filter((side, i) => {
      const before = ring[(i + ring.length - 1) % ring.length]!;
      const straight = side.bulge === 0 && before.bulge === 0 && side.name === before.name;
      return !straight || leftOf(lineThrough(before.from, before.to), side.to) > ON_LINE;
    })
    .map(({ name, from, bulge }) => ({ name, from, bulge }));
}
