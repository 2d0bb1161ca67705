import { closest, fail, ok, quote, readLength, skipBlanks, type Fault, type Result } from '../measure/index.ts';
import { findName, nameBook, wordsAt, type NameBook } from './names.ts';
import type { Formula, Node, Operator, Span } from './tree.ts';

/** Brackets, signs and calls may stand inside each other this deep; nobody reads deeper. */
const DEEPEST = 100;

/** The most parts (numbers, names, operators) of one formula. Bounds the depth of the tree, too. */
const LARGEST = 500;

/**
 * Reads a formula as people write it: numbers, lengths with a unit, named measures, `+ - * / × ÷ ·`, brackets,
 * `min(a, b, ...)`, `max(a, b, ...)`, `round up X to Y`, `round down X to Y` and `round X to Y`, where Y is one number,
 * name or bracket.
 *
 * `names` are all the names that the formula may use. They may hold blanks, digits and words such as `to`; the longest
 * one that fits wins, also over the words above. Without `names` the words up to the next operator make a name.
 * A bare number is a plain number, in either edition. What cannot be read is a fault with its place.
 *
 * @example parseFormula('packet width + 2 * ease') // => { ok: true, value: { names: ['packet width', 'ease'], ... } }
 * @example parseFormula('2 + * 3') // => { ok: false, fault: { code: 'part-missing', start: 4, end: 5, ... } }
 */
export function parseFormula(text: string, options: { names?: Iterable<string> } = {}): Result<Formula> {
  const reader: Reader = {
    text,
    at: skipBlanks(text, 0),
    known: options.names && nameBook(options.names),
    depth: 0,
    parts: 0,
    inRound: false,
    fault: undefined,
  };
  if (reader.at === text.length) {
    return fail({ code: 'empty-formula', message: 'Write a number, a name or a sum.', start: 0, end: text.length });
  }
  const tree = readSum(reader);
  if (tree && reader.at < text.length) leftOver(reader, tree);
  if (reader.fault || !tree) return fail(reader.fault!);
  return ok({ text, tree, names: [...namesIn(tree, new Set())] });
}

/** The state of one reading. Readers below return undefined once there is a fault. */
type Reader = {
  readonly text: string;
  readonly known: NameBook | undefined;
  at: number;
  depth: number;
  parts: number;
  /** Whether the word `to` ends the part being read. */
  inRound: boolean;
  fault: Fault | undefined;
};

const SUM: Record<string, Operator> = { '+': '+', '-': '-', '−': '-', '–': '-' };
const PRODUCT: Record<string, Operator> = {
  '*': '*',
  '×': '*',
  '·': '*',
  '⋅': '*',
  '∗': '*',
  '/': '/',
  '÷': '/',
  '∕': '/',
};

const readSum = (reader: Reader): Node | undefined => readChain(reader, SUM, readProduct);
const readProduct = (reader: Reader): Node | undefined => readChain(reader, PRODUCT, readSigned);

/** Parts joined by operators of one rank, taken from left to right. */
function readChain(
  reader: Reader,
  operators: Record<string, Operator>,
  part: (reader: Reader) => Node | undefined,
): Node | undefined {
  let left = part(reader);
  while (left) {
    const sign = reader.text[reader.at] ?? '';
    const kind = operators[sign];
    if (!kind) return left;
    advance(reader, reader.at + 1);
    const right = part(reader);
    if (!right) return undefined;
    if (kind === '/' && barefraction(reader, left, right)) return undefined;
    left = node(reader, { kind, left, right, start: left.start, end: right.end });
  }
  return undefined;
}

function readSigned(reader: Reader): Node | undefined {
  const start = reader.at;
  if (SUM[reader.text[start] ?? ''] !== '-') return readPart(reader);
  return deeper(reader, () => {
    advance(reader, start + 1);
    const of = readSigned(reader);
    return of && node(reader, { kind: 'minus', of, start, end: of.end });
  });
}

/** One name, number, length, bracket, call or rounding. */
function readPart(reader: Reader): Node | undefined {
  const { text, at: start } = reader;
  const name = reader.known && findName(reader.known, text, start);
  if (name) {
    advance(reader, name.end);
    return node(reader, { kind: 'name', name: name.name, start, end: name.end });
  }
  if (text[start] === '(') return readBracket(reader);
  const call = /^(min|max)\s*\(/u.exec(text.slice(start, start + 40));
  if (call) return readCall(reader, call[1] as 'min' | 'max', start + call[0].length);
  const rounding = /^round(?:\s+(up|down))?(?![\p{L}\p{N}_])/u.exec(text.slice(start, start + 40));
  if (rounding && (reader.known || /[\s)]to\s/u.test(text.slice(start)))) return readRounding(reader, start);
  return readNumber(reader) ?? readName(reader);
}

function readBracket(reader: Reader): Node | undefined {
  const start = reader.at;
  return deeper(reader, () => {
    advance(reader, start + 1);
    const inside = apart(reader, () => readSum(reader));
    if (!inside || !close(reader, start, inside)) return undefined;
    // The brackets count to the place of what they hold, so that a fault underlines them too.
    return { ...inside, start, end: lastEnd(reader) };
  });
}

function readCall(reader: Reader, kind: 'min' | 'max', inside: number): Node | undefined {
  const start = reader.at;
  return deeper(reader, () => {
    advance(reader, inside);
    const of: Node[] = [];
    for (;;) {
      const comma = /^\d+,\d+/u.exec(reader.text.slice(reader.at));
      if (comma) {
        const [first, second] = comma[0].split(',');
        const message = `${quote(comma[0])} can be read two ways. Write “${first}, ${second}” for two numbers, or “${first}.${second}”.`;
        const end = reader.at + comma[0].length;
        return refuse(reader, { code: 'two-ways-comma', message, start: reader.at, end, mend: `${first}, ${second}` });
      }
      const part = apart(reader, () => readSum(reader));
      if (!part) return undefined;
      of.push(part);
      if (reader.text[reader.at] !== ',') break;
      advance(reader, reader.at + 1);
    }
    if (!close(reader, start, of.at(-1)!)) return undefined;
    return node(reader, { kind, of, start, end: lastEnd(reader) });
  });
}

function readRounding(reader: Reader, start: number): Node | undefined {
  return deeper(reader, () => {
    advance(reader, start + 'round'.length);
    const named = reader.known && findName(reader.known, reader.text, reader.at);
    const way = named ? undefined : (/^(up|down)(?![\p{L}\p{N}_])/u.exec(reader.text.slice(reader.at)) ?? undefined);
    if (way) advance(reader, reader.at + way[0].length);
    const before = reader.inRound;
    reader.inRound = true;
    const of = readSum(reader);
    reader.inRound = before;
    if (!of) return undefined;
    if (!atTo(reader)) {
      const message = 'Say what to round to, such as “round up width / 3 to 1/8 in”.';
      return refuse(reader, { code: 'to-missing', message, start, end: of.end });
    }
    advance(reader, reader.at + 2);
    const to = readPart(reader);
    return (
      to && node(reader, { kind: 'round', way: (way?.[1] as 'up' | 'down') ?? 'nearest', of, to, start, end: to.end })
    );
  });
}

function readNumber(reader: Reader): Node | undefined {
  const { text, at: start } = reader;
  const read = readLength(text, start, 'formula');
  if (!read) return undefined;
  if (!read.ok) return refuse(reader, read.fault);
  const { value, edition, under, end } = read.value;
  advance(reader, end);
  if (edition) return node(reader, { kind: 'length', value, edition, start, end });
  return node(reader, { kind: 'number', value, ...(under !== undefined && { under }), start, end });
}

/** A name that is not in the list, or any name where there is no list. */
function readName(reader: Reader): Node | undefined {
  const { text, at: start, known } = reader;
  if (reader.fault) return undefined;
  const words = wordsAt(text, start, reader.inRound);
  if (!words) return refuse(reader, missing(reader, start));
  if (known) return refuse(reader, unknownName(text, words, known));
  advance(reader, words.end);
  return node(reader, { kind: 'name', name: words.name, start, end: words.end });
}

/** Counts the parts, and refuses more than anyone reads. */
function node(reader: Reader, made: Node): Node | undefined {
  if (++reader.parts <= LARGEST) return made;
  const message = 'This formula is too long. Give a part of it a name of its own.';
  return refuse(reader, { code: 'formula-too-long', message, start: 0, end: reader.text.length });
}

function deeper(reader: Reader, read: () => Node | undefined): Node | undefined {
  if (++reader.depth > DEEPEST) {
    const message = 'This formula is nested too deep. Give a part of it a name of its own.';
    return refuse(reader, { code: 'nested-too-deep', message, start: reader.at, end: reader.at + 1 });
  }
  const made = read();
  reader.depth--;
  return made;
}

/** Reads what stands in brackets, where the word `to` of a rounding outside has no say. */
function apart(reader: Reader, read: () => Node | undefined): Node | undefined {
  const before = reader.inRound;
  reader.inRound = false;
  const made = read();
  reader.inRound = before;
  return made;
}

function advance(reader: Reader, to: number): void {
  reader.at = skipBlanks(reader.text, to);
}

/** The end of what was read last, without the blanks after it. */
const lastEnd = (reader: Reader) => reader.text.slice(0, reader.at).trimEnd().length;

const atTo = (reader: Reader) => /^to(?![\p{L}\p{N}_])/u.test(reader.text.slice(reader.at, reader.at + 4));

function refuse(reader: Reader, fault: Fault): undefined {
  reader.fault ??= fault;
  return undefined;
}

function close(reader: Reader, open: number, inside: Node): boolean {
  if (reader.text[reader.at] === ')') {
    advance(reader, reader.at + 1);
    return true;
  }
  if (reader.at < reader.text.length) leftOver(reader, inside);
  const message = 'This bracket is never closed. Put “)” where it should end.';
  refuse(reader, { code: 'bracket-open', message, start: open, end: open + 1 });
  return false;
}

/** Something follows that no operator joins on. */
function leftOver(reader: Reader, before: Node): void {
  const { text, at, known } = reader;
  const rest = text.slice(at);
  const character = String.fromCodePoint(text.codePointAt(at)!);
  const end = at + character.length;
  if (character === ')') {
    const message = 'This bracket closes nothing. Take it out, or put “(” before it.';
    return refuse(reader, { code: 'bracket-shut', message, start: at, end, mend: '' });
  }
  const times = /^[xX](?=[\s\d(])/u.exec(rest);
  if (times) {
    return refuse(reader, { code: 'times-sign', message: 'Write “*” or “×” for times.', start: at, end, mend: '*' });
  }
  if (character === '^' || character === '²') {
    const message = 'There are no powers here. Write a product, such as “width * width”.';
    return refuse(reader, { code: 'power', message, start: at, end });
  }
  const next =
    (known && findName(known, text, at)?.end) ??
    wordsAt(text, at, false)?.end ??
    numberEnd(text, at) ??
    (character === '(' ? end : undefined);
  if (next === undefined) {
    const message = `${quote(character)} has no meaning in a formula.`;
    return refuse(reader, { code: 'stray-sign', message, start: at, end });
  }
  const first = text.slice(before.start, lastEnd(reader));
  const second = text.slice(at, next);
  const message = `A sign such as + or * is missing between ${quote(tail(first))} and ${quote(second)}.`;
  refuse(reader, { code: 'sign-missing', message, start: at, end: next, mend: `* ${second}` });
}

const tail = (text: string) => /[\p{L}\p{N}'"’”.)]+$/u.exec(text)?.[0] ?? text;

function numberEnd(text: string, at: number): number | undefined {
  const read = readLength(text, at, 'formula');
  return read?.ok ? read.value.end : read?.fault.end;
}

function missing({ text }: Reader, at: number): Fault {
  const character = at < text.length ? String.fromCodePoint(text.codePointAt(at)!) : '';
  if (character === '' || '+*×·⋅∗/÷∕),'.includes(character)) {
    const message = character
      ? `A number or a name is missing before ${quote(character)}.`
      : 'A number or a name is missing at the end.';
    const start = character ? at : text.trimEnd().length - 1;
    return { code: 'part-missing', message, start, end: start + 1 };
  }
  const message = `${quote(character)} has no meaning in a formula.`;
  return { code: 'stray-sign', message, start: at, end: at + character.length };
}

function unknownName(text: string, words: Span & { name: string }, known: NameBook): Fault {
  // A hyphen may belong to the name that was meant: “top-stich” for “top-stitch”.
  const hyphened = /^[\p{L}\p{M}\p{N}_'’\s-]*[\p{L}\p{M}\p{N}]/u.exec(text.slice(words.start))?.[0] ?? words.name;
  const meant = closest(words.name, known.names);
  const longer = meant === undefined ? closest(hyphened, known.names) : undefined;
  const end = longer === undefined ? words.end : words.start + hyphened.length;
  return unknown(text.slice(words.start, end), meant ?? longer, words.start, end);
}

/** The fault of a name that nothing has. */
export function unknown(name: string, meant: string | undefined, start: number, end: number): Fault {
  const message = meant
    ? `There is no measure called ${quote(name)}. Do you mean ${quote(meant)}?`
    : `There is no measure called ${quote(name)}.`;
  return { code: 'unknown-name', message, start, end, ...(meant && { mend: meant }) };
}

/** `width / 1/4`: nobody can tell whether the fraction is one number. */
function barefraction(reader: Reader, left: Node, right: Node): boolean {
  const { text } = reader;
  const written = text.slice(right.start, right.end);
  if (!/^\d+[/⁄∕]\d/u.test(written)) return false;
  const message = `${quote(text.slice(left.start, right.end))} can be read two ways. Put brackets: “(${written})”.`;
  refuse(reader, { code: 'two-ways-fraction', message, start: right.start, end: right.end, mend: `(${written})` });
  return true;
}

function namesIn(tree: Node, found: Set<string>): Set<string> {
  if (tree.kind === 'name') found.add(tree.name);
  else if (tree.kind === 'minus') namesIn(tree.of, found);
  else if (tree.kind === 'min' || tree.kind === 'max') for (const part of tree.of) namesIn(part, found);
  else if (tree.kind === 'round') namesIn(tree.to, namesIn(tree.of, found));
  else if ('left' in tree) namesIn(tree.right, namesIn(tree.left, found));
  return found;
}
