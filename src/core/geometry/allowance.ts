import { arcOf } from './arc.ts';
import { area } from './readings.ts';
import { cornerName, sides } from './outline.ts';
import { crossesOver } from './crosses-over.ts';
import { crossesItself, resolve, SCRAP } from './resolve.ts';
import { distance, dot, minus, plus, times, toTheRight, unit } from './point.ts';
import { fail, ok } from '../measure/index.ts';
import { joinCorner } from './join.ts';
import { NEAR } from './crossing.ts';
import { sameCorner } from './corners.ts';
import type { Corner, Join } from './join.ts';
import type { Outline, Side } from './outline.ts';
import type { GeometryFault } from './fault.ts';
import type { Point } from './point.ts';
import type { Result } from '../measure/index.ts';

/** A side moved out by its allowance from where it was; `turned` when an arc was moved past its own centre. */
export type Moved = { side: Side; from: Side; by: number; turned: boolean };

/**
 * Adds an allowance to each edge: the stitch line becomes the cut line. Straight edges stay parallel, arcs stay
 * concentric. Edges keep their names; new edges at a corner are called after it (`top-right corner`).
 *
 * @param allowance mm outward for all edges, or by edge name (edges not named get 0); negative goes inward
 * @param corner how an outer corner is cut, for all corners or by corner name: mitred if left out. It applies where
 * the cut lines come apart: at outer corners of an allowance, at inner corners of an inset. At the other corners the
 * lines are trimmed where they meet. Edges that run on in one line with different allowances get a step.
 *
 * Faults: `no-size`, `unknown-edge`, `unknown-corner`, `not-finite`, `nothing-left` (an inset that uses the shape up),
 * `falls-apart` (an inset that leaves separate parts), `closes-up` (allowances that meet round an opening),
 * `crosses-itself` (the outline does, or any other tangle).
 *
 * @example
 * bounds(addAllowance(rectangle(100, 50), 10).value) // => { x: -10, y: -10, width: 120, height: 70 }
 * bounds(addAllowance(rectangle(100, 50), { top: 25 }).value) // => { x: 0, y: 0, width: 100, height: 75 }
 */
export function addAllowance(
  outline: Outline,
  allowance: number | Record<string, number>,
  corner: Corner | Record<string, Corner> = { shape: 'mitred' },
): Result<Outline, GeometryFault> {
  const ring = sides(outline).filter((side) => distance(side.from, side.to) > 1e-9);
  if (ring.length < 2) return fail({ code: 'no-size', message: 'The outline has no size.' });
  if (crossesOver(outline)) return fail({ code: 'crosses-itself', message: 'The outline crosses itself.' });
  const allowances = allowanceOf(ring, allowance);
  if (!allowances.ok) return allowances;
  const corners = cornersOf(ring, corner);
  if (!corners.ok) return corners;

  const moved = ring.map((side, i) => moveOut(side, allowances.value[i]!));
  const joins = moved.map((after, i) => {
    const before = moved[(i + moved.length - 1) % moved.length]!;
    return joinCorner(before, after, corners.value[i]!.name, corners.value[i]!.corner);
  });
  const plain = plainRing(moved, joins);
  if (plain && areaOf(plain) > SCRAP && !crossesItself(plain))
    return ok(plain.map(({ name, from, bulge }) => ({ name, from, bulge })));
  return onePiece(resolve(sweptRing(moved, joins)), ring);
}

const areaOf = (ring: Side[]): number => area(ring.map(({ name, from, bulge }) => ({ name, from, bulge })));

/** The moved sides from corner to corner, or undefined when one of them would run backwards. */
function plainRing(moved: Moved[], joins: Join[]): Side[] | undefined {
  const ring: Side[] = [];
  for (const [i, { side, turned }] of moved.entries()) {
    const [before, after] = [joins[i]!, joins[(i + 1) % joins.length]!];
    ring.push(...before.edges);
    const cut = turned ? undefined : shorten(side, before.start, after.end);
    if (!cut) return undefined;
    if (distance(cut.from, cut.to) > NEAR) ring.push(cut);
  }
  return ring;
}

/**
 * The ring as each side sweeps it out on its own: where two moved sides overlap, the way goes back through the corner
 * between them. It crosses itself, but goes round every place that an allowance covers.
 */
function sweptRing(moved: Moved[], joins: Join[]): Side[] {
  const ring: Side[] = [];
  for (const [i, { side, from: was, turned }] of moved.entries()) {
    const [before, after] = [joins[i]!, joins[(i + 1) % joins.length]!];
    const straight = (from: Point, to: Point): Side => ({ name: side.name, from, to, bulge: 0 });
    ring.push(...(before.trimmed ? [straight(was.from, side.from)] : before.edges));
    if (turned) {
      // Moved past its centre, an arc sweeps a wedge to the centre and, reversed, the wedge opposite.
      const { centre } = arcOf(was);
      ring.push(straight(side.from, was.from), straight(was.from, centre), straight(centre, side.to));
      ring.push({ ...side, from: side.to, to: side.from, bulge: -side.bulge });
      ring.push(straight(side.from, centre), straight(centre, was.to), straight(was.to, side.to));
    } else {
      const from = before.trimmed ? side.from : before.start;
      const to = after.trimmed ? side.to : after.end;
      ring.push(shorten(side, from, to) ?? straight(from, to));
    }
    if (after.trimmed) ring.push(straight(side.to, was.to));
  }
  return ring;
}

function onePiece(rings: Outline[] | undefined, before: Side[]): Result<Outline, GeometryFault> {
  if (!rings) {
    return fail({ code: 'crosses-itself', message: 'The cut line crosses itself. Make the allowance smaller.' });
  }
  const whole = rings.filter((ring) => area(ring) > 0);
  if (whole.length === 0) return fail({ code: 'nothing-left', message: 'The inset uses up the whole shape.' });
  if (whole.length > 1) {
    return fail({ code: 'falls-apart', message: `The inset leaves ${whole.length} separate parts.` });
  }
  if (rings.length > 1) {
    return fail({ code: 'closes-up', message: 'The allowances meet round an opening and close it.' });
  }
  // Begin with the edge that came first before, as far as it is left.
  const ring = whole[0]!;
  const names = before.map((side) => side.name);
  const first = ring.findIndex((edge) => edge.name === names.find((name) => ring.some((one) => one.name === name)));
  return ok([...ring.slice(first), ...ring.slice(0, first)]);
}

/**
 * Takes an allowance away again: the cut line becomes the stitch line. The same as a negative `addAllowance`.
 *
 * @example
 * bounds(removeAllowance(rectangle(120, 70), 10).value) // => { x: 10, y: 10, width: 100, height: 50 }
 */
export function removeAllowance(
  outline: Outline,
  allowance: number | Record<string, number>,
  corner?: Corner | Record<string, Corner>,
): Result<Outline, GeometryFault> {
  const inward =
    typeof allowance === 'number'
      ? -allowance
      : Object.fromEntries(Object.entries(allowance).map(([name, by]) => [name, -by]));
  return addAllowance(outline, inward, corner);
}

function allowanceOf(ring: Side[], allowance: number | Record<string, number>): Result<number[], GeometryFault> {
  const given = typeof allowance === 'number' ? {} : allowance;
  for (const name of Object.keys(given)) {
    if (ring.some((side) => side.name === name)) continue;
    const names = [...new Set(ring.map((side) => side.name))].join(', ');
    return fail({ code: 'unknown-edge', message: `There is no edge ${name}. The edges are ${names}.`, edge: name });
  }
  const by = ring.map((side) => (typeof allowance === 'number' ? allowance : (given[side.name] ?? 0)));
  const odd = by.findIndex((value) => !Number.isFinite(value));
  if (odd >= 0) {
    const edge = ring[odd]!.name;
    return fail({ code: 'not-finite', message: `The allowance of the edge ${edge} is not a number.`, edge });
  }
  return ok(by);
}

type NamedCorner = { name: string; corner: Corner };

function cornersOf(ring: Side[], corner: Corner | Record<string, Corner>): Result<NamedCorner[], GeometryFault> {
  const names = ring.map((side, i) => cornerName(ring[(i + ring.length - 1) % ring.length]!.name, side.name));
  if (isCorner(corner)) return ok(names.map((name) => ({ name, corner })));
  const asked = Object.entries(corner);
  const unknown = asked.find(([key]) => !names.some((name) => sameCorner(name, key)));
  if (unknown) {
    const message = `There is no corner ${unknown[0]}. The corners are ${names.join(', ')}.`;
    return fail({ code: 'unknown-corner', message, corner: unknown[0] });
  }
  return ok(
    names.map((name) => ({
      name,
      corner: asked.find(([key]) => sameCorner(name, key))?.[1] ?? { shape: 'mitred' },
    })),
  );
}

const isCorner = (corner: Corner | Record<string, Corner>): corner is Corner => typeof corner.shape === 'string';

function moveOut(from: Side, by: number): Moved {
  if (by === 0) return { side: from, from, by, turned: false };
  if (from.bulge === 0) {
    const out = times(toTheRight(unit(minus(from.to, from.from))), by);
    return { side: { ...from, from: plus(from.from, out), to: plus(from.to, out) }, from, by, turned: false };
  }
  const { centre, radius, sweep } = arcOf(from);
  const grown = radius + Math.sign(sweep) * by;
  const move = (point: Point) => plus(centre, times(minus(point, centre), grown / radius));
  return { side: { ...from, from: move(from.from), to: move(from.to) }, from, by, turned: grown <= NEAR };
}

/** The side between two points of its own line or circle; undefined when that runs backwards. */
function shorten(side: Side, from: Point, to: Point): Side | undefined {
  if (side.bulge === 0) {
    return dot(minus(to, from), minus(side.to, side.from)) < -NEAR ? undefined : { ...side, from, to };
  }
  if (from === side.from && to === side.to) return side;
  const { centre, sweep, start } = arcOf(side);
  const angle = (point: Point) => Math.atan2(point.y - centre.y, point.x - centre.x);
  const wrap = (turn: number) => turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const swept = sweep + wrap(angle(to) - start - sweep) - wrap(angle(from) - start);
  return swept * sweep < 0 ? undefined : { ...side, from, to, bulge: Math.tan(swept / 4) };
}
