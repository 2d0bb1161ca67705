import type { LessonMistake, WordInLesson } from '../word.ts';
import { placeOf } from './marks.ts';

/** Marks whose place cannot be read, or lies outside of the picture. */
export function check({ attributes }: WordInLesson): LessonMistake[] {
  const marks = attributes.find(({ name }) => name === 'marks');
  if (!marks || typeof marks.value !== 'object' || marks.value === null) return [];
  return Object.keys(marks.value).flatMap((place): LessonMistake[] => {
    if (placeOf(place)) return [];
    const message = `<Picture> marks: “${place}” is no place on a picture.`;
    const fix = 'Write two numbers from 0 to 100, in hundredths: from the left and from the top, as in "30 40".';
    return [{ at: marks.at, severity: 'error', message, fix }];
  });
}
