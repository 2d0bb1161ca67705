/**
 * Sizes of cards, paper, banknotes and envelopes against published values. None of the standards themselves was read:
 * the values come through the copies named beside them.
 */
import { describe, expect, it, test } from 'vitest';
import { publishedSize, publishedSizes } from '../../src/core/project/index.ts';

const mm = (words: string) => {
  const { size } = publishedSize(words);
  return size && [Number(size.width.toFixed(3)), Number(size.height.toFixed(3))];
};

describe('cards', () => {
  it.each([
    // ISO/IEC 7810 as tabulated in an encyclopedia copy, hessslslslsls.azureedge.net/wiki/ID-1_(card_size).
    ['a card to ISO/IEC 7810 ID-1', 85.6, 53.98],
    ['an ISO/IEC 7810 ID-000 card', 25, 15],
    // M. Kuhn, University of Cambridge, on the USMA list (mail-archive.com/usma@colostate.edu/msg12672.html).
    ['ID-2', 105, 74],
    ['a passport', 125, 88],
  ])('%s measures %f x %f mm', (words, width, height) => expect(mm(words)).toEqual([width, height]));
});

describe('paper', () => {
  it.each([
    // ISO 216 as tabulated in an encyclopedia copy, wiki3.en-us.nina.az/ISO_216.html.
    ['A0', 841, 1189],
    ['A1', 594, 841],
    ['A2', 420, 594],
    ['A3', 297, 420],
    ['an A4 sheet', 210, 297],
    ['A5 paper', 148, 210],
    ['ISO 216 A6', 105, 148],
    ['A7 swatch cards', 74, 105],
    // convertworld.com/en/paper-size/letter.html: 8 1/2 x 11 in, 215.9 x 279.4 mm exactly.
    ['US letter', 215.9, 279.4],
    // paper-size.com/c/us-paper-sizes.html: 8 1/2 x 14 in.
    ['legal paper', 215.9, 355.6],
    // ANSI/ASME Y14.1 in an encyclopedia: ANSI B is 11 x 17 in.
    ['ANSI B', 279.4, 431.8],
  ])('%s measures %f x %f mm', (words, width, height) => expect(mm(words)).toEqual([width, height]));

  it('of the A series halves from size to size, each rounded down to whole millimetres', () => {
    // The rule of ISO 216, from memory: the short side of one is the long side of the next; half the long side its short.
    const series = publishedSizes.filter((size) => /^ISO 216 A\d$/u.test(size.name));
    expect(series).toHaveLength(8);
    for (const [i, smaller] of series.slice(1).entries()) {
      expect([smaller.width, smaller.height]).toEqual([Math.floor(series[i]!.height / 2), series[i]!.width]);
    }
  });
});

describe('banknotes', () => {
  it.each([
    // ECB Decision ECB/2003/4, EUR-Lex summary l25088.
    ['a 5 euro note', 120, 62],
    ['10 euro', 127, 67],
    ['€20', 133, 72],
    ['50 euro banknote', 140, 77],
    ['euro 100 note, first series', 147, 82],
    ['euro 200 note, first series', 153, 82],
    // Table of first-series notes, liquisearch.com/euro_banknotes/specification.
    ['500 euro note', 160, 82],
    // The announcement of the European Central Bank, reported by Coin World in 2019.
    ['100 euro', 147, 77],
    ['200 euro', 153, 77],
    // Bureau of Engraving and Printing, moneyfactory.com/faq: 2.61 x 6.14 in.
    ['a US dollar bill', 155.956, 66.294],
    // Bank of Japan, boj.or.jp/en/about/education/oshiete/money/c15.htm. A currency page prints 170 for the last: a misprint.
    ['a 1000 yen note', 150, 76],
    ['2000 yen', 154, 76],
    ['5000 yen', 156, 76],
    ['a 10000 yen note', 160, 76],
    // Swiss National Bank, design of the ninth series. A trade paper prints “7 millimeters by 144”: a misprint for 70.
    ['a 100 franc note', 144, 70],
    // The Bank of England’s text, repeated by gatewayhilltowns.org. A blog of 2024 prints 139 x 75 for 20: a misprint.
    ['a 5 pound note', 125, 65],
    ['10 pound', 132, 69],
    ['20 pound note', 139, 73],
  ])('%s measures %f x %f mm', (words, width, height) => expect(mm(words)).toEqual([width, height]));
});

test('Swiss notes are 7 mm longer from one to the next (Swiss National Bank)', () => {
  // The 1000 franc note is the last of six.
  const notes = [10, 20, 50, 100, 200, 1000].map((value) => mm(`a ${value} franc note`)!);
  for (const [i, [width, height]] of notes.entries()) expect([width, height]).toEqual([144 + 7 * (i - 3), 70]);
});

describe('envelopes and index cards, from memory', () => {
  it.each([
    ['a C4 envelope', 229, 324],
    ['C5 envelope', 162, 229],
    ['C6 envelope', 114, 162],
    ['C7 envelope', 81, 114],
    ['a DL envelope', 110, 220],
    ['a 3 x 5 index card', 127, 76.2],
    ['4 × 6 index cards', 152.4, 101.6],
    ['a 5 by 8 index card', 203.2, 127],
  ])('%s measures %f x %f mm', (words, width, height) => {
    expect(mm(words)).toEqual([width, height]);
    expect(publishedSize(words).size?.checked).toBe('from memory');
  });

  it('take the sheet they are made for: C6 holds A6 lying flat', () => {
    // What the C series is for, from memory: Cn is the geometric mean of An and Bn, a little larger than An.
    for (const n of [4, 5, 6, 7]) {
      const [sheet, cover] = [publishedSize(`A${n}`).size!, publishedSize(`C${n} envelope`).size!];
      expect(cover.width - sheet.width).toBeGreaterThan(5);
      expect(cover.height - sheet.height).toBeGreaterThan(5);
      expect(cover.width / sheet.width).toBeLessThan(1.12);
    }
  });
});

describe('names of things', () => {
  it('are found whole, not as a part of another word', () => {
    for (const words of ['an A77 card', 'a 105 euro note', 'XA7', 'A7-ish', 'grid-1'])
      expect(mm(words)).toBeUndefined();
  });

  it('that are nearly right get a suggestion, and others none', () => {
    expect(publishedSize('an A77 card').suggestion).toBe('ISO 216 A7');
    expect(publishedSize('ISO 7810 ID1').suggestion).toBeUndefined();
    expect(publishedSize('a credit crad').suggestion).toBe('ISO/IEC 7810 ID-1');
    expect(publishedSize('a shoe')).toEqual({});
    expect(publishedSize('')).toEqual({});
  });

  it('mean one thing only', () => {
    const names = publishedSizes.flatMap((size) => [size.name.toLowerCase(), ...size.aliases]);
    expect(new Set(names).size).toBe(names.length);
  });
});
