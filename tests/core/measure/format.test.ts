import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatLength,
  formatMixed,
  formatNumber,
  isOnGrid,
  parseLength,
  toGrid,
  type Edition,
  type Grid,
  type LengthOptions,
} from '../../../src/core/measure/index.ts';

const tenths: Grid = { inch: 16, metric: 0.1 };
const fine: Grid = { inch: 32, metric: 0.5 };

describe('formatLength', () => {
  type Row = [mm: number, edition: Edition, options: LengthOptions, text: string];
  it.each<Row>([
    [114.3, 'inch', {}, '4 1/2 in'],
    [114, 'metric', {}, '114 mm'],
    [101.6, 'inch', {}, '4 in'],
    [9.525, 'inch', {}, '3/8 in'],
    [0, 'inch', {}, '0 in'],
    [0, 'metric', {}, '0 mm'],
    [106.3625, 'inch', {}, '4 3/16 in'],
    [25.4 / 32, 'inch', { grid: fine }, '1/32 in'],
    [106.3625, 'inch', { unit: false }, '4 3/16'],
    [114, 'metric', { unit: false }, '114'],
    // Real fractions, and blanks that neither stretch nor break.
    [114.3, 'inch', { style: 'set' }, '4½\u202fin'],
    [106.3625, 'inch', { style: 'set' }, '4\u202f3⁄16\u202fin'],
    [4.7625, 'inch', { style: 'set' }, '3⁄16\u202fin'],
    [25.4 / 32, 'inch', { style: 'set', grid: fine }, '1⁄32\u202fin'],
    [114, 'metric', { style: 'set' }, '114\u202fmm'],
    // Centimetres and finer marks.
    [114, 'metric', { in: 'cm' }, '11.4 cm'],
    [120, 'metric', { in: 'cm' }, '12 cm'],
    [114.3, 'metric', { grid: tenths }, '114.3 mm'],
    [114.3, 'metric', { grid: tenths, in: 'cm' }, '11.43 cm'],
    [114.5, 'metric', { grid: fine }, '114.5 mm'],
    // Off the marks.
    [114.3, 'metric', {}, '≈ 114 mm'],
    [114.3, 'metric', { in: 'cm' }, '≈ 11.4 cm'],
    [114, 'inch', {}, '≈ 4 1/2 in'],
    [114, 'inch', { style: 'set' }, '≈\u202f4½\u202fin'],
    [27, 'inch', {}, '≈ 1 1/16 in'],
    [114.45, 'metric', { grid: fine }, '≈ 114.5 mm'],
    // Half a mark goes to the larger one.
    [0.5, 'metric', {}, '≈ 1 mm'],
    [25.4 / 32, 'inch', {}, '≈ 1/16 in'],
    // Little is never nothing.
    [0.3, 'inch', {}, '≈ 0 in'],
    [0.3, 'metric', {}, '≈ 0 mm'],
    [-0.3, 'inch', {}, '≈ 0 in'],
    // Below zero, which only formulas give.
    [-114.3, 'inch', {}, '-4 1/2 in'],
    [-114.3, 'inch', { style: 'set' }, '−4½\u202fin'],
    [-114.3, 'metric', { style: 'set' }, '≈\u202f−114\u202fmm'],
    [-0, 'inch', {}, '0 in'],
    // No length at all.
    [NaN, 'inch', {}, '?'],
    [Infinity, 'metric', { style: 'set' }, '?'],
  ])('%d in %s with %j', (mm, edition, options, text) => {
    expect(formatLength(mm, edition, options)).toBe(text);
  });

  it.each<Row>([
    [114.3, 'inch', {}, '4 and a half inches'],
    [107.95, 'inch', {}, '4 and a quarter inches'],
    [120.65, 'inch', {}, '4 and 3 quarters inches'],
    [4.7625, 'inch', {}, '3 sixteenths of an inch'],
    [1.5875, 'inch', {}, 'a sixteenth of an inch'],
    [3.175, 'inch', {}, 'an eighth of an inch'],
    [12.7, 'inch', {}, 'half an inch'],
    [25.4, 'inch', {}, '1 inch'],
    [28.575, 'inch', {}, '1 and an eighth inches'],
    [50.8, 'inch', {}, '2 inches'],
    [0, 'inch', {}, '0 inches'],
    [5 * (25.4 / 32), 'inch', { grid: fine }, '5 thirty-seconds of an inch'],
    [114.3, 'inch', { unit: false }, '4 and a half'],
    [114, 'inch', {}, 'about 4 and a half inches'],
    [-114.3, 'inch', {}, 'minus 4 and a half inches'],
    [114, 'metric', {}, '114 millimetres'],
    [1, 'metric', {}, '1 millimetre'],
    [114, 'metric', { in: 'cm' }, '11.4 centimetres'],
    [10, 'metric', { in: 'cm' }, '1 centimetre'],
    [NaN, 'metric', {}, 'an unknown length'],
  ])('%d in %s with %j, spoken', (mm, edition, options, text) => {
    expect(formatLength(mm, edition, { ...options, style: 'spoken' })).toBe(text);
  });
});

describe('formatMixed and formatNumber', () => {
  it('writes thirds, which stand in formulas though no ruler has them', () => {
    expect(formatMixed(7, 3, 'set')).toBe('2⅓');
    expect(formatMixed(7, 3, 'spoken')).toBe('2 and a third');
    expect(formatMixed(7, 7, 'plain')).toBe('1');
    expect(formatMixed(9, 7, 'spoken')).toBe('1 and 2 over 7');
  });

  it.each<[number, string]>([
    [0, '0'],
    [4, '4'],
    [2.5, '2.5'],
    [0.1 + 0.2, '0.3'],
    [2 / 3, '≈ 0.667'],
    [-2 / 3, '≈ -0.667'],
    [0.0001, '≈ 0'],
    [-0.0001, '≈ 0'],
    [NaN, '?'],
  ])('%d', (value, text) => {
    expect(formatNumber(value)).toBe(text);
  });
});

describe('what is written can be read again', () => {
  const edition = fc.constantFrom<Edition>('inch', 'metric');
  const grid = fc.record({
    inch: fc.constantFrom(8, 16, 32),
    metric: fc.constantFrom(1, 0.5, 0.1),
  }) as fc.Arbitrary<Grid>;
  const style = fc.constantFrom('plain', 'set');
  const unit = fc.constantFrom('mm', 'cm');
  const length = fc.double({ min: 0, max: 100_000, noNaN: true });

  it('and is the very same length, on the marks, in either readable style', () => {
    fc.assert(
      fc.property(length, edition, grid, style, unit, (mm, edition, grid, style, unit) => {
        const onMark = toGrid(mm, edition, grid);
        fc.pre(onMark <= 100_000);
        const text = formatLength(onMark, edition, { grid, style, in: unit });
        expect(parseLength(text, edition), text).toEqual({ ok: true, value: onMark });
        // The unit is in the text, so the other edition reads the same length.
        expect(parseLength(text, edition === 'inch' ? 'metric' : 'inch'), text).toEqual({ ok: true, value: onMark });
      }),
      { numRuns: 5000 },
    );
  });

  it('also without its unit, in its own edition', () => {
    fc.assert(
      fc.property(length, edition, grid, style, (mm, edition, grid, style) => {
        const onMark = toGrid(mm, edition, grid);
        fc.pre(onMark <= 100_000);
        const text = formatLength(onMark, edition, { grid, style, unit: false });
        expect(parseLength(text, edition), text).toEqual({ ok: true, value: onMark });
      }),
      { numRuns: 2000 },
    );
  });

  it('shows ≈ exactly where the value is off the marks, and then the nearest mark', () => {
    fc.assert(
      fc.property(length, edition, grid, style, (mm, edition, grid, style) => {
        fc.pre(toGrid(mm, edition, grid) <= 100_000);
        const text = formatLength(mm, edition, { grid, style });
        expect(text.startsWith('≈')).toBe(!isOnGrid(mm, edition, grid));
        const step = edition === 'inch' ? 25.4 / grid.inch : grid.metric;
        const shown = parseLength(text.replace(/^≈\s/u, ''), edition);
        expect(shown.ok && Math.abs(shown.value - mm)).toBeLessThanOrEqual(step / 2 + 1e-6);
      }),
      { numRuns: 3000 },
    );
  });
});

it('nothing is shown with an exponent', () => {
  for (const size of [1e-7, 3e-9, 1e21, 4e25, -1e22]) {
    for (const style of ['plain', 'set', 'spoken'] as const) {
      for (const edition of ['inch', 'metric'] as const)
        expect(formatLength(size, edition, { style })).not.toMatch(/\de/);
      expect(formatNumber(size, { style, places: 12 })).not.toMatch(/\de/);
    }
  }
});
