import { describe, expect, it } from 'vitest';
import { isRight, ONE_MARK, readAnswer, readTolerance } from '../../components/questions/ask-size/answer.ts';

const panel = { value: 127, dimension: 1 } as const; // 5 in
const count = { value: 10, dimension: 0 } as const;

const value = (text: string, edition: 'inch' | 'metric' = 'inch', asked: typeof panel | typeof count = panel) => {
  const read = readAnswer(text, asked, edition);
  return read.ok ? read.value : read.sentence;
};

describe('reading an answer', () => {
  // The inch is exactly 25.4 mm (international yard and pound agreement, 1959).
  it('takes lengths in either unit, as people write them', () => {
    for (const text of ['5', ' 5 in', '5"', '5.0', '127 mm', '12,7 cm', '0.127 m'])
      expect(value(text)).toBeCloseTo(127, 6);
    expect(value('127', 'metric')).toBe(127);
    expect(value('5 in', 'metric')).toBeCloseTo(127, 6);
  });

  it('takes a number when a number is asked', () => {
    expect(value('10', 'inch', count)).toBe(10);
    expect(value(' 9 ', 'inch', count)).toBe(9);
    expect(value('2,5', 'inch', count)).toBe(2.5);
  });

  it('says kindly what it cannot take', () => {
    expect(value('')).toBe('Write your answer first.');
    expect(value('   ')).toBe('Write your answer first.');
    expect(value('0')).toBe('A size is more than nothing.');
    expect(value('ten', 'inch', count)).toBe('Write how many, in figures alone.');
    expect(value('10 in', 'inch', count)).toBe('Write how many, in figures alone.');
    expect(value('about five')).toMatch(/is not a length/);
    expect(value('<script>alert(1)</script>')).toMatch(/is not a length/);
    expect(value('99999999999999999999')).toMatch(/more than 100 m/);
    expect(value('9'.repeat(400))).toMatch(/more than 100 m|Check number/);
    expect(value('-5')).toMatch(/less than nothing/);
  });

  it('takes a slip of the unit for a slip, and not for a try', () => {
    expect(value('127', 'inch')).toBe('That is far too long for this project. Check the number and its unit.');
    expect(value('5', 'metric')).toBe('That is very short for this. Check the number and its unit.');
  });
});

describe('the tolerance of a question', () => {
  it('is one length for both editions, or one for each', () => {
    expect(readTolerance('1/16 in | 1 mm', 'inch')).toEqual({ inch: expect.closeTo(1.5875, 9), metric: 1 });
    expect(readTolerance('1/8', 'inch')).toEqual({ inch: expect.closeTo(3.175, 9), metric: expect.closeTo(3.175, 9) });
    expect(readTolerance('2', 'metric')).toEqual({ inch: 2, metric: 2 });
  });

  it('is nothing when it cannot be read', () => {
    for (const text of ['', 'a bit', '1 mm | ', '1 | 2 | 3']) expect(readTolerance(text, 'inch')).toBeUndefined();
  });
});

describe('judging', () => {
  it('takes one mark of the ruler either way', () => {
    expect(isRight(127 + 25.4 / 16, panel, ONE_MARK.inch)).toBe(true);
    expect(isRight(127 - 25.4 / 16, panel, ONE_MARK.inch)).toBe(true);
    expect(isRight(127 + 25.4 / 8, panel, ONE_MARK.inch)).toBe(false);
    expect(isRight(128, panel, ONE_MARK.metric)).toBe(true);
    expect(isRight(128.2, panel, ONE_MARK.metric)).toBe(false);
  });

  it('takes nothing but the number when things are counted', () => {
    expect(isRight(10, count, ONE_MARK.inch)).toBe(true);
    expect(isRight(9, count, ONE_MARK.inch)).toBe(false);
    expect(isRight(10.5, count, 99)).toBe(false);
  });
});
