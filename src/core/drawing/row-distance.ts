import { boxInView, viewed } from './view.ts';
import { pathPoints, polyline } from './path.ts';
import { plateAt, plateLabel } from './plate.ts';
import { distance, direction } from '../geometry/point.ts';
import { leftOf, lineThrough } from '../geometry/index.ts';
import { LINE, TYPE } from './dimension.ts';
import { letteringWidth } from './lettering.ts';
import { pens } from './pens.ts';
import { rowsOf } from './rows.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { Path } from './path.ts';
import type { Frame } from './frame.ts';
import type { Shape } from './scene.ts';
import type { View } from './view.ts';
import type { Work } from '../cloth/work.ts';

/** How far a row lies from the edge that it runs along, and the stretch of it where that is longest. */
export type RowDistance = { readonly distance: number; readonly from: Point; readonly to: Point };

/** An edge further off than this, in mm, is none that anybody measures a row from; nor is one that it runs on. */
const [MOST, LEAST] = [60, 0.5];
/** Two rows alike within this, in mm. */
const ALIKE = 0.05;
/** No more labels than this on one drawing. */
const LABELS = 2;

/**
 * How far the rows with the numbers asked for lie from the nearest edge that runs along them, of what they go through.
 * Each distance once, the one along the longest stretch first.
 */
export function rowDistances(work: Work, ids: ReadonlySet<number>): RowDistance[] {
  const found: (RowDistance & { id: number; long: number })[] = [];
  for (const { id, kind, stretches } of rowsOf(work)) {
    if (!ids.has(id) || kind === 'slipstitch' || kind === 'zigzag' || kind === 'overlock') continue;
    for (const { from, to, length, plies } of stretches) {
      const offs = plies.flatMap(({ outline }) =>
        outline.flatMap((edge, i) => besideEdge(from, to, edge.from, outline[(i + 1) % outline.length]!.from)),
      );
      if (offs.length === 0) continue;
      const one = offs.reduce((best, each) => (Math.abs(each) < Math.abs(best) ? each : best));
      // Walked so that the edge lies on its right.
      const here = { id, distance: Math.abs(one), long: length, ...(one < 0 ? { from, to } : { from: to, to: from }) };
      // A row that goes on beyond what it runs along is measured from that alone.
      const before = found.findIndex((other) => other.id === id && isInLine(other, here));
      const off = before < 0 ? -Infinity : here.distance - found[before]!.distance;
      if (before < 0) found.push(here);
      else if (off < -ALIKE || (off < ALIKE && here.long > found[before]!.long)) found[before] = here;
    }
  }
  const longest = found.toSorted((a, b) => b.long - a.long);
  return longest.filter((one, i) => longest.findIndex((b) => Math.abs(b.distance - one.distance) < ALIKE) === i);
}

const isInLine = ({ from, to }: RowDistance, other: RowDistance): boolean =>
  [other.from, other.to].every((p) => Math.abs(leftOf(lineThrough(from, to), p)) < ALIKE);

/** How far an edge lies to the left of a stretch that it runs along, at the middle of it; nothing where it does not. */
function besideEdge(from: Point, to: Point, a: Point, b: Point): number[] {
  const row = lineThrough(from, to);
  const [p, q] = [leftOf(row, a), leftOf(row, b)];
  if (Math.abs(p - q) > ALIKE || Math.abs(p) > MOST || Math.abs(p) < LEAST) return [];
  const { x, y } = direction(row.angle);
  const along = (point: Point) => (point.x - from.x) * x + (point.y - from.y) * y;
  const middle = distance(from, to) / 2;
  const [s, t] = [along(a), along(b)];
  return Math.min(s, t) <= middle && Math.max(s, t) >= middle ? [(p + q) / 2] : [];
}

/** Where along its row a label is tried, in turn. */
const PLACES = [0.5, 0.35, 0.65, 0.2, 0.8];
/** Between a row and its label, and round the letters, in mm of the sheet. */
const [AWAY, ROUND] = [1.2, 0.5];

/** Labels beside the rows of a step, on the side away from the edge, each where no line of the drawing is in its way. */
export function rowLabels(
  found: readonly RowDistance[],
  view: View,
  frame: Frame,
  { drawn, set }: { drawn: readonly Shape[]; set: (mm: number) => string },
): Shape[] {
  const there = viewed(view, frame.onto);
  const lines = drawn.flatMap((shape) =>
    shape.kind === 'path' && pens[shape.role].line ? segmentsOf(shape.path) : [],
  );
  const { x, y, width, height } = boxInView(view);
  const corners = [frame.onto({ x, y: y + height }), frame.onto({ x: x + width, y })] as const;
  const taken: Box[] = [];
  return found.slice(0, LABELS).flatMap((row, i): Shape[] => {
    const text = set(row.distance);
    const [wide, high] = [letteringWidth(text, TYPE) + 2 * ROUND, LINE];
    for (const share of PLACES) {
      const { edge, foot, way } = onSheet(row, share, there);
      const reach = AWAY + (Math.abs(way.x) * wide + Math.abs(way.y) * high) / 2;
      const middle = { x: foot.x + way.x * reach, y: foot.y + way.y * reach };
      const room = plateAt(middle, wide);
      const isInside =
        room.x > corners[0].x && room.x + wide < corners[1].x && room.y > corners[0].y && room.y + high < corners[1].y;
      if (!isInside || lines.some((line) => crosses(line, room)) || taken.some((one) => meets(one, room))) continue;
      taken.push(room);
      const near = { x: foot.x + way.x * AWAY, y: foot.y + way.y * AWAY };
      return [
        { kind: 'path', name: `row distance ${i + 1} leader`, role: 'leader', path: polyline(edge, near) },
        ...plateLabel(`row distance ${i + 1}`, `row distance ${i + 1} plate`, text, room),
      ];
    }
    return [];
  });
}

/** A place of a row and of its edge on the sheet, and the way from the edge to the row, of length 1. */
function onSheet({ from, to, distance: off }: RowDistance, share: number, there: (p: Point) => Point) {
  const { angle } = lineThrough(from, to);
  const { x, y } = direction(angle);
  const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
  const [edge, foot] = [there({ x: at.x + y * off, y: at.y - x * off }), there(at)];
  const long = distance(edge, foot);
  return { edge, foot, way: { x: (foot.x - edge.x) / long, y: (foot.y - edge.y) / long } };
}

type Segment = readonly [Point, Point];

function segmentsOf(path: Path): Segment[] {
  const found: Segment[] = [];
  let [start, here]: (Point | undefined)[] = [];
  for (const command of path) {
    const to: Point | undefined = command[0] === 'Z' ? start : pathPoints([command]).at(-1);
    if (command[0] === 'M') start = to;
    else if (here && to) found.push([here, to]);
    here = to;
  }
  return found;
}

const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Whether a line comes into a box, by clipping it to each of its sides. */
function crosses([a, b]: Segment, { x, y, width, height }: Box): boolean {
  let [from, to] = [0, 1];
  for (const [start, way, low, high] of [
    [a.x, b.x - a.x, x, x + width],
    [a.y, b.y - a.y, y, y + height],
  ] as const) {
    if (way === 0) {
      if (start <= low || start >= high) return false;
      continue;
    }
    const [one, other] = [(low - start) / way, (high - start) / way];
    from = Math.max(from, Math.min(one, other));
    to = Math.min(to, Math.max(one, other));
  }
  return from < to;
}
