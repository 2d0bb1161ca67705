import { rungAt, type PaperQuestion, type Difficulty } from '../../../src/core/index.ts';
import { textIn, wordsFrom } from '../given.ts';
import { slipsIn } from '../ask-size/paper.ts';
import type { AttributeValues, OnPaper, QuestionText } from '../word.ts';

/** A set of one sum gets so many exercises on paper, each harder than the one before. */
const EXERCISES = 3;

export function paper(given: AttributeValues, words: QuestionText): OnPaper | undefined {
  const [of, hint, name] = [given.of, given.hint, given.id].map(textIn);
  const id = name ?? of;
  if (id === undefined) return undefined;
  const several = Object.entries(Object(given.asks) as Record<string, string>);
  const asks =
    of !== undefined
      ? Array.from({ length: EXERCISES }, () => ({ of, words }))
      : several.map(([of, words]) => ({ of, words: wordsFrom(words) }));
  const sums = asks.map(({ of: asked, words }, i): PaperQuestion => ({
    ...{ of: asked, ...(hint !== undefined && { hints: [hint] }), ...slipsIn(given), id: `practice ${id} ${i + 1}` },
    words: [`Practice, ${i + 1} of ${asks.length}. `, ...words],
    difficulty: (1 + rungAt(i, asks.length, 3)) as Difficulty,
    isRepeated: of !== undefined && i > 0,
  }));
  return { sums };
}
