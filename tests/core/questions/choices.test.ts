import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { judgeOrder, judgePairs, judgePicks, sewnEdges } from '../../../src/core/questions/index.ts';
import { folioIn } from './demo.ts';

test('picking: what is missed, and what does not belong', () => {
  expect(judgePicks(['b', 'a'], ['a', 'b'])).toEqual({ right: true, missed: [], extra: [] });
  expect(judgePicks(['a', 'c'], ['a', 'b'])).toEqual({ right: false, missed: ['b'], extra: ['c'] });
});

test('which edges of a piece take an allowance', () => {
  const { facing } = folioIn('inch').pieces;
  expect(sewnEdges(facing!)).toEqual(expect.arrayContaining(['bottom', 'right', 'top', 'left']));
  expect(sewnEdges({ ...facing!, allowance: { top: 0, bottom: 6 } })).toEqual(['bottom']);
});

describe('the order of steps', () => {
  const wanted = ['cut', 'pin', 'sew', 'press', 'turn'];
  test('right, one out of place, and all the other way round', () => {
    expect(judgeOrder(wanted, wanted)).toEqual({ right: true, move: [] });
    expect(judgeOrder(['cut', 'press', 'pin', 'sew', 'turn'], wanted)).toEqual({ right: false, move: ['press'] });
    expect(judgeOrder(wanted.toReversed(), wanted).move).toHaveLength(4);
  });
  test('a step that is missing or strange', () => {
    expect(judgeOrder(['cut', 'pin'], wanted)).toEqual({ right: false, move: [] });
    expect(judgeOrder(['cut', 'iron', 'pin', 'sew', 'press', 'turn'], wanted).move).toEqual(['iron']);
  });
  test('as few as possible are moved: no fewer would do', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(wanted, { minLength: 5 }), (given) => {
        const { move } = judgeOrder(given, wanted);
        const stay = given.filter((step) => !move.includes(step));
        const inOrder = (steps: readonly string[]) =>
          steps.every((step, i) => i === 0 || wanted.indexOf(steps[i - 1]!) < wanted.indexOf(step));
        expect(inOrder(stay)).toBe(true);
        // By trying every larger choice of steps that stay.
        for (let bits = 0; bits < 2 ** given.length; bits++) {
          const chosen = given.filter((_, i) => bits & (1 << i));
          if (chosen.length > stay.length) expect(inOrder(chosen)).toBe(false);
        }
      }),
    );
  });
});

test('pairs: open ones are not wrong', () => {
  const wanted = { nap: 'pile', bias: 'slant', ease: 'room' };
  expect(judgePairs({ nap: 'pile', bias: 'room' }, wanted)).toEqual({ right: false, wrong: ['bias'], open: ['ease'] });
  expect(judgePairs(wanted, wanted)).toEqual({ right: true, wrong: [], open: [] });
});
