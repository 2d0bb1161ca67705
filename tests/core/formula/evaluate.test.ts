import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evaluate, fail, ok, type Quantity, type Scope } from '../../../src/core/index.ts';
import { fixed } from '../fixed.ts';
import { folio, formula, length, number, quantity, result, scopeOf } from './read.ts';
import { here, lengths, named, names, sums } from './random.ts';

const inches = scopeOf(folio, 'inch');

/** The fault of a formula that reads well and must not work out. */
function faultOf(text: string, scope: Scope = inches) {
  const found = evaluate(formula(text), scope);
  if (found.ok) throw new Error(`${text} came to ${found.value.value}`);
  return found.fault;
}

describe('evaluate', () => {
  it.each<[string, Quantity]>([
    ['packet width + 2 * ease', length(95.25)],
    ['packet width * ease', quantity(82.55 * 6.35, 2)],
    ['packet width * ease / ease', length(82.55)],
    ['packet width / ease', number(13)],
    ['packet width * ease / (ease * ease)', number(13)],
    ['packet width / 2', length(41.275)],
    ['pockets * 3 + 1', number(13)],
    ['-cut up', length(3.175)],
    ['min(packet width, 1 in, 2 * ease)', length(12.7)],
    ['max(cut up, 0 in)', length(0)],
    ['max(pockets, 3, 5)', number(5)],
    ['ease - ease', length(0)],
    ['0 * -1', number(0)],
  ])('%s', (text, expected) => {
    expect(result(text, inches)).toEqual(expected);
  });

  it.each<[string, number]>([
    ['round up 2.1 to 1/2', 2.5],
    ['round down 2.4 to 1/2', 2],
    ['round 2.2 to 1/2', 2],
    ['round 2.25 to 1/2', 2.5],
    ['round -2.25 to 1/2', -2.5],
    ['round up -2.1 to 1/2', -2],
    ['round down -2.1 to 1/2', -2.5],
    ['round up 2.5 to 1/2', 2.5],
    // Sums that should lie on a step and come out a hair beside it: 0.1 + 0.2 is a little more than 0.3.
    ['round up (0.1 + 0.2) to 0.3', 0.3],
    ['round down (0.3 - 0.1) to 0.2', 0.2],
    ['round (0.1 + 0.05) to 0.1', 0.2],
    ['round up 7 to pockets', 8],
  ])('%s', (text, expected) => {
    expect(result(text, inches).value).toBeCloseTo(expected, 12);
  });

  it('rounds lengths to lengths', () => {
    expect(result('round up packet width / 3 to 1/8 in', inches)).toEqual(length(28.575));
    expect(result('round down 100 mm to ease', scopeOf(folio))).toEqual(length(15 * 6.35));
    // Ten eighths by way of thirds are still ten eighths.
    expect(result('round up (10/3 in) * 3 / 8 to 1/8 in', inches).value).toBeCloseTo(31.75, 10);
  });
});

describe('editions in a formula', () => {
  it('moves a length of the other edition to this edition’s marks', () => {
    expect(result('1/4 in', scopeOf({}))).toEqual(length(6.35));
    expect(result('1/4 in', scopeOf({}, 'inch'))).toEqual(length(6.35));
    expect(result('1/4 in', scopeOf({}, 'metric'))).toEqual(length(6));
    expect(result('2 * 1/4 in', scopeOf({}, 'metric'))).toEqual(length(12));
    expect(result('6 mm', scopeOf({}, 'inch'))).toEqual(length(6.35));
    expect(result('1/4 in', { ...scopeOf({}, 'metric'), grid: { inch: 16, metric: 0.1 } })).toEqual(length(6.4));
  });

  it('leaves a length of its own edition alone, also off the marks', () => {
    expect(result('6.3 mm', scopeOf({}, 'metric'))).toEqual(length(6.3));
    expect(result('1/3 in', scopeOf({}, 'inch')).value).toBeCloseTo(25.4 / 3, 12);
  });

  it('makes sums of marks come out on marks, in each edition by itself', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 200 }), { minLength: 2, maxLength: 8 }), (sixteenths) => {
        const text = sixteenths.map((count) => `${count}/16 in`).join(' + ');
        const { value } = result(text, scopeOf({}, 'metric'));
        expect(Number.isInteger(value)).toBe(true);
      }),
    );
  });
});

describe('kinds that do not fit', () => {
  type Row = [text: string, at: string, also: string | undefined, code: string, message: string, fixed?: string];
  it.each<Row>([
    [
      'ease + 2',
      '2',
      'ease',
      'kinds-differ',
      '“ease” is a length and “2” a plain number. Write “2 in” if you mean a length.',
      'ease + 2 in',
    ],
    [
      '1/4 - packet width',
      '1/4',
      'packet width',
      'kinds-differ',
      '“packet width” is a length and “1/4” a plain number. Write “1/4 in” if you mean a length.',
      '1/4 in - packet width',
    ],
    [
      'pockets + ease',
      'pockets',
      'ease',
      'kinds-differ',
      '“ease” is a length and “pockets” a plain number. They cannot be added.',
    ],
    [
      'ease - (1 + 2)',
      '(1 + 2)',
      'ease',
      'kinds-differ',
      '“ease” is a length and “(1 + 2)” a plain number. They cannot be taken from each other.',
    ],
    [
      'ease - (2)',
      '(2)',
      'ease',
      'kinds-differ',
      '“ease” is a length and “(2)” a plain number. They cannot be taken from each other.',
    ],
    [
      'ease * ease + packet width',
      'packet width',
      'ease * ease',
      'kinds-differ',
      '“ease * ease” is an area and “packet width” a length. They cannot be added.',
    ],
    [
      'max(0, ease)',
      '0',
      'ease',
      'kinds-differ',
      '“ease” is a length and “0” a plain number. Write “0 in” if you mean a length.',
      'max(0 in, ease)',
    ],
    [
      'min(ease, packet width, pockets)',
      'pockets',
      'ease',
      'kinds-differ',
      '“ease” is a length and “pockets” a plain number. They cannot be compared.',
    ],
    [
      'round up ease to 2',
      '2',
      'ease',
      'kinds-differ',
      '“ease” is a length and “2” a plain number. Write “2 in” if you mean a length.',
      'round up ease to 2 in',
    ],
    [
      'round up pockets to ease',
      'pockets',
      'ease',
      'kinds-differ',
      '“ease” is a length and “pockets” a plain number. They cannot be rounded to each other.',
    ],
    [
      'ease * ease * ease',
      'ease * ease * ease',
      undefined,
      'more-than-area',
      '“ease * ease” times “ease” is more than an area. Check what is multiplied.',
    ],
    [
      'pockets / ease',
      'ease',
      'pockets',
      'divided-by-larger',
      '“pockets” is a plain number and “ease” a length. The one cannot be divided by the other.',
    ],
    [
      '3 / 4 in',
      '3 / 4 in',
      undefined,
      'divided-by-larger',
      '“3” is a plain number and “4 in” a length. Write “3/4 in” if you mean a fraction.',
      '3/4 in',
    ],
    [
      '2.5 / 4 in',
      '4 in',
      '2.5',
      'divided-by-larger',
      '“2.5” is a plain number and “4 in” a length. The one cannot be divided by the other.',
    ],
    [
      '1 / (ease - ease)',
      '(ease - ease)',
      '1',
      'divided-by-larger',
      '“1” is a plain number and “(ease - ease)” a length. The one cannot be divided by the other.',
    ],
    [
      'ease / (ease - ease)',
      '(ease - ease)',
      undefined,
      'divided-by-zero',
      '“(ease - ease)” is zero. Nothing can be divided by it.',
    ],
    ['1 / 0', '0', undefined, 'divided-by-zero', '“0” is zero. Nothing can be divided by it.'],
    [
      '1 / (0.1 + 0.2 - 0.3)',
      '(0.1 + 0.2 - 0.3)',
      undefined,
      'divided-by-zero',
      '“(0.1 + 0.2 - 0.3)” is zero. Nothing can be divided by it.',
    ],
    [
      'round ease to 0 in',
      '0 in',
      undefined,
      'rounded-to-nothing',
      '“0 in” is not more than zero. Nothing can be rounded to it.',
    ],
    [
      'round ease to cut up',
      'cut up',
      undefined,
      'rounded-to-nothing',
      '“cut up” is not more than zero. Nothing can be rounded to it.',
    ],
  ])('%s', (text, at, also, code, message, after) => {
    const fault = faultOf(text);
    expect(fault).toMatchObject({ code, message });
    expect(text.slice(fault.start, fault.end)).toBe(at);
    expect(fault.also && text.slice(fault.also.start, fault.also.end)).toBe(also);
    expect(fault.fix === undefined ? undefined : fixed(text, fault)).toBe(after);
    if (after !== undefined) expect(evaluate(formula(after), inches).ok).toBe(true);
  });

  it('suggests the unit of the edition', () => {
    expect(faultOf('ease + 2', scopeOf(folio, 'metric')).fix).toBe('2 mm');
    expect(faultOf('ease + 2', scopeOf(folio)).fix).toBe('2 mm');
  });
});

describe('names that have no value', () => {
  it('unknown ones come with the nearest known one', () => {
    expect(faultOf('2 * packet widht')).toEqual({
      severity: 'error',
      code: 'unknown-name',
      message: 'There is no measure called “packet widht”. Do you mean “packet width”?',
      start: 4,
      end: 16,
      fix: 'packet width',
    });
    expect(faultOf('2 * packet widht', { get: () => undefined })).toEqual({
      severity: 'error',
      code: 'unknown-name',
      message: 'There is no measure called “packet widht”.',
      start: 4,
      end: 16,
    });
  });

  it('those with a fault of their own are named, and that fault is not told again', () => {
    const own = fail({ severity: 'error', code: 'divided-by-zero', message: 'Somewhere else.', start: 0, end: 1 });
    expect(faultOf('2 * ease', { get: () => own })).toEqual({
      severity: 'error',
      code: 'rests-on-fault',
      message: '“ease” has no value yet, because of a fault of its own.',
      start: 4,
      end: 8,
    });
  });

  it('the first fault is the one that is told', () => {
    expect(faultOf('(unknown + 1) * (ease + 2) / 0').code).toBe('unknown-name');
  });
});

describe('numbers out of all bounds', () => {
  it.each([
    ['9'.repeat(400), 'not-finite'],
    [`${'9'.repeat(300)} * ${'9'.repeat(300)}`, 'not-finite'],
    [`${'9'.repeat(400)} - ${'9'.repeat(400)}`, 'not-finite'],
    ['strange * 2', 'not-finite'],
  ])('%s', (text, code) => {
    const { message, ...fault } = faultOf(text, scopeOf({ strange: number(NaN) }));
    expect(fault).toEqual({ severity: 'error', code, start: 0, end: text.length });
    expect(message).toMatch(/^“.{1,32}” does not come to a finite number\.$/u);
  });
});

describe('whatever is worked out', () => {
  const values = fc.array(fc.tuple(fc.double(), fc.constantFrom(0, 1, 2)), {
    minLength: names.length,
    maxLength: names.length,
  });

  it('comes to a finite quantity or to a fault inside the text', () => {
    fc.assert(
      fc.property(sums(fc.oneof(lengths, named), named), values, (sum, values) => {
        const text = here(sum);
        const get = (name: string) => {
          const [value, dimension] = values[names.findIndex((each) => each === name)]!;
          return ok(quantity(value, dimension));
        };
        const found = evaluate(formula(text, names), { get });
        if (found.ok) return Number.isFinite(found.value.value) && !Object.is(found.value.value, -0);
        return found.fault.start < found.fault.end && found.fault.end <= text.length;
      }),
      { numRuns: 2000 },
    );
  });
});

describe('pi and roots', () => {
  it.each<[string, Quantity]>([
    ['pi', number(Math.PI)],
    ['2 * π', number(2 * Math.PI)],
    ['pi * ease', length(Math.PI * 6.35)],
    ['root of 2', number(Math.SQRT2)],
    ['root of (2 in * 8 in)', length(101.6)],
    // What comes after the part belongs to the sum: the root of 9, and then 7.
    ['root of 9 + 7', number(10)],
    ['2 * root of root of 16', number(4)],
    ['pi * root of (pockets * 4)', number(4 * Math.PI)],
  ])('%s', (text, expected) => {
    const { value, dimension } = result(text, inches);
    expect(dimension).toBe(expected.dimension);
    expect(value).toBeCloseTo(expected.value, 9);
  });

  it('are words of the author where a measure is called so', () => {
    const own = scopeOf({ pi: length(10), 'root of it': length(4) });
    expect(result('pi + root of it', own, own.known)).toEqual(length(14));
    expect(result('pie / 2', scopeOf({ pie: length(8) }))).toEqual(length(4));
  });

  it('refuses the root of a length, and of what is less than nothing', () => {
    expect(faultOf('root of ease')).toMatchObject({ code: 'root-of-length', start: 0, end: 12 });
    expect(faultOf('root of (2 - 3)')).toMatchObject({ code: 'root-of-less', start: 8, end: 15 });
    expect(result('root of (0.3 - 0.2 - 0.1)', inches).value).toBe(0);
  });
});
