import { describe, expect, it } from 'vitest';
import { formatQuantity, type Quantity, type QuantityOptions } from '../../../src/core/index.ts';
import { length, number, quantity } from './read.ts';

describe('formatQuantity', () => {
  it.each<[Quantity, QuantityOptions, string]>([
    [length(114.3), { edition: 'inch' }, '4 1/2 in'],
    [length(114.3), {}, '≈ 114 mm'],
    [length(114.3), { edition: 'metric', grid: { inch: 16, metric: 0.1 } }, '114.3 mm'],
    [number(4), { edition: 'inch' }, '4'],
    [number(2.5), { style: 'set' }, '2.5'],
    [number(2 / 3), { style: 'set' }, '≈\u202f0.667'],
    [number(2 / 3), { style: 'spoken' }, 'about 0.667'],
    [quantity(25.4 * 25.4 * 12.5, 2), { edition: 'inch' }, '12.5 in²'],
    [quantity(25.4 * 25.4 * 12.5, 2), { edition: 'inch', style: 'set' }, '12.5\u202fin²'],
    [quantity(25.4 * 25.4 * 12.5, 2), { edition: 'inch', style: 'spoken' }, '12.5 square inches'],
    [quantity(12345, 2), {}, '123.45 cm²'],
    [quantity(12345.6, 2), {}, '≈ 123.46 cm²'],
    [quantity(0.1, 2), {}, '≈ 0 cm²'],
    [quantity(-12345, 2), { style: 'spoken' }, 'minus 123.45 square centimetres'],
    [number(NaN), {}, '?'],
  ])('%j with %j', (of, options, text) => {
    expect(formatQuantity(of, options)).toBe(text);
  });
});
