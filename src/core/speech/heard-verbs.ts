/** Which verbs a sentence tells for sure. */
import { verbNames, type VerbName } from '../steps/index.ts';
import { saidFor } from './said-verbs.ts';
import { phraseAt, plainWords, stem } from './stems.ts';

type Phrase = { verb: VerbName; stems: readonly string[] };

/** What tells of one verb alone. */
const ownPhrases: readonly Phrase[] = verbNames.flatMap((verb) =>
  saidFor(verb).flatMap((phrase) => {
    const others = verbNames.some((other) => other !== verb && saidFor(other).includes(phrase));
    return others ? [] : [{ verb, stems: plainWords(phrase).map(stem) }];
  }),
);

/**
 * The verbs that a sentence tells for sure, in the order in which they are said. What is pressed beside is no other step,
 * and a word that is part of a longer phrase of another verb tells nothing by itself.
 *
 * @example heardVerbs('Now fuse it to the wrong side, and press.') // => ['fuse']
 */
export function heardVerbs(sentence: string): VerbName[] {
  const said = plainWords(sentence).map(stem);
  const found = ownPhrases.flatMap(({ verb, stems }) =>
    said.flatMap((word, first) => {
      const last = word === stems[0] ? phraseAt(said, stems, first) : -1;
      return last < 0 ? [] : [{ verb, first, last, words: stems.length }];
    }),
  );
  const own = found.filter(
    (one) =>
      !found.some(
        (other) =>
          other.verb !== one.verb && other.words > one.words && other.first <= one.last && other.last >= one.first,
      ),
  );
  const verbs = [...new Set(own.sort((a, b) => a.first - b.first).map(({ verb }) => verb))];
  return verbs.length > 1 ? verbs.filter((verb) => verb !== 'press') : verbs;
}
