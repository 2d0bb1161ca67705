/** A worked sum as it is set while the site is built. */
import { texText, toTex, type LineScope } from '../../../src/core/index.ts';
import { inWords, type Work } from './worked.ts';

/** `tex`: its lines; none where the sum names something that is left out at the lesson's own size. */
export type Sum = { tex: string[]; words: string };

/** A sum with its names, with the numbers put in, and the result. */
export const sumOf = (work: Work | undefined, scope: LineScope): Sum => ({
  tex: work ? linesOf(work, scope) : [],
  words: inWords(work, scope),
});

function linesOf({ subject, formula }: Work, scope: LineScope): string[] {
  const { names, numbers, result } = toTex(formula, { ...scope, slots: true });
  // A measure that nothing is worked out from has one line: what it is.
  if (formula.tree.kind === 'name') return [`${names} \\; ${result}`];
  return [subject === undefined ? names : `${texText(subject)} = ${names}`, `= ${numbers}`, result];
}
