import { didYouMean, makeUp, pointAtVisible, quote } from '../../../src/core/index.ts';
import { attributeOf, error } from '../check-texts.ts';
import type { LessonAround, LessonMistake, WordInLesson } from '../word.ts';

const OTHER = 'Ask for another step, or look from the other side.';

/** What is asked for shows after the step, and is not all that shows. */
export function check(written: WordInLesson, { project: { variants } }: LessonAround): LessonMistake[] {
  const [step, shows, from] = ['step', 'shows', 'from'].map((name) => attributeOf(written, name));
  if (typeof step?.value !== 'string' || typeof shows?.value !== 'string') return [];
  const [id, wanted] = [step.value, shows.value];
  const side = from?.value === 'back' ? 'back' : 'front';
  const pieces = [...new Set(variants.flatMap(({ inch }) => Object.keys(inch.pieces)))];
  const known = ['right side', 'wrong side', ...pieces];
  if (!known.includes(wanted)) {
    const fix = didYouMean(wanted, known) ?? 'Write right side, wrong side, or the name of a piece.';
    return [error(shows.at, `shows: there is no side or piece ${quote(wanted)}.`, fix)];
  }
  const works = variants.flatMap(({ inch }) =>
    makeUp(inch)
      .filter((one) => one.id === id)
      .map(({ after }) => pointAtVisible(after, side, wanted, inch)),
  );
  if (works.length === 0) return [];
  const found = works.find((one) => one !== undefined);
  if (!found) return [error(shows.at, `shows: seen from the ${side}, nothing of it shows after that step.`, OTHER)];
  if (found.spots.every(({ right }) => right))
    return [error(shows.at, `shows: seen from the ${side}, all that shows after that step is right.`, OTHER)];
  return [];
}
