import { expect, test } from 'vitest';
import katex from 'katex';
import { texSettings, toTex, toWords } from '../../../src/core/formula/index.ts';
import { hintsFor, sumFor } from '../../../src/core/questions/index.ts';
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

test.each(editions)('every solution of the demo lessons is set by KaTeX at its strictest, %s edition', (edition) => {
  for (const { question, patternIn } of demoQuestions()) {
    const sum = sumFor(question.of, patternIn(edition));
    if (!sum.ok) throw new Error(sum.fault.message);
    const { formula, scope } = sum.value;
    const { names, numbers, result } = toTex(formula, { ...scope, slots: true });
    expect(katex.renderToString(names, { ...texSettings })).toContain('katex');
    for (const line of [numbers, result]) expect(katex.renderToString(line, { ...texSettings })).toContain('data-slot');
    expect(toWords(formula, scope)).toMatch(/, which makes .+\.$/u);
  }
});
