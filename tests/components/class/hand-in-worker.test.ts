/** What the worker reads of a heap that is too large, run here without a page. */
import { expect, test } from 'vitest';
import { toFile } from '../../../components/class/wire.ts';
import { workerRead } from './worker-read.ts';

const handIn = toFile({ name: 'Ada', course: 'pocket-folio', day: '2030-05-01', lessons: [] });
const many = (count: number, name: string, type: string) =>
  Array.from({ length: count }, (_, i) => new File([handIn], `${i + 1}${name}`, { type }));

test.each([
  [500, 0, []],
  [501, 1, ['1 more file']],
  [620, 120, ['120 more files']],
])('of %i files 500 are opened', async (count, more, from) => {
  const { all } = await workerRead({ files: many(count, '.json', 'application/json') });
  expect(all.filter(({ read }) => read.ok)).toHaveLength(500);
  expect(all.slice(500).map((one) => one.from)).toEqual(from);
  const sentence = '500 are opened at once, and these were not. Open them on a page of their own.';
  if (more > 0) expect(all.at(-1)!.read).toEqual({ ok: false, sentence });
});

test('of 502 pictures as many are looked at', async () => {
  const { all, of } = await workerRead({ files: many(502, '.png', 'image/png') });
  expect(of).toBe(500);
  // Nothing here opens a picture, so none has a code in it.
  expect(all[499]!.read).toMatchObject({
    ok: false,
    sentence: expect.stringMatching(/^No code could be read/) as string,
  });
  expect(all.slice(500).map((one) => one.from)).toEqual(['2 more files']);
});

test('of 501 codes 500 are read, and the other words are counted', async () => {
  const { all } = await workerRead({ pasted: `${'SEW1.x '.repeat(501)} and nothing else` });
  expect(all.map((one) => one.from).slice(499)).toEqual(['Code 500', '1 more code', '3 other words']);
  expect(all[500]!.read).toEqual({ ok: false, sentence: '500 are enough at once.' });
});
