/**
 * Formulas against a general mathematics library: mathjs, https://mathjs.org, which reads sums and knows units.
 * The sums are random. The library is given every part in brackets, so that the order of signs is put to the test here.
 */
import fc from 'fast-check';
import * as math from 'mathjs';
import { describe, expect, it } from 'vitest';
import { evaluate, parseFormula, type Quantity } from '../../src/core/index.ts';
import { here, lengths, named, names, parts, plainNumbers, sums, there, type Sum } from '../core/formula/random.ts';
import { length, number, scopeOf } from '../core/formula/read.ts';

/** What the kit makes of a sum, by the values of the names. */
function ours(sum: Sum, values: readonly Quantity[]) {
  const text = here(sum);
  const read = parseFormula(text, { names });
  if (!read.ok) throw new Error(`${text}: ${read.fault.message}`);
  return evaluate(read.value, scopeOf(Object.fromEntries(names.map((name, i) => [name, values[i]!]))));
}

/** Something is rounded that is so large that the order of two multiplications decides about a whole step. */
const isCountedTooFar = (sum: Sum, scope: Record<string, number>): boolean =>
  (sum.kind === 'round' && Math.abs(Number(math.evaluate(there(sum.of), scope))) > 1e9) ||
  parts(sum).some((part) => isCountedTooFar(part, scope));

describe('formulas over plain numbers', () => {
  const value = fc.integer({ min: -4000, max: 4000 }).map((sixteenths) => sixteenths / 16);
  const values = fc.tuple(...names.map(() => value));

  it('come to the same as in mathjs, to the last digit', () => {
    let compared = 0;
    fc.assert(
      fc.property(sums(fc.oneof(plainNumbers, named), plainNumbers), values, (sum, values) => {
        const scope = Object.fromEntries(values.map((value, i) => [`n${i}`, value]));
        if (isCountedTooFar(sum, scope)) return;
        const theirs: number = math.evaluate(there(sum), scope);
        const found = ours(sum, values.map(number));
        if (!found.ok) {
          // Dividing by zero, or by what the rounding of sums left of it, is a fault here and a huge number there.
          expect(found.fault.code, found.fault.message).toBe('divided-by-zero');
          return;
        }
        compared++;
        expect(found.value).toEqual({ value: theirs === 0 ? 0 : theirs, dimension: 0 });
      }),
      { numRuns: 4000 },
    );
    expect(compared).toBeGreaterThan(3500);
  });
});

/** No differences in it: it stays well above zero where its ends do. */
const onlyRises = (sum: Sum): boolean => !['-', 'minus', 'round'].includes(sum.kind) && parts(sum).every(onlyRises);

/** No rounding, and no division by what may be next to nothing: there the last digits would decide. */
const isSteady = (sum: Sum): boolean =>
  sum.kind !== 'round' && (sum.kind !== '/' || onlyRises(sum.right)) && parts(sum).every(isSteady);

describe('formulas over lengths', () => {
  const value = fc.integer({ min: 1, max: 4000 }).map((sixteenths) => (sixteenths / 16) * 25.4);
  const values = fc.tuple(...names.map(() => value));
  const ends = fc.oneof(plainNumbers, lengths, named);
  const units = { 0: '', 1: 'mm', 2: 'mm^2' } as const;

  /** What mathjs makes of it: a number, or a size with its unit; undefined where the units do not fit. */
  function theirs(sum: Sum, values: readonly number[]): number | math.Unit | undefined {
    try {
      return math.evaluate(there(sum), Object.fromEntries(values.map((value, i) => [`n${i}`, math.unit(value, 'mm')])));
    } catch (error) {
      expect(String(error)).toMatch(/units do not match|units with different base|unexpected type/iu);
      return undefined;
    }
  }

  it('agree with mathjs on what fits together, and on what it comes to', () => {
    const seen = { same: 0, refusedByBoth: 0, onlyHere: 0 };
    fc.assert(
      fc.property(sums(ends, ends, 3).filter(isSteady), values, (sum, values) => {
        const found = ours(sum, values.map(length));
        const other = theirs(sum, values);
        if (!found.ok) {
          // The kit stops at areas, and has no use for anything per length; mathjs goes on.
          const onlyHere = ['more-than-area', 'divided-by-larger'].includes(found.fault.code!);
          if (!onlyHere) expect(other, `${here(sum)}: ${found.fault.message}`).toBeUndefined();
          seen[onlyHere ? 'onlyHere' : 'refusedByBoth']++;
          return;
        }
        seen.same++;
        const unit = units[found.value.dimension];
        const size = typeof other === 'number' ? other : other?.toNumber(unit);
        expect(typeof other, here(sum)).toBe(unit === '' ? 'number' : 'object');
        expect(Math.abs(found.value.value - size!), here(sum)).toBeLessThanOrEqual(
          1e-9 * Math.max(1e3, Math.abs(size!)),
        );
      }),
      { numRuns: 4000 },
    );
    expect(Math.min(seen.same, seen.refusedByBoth)).toBeGreaterThan(500);
  });
});
