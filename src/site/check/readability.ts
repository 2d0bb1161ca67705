import type { Prose } from '../content/lesson-prose.ts';

/** How long a text is, and for whom. */
export type Readability = {
  words: number;
  /** To read it once, without the work. */
  minutes: number;
  /** The age from which it reads easily, in years; 18 stands for a trained reader. */
  age: number;
};

/** Words a minute of adults who read for themselves, English non-fiction: M. Brysbaert, 2019, 238. */
const PACE = 238;

/**
 * Measures running text by the Automated Readability Index (R. J. Senter and E. A. Smith, AMRL-TR-66-220, 1967): 4.71
 * times the letters of a word and 0.5 times the words of a sentence, less 21.43, is the school grade. A grade is read
 * at five years more, American practice. It is made for English.
 *
 * @example readingOf([{ kind: 'paragraph', start: 0, text: 'Fold the strip. Press it.' }]).words // => 5
 */
export function readabilityOf(prose: readonly Prose[]): Readability {
  const text = prose
    .filter(({ kind }) => kind === 'paragraph')
    .map(({ text }) => text.replaceAll('\u2060', ''))
    .join('\n\n');
  // A lesson word in a sentence reads as one word.
  const words = text.match(/[\p{L}\p{N}][\p{L}\p{N}'’-]*|\ufffc+/gu) ?? [];
  const letters = words.reduce((sum, word) => sum + (word[0] === '\ufffc' ? 4 : word.replace(/['’-]/g, '').length), 0);
  const sentences = text.match(/[.!?:](?=\s|$)|[^.!?:\s](?=\s*\n\n|\s*$)/g)?.length ?? 1;
  const grade = words.length === 0 ? 0 : 4.71 * (letters / words.length) + 0.5 * (words.length / sentences) - 21.43;
  return {
    words: words.length,
    minutes: Math.ceil(words.length / PACE),
    age: Math.min(18, Math.max(5, Math.round(grade + 5))),
  };
}
