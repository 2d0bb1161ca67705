import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rule, stepAt, stepCount, valueAt, type RulerRange } from '../../../components/ui/ruler-slider/ruler.ts';

// How a tape measure is marked: the inch in halves, quarters and eighths, the centimetre in halves and millimetres, each
// with a longer mark than the next finer. Common practice, no source.
const inches: RulerRange = { kind: 'length', min: 2 * 25.4, max: 4 * 25.4, step: 25.4 / 8 };
const millimetres: RulerRange = { kind: 'length', min: 55, max: 90, step: 1 };

const ranks = (range: RulerRange, edition: 'inch' | 'metric') => rule(range, edition).marks.map((mark) => mark.rank);
const texts = (range: RulerRange, edition: 'inch' | 'metric') => rule(range, edition).labels.map((label) => label.text);

describe('the marks of a slider', () => {
  it('are its steps: eighths of an inch for a step of an eighth', () => {
    expect(ranks(inches, 'inch')).toEqual([0, 3, 2, 3, 1, 3, 2, 3, 0, 3, 2, 3, 1, 3, 2, 3, 0]);
  });

  it('are millimetres with longer marks at five and ten', () => {
    expect(ranks({ ...millimetres, max: 65 }, 'metric')).toEqual([1, 2, 2, 2, 2, 0, 2, 2, 2, 2, 1]);
  });

  it('lie where their size lies', () => {
    const marks = rule(millimetres, 'metric').marks;
    expect(marks.map((mark) => mark.at * 35 + 55)).toEqual(marks.map((_, i) => expect.closeTo(55 + i, 9)));
  });

  it('are left out whole ranks at a time, the finest first, and only on a narrow ruler', () => {
    const long: RulerRange = { kind: 'length', min: 0, max: 120, step: 1 };
    const marks = rule(long, 'metric').marks;
    expect(marks).toHaveLength(121);
    expect(new Set(marks.filter((mark) => mark.onlyWide).map((mark) => mark.rank))).toEqual(new Set([2]));
    expect(marks.filter((mark) => !mark.onlyWide).map((mark) => Math.round(mark.at * 120) % 5)).toEqual(
      Array.from({ length: 25 }, () => 0),
    );
  });
});

describe('between steps that no tape has', () => {
  it.each([2, 3, 4])('of %i mm, from 140 to 180 mm, stands every millimetre', (step) => {
    const { marks, labels, steps } = rule({ kind: 'length', min: 140, max: 180, step }, 'metric');
    const end = 140 + steps * step;
    expect(marks.map(({ at }) => 140 + at * (end - 140))).toEqual(marks.map((_, i) => expect.closeTo(140 + i, 9)));
    expect(marks.at(-1)!.at).toBe(1);
    expect(labels.map(({ text }) => text)).toEqual(['140', '150', '160', '170', ...(end === 180 ? ['180'] : [])]);
  });

  it('of half a centimetre stands a coarser tape, with no millimetre', () => {
    expect(ranks({ kind: 'length', min: 140, max: 180, step: 5 }, 'metric')).toEqual([0, 1, 0, 1, 0, 1, 0, 1, 0]);
  });

  it('of 3/16 in stands every sixteenth', () => {
    const { marks } = rule({ kind: 'length', min: 25.4, max: 50.8, step: (3 * 25.4) / 16 }, 'inch');
    expect(marks).toHaveLength(16);
  });

  it('numbers stand clear of each other, however long the range is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 2000 }),
        fc.integer({ min: 1, max: 400 }),
        fc.constantFrom(1, 2, 3, 4, 5, 10, 20),
        (min, steps, step) => {
          const { labels } = rule({ kind: 'length', min, max: min + steps * step, step }, 'metric');
          // 12 in a text column, and 6 of them on a phone: what the widest of them, four figures, has room for.
          expect(labels.length).toBeLessThanOrEqual(18);
          for (const only of [labels, labels.filter(({ onlyWide }) => !onlyWide)]) {
            const gaps = only.slice(1).map(({ at }, i) => at - only[i]!.at);
            if (only.length > 2) expect(Math.min(...gaps)).toBeGreaterThan(0.04);
          }
        },
      ),
    );
  });
});

describe('the numbers of a slider', () => {
  it('stand at whole units', () => {
    expect(texts(inches, 'inch')).toEqual(['2', '3', '4']);
    expect(texts(millimetres, 'metric')).toEqual(['60', '70', '80', '90']);
  });

  it('stand at parts of a unit when there are too few whole ones', () => {
    expect(texts({ kind: 'length', min: 25.4 / 2, max: 1.25 * 25.4, step: 25.4 / 8 }, 'inch')).toEqual(['½', '1']);
  });

  it('stand at every second or fifth when there are too many, and fewer on a narrow ruler', () => {
    const labels = rule({ kind: 'length', min: 50, max: 150, step: 1 }, 'metric').labels;
    expect(labels.map((label) => label.text)).toEqual('50 60 70 80 90 100 110 120 130 140 150'.split(' '));
    expect(labels.filter((label) => !label.onlyWide).map((label) => label.text)).toEqual([
      '60',
      '80',
      '100',
      '120',
      '140',
    ]);
  });

  it('are the numbers themselves when things are counted', () => {
    expect(texts({ kind: 'count', min: 4, max: 6, step: 1 }, 'inch')).toEqual(['4', '5', '6']);
  });

  it('are plain numbers when a ratio is chosen, alike in both editions', () => {
    const fullness = { kind: 'number', min: 1.2, max: 2.5, step: 0.1 } as const;
    expect(rule(fullness, 'inch').steps).toBe(13);
    expect(texts(fullness, 'inch')).toEqual(['1.5', '2', '2.5']);
    expect(texts(fullness, 'metric')).toEqual(texts(fullness, 'inch'));
    expect(texts({ kind: 'number', min: 1, max: 6, step: 0.5 }, 'inch')).toEqual(['1', '2', '3', '4', '5', '6']);
  });

  it('are the two ends when no unit falls on a mark', () => {
    expect(texts({ kind: 'length', min: 25.4 / 16, max: (3 * 25.4) / 16, step: 25.4 / 16 }, 'inch')).toEqual([
      '1⁄16',
      '3⁄16',
    ]);
  });
});

describe('the steps of a slider', () => {
  it('never go past the end', () => {
    const odd: RulerRange = { kind: 'length', min: 10, max: 15, step: 2 };
    expect(stepCount(odd)).toBe(2);
    expect(valueAt(odd, stepCount(odd))).toBe(14);
  });

  it('are found again from their size, and from a size beside them', () => {
    for (let step = 0; step <= stepCount(inches); step++) expect(stepAt(inches, valueAt(inches, step))).toBe(step);
    expect(stepAt(inches, 2 * 25.4 + 3)).toBe(1);
    expect(stepAt(inches, 9999)).toBe(16);
    expect(stepAt(inches, -1)).toBe(0);
  });

  it('are none where the range is a single size', () => {
    expect(rule({ kind: 'count', min: 5, max: 5, step: 1 }, 'inch')).toMatchObject({ steps: 0, marks: [{ at: 0 }] });
  });
});
