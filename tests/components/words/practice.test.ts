/** Questions of other kinds in a set of practice: whose turn it is, and how what can be chosen is mixed. */
import { expect, test } from 'vitest';
import fc from 'fast-check';
import { mixAnew as mixChoice } from '../../../components/words/ask-choice/view.ts';
import { mixAnew as mixOrder } from '../../../components/words/ask-order/view.ts';
import { mixAnew as mixPairs } from '../../../components/words/ask-pairs/view.ts';
import { questionWithoutSumAt } from '../../../components/words/practice/question-order.ts';

const choices = ['a', 'b', 'c', 'd'].map((text) => ({ text, right: text === 'a' }));
const choice = { name: 'which', choices };
const steps = ['mark', 'fold', 'press'];
const order = { name: 'order', steps, mixed: steps };
const pairs = { name: 'terms', pairs: { ease: 'room', seam: 'a line' }, meanings: ['room', 'a line'] };
const others = ['which', 'order', 'terms', 'edges of flap'];

test('one comes up after each sum, and a row long enough asks each once', () => {
  const asked = [0, 1, 2, 3, 4, 5, 6, 7, 8].map((inARow) => questionWithoutSumAt(others, inARow, 'folds 0', 0));
  expect(asked.filter((_, i) => i % 2 === 0)).toEqual(Array(5).fill(undefined));
  expect(asked.flatMap((name) => name ?? []).toSorted()).toEqual(others.toSorted());
  expect(questionWithoutSumAt([], 1, 'folds 0', 0)).toBeUndefined();
});

test('one that was missed or left makes room for the next', () => {
  const words = [0, 1, 2, 3].map((passed) => questionWithoutSumAt(others, 1, 'folds 0', passed));
  expect(new Set(words).size).toBe(4);
});

test('another series has another order', () => {
  const firsts = Array.from({ length: 20 }, (_, series) => questionWithoutSumAt(others, 1, `folds ${series}`, 0));
  expect(new Set(firsts).size).toBeGreaterThan(2);
});

test('the same seed mixes alike, and nothing is lost', () => {
  fc.assert(
    fc.property(fc.string(), (seed) => {
      expect(mixChoice(choice, seed)).toEqual(mixChoice(choice, seed));
      const [one, two] = [mixChoice(choice, seed), mixPairs(pairs, seed)];
      expect(one.choices.toSorted((a, b) => a.text.localeCompare(b.text))).toEqual(choices);
      expect(two.meanings.toSorted()).toEqual(['a line', 'room']);
      expect(two.pairs).toEqual({ ease: 'room', seam: 'a line' });
    }),
  );
  const seen = Array.from({ length: 20 }, (_, seed) => JSON.stringify(mixChoice(choice, String(seed))));
  expect(new Set(seen).size).toBeGreaterThan(5);
});

test('steps never lie in order by chance', () => {
  fc.assert(
    fc.property(fc.string(), (seed) => {
      const { mixed } = mixOrder(order, seed);
      expect(mixed).not.toEqual(steps);
      expect(mixed.toSorted()).toEqual(steps.toSorted());
    }),
  );
});
