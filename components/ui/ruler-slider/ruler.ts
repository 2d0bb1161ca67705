/**
 * The ruler under a slider. It has every mark of a tape measure down to where the slider can stop: one that goes in
 * eighths of an inch has eighths, and one that goes in steps of 3 mm has millimetres, so that nobody reads a step for a
 * mark. Longer marks mean what they mean on a tape measure.
 */
import { formatChosen, MM_PER_INCH, type Adjustable, type Edition } from '../../../src/core/index.ts';

/** What a slider goes through: mm, a whole number of things, or plain numbers. */
export type RulerRange = { kind: Adjustable['kind']; min: number; max: number; step: number };

/** 0 a whole inch or centimetre, 1 its half, 2 a quarter inch or a millimetre, 3 an eighth or half a millimetre, 4 finer. */
export type Rank = 0 | 1 | 2 | 3 | 4;

/** `at` runs from 0 at the ruler's start to 1 at its end. `onlyWide`: a narrow ruler leaves it out. */
export type RulerMark = { at: number; rank: Rank; onlyWide: boolean };
export type RulerLabel = { at: number; text: string; onlyWide: boolean };
export type Ruler = { steps: number; marks: RulerMark[]; labels: RulerLabel[] };

/**
 * As many as stand clear of each other: on a phone of 320 px, and in a lesson's text column. `length`: the shortest
 * ruler of each kind, in px.
 */
const ROOM = { narrow: { labels: 6, marks: 84, length: 180 }, wide: { labels: 12, marks: 160, length: 360 } };
type Room = (typeof ROOM)['narrow'];

/** What a sign of a label takes at most, and what stays free between two labels, in px. */
const SIGN = 8.5;
const CLEAR = 6;

/**
 * A range of sizes round the lesson's own: so far to each side, in whole marks, and never down to nothing. In mm.
 *
 * @example rangeAround(3, 10, 1) // => { kind: 'length', min: 1, max: 13, step: 1, lesson: 3 }
 */
export function rangeAround(lesson: number, reach: number, mark: number): RulerRange & { lesson: number } {
  const steps = Math.round(reach / mark);
  const down = Math.min(steps, Math.floor(lesson / mark) - 1);
  return { kind: 'length', min: lesson - down * mark, max: lesson + steps * mark, step: mark, lesson };
}

/** How many steps the slider has. The last step never goes past the end of the range. */
export const stepCount = (range: RulerRange): number =>
  Math.max(0, Math.floor((range.max - range.min) / range.step + 1e-6));

/** The size at a step, counted from 0 at the range's start. */
export const valueAt = (range: RulerRange, step: number): number => range.min + step * range.step;

/** The step nearest to a size. */
export const stepAt = (range: RulerRange, value: number): number =>
  Math.min(stepCount(range), Math.max(0, Math.round((value - range.min) / range.step)));

/**
 * The marks and labels of a range in an edition.
 *
 * @example
 * rule({ kind: 'length', min: 50.8, max: 101.6, step: 3.175 }, 'inch').labels.map((label) => label.text) // => ['2', '3', '4']
 * rule({ kind: 'count', min: 2, max: 5, step: 1 }, 'inch').steps // => 3
 */
export function rule(range: RulerRange, edition: Edition): Ruler {
  const steps = stepCount(range);
  const at = (i: number) => (steps === 0 ? 0 : ((values[i] ?? 0) - range.min) / (steps * range.step));
  const values = marked(range, edition);
  const ranks = values.map((value) => rankOf(value, range.kind, edition));

  const finest = Math.max(...ranks);
  const hasCoarser = ranks.some((rank) => rank < finest);
  const marks = values.flatMap((_, step): RulerMark[] => {
    const rank = ranks[step] ?? 4;
    const fine = hasCoarser && rank === finest;
    if (fine && values.length > ROOM.wide.marks) return [];
    return [{ at: at(step), rank, onlyWide: fine && values.length > ROOM.narrow.marks }];
  });

  const text = (value: number) => formatChosen(value, range.kind, edition, { style: 'set', unit: false });
  const isClear = (found: number[], { labels, length }: Room) =>
    found.length <= labels &&
    found.every((i, k) => {
      const before = found[k - 1];
      if (before === undefined) return true;
      const signs = [before, i].map((one) => [...text(values[one] ?? 0)].length);
      return (at(i) - at(before)) * length >= (SIGN * (signs[0]! + signs[1]!)) / 2 + CLEAR;
    });
  const wide = labelled(values, range.kind, edition, (found) => isClear(found, ROOM.wide));
  // A wide ruler shows both, so what a narrow one shows is some of it.
  const few = labelled(values, range.kind, edition, (found) => isClear(found, ROOM.narrow));
  const thinned = (every: number) => wide.filter((_, i) => i % every === 0);
  const every = wide.findIndex((_, i) => i > 0 && isClear(thinned(i), ROOM.narrow));
  const narrow = new Set(few.every((i) => wide.includes(i)) ? few : thinned(every < 0 ? wide.length : every));
  const labels = wide.map((step) => ({ at: at(step), text: text(values[step] ?? 0), onlyWide: !narrow.has(step) }));
  return { steps, marks, labels };
}

/** The parts of the unit that a tape measure marks, from the coarsest, in mm. */
const PARTS: Record<Edition, readonly number[]> = {
  inch: [1, 1 / 2, 1 / 4, 1 / 8, 1 / 16].map((inches) => inches * MM_PER_INCH),
  metric: [10, 5, 1, 1 / 2],
};

/** The sizes that have a mark: all of the coarsest part of the unit that every stop is a multiple of. */
function marked(range: RulerRange, edition: Edition): number[] {
  const steps = stepCount(range);
  const stops = Array.from({ length: steps + 1 }, (_, step) => valueAt(range, step));
  if (range.kind !== 'length') return stops;
  const part = PARTS[edition].find((one) => isMultiple(range.min, one) && isMultiple(range.step, one));
  if (part === undefined) return stops;
  const count = Math.round((steps * range.step) / part);
  return Array.from({ length: count + 1 }, (_, i) => range.min + i * part);
}

/** How long the mark of a size is: the coarsest part of the unit that it is a multiple of. */
function rankOf(value: number, kind: RulerRange['kind'], edition: Edition): Rank {
  if (kind === 'count') return 0;
  if (kind === 'number') return isMultiple(value, 1) ? 0 : isMultiple(value, 1 / 2) ? 1 : 3;
  const parts = edition === 'inch' ? [1, 1 / 2, 1 / 4, 1 / 8] : [10, 5, 1, 1 / 2];
  const inUnits = edition === 'inch' ? value / MM_PER_INCH : value;
  const rank = parts.findIndex((part) => isMultiple(inUnits, part));
  return (rank < 0 ? 4 : rank) as Rank;
}

/** Which steps carry a number: every whole unit if they fit, else every second, fifth …; finer if there are too few. */
function labelled(
  values: number[],
  kind: RulerRange['kind'],
  edition: Edition,
  isClear: (found: number[]) => boolean,
): number[] {
  const inUnits = (value: number) => (kind === 'length' && edition === 'inch' ? value / MM_PER_INCH : value);
  const every =
    kind !== 'length'
      ? [1, 2, 5, 10, 20, 50, 100]
      : edition === 'inch'
        ? [1, 2, 4, 12, 36]
        : [10, 20, 50, 100, 200, 500, 1000, 2000, 5000];
  const finer =
    kind === 'count'
      ? []
      : kind === 'number'
        ? [1 / 2, 1 / 4, 1 / 5, 1 / 10]
        : edition === 'inch'
          ? [1 / 2, 1 / 4, 1 / 8]
          : [5, 1];
  const on = (part: number) => [...values.keys()].filter((step) => isMultiple(inUnits(values[step] ?? 0), part));
  const whole = every.map(on).find(isClear) ?? [];
  if (whole.length >= 2) return whole;
  const parts = finer.map(on).find((found) => found.length >= 2);
  if (parts && isClear(parts)) return parts;
  return values.length > 1 ? [0, values.length - 1] : [0];
}

const isMultiple = (value: number, part: number): boolean => Math.abs(value / part - Math.round(value / part)) < 1e-6;

/** How far the marks of each rank reach down the tape, in px. */
const REACH: Record<Rank, number> = { 0: 22, 1: 16, 2: 12, 3: 8, 4: 6 };

/** Marks as an SVG path over a box 1 wide, hanging from its upper edge. */
export const pathOf = (marks: RulerMark[]): string =>
  marks.map((mark) => `M${Math.round(mark.at * 1e5) / 1e5} 0V${REACH[mark.rank]}`).join('');
