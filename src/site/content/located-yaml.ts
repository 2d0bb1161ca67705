import { isAlias, isMap, isScalar, isSeq, LineCounter, parseDocument, visit } from 'yaml';
import type { Document, ErrorCode, Node, Pair, Scalar, YAMLError } from 'yaml';
import type { z } from 'zod';
import { capital, plainName, quote } from '../../core/measure/index.ts';
import type { Diagnostic } from './diagnostic.ts';
import { explain, mistakesIn } from './wording.ts';

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
    // What follows on the same line is most often the same slip, seen again.
    const firsts = [...Map.groupBy(document.errors, (error) => at(error.pos[0]).line).values()].map(
      ([first]) => first!,
    );
    // And a tab puts the lines below out of step.
    const tabs = firsts.filter(({ code }) => code === 'TAB_AS_INDENT');
    return {
      problems: (tabs.length > 0 ? tabs : firsts).map((error) => problem(...syntaxFault(document, text, error))),
    };
  }
  if (document.contents === null || (isScalar(document.contents) && document.contents.value === null)) {
    return { problems: [problem(0, 'This file is empty.', neededBy(schema))] };
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
    // The library refuses a file whose aliases (*name) would swell it without end.
    return { problems: [problem(0, 'The aliases (*name) in this file lead to each other without end.')] };
  }
  const read = schema.safeParse(content, { error: explain, reportInput: true });
  if (read.success) return problems.length ? { problems } : { value: read.data, problems };

  for (const mistake of mistakesIn(read.error.issues, schema)) {
    const label = nameOf(mistake.place);
    problems.push(
      problem(
        mistake.key === undefined
          ? offsetOf(document, text, mistake.place)
          : keyOffset(document, mistake.place, mistake.key),
        label ? `${label}: ${mistake.message}` : capital(mistake.message),
        (mistake.key !== undefined && cutOff(document, mistake.place, mistake.key)) || mistake.fix,
      ),
    );
  }
  return { problems };
}

/**
 * `{ title: Fold, press and baste }`: inside braces a comma ends the text, and the rest becomes a name without a value.
 * So does a comma in a number.
 */
function cutOff(document: Document, place: Place, key: string): string | undefined {
  const map = valueAt(document, place);
  if (!isMap(map) || map.flow !== true || pairAt(map, key)?.value !== null) return undefined;
  const before = map.items[map.items.findIndex((pair) => isScalar(pair.key) && String(pair.key.value) === key) - 1];
  if (/^\d+$/.test(key) && isScalar(before?.value) && /\d$/.test(String(before.value.value))) {
    return `A number is written with a point: ${String(before.value.value)}.${key}.`;
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

/** The library's wording is for programmers; these are the faults a writer makes, by its codes. */
const SYNTAX: Partial<Record<ErrorCode, string>> = {
  BAD_ALIAS: 'A word that starts with * or & has a meaning of its own here. Put quotes around it.',
  BAD_COLLECTION_TYPE: 'A list and named values are mixed here.',
  BAD_DQ_ESCAPE: 'A backslash inside double quotes has a meaning of its own. Use single quotes.',
  BAD_INDENT: 'This line is not set in like its neighbours. Lines that belong together start in the same column.',
  BAD_SCALAR_START: 'A text cannot start with this sign. Put quotes around the text.',
  BLOCK_AS_IMPLICIT_KEY: 'A second “:” stands on this line. Put quotes around a text that has a colon in it.',
  BLOCK_IN_FLOW: 'Lines that start with “-” cannot stand inside { } or [ ].',
  MISSING_CHAR: 'A sign is missing here: a quote, a comma, a colon, or the closing ] or }.',
  MULTILINE_IMPLICIT_KEY: 'A name and its “:” belong on one line. A colon may be missing here.',
  MULTIPLE_DOCS: 'A second “---” starts another file here. Keep one.',
  NON_STRING_KEY: 'A name belongs before the colon.',
  TAB_AS_INDENT: 'A tab stands at the start of this line. Use blanks.',
  TAG_RESOLVE_FAILED: 'A text that starts with ! needs quotes around it.',
  UNEXPECTED_TOKEN: 'This sign is not expected here.',
};

const OPEN_BRACKET = 'A bracket opened above is not closed before this line: ] or } is missing.';

function syntaxFault(document: Document, text: string, error: YAMLError): [offset: number, message: string] {
  const at = error.pos[0];
  if (error.code === 'MISSING_CHAR' && error.message.includes('quote')) {
    return [openQuote(document, at) ?? at, 'A quote is opened here and never closed.'];
  }
  const colon = error.code === 'MULTILINE_IMPLICIT_KEY' ? /^[^:#'"\n]+:(?=[^\s:/])/.exec(text.slice(at)) : null;
  if (colon) return [at + colon[0].length - 1, 'A blank belongs behind this colon.'];
  const lineEnd = text.indexOf('\n', at);
  // A line that is set in too deeply is taken as going on with the one above, where no second colon is to be seen.
  if (error.code === 'BLOCK_AS_IMPLICIT_KEY' && lineEnd >= 0 && !text.slice(at, lineEnd).includes(':')) {
    return [lineEnd + 1 + blanks(text, lineEnd + 1), SYNTAX.BAD_INDENT!];
  }
  if (error.code === 'BAD_INDENT' && error.message.startsWith('Flow')) return [at, OPEN_BRACKET];
  if (/call stack/.test(error.message)) return [at, 'This file is nested too deeply to be read.'];
  const line = text.slice(text.lastIndexOf('\n', at - 1) + 1).split('\n', 1)[0]!;
  const column = at - (text.lastIndexOf('\n', at - 1) + 1);
  const bracket = /(\[[^\][{}]*\])[ \t]*$/u.exec(line.slice(0, column)) ?? /^(\[[^\][{}]*\])/u.exec(line.slice(column));
  if (bracket && error.code === 'UNEXPECTED_TOKEN') {
    return [at, `A text with brackets needs quotes around it here: “… ${bracket[1]} …”.`];
  }
  return [at, SYNTAX[error.code] ?? `This is not YAML: ${error.message}.`];
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

/** The last quote opened before an offset. */
function openQuote(document: Document, before: number): number | undefined {
  let found: number | undefined;
  visit(document, {
    Scalar(_, { type, range }) {
      if (type?.startsWith('QUOTE') && range && range[0] <= before) found = range[0];
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
