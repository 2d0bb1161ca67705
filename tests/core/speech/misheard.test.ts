/** Words of the trade that a machine misheard. The first pair stands in published captions; the others are our own. */
import { expect, test } from 'vitest';
import { courseWords, mend, misheard, resolveProject } from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';

const words = courseWords(resolveProject(folio(), { edition: 'inch', materials: shelf() }), [
  'selvage',
  'mitre',
  'interfacing',
]);
const line = (text: string) => [{ from: 0, to: 10, text }];
const offered = (text: string) => misheard(line(text), words).map(({ heard, meant }) => `${heard} > ${meant}`);

test.each([
  ['trim the sole bridges', 'sole bridges > selvages'],
  ['a fat e of fabric', 'fat e > fat eighth'],
  ['45 inch white fabric', 'white > wide'],
  ['fuse the inter facing to it', 'inter facing > interfacing'],
  ['a quarter inch seem allowance', 'seem > seam'],
  ['put them write sides together', 'write > right'],
  ['now the polio is turned', 'polio > folio'],
  ['lay the pocket pannel down', 'pocket pannel > pocket panel'],
  ['along the roar edge', 'roar > raw'],
])('%s', (said, offer) => {
  expect(offered(said)).toEqual([offer]);
});

test.each([
  'take the white fabric with the red one',
  'now fold the flap down and press it with a hot iron',
  'it has seen better days and that is the same thing really',
  'lay the pocket panel on the facing with the right sides together',
  'take the strip with the interfacing on it and put the interfacing on the cover',
  'fuse the interfacing in place and the interfacing down',
])('nothing is wrong in “%s”', (said) => {
  expect(offered(said)).toEqual([]);
});

test('it stands with its second and the words around it', () => {
  const [found] = misheard(
    [
      { from: 0, to: 4, text: 'press it and trim the' },
      { from: 4, to: 8, text: 'sole bridges off with the cutter' },
    ],
    words,
  );
  expect(found!.where).toEqual([
    {
      at: { line: 1, start: 0, endLine: 1, end: 12 },
      from: 4,
      before: 'press it and trim the',
      after: 'off with the cutter',
    },
  ]);
});

test('what is in the list is mended and not offered again', () => {
  const list = { 'sole bridges': 'selvages' };
  const lines = line('Sole bridges, and then the sole bridges.');
  expect(mend(lines, list)[0]!.text).toBe('Selvages, and then the selvages.');
  expect(misheard(lines, words, list)).toEqual([]);
  expect(lines[0]!.text).toContain('Sole');
});

test('over the end of a line it is mended where it begins', () => {
  const lines = [
    { from: 0, to: 2, text: 'trim the sole' },
    { from: 2, to: 4, text: 'bridges off' },
  ];
  expect(mend(lines, { 'sole bridges': 'selvages' }).map(({ text }) => text)).toEqual(['trim the selvages', 'off']);
});
