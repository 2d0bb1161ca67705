/** Numbers that look random and are the same for the same seed. */
export type Random = {
  /** A whole number from 0 up to, but not, `below`. */
  below: (limit: number) => number;
  /** A number from 0 up to, but not, 1. */
  share: () => number;
};

/**
 * A source of random numbers after Tommy Ettinger's mulberry32 (public domain), which gives the same row of numbers in
 * every browser.
 *
 * @example
 * random(1).below(6) === random(1).below(6) // => true
 */
export function random(seed: number): Random {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return (mixed ^ (mixed >>> 14)) >>> 0;
  };
  return {
    below: (limit) => Math.floor((next() / 4294967296) * limit),
    share: () => next() / 4294967296,
  };
}
