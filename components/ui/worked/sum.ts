/** A worked sum as it is set while the site is built. */
import { texText, toTex, type LineScope } from '../../../src/core/index.ts';
import { inWords, type WorkedFormula } from './worked.ts';

/** `tex`: its lines; none where the sum names something that is left out at the lesson's own size. */
export type TypesetSum = { tex: string[]; words: string };

/** A sum with its names, with the numbers put in, and the result. */
export const sumOf = (work: WorkedFormula | undefined, scope: LineScope): TypesetSum => ({
  tex: work ? linesOf(work, scope) : [],
  words: inWords(work, scope),
});

function linesOf({ subject, formula }: WorkedFormula, scope: LineScope): string[] {
  const { names, numbers, result } = toTex(formula, { ...scope, slots: true });
  // A measure that nothing is worked out from has one line: what it is.
  if (formula.tree.kind === 'name') return [`${names} \\; ${result}`];
  return [subject === undefined ? names : `${texText(subject)} = ${names}`, `= ${numbers}`, result];
}
