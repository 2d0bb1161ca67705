import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LONGEST, parseLength, readLength, type Edition } from '../../../src/core/measure/index.ts';
import { fixed } from '../fixed.ts';

/** The length in mm; a text that is refused fails the test with its message. */
function mm(text: string, edition: Edition = 'inch'): number {
  const read = parseLength(text, edition);
  if (!read.ok) throw new Error(`${text}: ${read.fault.message}`);
  return read.value;
}

function faultOf(text: string, edition: Edition = 'inch') {
  const read = parseLength(text, edition);
  if (read.ok) throw new Error(`${JSON.stringify(text)} was read as ${read.value} mm`);
  return read.fault;
}

describe('parseLength reads what people write', () => {
  it.each<[string, number]>([
    // A whole number and a fraction, however they are joined.
    ['4 1/2', 114.3],
    ['4-1/2', 114.3],
    ['4‑1/2', 114.3],
    ['4–1/2', 114.3],
    ['4 and 1/2', 114.3],
    ['4 & 1/2', 114.3],
    ['4  1/2', 114.3],
    ['4 1 / 2', 114.3],
    ['4½', 114.3],
    ['4 ½', 114.3],
    ['4-½', 114.3],
    ['4 1⁄2', 114.3],
    ['4 1∕2', 114.3],
    ['4¹⁄₂', 114.3],
    ['4 ³⁄₁₆', 106.3625],
    ['4⅜', 111.125],
    // A fraction or a number alone.
    ['3/8', 9.525],
    ['⅜', 9.525],
    ['11/16', 17.4625],
    ['5/4', 31.75],
    ['½', 12.7],
    ['0', 0],
    ['0/4', 0],
    ['4', 101.6],
    ['4.5', 114.3],
    ['4,5', 114.3],
    ['4.', 101.6],
    ['.5', 12.7],
    [',5', 12.7],
    ['0.125', 3.175],
    ['0,125', 3.175],
    ['1.125', 28.575],
    // Inches.
    ['4-1/2"', 114.3],
    ['4 1/2 "', 114.3],
    ['4 1/2”', 114.3],
    ['4 1/2“', 114.3],
    ['4 1/2″', 114.3],
    ["4 1/2''", 114.3],
    ['4 1/2′′', 114.3],
    ['4 1/2’’', 114.3],
    ['4½ in', 114.3],
    ['4½in', 114.3],
    ['4 1/2 in.', 114.3],
    ['4 1/2 IN', 114.3],
    ['4 1/2 inch', 114.3],
    ['4 1/2 inches', 114.3],
    ['4 1/2 ins', 114.3],
    // Feet, and feet with inches.
    ["1'", 304.8],
    ['1’', 304.8],
    ['1′', 304.8],
    ['1´', 304.8],
    ['1 ft', 304.8],
    ['2 feet', 609.6],
    ['1 foot', 304.8],
    ['1\' 6 1/2"', 469.9],
    ['1’6½”', 469.9],
    ['1′ 6 1/2″', 469.9],
    ['1 ft 3 in', 381],
    ['1ft3in', 381],
    ['1 ft and 3 in', 381],
    ["5' 6", 1676.4],
    // Yards.
    ['1 yd', 914.4],
    ['1 1/2 yd', 1371.6],
    ['1½ yards', 1371.6],
    ['2 yds.', 1828.8],
    ['1 yd 2 ft 3 in', 1600.2],
    // Metric.
    ['11.4 cm', 114],
    ['11,4 cm', 114],
    ['11.43cm', 114.3],
    ['6mm', 6],
    ['6 MM', 6],
    ['1 m', 1000],
    ['1,5 m', 1500],
    ['1 m 20 cm', 1200],
    ['12 millimetres', 12],
    ['12 millimeters', 12],
    ['3 centimetres', 30],
    ['2 metres', 2000],
    // Blanks of every width, and marks without width that come along when text is copied.
    [' 4 1⁄2 ', 114.3],
    ['\t4 1/2\n', 114.3],
    ['4\u00a01/2\u202fin', 114.3],
    ['4\u20091/2\u2009in', 114.3],
    ['\u200b4 1/2 in\u200e', 114.3],
    ['\ufeff4 1/2', 114.3],
  ])('%j in the inch edition', (text, expected) => {
    expect(mm(text)).toBe(expected);
  });

  it.each<[string, number]>([
    ['114', 114],
    ['11,4 cm', 114],
    ['4 1/2', 4.5],
    ['4 1/2 in', 114.3],
    ['1\' 6"', 457.2],
    ['.5', 0.5],
  ])('%j in the metric edition', (text, expected) => {
    expect(mm(text, 'metric')).toBe(expected);
  });

  it('gives a bare number the very value that it has with its unit', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 3 }), (digits, places) => {
        const number = (digits / 10 ** places / 100).toFixed(places + 2);
        expect(mm(number)).toBe(mm(`${number} in`));
        expect(mm(number, 'metric')).toBe(mm(`${number} mm`));
      }),
    );
  });

  it('takes a length of just 100 m', () => {
    expect(mm('100 m')).toBe(LONGEST);
  });
});

describe('parseLength refuses with the place, a kind message and a mend', () => {
  type Row = [text: string, code: string, at: [number, number], message: string, fixed?: string];
  it.each<Row>([
    ['', 'empty-length', [0, 0], 'Write a length, such as 4 1/2 in.'],
    [' \u00a0 ', 'empty-length', [0, 3], 'Write a length, such as 4 1/2 in.'],
    ['four', 'not-a-length', [0, 4], '“four” is not a length. Write a number, such as 4 1/2 in.'],
    [' wide, please ', 'not-a-length', [1, 13], '“wide, please” is not a length. Write a number, such as 4 1/2 in.'],
    ['NaN', 'not-a-length', [0, 3], '“NaN” is not a length. Write a number, such as 4 1/2 in.'],
    [
      '<script>alert(1)</script>',
      'not-a-length',
      [0, 25],
      '“<script>alert(1)</script>” is not a length. Write a number, such as 4 1/2 in.',
    ],
    ['4 in <b>', 'more-than-a-length', [5, 8], '“<b>” does not belong to the length. Leave it out.', '4 in '],
    ['4 - 3', 'more-than-a-length', [2, 5], '“- 3” does not belong to the length. Leave it out.', '4 '],
    ['in', 'number-missing', [0, 2], 'Write a number before “in”, such as 4 1/2 in.'],
    ['"', 'number-missing', [0, 1], 'Write a number before “"”, such as 4 1/2 in.'],
    ['4 5', 'two-numbers', [0, 3], 'Write one length. Here are two: “4” and “5”.'],
    ['4.5 1/2', 'two-numbers', [0, 7], 'Write one length. Here are two: “4.5” and “1/2”.'],
    ['½ 4', 'two-numbers', [0, 3], 'Write one length. Here are two: “½” and “4”.'],
    ['1 yd 6', 'two-numbers', [0, 6], 'Write one length. Here are two: “1 yd” and “6”.'],
    ['4 in 3/8', 'two-numbers', [0, 8], 'Write one length. Here are two: “4 in” and “3/8”.'],
    ['1/0', 'zero-under-line', [0, 3], '“1/0” has a zero under the line. Write a fraction such as 1/4.'],
    ['4 1/0 in', 'zero-under-line', [2, 5], '“1/0” has a zero under the line. Write a fraction such as 1/4.'],
    ['-4', 'negative-length', [0, 1], 'A length cannot be less than nothing. Leave out the minus sign.', '4'],
    ['− 4 in', 'negative-length', [0, 2], 'A length cannot be less than nothing. Leave out the minus sign.', '4 in'],
    ['1.234,5', 'many-decimal-marks', [0, 7], 'Write “1.234,5” without a mark between thousands: 1234.5.', '1234.5'],
    [
      '1,234,567 mm',
      'many-decimal-marks',
      [0, 9],
      'Write “1,234,567” without a mark between thousands: 1234567.',
      '1234567 mm',
    ],
    ['1.2.3', 'many-decimal-marks', [0, 5], '“1.2.3” has more than one decimal point. Write a number such as 4.5.'],
    [
      '1,250 mm',
      'two-ways-comma',
      [0, 5],
      'The comma in “1,250” can be read two ways. Write 1250 or 1.250.',
      '1.250 mm',
    ],
    ['4 5/4', 'improper-fraction', [0, 5], 'The fraction in “4 5/4” is a whole or more. Do you mean “5 1/4”?', '5 1/4'],
    ['4 8/8 in', 'improper-fraction', [0, 5], 'The fraction in “4 8/8” is a whole or more. Do you mean “5”?', '5 in'],
    ['4 - 1/2 in', 'dash-in-number', [0, 7], 'Write a mixed number without a dash: 4 1/2.', '4 1/2 in'],
    ['4 cn', 'unknown-unit', [2, 4], '“cn” is not a unit of length. Do you mean “cm”?', '4 cm'],
    ['4 inchs', 'unknown-unit', [2, 7], '“inchs” is not a unit of length. Do you mean “inch”?', '4 inch'],
    [
      '4 milimetres',
      'unknown-unit',
      [2, 12],
      '“milimetres” is not a unit of length. Do you mean “millimetres”?',
      '4 millimetres',
    ],
    ['4 apples', 'unknown-unit', [2, 8], '“apples” is not a unit of length. Write in, ft, yd, mm, cm or m.'],
    ['1e3', 'unknown-unit', [1, 2], '“e” is not a unit of length. Write in, ft, yd, mm, cm or m.'],
    ['≈ 4 in', 'about-length', [0, 2], 'Write the length itself, without “≈”.', '4 in'],
    ['about 4½', 'about-length', [0, 6], 'Write the length itself, without “about”.', '4½'],
    [
      '3 in 1 ft',
      'mixed-units',
      [0, 9],
      'Write one length in one system, the larger unit first, such as 1 ft 3 in or 38 cm.',
    ],
    [
      '1 ft 20 cm',
      'mixed-units',
      [0, 10],
      'Write one length in one system, the larger unit first, such as 1 ft 3 in or 38 cm.',
    ],
    ['101 m', 'huge-length', [0, 5], '“101 m” is more than 100 m, longer than a roll of cloth. Check number and unit.'],
    ['4000', 'huge-length', [0, 4], '“4000” is more than 100 m, longer than a roll of cloth. Check number and unit.'],
  ])('%j', (text, code, [start, end], message, after) => {
    const fault = faultOf(text);
    expect(fault).toMatchObject({ code, start, end, message });
    expect(fault.fix === undefined ? undefined : fixed(text, fault)).toBe(after);
  });

  it('shortens a long text in the message', () => {
    const { message } = faultOf('9'.repeat(400));
    expect(message).toBe(
      `“${'9'.repeat(31)}…” is more than 100 m, longer than a roll of cloth. Check number and unit.`,
    );
    expect(faultOf('x'.repeat(100_000)).message.length).toBeLessThan(120);
  });

  it('refuses fractions of absurdly many digits', () => {
    const many = '9'.repeat(400);
    for (const text of [`1/${many}`, `${many}/2`, `${many}/${many}`, `4 ${many}/${many}`, `${many} 1/2`]) {
      expect(faultOf(text).message.length).toBeLessThan(150);
    }
  });

  it('gives an example in the edition at hand', () => {
    expect(faultOf('', 'metric').message).toBe('Write a length, such as 114 mm.');
  });
});

describe('parseLength, whatever is typed', () => {
  const pieces = [
    '4',
    '1/2',
    '½',
    ' ',
    "'",
    '"',
    'in',
    'ft',
    'yd',
    'mm',
    'cm',
    'm',
    ',',
    '.',
    '-',
    '/',
    '⁄',
    'and',
    '<',
    '\u202f',
  ];
  const scraps = fc.array(fc.constantFrom(...pieces), { maxLength: 12 }).map((list) => list.join(''));
  const anything = fc.oneof(scraps, fc.string({ unit: 'binary', maxLength: 40 }));

  it('gives a length from 0 to 100 m, or a fault inside the text', () => {
    fc.assert(
      fc.property(anything, fc.constantFrom<Edition>('inch', 'metric'), (text, edition) => {
        const read = parseLength(text, edition);
        if (read.ok) return read.value >= 0 && read.value <= LONGEST;
        const { start, end, message } = read.fault;
        return 0 <= start && start <= end && end <= text.length && message.length > 0;
      }),
      { numRuns: 5000 },
    );
  });

  it('reads a text, or has no more mends, once all its mends are put in', () => {
    fc.assert(
      fc.property(scraps, (text) => {
        let read = parseLength(text, 'inch');
        for (let tries = 0; tries < 12 && !read.ok && read.fault.fix !== undefined; tries++) {
          text = fixed(text, read.fault);
          read = parseLength(text, 'inch');
        }
        return read.ok || read.fault.fix === undefined;
      }),
      { numRuns: 3000 },
    );
  });

  it('goes through a very long text once', () => {
    // Were any part of it read over and over, these would outlast the time limit of the test many times.
    for (const part of ['1.', ' ', '4 ', "'", '1/', 'in ', '-', '1 ft ']) {
      expect(faultOf(part.repeat(1_000_000) + '!').message.length).toBeLessThan(150);
    }
  });
});

describe('readLength finds a length inside a longer text', () => {
  it('takes what belongs to it and stops there', () => {
    expect(readLength('ease + 1 ft 3 in * 2', 7, 'formula')).toEqual({
      ok: true,
      value: { value: 381, edition: 'inch', start: 7, end: 16 },
    });
  });

  it('tells a bare number from a length, and how it was written', () => {
    expect(readLength('3 1/4 * ease', 0, 'formula')).toEqual({
      ok: true,
      value: { value: 3.25, bare: { over: 13, under: 4, fraction: true, start: 0, end: 5 }, start: 0, end: 5 },
    });
    expect(readLength('ease', 0, 'formula')).toBeUndefined();
  });
});

it('a number that is too long to be one is told, and shown as nothing else', () => {
  const read = parseLength(`${'1'.repeat(400)}-3/8`, 'inch');
  expect(read.ok).toBe(false);
  expect(JSON.stringify(read)).not.toContain('Infinity');
});
