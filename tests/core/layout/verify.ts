/**
 * Checks a layout with nothing of what made it but its types: boxes, a clipping library for other outlines, and the
 * list of cuts replayed on a rectangle of cloth.
 */
import { areaPathsD, EndType, FillRule, inflatePathsD, intersectD, JoinType } from 'clipper2-ts';
import type { Cloth, Demand, LayOptions, Layout, Placement, LaidCloth } from '../../../src/core/layout/index.ts';
import type { Outline } from '../../../src/core/geometry/index.ts';

const NEAR = 1e-3; // mm
/** How near pieces of any outline may come to each other beyond what is allowed: far less than a thread. */
const TOUCH = 5e-3; // mm

type Box = { left: number; right: number; low: number; high: number };

type Corner = { x: number; y: number };

/** The outline as points; arcs by points on them, a bulge being the tangent of a quarter of the angle they sweep. */
const ring = (outline: Outline): Corner[] =>
  outline.flatMap(({ from, bulge }, i) => {
    const to = outline[(i + 1) % outline.length]!.from;
    if (bulge === 0) return [{ x: from.x, y: from.y }];
    const sweep = 4 * Math.atan(bulge);
    // The centre lies on the bisector of the chord.
    const off = 1 / (2 * Math.tan(sweep / 2));
    const centre = {
      x: (from.x + to.x) / 2 - off * (to.y - from.y),
      y: (from.y + to.y) / 2 + off * (to.x - from.x),
    };
    return Array.from({ length: 64 }, (_, k) => {
      const [cos, sin] = [Math.cos((sweep * k) / 64), Math.sin((sweep * k) / 64)];
      const [dx, dy] = [from.x - centre.x, from.y - centre.y];
      return { x: centre.x + cos * dx - sin * dy, y: centre.y + sin * dx + cos * dy };
    });
  });

/** Whether outlines lie apart by the gap: each grown by half of it, they have nothing in common. */
function apart(a: Outline, b: Outline, gap: number): boolean {
  const grown = (outline: Outline): Corner[][] =>
    inflatePathsD([ring(outline)], (gap - TOUCH) / 2, JoinType.Round, EndType.Polygon, 2, 6, 1e-4);
  return Math.abs(areaPathsD(intersectD(grown(a), grown(b), FillRule.NonZero, 6))) < 1e-6;
}

function boxOf(outline: Outline): Box {
  const xs = ring(outline).map(({ x }) => x);
  const ys = ring(outline).map(({ y }) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

const areaOf = (outline: Outline): number => Math.abs(areaPathsD([ring(outline)]));

/** Everything that is wrong with a layout, in plain words; nothing if it is right. */
export function faults(layout: Layout, demand: Demand, cloths: readonly Cloth[], options: LayOptions = {}): string[] {
  const wrong: string[] = [];
  const placed = new Map<string, number>();
  for (const laid of layout.cloths) {
    const cloth = cloths.find((one) => one.name === laid.cloth);
    if (!cloth) {
      wrong.push(`${laid.cloth} is not among the cloths`);
      continue;
    }
    wrong.push(...onCloth(laid, cloth, demand, options));
    for (const one of laid.placements) placed.set(one.piece, (placed.get(one.piece) ?? 0) + one.layers);
  }
  for (const piece of demand) {
    const left = layout.left.find((one) => one.piece === piece.name)?.count ?? 0;
    const spare = layout.cloths.some((laid) => laid.folded) ? 1 : 0;
    const has = (placed.get(piece.name) ?? 0) + left;
    if (has < piece.count || has > piece.count + spare)
      wrong.push(`${piece.name}: ${has} of ${piece.count} accounted for`);
    const numbers = layout.cloths.flatMap((laid) =>
      laid.placements.filter((one) => one.piece === piece.name).map((one) => one.number),
    );
    if (new Set(numbers).size !== numbers.length) wrong.push(`${piece.name}: a number is used twice`);
  }
  const bolts = layout.cloths.filter((laid) => laid.kind === 'bolt').reduce((sum, laid) => sum + laid.length, 0);
  if (Math.abs(bolts - layout.length) > NEAR) wrong.push(`length ${layout.length}, bolts make ${bolts}`);
  if (layout.left.length === 0) {
    if (layout.bound.length > layout.length + NEAR)
      wrong.push(`bound ${layout.bound.length} above the length ${layout.length}`);
    if (layout.bound.preCuts > layout.preCuts)
      wrong.push(`bound of ${layout.bound.preCuts} pre-cuts above ${layout.preCuts}`);
  }
  return wrong;
}

function onCloth(laid: LaidCloth, cloth: Cloth, demand: Demand, options: LayOptions): string[] {
  const wrong: string[] = [];
  const { edge = 0, gap = 0 } = options;
  const selvage = cloth.selvage ?? 0;
  const left = laid.folded ? 0 : selvage + edge;
  const right = (laid.folded ? cloth.width / 2 : cloth.width) - selvage - edge;
  const high = (cloth.length === undefined || cloth.kind === 'bolt' ? laid.length : cloth.length) - edge;
  if (cloth.length !== undefined && laid.length > cloth.length + NEAR)
    wrong.push(`${laid.cloth} is used beyond its end`);

  for (const one of laid.placements) {
    const box = boxOf(one.outline);
    const name = `${one.piece} ${one.number}`;
    if (box.left < left - NEAR || box.right > right + NEAR || box.low < edge - NEAR || box.high > high + NEAR)
      wrong.push(`${name} is outside ${laid.cloth}`);
    if (Math.abs(box.left - one.at.x) > NEAR || Math.abs(box.low - one.at.y) > NEAR)
      wrong.push(`${name} is not where it says`);
    const piece = demand.find((wanted) => wanted.name === one.piece);
    if (!piece) wrong.push(`${name} is not wanted`);
    else wrong.push(...asWanted(one, piece, cloth, laid).map((what) => `${name} ${what}`));
  }

  const onlyBoxes = demand.every((piece) => rectangular(piece.outline) && piece.grain !== 'bias');
  for (const [i, a] of laid.placements.entries())
    for (const b of laid.placements.slice(i + 1)) {
      const [p, q] = [boxOf(a.outline), boxOf(b.outline)];
      const aside = Math.max(p.left - q.right, q.left - p.right, p.low - q.high, q.low - p.high);
      if (aside >= gap - NEAR) continue;
      // By straight cuts it is the boxes that are parted.
      const boxes =
        options.manner === 'straight cuts' || (onlyBoxes && rectangular(a.outline) && rectangular(b.outline));
      if (boxes || !apart(a.outline, b.outline, gap))
        wrong.push(`${a.piece} ${a.number} and ${b.piece} ${b.number} are too close: ${aside}`);
    }

  if (options.manner === 'straight cuts') wrong.push(...replay(laid, cloth));
  return wrong;
}

const rectangular = (outline: Outline): boolean => {
  const box = boxOf(outline);
  const whole = (box.right - box.left) * (box.high - box.low);
  return Math.abs(areaOf(outline) - whole) < 1e-6 * whole;
};

function asWanted(one: Placement, piece: Demand[number], cloth: Cloth, laid: LaidCloth): string[] {
  const wrong: string[] = [];
  const opened = piece.fold !== undefined && !laid.folded;
  const expected = areaOf(piece.outline) * (opened ? 2 : 1);
  if (Math.abs(areaOf(one.outline) - expected) > 1e-6 * expected) wrong.push('has another area than wanted');
  const box = boxOf(piece.outline);
  if (!opened) {
    const turned = one.angle % 180 === 90;
    const [w, h] = [box.right - box.left, box.high - box.low];
    const is = boxOf(one.outline);
    const [across, up] = turned ? [h, w] : [w, h];
    if (
      one.angle % 90 === 0 &&
      (Math.abs(is.right - is.left - across) > NEAR || Math.abs(is.high - is.low - up) > NEAR)
    )
      wrong.push('has another size than wanted');
  }
  const oneWay = cloth.nap === 'one way' || piece.nap === 'up';
  const grain = piece.grain ?? 'lengthwise';
  const along = one.angle % 180;
  if (grain === 'lengthwise' && along !== 0) wrong.push('lies off its lengthwise grain');
  if (grain === 'crosswise' && along !== 90) wrong.push('lies off its crosswise grain');
  if (grain === 'bias' && along !== 45 && along !== 135) wrong.push('is not on the bias');
  if (oneWay && one.angle >= 180) wrong.push('lies against the nap');
  if (piece.fold !== undefined && laid.folded && boxOf(one.outline).left > NEAR) wrong.push('does not lie on the fold');
  return wrong;
}

/** Pieces of a group must take the same place on the repeat, on every cloth that has the same. */
export function mismatches(layout: Layout, demand: Demand, cloths: readonly Cloth[]): string[] {
  const wrong: string[] = [];
  const byRepeat = new Map<number, Map<string, number>>();
  for (const laid of layout.cloths) {
    const repeat = cloths.find((one) => one.name === laid.cloth)?.repeat;
    if (repeat === undefined) continue;
    const phases = byRepeat.get(repeat) ?? new Map<string, number>();
    byRepeat.set(repeat, phases);
    for (const one of laid.placements) {
      const match = demand.find((piece) => piece.name === one.piece)?.match;
      if (!match) continue;
      const phase = boxOf(one.outline).low + match.at;
      const first = phases.get(match.group) ?? phase;
      phases.set(match.group, first);
      const off = Math.abs((phase - first) / repeat - Math.round((phase - first) / repeat)) * repeat;
      if (off > NEAR) wrong.push(`${one.piece} ${one.number} is off the repeat by ${off}`);
    }
  }
  return wrong;
}

/** Does as the list of cuts says, with parts of cloth as rectangles, and looks whether each piece comes out. */
function replay(laid: LaidCloth, cloth: Cloth): string[] {
  const wrong: string[] = [];
  const whole: Box = { left: 0, right: cloth.width, low: 0, high: cloth.kind === 'bolt' ? Infinity : cloth.length! };
  const parts = new Map<string, Box>([[laid.cloth, whole]]);
  const same = (a: number, b: number): boolean => a === b || Math.abs(a - b) < NEAR;
  for (const [i, cut] of laid.cuts.entries()) {
    if (cut.number !== i + 1) wrong.push(`cut ${i + 1} is numbered ${cut.number}`);
    const part = parts.get(cut.of);
    if (!part) {
      wrong.push(`cut ${cut.number} is of ${cut.of}, which is not on the mat`);
      continue;
    }
    parts.delete(cut.of);
    const across = cut.way === 'across';
    const at = across ? cut.from.y : cut.from.x;
    const ends = across
      ? same(cut.to.y, at) && same(cut.from.x, part.left) && same(cut.to.x, part.right)
      : same(cut.to.x, at) && same(cut.from.y, part.low) && same(cut.to.y, part.high);
    if (!ends) wrong.push(`cut ${cut.number} does not go from edge to edge`);
    if (!same(at - (across ? part.low : part.left), cut.measure)) wrong.push(`cut ${cut.number} is not at its measure`);
    if (!(cut.measure > 0)) wrong.push(`cut ${cut.number} takes nothing off`);
    const [made, rest] = across
      ? [
          { ...part, high: at },
          { ...part, low: at },
        ]
      : [
          { ...part, right: at },
          { ...part, left: at },
        ];
    if (cut.makes !== 'waste') parts.set(cut.makes, made);
    if (cut.leaves !== 'waste') parts.set(cut.leaves, rest);
  }
  for (const one of laid.placements) {
    const box = boxOf(one.outline);
    const name = `${one.piece} ${one.number}`;
    // A piece that is all of its cloth needs no cut, and keeps the cloth's name.
    const part = parts.get(name) ?? (laid.cuts.length === 0 ? parts.get(laid.cloth) : undefined);
    if (!part) wrong.push(`no cut makes ${name}`);
    else if (
      !same(part.left, box.left) ||
      !same(part.right, box.right) ||
      !same(part.low, box.low) ||
      !same(part.high, box.high)
    )
      wrong.push(`${name} is cut to another size or place`);
  }
  return wrong;
}
