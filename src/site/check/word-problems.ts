import { wordCalled } from '../../../components/words/index.ts';
import type { LessonAround } from '../../../components/words/word.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import type { LessonEntry } from '../content/read-content.ts';
import type { WorkedOut } from './project-problems.ts';

/** The mistakes that each word of a lesson tells of itself: a question without an answer, an edge that the piece has not. */
export function wordProblems(entry: LessonEntry, worked: WorkedOut): AtOffset[] {
  const words = entry.lesson.words.map((written) => ({ written, word: wordCalled(written.name) }));
  const around: LessonAround = { project: worked, words };
  return words.flatMap(({ written, word }) => word?.check?.(written, around) ?? []);
}
