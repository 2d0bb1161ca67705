import { rectangleArea, type RectangleKind } from './box.ts';

/**
 * A height, in whole units, that no layout of the rectangles in a box of this width can undercut, however they are laid.
 *
 * The largest of: the tallest rectangle; the area over the width; and what conservative scales prove, after Fekete &
 * Schepers 2004, Math. Methods Oper. Res. 60:311-329: sizes are changed by a function that never lets a row hold more
 * than before, so that the changed areas still bound the height. Last it is raised to the next height that stacked
 * rectangles can make at all.
 */
export function lowestHeight(kinds: readonly RectangleKind[], boxWidth: number): number {
  const laid = kinds.filter((kind) => kind.count > 0);
  if (laid.length === 0) return 0;
  // Of a layout pushed to the left, no row is wider than rectangles side by side can be.
  const width = lastSum(laid, boxWidth);
  const tallest = Math.max(...laid.map((kind) => (kind.turns ? Math.min(kind.width, kind.height) : kind.height)));
  let bound = Math.max(tallest, Math.ceil(rectangleArea(laid) / width - 1e-9), widest(laid, width));
  // With a repeat to match, rectangles do not stack flush.
  if (laid.every((kind) => !kind.repeat)) bound = nextSum(laid, bound);
  let [low, high] = [bound, 2 * bound];
  // What is refuted at one height is refuted below it too.
  while (low < high) {
    const middle = Math.floor((low + high) / 2);
    if (refuted(laid, width, middle)) low = middle + 1;
    else high = middle;
  }
  return laid.every((kind) => !kind.repeat) ? nextSum(laid, low) : low;
}

/** A size on a scale where 1 is the whole, changed; kept as a fraction of whole numbers until then. */
type Scale = (size: number, whole: number) => number;

const scales: Scale[] = [
  (size, whole) => size / whole,
  ...[1, 2, 3, 4, 5].map((k): Scale => (size, whole) => {
    const parts = (k + 1) * size;
    return parts % whole === 0 ? size / whole : Math.floor(parts / whole) / k;
  }),
];

/** What is larger than `whole - cut` counts as the whole, what is smaller than `cut` as nothing; `cut` up to half. */
const withCut =
  (cut: number): Scale =>
  (size, whole) =>
    size > whole - cut ? 1 : size < cut ? 0 : size / whole;

const byCut = new Map<number, Scale>();
function scaleFor(cut: number): Scale {
  const known = byCut.get(cut) ?? withCut(cut);
  byCut.set(cut, known);
  return known;
}

/** The scales worth trying for some sizes: cuts are taken from the sizes themselves. */
function scalesFor(sizes: readonly number[], whole: number, most: number): Scale[] {
  const cuts = [...new Set(sizes.flatMap((size) => [size, whole - size + 1]))].filter((c) => c > 0 && 2 * c <= whole);
  const every = Math.max(1, Math.ceil(cuts.length / most));
  byCut.clear();
  return [
    ...scales,
    ...cuts
      .sort((a, b) => a - b)
      .filter((_, i) => i % every === 0)
      .map(scaleFor),
  ];
}

/** The bound from the widths alone: a row holds no more than one whole. */
function widest(kinds: readonly RectangleKind[], width: number): number {
  let bound = 0;
  for (const scale of scalesFor(sidesOf(kinds), width, 40)) {
    let sum = 0;
    for (const { width: w, height: h, count, turns } of kinds) {
      const upright = scale(w, width) * h;
      sum += count * (turns && h <= width ? Math.min(upright, scale(h, width) * w) : upright);
    }
    bound = Math.max(bound, Math.ceil(sum - 1e-6));
  }
  return bound;
}

const sidesOf = (kinds: readonly RectangleKind[]): number[] =>
  kinds.flatMap((kind) => (kind.turns ? [kind.width, kind.height] : [kind.width]));

/** With more kinds than this the area decides, and pairs of scales cost more than they give. */
const MOST_KINDS = 60;

/** Whether a pair of scales proves that the rectangles do not go into a box of this width and height. */
const refuted = (kinds: readonly RectangleKind[], width: number, height: number): boolean =>
  kinds.length <= MOST_KINDS && boxesNeeded(kinds, width, height) > 1;

/**
 * How many boxes of one width and height the rectangles take at the least. Every one of them must fit in a box.
 */
export function boxesNeeded(kinds: readonly RectangleKind[], width: number, height: number): number {
  let most = 0;
  const changed = (whole: number, sizes: number[], scale: Scale): Float64Array =>
    Float64Array.from(sizes, (size) => (size > whole ? Infinity : scale(size, whole)));
  const widths = kinds.map((kind) => kind.width);
  const heights = kinds.map((kind) => kind.height);
  const anyTurns = kinds.some((kind) => kind.turns);
  // Each scale with the widths and the heights as it changes them: of a turned rectangle they change places.
  const across = scalesFor(sidesOf(kinds), width, 12).map((f) => [
    changed(width, widths, f),
    anyTurns ? changed(width, heights, f) : undefined,
  ]);
  const up = scalesFor(anyTurns ? [...widths, ...heights] : heights, height, 12).map((g) => [
    changed(height, heights, g),
    anyTurns ? changed(height, widths, g) : undefined,
  ]);
  for (const [w, turnedW] of across) {
    for (const [h, turnedH] of up) {
      let sum = 0;
      for (let k = 0; k < kinds.length; k++) {
        let size = w![k]! * h![k]!;
        if (kinds[k]!.turns) {
          const turned = turnedW![k]! * turnedH![k]!;
          // Infinity times nothing is no size: it does not fit that way.
          if (Number.isNaN(size) || turned < size) size = turned;
          if (Number.isNaN(size)) size = 0;
        } else if (Number.isNaN(size)) return Infinity;
        sum += kinds[k]!.count * size;
      }
      most = Math.max(most, sum);
    }
  }
  return Math.ceil(most - 1e-9);
}

/** More than this many units are not gone through one by one. */
const MOST_SUMS = 1_000_000;

/**
 * The least height from `bound` on that a stack of the rectangles can have: a layout that is pushed down as far as it
 * goes is as high as one of its stacks.
 */
function nextSum(kinds: readonly RectangleKind[], bound: number): number {
  const longest = Math.max(...kinds.map((kind) => Math.max(kind.width, kind.height)));
  const made = sums(
    kinds,
    bound + longest,
    (kind) => kind.height,
    (kind) => kind.width,
  );
  const at = made?.indexOf(1, bound) ?? -1;
  return at < 0 ? bound : at;
}

/** The greatest width up to `most` that a row of the rectangles can have. */
function lastSum(kinds: readonly RectangleKind[], most: number): number {
  return (
    sums(
      kinds,
      most,
      (kind) => kind.width,
      (kind) => kind.height,
    )?.lastIndexOf(1) ?? most
  );
}

/** For each length up to `end` 1 where rectangles end to end can be so long; undefined where that takes too long. */
function sums(
  kinds: readonly RectangleKind[],
  end: number,
  along: (kind: RectangleKind) => number,
  turned: (kind: RectangleKind) => number,
): Uint8Array | undefined {
  if (end > MOST_SUMS || kinds.length * end > 5e6) return undefined;
  const made = new Uint8Array(end + 1);
  made[0] = 1;
  // How many of the present kind it takes at the least; -1 if none make it so long.
  const used = new Int32Array(end + 1);
  for (const kind of kinds) {
    const sides = kind.turns && kind.width !== kind.height ? [along(kind), turned(kind)] : [along(kind)];
    used.fill(-1);
    for (let at = 0; at <= end; at++) {
      if (made[at]) {
        used[at] = 0;
        continue;
      }
      for (const side of sides) {
        const before = at - side;
        if (before < 0 || used[before]! < 0 || used[before]! >= kind.count) continue;
        if (used[at]! < 0 || used[before]! + 1 < used[at]!) used[at] = used[before]! + 1;
      }
    }
    for (let at = 0; at <= end; at++) if (used[at]! >= 0) made[at] = 1;
  }
  return made;
}
