import { endOfJoint, endOfText, readAmount, skipBlanks, type Amount, type ReadingMode } from './amount.ts';
import { closest } from './closest.ts';
import type { Edition } from './edition.ts';
import { fail, ok, quote, type Diagnostic, type InText, type Result } from './diagnostic.ts';
import { bareUnit, foot, inch, unitAt, unitWords, type Unit } from './units.ts';

/** The longest length that is read, in mm: 100 m, longer than a full roll of cloth. */
export const LONGEST = 100_000;

/**
 * A number or a length found in a text. With a unit, `value` is in mm and `edition` is the unit's. Without one, `value`
 * is the bare number, and `bare` tells how it was written.
 */
export type WrittenLength = { value: number; edition?: Edition; bare?: Amount; start: number; end: number };

/**
 * Reads a length as people write it, in mm; a bare number is in inches or millimetres, by edition.
 *
 * Read are whole and mixed numbers (`4 1/2`, `4-1/2`, `4½`), decimals with point or comma, the units in, ft, yd, mm,
 * cm and m with their words and marks (`"`, `'`, primes and quotation marks of every sort), and feet with inches
 * (`1' 6 1/2"`). Refused, with the place and if possible a fix: anything else, less than nothing, more than 100 m.
 *
 * @example parseLength('4 1/2', 'inch') // => { ok: true, value: 114.3 }
 * @example parseLength('11,4 cm', 'inch') // => { ok: true, value: 114 }
 */
export function parseLength(text: string, edition: Edition): Result<number> {
  const start = skipBlanks(text, 0);
  const end = endOfText(text);
  if (start >= end) return fail(empty(text, edition));
  const read = readLength(text, start, 'entry');
  if (!read) return fail(noNumber(text, start, end, edition));
  if (!read.ok) return read;
  const { value, bare } = read.value;
  if (read.value.end < end) return fail(leftOver(text, read.value, end));
  const size = bare && sizeOf(bare, bareUnit[edition]);
  const mm = size ? size.over / size.under : value;
  return mm > LONGEST ? fail(tooLong(text, start, read.value.end)) : ok(mm);
}

/**
 * Reads the number or length that begins exactly at `at` in a longer text; undefined where none begins.
 * Takes as much of the text as belongs to it: `1 ft 3 in` is one length.
 */
export function readLength(text: string, at: number, manner: ReadingMode): Result<WrittenLength> | undefined {
  const first = readAmount(text, at, manner);
  if (!first?.ok) return first;
  const named = unitAt(text, skipBlanks(text, first.value.end));
  if (!named) {
    const { over, under, start, end } = first.value;
    return ok({ value: over / under, bare: first.value, start, end });
  }
  let size = sizeOf(first.value, named.unit);
  let { unit, end } = named;
  for (;;) {
    const next = readAmount(text, endOfJoint(text, end, manner), manner);
    if (!next) break;
    if (!next.ok) return next;
    const { end: after } = next.value;
    // After feet a bare number is inches, as in 5' 6.
    const smaller = unitAt(text, skipBlanks(text, after)) ?? (unit === foot ? { unit: inch, end: after } : undefined);
    if (!smaller) return fail(twoNumbers(text, at, end, next.value));
    if (smaller.unit.edition !== unit.edition || smaller.unit.over >= unit.over) {
      return fail(mixedUnits(at, smaller.end));
    }
    size = plus(size, sizeOf(next.value, smaller.unit));
    ({ unit, end } = smaller);
  }
  const mm = size.over / size.under;
  if (mm > LONGEST) return fail(tooLong(text, at, end));
  return ok({ value: mm, edition: unit.edition, start: at, end });
}

/** A value in mm that is not divided yet, so that the sum of several has one rounding only. */
type Ratio = { over: number; under: number };

const sizeOf = (amount: Ratio, unit: Unit): Ratio => ({
  over: amount.over * unit.over,
  under: amount.under * unit.under,
});

const plus = (a: Ratio, b: Ratio): Ratio => ({ over: a.over * b.under + b.over * a.under, under: a.under * b.under });

const sample: Record<Edition, string> = { inch: '4 1/2 in', metric: '114 mm' };

function empty(text: string, edition: Edition): Diagnostic<InText> {
  return {
    severity: 'error',
    code: 'empty-length',
    message: `Write a length, such as ${sample[edition]}.`,
    start: 0,
    end: text.length,
  };
}

function noNumber(text: string, start: number, end: number, edition: Edition): Diagnostic<InText> {
  const sign = /^[-−–‐‑]\s*(?=[\d.,\p{No}])/u.exec(text.slice(start, end));
  if (sign) {
    const message = 'A length cannot be less than nothing. Leave out the minus sign.';
    return { severity: 'error', code: 'negative-length', message, start, end: start + sign[0].length, fix: '' };
  }
  const about = /^(?:[≈~]|about|approx\.?|ca?\.)\s*(?=[\d.,\p{No}])/iu.exec(text.slice(start, end));
  if (about) {
    const message = `Write the length itself, without ${quote(about[0].trim())}.`;
    return { severity: 'error', code: 'about-length', message, start, end: start + about[0].length, fix: '' };
  }
  if (unitAt(text, start)?.end === end) {
    const message = `Write a number before ${quote(text.slice(start, end))}, such as ${sample[edition]}.`;
    return { severity: 'error', code: 'number-missing', message, start, end };
  }
  const message = `${quote(text.slice(start, end))} is not a length. Write a number, such as ${sample[edition]}.`;
  return { severity: 'error', code: 'not-a-length', message, start, end };
}

/** The text goes on after a length that was read well. */
function leftOver(text: string, read: WrittenLength, end: number): Diagnostic<InText> {
  const start = skipBlanks(text, read.end);
  const next = readAmount(text, start, 'entry');
  if (next?.ok) return twoNumbers(text, read.start, read.end, next.value);
  const mixed = read.bare && dashedFraction(text, read.bare, start);
  if (mixed) return mixed;
  const word = /^\p{L}+/u.exec(text.slice(start, end))?.[0];
  if (word && read.bare) {
    const meant = closest(word, unitWords);
    const message = meant
      ? `${quote(word)} is not a unit of length. Do you mean “${meant}”?`
      : `${quote(word)} is not a unit of length. Write in, ft, yd, mm, cm or m.`;
    return {
      severity: 'error',
      code: 'unknown-unit',
      message,
      start,
      end: start + word.length,
      ...(meant && { fix: meant }),
    };
  }
  const message = `${quote(text.slice(start, end))} does not belong to the length. Leave it out.`;
  return { severity: 'error', code: 'more-than-a-length', message, start, end, fix: '' };
}

/** `4 - 1/2`, where the dash was meant to join and not to take away. */
function dashedFraction(text: string, whole: Amount, start: number): Diagnostic<InText> | undefined {
  if (!/[-‐‑–−]/u.test(text[start] ?? '') || whole.under !== 1 || !Number.isSafeInteger(whole.over)) return undefined;
  const part = readAmount(text, skipBlanks(text, start + 1), 'entry');
  if (!part?.ok || !part.value.fraction) return undefined;
  const { end } = part.value;
  const fix = `${whole.over} ${text.slice(part.value.start, end)}`;
  const message = `Write a mixed number without a dash: ${fix}.`;
  return { severity: 'error', code: 'dash-in-number', message, start: whole.start, end, fix };
}

function twoNumbers(text: string, start: number, firstEnd: number, second: Amount): Diagnostic<InText> {
  const pair = `${quote(text.slice(start, firstEnd))} and ${quote(text.slice(second.start, second.end))}`;
  return {
    severity: 'error',
    code: 'two-numbers',
    message: `Write one length. Here are two: ${pair}.`,
    start,
    end: second.end,
  };
}

function mixedUnits(start: number, end: number): Diagnostic<InText> {
  const message = 'Write one length in one system, the larger unit first, such as 1 ft 3 in or 38 cm.';
  return { severity: 'error', code: 'mixed-units', message, start, end };
}

function tooLong(text: string, start: number, end: number): Diagnostic<InText> {
  const message = `${quote(text.slice(start, end))} is more than 100 m, longer than a roll of cloth. Check number and unit.`;
  return { severity: 'error', code: 'huge-length', message, start, end };
}
