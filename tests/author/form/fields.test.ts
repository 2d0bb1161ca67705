import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { sectionsOf } from '../../../src/author/form/fields.ts';

const folio = readFileSync(new URL('../../../content/projects/swatch-folio/project.yaml', import.meta.url), 'utf8');

test('a form has the values of the file in its order, each with its words and its line', () => {
  const text = `title: Bag
grid: { in: 1/8 }
measures:
  # one presser foot
  seam: { in: 1/4, mm: 6, between: { in: [1/8, 1/2] } }
  width: 8
pieces:
  bag: { size: [width, 2.50], grain: bias, notches: [{ on: top, at: middle }] }
steps:
  - { id: turn it, turn: bag }
  - { press: bag, minutes: 2 }
`;
  const shown = sectionsOf(text).map(({ name, entries }) => [
    name,
    ...entries.map((entry) => [
      entry.name,
      ...entry.fields.map(({ label, value, line }) => `${line} ${label}: ${value}`),
    ]),
  ]);
  expect(shown).toEqual([
    ['project', ['', '1 title: Bag', '2 grid (in): 1/8']],
    ['measures', ['seam', '5 in: 1/4', '5 mm: 6', '5 least (in): 1/8', '5 most (in): 1/2'], ['width', '6 value: 8']],
    [
      'pieces',
      [
        'bag',
        '8 size › width: width',
        '8 size › height: 2.50',
        '8 grain: bias',
        '8 notches › 1 › on: top',
        '8 notches › 1 › at: middle',
      ],
    ],
    ['steps', ['1. turn it', '10 id: turn it', '10 turn: bag'], ['2. press', '11 press: bag', '11 minutes: 2']],
  ]);
});

test('what may stand there and what it is for come from the schema', () => {
  const [pieces] = sectionsOf('title: Bag\npieces: { bag: { grain: bias } }\n').filter(({ name }) => name === 'pieces');
  expect(pieces?.entries[0]?.fields[0]).toEqual({
    place: ['pieces', 'bag', 'grain'],
    label: 'grain',
    value: 'bias',
    about: expect.stringContaining('the selvage runs along') as string,
    choices: ['lengthwise', 'crosswise', 'bias', 'any'],
    line: 2,
  });
});

test('a group tells what else may stand in it', () => {
  const [, measures] = sectionsOf('title: Bag\nmeasures: { seam: { in: 1/4 }, width: 8 }\n');
  const [seam, width] = measures?.entries ?? [];
  expect(seam?.more.map(({ name }) => name)).toEqual([
    'mm',
    'editions',
    'is',
    'count',
    'number',
    'step',
    'label',
    'note',
  ]);
  expect(seam?.more[0]?.about).toMatch(/^Its value in the metric edition/);
  expect(width?.more).toEqual([]);
});

test('every line of the demo project that holds a value has a box', () => {
  const lines = new Set(
    sectionsOf(folio).flatMap(({ entries }) => entries.flatMap(({ fields }) => fields.map(({ line }) => line))),
  );
  const missing = folio
    .split('\n')
    .flatMap((text, i) => (/^\s*-?\s*[a-z ]+: [^>#]+$/.test(text) && !lines.has(i + 1) ? [text] : []));
  expect(missing).toEqual([]);
});
