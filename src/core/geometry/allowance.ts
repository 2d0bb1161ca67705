import { arcOf } from './arc.ts';
import { cornerName, sides } from './outline.ts';
import { distance, minus, plus, times, toTheRight, unit } from './point.ts';
import { fail, ok } from '../measure/index.ts';
import { joinCorner } from './join.ts';
import { sameCorner } from './corners.ts';
import type { Corner, Join } from './join.ts';
import type { Edge, Outline, Side } from './outline.ts';
import type { GeometryFault } from './fault.ts';
import type { Result } from '../measure/index.ts';

/** A side moved out by its allowance; `turned` when an arc was moved past its own centre. */
export type Moved = { side: Side; by: number; turned: boolean };

/**
 * Adds an allowance to each edge: the stitch line becomes the cut line. Straight edges stay parallel, arcs stay
 * concentric. Edges keep their names; new edges at a corner are called after it (`top-right corner`).
 *
 * @param allowance mm outward for all edges, or by edge name (edges not named get 0); negative goes inward
 * @param corner how an outer corner is cut, for all corners or by corner name: mitred if left out. It applies where
 * the cut lines come apart: at outer corners of an allowance, at inner corners of an inset. At the other corners the
 * lines are trimmed where they meet. Edges that run on in one line with different allowances get a step.
 *
 * Faults: `unknown-edge`, `unknown-corner`, `not-finite`, `nothing-left` (an inset that uses the shape up),
 * `falls-apart` (an inset that leaves separate parts), `closes-up` (allowances that meet round an opening).
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
  const allowances = allowanceOf(ring, allowance);
  if (!allowances.ok) return allowances;
  const corners = cornersOf(ring, corner);
  if (!corners.ok) return corners;

  const moved = ring.map((side, i) => moveOut(side, allowances.value[i]!));
  const joins: Join[] = moved.map((after, i) => {
    const before = moved[(i + moved.length - 1) % moved.length]!;
    return joinCorner(before, after, ring[i]!.from, corners.value[i]!.name, corners.value[i]!.corner);
  });
  const edges: Edge[] = [];
  for (const [i, { side }] of moved.entries()) {
    const [start, end] = [joins[i]!, joins[(i + 1) % joins.length]!];
    edges.push(...start.edges);
    const cut = shorten(side, start.start, end.end);
    if (distance(cut.from, cut.to) > 1e-9) edges.push({ name: cut.name, from: cut.from, bulge: cut.bulge });
  }
  return ok(edges);
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

function moveOut(side: Side, by: number): Moved {
  if (by === 0) return { side, by, turned: false };
  if (side.bulge === 0) {
    const out = times(toTheRight(unit(minus(side.to, side.from))), by);
    return { side: { ...side, from: plus(side.from, out), to: plus(side.to, out) }, by, turned: false };
  }
  const { centre, radius, sweep } = arcOf(side);
  const grown = radius + Math.sign(sweep) * by;
  const move = (point: Side['from']) => plus(centre, times(minus(point, centre), grown / radius));
  return { side: { ...side, from: move(side.from), to: move(side.to) }, by, turned: grown <= 0 };
}

/** The side between two points of its own line or circle. */
function shorten(side: Side, from: Side['from'], to: Side['from']): Side {
  if (side.bulge === 0 || (from === side.from && to === side.to)) return { ...side, from, to };
  const { centre, sweep, start } = arcOf(side);
  const angle = (point: Side['from']) => Math.atan2(point.y - centre.y, point.x - centre.x);
  const wrap = (turn: number) => turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
  const swept = sweep + wrap(angle(to) - start - sweep) - wrap(angle(from) - start);
  return { ...side, from, to, bulge: Math.tan(swept / 4) };
}
