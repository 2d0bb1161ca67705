import { expect, test } from 'vitest';
import { questionsOf, stepsOf, wordsOf } from '../../../src/site/content/lesson-questions.ts';

const LESSON = '## Measure\n\n<AskSize of="seam">\n\nHow wide is it?\n\n</AskSize>\n';

test('a lesson tells its questions, its sections and its words', () => {
  expect(questionsOf(LESSON)).toMatchObject({ questions: [{ name: 'seam', words: 'How wide is it?' }], sections: 1 });
  expect(stepsOf(LESSON)).toEqual(['Measure']);
  expect(wordsOf(LESSON).map(({ word }) => word)).toEqual(['AskSize']);
});

test('one that breaks off has none, so that its page can show what is wrong', () => {
  const broken = `${LESSON}\n<Tip>\n`;
  expect(questionsOf(broken)).toEqual({ questions: [], practices: [], pieces: [], sections: 0, steps: [] });
  expect(stepsOf(broken)).toEqual([]);
  expect(wordsOf(broken)).toEqual([]);
});
