import type { z } from 'zod';
import { closest } from '../core/measure/index.ts';

type Issue = z.core.$ZodIssue;
/** One mistake with its whole path; unions are already settled. */
export type Mistake = { path: (string | number)[]; key?: string; message: string; mend?: string };

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
export const quoted = (word: string): string => `“${word}”`;

/** Joins with commas and a last “or”: a, b or c. */
export function anyOf(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

/** What the author wrote, as a sentence can say it. */
function written(input: unknown): string {
  if (input === null || input === undefined) return 'nothing';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'a group of named values';
  const text = String(input);
  return quoted(text.length > 40 ? `${text.slice(0, 39)}…` : text);
}

const isMissing = (input: unknown): boolean => input === undefined || input === null;

/**
 * Words for a fault that the schema itself has no words for; give it to zod as the error map of a parse.
 * A message that a schema states goes before this one.
 */
export function explain(issue: z.core.$ZodRawIssue): string {
  const { input } = issue;
  switch (issue.code) {
    case 'invalid_type':
      if (isMissing(input)) return `${kind(issue.expected)} is missing here.`;
      if (issue.expected === 'int' && typeof input === 'number')
        return `a whole number belongs here, not ${written(input)}.`;
      return `${kind(issue.expected)} belongs here, not ${written(input)}.`;
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

const sentence = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/** Settles unions: the branch that the author most likely meant speaks, or else all branches together. */
function settle(issue: Issue, base: (string | number)[]): Issue[] {
  const path = [...base, ...(issue.path as (string | number)[])];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const isOtherKind = (i: Issue) => i.path.length === 0 && (i.code === 'invalid_type' || i.code === 'invalid_value');
    const meant = issue.errors.filter((branch) => !branch.some(isOtherKind));
    const [best] = meant.toSorted((a, b) => a.length - b.length || depth(b) - depth(a));
    if (best) return best.flatMap((i) => settle(i, path));
    const wanted = new Set(
      issue.errors
        .flat()
        .flatMap((i) =>
          i.code === 'invalid_type' ? [kind(i.expected)] : i.code === 'invalid_value' ? i.values.map(String) : [],
        ),
    );
    const ending = isMissing(issue.input) ? 'is missing here.' : `belongs here, not ${written(issue.input)}.`;
    return [{ code: 'custom', path, message: `${anyOf([...wanted])} ${ending}`, input: issue.input }];
  }
  if (issue.code === 'invalid_key') {
    return issue.issues.map((i) => ({ code: 'custom', path, message: i.message, input: i.input }));
  }
  return [{ ...issue, path }];
}

const depth = (issues: Issue[]): number => Math.max(...issues.map((i) => i.path.length));

/**
 * Turns the issues of a failed parse into mistakes an instructor can mend. A name that is nearly the missing one is
 * reported once: as misspelt, and not as missing too.
 */
export function mistakesIn(issues: readonly Issue[], schema: z.ZodType): Mistake[] {
  const settled = issues.flatMap((issue) => settle(issue, []));
  const mistakes: Mistake[] = [];
  const spokenFor = new Set<string>();
  for (const issue of settled) {
    if (issue.code !== 'unrecognized_keys') continue;
    const path = issue.path as (string | number)[];
    const present = new Set(Object.keys(issue.input ?? {}));
    const free = knownNames(schema, path).filter((name) => !present.has(name));
    for (const key of issue.keys) {
      const near = closest(key, free);
      if (near) spokenFor.add(JSON.stringify([...path, near]));
      const known = knownNames(schema, path);
      mistakes.push({
        path,
        key,
        message: `${quoted(key)} is not known here.`,
        mend: near ? `Did you mean ${quoted(near)}?` : known.length ? `Known here: ${known.join(', ')}.` : undefined,
      });
    }
  }
  for (const issue of settled) {
    const path = issue.path as (string | number)[];
    if (issue.code === 'unrecognized_keys') continue;
    if (isMissing(issue.input) && spokenFor.has(JSON.stringify(path))) continue;
    mistakes.push({ path, message: sentence(issue.message), mend: mendFor(issue) });
  }
  return mistakes;
}

function mendFor(issue: Issue): string | undefined {
  if (issue.code === 'invalid_value' && typeof issue.input === 'string') {
    const near = closest(issue.input, issue.values.map(String));
    return near && `Did you mean ${quoted(near)}?`;
  }
  if (issue.code === 'invalid_type' && issue.expected === 'boolean' && typeof issue.input === 'string') {
    if (/^(yes|on)$/i.test(issue.input)) return 'Write true.';
    if (/^(no|off)$/i.test(issue.input)) return 'Write false.';
  }
  return undefined;
}

/** The names that the schema knows at a path; none where any name may stand. */
function knownNames(schema: z.ZodType, path: readonly (string | number)[]): string[] {
  let here: z.core.$ZodType[] = [schema];
  for (const step of path) here = here.flatMap((s) => inside(s, step));
  return [...new Set(here.flatMap(unwrapped).flatMap((s) => (isObject(s) ? Object.keys(s._zod.def.shape) : [])))];
}

const isObject = (s: z.core.$ZodType): s is z.core.$ZodObject => s._zod.def.type === 'object';

/** Takes away everything that is not a shape: optional, default, pipes, unions. */
function unwrapped(schema: z.core.$ZodType): z.core.$ZodType[] {
  const def = (schema as z.core.$ZodTypes)._zod.def;
  switch (def.type) {
    case 'optional':
    case 'nullable':
    case 'default':
    case 'prefault':
    case 'readonly':
    case 'nonoptional':
    case 'catch':
      return unwrapped(def.innerType);
    case 'pipe':
      return [...unwrapped(def.in), ...unwrapped(def.out)];
    case 'lazy':
      return unwrapped(def.getter());
    case 'union':
      return def.options.flatMap(unwrapped);
    default:
      return [schema];
  }
}

function inside(schema: z.core.$ZodType, step: string | number): z.core.$ZodType[] {
  return unwrapped(schema).flatMap((s) => {
    const def = (s as z.core.$ZodTypes)._zod.def;
    if (def.type === 'object') return def.shape[step] ? [def.shape[step]] : [];
    if (def.type === 'record') return [def.valueType];
    if (def.type === 'array') return [def.element];
    if (def.type === 'tuple') return def.items[Number(step)] ? [def.items[Number(step)]!] : [];
    return [];
  });
}
