import { describe, expect, it } from 'vitest';
import { toText } from '../../../src/core/index.ts';
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
