/** What the sentence of a step says is done where it says so, and through what it says: read off the works alone. */
import { DART } from '../../../src/core/cloth/dart.ts';
import { boxOf, fromEdge, fromSide, layersOf, lengthIn, sameStack } from './still.ts';
import { away, inside, takenBy } from './laws.ts';
import type { Point, Step } from '../../../src/core/index.ts';
import type { Box, Layer, Values } from './still.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const SAME = 0.05;

/** Where a row runs that does not say how far in, in mm. */
const usual: Readonly<Record<string, { readonly inch: number; readonly metric: number }>> = {
  baste: { inch: 25.4 / 8, metric: 3 },
  topstitch: { inch: 25.4 / 8, metric: 3 },
  edgestitch: { inch: 25.4 / 16, metric: 2 },
};

/** A row along sides runs so far inside them, along all of each, and through all that lies there. */
export function rowsAlongSides(step: Step, edition: 'inch' | 'metric'): string[] {
  const by = usual[step.verb];
  if (!by) return [];
  const values: Values = step.instruction;
  const [work] = takenBy(step);
  const box = boxOf(work!);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const named = [values['at']].flat().map(String);
  const sides = named.flatMap((one) => (one === 'all' ? ['left', 'right', 'bottom', 'top'] : [one]));
  const off = lengthIn(values, 'by', by[edition]);
  const found: string[] = [];
  const rows = step.stitches.flatMap(({ id }) => step.after.stitches.filter((stitch) => stitch.id === id));
  for (const { from, to, plies } of rows.flatMap(({ runs }) => runs)) {
    const at = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const there = step.after.plies.filter(({ outline }) => inside(outline, at)).map(({ id }) => id);
    const isClear = layersOf(step.after, at) !== undefined;
    // Through so many layers from the top it holds those alone.
    const held = typeof values['through'] === 'number' ? there.slice(-values['through']) : there;
    if (named.some((one) => one.endsWith('opening'))) {
      // Round an opening it goes through the one wall or the other, and each is the lower or the upper part of the heap.
      const isWall =
        there.slice(0, plies.length).join() === plies.join() || there.slice(-plies.length).join() === plies.join();
      if (isClear && (!isWall || plies.length === there.length))
        found.push(`a row round an opening holds plies ${plies.join()} of ${there.join()}`);
      continue;
    }
    if (isClear && held.join() !== plies.join())
      found.push(
        `a row at ${at.x.toFixed(2)}, ${at.y.toFixed(2)} holds plies ${plies.join()}, and ${held.join()} are meant`,
      );
    if (!sides.every((side) => fromEdge(work!, side, middle) !== undefined)) continue;
    const isAt = sides.some((side) => [from, to].every((p) => Math.abs(fromSide(box, side, p)! - off) < SAME));
    if (!isAt && !isRound(work!, box, [from, to], off, sides))
      found.push(`a row runs from ${from.x}, ${from.y} to ${to.x}, ${to.y}, and not ${off} mm inside ${sides.join()}`);
  }
  for (const side of values['begins'] === undefined && values['ends'] === undefined ? sides : []) {
    // Further in than half of the side, rows may have turned before.
    const long = side === 'left' || side === 'right' ? box.height : box.width;
    if (fromEdge(work!, side, middle) === undefined || 2 * off > long - SAME) continue;
    // Half way along the side, where there is cloth, the row goes by.
    const at = {
      left: { x: box.x + off, y: middle.y },
      right: { x: box.x + box.width - off, y: middle.y },
      bottom: { x: middle.x, y: box.y + off },
      top: { x: middle.x, y: box.y + box.height - off },
    }[side as 'left'];
    const isSewn = rows.some(({ runs }) => runs.some(({ from, to }) => away(at, [{ from }, { from: to }]) < SAME));
    if (
      !isSewn &&
      (layersOf(work!, at)?.length ?? 0) > 0 &&
      !sides.some((one) => one !== side && endsNear(work!, at, one, off))
    )
      found.push(`no row goes by ${at.x}, ${at.y}, at the ${side}`);
  }
  return found.slice(0, 1);
}

/** Whether the cloth ends so near to a place, towards a side or aslant of it: where the side is shaped, rows turn before. */
function endsNear(work: Work, at: Point, side: string, off: number): boolean {
  const ahead = { right: 0, top: 90, left: 180, bottom: 270 }[side as 'right'];
  return [-45, -30, -15, 0, 15, 30, 45].some((aslant) => {
    const turned = ((ahead + aslant) * Math.PI) / 180;
    return layersOf(work, { x: at.x + off * Math.cos(turned), y: at.y + off * Math.sin(turned) })?.length === 0;
  });
}

/**
 * Whether a stretch goes round a shaped corner between sides, or along a side that darts bend: it keeps its distance from
 * edges beyond which nothing lies and that are no sides; along one side alone, from the parts of its own edge, where it has darts.
 */
function isRound({ plies }: Work, box: Box, ends: readonly Point[], off: number, sides: readonly string[]): boolean {
  const lies = (all: readonly string[]) => (a: Point, b: Point) =>
    all.some((side) => [a, b].every((p) => Math.abs(fromSide(box, side, p) ?? Infinity) < SAME));
  const [isSide, isAsked] = [lies(['left', 'right', 'bottom', 'top']), lies(sides)];
  const points = plies.flatMap(({ outline }) => outline.map(({ from }) => from));
  const isOuter = (a: Point, b: Point) => {
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    return points.every((p) => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > -SAME * long);
  };
  const darted = new Set(
    plies.flatMap(({ piece, outline }) => (outline.some(({ name }) => name === DART) ? piece : [])),
  );
  return plies.some(({ piece, outline }) => {
    const ways = outline.map(({ name, from }, i) => ({ name, from, to: outline[(i + 1) % outline.length]!.from }));
    const names = ways.flatMap(({ name, from, to }) => (darted.has(piece) && isAsked(from, to) ? name : []));
    const corner = ways.flatMap(({ name, from, to }) =>
      (sides.length > 1 || names.includes(name)) && !isSide(from, to) && isOuter(from, to)
        ? [[{ from }, { from: to }]]
        : [],
    );
    return ends.every((p) => corner.some((edge) => Math.abs(away(p, edge) - off) < 0.05 * off + SAME));
  });
}

/** A work without what was laid on it, which may hang out beyond its sides. */
function bare(work: Work): Work {
  const own = work.plies.filter(({ laid }) => laid === undefined);
  return own.length > 0 ? { ...work, plies: own } : work;
}

/** Hardware goes through the layers that it says, from the top. */
export function setThrough(step: Step): string[] {
  const values: Values = step.instruction;
  if (step.verb !== 'attach') return [];
  const mark = step.after.marks.at(-1)!;
  const layers = layersOf(step.after, mark.at);
  if (!layers) return [];
  const many = Math.min(layers.length, typeof values['through'] === 'number' ? values['through'] : layers.length);
  const work = bare(takenBy(step)[0]!);
  const box = boxOf(work);
  const at = values['at'] as Point | undefined;
  const isThere = at && Math.hypot(mark.at.x - box.x - at.x, mark.at.y - box.y - at.y) < SAME;
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const off = ['left', 'right', 'top', 'bottom'].filter(
    (side) =>
      values[`from ${side}`] !== undefined &&
      fromEdge(work, side, middle) !== undefined &&
      Math.abs(fromSide(box, side, mark.at)! - lengthIn(values, `from ${side}`)) > SAME,
  );
  return [
    ...(mark.plies.length === many
      ? []
      : [`${mark.name} goes through ${mark.plies.length} layers of ${layers.length}`]),
    ...(at && !isThere ? [`${mark.name} is set at ${mark.at.x}, ${mark.at.y}`] : []),
    ...off.map((side) => `${mark.name} is not set so far from the ${side}`),
  ];
}

const flipped = (layers: readonly Layer[]): Layer[] =>
  layers.toReversed().map((one) => ({ ...one, face: one.face === 'right' ? 'wrong' : 'right' }));

/** What is folded comes to lie turned over on the other side of its line, on top or at the bottom, in one heap. */
export function foldedOver(step: Step, points: readonly Point[]): string[] {
  const values: Values = step.instruction;
  if (step.verb !== 'fold' || values['only'] !== undefined) return [];
  const [work] = takenBy(step);
  const box = boxOf(work!);
  const [from, at] = [(values['from'] ?? 'top') as string, lengthIn(values, 'at')];
  for (const p of points) {
    const off = fromSide(box, from, p)!;
    if (off > at - SAME) continue;
    const way = 2 * (at - off);
    const there = {
      left: { x: p.x + way, y: p.y },
      right: { x: p.x - way, y: p.y },
      bottom: { x: p.x, y: p.y + way },
      top: { x: p.x, y: p.y - way },
    }[from]!;
    const [moved, after, gone] = [layersOf(work!, p), layersOf(step.after, there), layersOf(step.after, p)];
    if (!moved || !after || !gone) continue;
    const heap = values['lands'] === 'under' ? after.slice(0, moved.length) : after.slice(after.length - moved.length);
    if (!sameStack(flipped(moved), heap))
      return [`what lay at ${p.x}, ${p.y} is not turned over to ${there.x}, ${there.y}`];
    if (gone.length > 0) return [`something still lies at ${p.x}, ${p.y}, beyond the fold`];
  }
  return [];
}

/** A work that is laid by a side has that side on the side it is laid at. */
export function laidAtSide(step: Step): string[] {
  const values: Values = step.instruction;
  if (step.verb !== 'lay' || values['at'] === undefined || values['turned'] !== undefined) return [];
  const [side, own] = [values['at']].flat().map(String);
  const [above, on] = takenBy(step);
  const middle = (work: typeof above) => {
    const { x, y, width, height } = boxOf(work!);
    return { x: x + width / 2, y: y + height / 2 };
  };
  if (own !== undefined && own !== side) return [];
  if (fromEdge(on!, side!, middle(on)) === undefined || fromEdge(above!, side!, middle(above)) === undefined) return [];
  if (side === 'all') return [];
  const laid = { ...step.after, plies: step.after.plies.slice(on!.plies.length) };
  const [a, b] = [boxOf(on!), boxOf(laid)];
  // Turned over left to right, it lies with its other side there.
  const off = fromSide(
    a,
    side!,
    {
      left: { x: b.x, y: b.y },
      bottom: { x: b.x, y: b.y },
      right: { x: b.x + b.width, y: b.y + b.height },
      top: { x: b.x + b.width, y: b.y + b.height },
    }[side as 'left'],
  );
  const deep = side === 'left' || side === 'right' ? b.width : b.height;
  const overlap = values['overlap'] === undefined ? undefined : lengthIn(values, 'overlap') - deep;
  const should = overlap ?? -lengthIn(values, 'beyond', 0);
  return Math.abs((off ?? should) - should) < SAME ? [] : [`it lies ${off} mm inside the ${side}`];
}

/** What is trimmed to a height or a width is so high or wide. */
export function trimmedTo(step: Step): string[] {
  const values: Values = step.instruction;
  if (step.verb !== 'trim') return [];
  const box = boxOf(step.after);
  return (['height', 'width'] as const).flatMap((way) =>
    values[way] === undefined || Math.abs(box[way] - lengthIn(values, way)) < SAME
      ? []
      : [`it is ${box[way]} mm in ${way}, and not ${lengthIn(values, way)}`],
  );
}

/** A work that is laid at a distance from a side lies so far from it, and not beyond the other. */
export function laidAtDistance(step: Step): string[] {
  const values: Values = step.instruction;
  if (step.verb !== 'lay') return [];
  const [above, whole] = takenBy(step);
  // What was laid on the work, or put into it, may stand out beyond its sides.
  const on = bare(whole!);
  const boxes = [on, { ...step.after, plies: step.after.plies.slice(whole!.plies.length) }].map(boxOf);
  const [a, b] = [boxes[0]!, boxes[1]!];
  const middle = { x: a.x + a.width / 2, y: a.y + a.height / 2 };
  const gaps = {
    left: b.x - a.x,
    right: a.x + a.width - b.x - b.width,
    bottom: b.y - a.y,
    top: a.y + a.height - b.y - b.height,
  };
  if (above!.plies.length === 0 || Object.keys(gaps).some((side) => fromEdge(on, side, middle) === undefined))
    return [];
  return Object.entries(gaps).flatMap(([side, gap]) => {
    if (values[`from ${side}`] === undefined) return [];
    const should = lengthIn(values, `from ${side}`);
    const other = { left: gaps.right, right: gaps.left, bottom: gaps.top, top: gaps.bottom }[side]!;
    return [
      ...(Math.abs(gap - should) < SAME ? [] : [`it lies ${gap} mm from the ${side}, and not ${should}`]),
      ...(other > -SAME ? [] : [`it reaches ${-other} mm beyond the side across from the ${side}`]),
    ];
  });
}
