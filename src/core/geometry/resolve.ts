import { arcOf, part, pointAlong, tangent } from './arc.ts';
import { area } from './readings.ts';
import { cross, distance, dot, minus, plus, times, toTheRight } from './point.ts';
import { meetings, NEAR, shareOf } from './crossing.ts';
import type { Outline, Side } from './outline.ts';
import type { Point } from './point.ts';

/** How far left and right of a line, in mm, it is asked whether there is cloth. */
const BESIDE = 1e-6;
/** Pieces shorter than this, in mm, are left out, and gaps of a few of them are passed over. */
const TINY = 0.002;
const GAP = 5 * TINY;
/** Rings below this area, in mm², are slips of the arithmetic. */
export const SCRAP = 1e-3;

/** Whether any two sides of a ring touch elsewhere than at the corner they share. */
export function crossesItself(ring: readonly Side[]): boolean {
  for (let i = 0; i < ring.length; i++) {
    for (let j = i + 1; j < ring.length; j++) {
      const [a, b] = [ring[i]!, ring[j]!];
      const shared = [...(j === i + 1 ? [a.to] : []), ...((j + 1) % ring.length === i ? [a.from] : [])];
      if (meetings(a, b).some((point) => shared.every((corner) => distance(corner, point) > 4 * NEAR))) return true;
    }
  }
  return false;
}

/**
 * The places that a ring which crosses itself goes round counter-clockwise at least once. Returns rings: the cloth's
 * outer edges counter-clockwise, its holes clockwise. Arcs and names are kept. Undefined when the rings do not close.
 */
export function resolve(raw: readonly Side[]): Outline[] | undefined {
  const ring = raw.filter((side) => distance(side.from, side.to) > NEAR || Math.abs(side.bulge) > 1);
  const kept: Side[] = [];
  for (const side of ring) {
    for (const piece of splitAtMeetings(side, ring)) {
      if (distance(piece.from, piece.to) < TINY && Math.abs(piece.bulge) < 1) continue;
      const middle = pointAlong(piece, 0.5);
      const right = times(toTheRight(middleTangent(piece)), BESIDE);
      if (turnsRound(ring, minus(middle, right)) < 1 || turnsRound(ring, plus(middle, right)) >= 1) continue;
      if (kept.some((other) => sameSide(other, piece))) continue;
      kept.push(piece);
    }
  }
  return chain(kept)
    ?.map(merged)
    .filter((outline) => Math.abs(area(outline)) > SCRAP);
}

function splitAtMeetings(side: Side, ring: readonly Side[]): Side[] {
  const shares = ring
    .filter((other) => other !== side)
    .flatMap((other) => meetings(side, other))
    .filter((point) => distance(point, side.from) > NEAR && distance(point, side.to) > NEAR)
    .map((point) => shareOf(side, point))
    .sort((a, b) => a - b);
  const pieces: Side[] = [];
  let start = 0;
  for (const share of [...shares, 1]) {
    const piece = part(side, start, share);
    if (distance(piece.from, piece.to) <= NEAR) continue;
    pieces.push(piece);
    start = share;
  }
  return pieces;
}

const middleTangent = (side: Side): Point => tangent({ ...side, bulge: 0 }, 'start');

const sameSide = (a: Side, b: Side): boolean =>
  distance(a.from, b.from) < 4 * NEAR && distance(a.to, b.to) < 4 * NEAR && Math.abs(a.bulge - b.bulge) < 1e-4;

/** How many times a ring goes round a point, counter-clockwise. */
function turnsRound(ring: readonly Side[], point: Point): number {
  let turns = 0;
  for (const side of ring) {
    const [a, b] = [minus(side.from, point), minus(side.to, point)];
    if (a.y <= 0 && b.y > 0 && cross(a, b) > 0) turns++;
    if (a.y > 0 && b.y <= 0 && cross(a, b) < 0) turns--;
    if (side.bulge === 0) continue;
    const { centre, radius } = arcOf(side);
    const beyondChord = cross(minus(side.to, side.from), minus(point, side.from)) * side.bulge < 0;
    if (beyondChord && distance(point, centre) < radius) turns += Math.sign(side.bulge);
  }
  return turns;
}

/** Puts sides together into rings, turning left as sharply as possible where there is a choice. */
function chain(sides: Side[]): Side[][] | undefined {
  const left = new Set(sides);
  const rings: Side[][] = [];
  for (const first of sides) {
    if (!left.delete(first)) continue;
    const ring = [first];
    while (distance(ring.at(-1)!.to, first.from) > GAP) {
      const next = following(ring.at(-1)!, left);
      if (!next) return undefined;
      left.delete(next);
      ring.push(next);
    }
    rings.push(ring);
  }
  return rings;
}

function following(last: Side, left: Set<Side>): Side | undefined {
  const near = [...left].filter((side) => distance(side.from, last.to) <= GAP);
  const touching = near.filter((side) => distance(side.from, last.to) <= 8 * NEAR);
  return touching.length > 0
    ? touching.reduce((best, side) => (turnInto(last, side) > turnInto(last, best) ? side : best))
    : near.sort((a, b) => distance(a.from, last.to) - distance(b.from, last.to))[0];
}

function turnInto(before: Side, after: Side): number {
  const [a, b] = [tangent(before, 'end'), tangent(after, 'start')];
  return Math.atan2(cross(a, b), dot(a, b));
}

/** The ring as an outline, with parts of one edge put together again. */
function merged(ring: Side[]): Outline {
  const sides: Side[] = [];
  for (const side of ring) {
    const last = sides.at(-1);
    if (last && carriesOn(last, side)) sides[sides.length - 1] = together(last, side);
    else sides.push(side);
  }
  if (sides.length > 2 && carriesOn(sides.at(-1)!, sides[0]!)) sides[0] = together(sides.pop()!, sides[0]!);
  return sides.map(({ name, from, bulge }) => ({ name, from, bulge }));
}

function carriesOn(a: Side, b: Side): boolean {
  if (a.name !== b.name || Math.abs(turnInto(a, b)) > 1e-6) return false;
  if (a.bulge === 0 || b.bulge === 0) return a.bulge === b.bulge;
  const [first, second] = [arcOf(a), arcOf(b)];
  return a.bulge > 0 === b.bulge > 0 && distance(first.centre, second.centre) < 1e-4;
}

const together = (a: Side, b: Side): Side => ({
  ...a,
  to: b.to,
  bulge: a.bulge === 0 ? 0 : Math.tan(Math.atan(a.bulge) + Math.atan(b.bulge)),
});
