import { describe, expect, it } from 'vitest';
import { findCycle } from '../../../src/core/index.ts';
import { formula } from './read.ts';

const formulas = (texts: Record<string, string>) =>
  new Map(Object.entries(texts).map(([name, text]) => [name, formula(text)]));

describe('findCycle', () => {
  it('finds nothing where every path ends', () => {
    expect(findCycle(new Map())).toBeUndefined();
    expect(findCycle(formulas({ a: 'b + c', b: 'c * 2', c: '1 in' }))).toBeUndefined();
    expect(findCycle(formulas({ a: 'b + b', b: 'elsewhere' }))).toBeUndefined();
    // Two ways to the same end are no ring.
    expect(findCycle(formulas({ a: 'b + c', b: 'd', c: 'd', d: '1' }))).toBeUndefined();
  });

  it('names the path round, with the first name again at the end', () => {
    expect(findCycle(formulas({ a: 'a + 1' }))).toEqual(['a', 'a']);
    expect(findCycle(formulas({ a: 'b + 1', b: '2 * a' }))).toEqual(['a', 'b', 'a']);
    expect(
      findCycle(
        formulas({
          start: 'panel width',
          'panel width': 'max(strip length, 3 in) + ease',
          ease: '1/4 in',
          'strip length': '2 * -pocket depth',
          'pocket depth': 'round up panel width to 1/8 in',
        }),
      ),
    ).toEqual(['panel width', 'strip length', 'pocket depth', 'panel width']);
  });

  it('finds the ring behind a part that has none', () => {
    expect(findCycle(formulas({ a: 'b', b: '1', c: 'a + d', d: 'b + c' }))).toEqual(['c', 'd', 'c']);
  });

  it('follows a chain of any length', () => {
    const chain = Object.fromEntries(Array.from({ length: 20_000 }, (_, i) => [`m${i}`, `m${i + 1} + 1`]));
    expect(findCycle(formulas(chain))).toBeUndefined();
    const ring = findCycle(formulas({ ...chain, m20000: 'm19998' }));
    expect(ring).toEqual(['m19998', 'm19999', 'm20000', 'm19998']);
  });
});
