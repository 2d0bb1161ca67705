import { expect, test } from 'vitest';
import { readabilityOf } from '../../../src/site/check/readability.ts';

const paragraph = (text: string) => [{ kind: 'paragraph' as const, start: 0, text }];

test('the index is worked out as its report says', () => {
  // By hand: 10 words of 42 letters in 2 sentences. 4.71 * 4.2 + 0.5 * 5 - 21.43 = 0.852, a grade read at 6.
  const text = 'Lay the strip down before you. Fold upper edges over.';
  expect(text.replace(/[^a-z]/gi, '')).toHaveLength(42);
  expect(readabilityOf(paragraph(text))).toEqual({ words: 10, minutes: 1, age: 6 });
});

test('a lesson word counts as one word, and an empty lesson as none', () => {
  expect(readabilityOf(paragraph('It is \ufffc\ufffc\ufffc\ufffc wide.')).words).toBe(4);
  expect(readabilityOf([])).toEqual({ words: 0, minutes: 0, age: 5 });
});
