/** Reading and judging an answer that a learner typed. */
import { parseLength, SAME, type Edition, type Quantity } from '../../../src/core/index.ts';

/** What was asked: a length in mm or a plain number. */
export type Asked = Quantity;

/** An answer that can be judged, or a sentence that says why it cannot. The latter is no attempt. */
export type Read = { ok: true; value: number } | { ok: false; sentence: string };

/** One length for each edition, in mm. */
export type Tolerance = Record<Edition, number>;

/** One mark of each edition's ruler: 1/16 in, 1 mm. */
export const ONE_MARK: Tolerance = { inch: 25.4 / 16, metric: 1 };

/**
 * Reads the tolerance an author writes: one length for both editions, or one each with a bar between them.
 * A bare number is in the unit of `home`. Undefined when it cannot be read.
 *
 * @example readTolerance('1/16 in | 1 mm', 'inch') // => { inch: 1.5875, metric: 1 }
 * @example readTolerance('1/8', 'inch') // => { inch: 3.175, metric: 3.175 }
 */
export function readTolerance(text: string, home: Edition): Tolerance | undefined {
  const lengths = text.split('|').map((part) => parseLength(part, home));
  const [first, second] = lengths.map((length) => (length.ok ? length.value : undefined));
  if (first === undefined || lengths.length > 2) return undefined;
  if (lengths.length === 1) return { inch: first, metric: first };
  return second === undefined ? undefined : { inch: first, metric: second };
}

/** An answer so many times too large or too small is a slip of the unit: an inch is 25.4 mm. */
const FAR = 20;

/**
 * Reads an answer. What is no size, or so far off that the unit must be wrong, comes back as a kind sentence.
 *
 * @example readAnswer('4 1/2', { value: 114.3, dimension: 1 }, 'inch') // => { ok: true, value: 114.3 }
 * @example readAnswer('four', { value: 4, dimension: 0 }, 'inch') // => { ok: false, sentence: 'Write how many, in figures alone.' }
 */
export function readAnswer(text: string, asked: Asked, edition: Edition): Read {
  if (text.trim() === '') return { ok: false, sentence: 'Write your answer first.' };
  if (asked.dimension === 0) {
    const number = /^\s*(\d{1,6})(?:[.,](\d{1,6}))?\s*$/.exec(text);
    if (!number) return { ok: false, sentence: 'Write how many, in figures alone.' };
    return { ok: true, value: Number(`${number[1]}.${number[2] ?? 0}`) };
  }
  const read = parseLength(text, edition);
  if (!read.ok) return { ok: false, sentence: read.fault.message };
  if (read.value === 0) return { ok: false, sentence: 'A size is more than nothing.' };
  const times = read.value / asked.value;
  if (times > FAR)
    return { ok: false, sentence: 'That is far too long for this project. Check the number and its unit.' };
  if (times < 1 / FAR) return { ok: false, sentence: 'That is very short for this. Check the number and its unit.' };
  return { ok: true, value: read.value };
}

/** Whether an answer is right. A number of things is right only when it is the number. */
export function isRight(value: number, asked: Asked, tolerance: number): boolean {
  const most = asked.dimension === 0 ? 1e-6 : Math.max(tolerance, SAME) + 1e-6;
  return Math.abs(value - asked.value) <= most;
}
