import {
  endOfText,
  fail,
  ok,
  readLength,
  skipBlanks,
  type Diagnostic,
  type InText,
  type Result,
  type WrittenLength,
} from '../measure/index.ts';
import { findName, findWord, nameBook, wordsAt, type NameBook } from './names.ts';
import * as refusals from './refusals.ts';
import type { Formula, Node, Operator } from './tree.ts';

/** Brackets, signs and calls may stand inside each other this deep; nobody reads deeper. */
const DEEPEST = 100;

/** The most parts (numbers, names, signs) of one formula. It bounds the depth of the tree, too. */
const LARGEST = 500;

/**
 * Reads a formula as people write it: numbers, lengths with a unit, named measures, `+ - * / × ÷ ·`, brackets, `pi`,
 * `root of X`, `min(a, b, ...)`, `max(a, b, ...)`, `round up X to Y`, `round down X to Y` and `round X to Y`. The X of a
 * root and the Y of a rounding are one number, name or bracket: what comes after it no longer belongs to them.
 *
 * `names` are all the names that the formula may use; an array of them must not change. They may hold blanks, digits
 * and words such as `to`; the longest one that fits wins, also over the words above. Without `names` the words up to the
 * next sign make a name.
 * A bare number is a plain number in either edition. What cannot be read, or can be read two ways, is a fault with its
 * place.
 *
 * @example parseFormula('packet width + 2 * ease') // => { ok: true, value: { names: ['packet width', 'ease'], ... } }
 * @example parseFormula('2 + * 3') // => { ok: false, fault: { code: 'part-missing', start: 4, end: 5, ... } }
 */
export function parseFormula(text: string, options: { names?: Iterable<string> } = {}): Result<Formula> {
  const reader: Reader = {
    text,
    at: skipBlanks(text, 0),
    book: options.names && nameBook(options.names),
    depth: 0,
    parts: 0,
    endAtTo: false,
    inList: false,
    fault: undefined,
  };
  if (reader.at === text.length) return fail(refusals.empty(text));
  const tree = readSum(reader);
  if (tree && reader.at < text.length) refuse(reader, refusals.leftOver(text, reader.at, tree, reader.book));
  return tree && !reader.fault ? ok({ text, tree, names: [...namesIn(tree)] }) : fail(reader.fault!);
}

/** The state of one reading. Each reading function gives undefined once there is a fault. */
type Reader = {
  readonly text: string;
  readonly book: NameBook | undefined;
  /** The next character to read, never a blank. */
  at: number;
  depth: number;
  parts: number;
  /** Inside a rounding, where the word `to` ends what is rounded. */
  endAtTo: boolean;
  /** Inside `min(…)` or `max(…)`, where a comma parts. */
  inList: boolean;
  fault: Diagnostic<InText> | undefined;
};

const sumSigns: Record<string, Operator> = { '+': '+', '-': '-', '−': '-', '–': '-' };
const timesSigns: Record<string, Operator> = { '*': '*', '×': '*', '·': '*', '⋅': '*', '∗': '*' };
const productSigns: Record<string, Operator> = { ...timesSigns, '/': '/', '÷': '/', '∕': '/' };

const readSum = (reader: Reader): Node | undefined => readChain(reader, sumSigns, readProduct);
const readProduct = (reader: Reader): Node | undefined => readChain(reader, productSigns, readSigned);

/** Parts joined by signs of one rank, taken from left to right. */
function readChain(
  reader: Reader,
  signs: Record<string, Operator>,
  readEach: (reader: Reader) => Node | undefined,
): Node | undefined {
  const { text } = reader;
  let left = readEach(reader);
  while (left) {
    const kind = signs[text[reader.at] ?? ''];
    if (!kind) return left;
    advance(reader, reader.at + 1);
    const right = readEach(reader);
    if (!right) return undefined;
    if (kind === '/' && /^\d+[/∕]\d/u.test(text.slice(right.start, right.end))) {
      return refuse(reader, refusals.twoWaysFraction(text, left, right));
    }
    left = count(reader, { kind, left, right, start: left.start, end: right.end });
  }
  return undefined;
}

function readSigned(reader: Reader): Node | undefined {
  const start = reader.at;
  if (sumSigns[reader.text[start] ?? ''] !== '-') return readPart(reader);
  advance(reader, start + 1);
  const of = deeper(reader, readSigned);
  return of && count(reader, { kind: 'minus', of, start, end: of.end });
}

/** One name, number, length, bracket, call or rounding. Known names go before everything else. */
function readPart(reader: Reader): Node | undefined {
  const { text, at, book } = reader;
  const name = book && findName(book, text, at);
  if (name) {
    advance(reader, name.end);
    return count(reader, { kind: 'name', name: name.name, start: at, end: name.end });
  }
  if (text[at] === '(') return deeper(reader, readBracket);
  const call = findWord(text, at, 'min', 'max');
  if (call && text[skipBlanks(text, at + call.length)] === '(') return deeper(reader, () => readCall(reader, call));
  // Without a list of names `round flap` may be one; a rounding says somewhere what it rounds to.
  const rounding = findWord(text, at, 'round') && (book !== undefined || /[\s)]to\s/u.test(text.slice(at)));
  if (rounding) return deeper(reader, readRounding);
  const pi = piAt(reader);
  if (pi !== undefined) {
    advance(reader, pi);
    return count(reader, { kind: 'pi', start: at, end: pi });
  }
  if (rootAt(text, at) !== undefined) return deeper(reader, readRoot);
  const number = readLength(text, at, 'formula');
  return number ? readNumber(reader, number) : readName(reader);
}

function readBracket(reader: Reader): Node | undefined {
  const start = reader.at;
  advance(reader, start + 1);
  const inside = apart(reader, false, readSum);
  const end = inside && close(reader, start, inside);
  return end === undefined ? undefined : { ...inside!, start, end };
}

function readCall(reader: Reader, kind: 'min' | 'max'): Node | undefined {
  const start = reader.at;
  const open = skipBlanks(reader.text, start + kind.length);
  const of: Node[] = [];
  advance(reader, open + 1);
  for (;;) {
    const part = apart(reader, true, readSum);
    if (!part) return undefined;
    of.push(part);
    if (reader.text[reader.at] !== ',') break;
    advance(reader, reader.at + 1);
  }
  const end = close(reader, open, of.at(-1)!);
  return end === undefined ? undefined : count(reader, { kind, of, start, end });
}

function readRounding(reader: Reader): Node | undefined {
  const { text, at: start, book } = reader;
  advance(reader, start + 'round'.length);
  // A measure may be called “up strip”.
  const named = book && findName(book, text, reader.at);
  const way = named ? undefined : findWord(text, reader.at, 'up', 'down');
  if (way) advance(reader, reader.at + way.length);
  const before = reader.endAtTo;
  reader.endAtTo = true;
  const of = readSum(reader);
  reader.endAtTo = before;
  if (!of) return undefined;
  if (!findWord(text, reader.at, 'to')) return refuse(reader, refusals.withoutTo(start, of.end));
  advance(reader, reader.at + 'to'.length);
  const to = readPart(reader);
  return to && count(reader, { kind: 'round', way: way ?? 'nearest', of, to, start, end: to.end });
}

/** Where pi ends, by its word or its sign, if it stands here. Without a list of names “pi strip” may be one. */
function piAt({ text, at, book, endAtTo }: Reader): number | undefined {
  if (text[at] === 'π') return at + 1;
  const isWord = findWord(text, at, 'pi') && (book !== undefined || wordsAt(text, at, endAtTo)?.name === 'pi');
  return isWord ? at + 'pi'.length : undefined;
}

/** Where the words `root of` end, if they stand at `at`. */
function rootAt(text: string, at: number): number | undefined {
  const of = findWord(text, at, 'root') && skipBlanks(text, at + 'root'.length);
  return of !== undefined && findWord(text, of, 'of') ? of + 'of'.length : undefined;
}

function readRoot(reader: Reader): Node | undefined {
  const start = reader.at;
  advance(reader, rootAt(reader.text, start)!);
  const of = readPart(reader);
  return of && count(reader, { kind: 'root', of, start, end: of.end });
}

function readNumber(reader: Reader, read: Result<WrittenLength>): Node | undefined {
  const { text, at: start } = reader;
  const comma = reader.inList ? /^\d*,\d+/u.exec(text.slice(start)) : null;
  if (comma) return refuse(reader, refusals.twoWaysComma(text, start, start + comma[0].length));
  if (!read.ok) return refuse(reader, read.fault);
  const { value, edition, bare, end } = read.value;
  advance(reader, end);
  if (edition) return count(reader, { kind: 'length', value, edition, start, end });
  return count(reader, { kind: 'number', value, ...(bare?.fraction && { under: bare.under }), start, end });
}

/** A name where there is no list of them; with a list, the words that should have been a name of it. */
function readName(reader: Reader): Node | undefined {
  const { text, at, book } = reader;
  const words = wordsAt(text, at, reader.endAtTo);
  if (!words) return refuse(reader, refusals.partMissing(text, at));
  if (book) return refuse(reader, refusals.unknownWords(text, words, book));
  advance(reader, words.end);
  return count(reader, { kind: 'name', ...words });
}

/** Passes a part on, unless there are more of them than anyone reads. */
function count(reader: Reader, made: Node): Node | undefined {
  return ++reader.parts > LARGEST ? refuse(reader, refusals.tooLong(reader.text)) : made;
}

/** Reads one level further inside. */
function deeper(reader: Reader, read: (reader: Reader) => Node | undefined): Node | undefined {
  if (++reader.depth > DEEPEST) return refuse(reader, refusals.tooDeep(reader.at));
  const made = read(reader);
  reader.depth--;
  return made;
}

/** Reads what stands in brackets, where the word `to` of a rounding outside has no say. */
function apart(reader: Reader, inList: boolean, read: (reader: Reader) => Node | undefined): Node | undefined {
  const before = { endAtTo: reader.endAtTo, inList: reader.inList };
  Object.assign(reader, { endAtTo: false, inList });
  const made = read(reader);
  Object.assign(reader, before);
  return made;
}

/** Reads the closing bracket and gives the index after it. */
function close(reader: Reader, open: number, inside: Node): number | undefined {
  const { text, at, book } = reader;
  if (text[at] === ')') {
    advance(reader, at + 1);
    return at + 1;
  }
  const atEnd = endOfText(text) <= at;
  return refuse(reader, atEnd ? refusals.leftOpen(open) : refusals.leftOver(text, at, inside, book));
}

function advance(reader: Reader, to: number): void {
  reader.at = skipBlanks(reader.text, to);
}

function refuse(reader: Reader, fault: Diagnostic<InText>): undefined {
  reader.fault ??= fault;
}

/** The names in a tree, each once, in order of appearance. */
export function namesIn(tree: Node, found: Set<string> = new Set()): Set<string> {
  if (tree.kind === 'name') found.add(tree.name);
  else if (tree.kind === 'minus' || tree.kind === 'root') namesIn(tree.of, found);
  else if (tree.kind === 'min' || tree.kind === 'max') for (const part of tree.of) namesIn(part, found);
  else if (tree.kind === 'round') namesIn(tree.to, namesIn(tree.of, found));
  else if ('left' in tree) namesIn(tree.right, namesIn(tree.left, found));
  return found;
}
