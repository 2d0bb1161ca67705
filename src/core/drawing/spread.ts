/** Something that wants to stand at a place of a line and takes some room there, both in mm. */
export type LabelSpan = { readonly at: number; readonly size: number };

/**
 * Moves labels along a line just so far apart that none touches another, each as little as may be (least squares).
 * Their order stays: `at` must not fall from one to the next. With `room`, none leaves it as long as they all fit.
 *
 * @returns the new middle of each
 * @example
 * spread([{ at: 0, size: 4 }, { at: 1, size: 4 }], 0) // => [-1.5, 2.5]
 * spread([{ at: 0, size: 4 }, { at: 9, size: 4 }], 1) // => [0, 9]
 */
export function spread(labels: readonly LabelSpan[], gap: number, room?: { from: number; to: number }): number[] {
  // Take away the room that the labels before it need, and all that is left to ask is that places do not fall.
  const taken: number[] = [];
  labels.forEach(({ size }, i) => {
    const before = labels[i - 1];
    taken.push(before ? taken[i - 1]! + (before.size + size) / 2 + gap : 0);
  });
  // Neighbours that would fall are pooled and stand together at their mean.
  const pools: { sum: number; count: number }[] = [];
  labels.forEach(({ at }, i) => {
    let pool = { sum: at - taken[i]!, count: 1 };
    for (let last = pools.at(-1); last && last.sum / last.count > pool.sum / pool.count; last = pools.at(-1)) {
      pools.pop();
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
    }
    pools.push(pool);
  });
  const places = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  const [first, last] = [labels[0], labels.at(-1)];
  if (room && first && last) {
    const lowest = room.from + first.size / 2;
    const highest = room.to - last.size / 2 - taken.at(-1)!;
    for (let i = 0; i < places.length; i++) places[i] = Math.max(lowest, Math.min(highest, places[i]!));
  }
  return places.map((place, i) => place + taken[i]!);
}
