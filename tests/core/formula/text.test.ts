import { describe, expect, it } from 'vitest';
import { toTex, toText, toWords } from '../../../src/core/index.ts';
import { folio, formula, scopeOf } from './read.ts';

const seen = (text: string) => text.replaceAll('\u202f', '␣');

describe('a worked sum on paper', () => {
  it('puts the numbers in the place of the names', () => {
    const { names, numbers, result } = toText(formula('packet width + 2 * ease'), scopeOf(folio, 'inch'));
    expect([names, numbers, result].map(seen)).toEqual(['packet width + 2 × ease', '3¼␣in + 2 × ¼␣in', '=␣3¾␣in']);
  });

  it('keeps the brackets that the sum needs, and no others', () => {
    const scope = scopeOf(folio, 'metric');
    const names = (text: string) => toText(formula(text), scope).names;
    expect(names('(packet width + ease) * 2')).toBe('(packet width + ease) × 2');
    expect(names('packet width - (ease - seam)')).toBe('packet width − (ease − seam)');
    expect(names('packet width / 2 + ease')).toBe('packet width ÷ 2 + ease');
    expect(names('max(packet width, ease) - seam')).toBe('(the largest of packet width and ease) − seam');
  });
});

describe('pi and roots', () => {
  const scope = scopeOf(folio, 'inch');
  const across = formula('root of (packet width * ease) / pi');

  it('are set as mathematics, on paper and in words', () => {
    expect(toText(across, scope).names).toBe('(the root of (packet width × ease)) ÷ π');
    expect(toText(formula('root of (ease * ease) * 2'), scope).names).toBe('(the root of (ease × ease)) × 2');
    expect(toTex(across, scope).names).toBe('\\dfrac{\\sqrt{\\text{packet width} \\times \\text{ease}}}{\\pi}');
    expect(toWords(formula('2 * pi * ease'), scope)).toContain('2 times pi times ease');
  });
});
