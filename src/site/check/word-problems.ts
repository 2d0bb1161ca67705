import { wordCalled } from '../../../components/words/index.ts';
import type { LessonAround, WordInLesson } from '../../../components/words/word.ts';
import { bracketsIn } from '../../core/formula/index.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import type { LessonEntry } from '../content/read-content.ts';
import type { WorkedOut } from './project-problems.ts';

/** The mistakes that each word of a lesson tells of itself: a question without an answer, an edge that the piece has not. */
export function wordProblems(entry: LessonEntry, worked: WorkedOut): AtOffset[] {
  const words = [...entry.lesson.words, ...inBrackets(entry)].map((written) => ({
    written,
    word: wordCalled(written.name),
  }));
  const around: LessonAround = { project: worked, words };
  return words.flatMap(({ written, word }) => word?.check?.(written, around) ?? []);
}

/** The sizes in brackets among the prose, as the lesson words that a page makes of them. */
const inBrackets = ({ lesson }: LessonEntry): WordInLesson[] =>
  lesson.prose.flatMap(({ text, start }) =>
    bracketsIn(text).map(({ start: from, end, formula }) => {
      const at = start + from;
      return {
        name: 'Size',
        attributes: [{ name: 'of', value: formula, at, textAt: at + 1 }],
        part: { start: at, end: start + end },
      };
    }),
  );
