import { across, heights, lettering, LINE, margin, roomOf } from './dimension.ts';
import { arrange, arrangeAt } from './cells.ts';
import { arrows, actionOf, doingShapes, kindSeen, marksPath } from './step-action.ts';
import { boxOf, size } from '../cloth/size.ts';
import { clothWords } from './surface.ts';
import { withoutPiping } from '../cloth/piping.ts';
import { cutApartIn } from '../cloth/work.ts';
import { fitOf, layOutSheet, LEAST, roomBeside } from './sheet.ts';
import { foldInMotion } from './in-motion.ts';
import { direction } from '../geometry/point.ts';
import { frameOf } from './frame.ts';
import { lineThrough } from '../geometry/index.ts';
import { nowWords } from './legend.ts';
import { standing } from './standing.ts';
import { listed, SAME } from '../measure/index.ts';
import { cameFrom } from './trace.ts';
import { polyline } from './path.ts';
import { boxedIn, openedCorner } from './opened-corner.ts';
import { gapes, heightWithMouth, mouthShapes } from './mouth.ts';
import { rowDistances, rowLabels } from './row-distance.ts';
import { rowWords, seenWords, sizeWords, standingNotes, zipWords } from './work-words.ts';
import { faceOf, shapesOf } from './work-shapes.ts';
import { turnedBack } from './turned-back.ts';
import { visibleFrom } from '../cloth/visible.ts';
import { verbNamed } from '../steps/index.ts';
import { viewOf } from './view.ts';
import { lengthWriter } from './lengths.ts';
import type { Arranged, Cell } from './cells.ts';
import type { DimensionColumn } from './dimension.ts';
import type { Box, Point } from '../geometry/index.ts';
import type { Onto } from './path.ts';
import type { StepAction } from './step-action.ts';
import type { FoldTrace } from './trace.ts';
import type { Frame } from './frame.ts';
import type { Scene, Shape, ShapeRole, TextShape } from './scene.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { Step } from '../project/step.ts';
import type { View } from './view.ts';
import type { Work } from '../cloth/work.ts';
import type { WorkSetting } from './work-words.ts';

/** What a drawing needs to know of a step. */
export type StepDrawn = Pick<Step, 'title' | 'verb' | 'before' | 'after' | 'makes'> & {
  readonly takes?: readonly string[];
  readonly instruction?: Step['instruction'];
  readonly stitches: readonly { readonly id: number }[];
};

export type StepSetting = WorkSetting & {
  /** Left out, the side on which more of the step is seen. */
  side?: SeenFrom;
  /** Its lines and surfaces are explained beside it, once for several steps. */
  explained?: boolean;
  /** To play the step: from 0, before, to 1, after; left out, both are shown. */
  at?: number;
};

/** A work with its name. */
type Named = { readonly name: string; readonly work: Work };

/** A step, read once for its drawing. */
type Reading = {
  readonly step: StepDrawn;
  readonly before: readonly Named[];
  readonly after: Named;
  /** The work after the step as it is drawn: where layers lie on one another, a corner of the upper ones is folded back. */
  readonly shown: Work;
  /** How the layers of a seam lay on one another when it was sewn, where the step opens it; it is seen from the front. */
  readonly sewnAs: Work | undefined;
  readonly side: SeenFrom;
  readonly doing: StepAction;
};

/**
 * A step: the works it takes, with the line to fold, sew or cut along and arrows for what moves; and what comes of
 * them, with its size. With `at` one picture of the step as it is played: a fold is seen on its way, any other step
 * before, and from the middle on after. All pictures of a play have one size.
 */
export function drawStep(step: StepDrawn, wanted: StepSetting): Scene {
  const setting = tall(wanted);
  const reading = read(step, setting);
  const { at } = setting;
  if (at === undefined) return both(reading, setting);
  const share = Math.min(1, Math.max(0, at));
  const moving = reading.before.length === 1 ? foldInMotion(step.after, share) : undefined;
  return played(reading, share, moving, setting);
}

function read(step: StepDrawn, setting: StepSetting): Reading {
  const entries = Object.entries(step.before).map(([name, work]) => ({ name, work }));
  // Two works of one name are two of the same.
  const before = step.takes?.length === 2 && entries.length === 1 ? [entries[0]!, entries[0]!] : entries;
  const action = actionOf(
    step,
    before.map(({ work }) => work),
  );
  // A row that boxes a corner is shown on the corner as it is opened: on the flat work it would be sewn as it lies.
  const doing = boxedAt(step) ? { ...action, rows: [] } : action;
  const many = cutApartIn(Object.values(step.before), step.after)?.many;
  const name = many === undefined ? step.makes : `${step.makes}, one of ${many} alike`;
  const side = setting.side ?? sideOf(step);
  const works = before.map(({ work }) => work);
  const shown = doing.opensOut ? step.after : opened(step, works, side);
  return { step, before, after: { name, work: step.after }, shown, sewnAs: sewnAsIn(step), side, doing };
}

/** The record of the seam that a step sewed and opened. */
const seamIn = ({ after, verb, stitches }: StepDrawn) =>
  after.done.findLast((one) => one.sewnAs && one.did === verb && stitches.some(({ id }) => one.stitches?.includes(id)));

/** The layers of a seam as they were sewn, a corner of the uppermost folded back. */
function sewnAsIn(step: StepDrawn): Work | undefined {
  const { sewnAs } = seamIn(step) ?? {};
  return sewnAs && turnedBack({ ...sewnAs, done: [] }, sewnAs.top, 'front');
}

/** The work after a step, a corner folded back of what was laid, or put, on the rest and is nearest to the eye. */
function opened({ after }: StepDrawn, works: readonly Work[], side: SeenFrom): Work {
  if (works.length < 2) return after;
  const from = cameFrom(works, after);
  const nearest = from.get((side === 'front' ? after.plies.at(-1) : after.plies[0])!.id);
  const upper = after.plies.filter(({ id }) => from.get(id) === nearest);
  return turnedBack(after, new Set(upper.map(({ id }) => id)), side);
}

/** What is done on the wrong side is seen from there. */
export function sideOf({ verb, after }: StepDrawn): SeenFrom {
  const { onWrongSide, fuses } = verbNamed(verb);
  if (!onWrongSide) return 'front';
  if (fuses) {
    // What is fused last is looked for.
    const last = after.plies.reduce((newest, ply) => (ply.id > newest.id ? ply : newest));
    return visibleFrom(after, 'back').parts.some(({ ply }) => ply === last) ? 'back' : 'front';
  }
  return visibleFrom(after, 'back').parts.length > visibleFrom(after, 'front').parts.length ? 'back' : 'front';
}

const cellOf = ({ name, work }: Named, when: string): Cell => {
  const { width, height } = boxOf(work.plies);
  return { width, height, caption: `${when}: ${name}` };
};

/** Room for the sizes of the work after the step. */
function sizesOf({ after, side }: Reading, at: { x: number; y: number }, setting: StepSetting, show = true) {
  const { set } = lengthWriter(setting);
  const whole = boxOf(after.work.plies);
  // Piping stands out beyond the seams, from which a work is measured.
  const { x, y, width, height } = boxOf(withoutPiping(after.work).plies);
  const left = at.x + (side === 'front' ? x - whole.x : whole.x + whole.width - x - width);
  const low = at.y + y - whole.y;
  const label = (mm: number) => (show ? set(mm) : '');
  return {
    height: heights({ name: 'height', marks: [low, low + height], labels: [label(height)] }),
    width: across({ name: 'width', marks: [left, left + width], labels: [label(width)] }, at.y),
  };
}

/** A step may be taller than a single work: two or more lie over each other. */
const tall = (setting: StepSetting): StepSetting => {
  const { width, height } = fitOf(setting);
  return { ...setting, fit: { width, height: setting.fit?.height ?? Math.max(height, Math.min(1.8 * width, 150)) } };
};

/** Where before and after differ by what is marked alone, one picture is enough: of the work after, or of what is cut. */
function alone({ step, before, after, side, doing }: Reading, setting: StepSetting): 'before' | 'after' | undefined {
  const [first, ...others] = before;
  if (!first || others.length > 0 || doing.folds.length > 0 || verbNamed(step.verb).turnsOver) return undefined;
  const [a, b] = [boxOf(first.work.plies), boxOf(after.work.plies)];
  if (Math.abs(a.width - b.width) > SAME || Math.abs(a.height - b.height) > SAME) return undefined;
  if (doing.cuts.length > 0) return 'before';
  return seenWords(first.work, side, setting) === seenWords(after.work, side, setting) ? 'after' : undefined;
}

/** A work of a step's drawing, by the name of its shapes, as it lies there, and the rows that are marked on it. */
export type WorkShown = { readonly name: string; readonly work: Work; readonly rows: ReadonlySet<number> };

/** Which works the drawing of a step shows lying flat; one that stands shows what one of these does. */
export function worksShown(step: StepDrawn, setting: StepSetting): WorkShown[] {
  const reading = read(step, setting);
  const { before, shown, sewnAs, doing } = reading;
  const one = alone(reading, setting);
  const none: ReadonlySet<number> = new Set();
  const taken = before.map(({ work }, i) => ({ name: `before ${i + 1}`, work, rows: none }));
  return [
    ...(one === 'after' || sewnAs ? [] : taken),
    ...(sewnAs ? [{ name: 'sewn', work: sewnAs, rows: new Set(seamIn(step)?.stitches) }] : []),
    ...(one === 'before' ? [] : [{ name: 'after', work: shown, rows: openIds(step, doing) }]),
  ];
}

/** How the work stands, where that is new: its corners are boxed, or it is turned out or pushed in. */
function standsIn({ before, after, side }: Reading, one: 'before' | 'after' | undefined, setting: StepSetting) {
  const [first, ...others] = before;
  if (!first || others.length > 0 || side === 'back' || size(after.work).depth === 0) return undefined;
  return one && size(first.work).depth > 0 ? undefined : standing(after.work, setting);
}

const placedAt =
  (at: Point, frame: Frame): Onto =>
  ({ x, y }) =>
    frame.onto({ x: at.x + x, y: at.y + y });

/** Before and after in one picture, or one of them where that is enough. */
function both(reading: Reading, setting: StepSetting): Scene {
  const { step, before, after, shown, side, doing } = reading;
  const one = alone(reading, setting);
  const stands = standsIn(reading, one, setting);
  const { sewnAs } = reading;
  const boxed = boxedAt(step);
  const corner = boxed && side === 'front' ? openedCorner(after.work, boxed, setting) : undefined;
  const gaping = (named: Named, when: string, mouth = named.work): Cell => {
    const cell = cellOf(named, when);
    return { ...cell, height: Math.max(cell.height, heightWithMouth(mouth, side, setting)) };
  };
  // Openings that are sewn together are shown as they gaped before.
  const mouth = one === 'after' && !gapes(after.work, setting) ? before[0]!.work : after.work;
  const cells = [
    ...(one || sewnAs ? [] : before.map((each) => gaping(each, 'Before'))),
    ...(sewnAs
      ? [{ ...cellOf({ name: '', work: sewnAs }, ''), caption: `Sewn: ${listed(namesIn(step, before))}` }]
      : []),
    ...(stands ? [{ ...stands, caption: `Standing: ${after.name}` }] : []),
    ...(corner ? [{ ...corner, caption: 'A corner, opened: side seam on bottom seam' }] : []),
    one ? { ...gaping(after, 'After', mouth), caption: stands || corner ? 'Lying flat' : '' } : gaping(after, 'After'),
  ];
  const arranged = arrange(cells, spaceFor(sizesOf(reading, ORIGIN, setting).height, setting));
  const place = arranged.cells.at(-1)!.at;
  const sizes = sizesOf(reading, place, setting);
  // What stands at the left edge is measured there; what stands at the end of a row, on its other side.
  const left = place.x === 0;
  const views = before.map(({ work }, i) => viewOf(work, side, one ? place : arranged.cells[i]?.at));
  const last = { ...viewOf(after.work, side, place), work: shown };
  return layOutSheet(
    {
      title: step.title,
      lines: [`Seen from the ${side}.`],
      cloth: { x: 0, y: 0, width: arranged.width, height: arranged.height },
      left: [left ? sizes.height : margin],
      right: [left ? margin : sizes.height],
      below: [sizes.width],
      draw: (frame) => [
        ...(one === 'after' || sewnAs ? [] : views).flatMap((view, i) =>
          mouthShapes(`mouth before ${i + 1}`, view, frame.onto, { ...setting, now: new Set() }),
        ),
        ...(one === 'before'
          ? []
          : mouthShapes('mouth', viewOf(mouth, side, place), frame.onto, {
              ...setting,
              sewn: after.work,
              now: openIds(step, doing),
            })),
        ...(one === 'after' || sewnAs
          ? []
          : beforeShapes(reading, views, setting, { frame, words: captions(arranged, cells, frame) })),
        ...(sewnAs ? sewnShapes(step, viewOf(sewnAs, 'front', arranged.cells[0]!.at), setting, frame) : []),
        ...(stands ? stands.shapes('standing', placedAt(arranged.cells.at(corner ? -3 : -2)!.at, frame)) : []),
        ...(corner ? corner.shapes('corner', placedAt(arranged.cells.at(-2)!.at, frame)) : []),
        ...(one === 'before' ? [] : afterShapes(reading, last, setting, frame)),
        ...(left ? [] : extension(last, frame)),
        ...captions(arranged, cells, frame),
      ],
      ...legendWords(doing, views),
      words: clothWords(setting.materials),
      ...(setting.explained && { explained: true }),
      notes: notesOf(reading, setting),
      text: describe(reading, setting),
    },
    setting,
  );
}

const ORIGIN = { x: 0, y: 0 };

/** The room for all that is drawn to scale; a step may be somewhat taller than a single work. */
function spaceFor(height: DimensionColumn, setting: StepSetting): { width: number; height: number } {
  const fit = fitOf(setting);
  return { width: Math.max(LEAST, roomBeside([height, margin], setting)), height: fit.height };
}

function beforeShapes(
  { step, doing }: Reading,
  views: readonly View[],
  setting: StepSetting,
  { frame, words }: { frame: Frame; words: readonly TextShape[] },
): Shape[] {
  return [
    ...views.flatMap((view, i) => shapesOf(`before ${i + 1}`, view, frame.onto, setting)),
    ...doingShapes(doing, views, frame.onto),
    ...arrows(step, doing, views, { frame, words }),
  ];
}

/** The corner that a step boxes first. */
const boxedAt = ({ before, after }: StepDrawn) => boxedIn(Object.values(before), after);

/** The same, but for seams that are marked where they were sewn: those of a step that opens what it sews, or boxes. */
function openIds(step: StepDrawn, { opensOut }: StepAction): ReadonlySet<number> {
  const isElsewhere = opensOut || boxedAt(step) !== undefined;
  const isShut = (id: number) => isElsewhere && step.after.stitches.some((one) => one.id === id && one.kind === 'seam');
  return new Set([...idsOf(step)].filter((id) => !isShut(id)));
}

/** The layers of a seam as they lie at the machine, with its row. */
function sewnShapes(step: StepDrawn, view: View, setting: StepSetting, frame: Frame): Shape[] {
  const ids = new Set(seamIn(step)?.stitches);
  const drawn = shapesOf('sewn', view, frame.onto, setting, ids);
  const labels = rowLabels(rowDistances(view.work, ids), view, frame, { drawn, set: lengthWriter(setting).set });
  return [...drawn, ...labels.map((shape) => ({ ...shape, name: `sewn ${shape.name}` }))];
}

/** The works of a step by name, from the table upward: what lies between comes between. */
function namesIn({ takes = [] }: StepDrawn, before: readonly Named[]): string[] {
  const names = before.length === takes.length ? takes : before.map(({ name }) => name);
  const [first, second, ...between] = names;
  return [first, ...between, second].filter((name) => name !== undefined);
}

/** The rows that a step sews, by number. */
const idsOf = ({ stitches }: StepDrawn): ReadonlySet<number> => new Set(stitches.map(({ id }) => id));

function afterShapes({ step, doing }: Reading, view: View, setting: StepSetting, frame: Frame): Shape[] {
  const ids = openIds(step, doing);
  const set = marksPath(doing.marks, view, frame.onto);
  const drawn = shapesOf('after', view, frame.onto, setting, ids);
  return [
    ...drawn,
    ...rowLabels(rowDistances(view.work, ids), view, frame, { drawn, set: lengthWriter(setting).set }),
    ...(set.length > 0
      ? [{ kind: 'path', name: 'hardware set', role: 'hardware', path: set, now: true } as const]
      : []),
  ];
}

/** Lines from the work after the step to its height's dimension, where that stands further off. */
function extension({ box, at }: View, frame: Frame): Shape[] {
  const from = frame.x(at.x + box.width) + 0.8;
  if (frame.right - from < 0.5) return [];
  const path = [at.y, at.y + box.height].flatMap((height) =>
    polyline({ x: from, y: frame.y(height) }, { x: frame.right + 0.8, y: frame.y(height) }),
  );
  return [{ kind: 'path', name: 'height extension', role: 'dimension', path }];
}

/** The captions over cells, their last lines just above what is drawn. */
function captions({ cells: placed }: Arranged, cells: readonly Cell[], frame: Frame): TextShape[] {
  return placed.flatMap(({ at, caption }, i) => {
    const top = frame.y(at.y + cells[i]!.height) - 1.6;
    return caption.map((line, k) => {
      const text = lettering(
        `caption ${i + 1}.${k + 1}`,
        line,
        frame.x(at.x),
        top - (caption.length - k - 0.5) * LINE,
        1,
      );
      return { ...text, strong: true };
    });
  });
}

function legendWords({ rowRole, folds, cuts, marks }: StepAction, views: readonly View[]) {
  const kinds = [...new Set(folds.map((fold) => kindSeen(fold, views[fold.work]!)))];
  const roles: (ShapeRole | false | undefined)[] = [
    kinds[0],
    rowRole,
    cuts.length > 0 && 'cut',
    marks.length > 0 && 'hardware',
  ];
  const now = roles.flatMap((role) => {
    const words = role && nowWords[role];
    return words ? [{ role, words }] : [];
  });
  return { now, legend: kinds as readonly ShapeRole[] };
}

/** One picture of a play. */
function played(reading: Reading, at: number, moving: Work | undefined, setting: StepSetting): Scene {
  const { step, before, after, side, doing } = reading;
  const { set } = lengthWriter(setting);
  const room = spaceFor(sizesOf(reading, ORIGIN, setting).height, setting);
  const cells = {
    before: before.map((one) => ({ ...cellOf(one, 'Before'), ...(before.length === 1 && { caption: '' }) })),
    after: [{ ...cellOf(after, 'After'), caption: '' }],
  };
  const done = at >= 0.5;

  let cloth: Box;
  let pictures: { before: View[]; after: View };
  let arranged: Arranged | undefined;
  if (moving) {
    // Before and after lie where they lie, so that the eye can follow.
    const box = around(boxOf(before[0]!.work.plies), boxOf(after.work.plies));
    cloth = { x: 0, y: 0, width: box.width, height: box.height };
    pictures = {
      before: [{ work: at === 0 ? before[0]!.work : moving, side, box, at: ORIGIN }],
      after: { work: at === 1 ? after.work : moving, side, box, at: ORIGIN },
    };
  } else {
    const [first, last] = [arrange(cells.before, room), arrange(cells.after, room)];
    const scale = Math.min(first.scale, last.scale);
    const [a, b] = [
      arrangeAt(cells.before, first.order, scale, room.width),
      arrangeAt(cells.after, 'row', scale, room.width),
    ];
    cloth = { x: 0, y: 0, width: Math.max(a.width, b.width), height: Math.max(a.height, b.height) };
    pictures = {
      before: before.map(({ work }, i) => viewOf(work, side, a.cells[i]!.at)),
      after: viewOf(after.work, side),
    };
    arranged = done ? b : a;
  }
  const finished = moving ? at === 1 : done;
  const [box, own] = [boxOf(after.work.plies), boxOf(withoutPiping(after.work).plies)];
  const place = moving
    ? {
        x: side === 'front' ? box.x - pictures.after.box.x : pictures.after.box.x + cloth.width - box.x - box.width,
        y: box.y - pictures.after.box.y,
      }
    : ORIGIN;
  const sizes = sizesOf(reading, place, setting, finished);
  const full = sizesOf(reading, place, setting);
  const draw = {
    before: (frame: Frame): Shape[] =>
      moving && at > 0
        ? shapesOf('before 1', pictures.before[0]!, frame.onto, setting)
        : beforeShapes(reading, pictures.before, setting, {
            frame,
            words: arranged ? captions(arranged, cells.before, frame) : [],
          }),
    after: (frame: Frame): Shape[] => afterShapes(reading, pictures.after, setting, frame),
  };
  const legend = rolesIn(reading, moving !== undefined, setting);
  const words = legendWords(doing, pictures.before);
  const when = finished ? `After: ${set(own.width)} × ${set(own.height)}` : moving && at > 0 ? 'On the way' : 'Before';
  return layOutSheet(
    {
      title: step.title,
      lines: [`Seen from the ${side}.`, when],
      cloth,
      left: [roomOf(full.height, sizes.height)],
      right: [margin],
      below: [sizes.width],
      draw: (frame) => [
        ...(done ? draw.after(frame) : draw.before(frame)),
        ...(arranged ? captions(arranged, done ? cells.after : cells.before, frame) : []),
      ],
      ...words,
      words: clothWords(setting.materials),
      legend: [...words.legend, ...legend],
      notes: notesOf(reading, setting),
      text: describe(reading, setting),
    },
    setting,
  );
}

/** All that is seen before or after or on the way, so that the legend of a play holds still. */
function rolesIn({ before, after, side }: Reading, moves: boolean, setting: StepSetting): ShapeRole[] {
  const { materials } = setting;
  const { onto } = frameOf({ x: 0, y: 0, width: 1, height: 1 }, 1, 0, 0);
  const works = [...before, after].map(({ work }) => work);
  const shapes = works.flatMap((work) => shapesOf('', viewOf(work, side), onto, setting));
  const roles = shapes.flatMap((shape) => (shape.kind === 'path' ? [shape.role] : []));
  if (!moves) return roles;
  // What lies on the other side may come to be seen, and any edge to be hidden.
  const faces = after.work.plies.flatMap((ply) => [faceOf(ply, 'right', materials), faceOf(ply, 'wrong', materials)]);
  return [...roles, ...faces, 'raw edge', 'fold edge', 'hidden'];
}

function around(a: Box, b: Box): Box {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y,
  };
}

/** How this step's own seam is sewn, in words; with the allowance where it is one for all edges. */
function seamWords({ step }: Reading, say: (mm: number) => string): string | undefined {
  const seam = step.after.done.findLast(({ did }) => did.toLowerCase() === step.verb);
  const round = step.after.stitches.find(({ id }) => seam?.stitches?.includes(id))?.round;
  if (!seam || !(seam.met ?? round)) return undefined;
  const widths = seam.met?.map(({ allowance }) => allowance) ?? round?.allowances.filter((width) => width > 0) ?? [];
  const [first, ...others] = widths;
  const one = others.every((allowance) => allowance === first);
  const allowance = one && first !== undefined && first > 0 ? `seam allowance ${say(first)}` : undefined;
  const words = [seam.together, allowance].filter((part) => part !== undefined).join(', ');
  return words === '' ? undefined : `${words.replace(/^\p{Ll}/u, (letter) => letter.toUpperCase())}.`;
}

/** The distances that the step measures, in sentences. */
const measuredWords = ({ verb, instruction }: StepDrawn, say: (mm: number) => string): string[] =>
  (instruction &&
    verbNamed(verb)
      .measured?.(instruction)
      ?.map(({ says, length }) => says.replace('…', say(length)))) ??
  [];

const notesOf = (reading: Reading, setting: StepSetting): string[] => {
  const seam = seamWords(reading, lengthWriter(setting).set);
  const measured = measuredWords(reading.step, lengthWriter(setting).set);
  return [...(seam === undefined ? [] : [seam]), ...measured, ...standingNotes(reading.after.work, setting)];
};

/** Folds of several plies, or in several stretches, along one line are one fold. */
function lineKey({ work, from, to }: FoldTrace): string {
  const { at, angle } = lineThrough(from, to);
  const turned = ((Math.round(angle * 10) % 1800) + 1800) % 1800;
  const { x, y } = direction(turned / 10);
  return [work, turned, Math.round(2 * (x * at.y - y * at.x))].join(' ');
}

function describe(reading: Reading, setting: StepSetting): string[] {
  const { step, before, after, side, doing } = reading;
  const { say } = lengthWriter(setting);
  const text = [`${step.title}.`];
  for (const { name, work } of before) {
    const { width, height } = boxOf(work.plies);
    text.push(`Before: ${name}, ${say(width)} wide and ${say(height)} high.`);
  }
  const seam = seamWords(reading, say);
  if (seam !== undefined) text.push(seam);
  text.push(...measuredWords(step, say));
  const kinds = (['valley', 'mountain'] as const).flatMap((kind) => {
    const seen = doing.folds.filter((fold) => (fold.kind === kind) === (side === 'front'));
    const n = new Set(seen.map(lineKey)).size;
    return n > 0 ? [`${n} ${kind}`] : [];
  });
  if (kinds.length > 0) text.push(`Fold lines, as seen from the ${side}: ${kinds.join(' and ')}.`);
  text.push(...rowWords(after.work, setting, idsOf(step)));
  for (const { distance } of rowDistances(after.work, openIds(step, doing)))
    text.push(`Sewn ${say(distance)} from the edge.`);
  if (doing.cuts.length > 0) text.push('Cloth is cut away along the marked lines.');
  for (const { name } of doing.marks) text.push(`Set here: ${name}.`);
  text.push(
    `After: ${after.name}. ${seenWords(after.work, side, setting)}`,
    ...sizeWords(after.work, setting),
    ...zipWords(after.work, setting, say),
  );
  return text;
}
