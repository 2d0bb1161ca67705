import { skipBlanks } from '../measure/index.ts';
import type { Span } from './tree.ts';

/** The names that a formula may use: as they are, and by their first character, the longest first. */
export type NameBook = { names: readonly string[]; byFirst: ReadonlyMap<string, readonly Entry[]> };

/** A name, and what it looks like with its blanks made single. */
type Entry = { name: string; plain: string };

const letter = /\p{L}/u;
const wordPart = /[\p{L}\p{M}\p{Nd}_]/u;
const word = /[\p{L}\p{M}\p{Nd}_]+(?:['’][\p{L}\p{M}\p{Nd}_]+)*/uy;

/** It saves time alone: an array that is read-only makes the same book each time. */
const books = new WeakMap<readonly string[], NameBook>();

/**
 * Makes names ready for `findName`. What holds no letter could hide a number and is left out. Of one array the book is
 * made once, since all formulas of a project are read with it.
 */
export function nameBook(names: Iterable<string>): NameBook {
  if (!Array.isArray(names)) return makeBook(names);
  let book = books.get(names);
  if (!book) books.set(names, (book = makeBook(names)));
  return book;
}

function makeBook(names: Iterable<string>): NameBook {
  const usable = [...new Set(names)].filter((name) => letter.test(name));
  const byFirst = new Map<string, Entry[]>();
  for (const name of usable) {
    const plain = name.trim().replace(/\s+/gu, ' ');
    const entries = byFirst.get(plain[0]!);
    if (entries) entries.push({ name, plain });
    else byFirst.set(plain[0]!, [{ name, plain }]);
  }
  for (const entries of byFirst.values()) entries.sort((a, b) => b.plain.length - a.plain.length);
  return { names: usable, byFirst };
}

/** The longest known name that stands at `at` as whole words, with the index after it. */
export function findName({ byFirst }: NameBook, text: string, at: number): { name: string; end: number } | undefined {
  for (const { name, plain } of byFirst.get(text[at] ?? '') ?? []) {
    const end = endOf(plain, text, at);
    if (end !== undefined && (endsWord(text, end) || !wordPart.test(plain.at(-1)!))) return { name, end };
  }
  return undefined;
}

/** Where a name ends in the text; any run of blanks there fits the single one in the name. */
function endOf(plain: string, text: string, at: number): number | undefined {
  let i = at;
  for (let j = 0; j < plain.length; j++) {
    if (plain[j] === ' ') {
      const next = skipBlanks(text, i);
      if (next === i) return undefined;
      i = next;
    } else if (text[i++] !== plain[j]) return undefined;
  }
  return i;
}

/** Whether no word goes on at `at`. */
const endsWord = (text: string, at: number) => at >= text.length || !wordPart.test(text[at]!);

/** Whether one of the words that mean something in a formula stands at `at`, by itself. */
export function findWord<W extends string>(text: string, at: number, ...words: W[]): W | undefined {
  return words.find((each) => text.startsWith(each, at) && endsWord(text, at + each.length));
}

/** The words from `at` up to the next sign, as one name; inside a rounding the word `to` ends them. */
export function wordsAt(text: string, at: number, endAtTo: boolean): (Span & { name: string }) | undefined {
  if (!letter.test(text[at] ?? '')) return undefined;
  const words: string[] = [];
  let end = at;
  for (let next = at; ; next = skipBlanks(text, end)) {
    word.lastIndex = next;
    const found = word.exec(text)?.[0];
    if (found === undefined || (endAtTo && found === 'to')) break;
    words.push(found);
    end = next + found.length;
  }
  return words.length > 0 ? { name: words.join(' '), start: at, end } : undefined;
}
