import { quote } from './diagnostic.ts';

/**
 * The known word that a misspelt one most likely stands for, or none when nothing is near.
 *
 * Near means few slips of the keyboard: letters left out, added, exchanged with a neighbour, or wrong. One slip is
 * allowed in words of two to five letters, and one more for every three letters beyond. Capitals, hyphens and
 * underscores do not count as slips. Of equally near words one with the same first letter wins, for people seldom get
 * that one wrong; then the first one known. Where nothing is near, a name of several words that alone holds all the
 * words asked for is taken.
 *
 * @example closest('packet widht', ['ease', 'packet width']) // => 'packet width'
 * @example closest('strip', ['panel width', 'strip length']) // => 'strip length'
 */
export function closest(word: string, known: Iterable<string>): string | undefined {
  const wanted = plain(word);
  const candidates = [...known];
  let best: string | undefined;
  let fewest = wanted.length < 2 ? 0 : Math.max(1, Math.floor(wanted.length / 3));
  for (const candidate of candidates) {
    const slips = distance(wanted, plain(candidate), fewest);
    if (slips > fewest) continue;
    const nearer = best === undefined || slips < fewest || (begins(candidate, wanted) && !begins(best, wanted));
    if (nearer) best = candidate;
    fewest = slips;
  }
  return best ?? onlyOneHolding(wanted, candidates);
}

/**
 * The likeliest mend of a misspelt name, as a question.
 *
 * @example didYouMean('sem', ['seam', 'ease']) // => 'Did you mean “seam”?'
 */
export function didYouMean(word: string, known: Iterable<string>): string | undefined {
  const near = closest(word, known);
  return near === undefined ? undefined : `Did you mean ${quote(near)}?`;
}

/** Joins with commas and a last “or”: a, b or c. */
export function anyOf(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}

const begins = (candidate: string, wanted: string) => plain(candidate)[0] === wanted[0];

const plain = (word: string) =>
  word
    .slice(0, 100)
    .toLowerCase()
    .replace(/[\s_-]+/gu, ' ')
    .trim();

function onlyOneHolding(wanted: string, candidates: string[]): string | undefined {
  if (wanted.length < 3) return undefined;
  const words = wanted.split(' ');
  const holding = candidates.filter((candidate) => {
    const held = plain(candidate).split(' ');
    return words.every((word) => held.includes(word));
  });
  return holding.length === 1 ? holding[0] : undefined;
}

/**
 * Slips between two words: the optimal string alignment distance. Gives up, with Infinity, once it must exceed `most`.
 */
function distance(a: string, b: string, most: number): number {
  if (Math.abs(a.length - b.length) > most) return Infinity;
  let before: number[] = [];
  let above = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let slips = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) slips = Math.min(slips, before[j - 2]! + 1);
      row.push(slips);
    }
    before = above;
    above = row;
  }
  return above[b.length]! <= most ? above[b.length]! : Infinity;
}
