import { cornerName, sides } from './outline.ts';
import { cross, distance, dot, plus, times } from './point.ts';
import { fail, ok } from '../measure/index.ts';
import { tangent } from './arc.ts';
import type { Edge, Outline } from './outline.ts';
import type { GeometryFault } from './fault.ts';
import type { Result } from '../measure/index.ts';

/** What a corner of the finished shape becomes: rounded with a radius, or cut off at a length along both edges. */
export type CornerShape = { rounded: number } | { cut: number };

/**
 * Rounds or cuts off corners between straight edges. Shapes are given for all corners at once or by corner name
 * (`top-right corner`, or `top-right` for short). The new edge carries the corner's name. Where two sides run into one
 * another smoothly, as the arcs of a curve do, is no corner unless it is named.
 *
 * Faults: `unknown-corner`, and `corner-too-large` when two corners of an edge need more than its length.
 *
 * @example
 * withCorners(rectangle(40, 20), { 'top-right': { cut: 5 } }) // => five edges, the new one `top-right corner`
 * withCorners(rectangle(40, 20), { rounded: 10 }) // => a shape with half-round ends
 */
export function withCorners(
  outline: Outline,
  corners: CornerShape | Record<string, CornerShape>,
): Result<Outline, GeometryFault> {
  const ring = sides(outline);
  const names = ring.map((side, i) => cornerName(ring[(i + ring.length - 1) % ring.length]!.name, side.name));
  const isSmooth = ring.map((side, i) => {
    const [before, after] = [tangent(ring[(i + ring.length - 1) % ring.length]!, 'end'), tangent(side, 'start')];
    return Math.abs(cross(before, after)) < SMOOTH && dot(before, after) > 0;
  });
  const shapes = shapesByCorner(names, isSmooth, corners);
  if (!shapes.ok) return shapes;

  // How much each corner takes off both its edges.
  const takes = ring.map((side, i) => {
    const shape = shapes.value[i];
    if (!shape) return 0;
    if ('cut' in shape) return shape.cut;
    const before = tangent(ring[(i + ring.length - 1) % ring.length]!, 'end');
    const after = tangent(side, 'start');
    const turn = Math.atan2(cross(before, after), dot(before, after));
    return shape.rounded * Math.abs(Math.tan(turn / 2));
  });

  const edges: Edge[] = [];
  for (const [i, side] of ring.entries()) {
    const before = ring[(i + ring.length - 1) % ring.length]!;
    const take = takes[i]!;
    const shape = shapes.value[i];
    const atEnd = takes[(i + 1) % ring.length]!;
    const size = distance(side.from, side.to);
    if (take + atEnd > size + 1e-9) {
      return fail({
        code: 'corner-too-large',
        message: `The corners of the edge ${side.name} need more than its whole length.`,
        edge: side.name,
      });
    }
    if (shape && take > 0) {
      if (side.bulge !== 0 || before.bulge !== 0) {
        return fail({
          code: 'corner-too-large',
          message: `The ${names[i]} lies on a curved edge. Only corners between straight edges can be shaped.`,
          corner: names[i]!,
        });
      }
      const turn = Math.atan2(
        cross(tangent(before, 'end'), tangent(side, 'start')),
        dot(tangent(before, 'end'), tangent(side, 'start')),
      );
      const from = plus(side.from, times(tangent(before, 'end'), -take));
      edges.push({ name: names[i]!, from, bulge: 'cut' in shape ? 0 : Math.tan(turn / 4) });
    }
    // An edge that its two corners use up disappears.
    if (size - take - atEnd > 1e-9) {
      edges.push({ ...side, from: take > 0 ? plus(side.from, times(tangent(side, 'start'), take)) : side.from });
    }
  }
  return ok(edges.map(({ name, from, bulge }) => ({ name, from, bulge })));
}

/** Sides that turn by less than this, in radians, run into one another. */
const SMOOTH = 1e-6;

function shapesByCorner(
  names: string[],
  isSmooth: readonly boolean[],
  corners: CornerShape | Record<string, CornerShape>,
): Result<(CornerShape | undefined)[], GeometryFault> {
  if (isShape(corners)) return ok(names.map((_, i) => (isSmooth[i] ? undefined : corners)));
  const found = new Map<number, CornerShape>();
  for (const [asked, shape] of Object.entries(corners)) {
    const at = names.flatMap((name, i) => (sameCorner(name, asked) ? [i] : []));
    if (at.length === 0) {
      return fail({
        code: 'unknown-corner',
        message: `There is no ${fullName(asked)}. The corners are ${names.join(', ')}.`,
        corner: asked,
      });
    }
    for (const i of at) found.set(i, shape);
  }
  return ok(names.map((_, i) => found.get(i)));
}

function isShape(corners: CornerShape | Record<string, CornerShape>): corners is CornerShape {
  return (
    typeof corners['rounded' as keyof typeof corners] === 'number' ||
    typeof corners['cut' as keyof typeof corners] === 'number'
  );
}

const fullName = (corner: string): string => (corner.endsWith(' corner') ? corner : `${corner} corner`);

/** Whether two ways of writing a corner mean the same: `top-right corner`, `top-right`, `right-top`. */
export function sameCorner(name: string, asked: string): boolean {
  const plain = fullName(asked);
  return name === plain || name === fullName(plain.slice(0, -' corner'.length).split('-').reverse().join('-'));
}
