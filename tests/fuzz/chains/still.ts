/**
 * No step moves, drops or sews down what its sentence does not name: at points of the work that a step keeps, the layers
 * before and after are compared. What a verb may do there stands in `says`; of a verb that is not in it only the laws
 * are asked that hold for all.
 */
import { away, inside, key, takenBy, uncut } from './laws.ts';
import { verbNamed } from '../../../src/core/index.ts';
import type { Point, Step, VerbName } from '../../../src/core/index.ts';
import type { Ply, Work } from '../../../src/core/cloth/index.ts';

export type Layer = { readonly name: string; readonly face: string; readonly at: Point };

/** The layers at a point, bottom to top, each as the place of the piece that lies there; undefined too near an edge. */
export function layersOf({ plies }: Work, at: Point): Layer[] | undefined {
  if (plies.some(({ outline }) => away(at, outline) < 0.02)) return undefined;
  return plies
    .filter(({ outline }) => inside(outline, at))
    .map((ply: Ply) => ({ name: key(ply), face: ply.face, at: uncut(ply.transform, at) }));
}

const same = (a: Layer, b: Layer): boolean =>
  a.name === b.name && a.face === b.face && Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y) < 0.05;

/** Whether layers lie in the same order among others. */
function among(some: readonly Layer[], all: readonly Layer[]): boolean {
  let k = 0;
  for (const one of all) if (k < some.length && same(some[k]!, one)) k++;
  return k === some.length;
}

/** Whether two heaps are the same. */
export const sameStack = (a: readonly Layer[], b: readonly Layer[]): boolean => a.length === b.length && among(a, b);

export type Box = { x: number; y: number; width: number; height: number };

export function boxOf({ plies }: Work): Box {
  const points = plies.flatMap(({ outline }) => outline.map(({ from }) => from));
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
}

/** How far a point is from a side of the box round a work; undefined for what is no side, or no edge lies along. */
export function fromEdge(work: Work, side: string, at: Point): number | undefined {
  const box = boxOf(work);
  const all = side === 'all' ? ['left', 'right', 'bottom', 'top'] : [side];
  const isSide = (one: string) =>
    work.plies.some(({ outline }) =>
      outline.some(({ from }, i) => {
        const to = outline[(i + 1) % outline.length]!.from;
        const long = Math.hypot(to.x - from.x, to.y - from.y);
        const wide = one === 'left' || one === 'right' ? box.height : box.width;
        return [from, to].every((p) => Math.abs(fromSide(box, one, p) ?? 1) < 0.05) && long > wide / 2;
      }),
    );
  return all.every(isSide) ? fromSide(box, side, at) : undefined;
}

export function fromSide(box: Box, side: string, { x, y }: Point): number | undefined {
  switch (side) {
    case 'left':
      return x - box.x;
    case 'right':
      return box.x + box.width - x;
    case 'bottom':
      return y - box.y;
    case 'top':
      return box.y + box.height - y;
    case 'all':
      return Math.min(...['left', 'right', 'bottom', 'top'].map((one) => fromSide(box, one, { x, y })!));
    default:
      return undefined;
  }
}

export type Values = Readonly<Record<string, unknown>>;
export const lengthIn = (step: Values, name: string, usual = 0): number =>
  typeof step[name] === 'number' ? step[name] : usual;

/**
 * What a verb leaves alone: all; all, and adds to it (`under others`); what it does not cut away (`or cut`); or all that is
 * further than so many mm from the sides that it names.
 */
type Says = 'all' | 'under others' | 'or cut' | ((step: Values, seam: number) => Reaches);

type Reaches = { readonly sides: unknown; readonly reach: number; readonly under?: true; readonly cut?: true };

const edgeRows = 'all';

/** By verb. A hem of a first turn and a hem takes both, and lies on as much again. */
const says: Partial<Record<VerbName, Says>> = {
  baste: edgeRows,
  topstitch: edgeRows,
  edgestitch: edgeRows,
  press: 'all',
  attach: 'all',
  'close gap': 'all',
  fuse: 'under others',
  lay: 'under others',
  bind: 'under others',
  'sew round': 'under others',
  'box corner': 'all',
  'clip corners': 'or cut',
  grade: 'or cut',
  trim: (step) =>
    ['height', 'width', 'leaving'].some((name) => step[name] !== undefined)
      ? { sides: [], reach: 0, cut: true }
      : step['size'] === undefined
        ? { sides: step['at'], reach: lengthIn(step, 'by') }
        : { sides: [], reach: 0, cut: true },
  fold: (step) => ({ sides: step['from'] ?? 'top', reach: 2 * lengthIn(step, 'at') }),
  hem: (step) => ({ sides: step['at'] ?? 'all', reach: 2 * (lengthIn(step, 'fold') + lengthIn(step, 'then')) }),
  casing: (step, seam) => ({
    sides: step['at'],
    reach: 2 * (lengthIn(step, 'width') + 2 + lengthIn(step, 'then', seam)),
  }),
  gather: (step, seam) => ({ sides: step['at'], reach: Math.max(12, seam) + 6 }),
  join: (step, seam) => ({ sides: [step['at']].flat()[0], reach: 2 * lengthIn(step, 'seam', seam), under: true }),
};

/** Where layers of the kept work are not as they were, though the step does not name them. */
export function stillThere(step: Step, seam: number, points: readonly Point[]): string[] {
  const say = says[step.verb];
  const works = takenBy(step);
  const kept = verbNamed(step.verb).laysFirst ? works[1] : works[0];
  if (!say || !kept) return [];
  const values: Values = step.instruction;
  // What is caught between two works turns both away from it.
  if (step.verb === 'join' && works.length > 2) return [];
  const found: string[] = [];
  for (const at of points) {
    const [before, after] = [layersOf(kept, at), layersOf(step.after, at)];
    if (!before || !after) continue;
    if (typeof say === 'function') {
      const { sides, reach, under, cut } = say(values, seam);
      if (cut) {
        if (!among(after, before)) found.push(told('layers moved', at, before, after));
        continue;
      }
      const far = [sides].flat().map((side) => fromEdge(kept, String(side), at));
      if (far.some((off) => off === undefined || off < reach + 0.5)) continue;
      if (!(under ? among(before, after) : before.length === after.length && among(before, after)))
        found.push(told('further in than it reaches', at, before, after));
    } else if (say === 'or cut' ? !among(after, before) : !among(before, after)) {
      found.push(told('layers moved or are gone', at, before, after));
    } else if (say === 'all' && before.length !== after.length) {
      found.push(told('layers were added', at, before, after));
    }
  }
  return found.slice(0, 1);
}

function told(what: string, { x, y }: Point, before: readonly Layer[], after: readonly Layer[]): string {
  const say = (layers: readonly Layer[]) =>
    layers.map(({ name, face, at }) => `${name} ${face} ${at.x.toFixed(1)},${at.y.toFixed(1)}`).join(' | ');
  return `${what}, at ${x.toFixed(2)}, ${y.toFixed(2)}: ${say(before)} became ${say(after)}`;
}

/**
 * Inside the stitches of a pair sewn round nothing is cut when its allowances are trimmed; turned, it has nothing outside
 * them but what was caught.
 */
export function insideStitches(step: Step, points: readonly Point[]): string[] {
  const { verb, after } = step;
  if (!['turn', 'grade', 'clip corners'].includes(verb)) return [];
  const [work] = takenBy(step);
  const round = work!.stitches.findLast((stitch) => stitch.round)?.round;
  // Turned or folded, a work has its allowances inside.
  const isFolded = work!.plies.some(({ outline }) => outline.some(({ fold }) => fold !== undefined));
  if (!round || (verb !== 'turn' && isFolded)) return [];
  if (verb === 'turn') {
    const most = Math.max(...round.allowances);
    const open = round.ring.flatMap(({ from }, i) =>
      round.allowances[i] === 0 ? [[{ from }, { from: round.ring[(i + 1) % round.ring.length]!.from }]] : [],
    );
    // Beside an opening that ends on a curve, a little of the allowance stays out.
    const isBesideOpening = (p: Point) => open.some((edge) => away(p, edge) < 1.5 * most) || isOnFlap(p, round);
    const out = after.plies.find(
      ({ id, outline, laid }) =>
        !laid &&
        !round.caught.includes(id) &&
        outline.some(({ from }) => !inside(round.ring, from) && away(from, round.ring) > 0.1 && !isBesideOpening(from)),
    );
    return out ? [`ply ${out.id} of ${out.piece} sticks out of the stitches it was turned at`] : [];
  }
  for (const at of points) {
    if (!inside(round.ring, at) || away(at, round.ring) < 0.1) continue;
    const [before, now] = [layersOf(work!, at), layersOf(after, at)];
    if (before && now && !(before.length === now.length && among(before, now)))
      return [told('cut inside the stitches', at, before, now)];
  }
  return [];
}

/** Whether a point lies on what goes on beyond an open side of a work that was sewn up: between the sides next to it. */
function isOnFlap(p: Point, { ring, allowances, folds }: NonNullable<Work['stitches'][number]['round']>): boolean {
  const n = ring.length;
  const isBeyond = (i: number) => {
    const [a, b] = [ring[(i + n) % n]!.from, ring[(i + 1 + n) % n]!.from];
    return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) < -0.1 * Math.hypot(b.x - a.x, b.y - a.y);
  };
  return (folds ?? []).some(
    (fold, i) => !fold && allowances[i] === 0 && isBeyond(i) && !isBeyond(i - 1) && !isBeyond(i + 1),
  );
}

/** A turn in its place, or over, takes every layer along. */
export function turned(step: Step, points: readonly Point[]): string[] {
  const over = step.verb === 'turn over';
  if (!over && step.verb !== 'quarter turn') return [];
  const [work] = takenBy(step);
  const box = boxOf(work!);
  const middle = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  const left = (step.instruction as Values)['towards'] !== 'right';
  for (const at of points) {
    const [x, y] = [at.x - middle.x, at.y - middle.y];
    const there = over ? { x: -x, y } : left ? { x: -y, y: x } : { x: y, y: -x };
    const before = layersOf(work!, at);
    const after = layersOf(step.after, { x: middle.x + there.x, y: middle.y + there.y });
    if (!before || !after) continue;
    const flipped = over ? after.toReversed() : after;
    const same = before.every(
      (one, i) =>
        flipped[i]?.name === one.name &&
        Math.hypot(flipped[i].at.x - one.at.x, flipped[i].at.y - one.at.y) < 0.05 &&
        (flipped[i].face === one.face) !== over,
    );
    if (!same || before.length !== after.length) return [told('not all turned along', at, before, after)];
  }
  return [];
}

/**
 * Of each work that a step takes, what lay on one place still does, further in than seams reach from any edge. Of two works
 * joined at their openings and turned, each by itself does, and one lies where the other would, folded over along the seam.
 */
export function together(step: Step, reach: number, points: (work: Work) => readonly Point[]): string[] {
  if (['fold', 'hem', 'casing', 'pleat', 'tuck', 'trim', 'grade', 'clip corners'].includes(step.verb)) return [];
  const found: string[] = [];
  for (const work of takenBy(step)) {
    for (const at of points(work)) {
      const layers = work.plies.filter(({ outline }) => inside(outline, at));
      if (layers.length < 2 || work.plies.some(({ outline }) => away(at, outline) < reach)) continue;
      const heaps = heapsOf(step, work, layers).map(({ plies, over }) =>
        plies.map((ply) => placesOf(step.after, ply, uncut(ply.transform, at)).flatMap(over)),
      );
      const places = heaps.flat();
      if (!isOnOnePlace(places) && places.every((all) => all.length > 0))
        found.push(`layers at ${at.x.toFixed(2)}, ${at.y.toFixed(2)} came apart: ${layers.map(key).join(' | ')}`);
    }
  }
  return found.slice(0, 1);
}

type Heap = { readonly plies: readonly Ply[]; readonly over: (p: Point) => Point[] };

/** The layers by work where a step turns what is joined at its openings, with where each place would lie folded over. */
function heapsOf({ verb, after }: Step, work: Work, layers: readonly Ply[]): Heap[] {
  const seam = after.stitches.find(({ joins }) => joins?.turned);
  const put = work.stitches.flatMap(({ round }) => round?.put ?? []);
  const isPut = ({ laid = [] }: Ply) => laid.some((one) => put.some((p) => p.work === one.work && p.nth === one.nth));
  if (verb !== 'turn' || !seam || work.stitches.some(({ joins }) => joins?.turned))
    return [{ plies: layers, over: (p) => [p] }];
  return [
    { plies: layers.filter((ply) => !isPut(ply)), over: (p) => [p] },
    { plies: layers.filter(isPut), over: (p) => seam.runs.map((run) => mirrored(p, run)) },
  ];
}

function mirrored(p: Point, { from, to }: { readonly from: Point; readonly to: Point }): Point {
  const [x, y] = [to.x - from.x, to.y - from.y];
  const off = (2 * ((p.y - from.y) * x - (p.x - from.x) * y)) / (x * x + y * y);
  return { x: p.x + off * y, y: p.y - off * x };
}

/** Whether lists of places have one in common. */
const isOnOnePlace = ([first, ...others]: readonly (readonly Point[])[]): boolean =>
  first!.some((p) => others.every((all) => all.some((q) => Math.hypot(p.x - q.x, p.y - q.y) < 0.05)));

/** Where a point of a piece lies now. Works that are stacked count the copies of a piece anew. */
function placesOf({ plies }: Work, { piece }: Ply, at: Point): Point[] {
  return plies.flatMap((ply) => {
    const { a, b, c, d, e, f } = ply.transform;
    const there = { x: a * at.x + c * at.y + e, y: b * at.x + d * at.y + f };
    return ply.piece === piece && inside(ply.outline, there) ? [there] : [];
  });
}
