import { expect, test } from 'vitest';
import katex from 'katex';
import { texSettings } from '../../../src/core/formula/index.ts';
import { hintsFor, solutionOf } from '../../../src/core/questions/index.ts';
import { demoQuestions, editions, folioIn } from './demo.ts';

const pattern = folioIn('inch');

test('help gives away a little more at each stage', () => {
  const question = { of: 'panel width', hints: ['Begin with the card.'] };
  expect(hintsFor(question, pattern)).toEqual([
    { stage: 'author', sentence: 'Begin with the card.' },
    { stage: 'parts', sentence: 'You need the card width, the ease and the seam allowance.' },
    { stage: 'sum', sentence: 'The sum is card width + 2 × ease + 2 × seam.' },
  ]);
});

test('a measure that nothing is worked out from has the author’s hints alone', () => {
  expect(hintsFor({ of: 'card width' }, pattern)).toEqual([]);
  expect(hintsFor({ of: 'card width', hints: ['Look above.'] }, pattern)).toHaveLength(1);
});

test('what an option leaves out has no solution', () => {
  expect(solutionOf({ of: 'zip length' }, pattern)).toBeUndefined();
});

test('a name that stands for another is followed to its sum', () => {
  expect(solutionOf({ of: 'panel height' }, pattern)).toMatchObject({
    asked: 'panel height',
    tex: { result: '\\text{=\u202f6⅞\u202fin}' },
  });
  expect(solutionOf({ of: 'panel height' }, pattern)?.words).toContain(
    'open bracket pockets minus 1 close bracket times step',
  );
});

test.each(editions)('every solution of the demo lessons is set by KaTeX at its strictest, %s edition', (edition) => {
  for (const { question, patternIn } of demoQuestions()) {
    const solution = solutionOf(question, patternIn(edition), { slots: true });
    expect(solution).toBeDefined();
    const { names, numbers, result } = solution!.tex;
    expect(katex.renderToString(names, { ...texSettings })).toContain('katex');
    for (const line of [numbers, result]) expect(katex.renderToString(line, { ...texSettings })).toContain('data-slot');
    expect(solution!.words).toMatch(/, which makes .+\.$/u);
  }
});
