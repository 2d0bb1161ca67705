import type { z } from 'zod';
import { anyOf, closest, didYouMean, quote, type Diagnostic, type Place } from '../../core/measure/index.ts';
import { describedAs, knownNames } from './known-names.ts';

type Issue = z.core.$ZodIssue;
/** The place of a value that a schema refuses; `key` is a name at that place that the schema does not know. */
export type InValue = { place: Place; key?: string };

/** How a reader would call each kind of value. */
const KINDS: Record<string, string> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list such as [a, b]',
  tuple: 'a list such as [a, b]',
  object: 'a group of named values',
  record: 'a group of named values',
  null: 'nothing',
  undefined: 'nothing',
};

const kind = (expected: string): string => KINDS[expected] ?? expected;

/** What the author wrote, as a sentence can say it. */
function written(input: unknown): string {
  if (input === null || input === undefined) return 'nothing';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'a group of named values';
  if (typeof input === 'number') return quote(String(input)); // JSON has no word for .inf and .nan
  return quote(typeof input === 'string' ? input : JSON.stringify(input));
}

const isMissing = (input: unknown): boolean => input === undefined || input === null;

/**
 * Words for a fault that the schema itself has no words for; give it to zod as the error map of a parse.
 * A message that a schema states goes before this one.
 */
export function explain(issue: z.core.$ZodRawIssue): string {
  const { input } = issue;
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = kind(isWhole(issue.inst) ? 'int' : issue.expected);
      return isMissing(input) ? `${wanted} is missing here.` : `${wanted} belongs here, not ${written(input)}.`;
    }
    case 'invalid_value': {
      const values = anyOf(issue.values.map((value) => String(value)));
      return isMissing(input) ? `${values} is missing here.` : `${values} belongs here, not ${written(input)}.`;
    }
    case 'too_small': {
      const least = Number(issue.minimum);
      if (issue.origin === 'string') return 'this must not be empty.';
      if (issue.origin === 'array')
        return `at least ${least} ${least === 1 ? 'entry belongs' : 'entries belong'} here.`;
      return issue.inclusive === false
        ? `a number above ${least} belongs here, not ${written(input)}.`
        : `${least} or more belongs here, not ${written(input)}.`;
    }
    case 'too_big': {
      const most = Number(issue.maximum);
      if (issue.origin === 'string') return `at most ${most} letters belong here.`;
      if (issue.origin === 'array') return `at most ${most} ${most === 1 ? 'entry belongs' : 'entries belong'} here.`;
      return issue.inclusive === false
        ? `a number below ${most} belongs here, not ${written(input)}.`
        : `${most} or less belongs here, not ${written(input)}.`;
    }
    case 'not_multiple_of':
      return `a multiple of ${String(issue.divisor)} belongs here, not ${written(input)}.`;
    case 'unrecognized_keys':
      return 'is not known here.';
    case 'invalid_union':
      return isMissing(input) ? 'a value is missing here.' : `${written(input)} does not belong here.`;
    case 'invalid_key':
      return 'this name cannot be used.';
    default:
      return `${written(input)} does not belong here.`;
  }
}

/** A whole number that is given a text says only that it wanted a number. */
const isWhole = (schema: unknown): boolean =>
  (schema as z.core.$ZodNumberFormat | undefined)?._zod.def.format === 'safeint';

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** Settles unions: the branch that the author most likely meant speaks, or else all branches together. */
function settle(issue: Issue, base: (string | number)[]): Issue[] {
  const path = [...base, ...(issue.path as (string | number)[])];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const meant = issue.errors.filter((branch) => !branch.some(isOfOtherKind));
    const [best] = meant.toSorted((a, b) => a.length - b.length || depth(b) - depth(a));
    if (best) return best.flatMap((i) => settle(i, path));
    const ending = isMissing(issue.input) ? 'is missing here.' : `belongs here, not ${written(issue.input)}.`;
    const message = `${anyOf([...new Set(kindsWanted(issue))])} ${ending}`;
    return [{ code: 'custom', path, message, input: issue.input }];
  }
  if (issue.code === 'invalid_key') {
    return issue.issues.map((i) => ({ code: 'custom', path, message: i.message, input: i.input }));
  }
  return [{ ...issue, path }];
}

/** Whether the branch of a union wants something of another kind altogether: a text where a list stands. */
function isOfOtherKind(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_union') return issue.errors.every((branch) => branch.some(isOfOtherKind));
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
}

function kindsWanted(issue: Issue): string[] {
  if (issue.code === 'invalid_union') return issue.errors.flat().flatMap(kindsWanted);
  if (issue.code === 'invalid_value') return issue.values.map(String);
  return issue.code === 'invalid_type' ? [kind(issue.expected)] : [];
}

const depth = (issues: Issue[]): number => Math.max(...issues.map((i) => i.path.length));

/**
 * Turns the issues of a failed parse into mistakes an instructor can put right. A name that is nearly the missing one is
 * reported once: as misspelt, and not as missing too.
 */
export function mistakesIn(issues: readonly Issue[], schema: z.ZodType): Diagnostic<InValue>[] {
  const settled = issues.flatMap((issue) => settle(issue, []));
  const mistakes: Diagnostic<InValue>[] = [];
  const spokenFor = new Set<string>();
  for (const issue of settled) {
    if (issue.code !== 'unrecognized_keys') continue;
    const path = issue.path as (string | number)[];
    const value = issue.input ?? {};
    const present = new Set(Object.keys(value));
    const known = knownNames(schema, path, value);
    const free = known.filter((name) => !present.has(name));
    for (const key of issue.keys) {
      const near = closest(key, free);
      if (near) spokenFor.add(JSON.stringify([...path, near]));
      mistakes.push({
        severity: 'error',
        place: path,
        key,
        message: `${quote(key)} is not known here.`,
        fix: didYouMean(key, free) ?? (known.length ? `Known here: ${known.join(', ')}.` : undefined),
      });
    }
  }
  for (const issue of settled) {
    const path = issue.path as (string | number)[];
    if (issue.code === 'unrecognized_keys') continue;
    if (isMissing(issue.input) && spokenFor.has(JSON.stringify(path))) continue;
    mistakes.push({
      severity: 'error',
      place: path,
      message: sentence(issue.message),
      fix: fixFor(issue) ?? purpose(issue, schema),
    });
  }
  return mistakes;
}

/** What belongs where nothing is: the words of the authoring reference, where the place is inside the file. */
const purpose = ({ input, path }: Issue, schema: z.ZodType): string | undefined =>
  isMissing(input) && path.length > 0 ? describedAs(schema, path as (string | number)[]) : undefined;

function fixFor(issue: Issue): string | undefined {
  if (issue.code === 'invalid_value' && typeof issue.input === 'string') {
    return didYouMean(issue.input, issue.values.map(String));
  }
  if (issue.code === 'invalid_type' && issue.expected === 'boolean' && typeof issue.input === 'string') {
    if (/^(yes|on)$/i.test(issue.input)) return 'Write true.';
    if (/^(no|off)$/i.test(issue.input)) return 'Write false.';
  }
  return undefined;
}
