import { asSentence, type Diagnostic } from '../../src/site/content/diagnostic.ts';

/** A diagnostic in one line, which reads best when a test fails. */
export function asLine(problem: Diagnostic): string {
  return `${problem.file}:${problem.line}:${problem.column} ${asSentence(problem)}`;
}
