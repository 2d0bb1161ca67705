import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { expect, test } from 'vitest';
import { judge, limitsOf, slipsOf, sumFor, type Sum } from '../../../src/core/questions/index.ts';
import { patternOf } from './demo.ts';
import type { Pattern } from '../../../src/core/project/index.ts';
import type { Edition } from '../../../src/core/measure/index.ts';

const lengths = ['flap width', 'flap height', 'ease', 'seam', 'depth'];
const counts = ['pockets', 'rows'];

/** A formula over these names as an author may write it, of one kind: a length or a plain number. */
const { length } = fc.letrec<{ length: string; count: string }>((tie) => ({
  count: fc.oneof(
    { maxDepth: 2, depthIdentifier: 'count' },
    fc.constantFrom(...counts),
    fc.integer({ min: 2, max: 4 }).map(String),
    fc
      .tuple(tie('count'), fc.constantFrom('+', '-', '*'), fc.constantFrom(...counts, '1'))
      .map(([a, sign, b]) => `(${a} ${sign} ${b})`),
  ),
  length: fc.oneof(
    { maxDepth: 3, depthIdentifier: 'length' },
    fc.constantFrom(...lengths),
    fc.constantFrom(...lengths).map((name) => `2 * ${name}`),
    fc
      .tuple(tie('length'), fc.constantFrom('+', '-'), tie('length'))
      .map(([a, sign, b]) => `${a} ${sign} ${b.includes(' - ') ? `(${b})` : b}`),
    fc.tuple(tie('count'), tie('length')).map(([n, a]) => `${n} * (${a})`),
    fc.tuple(tie('length'), fc.constantFrom('2', '4')).map(([a, n]) => `(${a}) / ${n}`),
    fc.tuple(fc.constantFrom('min', 'max'), tie('length'), tie('length')).map(([word, a, b]) => `${word}(${a}, ${b})`),
  ),
}));

/** Measures on the marks of an edition. */
const pattern = fc.constantFrom<Edition>('inch', 'metric').chain((edition) => {
  const mark = edition === 'inch' ? 25.4 / 16 : 1;
  const all = fc.tuple(...lengths.map(() => fc.integer({ min: 1, max: 200 })));
  return fc
    .tuple(all, fc.integer({ min: 2, max: 8 }), fc.integer({ min: 2, max: 8 }))
    .map(([values, pockets, rows]) =>
      patternOf(Object.fromEntries(lengths.map((name, i) => [name, values[i]! * mark])), edition, { pockets, rows }),
    );
});

const posed = fc.tuple(length, pattern).map(([of, pattern]) => ({ of, pattern, sum: sumFor(of, pattern) }));

/** The sum where the question makes sense at all: something longer than nothing, up to ten metres. */
function sensible({ sum }: { sum: ReturnType<typeof sumFor> }): Sum | undefined {
  return sum.ok && sum.value.wanted.value > 1 && sum.value.wanted.value < 10_000 ? sum.value : undefined;
}

const inMm = (mm: number) => `${mm.toFixed(9)} mm`;

test('whoever makes a slip and rounds within the tolerance is never told of another, unless of a likely one for a rare', () => {
  let claimed = 0;
  fc.assert(
    fc.property(posed, fc.nat(), fc.double({ min: -0.99, max: 0.99, noNaN: true }), (question, pick, rounding) => {
      const sum = sensible(question);
      fc.pre(sum !== undefined);
      const { of, pattern } = question;
      const limits = limitsOf({ of }, sum.wanted, pattern);
      const slips = slipsOf({ of }, sum, pattern);
      fc.pre(slips.length > 0);
      const made = slips[pick % slips.length]!;
      const answer = made.value + rounding * (made.within ?? limits.right);
      fc.pre(answer > 0.01 && answer < 90_000);
      const found = judge(inMm(answer), { of }, pattern);
      if (found.verdict === 'slip') {
        claimed++;
        if (made.likelihood === 'rare' && found.slip.likelihood === 'likely') return;
        expect(found.slip.key).toBe(made.key);
        expect(found.slip.value).toBe(made.value);
      } else if (found.verdict === 'hint' && made.likelihood !== 'rare')
        expect(found.slips).toContainEqual(expect.objectContaining({ key: made.key, value: made.value }));
      else expect(['right', 'near', ...(made.likelihood === 'rare' ? ['hint'] : [])]).toContain(found.verdict);
    }),
    { numRuns: 1500 },
  );
  expect(claimed).toBeGreaterThan(300);
});

test('a diagnosis is the only slip at its value, and never near the right answer', () => {
  fc.assert(
    fc.property(posed, fc.double({ min: 0.2, max: 3, noNaN: true }), (question, share) => {
      const sum = sensible(question);
      fc.pre(sum !== undefined);
      const { of, pattern } = question;
      const limits = limitsOf({ of }, sum.wanted, pattern);
      const answer = sum.wanted.value * share;
      const found = judge(inMm(answer), { of }, pattern);
      const off = Math.abs(answer - sum.wanted.value);
      if (found.verdict === 'right') expect(off).toBeLessThanOrEqual(limits.right + 1e-6);
      else if (found.verdict === 'near') expect(off).toBeLessThanOrEqual(limits.near + 1e-6);
      else expect(off).toBeGreaterThan(limits.right - 1e-6);
      if (found.verdict !== 'slip') return;
      const { slip } = found;
      expect(Math.abs(slip.value - sum.wanted.value)).toBeGreaterThan(limits.near);
      const same = slipsOf({ of }, sum, pattern).filter(
        (other) =>
          Math.abs(other.value - slip.value) <= limits.right &&
          !(slip.likelihood === 'likely' && other.likelihood === 'rare'),
      );
      expect(same.map((other) => other.key)).toEqual([slip.key]);
    }),
    { numRuns: 1000 },
  );
});

test('the right answer is right, in mm and in either edition’s own unit', () => {
  fc.assert(
    fc.property(posed, (question) => {
      const sum = sensible(question);
      fc.pre(sum !== undefined);
      const { value } = sum.wanted;
      for (const answer of [inMm(value), `${(value / 10).toFixed(9)} cm`, `${(value / 25.4).toFixed(9)} in`]) {
        expect(judge(answer, { of: question.of }, question.pattern).verdict).toBe('right');
      }
    }),
    { numRuns: 500 },
  );
});

test('a slip’s value is what its altered formula comes to by a general mathematics library', () => {
  let checked = 0;
  fc.assert(
    fc.property(posed, (question) => {
      const sum = sensible(question);
      fc.pre(sum !== undefined);
      for (const slip of slipsOf({ of: question.of }, sum, question.pattern)) {
        if (slip.kind === 'unit') continue;
        checked++;
        const theirs: unknown = evaluate(withNumbers(slip.formula.text, question.pattern));
        expect(Math.abs(Number(theirs) - slip.value)).toBeLessThan(1e-6 * Math.max(1, slip.value));
      }
    }),
    { numRuns: 400 },
  );
  expect(checked).toBeGreaterThan(1000);
});

function withNumbers(text: string, { measures }: Pattern): string {
  const names = Object.keys(measures).sort((a, b) => b.length - a.length);
  return names.reduce((sum, name) => sum.replaceAll(name, `(${measures[name]!.value})`), text);
}

test('every sentence is short, and says more than one word', () => {
  fc.assert(
    fc.property(posed, (question) => {
      const sum = sensible(question);
      fc.pre(sum !== undefined);
      for (const { sentence } of slipsOf({ of: question.of }, sum, question.pattern)) {
        for (const one of sentence.split(/(?<=\.) /u)) {
          const words = one.split(' ').length;
          expect(words).toBeGreaterThan(1);
          expect(words).toBeLessThan(20);
          expect(one).toMatch(/^\p{Lu}.*\.$/u);
        }
      }
    }),
    { numRuns: 300 },
  );
});

/** A sum of sizes, some of them taken twice; and what somebody takes of each: all, once of twice, or nothing. */
const forgetful = fc.tuple(
  fc.shuffledSubarray(lengths, { minLength: 2 }),
  fc.array(fc.constantFrom('once', 'twice'), { minLength: lengths.length, maxLength: lengths.length }),
  fc.array(fc.constantFrom('all', 'all', 'all', 'less', 'none'), {
    minLength: lengths.length,
    maxLength: lengths.length,
  }),
  pattern,
);

test('no diagnosis names a term that the answer does not miss', () => {
  let told = 0;
  fc.assert(
    fc.property(forgetful, ([names, times, taken, pattern]) => {
      const parts = names.map((name, i) => {
        const all = times[i] === 'twice' ? 2 : 1;
        const took = taken[i] === 'none' ? 0 : taken[i] === 'less' && all === 2 ? 1 : all;
        return { name, all, took };
      });
      const missed = parts.filter(({ all, took }) => took < all);
      const size = (name: string) => pattern.measures[name]!.value;
      const answer = parts.reduce((sum, { name, took }) => sum + took * size(name), 0);
      // Nothing, one or two things are missing, or all but one.
      const once = missed.every(({ all, took }) => all === 2 && took === 1);
      const gone = missed.every(({ took }) => took === 0);
      fc.pre(
        answer > 1 &&
          missed.length > 0 &&
          (once ? missed.length < 3 : gone && (missed.length < 3 || missed.length === names.length - 1)),
      );
      const of = parts.map(({ name, all }) => (all === 2 ? `2 * ${name}` : name)).join(' + ');
      const found = judge(inMm(answer), { of }, pattern);
      if (found.verdict !== 'slip') return;
      told++;
      const { kind, names: named } = found.slip;
      const kept = parts.filter(({ took, all }) => took === all).map(({ name }) => name);
      if (kind === 'alone') expect(kept).toEqual(named);
      else if (kind === 'left-out' || kind === 'one-side')
        expect(missed.map(({ name }) => name)).toEqual(expect.arrayContaining(named));
      // What is missing is never called a wrong sign, or something taken too often.
      else expect(['wrong-sign', 'twice', 'one-too-many']).not.toContain(kind);
    }),
    { numRuns: 2000 },
  );
  expect(told).toBeGreaterThan(500);
});
