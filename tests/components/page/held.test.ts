/** What the demo lessons keep back, because a question further down asks for it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { heldBy } from '../../../components/page/held/held-by.ts';
import { resolveProject } from '../../../src/core/index.ts';
import { wordsOf } from '../../../src/site/content/lesson-questions.ts';
import { editions, folio } from '../../core/questions/demo.ts';

const lesson = (file: string) =>
  wordsOf(readFileSync(new URL(`../../../content/courses/pocket-folio/${file}.mdx`, import.meta.url), 'utf8'));
const [size, pleat, make] = ['01-size-the-panel', '02-pleat-the-strip', '03-make-it-up'].map(lesson) as [
  ReturnType<typeof lesson>,
  ReturnType<typeof lesson>,
  ReturnType<typeof lesson>,
];

test.each(editions)('a working, a drawing and a study wait for the questions that ask for them, %s', (edition) => {
  const pattern = resolveProject(folio, { edition });
  expect(heldBy(size, 'Working', { of: 'panel width' }, pattern)).toEqual(['panel']);
  expect(heldBy(size, 'Piece', { name: 'facing' }, pattern)).toEqual(['panel']);
  // A guess stands before it.
  expect(heldBy(size, 'AllowanceStudy', { piece: 'flap' }, pattern)).toEqual(['wider', 'flap']);
  expect(heldBy(pleat, 'Working', { of: 'seam + lift + depth' }, pattern)).toEqual(['first']);
  expect(heldBy(pleat, 'PleatStudy', { piece: 'pocket strip' }, pattern)).toEqual([
    'folds',
    'first',
    'second',
    'third',
    'fourth',
    'bottoms',
    'length',
    'height',
  ]);
  expect(heldBy(make, 'Step', { id: 'turn-flap' }, pattern)).toEqual(['flap-now']);
  expect(heldBy(make, 'MakeUp', {}, pattern)).toEqual(expect.arrayContaining(['flap-now', 'width-now']));
});

test('a study waits for the guess right before it, and for no other', () => {
  const pattern = resolveProject(folio, { edition: 'inch' });
  const guess = (id: string) => ({ word: 'Predict', given: { id } });
  const seam = { word: 'SeamStudy', given: { a: 'panel width', b: 'panel width' } };
  const drift = { word: 'DriftStudy', given: { of: 'folio width' } };
  const waits = (lesson: App.WrittenWord[], { word, given }: App.WrittenWord) => heldBy(lesson, word, given, pattern);
  expect(waits([guess('a'), seam], seam)).toEqual(['a']);
  expect(waits([guess('a'), { word: 'Tip', given: {} }, seam], seam)).toEqual(['a']);
  expect(waits([guess('a'), guess('b'), seam], seam)).toEqual(['b']);
  expect(waits([guess('a'), seam, drift], drift)).toEqual([]);
  expect(waits([seam, guess('a')], seam)).toEqual([]);
  // What is no study is read as before.
  const list = { word: 'CutList', given: {} };
  expect(waits([guess('a'), list], list)).toEqual([]);
});

test('nothing waits for a question above it, for one that is read off the page, or for none', () => {
  const pattern = resolveProject(folio, { edition: 'inch' });
  // The cutting list of the first lesson stands below its questions.
  expect(heldBy(size, 'CutList', {}, pattern)).toEqual([]);
  expect(heldBy(size, 'Working', { of: 'head' }, pattern)).toEqual([]);
  expect(heldBy(make, 'Step', { id: 'pleat' }, pattern)).toEqual([]);
  expect(heldBy([], 'Working', { of: 'panel width' }, pattern)).toEqual([]);
});
