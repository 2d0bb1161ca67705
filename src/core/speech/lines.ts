/** The lines of a recording as one text, and the second at which each word of it is said. */

/** One cue of captions, or one line of a transcript: from one second to another. */
export type SpokenLine = { from: number; to: number; text: string };

/** Where something stands in the lines: the line it begins in and the one it ends in, with UTF-16 places in each. */
export type SpokenPlace = { line: number; start: number; endLine: number; end: number };

/** A word of a recording: its places in the whole text, its line, and the seconds from and to which it is said. */
export type SpokenWord = { text: string; start: number; end: number; line: number; from: number; to: number };

/** All lines as one text, a blank between them, so that what goes over the end of a line is read as one. */
export type SpokenText = {
  lines: readonly SpokenLine[];
  text: string;
  begins: readonly number[];
  words: readonly SpokenWord[];
};

/**
 * Joins lines. Where a line is long, the time of a word is reckoned by the words before it: people speak evenly.
 * A line that ends before it begins lasts no time.
 */
export function joinLines(lines: readonly SpokenLine[]): SpokenText {
  const begins: number[] = [];
  const words: SpokenWord[] = [];
  let text = '';
  for (const [line, { from, to, text: said }] of lines.entries()) {
    if (line > 0) text += ' ';
    const begin = text.length;
    begins.push(begin);
    text += said.replace(/\s/gu, ' ');
    const found = [...said.matchAll(/\S+/gu)];
    const each = Math.max(0, to - from) / Math.max(1, found.length);
    for (const [k, match] of found.entries()) {
      const start = begin + match.index;
      const second = from + k * each;
      words.push({ text: match[0], start, end: start + match[0].length, line, from: second, to: second + each });
    }
  }
  return { lines, text, begins, words };
}

/** The word that a place of the text lies in or before; the last one behind the end. Undefined in an empty text. */
export function wordAt({ words }: SpokenText, place: number): SpokenWord | undefined {
  let [low, high] = [0, words.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (words[middle]!.end <= place) low = middle + 1;
    else high = middle;
  }
  return words[low];
}

/** The second at which a place of the text is said. */
export const secondAt = (spoken: SpokenText, place: number): number => wordAt(spoken, place)?.from ?? 0;

/** Places of the text as places in its lines. */
export function placeIn(spoken: SpokenText, start: number, end: number): SpokenPlace {
  const line = wordAt(spoken, start)?.line ?? 0;
  const endLine = wordAt(spoken, Math.max(start, end - 1))?.line ?? line;
  return { line, start: start - (spoken.begins[line] ?? 0), endLine, end: end - (spoken.begins[endLine] ?? 0) };
}
