import {
  fail,
  LONGEST,
  ok,
  parseLength,
  quote,
  readLength,
  skipBlanks,
  type Edition,
  type Result,
} from '../measure/index.ts';
import { evaluate, parseFormula, type Dimension } from '../formula/index.ts';

const NUMBERS = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');

/**
 * Reads what a learner typed: a length in mm, an area in mm², or a number of things. A sum is worked out, with all its
 * sizes in the edition's unit, or each with its own. A fault is no attempt.
 *
 * @example readAnswer('4 1/2', 1, 'inch') // => { ok: true, value: 114.3 }
 * @example readAnswer('36 sq in', 2, 'metric') // => { ok: true, value: 23225.76 }
 * @example readAnswer('ten folds', 0, 'inch') // => { ok: true, value: 10 }
 * @example readAnswer('4 * 3/4', 1, 'inch') // => { ok: true, value: 76.2 }
 */
export function readAnswer(text: string, dimension: Dimension, edition: Edition): Result<number> {
  const plain =
    dimension === 1 ? parseLength(text, edition) : dimension === 2 ? readArea(text, edition) : readCount(text);
  const read = plain.ok || plain.fault.code === 'dash-in-number' ? plain : (readSum(text, dimension, edition) ?? plain);
  if (!read.ok || read.value > 0 || dimension === 0) return read;
  return refuse(text, 'A size is more than nothing.');
}

/** A sum of numbers and sizes as a learner may type it; undefined where it is none. */
function readSum(text: string, dimension: Dimension, edition: Edition): Result<number> | undefined {
  if (dimension === 2) return undefined;
  const sum = text.trim().replaceAll(/\s*(?<=[\d\s)])[x×](?=[\d\s(])\s*/gu, ' * ');
  const read = parseFormula(sum, { names: [] });
  if (!read.ok || read.value.tree.kind === 'number' || read.value.tree.kind === 'length') return undefined;
  const found = evaluate(read.value, { edition, get: () => undefined });
  const inUnits = /[\p{L}"'′″”’]/u.test(sum);
  if (!found.ok || (found.value.dimension !== dimension && (dimension === 0 || inUnits))) {
    const one = dimension === 1 ? 'Write a unit at every size of the sum, or at none.' : 'Write how many, in figures.';
    return refuse(text, one);
  }
  const { value } = found.value;
  const inMm = found.value.dimension === dimension ? value : value * (edition === 'inch' ? 25.4 : 1);
  return inMm > LONGEST ? refuse(text, 'That comes to more than 100 m. Check the numbers.') : ok(inMm);
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
