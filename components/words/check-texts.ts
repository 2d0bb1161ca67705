/** Mistakes in the texts of questions that are answered by choosing, ordering or matching. */
import { quote } from '../../src/core/index.ts';
import { textsIn } from './given.ts';
import type { AttributeInLesson, LessonMistake, WordInLesson } from './word.ts';

export const error = (at: number, message: string, fix?: string): LessonMistake => ({
  at,
  severity: 'error',
  message,
  fix,
});

/** Finds an attribute by its name. */
export const attributeOf = ({ attributes }: WordInLesson, name: string): AttributeInLesson | undefined =>
  attributes.find((attribute) => attribute.name === name);

/**
 * Answers that stand there twice.
 *
 * @param lists the attributes that hold answers
 */
export const checkTexts =
  (lists: readonly string[]) =>
  (written: WordInLesson): LessonMistake[] =>
    twice(written, lists);

/** Two answers alike cannot be told apart. */
function twice({ name: word, attributes }: WordInLesson, lists: readonly string[]): LessonMistake[] {
  const given = attributes.filter(({ name }) => lists.includes(name));
  const all = given.flatMap(({ value, at }) => textsIn(value).map((text) => ({ text, at })));
  return all.flatMap(({ text, at }, i) =>
    all.findIndex((other) => other.text === text) < i
      ? [error(at, `<${word}>: ${quote(text)} stands there twice.`, 'Keep one of them.')]
      : [],
  );
}
