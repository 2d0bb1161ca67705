import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isOnGrid } from '../../../src/core/measure/index.ts';
import { resolveProject } from '../../../src/core/project/index.ts';
import { parseFormula } from '../../../src/core/formula/index.ts';
import {
  fromEasyToHard,
  isDone,
  judge,
  practise,
  randomFrom,
  rungAt,
  shuffled,
  stepsIn,
  sumFor,
  type Difficulty,
} from '../../../src/core/questions/index.ts';
import { demoQuestions, editions, folioIn, narrowFolio } from './demo.ts';

const questions = demoQuestions().flatMap((one) => (one.project === 'swatch-folio' ? [one.question] : []));
/** Those whose answer follows from something that a learner can change. */
const drawn = questions.filter(({ of }) => of !== 'flap clearance');

describe.each(editions)('practice, %s edition', (edition) => {
  const resolve = (values: Record<string, number>) => folioIn(edition, values);
  const lesson = resolve({});
  const wanted = (of: string, pattern = lesson) => {
    const sum = sumFor(of, pattern);
    if (!sum.ok) throw new Error(sum.fault.message);
    return sum.value.wanted.value;
  };

  test('new numbers are on the marks, in range, and give a new answer that is judged right', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...drawn),
        fc.integer(),
        fc.constantFrom<Difficulty>(1, 2, 3),
        (question, seed, difficulty) => {
          const exercise = practise(question, resolve, seed, difficulty);
          expect(exercise).toBeDefined();
          const { values, pattern } = exercise!;
          for (const [name, value] of Object.entries(values)) {
            const { kind, min, max } = lesson.measures[name]!.adjustable!;
            expect(value).toBeGreaterThanOrEqual(min);
            expect(value).toBeLessThanOrEqual(max + 1e-9);
            expect(kind === 'count' ? Number.isInteger(value) : isOnGrid(value, edition, lesson.grid)).toBe(true);
            // The project has taken the number: it was not refused.
            expect(pattern.measures[name]!.value).toBe(value);
          }
          expect(Object.keys(values).length).toBeLessThanOrEqual(difficulty === 3 ? 99 : difficulty);
          expect(pattern.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
          const answer = wanted(question.of, pattern);
          expect(answer).toBeGreaterThan(0);
          expect(answer).not.toBe(wanted(question.of));
          const written = /pockets$/u.test(question.of) ? String(answer) : `${answer.toFixed(6)} mm`;
          expect(judge(written, question, pattern).verdict).toBe('right');
        },
      ),
      { numRuns: 40 },
    );
  }, 120_000);

  test('the same seed gives the same numbers, and other seeds others', () => {
    const draw = (seed: number | string) => JSON.stringify(practise({ of: 'panel width' }, resolve, seed, 2)?.values);
    expect(draw('ruler')).toBe(draw('ruler'));
    expect(new Set(Array.from({ length: 12 }, (_, seed) => draw(seed))).size).toBeGreaterThan(4);
  });

  test('slips that the lesson’s own numbers cannot tell apart are told apart in practice', () => {
    // Here the ease is half the seam: left out, it is the seam added on one side only.
    const resolve = (values: Record<string, number>) => resolveProject(narrowFolio, { edition, values });
    const alike = (pattern: ReturnType<typeof resolve>) => {
      const { ease, seam } = pattern.measures;
      const short = wanted('panel width', pattern) - seam!.value;
      return [ease!.value * 2 === seam!.value, judge(`${short.toFixed(6)} mm`, { of: 'panel width' }, pattern).verdict];
    };
    expect(alike(resolve({}))).toEqual([true, 'hint']);
    const exercise = practise({ of: 'panel width' }, resolve, 'apart', 3);
    expect(alike(exercise!.pattern)).toEqual([false, 'slip']);
  });

  test('there is no practice where nothing can be changed', () => {
    expect(practise({ of: 'flap clearance' }, resolve, 1)).toBeUndefined();
    expect(practise({ of: 'zip' }, resolve, 1)).toBeUndefined();
  });
});

test('a set ends when so many in a row are right', () => {
  expect(isDone([])).toBe(false);
  expect(isDone([true, true])).toBe(false);
  expect(isDone([false, true, true, true])).toBe(true);
  expect(isDone([true, true, true, false])).toBe(false);
  expect(isDone([false, true], 1)).toBe(true);
});

test('steps of a sum', () => {
  const steps = (text: string) => {
    const read = parseFormula(text);
    return read.ok ? stepsIn(read.value) : undefined;
  };
  expect(steps('width')).toBe(0);
  expect(steps('width + 2 * ease')).toBe(2);
  expect(steps('max(a - b, 0 in) + round up c / 3 to 1/8 in')).toBe(5);
  expect(steps('-(a + b)')).toBe(1);
});

test('chance spreads evenly enough', () => {
  const random = randomFrom('spread');
  const counts = [0, 0, 0, 0];
  for (let i = 0; i < 4000; i++) counts[Math.floor(random() * 4)]!++;
  for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(120);
  const mixed = shuffled([1, 2, 3, 4, 5], random);
  expect(mixed.toSorted()).toEqual([1, 2, 3, 4, 5]);
});

describe('from easy to hard', () => {
  // By hand: one sum, two, and four.
  const asks = [{ of: 'seam + lift + 3 * depth + step' }, { of: 'depth + step' }, { of: 'seam + lift + depth' }];

  test.each(editions)('questions are sorted by how many sums they take, %s', (edition) => {
    const pattern = folioIn(edition);
    expect(fromEasyToHard(asks, pattern).map(({ of }) => of)).toEqual([
      'depth + step',
      'seam + lift + depth',
      'seam + lift + 3 * depth + step',
    ]);
    // A measure is as hard as the sum behind it: card width + 2 × ease + 2 × seam are four.
    const [first, second] = fromEasyToHard([{ of: 'panel width' }, { of: 'card width + 2 * ease' }], pattern);
    expect([first?.of, second?.of]).toEqual(['card width + 2 * ease', 'panel width']);
    expect(fromEasyToHard([{ of: 'nothing of the kind' }, ...asks], pattern).at(-1)?.of).toBe('nothing of the kind');
  });

  test('a set begins on the first rung, never falls while answers are right, and ends on the last', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 10 }), fc.integer({ min: 1, max: 10 }), (wanted, rungs) => {
        const way = Array.from({ length: wanted }, (_, inARow) => rungAt(inARow, wanted, rungs));
        expect(way[0]).toBe(0);
        expect(way.at(-1)).toBe(rungs - 1);
        expect(way).toEqual(way.toSorted((a, b) => a - b));
        expect(rungAt(wanted + 3, wanted, rungs)).toBe(rungs - 1);
      }),
    );
    expect(rungAt(0, 1, 4)).toBe(3);
  });
});
