import type { Diagnostic } from '../content/diagnostic.ts';

/** What the live preview tells an open page. */
export type LiveProblems = {
  /** In reading order. */
  problems: Diagnostic[];
  /** Files that cannot be shown as they are, and of which pages still show the last state that could be. */
  kept: string[];
};
