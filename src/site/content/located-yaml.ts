import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, visit } from 'yaml';
import type { Alias, Document, Node, Pair, Scalar } from 'yaml';
import type { z } from 'zod';
import { capital, plainName, quote } from '../../core/measure/index.ts';
import type { Diagnostic } from './diagnostic.ts';
import { knownNames, takesList } from './known-names.ts';
import { explain, mistakesIn } from './wording.ts';
import { cutShort, noBreakSpace, noColon, syntaxSlips } from './yaml-faults.ts';

/** Path of names and list indices from the top of a YAML file to a value. */
export type Place = readonly (string | number)[];
/** A part of a scalar's text, as UTF-16 indices into that text. */
export type Span = { start?: number | undefined; end?: number | undefined };

export type ReadYaml<T> = {
  /** Absent when the file has an error. */
  value?: T;
  problems: Diagnostic[];
  /** Line and column (both from 1) of a value in the file, or of a character inside a text. */
  locate: (place: Place, span?: Span) => { line: number; column: number };
};

/**
 * Reads YAML by a schema. Never throws: what is wrong comes back as problems, each with its line and column, all of
 * them at once unless the text is no YAML, where the first faults hide the rest.
 *
 * @param text the YAML
 * @param file its name in problems
 * @param firstLine the line of the file that `text` starts on (front matter starts on line 2)
 * @example
 * readYaml('pockets: three', z.strictObject({ pockets: z.int() }), 'a.yaml').problems[0]?.message
 * // => 'pockets: a whole number belongs here, not “three”.'
 */
export function readYaml<S extends z.ZodType>(
  text: string,
  schema: S,
  file: string,
  firstLine = 1,
): ReadYaml<z.output<S>> {
  return { ...checked(text, schema, file, firstLine), locate: locator(text, firstLine) };
}

function parsed(text: string, firstLine: number) {
  const lines = new LineCounter();
  // What the library would warn of on the console, the schema says at its place.
  const document = parseDocument(text, {
    lineCounter: lines,
    logLevel: 'error',
    prettyErrors: false,
    uniqueKeys: false,
    version: '1.2',
  });
  const at = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    return { line: line + firstLine - 1, column: col };
  };
  return { document, at };
}

/** Only a file with something to tell is asked: the places of all the others would weigh more than their values. */
function locator(text: string, firstLine: number): ReadYaml<unknown>['locate'] {
  let known: ReturnType<typeof parsed> | undefined;
  return (place, span) => {
    const { document, at } = (known ??= parsed(text, firstLine));
    return at(offsetOf(document, text, place, span));
  };
}

function checked<S extends z.ZodType>(
  text: string,
  schema: S,
  file: string,
  firstLine: number,
): Omit<ReadYaml<z.output<S>>, 'locate'> {
  const { document, at } = parsed(text, firstLine);
  const problem = (offset: number, message: string, fix?: string): Diagnostic => ({
    file,
    ...at(offset),
    severity: 'error',
    message,
    fix,
  });
  if (document.errors.length > 0) {
    return { problems: syntaxSlips(document, text).map(({ at, message, fix }) => problem(at, message, fix)) };
  }
  if (document.contents === null || (isScalar(document.contents) && document.contents.value === null)) {
    return { problems: [problem(0, 'This file is empty.', neededBy(schema))] };
  }
  if (isScalar(document.contents)) {
    const start = document.contents.range[0];
    const names = knownNames(schema, []);
    const isNamed = names.length === 0 || names.some((name) => text.startsWith(name, start));
    const slip = noBreakSpace(text, start) ?? (isNamed ? noColon(text, start) : undefined);
    if (slip) return { problems: [problem(slip.at, slip.message, slip.fix)] };
  }

  const problems = namedTwice(document).map(({ again, first }) =>
    problem(
      again.range![0],
      `${quote(String(again.value))} is named twice; the first is on line ${at(first.range![0]).line}.`,
      'Keep one of them, or give one another name.',
    ),
  );
  problems.push(
    ...namedLikeNothing(document).map((key) =>
      problem(key.range![0], `${quote(PROTO)} can be no name.`, 'Choose another name.'),
    ),
  );
  let content: unknown;
  try {
    content = document.toJS();
  } catch {
    const [alias] = unknownAliases(document);
    if (alias) return { problems: [problem(alias.range![0], 'A text that starts with * needs quotes around it.')] };
    // The library refuses a file whose aliases (*name) would swell it without end.
    return { problems: [problem(0, 'The aliases (*name) in this file lead to each other without end.')] };
  }
  const read = schema.safeParse(content, { error: explain, reportInput: true });
  const short = cutShort(document, text);
  if (read.success) {
    const warnings = short.map((slip) => ({
      ...problem(slip.at, slip.message, slip.fix),
      severity: 'warning' as const,
    }));
    return problems.length ? { problems } : { value: read.data, problems: warnings };
  }

  for (const mistake of mistakesIn(read.error.issues, schema)) {
    const { key, place, message, fix } = mistake;
    const label = nameOf(place);
    const offset = key === undefined ? offsetOf(document, text, place) : keyOffset(document, place, key);
    const strange = key === undefined ? undefined : noBreakSpace(text, offset);
    const cut = short.find((slip) => slip.at > offset && !text.slice(offset, slip.at).includes('\n'));
    const meant = key === undefined ? undefined : cutOff(document, place, key, schema);
    if (strange) problems.push(problem(strange.at, strange.message, strange.fix));
    else if (cut) problems.push(problem(cut.at, cut.message, cut.fix));
    else problems.push(problem(offset, label ? `${label}: ${message}` : capital(message), meant ?? fix));
  }
  return { problems };
}

/**
 * `{ title: Fold, press and baste }`: inside braces a comma ends the text, and the rest becomes a name without a value.
 * So does a comma in a number, and a name whose colon is missing.
 */
function cutOff(document: Document, place: Place, key: string, schema: z.ZodType): string | undefined {
  const map = valueAt(document, place);
  if (!isMap(map) || map.flow !== true || pairAt(map, key)?.value !== null) return undefined;
  const name = knownNames(schema, place).find(
    (one) => key.startsWith(one) && /^(?:\s*[:=]\s*|\s+)\S/u.test(key.slice(one.length)),
  );
  if (name !== undefined)
    return `Write “${name}: ${key.slice(name.length).replace(/^[\s:=]+/u, '')}”, with a colon and a blank.`;
  const before = map.items[map.items.findIndex((pair) => isScalar(pair.key) && String(pair.key.value) === key) - 1];
  if (/^\d+$/.test(key) && isScalar(before?.value) && /\d$/.test(String(before.value.value))) {
    return `A number is written with a point: ${String(before.value.value)}.${key}.`;
  }
  if (isScalar(before?.key) && isScalar(before.value) && takesList(schema, [...place, String(before.key.value)])) {
    return `Several go into brackets: “${String(before.key.value)}: [${String(before.value.value)}, ${key}]”.`;
  }
  return key.includes(' ')
    ? 'If it belongs to the text before the comma, put quotes around the whole text.'
    : undefined;
}

/** How a message calls a value: by its nearest name, and by its number in a list. */
function nameOf(path: Place): string {
  const last = path.at(-1);
  if (last === undefined) return '';
  if (typeof last === 'string') return last;
  const list = nameOf(path.slice(0, -1));
  return list ? `${list}, entry ${last + 1}` : `entry ${last + 1}`;
}

function neededBy(schema: z.ZodType): string | undefined {
  const { def } = schema._zod as z.core.$ZodTypes['_zod'];
  if (def.type !== 'object') return undefined;
  const needed = Object.entries(def.shape)
    .filter(([, field]) => field._zod.optin === undefined)
    .map(([name]) => name);
  return needed.length ? `It needs at least: ${needed.join(', ')}.` : undefined;
}

/** Names that differ only in capitals or blanks count as the same: nobody could tell them apart in a formula. */
function namedTwice(document: Document): { again: Scalar; first: Scalar }[] {
  const found: { again: Scalar; first: Scalar }[] = [];
  visit(document, {
    Map(_, map) {
      const seen = new Map<string, Scalar>();
      for (const { key } of map.items) {
        if (!isScalar(key)) continue;
        const first = seen.get(plainName(String(key.value)));
        if (first) found.push({ again: key, first });
        else seen.set(plainName(String(key.value)), key);
      }
    },
  });
  return found;
}

/** `*bold*`: a name that begins with a star stands for what bears that name, and nothing does. */
function unknownAliases(document: Document): Alias[] {
  const found: Alias[] = [];
  visit(document, {
    Alias(_, alias) {
      if (!alias.resolve(document)) found.push(alias);
    },
  });
  return found;
}

/** A name that every value of a program has already, so that what it stands for would be lost. */
const PROTO = '__proto__';

function namedLikeNothing(document: Document): Scalar[] {
  const found: Scalar[] = [];
  visit(document, {
    Pair(_, { key }) {
      if (isScalar(key) && key.value === PROTO) found.push(key);
    },
  });
  return found;
}

function pairAt(node: unknown, step: string | number): Pair | undefined {
  return isMap(node) ? node.items.find(({ key }) => isScalar(key) && String(key.value) === String(step)) : undefined;
}

/** The value at a place, or undefined where the file has none. */
function valueAt(document: Document, place: Place): Node | undefined {
  let node: unknown = document.contents;
  for (const step of place) {
    if (isAlias(node)) node = node.resolve(document);
    if (isSeq(node)) node = node.items[Number(step)];
    else node = pairAt(node, step)?.value;
  }
  return (node as Node | null) ?? undefined;
}

function keyOffset(document: Document, place: Place, key: string | number): number {
  const pair = pairAt(valueAt(document, place), key);
  return isScalar(pair?.key) ? pair.key.range![0] : offsetOf(document, '', place);
}

/** Where a value starts; for one that is not there, the name or list entry it is missing from. */
function offsetOf(document: Document, text: string, place: Place, span?: Span): number {
  const node = valueAt(document, place);
  const isThere = node?.range && !(isScalar(node) && node.range[0] === node.range[1]);
  if (isThere) {
    if (isScalar(node) && span?.start !== undefined) return offsetInScalar(text, node, span.start);
    return node.range![0];
  }
  if (place.length === 0) return 0;
  const parent = place.slice(0, -1);
  const own = pairAt(valueAt(document, parent), place.at(-1)!);
  if (isScalar(own?.key)) return own.key.range![0]; // `name:` with nothing behind it
  const grand = parent.slice(0, -1);
  const holder = parent.length > 0 ? pairAt(valueAt(document, grand), parent.at(-1)!) : undefined;
  if (isScalar(holder?.key)) return holder.key.range![0];
  return offsetOf(document, text, parent);
}

/**
 * Where the character `index` of a scalar's text stands in the file. Quotes, escapes, line folding and the setting-in
 * of block texts make the written form longer than the text; both are walked side by side.
 */
function offsetInScalar(source: string, scalar: Scalar, index: number): number {
  const [start, end] = scalar.range!;
  if (typeof scalar.value !== 'string') return Math.min(start + index, end);
  const text = scalar.value;
  const isBlock = scalar.type === 'BLOCK_LITERAL' || scalar.type === 'BLOCK_FOLDED';
  const isQuoted = scalar.type === 'QUOTE_SINGLE' || scalar.type === 'QUOTE_DOUBLE';
  let at = isBlock ? source.indexOf('\n', start) + 1 : isQuoted ? start + 1 : start; // a block's header line: | or >-
  if (isBlock) at += blanks(source, at);
  for (let i = 0; i < index && at < end; i += 1) {
    const lineEnd = /[ \n]/.test(text[i]!) ? blanksOverLineEnd(source, at) : 0;
    if (lineEnd > 0) at += lineEnd;
    else if (scalar.type === 'QUOTE_DOUBLE' && source[at] === '\\') at += escapeLength(source, at);
    else if (scalar.type === 'QUOTE_SINGLE' && source.startsWith("''", at)) at += 2;
    else if (text[i] === ' ' && source[at] !== ' ')
      continue; // set in more deeply than its block: already past it
    else at += 1;
  }
  return Math.min(at, end);
}

const blanks = (source: string, at: number): number => lengthOf(/\s*/y, source, at);
const blanksOverLineEnd = (source: string, at: number): number => lengthOf(/[ \t]*\r?\n\s*/y, source, at);
function lengthOf(pattern: RegExp, source: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.exec(source)?.[0].length ?? 0;
}

/** \n is two signs, \x41 four, \u2014 six, \U0001F600 ten. */
function escapeLength(source: string, at: number): number {
  return { x: 4, u: 6, U: 10 }[source[at + 1] ?? ''] ?? 2;
}
