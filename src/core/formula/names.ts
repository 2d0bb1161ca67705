import { skipBlanks } from '../measure/index.ts';
import type { Span } from './tree.ts';

/** The names that a formula may use, the longest first. */
export type NameBook = { names: readonly string[] };

const letter = /\p{L}/u;
const wordPart = /[\p{L}\p{M}\p{Nd}_]/u;
const word = /[\p{L}\p{M}\p{Nd}_]+(?:['’][\p{L}\p{M}\p{Nd}_]+)*/uy;

/** Makes the list ready for `findName`. What holds no letter could hide a number and is left out. */
export function nameBook(names: Iterable<string>): NameBook {
  const usable = [...new Set(names)].filter((name) => letter.test(name));
  return { names: usable.sort((a, b) => b.length - a.length) };
}

/** The longest known name that stands at `at` as whole words, with the index after it. */
export function findName(book: NameBook, text: string, at: number): { name: string; end: number } | undefined {
  for (const name of book.names) {
    const end = endOf(name, text, at);
    if (end !== undefined) return { name, end };
  }
  return undefined;
}

/** Compares sign by sign; any run of blanks in the name fits any run of blanks in the text. */
function endOf(name: string, text: string, at: number): number | undefined {
  let i = at;
  for (let j = 0; j < name.length;) {
    const gap = skipBlanks(name, j);
    if (gap > j) {
      const next = skipBlanks(text, i);
      if (next === i) return undefined;
      [i, j] = [next, gap];
    } else if (text[i++] !== name[j++]) return undefined;
  }
  return endsWord(text, i) || !wordPart.test(name.at(-1)!) ? i : undefined;
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
