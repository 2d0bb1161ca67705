import { error } from '../check-texts.ts';
import type { LessonAround, LessonMistake, WordInLesson } from '../word.ts';

/** What belongs to a step stands between its tags. */
export function insideStep({ name, part }: WordInLesson, { words }: LessonAround): LessonMistake[] {
  const isInside = words.some(
    ({ written: { name: other, part: around } }) =>
      other === 'Step' && around.start < part.start && part.end <= around.end,
  );
  if (isInside) return [];
  return [error(part.start, `<${name}> belongs to a step.`, `Put it between <Step id="…"> and </Step>.`)];
}
