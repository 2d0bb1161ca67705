/** The shapes that pieces of any outline can take on a cloth, and where each may not lie beside another. */
import { bounds, offset, reflect, rotate, sample, translate } from '../geometry/index.ts';
import { noFitPolygon, seenFromOther, type NoFitPolygon } from './no-fit-polygon.ts';
import type { Outline, Point } from '../geometry/index.ts';
import type { PreparedPiece } from './prepare.ts';
import type { BoxTask } from './boxes.ts';

/** One way a piece can lie: its box has its lower left corner at the origin, and its ring half the gap more all round. */
export type LayoutShape = {
  prepared: PreparedPiece;
  angle: number;
  mirrored: boolean;
  ring: Point[];
  width: number;
  height: number;
};

/**
 * Straight-edged outlines are made smaller by this all round, in mm, so that those which fill a width exactly are found
 * to fit: it lies far within the width of a thread.
 */
const EASE = 0.001;

/** Chords leave arcs by at most this, in mm; outlines with arcs are made larger by it all round. */
const CHORD = 0.01;

/** Each piece to lay, by the shapes it may take: numbers into `shapes`. */
export type PlacementChoices = { shapes: LayoutShape[]; choices: number[][] };

/** The shapes of all pieces of a task. Ways to lie that look the same are one shape. */
export function choicesOf(task: BoxTask): PlacementChoices {
  const shapes: LayoutShape[] = [];
  const choices: number[][] = [];
  for (const { prepared, count } of task.pieces) {
    const mirrored = Math.min(count, prepared.layers === 2 ? 0 : (prepared.piece.mirrored ?? 0));
    for (const flip of [false, true]) {
      const many = flip ? mirrored : count - mirrored;
      if (many === 0) continue;
      const angles = prepared.atFold ? prepared.angles.slice(0, 1) : prepared.angles;
      const seen = new Set<string>();
      const own = angles.flatMap((angle) => {
        const shape = shapeOf(prepared, angle, flip, task.gap / 2);
        const key = shape.ring
          .map(({ x, y }) => `${x.toFixed(3)},${y.toFixed(3)}`)
          .sort()
          .join(' ');
        if (shape.width > task.width + 1e-6 || seen.has(key)) return [];
        seen.add(key);
        return [shapes.push(shape) - 1];
      });
      for (let i = 0; i < many && own.length > 0; i++) choices.push(own);
    }
  }
  return { shapes, choices };
}

function shapeOf(prepared: PreparedPiece, angle: number, mirrored: boolean, half: number): LayoutShape {
  // `prepared.outline` lies in the first of its angles already.
  let outline: Outline = rotate(prepared.outline, angle - prepared.angles[0]!);
  if (mirrored) outline = reflect(outline, { at: { x: 0, y: 0 }, angle: 90 });
  const box = bounds(outline);
  const moved = translate(outline, { x: -box.x, y: -box.y });
  const grow = half + (moved.some((edge) => edge.bulge !== 0) ? CHORD : -EASE);
  const ring = sample(offset([polygonOf(moved)], grow)[0] ?? moved, CHORD);
  return { prepared, angle, mirrored, ring, width: box.width, height: box.height };
}

/** Chords in place of arcs. */
const polygonOf = (outline: Outline): Outline =>
  sample(outline, CHORD).map((from, i) => ({ name: `${i}`, from, bulge: 0 }));

/** For two shapes the moves of the second that make them overlap; each pair is worked out when first asked for. */
export function pairsOf(shapes: readonly LayoutShape[]): (a: number, b: number) => NoFitPolygon {
  const known = new Array<NoFitPolygon | undefined>(shapes.length * shapes.length);
  return (a, b) => {
    const at = a * shapes.length + b;
    const before = known[at];
    if (before) return before;
    const other = known[b * shapes.length + a];
    const made = other ? seenFromOther(other) : noFitPolygon(shapes[a]!.ring, shapes[b]!.ring);
    known[at] = made;
    return made;
  };
}
