import { withoutPiping } from './piping.ts';
import { inverse, transformPoint, isReflected } from '../geometry/transform.ts';
import { areaOf, covers, moved } from './ring.ts';
import { boxOf } from './size.ts';
import { direction, distance, dot, minus, plus, times } from '../geometry/point.ts';
import { fail, ok, plainName, quote, SAME } from '../measure/index.ts';
import { findEdge, freeEdgesNamed } from './edge.ts';
import { convexHull, leftOf, lineThrough } from '../geometry/index.ts';
import type { ClothFault } from './fault.ts';
import type { LaidWork, Ply, PlyEdge, Work } from './work.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Result } from '../measure/index.ts';
import type { WorkEdge } from './edge.ts';

/** The four sides of a work, counter-clockwise. */
export const SIDES = ['bottom', 'right', 'top', 'left'] as const;
export type Side = (typeof SIDES)[number];

export const isSide = (name: string): name is Side => (SIDES as readonly string[]).includes(name);

/** What lies beyond each side. */
const OUT: Record<Side, Point> = {
  bottom: { x: 0, y: -1 },
  right: { x: 1, y: 0 },
  top: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
};

/** An edge faces a side when it slants by less than 45 degrees; one that bears the side's name may slant by more. */
const FACING = Math.SQRT1_2 + 1e-6;
const NAMED = 0.1;

/**
 * Finds an edge as a step names it:
 *
 * - `top`, `right`, `bottom`, `left`: a side of the work as it lies now, raw, folded or seamed, of one piece or many;
 * - `pocket left`: a side of a work that was laid on this one, as it was called when it was laid, or of the first or
 *   second of several (`first pocket left`);
 * - `facing top`, `slope`: a piece's own edge, wherever it went.
 *
 * Faults: `unknown-edge`, `ambiguous-edge`, `not-straight`.
 *
 * @example
 * edgeOn(fold(panel, { line, lands: 'under' }).value, 'left') // => the folded edge, where the panel ends now
 */
export function edgeOn(work: Work, asked: string): Result<WorkEdge, ClothFault> {
  const name = plainName(asked);
  if (/(?:^|\s)opening$/u.test(name)) {
    const message = 'This step does not go round an opening: lying flat, it would be done to both walls at once.';
    const fix = 'Do it to each layer before they are sewn together.';
    return fail({ code: 'opening', message, edge: asked, fix });
  }
  if (isSide(name)) {
    const side = sideOf(withoutPiping(work).plies, name, asked);
    if (side?.ok) return side;
    if (edgeUnderPoints(work, asked)) {
      const message = `The ${name} is not one straight side: the points of turned-in allowances stick up beyond it.`;
      return fail({ code: 'points', message, edge: asked });
    }
    // A curved outline may have no straight side there; its own edges may still be named.
    if (side) return side;
    const asCut = work.plies.filter((ply) => liesAsCut(ply, name));
    if (hasEdge(asCut, name)) return pieceEdge({ ...work, plies: asCut }, asked);
    const message = `There is no straight side at the ${name}, and no edge that was called so when it was cut.`;
    const fix = 'Name the edge of the piece that lies there, as in “front right”.';
    return fail({ code: 'unknown-edge', message, edge: asked, fix });
  }
  return laidEdge(work, asked) ?? pieceEdge(work, asked);
}

/**
 * The side of a turned work beyond which the points of its allowances stick up, as they do at slanting ends; undefined
 * where none do.
 *
 * @example
 * edgeUnderPoints(turnedPennant, 'top') // => the top edge, above which the allowances of both slanting seams reach
 */
export function edgeUnderPoints({ plies }: Work, asked: string): WorkEdge | undefined {
  const name = plainName(asked);
  if (!isSide(name)) return undefined;
  const turnedIn = plies.filter((ply) => isTurnedIn(ply, plies));
  const side = sideOf(
    plies.filter((ply) => !turnedIn.includes(ply)),
    name,
    asked,
  );
  if (!side?.ok) return undefined;
  const sticksUp = turnedIn.some(({ outline }) => outline.some(({ from }) => leftOf(side.value.line, from) < -SAME));
  return sticksUp ? side.value : undefined;
}

/** An allowance that was folded in: its raw edge is held by the seam, and its piece goes on in a larger ply. */
function isTurnedIn({ outline, piece }: Ply, plies: readonly Ply[]): boolean {
  if (!outline.some(({ held }) => held !== undefined) || !outline.some(({ fold }) => fold !== undefined)) return false;
  const size = areaOf(outline);
  return plies.some((other) => other.piece === piece && areaOf(other.outline) > 2 * size);
}

/** The edges that a step names; `all` stands for the four sides. Faults: those of each edge; `unknown-edge` for none. */
export function edgesOn(work: Work, asked: readonly string[]): Result<WorkEdge[], ClothFault> {
  const found: WorkEdge[] = [];
  for (const { name, isAll } of namedEdges(asked)) {
    const one = edgeOn(work, name);
    if (!one.ok) return isAll ? fail(notAllRound(work, one.fault)) : one;
    found.push(one.value);
  }
  return found.length > 0 ? ok(found) : fail({ code: 'unknown-edge', message: 'No edge is named here.' });
}

/** The edges that a step names, one by one: `all` stands for the four sides. */
export const namedEdges = (asked: readonly string[]): { name: string; isAll: boolean }[] =>
  asked.flatMap((one) => {
    const isAll = plainName(one) === 'all';
    return (isAll ? SIDES : [one]).map((name) => ({ name, isAll }));
  });

/** What is said of `all` where a work has not four straight sides: its own edges, by the names the author gave them. */
export function notAllRound({ plies }: Work, fault: ClothFault): ClothFault {
  const free = plies.flatMap(({ outline }) =>
    outline.filter(({ held, fold }) => held === undefined && fold === undefined),
  );
  const own = [...new Set(free.map(({ name }) => name))];
  if (fault.code !== 'unknown-edge' || own.every(isSide)) return fault;
  const message = `“all” stands for the four sides, and this work has no side “${fault.edge}”.`;
  return { code: fault.code, message, edge: 'all', fix: `Name its own edges: at: [${own.join(', ')}].` };
}

type Facing = {
  ply: Ply;
  edge: PlyEdge;
  i: number;
  from: Point;
  to: Point;
  length: number;
  toward: number;
  /** Whether it bears the side's name and lies as it was cut: a top that was turned to the left does not. */
  isNamed: boolean;
};

/** One beyond which nothing lies. */
type Outer = Facing & { line: Line };

/**
 * The side of plies as they lie: the straight edges facing that way beyond which none of them goes. Undefined where
 * there is none, as on a curve that goes inward.
 */
function sideOf(plies: readonly Ply[], side: Side, asked: string): Result<WorkEdge, ClothFault> | undefined {
  // Most edges lie level or upright, for which the box is enough.
  const box = boxOf(plies);
  const { x: right, y: up } = OUT[side];
  const limit = (right > 0 ? box.x + box.width : right * box.x) + (up > 0 ? box.y + box.height : up * box.y);
  let hull: readonly Point[] | undefined;
  const outer = edgesFacing(plies, side, SAME).flatMap((one): Outer[] => {
    const { from, to, length } = one;
    const [wide, high] = [to.x - from.x, to.y - from.y];
    const isStraight = right * wide + up * high === 0;
    const isOuter = isStraight
      ? limit - (right * from.x + up * from.y) < SAME
      : (hull ??= convexHull(plies.flatMap(({ outline }) => outline.map((edge) => edge.from)))).every(
          ({ x, y }) => wide * (y - from.y) - high * (x - from.x) > -SAME * length,
        );
    return isOuter ? [{ ...one, line: lineThrough(from, to) }] : [];
  });
  if (outer.length === 0) return undefined;
  const rank = ({ isNamed, toward }: Facing) => (isNamed ? 1 : 0) + toward;
  const best = outer.reduce((most, one) =>
    rank(one) > rank(most) + 1e-6 || (rank(one) > rank(most) - 1e-6 && one.length > most.length) ? one : most,
  );
  const { line } = best;
  const onLine = outer.filter(({ from, to }) => isOn(line, from) && isOn(line, to));
  const curved = onLine.find(isChord);
  if (curved) {
    const message = `The ${side} is curved there: it does not lie on one straight line.`;
    const { ply, edge } = curved;
    const own = liesAsCut(ply, side) ? edge.name : `${ply.piece} ${edge.name}`;
    return fail({ code: 'not-straight', message, edge: asked, own });
  }
  const edge = edgeAlong(onLine, line, asked);
  const beside = deeper(plies, onLine, edge, side);
  if (!beside) return ok({ ...edge, plies: plies.map(({ id }) => id) });
  const message = `The ${side} is not one straight side: ${edge.pieces.join(' and ')} stands out beyond ${beside.ply.piece}.`;
  const called = [`${edge.pieces.at(-1)!} ${edge.own}`, `${beside.ply.piece} ${beside.edge.name}`]
    .map(quote)
    .join(' or ');
  return fail({ code: 'ambiguous-edge', message: `${message} Write ${called}.`, edge: asked });
}

/** The edges of plies that face a side and are at least so many mm long. */
function edgesFacing(plies: readonly Ply[], side: Side, least: number): Facing[] {
  const { x, y } = OUT[side];
  const found: Facing[] = [];
  for (const ply of plies) {
    const ring = ply.outline;
    for (let i = 0; i < ring.length; i++) {
      const edge = ring[i]!;
      const { from } = edge;
      const to = ring[(i + 1) % ring.length]!.from;
      const across = x * (to.y - from.y) - y * (to.x - from.x);
      if (across <= 0) continue;
      const length = distance(from, to);
      const toward = across / length;
      const isNamed = edge.name === side && liesAsCut(ply, side);
      if (length >= least && toward >= (isNamed ? NAMED : FACING)) {
        found.push({ ply, edge, i, from, to, length, toward, isNamed });
      }
    }
  }
  return found;
}

/** Whether what faced a side when a ply was cut faces it still, more or less: only then is an edge that side by its name. */
function liesAsCut({ transform: { a, b, c, d } }: Ply, side: Side): boolean {
  const { x, y } = OUT[side];
  return x * (a * x + c * y) + y * (b * x + d * y) > 0.5 * Math.hypot(a * x + c * y, b * x + d * y);
}

const isOn = (line: Line, at: Point): boolean => Math.abs(leftOf(line, at)) <= SAME;

/** A chord of a curve: the edge goes on beside it under the same name, turned a little. */
function isChord({ ply, edge, i, from, to }: Facing): boolean {
  const ring = ply.outline;
  const n = ring.length;
  const way = minus(to, from);
  return [i - 1, i + 1].some((k) => {
    const other = ring[(k + n) % n]!;
    if (other.name !== edge.name || (other.held === undefined) !== (edge.held === undefined)) return false;
    if ((other.fold === undefined) !== (edge.fold === undefined)) return false;
    const on = minus(ring[(k + 1 + n) % n]!.from, other.from);
    const turn = Math.abs(Math.atan2(way.x * on.y - way.y * on.x, dot(way, on)));
    return turn > 1e-3 && turn < Math.PI / 4;
  });
}

type Straight = { readonly ply: Ply; readonly edge: PlyEdge; readonly from: Point; readonly to: Point };

/** All edges on a line as one. */
function edgeAlong(edges: readonly Straight[], line: Line, name: string): WorkEdge {
  const points = edges.flatMap(({ from, to }) => [from, to]);
  const along = (p: Point) => dot(minus(p, line.at), direction(line.angle));
  const [first, last] = [Math.min(...points.map(along)), Math.max(...points.map(along))];
  const at = (t: number) => plus(line.at, times(direction(line.angle), t));
  const pieces = [...new Set(edges.map(({ ply }) => ply.piece))];
  const longest = edges.reduce((best, one) => (distance(one.from, one.to) > distance(best.from, best.to) ? one : best));
  return { name, own: longest.edge.name, pieces, line, from: at(first), to: at(last), length: last - first };
}

/** How much longer an edge further in must be than the outermost one to be the side that is meant as well. */
const LONGER = 1.5;

/** An edge that faces the same way, ends the work as well, and is much longer: a tab or a flap stands out beyond it. */
function deeper(plies: readonly Ply[], onLine: readonly Facing[], edge: WorkEdge, side: Side): Facing | undefined {
  const out = OUT[side];
  return edgesFacing(plies, side, Math.max(SAME, LONGER * edge.length)).findLast((one) => {
    if (onLine.some(({ ply }) => ply === one.ply) || one.edge.name === 'gathers') return false;
    const middle = times(plus(one.from, one.to), 0.5);
    return (
      [0.1, 0.3, 0.5, 0.7, 0.9].filter((t) => {
        const at = plus(plus(one.from, times(minus(one.to, one.from), t)), times(out, 2 * SAME));
        return plies.every((ply) => !covers(ply.outline, at));
      }).length >= 3 && plies.some((ply) => covers(ply.outline, middle))
    );
  });
}

/**
 * Of a work that was laid on this one: its side, as it was called when it was laid, or an edge of its pieces. Undefined if
 * there is none so called.
 */
function laidEdge(work: Work, asked: string): Result<WorkEdge, ClothFault> | undefined {
  const found = laidNamed(work, asked, (rest, { plies }) => isSide(rest) || hasEdge(plies, rest));
  if (!found?.ok) return found;
  const { group, rest } = found.value;
  const { plies, laid } = group;
  if (!isSide(rest)) return pieceEdge({ ...work, plies }, rest);
  const unlaid = plies.map((ply): Ply => ({ ...ply, outline: moved(ply.outline, inverse(laid.transform)) }));
  const side = sideOf(unlaid, rest, asked);
  if (!side?.ok) return side;
  return ok({ ...movedEdge(side.value, laid.transform), plies: plies.map(({ id }) => id) });
}

/** Whether an edge of plies is called so. */
export const hasEdge = (plies: readonly Ply[], name: string): boolean =>
  plies.some(({ outline }) => outline.some((edge) => edge.name === name && edge.held === undefined));

/**
 * The work laid on this one that a name begins with, as in `pocket left` or `second pocket left`, and what follows; only
 * where what follows names something of it. Undefined if there is none.
 *
 * Faults: `ambiguous-edge` where several alike lie here and the name does not say which.
 */
export function laidNamed(
  work: Work,
  asked: string,
  names: (rest: string, group: LaidGroup) => boolean,
): Result<{ readonly group: LaidGroup; readonly rest: string }, ClothFault> | undefined {
  const name = plainName(asked);
  const groups = laidGroups(work);
  const found = groups.flatMap((group) => {
    const rest = afterName(name, group);
    return rest !== undefined && names(rest.rest, group) ? [{ group, ...rest }] : [];
  });
  const longest = Math.max(...found.map(({ group }) => group.laid.work.length));
  const named = found.filter(({ group }) => group.laid.work.length === longest);
  const counted = named.filter(({ isCounted }) => isCounted);
  const [one, ...others] = counted.length > 0 ? counted : named;
  if (!one || others.length === 0) return one && ok(one);
  const called = named.map(({ group }) => quote(`${ordinals[group.nth - 1] ?? group.nth} ${name}`));
  const message = `${groups.filter(({ laid }) => plainName(laid.work) === plainName(one.group.laid.work)).length} works called ${quote(one.group.laid.work)} lie here. Write ${called.join(' or ')}.`;
  return fail({ code: 'ambiguous-edge', message, edge: asked });
}

/** What works of one name are called in their order, the first at 0; a higher one goes by its number. */
export const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

/** What follows the name of a laid work, and whether before it stands which one of several alike. */
function afterName(name: string, { laid, nth }: LaidGroup): { rest: string; isCounted: boolean } | undefined {
  const work = `${plainName(laid.work)} `;
  const counted = [ordinals[nth - 1], `${nth}`].find((one) => one !== undefined && name.startsWith(`${one} ${work}`));
  if (counted !== undefined) return { rest: name.slice(counted.length + 1 + work.length), isCounted: true };
  return name.startsWith(work) ? { rest: name.slice(work.length), isCounted: false } : undefined;
}

/** A work that was laid on another: its plies, those that were folded since left out, and where it lies. */
export type LaidGroup = { readonly laid: LaidWork; readonly nth: number; readonly plies: readonly Ply[] };

/** The works that were laid on this one, those of one name counted in the order in which they were laid. */
export function laidGroups(work: Work): LaidGroup[] {
  // The parts of each work, those that lie as they were laid and those that were folded since.
  const groups: { laid: LaidWork; plies: Ply[] }[][] = [];
  for (const ply of work.plies) {
    for (const laid of ply.laid ?? []) {
      const parts = groups.find(([one]) => one!.laid.work === laid.work && one!.laid.nth === laid.nth);
      const there = parts?.find((one) => sameLie(one.laid.transform, laid.transform));
      if (there) there.plies.push(ply);
      else if (parts) parts.push({ laid, plies: [ply] });
      else groups.push([{ laid, plies: [ply] }]);
    }
  }
  const largest = ({ plies }: { plies: readonly Ply[] }) => Math.max(...plies.map(boxArea));
  const bodies = groups.map((parts) => parts.reduce((best, one) => (largest(one) > largest(best) ? one : best)));
  return bodies
    .toSorted((a, b) => a.laid.nth - b.laid.nth)
    .map((body, _, all) => ({
      ...body,
      nth: 1 + all.filter(({ laid }) => laid.work === body.laid.work && laid.nth < body.laid.nth).length,
    }));
}

/** The area of the box round a ply. */
const boxArea = (ply: Ply): number => {
  const { width, height } = boxOf([ply]);
  return width * height;
};

const KEYS = ['a', 'b', 'c', 'd', 'e', 'f'] as const;
const sameLie = (a: Transform, b: Transform): boolean =>
  a === b || KEYS.every((key) => Math.abs(a[key] - b[key]) < 1e-6);

/** An edge where it comes to lie; turned over, it is walked the other way, so that the cloth stays on its left. */
export function movedEdge(edge: WorkEdge, transform: Transform): WorkEdge {
  const [a, b] = [transformPoint(transform, edge.from), transformPoint(transform, edge.to)];
  const [from, to] = isReflected(transform) ? [b, a] : [a, b];
  return { ...edge, from, to, line: lineThrough(from, to) };
}

/**
 * A piece's own edge. Of several layers that have such an edge it is the outermost: that of the cloth and not that of
 * the interfacing inside it, the fold of a turned edge and not the raw edge within.
 */
function pieceEdge(work: Work, asked: string): Result<WorkEdge, ClothFault> {
  const found = findEdge(work, asked);
  const pliesOf = (pieces: readonly string[]) =>
    work.plies.flatMap(({ id, piece }) => (pieces.includes(piece) ? id : []));
  if (found.ok) return ok({ ...found.value, name: asked, plies: pliesOf(found.value.pieces) });
  const free = freeEdgesNamed(work, asked).map(({ ply, edge, to }) => ({ ply, edge, from: edge.from, to }));
  // One chord of a curve is not the curve.
  const isCurve = free.some((one) =>
    free.some(
      (other) =>
        other.ply === one.ply &&
        distance(one.to, other.from) <= SAME &&
        Math.abs(leftOf(lineThrough(one.from, one.to), other.to)) > SAME,
    ),
  );
  if (isCurve) return found;
  const outside = free.find(({ from, to }) => {
    const line = lineThrough(from, to);
    return free.every((one) => leftOf(line, one.from) > -SAME && leftOf(line, one.to) > -SAME);
  });
  if (!outside) return found;
  const line = lineThrough(outside.from, outside.to);
  const onLine = free.filter(({ from, to }) => isOn(line, from) && isOn(line, to));
  const edge = edgeAlong(onLine, line, asked);
  return ok({ ...edge, plies: pliesOf(edge.pieces) });
}
