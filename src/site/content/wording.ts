import type { z } from 'zod';
import { anyOf, closest, didYouMean, quote, type Diagnostic, type Place } from '../../core/measure/index.ts';
import { accepts, describedAs, firstNames, knownNames } from './known-names.ts';

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

/** `press strip` where “press: strip” is meant, and a text that lacks its name altogether. */
function inGroup(text: string, schema: z.ZodType, path: (string | number)[]): string | undefined {
  if (path.length === 0) return undefined;
  const known = knownNames(schema, path);
  const said = text.toLowerCase();
  const name = known.filter((one) => said.startsWith(`${one} `)).toSorted((a, b) => b.length - a.length)[0];
  if (name !== undefined)
    return `Write ${quote(`${name}: ${text.slice(name.length + 1).replace(/^(?:the|a) /u, '')}`)}.`;
  const titled = ['title', 'label'].find((one) => known.includes(one));
  if (titled !== undefined && !known.includes('kind')) return `Write ${quote(`{ ${titled}: ${text} }`)}.`;
  if (known.length > 0) return `Named values belong there: ${known.join(', ')}.`;
  return known.length === 0 ? `A name and a colon belong before it, as in ${quote(`name: ${text}`)}.` : undefined;
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
    return [{ code: 'custom', path, message, input: issue.input, wanted: typesWanted(issue) } as Issue];
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

function typesWanted(issue: Issue): string[] {
  if (issue.code === 'invalid_union') return issue.errors.flat().flatMap(typesWanted);
  return issue.code === 'invalid_type' ? [issue.expected] : [];
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
      const near = nameMeant(key, free) ?? closest(key, free);
      if (near) spokenFor.add(JSON.stringify([...path, near]));
      mistakes.push({
        severity: 'error',
        place: path,
        key,
        message: `${quote(key)} is not known here.`,
        fix: meantBy(key, free) ?? didYouMean(key, free) ?? listed(known, firstNames(schema, path), present),
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
      fix: fixFor(issue, schema) ?? purpose(issue, schema),
    });
  }
  return mistakes;
}

/** What belongs where nothing is: the words of the authoring reference, where the place is inside the file. */
const purpose = ({ input, path }: Issue, schema: z.ZodType): string | undefined =>
  isMissing(input) && path.length > 0 ? describedAs(schema, path as (string | number)[]) : undefined;

/** Names of daily life, and what stands for them in these files. */
const SAID_OTHERWISE: Readonly<Record<string, readonly string[]>> = {
  in: ['inch', 'inches', 'zoll'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters'],
  between: ['range', 'min', 'max', 'from to'],
  name: ['title', 'of'],
  title: ['name', 'heading'],
  id: ['name', 'of', 'step'],
  of: ['size', 'measure', 'name', 'id', 'src', 'file'],
  shows: ['alt', 'title', 'text'],
  piece: ['of', 'name'],
  summary: ['description', 'about'],
  minutes: ['time', 'duration', 'length'],
  note: ['text', 'comment', 'hint'],
  from: ['fabric', 'cloth', 'material'],
  cut: ['quantity', 'times', 'how many', 'number'],
  press: ['iron'],
  join: ['sew', 'stitch', 'seam', 'attach'],
  'turn over': ['flip'],
  finish: ['overlock', 'zigzag', 'serge', 'neaten'],
  at: ['edge', 'edges', 'side', 'sides'],
};

/** What a name means that is not near to any by its letters. */
function meantBy(key: string, free: readonly string[]): string | undefined {
  if (/^c(m|entimet(re|er)s?)$/i.test(key) && free.includes('mm'))
    return 'Write mm, and the length with its unit: “mm: 3 cm”.';
  const name = nameMeant(key, free);
  return name === undefined ? undefined : `Write ${quote(name)}.`;
}

const nameMeant = (key: string, free: readonly string[]): string | undefined =>
  free.find((one) => SAID_OTHERWISE[one]?.includes(key.toLowerCase()));

function listed(known: readonly string[], first: readonly string[], present: ReadonlySet<string>): string | undefined {
  if (first.length > 0 && !first.some((name) => present.has(name)))
    return `A step begins with one of: ${first.join(', ')}.`;
  return known.length > 0 ? `Known here: ${known.join(', ')}.` : undefined;
}

/** The parts of a text where a list belongs: people put signs and words between two of something. */
const partsOf = (text: string): string[] =>
  text
    .replace(/^\((.*)\)$/su, '$1')
    .split(/\s*[,;×|]\s*|\s+(?:x|by|and|to|&)\s+|(?<=\d)\s*[-–]\s*(?=\d)/u)
    .filter((part) => part !== '');

function fixFor(issue: Issue, schema: z.ZodType): string | undefined {
  const { input } = issue;
  const path = issue.path as (string | number)[];
  const wanted = issue.code === 'invalid_type' ? issue.expected : (issue as { wanted?: readonly string[] }).wanted?.[0];
  if (wanted === 'array' || wanted === 'tuple') {
    if (typeof input === 'string' && input.trim() !== '') {
      if (knownNames(schema, [...path, 0]).includes('title')) return `Write [{ title: ${input} }].`;
      const parts = partsOf(input);
      return accepts(schema, path, parts) ? `Write [${parts.join(', ')}].` : undefined;
    }
    if (typeof input === 'object' && input !== null) return 'Begin each entry with “- ”.';
  }
  if (issue.code === 'too_small' && issue.minimum === 2 && Array.isArray(input) && typeof input[0] === 'string') {
    const parts = partsOf(input[0]);
    if (accepts(schema, path, parts)) return `Write [${parts.join(', ')}].`;
  }
  if (issue.code === 'invalid_type' && typeof input === 'string' && /^(?:int|number)$/u.test(wanted ?? '')) {
    const [, number, hours] =
      /^(?:about |ca\.? ?)?(?:\d+ ?[-–] ?)?(\d+) ?(?:(h|hours?|hrs?)|[a-z]+\.?)?$/iu.exec(input.trim()) ?? [];
    if (number !== undefined) return `Write ${Number(number) * (hours && path.at(-1) === 'minutes' ? 60 : 1)} alone.`;
  }
  if ((wanted === 'object' || wanted === 'record') && Array.isArray(input))
    return 'Leave out the “- ” before each name.';
  if ((wanted === 'object' || wanted === 'record') && typeof input === 'string') return inGroup(input, schema, path);
  if (issue.code === 'invalid_value' && typeof issue.input === 'string') {
    return didYouMean(issue.input, issue.values.map(String));
  }
  if (issue.code === 'invalid_type' && issue.expected === 'boolean' && typeof issue.input === 'string') {
    if (/^(yes|on)$/i.test(issue.input)) return 'Write true.';
    if (/^(no|off)$/i.test(issue.input)) return 'Write false.';
  }
  return undefined;
}
