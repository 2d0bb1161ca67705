/** Chance that can be had again: the same seed gives the same row of choices on every machine. */
export type Chance = {
  /** A number from 0 up to, but not, 1. */
  share: () => number;
  /** A whole number from 0 up to, but not, `limit`. */
  below: (limit: number) => number;
  /** True so often, from 0 to 1. */
  often: (share: number) => boolean;
  /** One of several, of which there is at least one. */
  of: <T>(some: readonly T[]) => T;
};

/** Numbers after Tommy Ettinger's mulberry32 (public domain). */
export function chance(seed: number): Chance {
  let state = Math.imul(seed + 1, 0x9e3779b1) | 0;
  const share = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const below = (limit: number) => Math.floor(share() * limit);
  return {
    share,
    below,
    often: (often) => share() < often,
    of: (some) => some[below(some.length)]!,
  };
}
