/** Questions of other kinds in a set of practice: whose turn it is, and how what can be chosen is mixed. */
import { expect, test } from 'vitest';
import fc from 'fast-check';
import { mixAnew, otherAt, type Other } from '../../../components/words/practice/other.ts';

const choices = ['a', 'b', 'c', 'd'].map((text) => ({ text, right: text === 'a' }));
const choice: Other = { word: 'AskChoice', words: ['Which?'], shown: { name: 'which', choices } };
const steps = ['mark', 'fold', 'press'];
const order: Other = { word: 'AskOrder', words: ['In which order?'], shown: { name: 'order', steps, mixed: steps } };
const pairs: Other = {
  ...{ word: 'AskPairs', words: [] },
  shown: { name: 'terms', pairs: { ease: 'room', seam: 'a line' }, meanings: ['room', 'a line'] },
};
const edge: Other = { word: 'AskEdge', words: [], shown: { name: 'edges of flap', piece: 'flap' } };
const others = [choice, order, pairs, edge];

test('one comes up after each sum, and a row long enough asks each once', () => {
  const asked = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((inARow) => otherAt(others, inARow, 'folds 0', 0)?.word);
  expect(asked.filter((_, i) => i % 2 === 0)).toEqual(Array(5).fill(undefined));
  expect(asked.flatMap((word) => word ?? []).toSorted()).toEqual(['AskChoice', 'AskEdge', 'AskOrder', 'AskPairs']);
  expect(otherAt([], 1, 'folds 0', 0)).toBeUndefined();
});

test('one that was missed or left makes room for the next', () => {
  const words = [0, 1, 2, 3].map((passed) => otherAt(others, 1, 'folds 0', passed)?.word);
  expect(new Set(words).size).toBe(4);
});

test('another series has another order', () => {
  const firsts = Array.from({ length: 20 }, (_, series) => otherAt(others, 1, `folds ${series}`, 0)?.word);
  expect(new Set(firsts).size).toBeGreaterThan(2);
});

test('the same seed mixes alike, and nothing is lost', () => {
  fc.assert(
    fc.property(fc.string(), (seed) => {
      expect(mixAnew(choice, seed)).toEqual(mixAnew(choice, seed));
      const [one, two] = [mixAnew(choice, seed), mixAnew(pairs, seed)];
      if (one.word !== 'AskChoice' || two.word !== 'AskPairs') throw new Error('Another kind.');
      expect(one.shown.choices.toSorted((a, b) => a.text.localeCompare(b.text))).toEqual(choices);
      expect(two.shown.meanings.toSorted()).toEqual(['a line', 'room']);
      expect(two.shown.pairs).toEqual({ ease: 'room', seam: 'a line' });
    }),
  );
  const seen = Array.from({ length: 20 }, (_, seed) => JSON.stringify(mixAnew(choice, String(seed)).shown));
  expect(new Set(seen).size).toBeGreaterThan(5);
});

test('steps never lie in order by chance', () => {
  fc.assert(
    fc.property(fc.string(), (seed) => {
      const { word, shown } = mixAnew(order, seed);
      if (word !== 'AskOrder') throw new Error('Another kind.');
      expect(shown.mixed).not.toEqual(steps);
      expect(shown.mixed.toSorted()).toEqual(steps.toSorted());
    }),
  );
});
