/** What an address says of sizes, read and written; tests/fuzz/addresses.ts tries what nobody meant. */
import { expect, test } from 'vitest';
import { askedChoices, writeChoices } from '../../../components/page/choices.ts';
import { resolved } from '../../core/project/files.ts';

const lesson = resolved(`
title: Runner
measures:
  edition: { in: 3, mm: 80, between: { in: [2, 5], mm: [50, 120] }, step: { in: 1/4, mm: 5 }, label: Size }
  third: { in: 1, mm: 25, between: { in: [1/3, 2], mm: [10, 50] }, step: { in: 1/3, mm: 5 }, label: Size }
  part: { number: 1, between: [0, 3], step: 1/3, label: Part }
pieces:
  panel: { from: outer, size: [edition, third] }
`);

function written(values: Record<string, number>): URLSearchParams {
  const query = new URLSearchParams();
  const chosen = Object.entries(values).map(([name, value]) => [name, { value, edition: 'inch' }] as const);
  writeChoices(query, { values: Object.fromEntries(chosen), options: {} }, lesson);
  return query;
}

const read = (query: URLSearchParams) => askedChoices(query, lesson, { values: {}, options: {} });

test('a size between two marks of the ruler goes from one browser to another', () => {
  const query = written({ third: (4 / 3) * 25.4, part: 2 / 3 });
  expect(query.toString()).toBe('third=1.333333333+in&part=0.666666667&edition=inch');
  const { values, refused } = read(query);
  expect(refused).toEqual([]);
  expect(values['third']?.value).toBeCloseTo((4 / 3) * 25.4, 6);
  expect(values['part']?.value).toBeCloseTo(2 / 3, 6);
});

test('a measure called edition keeps apart from the edition of the page', () => {
  const query = written({ edition: 4 * 25.4 });
  expect(query.toString()).toBe('edition-=4+in&edition=inch');
  expect(read(query)).toMatchObject({ values: { edition: { value: 101.6 } }, refused: [] });
});

test('a size and one of several go into an address and out of it, and what is not there is told', () => {
  const skirt = resolved(`
title: Skirt
sizes: { of: { small: { waist: 26 }, extra large: { waist: 38 } } }
measures: { waist: { between: [24, 40], label: Waist }, size: { in: 1, mm: 25, between: [1, 2] } }
choices: { back: { label: The back, one of: { plain: { measures: { size: 2 } }, 'Zip, hidden': {} } } }
pieces: { panel: { size: [waist, size] } }
`);
  const query = new URLSearchParams();
  const chosen = { values: {}, options: { back: 'Zip, hidden' }, size: 'extra large' };
  writeChoices(query, chosen, skirt);
  expect(query.toString()).toBe('size=extra-large&back=zip%2C-hidden&edition=inch');
  const before = { values: { waist: { value: 700, edition: 'inch' as const } }, options: {} };
  // The size is that of the address, and no longer that of a slider moved before.
  expect(askedChoices(query, skirt, before)).toMatchObject({ ...chosen, refused: [] });
  expect(askedChoices(new URLSearchParams('size=huge&back=none'), skirt, before)).toMatchObject({
    values: before.values,
    options: {},
    refused: [
      'The address asks for a size that there is not. There are “small”, “extra large”.',
      'The address asks for a “The back” that there is not. There are “plain”, “Zip, hidden”.',
    ],
  });
  writeChoices(query, { values: {}, options: {} }, skirt);
  expect(query.toString()).toBe('edition=inch');
});

test('an address says the size that its values go on from, whatever size a browser kept', () => {
  const skirt = resolved(`
title: Skirt
sizes: { of: { small: { waist: 26 }, large: { waist: 34 } } }
measures: { waist: {}, ease: { in: 1, mm: 25, between: [1, 2] } }
pieces: { panel: { size: [waist, ease] } }
`);
  const query = new URLSearchParams();
  const values = { ease: { value: 38.1, edition: 'inch' as const } };
  writeChoices(query, { values, options: {} }, skirt);
  expect(query.toString()).toBe('size=small&ease=1+1%2F2+in&edition=inch');
  const read = askedChoices(query, skirt, { values: {}, options: {}, size: 'large' });
  expect(read.size).toBeUndefined();
  expect(read.values['ease']?.value).toBeCloseTo(38.1, 6);
});

test('what is refused alike is said once', () => {
  expect(read(new URLSearchParams('edition-=x&third=y')).refused).toEqual([
    'The address gives no size that can be read for Size. The lesson’s size is kept.',
  ]);
});
