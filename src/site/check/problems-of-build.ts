import type { Diagnostic } from '../content/diagnostic.ts';
import { findContentProblems } from './find-content-problems.ts';

const cache = new Map<string, Diagnostic[]>();

/**
 * What is wrong in the content of a build, found once for the command and the integration. The content itself goes: a
 * large one would weigh on all that follows.
 *
 * @param root the folder that holds content/
 */
export function problemsOfBuild(root: string): Diagnostic[] {
  const known = cache.get(root) ?? findContentProblems(root);
  cache.set(root, known);
  return known;
}
