import { listed } from '../measure/index.ts';
import { inText } from '../project/texts.ts';
import { called, wordingOf } from './sentences.ts';
import { sumFor } from './sum.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Question } from './judge.ts';

/** One step of help: the author's own words, what belongs in the sum, the sum itself. */
export type Hint = { stage: 'author' | 'parts' | 'sum'; sentence: string };

/**
 * Help in stages, each giving away a little more than the one before. The worked solution comes after the last.
 *
 * @example hintsFor({ of: 'panel width' }, pattern)[0].sentence // => 'You need the card width, the ease and the seam allowance.'
 */
export function hintsFor(question: Question, pattern: Pattern): Hint[] {
  const hints = (question.hints ?? []).map((words): Hint => ({ stage: 'author', sentence: inText(words, pattern) }));
  const sum = sumFor(question.of, pattern);
  if (!sum.ok || sum.value.formula.tree.kind === 'name') return hints;
  const { formula } = sum.value;
  const wording = wordingOf(pattern);
  if (formula.names.length > 0) {
    const parts = listed(formula.names.map((name) => called(name, wording)));
    hints.push({ stage: 'parts', sentence: `You need ${parts}.` });
  }
  hints.push({ stage: 'sum', sentence: `The sum is ${inPrint(formula.text)}.` });
  return hints;
}

/** A formula's text with the signs of print: `2 × ease`. */
const inPrint = (text: string) => text.replace(/\s*\*\s*/gu, ' × ').replace(/ - /gu, ' − ');
