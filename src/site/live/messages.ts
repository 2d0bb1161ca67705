import type { Problem } from '../problem.ts';

/** What the live preview tells an open page. */
export type LiveProblems = {
  /** In reading order. */
  problems: Problem[];
  /** Files with a mistake whose last state without one is still shown. */
  kept: string[];
};
