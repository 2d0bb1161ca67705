import { fail, ok, parseLength, quote, readLength, skipBlanks, type Edition, type Result } from '../measure/index.ts';
import type { Dimension } from '../formula/index.ts';

const NUMBERS = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');

/**
 * Reads what a learner typed: a length in mm, an area in mm², or a number of things. A fault is no attempt.
 *
 * @example readAnswer('4 1/2', 1, 'inch') // => { ok: true, value: 114.3 }
 * @example readAnswer('36 sq in', 2, 'metric') // => { ok: true, value: 23225.76 }
 * @example readAnswer('ten folds', 0, 'inch') // => { ok: true, value: 10 }
 */
export function readAnswer(text: string, dimension: Dimension, edition: Edition): Result<number> {
  const read =
    dimension === 1 ? parseLength(text, edition) : dimension === 2 ? readArea(text, edition) : readCount(text);
  if (!read.ok || read.value > 0 || dimension === 0) return read;
  return refuse(text, 'A size is more than nothing.');
}

const refuse = (text: string, message: string): Result<never> =>
  fail({ severity: 'error', code: 'unread-answer', message, start: 0, end: text.length });

/** A number by itself, from `start` to the first thing that is not part of it. */
function bareNumber(text: string): { value: number; rest: string } | undefined {
  const read = readLength(text, skipBlanks(text, 0), 'entry');
  if (!read?.ok || read.value.edition !== undefined) return undefined;
  return { value: read.value.value, rest: text.slice(read.value.end).trim() };
}

/** A number in figures or as a word, alone or with what was counted: `10`, `ten`, `10 folds`. */
function readCount(text: string): Result<number> {
  const [word = '', ...after] = text.trim().toLowerCase().split(/\s+/u);
  const named = NUMBERS.indexOf(word);
  if (named >= 0 && after.length < 3) return ok(named);
  const found = bareNumber(text);
  const clean = found && /^(?:\p{L}+(?: \p{L}+){0,2})?$/u.test(found.rest);
  return clean ? ok(found.value) : refuse(text, 'Write how many, in figures.');
}

/** An area with its unit, a bare one in square inches or square centimetres, or one length times another. */
function readArea(text: string, edition: Edition): Result<number> {
  const sides = text.split(/\s*(?:[x×*]|\bby\b)\s*/iu);
  if (sides.length === 2) {
    const [width, height] = sides.map((side) => parseLength(side, edition));
    if (width!.ok && height!.ok) return ok(width!.value * height!.value);
  }
  const found = /^(.+?)\s*(?:(?:square|sq\.?)\s*([a-z]+)\.?|([a-z]+)\.?\s*(?:²|\^?2|squared))?\s*$/iu.exec(text);
  const number = bareNumber(found?.[1] ?? '');
  const unit = parseLength(`1 ${found?.[2] ?? found?.[3] ?? (edition === 'inch' ? 'in' : 'cm')}`, edition);
  if (number?.rest === '' && unit.ok) return ok(number.value * unit.value ** 2);
  const sample = edition === 'inch' ? '36 sq in' : '230 sq cm';
  return refuse(
    text,
    text.trim() === ''
      ? `Write an area, such as ${sample}.`
      : `${quote(text.trim())} is not an area. Write one such as ${sample}.`,
  );
}
