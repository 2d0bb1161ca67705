/** Values as the file gives them, read once and kept ready for any edition. */
import { closest, parseLength, quote, readLength, skipBlanks } from '../measure/index.ts';
import { parseFormula } from '../formula/index.ts';
import { reportApart } from './remarks.ts';
import type { Place, Edition, Diagnostic, InText, Stated } from '../measure/index.ts';
import type { Formula } from '../formula/index.ts';

/** What YAML makes of a scalar that is meant as a length, a formula or a number. */
export type Scalar = string | number;
/** `editions`: why the two values differ by much. */
export type Raw = Scalar | { in?: Scalar | undefined; mm?: Scalar | undefined; editions?: string | undefined };

/** A value at its place in the file: a length stated for one or both editions, or a formula. */
export type RawValue = { place: Place; text: string } & (
  { kind: 'length'; stated: Stated } | { kind: 'formula'; formula: Formula }
);

/** What reading needs to know about the file, and where it puts its findings. */
export type Reader = { home: Edition; names: readonly string[]; findings: Diagnostic[] };

/** A fault in a text becomes a finding at the text's place. */
export function report(findings: Diagnostic[], place: Place, fault: Diagnostic<InText>): void {
  const fix = fault.fix === undefined || fault.message.includes(fault.fix) ? undefined : `Write ${quote(fault.fix)}.`;
  const { code, message, start, end } = fault;
  findings.push({ severity: 'error', place, start, end, code, message, ...(fix && { fix }) });
}

/**
 * Reads a length or a formula. What reads as a length by itself is one, in the home edition's unit if it names none;
 * anything else is a formula. A fault is reported and gives undefined.
 */
export function readValue(raw: Raw, place: Place, reader: Reader): RawValue | undefined {
  if (typeof raw === 'object') {
    const rawValue = readEditions(raw, place, reader);
    if (raw.editions === undefined) reportApart(rawValue, reader);
    return rawValue;
  }
  const text = String(raw);
  const length = lengthAlone(text, reader.home);
  if (length) return { kind: 'length', stated: length, place, text };
  const formula = parseFormula(text, { names: reader.names });
  // What begins like a number and has no sign of arithmetic was meant as a length.
  const meantAsLength = /^\s*[-−]?[\d.,½¼¾⅛⅜⅝⅞]/u.test(text) && !/[+*×÷·()]|\d\s+-/u.test(text);
  const asLength = meantAsLength && (!formula.ok || isBare(formula.value)) ? parseLength(text, reader.home) : undefined;
  if (asLength && !asLength.ok) report(reader.findings, place, asLength.fault);
  else if (formula.ok) return { kind: 'formula', formula: formula.value, place, text };
  else report(reader.findings, place, formula.fault);
  return undefined;
}

/** A number by itself, with or without a minus. */
function isBare({ tree }: Formula): boolean {
  return tree.kind === 'number' || (tree.kind === 'minus' && (tree.of.kind === 'number' || tree.of.kind === 'length'));
}

/**
 * Reads a formula: 3/2 is a plain number here, as in any formula, and 1 1/2 in a length. What stands alone with its
 * unit may be written as lengths are.
 */
export function readSum(raw: Scalar, place: Place, reader: Reader): RawValue | undefined {
  const text = String(raw);
  const alone = readLength(text, skipBlanks(text, 0), 'entry');
  const unitless = alone?.ok === true && alone.value.edition === undefined && alone.value.end >= text.trimEnd().length;
  return unitless ? readNumber(raw, place, reader) : readValue(raw, place, reader);
}

/** Reads a number or a formula that gives one: a count, a share. Here 5 means five and never five inches. */
export function readNumber(raw: Scalar, place: Place, reader: Reader): RawValue | undefined {
  const text = String(raw);
  const formula = parseFormula(text, { names: reader.names });
  if (formula.ok) return { kind: 'formula', formula: formula.value, place, text };
  report(reader.findings, place, formula.fault);
  return undefined;
}

/** Reads one length for both editions, or for one of them. */
export function readEditions(
  raw: { in?: Scalar | undefined; mm?: Scalar | undefined },
  place: Place,
  reader: Reader,
): Extract<RawValue, { kind: 'length' }> | undefined {
  const inch = raw.in === undefined ? undefined : readPlain(raw.in, [...place, 'in'], 'inch', reader);
  const metric = raw.mm === undefined ? undefined : readPlain(raw.mm, [...place, 'mm'], 'metric', reader);
  const missing = (raw.in !== undefined && inch === undefined) || (raw.mm !== undefined && metric === undefined);
  if (missing) return undefined;
  if (inch === undefined && metric === undefined) {
    const message = 'A length is missing here. State it for one edition or for both: { in: 1/4, mm: 6 }.';
    reader.findings.push({ severity: 'error', place, code: 'no-value', message });
    return undefined;
  }
  const stated = { ...(inch !== undefined && { inch }), ...(metric !== undefined && { metric }) } as Stated;
  return { kind: 'length', stated, place, text: '' };
}

/** Reads a plain length in mm; a formula is refused. */
export function readPlain(raw: Scalar, place: Place, edition: Edition, reader: Reader): number | undefined {
  const text = String(raw);
  const length = parseLength(text, edition);
  if (length.ok) return length.value;
  const named = reader.names.find((name) => name.toLowerCase() === text.trim().toLowerCase());
  if (named ?? closest(text, reader.names)) {
    const message = `A plain length belongs here, not the name ${quote(text)}.`;
    const finding: Diagnostic = { severity: 'error', place, code: 'no-formula-here', message };
    reader.findings.push({ ...finding, fix: 'Put a formula under “is”, in place of in and mm.' });
  } else report(reader.findings, place, length.fault);
  return undefined;
}

/** A text that is one length and nothing else, as stated for the edition of its unit. */
function lengthAlone(text: string, home: Edition): Stated | undefined {
  const read = readLength(text, skipBlanks(text, 0), 'entry');
  if (!read?.ok || read.value.end < text.trimEnd().length) return undefined;
  const length = parseLength(text, home);
  if (!length.ok) return undefined;
  const edition = read.value.edition ?? home;
  return edition === 'inch' ? { inch: length.value } : { metric: length.value };
}
