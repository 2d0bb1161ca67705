/** Small recordings of our own, aligned with the steps of the folio. */
import { expect, test } from 'vitest';
import { alignSteps, courseWords, makeUp, resolveProject, type SpokenLine } from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';

const pattern = resolveProject(folio(), { edition: 'inch', materials: shelf() });
const [steps, words] = [makeUp(pattern), courseWords(pattern)];

/** One line after another, ten seconds each. */
const said = (...texts: string[]): SpokenLine[] => texts.map((text, i) => ({ from: 10 * i, to: 10 * i + 10, text }));
const told = (lines: SpokenLine[]) =>
  alignSteps(lines, steps, words).map(({ step, from }) => `${Math.round(from)} ${step}`);

test('steps are found where they begin, and what is not told is left out', () => {
  const lines = said(
    'hello and welcome today we make a little folio you need some quilting cotton',
    'now we fuse the interfacing onto the wrong side of the pocket strip with a hot iron',
    'next fold the pleats mountain valley mountain valley and press each pair',
    'my cat is on the table again she always wants to be in the video',
    'now baste the panel down the left and the right side with a long stitch',
    'once that is done lay it on the facing with the bottom edges together',
  );
  expect(told(lines)).toEqual(['10 stiffen', '20 pleat', '40 hold-pleats', '50 back']);
});

test('in one long line the words tell the time', () => {
  const text =
    'now we fuse the interfacing onto the pocket strip with the iron and let it cool down for a while before it is moved ' +
    'next fold the pleats mountain valley mountain valley and press each of the pairs before you go on with the one after';
  const [first, second] = alignSteps([{ from: 100, to: 140, text }], steps, words);
  expect([first!.step, second!.step]).toEqual(['stiffen', 'pleat']);
  expect(second!.from).toBeCloseTo(100 + (40 * 24) / 45, 0);
});

test('what came of a step, an aside and a story belong to it, and the next begins where it is announced', () => {
  const lines = said(
    'lets start with the interfacing fuse it onto the wrong side of the pocket strip with a hot iron',
    'now you have got a strip that is nice and stiff',
    'last week i had a lady who did her pleats first and then basted the panel and it never lay flat',
    'and the next step is we fold the pleats mountain valley and press each pair of pleats',
  );
  expect(told(lines)).toEqual(['0 stiffen', '30 pleat']);
});

test('nothing said, or nothing to say it of, is nothing told', () => {
  expect(alignSteps([], steps, words)).toEqual([]);
  expect(alignSteps(said('', ' '), steps, words)).toEqual([]);
  expect(alignSteps(said('now fuse it'), [], words)).toEqual([]);
});
