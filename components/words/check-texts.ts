/** Mistakes in the texts of questions that are answered by choosing, ordering or matching. */
import { quote, sumFor, type Pattern } from '../../src/core/index.ts';
import { allTextsIn, textsIn } from './given.ts';
import type { AttributeInLesson, LessonAround, LessonMistake, WordInLesson } from './word.ts';

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
 * Sizes in square brackets that cannot be worked out, and answers that stand there twice.
 *
 * @param lists the attributes that hold answers
 */
export const checkTexts =
  (lists: readonly string[]) =>
  (written: WordInLesson, { project: { variants } }: LessonAround): LessonMistake[] => {
    const patterns = variants.map(({ inch }) => inch);
    return [...written.attributes.flatMap((attribute) => sizeMistakes(attribute, patterns)), ...twice(written, lists)];
  };

function sizeMistakes({ name, value, at }: AttributeInLesson, patterns: readonly Pattern[]): LessonMistake[] {
  return allTextsIn(value).flatMap((text) =>
    [...text.matchAll(/\[([^\][]+)\]/gu)].flatMap(([, of = '']) => {
      // What one choice of options leaves out, another has.
      const [fault, ...others] = patterns.map((pattern) => sumFor(of, pattern));
      return fault && !fault.ok && others.every(({ ok }) => !ok)
        ? [error(at, `${name}: ${fault.fault.message}`, fault.fault.fix)]
        : [];
    }),
  );
}

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
