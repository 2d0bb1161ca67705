/** Darts of a piece: what each takes of an edge, and where its legs lie. */
import { direction, distance, dot, minus, plus, times } from '../geometry/point.ts';
import { edgeRun, fromLowEnd, runLength } from './lines.ts';
import { leftOf, lineThrough, sides } from '../geometry/index.ts';
import { quote, SAME, plainName } from '../measure/index.ts';
import { covers } from '../cloth/ring.ts';
import { straightened } from '../geometry/index.ts';
import { unknownEdge, type CompiledPiece } from './shapes.ts';
import type { Dart } from './pattern.ts';
import type { Evaluator } from './evaluator.ts';
import type { Lines } from './lines.ts';
import type { Place } from '../measure/index.ts';
import type { Line, Point } from '../geometry/index.ts';

/**
 * The darts of a piece where they lie on it. Those that cannot be sewn are reported: on an edge that is not there or not
 * straight, past its ends, into one another, or with a point outside the piece.
 */
export function drawDarts(evaluator: Evaluator, piece: CompiledPiece, lines: Pick<Lines, 'stitch' | 'cut'>): Dart[] {
  const found: Dart[] = [];
  for (const { on, at, width: wide, length: long, place, mirrored } of piece.darts) {
    const refuse = (field: string, code: string, message: string, fix: string, amount?: number): void =>
      evaluator.report({
        severity: 'error',
        place: [...place, field] as Place,
        code,
        message,
        fix,
        ...(amount !== undefined && { amount }),
      });
    const cut = edgeRun(sides(lines.cut), on);
    const stitch = edgeRun(sides(lines.stitch), on);
    const [side] = cut;
    if (!side || stitch.length === 0) {
      const names = [...new Set(lines.cut.map(({ name }) => name))];
      evaluator.report({ ...unknownEdge(on, names, piece.label, [...place, 'on']), start: 0, end: on.length });
      continue;
    }
    const line = lineThrough(side.from, cut.at(-1)!.to);
    const isStraight = [...cut, ...stitch].every(
      ({ bulge, from, to }) =>
        Math.abs(bulge) < 1e-9 && Math.abs(leftOf(line, from) - leftOf(line, to)) < SAME && distance(from, to) > SAME,
    );
    if (!isStraight) {
      const message = `The ${side.name} of ${quote(piece.label)} is not one straight edge: a dart there cannot be worked out yet.`;
      refuse('on', 'dart-on-curve', message, 'Name a straight edge.');
      continue;
    }
    const [width, length] = [evaluator.length(wide), evaluator.length(long)];
    const said = at === 'middle' ? runLength(cut) / 2 : evaluator.length(at);
    const along = said !== undefined && mirrored && isLevel(line) ? runLength(cut) - said : said;
    if (width === undefined || length === undefined || along === undefined) continue;
    if (!(width > SAME) || !(length > SAME)) {
      const field = width > SAME ? 'length' : 'width';
      refuse(field, 'dart-of-nothing', `A dart without a ${field} takes in nothing.`, `Make its ${field} longer.`);
      continue;
    }
    const middle = fromLowEnd(cut, Math.min(along, runLength(cut)));
    const way = direction(line.angle);
    const inward = { x: -way.y, y: way.x };
    const dart: Dart = {
      edge: side.name,
      width,
      length,
      middle,
      along: way,
      inward,
      allowance: leftOf(line, stitch[0]!.from),
    };
    const place1 = (p: Point) => dot(way, minus(p, middle));
    const ends = [stitch[0]!.from, stitch.at(-1)!.to].map(place1);
    const beyond = Math.max(Math.min(...ends) + width / 2, width / 2 - Math.max(...ends), along - runLength(cut));
    if (beyond > SAME) {
      const message = `This dart reaches ${evaluator.say(beyond)} past the end of the ${side.name} of ${quote(piece.label)}.`;
      refuse('at', 'dart-off-edge', message, 'Lay it farther in, or make it narrower.', beyond);
      continue;
    }
    if (!covers(straightened(lines.stitch, 0.05), dartLines(dart).point)) {
      const message = `The point of this dart lies outside ${quote(piece.label)}.`;
      refuse('length', 'dart-too-long', message, 'Make it shorter.');
      continue;
    }
    const near = found.find(
      (other) => other.edge === dart.edge && Math.abs(place1(other.middle)) < (other.width + width) / 2 - SAME,
    );
    if (near) {
      const by = (near.width + width) / 2 - Math.abs(place1(near.middle));
      refuse(
        'at',
        'darts-overlap',
        `This dart reaches ${evaluator.say(by)} into the one before it.`,
        'Lay them farther apart.',
        by,
      );
      continue;
    }
    found.push(dart);
  }
  return found;
}

/** Whether an edge runs further across than up: it is measured from its left end. */
const isLevel = ({ angle }: Line): boolean => {
  const { x, y } = direction(angle);
  return Math.abs(x) >= Math.abs(y) - 1e-9;
};

/** What darts take of an edge on the stitch line, in mm; of all edges where none is named. */
export const takenByDarts = (darts: readonly Dart[], edge?: string): number =>
  darts.reduce(
    (sum, dart) => sum + (edge === undefined || plainName(dart.edge) === plainName(edge) ? dart.width : 0),
    0,
  );

/** The point of a dart, and the way of each of its legs from the cut edge to it. */
export function dartLines({ middle, along, inward, width, length, allowance }: Dart): {
  point: Point;
  legs: Point[][];
} {
  const at = (s: number, d: number) => plus(middle, plus(times(along, s), times(inward, d)));
  const point = at(0, allowance + length);
  const wide = (width / 2) * (1 + allowance / length);
  return { point, legs: [-wide, wide].map((s) => [at(s, 0), point]) };
}
