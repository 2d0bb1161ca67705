/** Texts that nobody meant well: pieces put together, and sound texts with something changed in them. */
import type { Chance } from './chance.ts';

/** Signs that have broken a program before: blanks and marks that are not seen, halves of a sign, other writings. */
export const ODD = [
  ...[
    '\u0000',
    '\t',
    '\r',
    '\n',
    '\r\n',
    '\u00a0',
    '\u00ad',
    '\u200b',
    '\u200d',
    '\u202e',
    '\u2028',
    '\u2060',
    '\ufeff',
  ],
  ...[
    '\ud800',
    '\udc00',
    '\ufffd',
    '👩🏽‍🏭',
    'é',
    'e\u0301',
    'ﬁ',
    '١٢',
    '½',
    '⅞',
    '¾',
    '″',
    '′',
    '−',
    '＝',
    '＋',
    '＠',
    '“',
    '’',
  ],
  ...['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'NaN', 'Infinity', '-0', '1e999', '1e-999', '0x10'],
];

/** So many pieces, one after the other. */
export function piecesOf(from: Chance, pieces: readonly string[], most: number): string {
  let text = '';
  for (let left = from.below(most) + 1; left > 0; left--) text += from.of(pieces);
  return text;
}

/** A sound text with up to `most` changes: lines gone, twice, exchanged; signs gone, put in; words in place of others. */
export function mutated(sound: string, from: Chance, words: readonly string[], most = 3): string {
  let text = sound;
  for (let left = from.below(most) + 1; left > 0; left--) text = changed(text, from, words);
  return text;
}

function changed(text: string, from: Chance, words: readonly string[]): string {
  const lines = text.split('\n');
  const [at, other] = [from.below(lines.length), from.below(lines.length)];
  const place = from.below(text.length + 1);
  switch (from.below(9)) {
    case 0:
      return lines.toSpliced(at, 1).join('\n');
    case 1:
      return lines.toSpliced(at, 0, lines[other]!).join('\n');
    case 2:
      return lines.with(at, lines[other]!).with(other, lines[at]!).join('\n');
    case 3:
      return text.slice(0, place) + text.slice(place + 1 + from.below(3));
    case 4:
      return text.slice(0, place) + from.of(ODD) + text.slice(place);
    case 5:
      return from.often(0.2) ? text.slice(0, place) : text.slice(0, place) + from.of(words) + text.slice(place);
    case 6:
      return lines.with(at, `${' '.repeat(from.below(4))}${lines[at]!}`).join('\n');
    default: {
      // The value of a line, or one of its words, is another.
      const line = lines[at]!;
      const word = from.often(0.5) ? /(?<=: ).+$/u : /[\p{L}\p{N}./]+/u;
      return lines
        .with(
          at,
          line.replace(word, () => from.of(words)),
        )
        .join('\n');
    }
  }
}
