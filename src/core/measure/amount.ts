import { fail, ok, quote, type Diagnostic, type InText, type Result } from './diagnostic.ts';

/**
 * A number as somebody wrote it, kept as `over / under` so that no digit is lost before the one division at the end.
 * `fraction` tells a number written with a fraction (1/4, 3 1/4, ½) from one written in digits alone.
 */
export type Amount = { over: number; under: number; fraction: boolean; start: number; end: number };

/**
 * How strictly a number is read. `entry`: a length by itself, as a learner types it, where `4-1/2` and `4 and 1/2` are
 * mixed numbers and blanks may stand round the slash. `formula`: part of a formula, where `-` takes away, ` / ` divides.
 */
export type ReadingMode = 'entry' | 'formula';

// Blanks of every width, and the marks without width that come along when text is copied from a page.
const blank = /[\s\u200b-\u200f\u2060]/u;
const dash = /[-‐‑–]/u;
const and = /and|[&+]/iuy;
const digits = /[0-9][0-9.,]*|[.,][0-9][0-9.,]*/y;
// Nine digits are plenty, and both parts stay whole numbers that are counted exactly.
const slashed = {
  entry: /([0-9]{1,9})\s*[/⁄∕]\s*([0-9]{1,9})(?![0-9])/uy,
  formula: /([0-9]{1,9})[/⁄∕]([0-9]{1,9})(?![0-9])/uy,
};
const raised = /([⁰¹²³⁴-⁹]{1,9})[/⁄∕]([₀-₉]{1,9}|[0-9]{1,9})(?![₀-₉0-9])/uy;

/** Most characters are plain letters and signs, for which the pattern need not be asked. */
const isBlank = (text: string, at: number) => {
  const code = text.charCodeAt(at);
  return code === 32 || ((code < 32 || code > 126) && blank.test(text[at]!));
};

/** The index of the first character at or after `at` that is not a blank (of any width, breaking or not). */
export function skipBlanks(text: string, at: number): number {
  let end = at;
  while (end < text.length && isBlank(text, end)) end++;
  return end;
}

/** The index after the last character before `before` that is not a blank. */
export function endOfText(text: string, before = text.length): number {
  let end = before;
  while (end > 0 && isBlank(text, end - 1)) end--;
  return end;
}

/** Reads the number that begins exactly at `at`; undefined where none begins. */
export function readAmount(text: string, at: number, manner: ReadingMode): Result<Amount> | undefined {
  const alone = fractionAt(text, at, manner);
  if (alone) return alone.under === 0 ? fail(zeroUnder(text, alone)) : ok(alone);
  const found = match(digits, text, at);
  if (!found) return undefined;
  const whole = readDigits(found[0], at);
  if (!whole.ok || whole.value.under !== 1) return whole;

  const dashed = dash.test(text[whole.value.end] ?? '');
  const part = fractionAt(text, dashed ? whole.value.end + 1 : endOfJoint(text, whole.value.end, manner), manner);
  if (!part) return whole;
  const span = { start: at, end: part.end };
  const written = text.slice(at, part.end);
  if (part.under === 0) return fail(zeroUnder(text, part));
  const mixed = { over: whole.value.over * part.under + part.over, under: part.under, fraction: true, ...span };
  if (manner === 'formula' && dashed) {
    const together = `${whole.value.over} ${text.slice(part.start, part.end)}`;
    const apart = `${whole.value.over} - ${text.slice(part.start, part.end)}`;
    return fail({
      severity: 'error',
      code: 'mixed-or-minus',
      message: `${quote(written)} can be read two ways. Write “${together}” for the mixed number, or “${apart}” to take away.`,
      ...span,
      fix: together,
    });
  }
  if (part.over >= part.under) {
    const meant = mixedText(mixed);
    const message = `The fraction in ${quote(written)} is a whole or more. Do you mean “${meant}”?`;
    return fail({ severity: 'error', code: 'improper-fraction', message, ...span, fix: meant });
  }
  return ok(mixed);
}

/** Where the next part of a number or length may begin: after blanks, and in an entry also after `and`, `&` or `+`. */
export function endOfJoint(text: string, at: number, manner: ReadingMode): number {
  const gap = skipBlanks(text, at);
  return manner === 'entry' && match(and, text, gap) ? skipBlanks(text, and.lastIndex) : gap;
}

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** A fraction by itself: `3/8`, `3⁄8`, `⅜` or `³⁄₈`. */
function fractionAt(text: string, at: number, manner: ReadingMode): Amount | undefined {
  const found = match(slashed[manner], text, at) ?? match(raised, text, at);
  if (found) {
    const [over, under] = [found[1]!, found[2]!].map((part) => Number(part.normalize('NFKC')));
    return { over: over!, under: under!, fraction: true, start: at, end: at + found[0].length };
  }
  // Unicode takes each one-character fraction apart for us: ⅜ is 3, fraction slash, 8.
  const glyph = /^(\d+)⁄(\d+)$/u.exec((text[at] ?? '').normalize('NFKC'));
  return glyph
    ? { over: Number(glyph[1]), under: Number(glyph[2]), fraction: true, start: at, end: at + 1 }
    : undefined;
}

/** Digits with at most one decimal point or comma. A full stop after the last digit is let pass. */
function readDigits(run: string, start: number): Result<Amount> {
  let digits = run.length;
  while (/[.,]/u.test(run[digits - 1]!)) digits--;
  const written = run.slice(0, digits);
  const end = start + digits + (run.slice(digits) === '.' ? 1 : 0);
  const [whole = '', decimals, ...more] = written.split(/[.,]/u);
  if (decimals === undefined) return ok({ over: Number(whole), under: 1, fraction: false, start, end });
  if (more.length > 0) return fail(manySigns(written, start));
  if (written.includes(',') && decimals.length === 3 && /^[1-9]\d{0,2}$/u.test(whole)) {
    const message = `The comma in ${quote(written)} can be read two ways. Write ${whole}${decimals} or ${whole}.${decimals}.`;
    return fail({
      severity: 'error',
      code: 'two-ways-comma',
      message,
      start,
      end: start + written.length,
      fix: `${whole}.${decimals}`,
    });
  }
  // Beyond 15 places the digits no longer fit a whole number exactly; nothing on a table is measured that finely.
  const fits = decimals.length <= 15;
  return ok({
    over: fits ? Number(whole + decimals) : Number(`${whole}.${decimals}`),
    under: fits ? 10 ** decimals.length : 1,
    fraction: false,
    start,
    end,
  });
}

function manySigns(written: string, start: number): Diagnostic<InText> {
  // 1.234,5 and 1,234,567 leave no doubt about what was meant; 1.2.3 does.
  const thousands = /^\d{1,3}([.,])\d{3}(?:\1\d{3})*(?:(?!\1)[.,](\d+))?$/u.exec(written);
  const decimals = thousands?.[2];
  const whole = decimals === undefined ? written : written.slice(0, -decimals.length - 1);
  const fix = thousands ? whole.replace(/[.,]/gu, '') + (decimals === undefined ? '' : `.${decimals}`) : undefined;
  const message = fix
    ? `Write ${quote(written)} without a mark between thousands: ${fix}.`
    : `${quote(written)} has more than one decimal point. Write a number such as 4.5.`;
  return {
    severity: 'error',
    code: 'many-decimal-marks',
    message,
    start,
    end: start + written.length,
    ...(fix && { fix }),
  };
}

function zeroUnder(text: string, part: Amount): Diagnostic<InText> {
  const { start, end } = part;
  const message = `${quote(text.slice(start, end))} has a zero under the line. Write a fraction such as 1/4.`;
  return { severity: 'error', code: 'zero-under-line', message, start, end };
}

/** A number of fractions as a mixed number in lowest terms: 21/4 as “5 1/4”. */
function mixedText({ over, under }: Amount): string {
  const whole = Math.floor(over / under);
  const rest = over - whole * under;
  const shared = greatestCommon(rest, under);
  return rest === 0 ? `${whole}` : `${whole} ${rest / shared}/${under / shared}`;
}

/** The greatest whole number that goes into both. */
export function greatestCommon(a: number, b: number): number {
  while (b > 0) [a, b] = [b, a % b];
  return a;
}
