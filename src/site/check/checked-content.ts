import { readContent, type Content } from '../content/read-content.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { examine } from './find-content-problems.ts';

/** The content of a build, and what is wrong in it. */
export type CheckedContent = { content: Content; problems: Diagnostic[] };

const cache = new Map<string, CheckedContent>();

/**
 * Reads and checks the content for a build, once: the command, the check and the documents share it.
 *
 * @param root the folder that holds content/
 */
export function checkedContent(root: string): CheckedContent {
  let known = cache.get(root);
  if (!known) {
    const content = readContent(root);
    known = { content, problems: examine(content, root).problems };
    cache.set(root, known);
  }
  return known;
}
