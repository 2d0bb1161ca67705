import { quote } from '../../core/measure/index.ts';
import { calledBy } from '../content/lesson-questions.ts';
import type { WrittenAttribute, WrittenWord } from '../content/lesson-text.ts';
import type { Said } from '../content/problem.ts';
import { anyOf, didYouMean } from '../content/wording.ts';

/** Why a question of the lesson cannot come up in a set, by its word; the others can. */
const refused: Readonly<Record<string, { because: string; mend: string }>> = {
  AskSize: { because: 'takes a sum, and a set asks for those by itself.', mend: 'Write its sum into of or asks.' },
  Practice: { because: 'is a set of its own.', mend: 'Write its questions into this set, or take it out.' },
  MyPiece: { because: 'measures a piece, and cannot be asked again.', mend: 'Take it out.' },
  Predict: { because: 'is a guess, and a guess is never wrong.', mend: 'Ask it with <AskChoice>, or take it out.' },
};

/**
 * What is wrong with the questions that a set names in `also`: each must stand in the lesson, and once in the set.
 *
 * @param words all of the lesson
 */
export function alsoProblems(attributes: readonly WrittenAttribute[], words: readonly WrittenWord[]): Said[] {
  const [also, rounds] = ['also', 'rounds'].map((name) => attributes.find((attribute) => attribute.name === name));
  if (!also || !Array.isArray(also.value)) return [];
  const error = (message: string, mend: string): Said => ({ at: also.at, severity: 'error', message, mend });
  const named = words.flatMap((word) => {
    const name = nameOf(word);
    return name === undefined ? [] : [{ name, refused: refused[word.name] }];
  });
  const fitting = named.flatMap(({ name, refused }) => (refused ? [] : [name]));
  const names = also.value.map(String);
  if (rounds?.value === 1)
    return [
      error('also: a set that ends with the first right answer never comes to these.', 'Write rounds={2} or more.'),
    ];
  return names.flatMap((name, i): Said[] => {
    if (names.indexOf(name) < i) return [error(`also: ${quote(name)} stands there twice.`, 'Keep one of them.')];
    if (fitting.includes(name)) return [];
    const other = named.find((one) => one.name === name)?.refused;
    if (other) return [error(`also: ${quote(name)} ${other.because}`, other.mend)];
    const mend =
      didYouMean(name, fitting) ??
      (fitting.length > 0 ? `There are: ${anyOf(fitting)}.` : 'Write the question into the lesson, and name it here.');
    return [error(`also: no question of this lesson is called ${quote(name)}.`, mend)];
  });
}

/** The name that a word of the lesson goes by. */
function nameOf({ name, attributes }: WrittenWord): string | undefined {
  const given = Object.fromEntries(attributes.map(({ name, value }) => [name, value]));
  if (name === 'MyPiece') return typeof given.piece === 'string' ? given.piece : undefined;
  const called = calledBy(name, given) ?? given.id ?? (name === 'Practice' ? given.of : undefined);
  return typeof called === 'string' ? called : undefined;
}
