import { readAmount, skipBlanks, type Amount, type Manner } from './amount.ts';
import { closest } from './closest.ts';
import type { Edition } from './edition.ts';
import { fail, ok, quote, type Fault, type Result } from './fault.ts';
import { bareUnit, foot, inch, unitAt, unitWords, type Unit } from './units.ts';

/** The longest length that is read, in mm: 100 m, longer than a full roll of cloth. */
export const LONGEST = 100_000;

/**
 * A number or a length found in a text. With a unit `value` is in mm and `edition` is the unit's; without one `value`
 * is the bare number. `under` is the denominator when it was written as a fraction.
 */
export type Written = { value: number; edition?: Edition; under?: number; start: number; end: number };

/**
 * Reads a length as people write it, in mm; a bare number is in inches or millimetres, by edition.
 *
 * Read are whole and mixed numbers (`4 1/2`, `4-1/2`, `4½`), decimals with point or comma, the units in, ft, yd, mm,
 * cm and m with their words and marks (`"`, `'`, primes and quotation marks of every sort), and feet with inches
 * (`1' 6 1/2"`). Refused, with the place and if possible a mend: anything else, less than nothing, more than 100 m.
 *
 * @example parseLength('4 1/2', 'inch') // => { ok: true, value: 114.3 }
 * @example parseLength('11,4 cm', 'inch') // => { ok: true, value: 114 }
 */
export function parseLength(text: string, edition: Edition): Result<number> {
  const start = skipBlanks(text, 0);
  const end = text.trimEnd().length;
  if (start >= end) return fail(empty(text, edition));
  const read = readLength(text, start, 'entry');
  if (!read) return fail(noNumber(text, start, end, edition));
  if (!read.ok) return read;
  if (read.value.end < end) return fail(leftOver(text, read.value, end));
  const { over, under } = bareUnit[edition];
  const mm = read.value.edition ? read.value.value : (read.value.value * over) / under;
  return mm > LONGEST ? fail(tooLong(text, read.value.start, read.value.end)) : ok(mm);
}

/**
 * Reads the number or length that begins exactly at `at` in a longer text; undefined where none begins.
 * Takes as much of the text as belongs to it: `1 ft 3 in` is one length.
 */
export function readLength(text: string, at: number, manner: Manner): Result<Written> | undefined {
  const first = readAmount(text, at, manner);
  if (!first?.ok) return first;
  const named = unitAt(text, skipBlanks(text, first.value.end));
  if (!named) {
    const { over, under, fraction, start, end } = first.value;
    return ok({ value: over / under, ...(fraction && { under }), start, end });
  }
  let mm = inMm(first.value, named.unit);
  let { unit, end } = named;
  for (;;) {
    const next = readAmount(text, skipBlanks(text, end), manner);
    if (!next) break;
    if (!next.ok) return next;
    const smaller =
      unitAt(text, skipBlanks(text, next.value.end)) ??
      (unit === foot ? { unit: inch, end: next.value.end } : undefined);
    if (!smaller) return fail(twoNumbers(text, at, end, next.value));
    if (smaller.unit.edition !== unit.edition || inMm(ONE, smaller.unit) >= inMm(ONE, unit)) {
      const message = `Write one length in one system of units, such as 1 ft 3 in or 38 cm.`;
      return fail({ code: 'mixed-units', message, start: at, end: smaller.end });
    }
    mm += inMm(next.value, smaller.unit);
    ({ unit, end } = smaller);
  }
  if (mm > LONGEST) return fail(tooLong(text, at, end));
  return ok({ value: mm, edition: unit.edition, start: at, end });
}

const ONE = { over: 1, under: 1 };

const inMm = (amount: Pick<Amount, 'over' | 'under'>, unit: Unit) =>
  (amount.over * unit.over) / (amount.under * unit.under);

const sample: Record<Edition, string> = { inch: '4 1/2 in', metric: '114 mm' };

function empty(text: string, edition: Edition): Fault {
  return { code: 'empty-length', message: `Write a length, such as ${sample[edition]}.`, start: 0, end: text.length };
}

function noNumber(text: string, start: number, end: number, edition: Edition): Fault {
  const sign = /^[-−–‐‑]\s*(?=[\d.,\p{No}])/u.exec(text.slice(start, end));
  if (sign) {
    const message = 'A length cannot be less than nothing. Leave out the minus sign.';
    return { code: 'negative-length', message, start, end: start + sign[0].length, mend: '' };
  }
  const about = /^(?:[≈~]|about|approx\.?|ca?\.)\s*(?=[\d.,\p{No}])/iu.exec(text.slice(start, end));
  if (about) {
    const message = `Write the length itself, without ${quote(about[0].trim())}.`;
    return { code: 'about-length', message, start, end: start + about[0].length, mend: '' };
  }
  if (unitAt(text, start)?.end === end) {
    const message = `Write a number before ${quote(text.slice(start, end))}, such as ${sample[edition]}.`;
    return { code: 'number-missing', message, start, end };
  }
  const message = `${quote(text.slice(start, end))} is not a length. Write a number, such as ${sample[edition]}.`;
  return { code: 'not-a-length', message, start, end };
}

/** The text goes on after a length that was read well. */
function leftOver(text: string, read: Written, end: number): Fault {
  const start = skipBlanks(text, read.end);
  const next = readAmount(text, start, 'entry');
  if (next?.ok) return twoNumbers(text, read.start, read.end, next.value);
  const word = /^\p{L}+/u.exec(text.slice(start, end))?.[0];
  if (word && read.edition === undefined) {
    const meant = closest(word, unitWords);
    const message = meant
      ? `${quote(word)} is not a unit of length. Do you mean “${meant}”?`
      : `${quote(word)} is not a unit of length. Write in, ft, yd, mm, cm or m.`;
    return { code: 'unknown-unit', message, start, end: start + word.length, ...(meant && { mend: meant }) };
  }
  const message = `${quote(text.slice(start, end))} does not belong to the length. Leave it out.`;
  return { code: 'more-than-a-length', message, start, end, mend: '' };
}

function twoNumbers(text: string, start: number, firstEnd: number, second: Amount): Fault {
  const pair = `${quote(text.slice(start, firstEnd))} and ${quote(text.slice(second.start, second.end))}`;
  return { code: 'two-numbers', message: `Write one length. Here are two: ${pair}.`, start, end: second.end };
}

function tooLong(text: string, start: number, end: number): Fault {
  const message = `${quote(text.slice(start, end))} is more than 100 m, longer than a roll of cloth. Check number and unit.`;
  return { code: 'huge-length', message, start, end };
}
