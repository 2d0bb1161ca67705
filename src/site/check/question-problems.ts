/** Questions of a lesson that would share one answer. */
import { quote } from '../../core/measure/index.ts';
import { wordCalled } from '../../../components/words/index.ts';
import type { LessonEntry } from '../content/read-content.ts';
import type { AtOffset } from '../content/diagnostic.ts';

/**
 * Answers are kept under a question’s id, and without one under what it asks for: two that ask for the same are answered
 * together.
 */
export function questionProblems({ lesson }: LessonEntry): AtOffset[] {
  const first = new Set<string>();
  return lesson.words.flatMap((word): AtOffset[] => {
    const given = Object.fromEntries(word.attributes.map(({ name, value }) => [name, value]));
    const kept = wordCalled(word.name)?.saves?.(given);
    if (!kept || typeof kept.name !== 'string' || kept.name === '') return [];
    const key = `${kept.as} ${kept.name}`;
    if (!first.has(key)) {
      first.add(key);
      return [];
    }
    const message = `Another question of this lesson is kept as ${quote(kept.name)} too, so both share one answer.`;
    return [{ at: word.part.start, severity: 'warning', message, fix: `Give this one an id: id="${kept.name} 2".` }];
  });
}
