/** What a teacher says of slips: what went wrong, as a table has it, and what to say again to a class. */
import { capital, listed } from '../measure/index.ts';
import type { SlipKind } from './edits.ts';
import { called, type Wording } from './sentences.ts';
import type { Slip } from './slips.ts';

/** What a learner does who makes slips of a kind. */
export const kindInWords: Readonly<Record<SlipKind, string>> = {
  'left-out': 'leaves a part out of the sum',
  'one-side': 'counts once what counts more often',
  alone: 'gives one part for the whole sum',
  unit: 'mixes up units',
  'finished-for-cut': 'gives a finished size for a cut size',
  'cut-for-finished': 'gives a cut size for a finished size',
  twice: 'takes a part twice as often as it counts',
  'one-too-many': 'counts one too many',
  'one-too-few': 'counts one too few',
  'width-height': 'takes width and height for each other',
  'wrong-sign': 'adds what is taken away, or takes away what is added',
  'rounded-down': 'rounds down where the sum says otherwise',
  'rounded-up': 'rounds up where the sum says otherwise',
  'not-rounded': 'does not round',
  'other-mark': 'rounds to another mark',
  'rough-constant': 'works with too few digits',
  half: 'gives half of it',
  whole: 'gives twice as much',
  brackets: 'multiplies or divides a part, and not the whole',
  'smaller-for-larger': 'takes the smaller of two sizes',
  'larger-for-smaller': 'takes the larger of two sizes',
};

/**
 * A slip as a teacher says it to a class that made it: what to do, and the reason that a learner reads. What an author
 * wrote for a slip stands as it is.
 *
 * @param own whether the sentence is an author's
 * @example sayToClass(slip, wordingOf(pattern)) // => 'Take the ease into the sum. It counts twice.'
 */
export function sayToClass({ kind, names, sentence }: Slip, wording: Wording, own = kind === 'own'): string {
  if (own || kind === 'own') return sentence;
  const all = [...new Set(names.map((name) => called(name, wording)))];
  const thing = listed(all) || 'each part';
  const isOne = all.length < 2;
  /** Why, as the learner reads it. */
  const reason = sentence.replace(/^[^.]*\.\s*/u, '');
  const and = (lead: string) => (reason === '' ? lead : `${lead} ${reason}`);
  switch (kind) {
    case 'left-out':
      return and(`Take ${thing} into the sum.`);
    case 'one-side':
      return and(`Do not count ${thing} only once.`);
    case 'alone':
      return `${capital(thing)} alone ${isOne ? 'is' : 'are'} not the answer. The rest of the sum belongs to it.`;
    case 'twice':
      return and(`Do not take ${thing} too often.`);
    case 'wrong-sign':
      return and(`Think of what is added and what is taken away: ${thing}.`);
    case 'one-too-many':
      return `Count ${thing} again: there is one fewer.`;
    case 'one-too-few':
      return `Count ${thing} again: there is one more.`;
    case 'rounded-down':
    case 'rounded-up':
    case 'not-rounded':
    case 'other-mark':
      return and('Mind the rounding.');
    case 'rough-constant':
      return and('Work with more digits.');
    case 'half':
      return 'Give the whole of it, and not half.';
    case 'whole':
      return names.length === 0 ? 'Give it once, and not twice as much.' : `Only half of ${thing} is wanted.`;
    case 'brackets':
      return `Multiply or divide the whole sum in the brackets, and not ${thing} alone.`;
    case 'smaller-for-larger':
      return 'Of two sizes, the larger one is wanted here.';
    case 'larger-for-smaller':
      return 'Of two sizes, the smaller one is wanted here.';
    case 'finished-for-cut':
      return 'Ask yourselves: is it the cut size or the finished size? Here the cut size is wanted.';
    case 'cut-for-finished':
      return 'Ask yourselves: is it the cut size or the finished size? Here the finished size is wanted.';
    case 'width-height':
      return and('Look which way is asked, across or up.');
    case 'unit':
      return 'Write the unit beside each number, and read the ruler in that unit.';
  }
}
