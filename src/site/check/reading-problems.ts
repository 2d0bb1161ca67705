import type { AtOffset } from '../content/diagnostic.ts';
import { readabilityOf } from './readability.ts';
import type { LessonEntry } from '../content/read-content.ts';

/** Plain words for grown-ups read easily from about this age: common practice, no source. */
const OLDEST = 14;
/** Of fewer words nothing can be told. */
export const FEWEST = 100;

/** A note where a lesson is hard to read, or takes longer to read than it says it takes. */
export function readingProblems(entry: LessonEntry, language: string): AtOffset[] {
  if (!entry.value) return [];
  const { words, minutes, age } = readabilityOf(entry.lesson.prose);
  const notes: AtOffset[] = [];
  if (words >= FEWEST && age > OLDEST && /^en\b/.test(language)) {
    const message = `This lesson reads like a text for ${age} years and up.`;
    notes.push({ at: 0, severity: 'note', message, fix: 'Shorter sentences and plainer words make it easier.' });
  }
  if (minutes > entry.value.minutes) {
    const message = `It takes about ${minutes} minutes to read, and the lesson says ${entry.value.minutes}.`;
    notes.push({ at: 0, severity: 'note', message, fix: 'Give it more minutes, or part it in two.' });
  }
  return notes;
}
