import { describe, expect, test } from 'vitest';
import { formatLength } from '../../../src/core/measure/index.ts';
import { evaluate } from '../../../src/core/formula/index.ts';
import { judge, limitsOf, readAnswer, slipsOf, sumFor, type Sum } from '../../../src/core/questions/index.ts';
import { demoQuestions, editions, folioIn, patternOf } from './demo.ts';
import type { Pattern } from '../../../src/core/project/index.ts';

const labels = { seam: 'Seam allowance' };
const flap = patternOf({ 'flap width': 100, 'flap height': 60, ease: 3, seam: 7 }, 'metric', { pockets: 5 }, labels);
const cut = { of: 'flap width + 2 * seam' };

describe('one answer after another', () => {
  // 100 + 2 × 7 = 114
  test.each([
    ['114', 'right', 'Right: 114\u202fmm.'],
    ['11.4 cm', 'right', 'Right: 114\u202fmm.'],
    ['114.4', 'right', 'Right. It is 114\u202fmm, and yours is near enough.'],
    ['115', 'near', 'Very close, but a little too much. Check your rounding, and count the marks again.'],
    ['113', 'near', 'Very close, but a little too little. Check your rounding, and count the marks again.'],
    ['107', 'slip', 'You counted the seam allowance only once. It counts twice.'],
    ['100', 'slip', 'You left out the seam allowance. It counts twice.'],
    ['128', 'slip', 'You counted the seam allowance four times. Twice is enough.'],
    ['86', 'slip', 'You took away the seam allowance. It is added here.'],
    ['11.4', 'slip', 'Your number is right in centimetres, but it was read as millimetres. Check the unit.'],
    ['4 1/2', 'slip', 'Your number is right in inches, but it was read as millimetres. Check the unit.'],
    ['74', 'slip', 'You used the flap height. The sum needs the flap width.'],
    ['93', 'unknown', 'Not yet: 93\u202fmm is too little.'],
    // The usual example is the answer here, and left out.
    ['', 'unread', 'Write a length.'],
    ['a lot', 'unread', '“a lot” is not a length. Write a number.'],
    ['0', 'unread', 'A size is more than nothing.'],
  ])('“%s” is %s', (answer, verdict, sentence) => {
    expect(judge(answer, cut, flap)).toMatchObject({ verdict, sentence });
  });

  test('a question about something that an option leaves out', () => {
    expect(judge('4', { of: 'zip width' }, flap)).toEqual({
      verdict: 'away',
      sentence: 'Your project leaves this out, so there is nothing to work out.',
    });
  });
});

describe('two slips at one place are a hint and no diagnosis', () => {
  // With an ease of half the seam, the ease left out and the seam added once are the same: 4 1/2 - 1/4 = 4 1/4 in.
  const inch = patternOf({ width: 25.4 * 3.75, ease: 25.4 / 8, seam: 25.4 / 4 }, 'inch', {}, labels);
  test('they are named together, and none is claimed', () => {
    const found = judge('4 1/4', { of: 'width + 2 * ease + 2 * seam' }, inch);
    expect(found).toMatchObject({
      verdict: 'hint',
      sentence: 'Not yet: that is too little. Look again at the ease and the seam allowance.',
    });
    expect(found.verdict === 'hint' && found.slips.map((slip) => slip.key)).toEqual(['left-out ease', 'one-side seam']);
  });

  test('a slip within a rounding of the right answer is never claimed', () => {
    const fine = patternOf({ width: 80, ease: 1 });
    expect(judge('81', { of: 'width + 2 * ease' }, fine).verdict).toBe('near');
    expect(judge('80', { of: 'width + 2 * ease' }, fine)).toMatchObject({
      verdict: 'slip',
      slip: { key: 'left-out ease' },
    });
  });

  test('an author can forbid the one that is not meant', () => {
    const question = { of: 'width + 2 * ease + 2 * seam', forbid: ['left-out ease'] };
    expect(judge('4 1/4', question, inch)).toMatchObject({ verdict: 'slip', slip: { key: 'one-side seam' } });
  });
});

describe('what an author adds, rewords and forbids', () => {
  test('an own slip, in the author’s words', () => {
    const question = { ...cut, slips: [{ is: 'flap width + 3 * seam', say: 'Three seams? Look at the drawing.' }] };
    expect(judge('121', question, flap)).toMatchObject({
      verdict: 'slip',
      sentence: 'Three seams? Look at the drawing.',
    });
  });
  test('other words, for one slip or for all of a kind', () => {
    const reword = { 'one-side seam': 'One edge is missing.', 'left-out': 'Something is missing.' };
    expect(judge('107', { ...cut, reword }, flap).sentence).toBe('One edge is missing.');
    expect(judge('100', { ...cut, reword }, flap).sentence).toBe('Something is missing.');
  });
  test('a kind that is never thought of', () => {
    expect(judge('86', { ...cut, forbid: ['wrong-sign'] }, flap).verdict).toBe('unknown');
  });
  test('a wider tolerance, for both editions or for each', () => {
    expect(judge('117', { ...cut, tolerance: 3 }, flap)).toMatchObject({
      verdict: 'right',
      sentence: 'Right. It is 114\u202fmm, and yours is near enough.',
    });
    expect(judge('117', { ...cut, tolerance: { inch: 3.175, metric: 2 } }, flap).verdict).toBe('near');
  });
});

describe('counts and areas', () => {
  test.each([
    ['10', 'right'],
    ['ten', 'right'],
    [' Ten folds', 'right'],
    ['10 fold lines', 'right'],
    ['10.0', 'right'],
    ['5', 'slip'],
    ['11', 'unknown'],
    ['12', 'slip'],
    ['many', 'unread'],
    ['10 1/2 in', 'unread'],
    ['', 'unread'],
  ])('%s folds of five pockets: %s', (answer, verdict) => {
    expect(judge(answer, { of: '2 * pockets' }, flap).verdict).toBe(verdict);
  });

  // 100 mm × 60 mm = 60 cm²
  test.each([
    ['60', 'right'],
    ['60 cm²', 'right'],
    ['60 sq cm', 'right'],
    ['6000 mm2', 'right'],
    ['60.2 square centimetres', 'right'],
    ['10 cm x 6 cm', 'right'],
    ['100 × 60', 'right'],
    ['9.3 sq. in', 'right'],
    ['60 cm', 'unread'],
    ['9.3', 'slip'],
    ['120', 'slip'],
    ['', 'unread'],
  ])('the area “%s”: %s', (answer, verdict) => {
    expect(judge(answer, { of: 'flap width * flap height' }, flap).verdict).toBe(verdict);
  });

  test('reading tells what is missing', () => {
    expect(readAnswer('wide', 2, 'inch')).toMatchObject({
      ok: false,
      fault: { message: '“wide” is not an area. Write one such as 36 sq in.' },
    });
    expect(readAnswer('some', 0, 'inch')).toMatchObject({
      ok: false,
      fault: { message: 'Write how many, in figures.' },
    });
  });
});

/** One length in the ways that people write it. */
function writings(mm: number, pattern: Pattern): string[] {
  const { edition, grid } = pattern;
  const plain = formatLength(mm, edition, { grid, unit: false });
  const set = formatLength(mm, edition, { grid, style: 'set' });
  const inches = Number((mm / 25.4).toFixed(4));
  const metric = [
    `${Number((mm / 10).toFixed(2))} cm`,
    `${Number((mm / 10).toFixed(2))}cm`.replace('.', ','),
    `${Number(mm.toFixed(1))} mm`,
  ];
  if (edition === 'metric') return [plain, `${plain}mm`, set, `${inches} in`, ...metric];
  return [
    plain,
    `${plain} in`,
    `${plain}"`,
    `${plain} inches`,
    plain.replace(' ', '-'),
    set,
    String(inches),
    `${inches}″`,
    ...metric,
  ];
}

const questions = demoQuestions();

test('the demo lessons ask', () => expect(questions.length).toBeGreaterThan(10));

describe.each(editions)('every question of the demo lessons, %s edition', (edition) => {
  const posed = (of: string, pattern: Pattern): Sum => {
    const sum = sumFor(of, pattern);
    if (!sum.ok) throw new Error(`${of}: ${sum.fault.message}`);
    return sum.value;
  };

  test.each(questions.map((one) => [one.asked, one] as const))('%s', (_, { question, patternIn }) => {
    const pattern = patternIn(edition);
    const sum = posed(question.of, pattern);
    const { wanted } = sum;
    const answers =
      wanted.dimension === 0 ? [String(wanted.value), `${wanted.value} pieces`] : writings(wanted.value, pattern);
    for (const answer of answers) expect([answer, judge(answer, question, pattern).verdict]).toEqual([answer, 'right']);
    // The sum that is shown comes to what is asked.
    const shown = evaluate(sum.formula, sum.scope);
    expect(shown.ok && Math.abs(shown.value.value - wanted.value) < 1e-6).toBe(true);

    // Each slip's own value: claimed with a sentence of its own, or declared to be no certain sign of it.
    const limits = limitsOf(question, wanted, pattern);
    const all = slipsOf(question, sum, pattern);
    const claimed = new Map<string, number>();
    for (const slip of all) {
      const answer = wanted.dimension === 0 ? String(slip.value) : `${slip.value.toFixed(9)} mm`;
      const found = judge(answer, question, pattern);
      const off = Math.abs(slip.value - wanted.value);
      if (off <= limits.near) expect(['right', 'near']).toContain(found.verdict);
      else if (found.verdict === 'slip') {
        // A rare one gives way to one that is likely.
        const isMeant =
          found.slip.key === slip.key || (slip.likelihood === 'rare' && found.slip.likelihood === 'likely');
        expect([slip.key, isMeant]).toEqual([slip.key, true]);
        if (found.slip.key !== slip.key) continue;
        expect(claimed.get(found.sentence)).toBeUndefined();
        claimed.set(found.sentence, slip.value);
      } else {
        expect(found.verdict).toBe('hint');
        expect(found.verdict === 'hint' && found.slips.map((one) => one.key)).toContain(slip.key);
      }
    }
  });
});

test('the commonest slips of the demo’s metric edition are understood', () => {
  const pattern = folioIn('metric');
  // 105 + 2 × 3 + 2 × 10 = 131 mm
  expect(judge('111', { of: 'panel width' }, pattern)).toMatchObject({ slip: { key: 'left-out seam' } });
  expect(judge('121', { of: 'panel width' }, pattern)).toMatchObject({ slip: { key: 'one-side seam' } });
  expect(judge('125', { of: 'panel width' }, pattern)).toMatchObject({ slip: { key: 'left-out ease' } });
  expect(judge('128', { of: 'panel width' }, pattern)).toMatchObject({ slip: { key: 'one-side ease' } });
  // 111 - 2 × 3 + 2 × 10 = 125 mm
  expect(judge('105', { of: 'flap width' }, pattern)).toMatchObject({ slip: { key: 'left-out seam' } });
  expect(judge('5', { of: '2 * pockets' }, pattern)).toMatchObject({ slip: { key: 'one-side pockets' } });
  expect(judge('100', { of: '(pockets - 1) * step' }, pattern)).toMatchObject({ slip: { key: 'one-too-many step' } });
});

describe('a sum as an answer', () => {
  test.each([
    ['100 + 2 * 7', 'right'],
    ['100 + 2 × 7', 'right'],
    ['100 + 2 x 7', 'right'],
    ['(50 + 7) * 2', 'right'],
    ['100 mm + 2 * 7 mm', 'right'],
    ['10 cm + 14 mm', 'right'],
    ['100 + 7', 'slip'],
    ['100 - 2 * 7', 'slip'],
    ['100 mm + 2 * 7', 'unread'],
    ['7 - 100', 'unread'],
    ['2 * 99 m', 'unread'],
    ['100 + ', 'unread'],
    ['100 + a seam', 'unread'],
  ])('%s: %s', (answer, verdict) => expect(judge(answer, cut, flap).verdict).toBe(verdict));

  test('in inches, with fractions', () => {
    const tops = patternOf({ step: 25.4 * 0.75 }, 'inch', { pockets: 5 });
    const question = { of: '(pockets - 1) * step' };
    expect(judge('4 * 3/4', question, tops).verdict).toBe('right');
    expect(judge('5 * 3/4', question, tops)).toMatchObject({ verdict: 'slip', slip: { key: 'one-too-many step' } });
    // What may be a mixed number with a dash is not taken for a sum.
    expect(judge('4 - 1/2', question, tops)).toMatchObject({
      verdict: 'unread',
      sentence: 'Write a mixed number without a dash: 4 1/2.',
    });
    expect(judge('2 * 5', { of: '2 * pockets' }, tops).verdict).toBe('right');
  });
});

test('of a small size, half a mark is much', () => {
  // 1/8 in: a sixteenth off is half of it, and neither right nor close.
  const small = patternOf({ drift: 25.4 / 8 }, 'inch');
  expect(judge('1/8', { of: 'drift' }, small).verdict).toBe('right');
  expect(judge('1/16', { of: 'drift' }, small)).toMatchObject({ verdict: 'slip', slip: { key: 'half' } });
  expect(judge('3/16', { of: 'drift' }, small).verdict).toBe('unknown');
  const fine = patternOf({ drift: 3 });
  expect(judge('2', { of: 'drift' }, fine).verdict).toBe('unknown');
  expect(judge('4', { of: 'drift' }, fine).verdict).toBe('unknown');
});
