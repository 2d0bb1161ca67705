/** Questions that are answered by pointing at a drawing, or from the list of what can be pointed at. */
import { capital, formatLength, SAME } from '../measure/index.ts';
import { sample, sides, type Point } from '../geometry/index.ts';
import { sewnEdges } from './choices.ts';
import type { Pattern, Piece } from '../project/pattern.ts';

/** A line or an area of a drawing that can be pointed at. Points in mm, y up. */
export type PointingTarget = {
  /** Under this name an answer holds it, at every size. */
  key: string;
  /** As it is marked on the drawing; none where its name says where it is. */
  tag?: string;
  /** As the list has it. */
  label: string;
  right: boolean;
  /** What to say to whoever points at it and should not. */
  say: string;
  /** Where its mark stands. */
  at: Point;
} & ({ line: Point[] } | { rings: Point[][] });

/** What is drawn, and what of it can be pointed at. */
export type Pointing = {
  /** The outline of the cloth. */
  cloth: Point[][];
  spots: PointingTarget[];
  /** What to do, for the drawing and for paper. */
  todo: string;
};

/** In mm: an arc is drawn by chords that leave it by no more. */
const CHORD = 0.2;

/**
 * The edges of a piece. Those with a seam allowance are right, unless others are named.
 *
 * @example pointAtEdges(flap).spots.map(({ key, right }) => [key, right]) // => [['bottom', true], …]
 */
export function pointAtEdges(piece: Piece, wanted: readonly string[] = sewnEdges(piece)): Pointing {
  const { outline, corners } = piece;
  const all = sides(outline);
  // A corner that is rounded or cut off goes with the edges it lies between.
  const names = [...new Set(all.map(({ name }) => name).filter((name) => !corners.includes(name)))];
  return {
    cloth: [sample(outline, CHORD)],
    spots: names.map((name) => {
      // Stretches of one name follow each other; a corner between them is drawn with the cloth.
      const line = all.filter((side) => side.name === name).flatMap(chords);
      return {
        ...{ key: name, label: capital(name), right: wanted.includes(name), say: `Not the ${name} edge.` },
        ...{ line, at: line[Math.floor(line.length / 2)]! },
      };
    }),
    todo: 'Choose the edges.',
  };
}

/** An edge as points: a straight one by its ends, an arc by as many as `sample` gives for it and its chord. */
function chords({ name, from, to, bulge }: ReturnType<typeof sides>[number]): Point[] {
  if (bulge === 0) return [from, to];
  const arc = [
    { name, from, bulge },
    { name: 'chord', from: to, bulge: 0 },
  ];
  return sample(arc, CHORD);
}

/** What is asked of the folds of a pleated strip: where one of them will lie, or which of the lines are of one kind. */
export type FoldQuestion = { fold: number } | { kind: 'mountain' | 'valley' };

/** As a share of the strip: lines nearer to each other cannot be told apart by pointing. */
const APART = 0.025;
/** As many wrong lines beside the right one. */
const MOST_WRONG = 4;

/**
 * The fold lines of a pleated strip, flat and right side up. Asked for one fold, the others are lines where people put
 * it by mistake; asked for a kind, they are all its folds. Undefined where the piece has no such fold.
 *
 * @example pointAtFolds(strip, { fold: 3 }, pattern).spots.find(({ right }) => right).label // => 'B, 8 in'
 */
export function pointAtFolds(piece: Piece, asked: FoldQuestion, pattern: Pattern): Pointing | undefined {
  const { pleats: plan, cutOutline } = piece;
  if (!plan) return undefined;
  const { edition, grid } = pattern;
  const from = (at: number) => (plan.from === 'top' ? plan.stripLength - at : at);
  const show = (at: number) => formatLength(from(at), edition, { grid, style: 'set' });
  const lines =
    'fold' in asked
      ? placesForFold(plan, asked.fold)
      : plan.folds.map(({ at, kind }, i) => ({
          ...{ key: `fold ${i + 1}`, at, right: kind === asked.kind },
          say: `Fold ${i + 1} is a ${kind} fold.`,
        }));
  if (!lines.some(({ right }) => right)) return undefined;
  const ring = sample(cutOutline, CHORD);
  const [left, width] = [Math.min(...ring.map(({ x }) => x)), Math.max(...ring.map(({ x }) => x))];
  const low = Math.min(...ring.map(({ y }) => y));
  const spots = lines
    .toSorted((a, b) => a.at - b.at)
    .map(({ at, ...rest }, i) => {
      const tag = String.fromCharCode(65 + i);
      const [start, end] = [left, width].map((x) => ({ x, y: low + at })) as [Point, Point];
      return { ...rest, tag, label: `${tag}, ${show(at)}`, line: [start, end], at: end };
    });
  const todo = 'fold' in asked ? 'Choose one line.' : 'Choose the lines.';
  const sizes = `Sizes are from the ${plan.from} raw edge.`;
  return { cloth: [ring], spots, todo: `${todo} ${sizes} The strip lies flat, right side up.` };
}

type Plan = NonNullable<Piece['pleats']>;

/** Where a fold lies, and where people put it; those too near to another line are left out. */
function placesForFold({ folds, pockets, stripLength, from }: Plan, n: number) {
  const right = folds[n - 1]?.at;
  const [first, second] = pockets;
  if (right === undefined || !first) return [];
  const step = second ? second.top - first.top : 0;
  const start = first.bottom;
  const wrong = [
    {
      key: 'without the step',
      at: start + n * first.depth,
      say: 'Not each way is one depth. Up to the next pocket the strip climbs a depth and a step.',
    },
    {
      key: 'a step each way',
      at: start + n * first.depth + (n - 1) * step,
      say: 'The step is added only where the strip climbs, and not on its way down.',
    },
    ...(from === 'bottom'
      ? [
          {
            key: 'from the pocket, not from the edge',
            at: right - start,
            say: 'Measure from the raw edge, and not from the first pocket.',
          },
        ]
      : []),
    { key: 'the fold before it', at: folds[n - 2]?.at, say: 'That is the fold before it.' },
    { key: 'the fold after it', at: folds[n]?.at, say: 'That is the fold after it.' },
    { key: 'two folds after it', at: folds[n + 1]?.at, say: 'That is the second fold after it.' },
  ];
  const taken: { key: string; at: number; right: boolean; say: string }[] = [
    { key: 'right', at: right, right: true, say: '' },
  ];
  for (const { key, at, say } of wrong) {
    if (taken.length > MOST_WRONG || at === undefined) continue;
    if (at <= SAME || at >= stripLength - SAME) continue;
    if (taken.some((other) => Math.abs(other.at - at) < APART * stripLength)) continue;
    taken.push({ key, at, right: false, say });
  }
  return taken;
}

/**
 * How high the marks of lines stand, by their keys, so that none touches the next: from the lowest up, no higher than
 * they must.
 *
 * @param least from one mark to the next, in mm of the cloth
 */
export function clearMarks({ spots }: Pointing, least: number): Map<string, number> {
  const marked = spots.filter((spot) => spot.tag !== undefined && 'line' in spot);
  const places = new Map<string, number>();
  let before = -Infinity;
  for (const { key, at } of marked.toSorted((a, b) => a.at.y - b.at.y)) {
    before = Math.max(at.y, before + least);
    places.set(key, before);
  }
  return places;
}
