/** Questions of a lesson that would share one answer, or that no hand-in has room for. */
import { quote } from '../../core/measure/index.ts';
import { mostSaved } from '../../../components/words/most-saved.ts';
import { wordCalled } from '../../../components/words/index.ts';
import type { LessonEntry } from '../content/read-content.ts';
import type { AtOffset } from '../content/diagnostic.ts';

/**
 * Answers are kept under a question’s id, and without one under what it asks for: two that ask for the same are answered
 * together.
 */
export function questionProblems({ lesson }: LessonEntry): AtOffset[] {
  const first = new Set<string>();
  const counts = { answer: 0, practice: 0, measured: 0 };
  return lesson.words.flatMap((word): AtOffset[] => {
    const given = Object.fromEntries(word.attributes.map(({ name, value }) => [name, value]));
    const kept = wordCalled(word.name)?.saves?.(given);
    if (!kept || typeof kept.name !== 'string' || kept.name === '') return [];
    const key = `${kept.as} ${kept.name}`;
    if (!first.has(key)) {
      first.add(key);
      if (!(kept.as in counts)) return [];
      const as = kept.as as keyof typeof counts;
      counts[as] += 1;
      // The first that is too many speaks for all.
      if (counts[as] !== mostSaved[as] + 1) return [];
      const message = `A hand-in has room for ${mostSaved[as]} of these in one lesson; this one and those after it are left out.`;
      return [{ at: word.part.start, severity: 'warning', message, fix: 'Make two lessons of this one.' }];
    }
    const message = `Another question of this lesson is kept as ${quote(kept.name)} too, so both share one answer.`;
    return [{ at: word.part.start, severity: 'warning', message, fix: `Give this one an id: id="${kept.name} 2".` }];
  });
}
