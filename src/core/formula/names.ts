import type { Span } from './tree.ts';

/** The names that a formula may use, the longest first, with blanks made single. */
export type NameBook = { names: readonly string[] };

const letter = /\p{L}/u;
const wordPart = /[\p{L}\p{M}\p{N}_]/u;
const blank = /\s/u;

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
  for (let j = 0; j < name.length; j++) {
    if (blank.test(name[j]!)) {
      if (j > 0 && blank.test(name[j - 1]!)) continue;
      const first = i;
      while (i < text.length && blank.test(text[i]!)) i++;
      if (i === first) return undefined;
    } else if (text[i++] !== name[j]) return undefined;
  }
  const whole = !wordPart.test(name.at(-1)!) || i >= text.length || !wordPart.test(text[i]!);
  return whole ? i : undefined;
}

const word = /[\p{L}\p{M}\p{N}_]+(?:['’][\p{L}\p{M}\p{N}_]+)*/uy;

/** The words from `at` up to the next sign, as one name; inside a rounding the word `to` ends them. */
export function wordsAt(text: string, at: number, endAtTo: boolean): (Span & { name: string }) | undefined {
  if (!letter.test(text[at] ?? '')) return undefined;
  const words: string[] = [];
  let end = at;
  for (let next = at; ;) {
    word.lastIndex = next;
    const found = word.exec(text);
    if (!found || (endAtTo && found[0] === 'to')) break;
    words.push(found[0]);
    end = next = word.lastIndex;
    while (next < text.length && blank.test(text[next]!)) next++;
    if (next === end) break;
  }
  return words.length ? { name: words.join(' '), start: at, end } : undefined;
}
