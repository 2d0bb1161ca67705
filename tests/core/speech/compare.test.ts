/** What is said against what is computed: sentences of our own about the folio, one finding each. */
import { expect, test } from 'vitest';
import {
  compareSpoken,
  courseWords,
  makeUp,
  resolveProject,
  spokenSizes,
  type SpokenLine,
} from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';

const of = (edition: 'inch' | 'metric') => resolveProject(folio(), { edition, materials: shelf() });
const patterns = { inch: of('inch'), metric: of('metric') };
const steps = { inch: makeUp(patterns.inch), metric: makeUp(patterns.metric) };
const words = courseWords(patterns.inch);

/** One line after another, ten seconds each. */
const said = (...texts: string[]): SpokenLine[] => texts.map((text, i) => ({ from: 10 * i, to: 10 * i + 10, text }));
const found = (...texts: string[]) => compareSpoken({ lines: said(...texts), patterns, steps, words });
const codes = (...texts: string[]) => found(...texts).map(({ code }) => code);

test.each([
  ['the seam allowance is half an inch', 'said-another-measure', 'Seam allowance, which is 3/8 in'],
  ['sew it with a half inch seam allowance', 'said-another-measure', 'Seam allowance, which is 3/8 in'],
  ['the cover is cut five and three sixteenths inches wide', 'said-nearly', '5 1/4 in'],
  ['cut the pocket panel a hundred and thirty three millimetres wide', 'said-other-edition', 'of the other edition'],
  ['leave nine inches at the end of it', 'said-no-measure', 'no measure of the project'],
  ['the cover is 5 ? inches wide', 'said-unclear', 'A fraction seems to be lost'],
])('%s', (text, code, message) => {
  const all = found(text);
  expect(all.map((one) => one.code)).toEqual([code]);
  expect(all[0]!.message.replaceAll('\u00a0', ' ')).toContain(message);
  expect(all[0]!.from).toBeLessThan(10);
});

test.each([
  'the seam allowance is three eighths of an inch',
  'the seam allowance is a centimetre',
  'cut the cover five and a quarter by seven and an eighth inches',
  'topstitch the folio along the top edge of the pocket strip an eighth of an inch from the edge',
  'set the stitch length to three and use a yard of fabric',
  'you need about nine inches of ribbon',
  'the seam allowance is half an no sorry three eighths of an inch',
])('nothing is wrong in “%s”', (text) => {
  expect(codes(text)).toEqual([]);
});

/** The beginning of the making, told in order. */
const making = [
  'now we fuse the interfacing onto the wrong side of the pocket strip with a hot iron',
  'next fold the pleats mountain valley mountain valley and press each pair',
  'now attach the snap to the pocket panel with its prongs through the hole',
  'now baste the pocket panel down the left and the right side with a long stitch',
  'once that is done lay it on the facing with the bottom edges together',
];

test('a step between others that is never told is found, and what comes behind the last is another recording', () => {
  expect(codes(...making)).toEqual([]);
  const without = found(...making.toSpliced(2, 1));
  expect(without.map(({ code, step }) => `${code} ${step}`)).toEqual(['never-told pocket-snap']);
});

test('a step that is told in one breath with another is told', () => {
  const both = 'now baste the pocket panel at the sides and attach the snap to the pocket panel';
  expect(codes(...making.toSpliced(2, 2, both))).toEqual([]);
});

test('work that no step of the file does is found', () => {
  const all = found(...making.toSpliced(2, 0, 'then sew the gathering and gather the top of it'));
  expect(all.map(({ code, message }) => `${code} ${message}`)).toEqual([
    'told-not-in-file “gather” is told here, and no step of the project does it.',
  ]);
});

test('a piece that is called by two names is found', () => {
  const all = found('take the shell and lay the shell down', 'now the cover');
  expect(all.map(({ code, message }) => `${code} ${message}`)).toEqual([
    'two-names What the project calls “cover” is called “shell” here, 2 times.',
  ]);
});

const sizes = (text: string) =>
  spokenSizes(said(text), patterns).map(
    ({ measures, certain }) => `${measures.map((m) => m?.formula).join()} ${certain}`,
  );

test('a distance from an edge is no size of the piece that is named beside it', () => {
  expect(sizes('then topstitch the flap an eighth of an inch from the edge')).toEqual(['flap clearance false']);
  expect(sizes('set the snap one inch below the fold, one inch from the fold')).toEqual([
    'snap below fold true',
    'snap below fold true',
  ]);
});

test('of measures with one value in this size none is certain, unless it is named', () => {
  expect(sizes('about here an eighth of an inch is right')[0]).toMatch(/ false$/u);
  expect(sizes('the turn of cloth takes an eighth of an inch')).toEqual(['turn of cloth true']);
  expect(sizes('the seam allowance is three eighths of an inch')).toEqual(['seam true']);
});
