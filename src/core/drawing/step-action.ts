import { WorkLines, rowRole } from './work-shapes.ts';
import { lineThrough, leftOf } from '../geometry/index.ts';
import { bentArrow, hardwareMark, turnOverArrow } from './marks.ts';
import { boxInView, viewed } from './view.ts';
import { cutApartIn } from '../cloth/work.ts';
import { boxOf } from '../cloth/size.ts';
import { letteringBox } from './lettering.ts';
import { direction } from '../geometry/point.ts';
import { polyline } from './path.ts';
import { cameFrom, tracedCuts, tracedFolds, tracedRows } from './trace.ts';
import { verbNamed } from '../steps/index.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { Command, Onto } from './path.ts';
import type { FoldTrace, Trace } from './trace.ts';
import type { Frame } from './frame.ts';
import type { Mark, Work } from '../cloth/work.ts';
import type { Shape, ShapeRole, TextShape } from './scene.ts';
import type { StepDrawn } from './step.ts';
import type { View } from './view.ts';

/** What a step is about to do, as lines on the works before it. */
export type StepAction = {
  /** The rows of the step where they run on the works before it, and those of them that the work before is drawn with. */
  readonly sewn: readonly Trace[];
  readonly rows: readonly Trace[];
  /** How the rows of the step are drawn; undefined if nothing is sewn. */
  readonly rowRole: ShapeRole | undefined;
  readonly folds: readonly FoldTrace[];
  readonly cuts: readonly Trace[];
  /** Whether what is sewn together is turned about its seam in this step, so that it no longer lies face to face. */
  readonly opensOut: boolean;
  /** Hardware that the step sets. */
  readonly marks: readonly Mark[];
};

/** Reads from the works before and after a step what it does. */
export function actionOf({ verb, after, stitches }: StepDrawn, given: readonly Work[]): StepAction {
  const { cuts, laysFirst, sewsBeforeFolding, turnsOver } = verbNamed(verb);
  // In the stack what is laid comes after what it is laid on.
  const works = laysFirst ? given.toReversed() : given;
  const there = <T extends Trace>(traces: readonly T[]): T[] =>
    traces.map((trace) => (laysFirst ? { ...trace, work: works.length - 1 - trace.work } : trace));
  const ids = new Set(stitches.map(({ id }) => id));
  const apart = cutApartIn(given, after);
  const once = there(tracedRows(works, after, ids));
  const sewn = apart?.twice ? [...once, ...once.map((trace) => turnedRound(trace, works[trace.work]!))] : once;
  const first = after.stitches.find(({ id }) => ids.has(id));
  // What lies turned over has folds that were seams before.
  const traced = turnsOver ? [] : there(tracedFolds(works, after));
  const folds = traced.filter(({ name }) => sewn.length === 0 || name !== 'seam');
  const opensOut = folds.length < traced.length;
  const before = works.reduce((sum, { marks }) => sum + marks.length, 0);
  // What is folded first is sewn when it is folded: its row shows in the work after.
  const firstRow = sewsBeforeFolding && first ? there(tracedRows(works, after, new Set([first.id]))) : [];
  const along = folds.length === 0 ? sewn : firstRow;
  return {
    // The work before is as it is before: what is sewn shows in the work after. What is pressed open, folded or cut
    // after it was sewn hides its row there.
    sewn: along,
    rows: cuts || opensOut || folds.length > 0 ? along : [],
    rowRole: first && rowRole(first.kind),
    opensOut,
    folds,
    cuts: apart
      ? apart.cuts.map((line) => ({ work: 0, ply: works[0]!.plies[0]!, ...line }))
      : cuts
        ? there(tracedCuts(works, after))
        : [],
    marks: after.marks.slice(before).filter(({ kind }) => kind === 'hardware'),
  };
}

/** A line turned by a half about the middle of its work. */
function turnedRound(trace: Trace, work: Work): Trace {
  const { x, y, width, height } = boxOf(work.plies);
  const round = (p: Point): Point => ({ x: 2 * x + width - p.x, y: 2 * y + height - p.y });
  return { ...trace, from: round(trace.from), to: round(trace.to) };
}

/** The kind of a fold as it is seen from the side of a view. */
export const kindSeen = ({ kind }: FoldTrace, { side }: View): 'valley' | 'mountain' =>
  (kind === 'valley') === (side === 'front') ? 'valley' : 'mountain';

/** The lines of what a step is about to do, each on its work. */
export function doingShapes(doing: StepAction, views: readonly View[], onto: Onto): Shape[] {
  const lines = new WorkLines();
  const now = { now: true };
  const draw = (role: ShapeRole, { work, from, to }: Trace) => {
    const there = viewed(views[work]!, onto);
    lines.add(role, polyline(there(from), there(to)), now);
  };
  for (const fold of doing.folds) draw(kindSeen(fold, views[fold.work]!), fold);
  for (const trace of doing.cuts) draw('cut', trace);
  for (const trace of doing.rows) draw(doing.rowRole === 'basting' ? 'basting' : 'stitch', trace);
  if (views.length === 1) lines.add('hardware', marksPath(doing.marks, views[0]!, onto), now);
  return lines.shapes('doing');
}

/** Hardware as it is set. */
export const marksPath = (marks: readonly Mark[], view: View, onto: Onto): Command[] =>
  marks.flatMap(({ what, at }) => hardwareMark(what, viewed(view, onto)(at)));

/** No more arrows than this: where there are many folds, a few show the way. */
const MOST = 4;

/** Arrows that show what moves and where to. */
export function arrows(
  { verb, after }: StepDrawn,
  doing: StepAction,
  views: readonly View[],
  { frame, words }: { frame: Frame; words: readonly TextShape[] },
): Shape[] {
  const path: Command[] = [];
  const [first, second] = views;
  const { laysFirst, turnsOver } = verbNamed(verb);
  if (turnsOver && first) {
    const { x, y, width, height } = boxInView(first);
    const reach = Math.min(9, 0.3 * width * frame.scale, 0.6 * height * frame.scale);
    path.push(...turnOverArrow(frame.onto({ x: x + width / 2, y: y + height / 2 }), reach));
  } else if (first && second) {
    const [moves, stays] = laysFirst ? [first, second] : [second, first];
    path.push(...together(moves, stays, landing(moves.work, stays, after), frame, words));
  } else {
    const longest = new Map<string, FoldTrace>();
    for (const fold of doing.folds) {
      const best = longest.get(fold.name);
      if (!best || long(fold) > long(best)) longest.set(fold.name, fold);
    }
    // Cloth that is folded along several lines at once, as at a mitre, is still one piece of cloth: one arrow for it.
    const moving = new Map<string, FoldTrace>();
    for (const fold of [...longest.values()].sort((a, b) => long(b) - long(a))) {
      const cloth = `${fold.work} ${fold.moves.x} ${fold.moves.y}`;
      if (!moving.has(cloth)) moving.set(cloth, fold);
    }
    for (const fold of [...moving.values()].slice(0, MOST)) path.push(...foldArrow(fold, views[fold.work]!, frame));
  }
  return path.length === 0 ? [] : [{ kind: 'path', name: 'arrow', role: 'arrow', path, now: true }];
}

const long = ({ from, to }: Trace): number => Math.hypot(to.x - from.x, to.y - from.y);

/** From the cloth that turns over to where it lands, never too short to be seen and never out of the work's own box. */
function foldArrow({ from, to, moves }: FoldTrace, view: View, frame: Frame): Command[] {
  const line = lineThrough(from, to);
  const off = leftOf(line, moves);
  const way = direction(line.angle + (off > 0 ? -90 : 90));
  const reach = Math.min(
    room(moves, way, view.box),
    Math.abs(off) + Math.max(Math.abs(off), LEAST_ARROW / frame.scale),
  );
  const at = (along: number, aside = 0): Point => ({
    x: moves.x + way.x * along - way.y * aside,
    y: moves.y + way.y * along + way.x * aside,
  });
  // It bends to where there is room for its bow.
  const bow = [0.25, -0.25].find((share) => covers(view.box, at(reach / 2, share * reach))) ?? 0;
  const there = viewed(view, frame.onto);
  return bentArrow(there(moves), there(at(reach)), view.side === 'front' ? bow : -bow);
}

/** On the sheet, in mm: from where the cloth lies to beyond the line. */
const LEAST_ARROW = 7;

/** How far it is from a point inside a box along a way to the box's side. */
function room(from: Point, way: Point, { x, y, width, height }: Box): number {
  const across = way.x > 0 ? (x + width - from.x) / way.x : way.x < 0 ? (x - from.x) / way.x : Infinity;
  const up = way.y > 0 ? (y + height - from.y) / way.y : way.y < 0 ? (y - from.y) / way.y : Infinity;
  return Math.max(0, Math.min(across, up));
}

const covers = ({ x, y, width, height }: Box, p: Point): boolean =>
  p.x >= x && p.x <= x + width && p.y >= y && p.y <= y + height;

/** Where the middle of a work comes to lie on the one that stays, as this lies before. */
function landing(moves: Work, { work: stays, box }: View, after: Work): Point {
  const from = cameFrom([stays, moves], after);
  const [still, moved] = [0, 1].map((i) => boxOf(after.plies.filter(({ id }) => from.get(id) === i)));
  const middle = (start: number, size: number, low: number, room: number) =>
    Math.max(low, Math.min(low + room, low + start + size / 2));
  return {
    x: middle(moved!.x - still!.x, moved!.width, box.x, box.width),
    y: middle(moved!.y - still!.y, moved!.height, box.y, box.height),
  };
}

/** Where an arrow to a work below or above may begin, as shares of the width of what moves, and how it may bend. */
const [BEGINS, BENDS] = [
  [0.85, 0.7, 0.5, 0.95, 0.3],
  [0.12, -0.12, 0.3, -0.3, 0.5, -0.5],
];

/** From the work that moves to where it comes to lie; round the captions of works that stand over each other. */
function together(moves: View, stays: View, lands: Point, frame: Frame, words: readonly TextShape[]): Command[] {
  const [a, b] = [boxInView(moves), boxInView(stays)];
  const to = viewed(stays, frame.onto)(lands);
  const right = a.x + a.width <= b.x;
  if (right || b.x + b.width <= a.x) {
    const reach = Math.min(0.25 * a.width, 9 / frame.scale);
    const from = frame.onto({ x: right ? a.x + a.width - reach : a.x + reach, y: a.y + a.height / 2 });
    // Little works leave no room for a bow between their captions.
    const bow = Math.min(a.height, b.height) * frame.scale > 8 ? (right ? 0.12 : -0.12) : 0;
    return (
      [bow, -bow, 3 * bow, -3 * bow]
        .map((bend) => bentArrow(from, to, bend))
        .find((arrow) => isClear(arrow, words, frame)) ?? []
    );
  }
  const inside = Math.min(0.3 * a.height, 4 / frame.scale);
  const y = a.y > b.y ? a.y + inside : a.y + a.height - inside;
  for (const bend of BENDS) {
    for (const share of BEGINS) {
      const arrow = bentArrow(frame.onto({ x: a.x + share * a.width, y }), to, bend);
      if (isClear(arrow, words, frame)) return arrow;
    }
  }
  return [];
}

/** An arrow's head reaches so far beside it, in mm of the sheet. */
const HEAD = 1.2;

/** Whether a bent arrow stays on the sheet beside what is drawn, and off all words. */
function isClear([start, curve]: readonly Command[], words: readonly TextShape[], frame: Frame): boolean {
  if (start?.[0] !== 'M' || curve?.[0] !== 'C') return false;
  const [, x0, y0] = start;
  const [, x1, y1, x2, y2, x3, y3] = curve;
  const at = (t: number, p: number, q: number, r: number, s: number) =>
    (1 - t) ** 3 * p + 3 * (1 - t) ** 2 * t * q + 3 * (1 - t) * t ** 2 * r + t ** 3 * s;
  const boxes = words.map(letteringBox);
  return Array.from({ length: 33 }, (_, i) => i / 32).every((t) => {
    const [x, y] = [at(t, x0, x1, x2, x3), at(t, y0, y1, y2, y3)];
    if (x < frame.left || x > frame.right) return false;
    return boxes.every(
      (box) => x < box.x - HEAD || x > box.x + box.width + HEAD || y < box.y - HEAD || y > box.y + box.height + HEAD,
    );
  });
}
