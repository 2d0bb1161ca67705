import type { Command, Path } from './path.ts';

type Spot = readonly [x: number, y: number];
type Stroke = Spot[];

/** As near as this, in mm of paper, two points are one. */
const NEAR = 0.005;

/**
 * The path with lines that meet end to end drawn in one stroke, and corners on a straight line left out: a row of
 * stitches that was told stretch by stretch then keeps the rhythm of its dashes. Rings and curves stay as they are.
 *
 * @example
 * inStrokes([['M', 5, 0], ['L', 9, 0], ['M', 0, 0], ['L', 5, 0]]) // => [['M', 0, 0], ['L', 9, 0]]
 */
export function inStrokes(path: Path): Command[] {
  const others: Command[] = [];
  const strokes = new Set<Stroke>();
  /** Strokes by their two ends. */
  const ending = new Map<string, Stroke>();
  const take = (at: Spot): Stroke | undefined => {
    const stroke = ending.get(keyOf(at));
    if (stroke) {
      strokes.delete(stroke);
      for (const end of [stroke[0]!, stroke.at(-1)!]) if (ending.get(keyOf(end)) === stroke) ending.delete(keyOf(end));
    }
    return stroke;
  };
  for (const part of partsOf(path)) {
    let stroke = lineOf(part);
    if (!stroke) {
      others.push(...part);
      continue;
    }
    const before = take(stroke[0]!);
    if (before) stroke = joined(keyOf(before[0]!) === keyOf(stroke[0]!) ? before.toReversed() : before, stroke);
    const after = take(stroke.at(-1)!);
    if (after) stroke = joined(stroke, keyOf(after[0]!) === keyOf(stroke.at(-1)!) ? after : after.toReversed());
    strokes.add(stroke);
    for (const end of [stroke[0]!, stroke.at(-1)!]) ending.set(keyOf(end), stroke);
  }
  const drawn = [...strokes].flatMap((stroke) => stroke.map(([x, y], i): Command => [i === 0 ? 'M' : 'L', x, y]));
  return [...others, ...drawn];
}

const keyOf = ([x, y]: Spot): string => `${Math.round(x / NEAR)} ${Math.round(y / NEAR)}`;

/** What the pen draws before it is lifted. */
function partsOf(path: Path): Command[][] {
  const parts: Command[][] = [];
  for (const command of path) {
    if (command[0] === 'M') parts.push([]);
    parts.at(-1)?.push(command);
  }
  return parts;
}

/** The corners of an open line; undefined for rings and curves. */
function lineOf(part: readonly Command[]): Stroke | undefined {
  if (part.some(([letter]) => letter === 'C' || letter === 'Z')) return undefined;
  return part.map((command): Spot => [command[1]!, command[2]!]);
}

/** Two strokes that meet as one. */
function joined(one: Stroke, other: Stroke): Stroke {
  const [from, at, to] = [one.at(-2)!, one.at(-1)!, other[1]!];
  return isStraight(from, at, to) ? [...one.slice(0, -1), ...other.slice(1)] : [...one, ...other.slice(1)];
}

function isStraight([ax, ay]: Spot, [bx, by]: Spot, [cx, cy]: Spot): boolean {
  const [ux, uy, vx, vy] = [bx - ax, by - ay, cx - bx, cy - by];
  const off = Math.abs(ux * vy - uy * vx) / Math.hypot(cx - ax, cy - ay);
  return ux * vx + uy * vy > 0 && off < NEAR;
}
