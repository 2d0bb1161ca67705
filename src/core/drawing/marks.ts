import { box, curves, polyline } from './path.ts';
import type { Point } from '../geometry/point.ts';
import type { Command } from './path.ts';

/** The double arrow of the grain, from one point of the sheet to another. */
export function grainArrow(from: Point, to: Point): Command[] {
  const size = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / size, (to.y - from.y) / size];
  const head = (tip: Point, way: 1 | -1): Command[] =>
    polyline({ x: tip.x - way * 1.7 * dx + 0.9 * dy, y: tip.y - way * 1.7 * dy - 0.9 * dx }, tip, {
      x: tip.x - way * 1.7 * dx - 0.9 * dy,
      y: tip.y - way * 1.7 * dy + 0.9 * dx,
    });
  return [...polyline(from, to), ...head(to, 1), ...head(from, -1)];
}

/** A notch at a point of the cut line: a small wedge whose tip points into the cloth, along `inward` (length 1). */
export function notchWedge(at: Point, inward: Point): Command[] {
  const [deep, half] = [2.2, 1];
  return polyline(
    { x: at.x - half * inward.y, y: at.y + half * inward.x },
    { x: at.x + deep * inward.x, y: at.y + deep * inward.y },
    { x: at.x + half * inward.y, y: at.y - half * inward.x },
  );
}

/** The line across a strip that is drawn shorter than it is: flat, with one jag in the middle. */
export function breakLine(from: number, to: number, y: number): Command[] {
  const [middle, jag] = [(from + to) / 2, Math.max(0.7, Math.min(1.6, (to - from) / 6))];
  return polyline(
    { x: from - 1.2, y },
    { x: middle - jag, y },
    { x: middle - jag / 3, y: y - jag },
    { x: middle + jag / 3, y: y + jag },
    { x: middle + jag, y },
    { x: to + 1.2, y },
  );
}

/** An arrow that bends to its left from one point of the sheet to another; `bend` as a share of its length. */
export function bentArrow(from: Point, to: Point, bend = 0.25): Command[] {
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const knee = { x: (from.x + to.x) / 2 + bend * dy, y: (from.y + to.y) / 2 - bend * dx };
  // A curve with one knee, drawn with the two handles that a Bézier curve of the third degree has.
  const handle = (end: Point): [number, number] => [
    end.x + ((knee.x - end.x) * 2) / 3,
    end.y + ((knee.y - end.y) * 2) / 3,
  ];
  return [
    ['M', from.x, from.y],
    ['C', ...handle(from), ...handle(to), to.x, to.y],
    ...arrowHead(to, { x: to.x - knee.x, y: to.y - knee.y }),
  ];
}

/** The loop of an arrow that says: turn it over. */
export function turnOverArrow({ x, y }: Point, reach: number): Command[] {
  const [low, top] = [y + 0.22 * reach, y - 0.5 * reach];
  const end = { x: x + reach, y: low };
  return [
    ['M', x - reach, low],
    ['C', x + 0.6 * reach, low, x + 0.9 * reach, top, x, top],
    ['C', x - 0.9 * reach, top, x - 0.6 * reach, low, end.x, end.y],
    ...arrowHead(end, { x: 1, y: 0 }),
  ];
}

function arrowHead(tip: Point, way: Point): Command[] {
  const size = Math.hypot(way.x, way.y) || 1;
  const [dx, dy] = [way.x / size, way.y / size];
  return polyline({ x: tip.x - 2 * dx + 1.1 * dy, y: tip.y - 2 * dy - 1.1 * dx }, tip, {
    x: tip.x - 2 * dx - 1.1 * dy,
    y: tip.y - 2 * dy + 1.1 * dx,
  });
}

/** A row of zigzag from one point of the sheet to another. */
export function zigzag(from: Point, to: Point): Command[] {
  const [wide, pitch] = [0.6, 0.8];
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const count = Math.max(1, Math.round(length / pitch));
  const [dx, dy] = [(to.x - from.x) / count, (to.y - from.y) / count];
  const [nx, ny] = length === 0 ? [0, 0] : [(-(to.y - from.y) / length) * wide, ((to.x - from.x) / length) * wide];
  const points = Array.from({ length: count + 1 }, (_, i) => {
    const side = i % 2 === 0 ? 1 : -1;
    return { x: from.x + i * dx + side * nx, y: from.y + i * dy + side * ny };
  });
  return polyline(...points);
}

/** Hardware as a ring with its middle marked, in mm of the sheet: it is never drawn so small that it is lost. */
export const hardwareRing = ({ x, y }: Point): Command[] =>
  [1.5, 0.4].flatMap((radius): Command[] => [
    ['M', x + radius, y],
    ...curves({ x, y }, radius, 0, 2 * Math.PI, (point) => point),
    ['Z'],
  ]);

const ringOf = ({ x, y }: Point, radius: number): Command[] => [
  ['M', x + radius, y],
  ...curves({ x, y }, radius, 0, 2 * Math.PI, (point) => point),
  ['Z'],
];

/** Hardware as what it is, in mm of the sheet; a ring with its middle marked where that is not known. */
export function hardwareMark(what: string | undefined, at: Point): Command[] {
  const { x, y } = at;
  const line = (x1: number, y1: number, x2: number, y2: number) =>
    polyline({ x: x + x1, y: y + y1 }, { x: x + x2, y: y + y2 });
  switch (what) {
    case 'button':
      return [...ringOf(at, 1.7), ...[-0.5, 0.5].flatMap((off) => ringOf({ x: x + off, y }, 0.3))];
    case 'magnet':
      return [...ringOf(at, 1.6), ...line(-0.6, -0.7, -0.6, 0.7), ...line(0.6, -0.7, 0.6, 0.7)];
    case 'eyelet':
      return [...ringOf(at, 1.6), ...ringOf(at, 0.9)];
    case 'ring':
      return [...ringOf(at, 2.3), ...ringOf(at, 1.7)];
    case 'slider':
      return [...box(x - 2, y - 1.5, 4, 3), ...line(-2, 0, 2, 0)];
    case 'hook':
      return [
        ...ringOf({ x, y: y - 1.6 }, 0.8),
        ['M', x, y - 0.8],
        ['L', x, y + 0.6],
        ['C', x, y + 2.6, x + 2, y + 2.6, x + 2, y + 0.8],
      ];
    // Its stitches are drawn as they are sewn; the middle of the slit is marked.
    case 'buttonhole':
      return ringOf(at, 0.4);
    default:
      return hardwareRing(at);
  }
}

/** The teeth of a zip from one point of the sheet to another, with a bar at each of its stops, and the slider at its start. */
export function zipTeeth(from: Point, to: Point, stops: readonly Point[], slider?: Point): Command[] {
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  const [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
  const bar = (p: Point, half: number) =>
    polyline({ x: p.x - dy * half, y: p.y + dx * half }, { x: p.x + dy * half, y: p.y - dx * half });
  const corner = (p: Point, along: number, aside: number) => ({
    x: p.x + dx * along - dy * aside,
    y: p.y + dy * along + dx * aside,
  });
  const pull = (p: Point): Command[] => [
    ...polyline(corner(p, 0.3, -0.9), corner(p, 0.3, 0.9), corner(p, 2, 0.5), corner(p, 2, -0.5)),
    ['Z'],
  ];
  return [...zigzag(from, to), ...stops.flatMap((stop) => bar(stop, 1.2)), ...(slider ? pull(slider) : [])];
}
