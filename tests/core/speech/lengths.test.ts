/** Laws of spoken lengths, number words against a general library, and a table of forms. */
import fc from 'fast-check';
import numberToWords from 'number-to-words';
import { describe, expect, test } from 'vitest';
import {
  CERTAIN,
  editionSpoken,
  formatLength,
  MM_PER_INCH,
  spokenLengths,
  type Edition,
  type SpokenLength,
} from '../../../src/core/index.ts';
import { spokenForms } from './spoken-forms.ts';
import { written } from './spoken.ts';

const inches = (sixteenths: number): number => (sixteenths * MM_PER_INCH) / 16;

/** As the library writes it: hyphens, and commas after thousands. */
const inWords = (value: number): string => numberToWords.toWords(value).replace(/,/gu, '');
const parts = ['', 'half', 'quarter', '', 'eighth', '', '', '', 'sixteenth'];

/** So many sixteenths of an inch as people say it. */
function spokenInches(count: number, { ofAnInch = false } = {}): string {
  const whole = Math.floor(count / 16);
  let [over, under] = [count % 16, 16];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  if (over === 0) return `${inWords(whole)} ${whole === 1 ? 'inch' : 'inches'}`;
  const part = under === 2 ? 'half' : `${parts[under / 2]}${over > 1 ? 's' : ''}`;
  const amount = over === 1 ? `${under === 8 ? 'an' : 'a'} ${part}` : `${inWords(over)} ${part}`;
  if (whole === 0) return `${amount} ${under === 2 ? 'inch' : 'of an inch'}`;
  return `${inWords(whole)} and ${amount} ${ofAnInch ? 'of an inch' : 'inches'}`;
}

/** The one length of a text, and whether it is certain. */
function only(text: string, edition: Edition = 'inch') {
  const found = spokenLengths(text, { edition });
  expect(
    found.map(({ text: said }) => said),
    text,
  ).toHaveLength(1);
  return found[0]!;
}

/** A length as the table has it: `!` where it is certain. */
const weighed = (length: SpokenLength): string =>
  written(length).replace(/(?: \?)?$/u, (asks) => (length.sure >= CERTAIN ? '!' : '') + asks);

describe('every length that the kit can print is read back', () => {
  test('in inches: as it is written, as a screen reader says it, and as people do', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 16 * 120 }), (count) => {
        const mm = inches(count);
        for (const text of [
          formatLength(mm, 'inch'),
          formatLength(mm, 'inch', { style: 'spoken' }),
          spokenInches(count),
          `${spokenInches(count)} wide`,
          spokenInches(count, { ofAnInch: true }),
        ]) {
          const [first] = spokenLengths(`leave ${text} free`);
          expect(first?.values[0], text).toBeCloseTo(mm, 3);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('in millimetres and centimetres', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), (mm) => {
        for (const text of [
          formatLength(mm, 'metric'),
          formatLength(mm, 'metric', { style: 'spoken' }),
          formatLength(mm, 'metric', { in: 'cm' }),
          `${inWords(mm)} millimetres`,
          ...(mm % 10 === 0 ? [`${inWords(mm / 10)} centimetres`] : []),
          ...(mm % 10 === 5 ? [`${inWords(Math.floor(mm / 10))} and a half centimetres`] : []),
        ]) {
          if (text.startsWith('zero')) continue;
          expect(only(text, 'metric').values[0], text).toBeCloseTo(mm, 6);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('two sides', () => {
    const side = fc.integer({ min: 16, max: 16 * 60 });
    fc.assert(
      fc.property(side, side, (a, b) => {
        const found = only(`${spokenInches(a)} by ${spokenInches(b)}`);
        expect(found.kind).toBe('pair');
        for (const [k, count] of [a, b].entries()) expect(found.values[k]).toBeCloseTo(inches(count), 3);
      }),
    );
  });
});

test('number words are those of a general library (number-to-words)', () => {
  for (let value = 1; value < 10_000; value += value < 1200 ? 1 : 37) {
    expect(only(`${inWords(value)} millimetres`).values[0], inWords(value)).toBe(value);
  }
});

test('metric numbers without a unit: that of the same number before, or else the likeliest, never certain', () => {
  const said =
    'the seam is twelve millimetres fold it under by twelve and then fold it one point two and ' +
    'the pocket is seventeen point four by eighteen point six and the strap is 560 by 100';
  const found = spokenLengths(said, { edition: 'metric' });
  expect(found.map(weighed)).toEqual(['12 mm!', '12 (mm)', '1.2 (cm)', '17.4 x 18.6 (cm)', '560 x 100 (mm)']);
  for (const { unitSaid, others } of found) expect(unitSaid || others.length > 0).toBe(true);
});

test('who says millimetres all the time means them, and a number that is told beside one has its unit', () => {
  const said =
    'seams are ten millimetres everywhere apart from the zip which is six i will remind you and the tabs are ' +
    'fifty by thirty two and sew it three mil from the edge and then twelve mil in and top stitch three that side too ' +
    'and it should be 250 millimetres wide if it is 248 nobody minds';
  const found = spokenLengths(said, { edition: 'metric' }).map(weighed);
  expect(found).toEqual([...['10 mm!', '6 (mm)', '50 x 32 (mm)', '3 mm!', '12 mm!', '3 (mm)', '250 mm!', '248 (mm)']]);
});

test('a speaker measures in the units that are said, for the most part', () => {
  const metric = 'two centimetres and then twelve mil and then five centimetres and that is two inches';
  expect(editionSpoken(metric, 'inch')).toBe('metric');
  expect(editionSpoken('two inches and a quarter inch and an inch and 20 cm', 'metric')).toBe('inch');
  expect(editionSpoken('two inches or five centimetres of the three metres', 'metric')).toBe('metric');
});

test('any text is read, and places are those of the text', () => {
  const word = fc.constantFrom(
    ...'a an one two three eight half quarter eighths and by to in inch inches of 3 8 1/2 90/14 ? 12 mil yard foot step or about point oh hundred so cut'.split(
      ' ',
    ),
  );
  fc.assert(
    fc.property(fc.array(word, { maxLength: 14 }), (words) => {
      const text = words.join(' ');
      let last = 0;
      for (const { start, end, text: said, values, sure } of spokenLengths(text)) {
        expect(text.slice(start, end)).toBe(said);
        expect(start).toBeGreaterThanOrEqual(last);
        last = end;
        expect(values.length).toBeGreaterThan(0);
        for (const mm of values) expect(Number.isFinite(mm) && mm >= 0, text).toBe(true);
        expect(sure).toBeGreaterThan(0);
        expect(sure).toBeLessThanOrEqual(1);
      }
    }),
    { numRuns: 1500 },
  );
});

test('the forms that people say and machines write are read as they are meant', () => {
  const wrong = spokenForms.flatMap(({ said, meant, other }) => {
    const found = spokenLengths(said);
    const read = found.map(weighed).join('; ') || 'none';
    const others = found.flatMap((length) => length.others.map((one) => written({ ...length, ...one })));
    const offered = other === undefined || others.some((text) => text.startsWith(`${other} `));
    return read === meant && offered ? [] : [`${said}: ${read}, not ${meant}${offered ? '' : `, without ${other}`}`];
  });
  expect(wrong).toEqual([]);
});

test('the table has no form twice, and at least four hundred', () => {
  const said = spokenForms.map((form) => form.said);
  expect(said.filter((form, i) => said.indexOf(form) !== i)).toEqual([]);
  expect(said.length).toBeGreaterThanOrEqual(400);
});

test('what is asked or could be something else is never certain', () => {
  for (const { said } of spokenForms) {
    for (const { asks, others, sure } of spokenLengths(said)) {
      if (asks || others.length > 0) expect(sure, said).toBeLessThan(CERTAIN);
    }
  }
});
