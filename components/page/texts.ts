/** What an author wrote, as a page shows it while it is built: with its sizes, at the lesson's own size. */
import { bracketsIn, inText, partsOf, type Pattern } from '../../src/core/index.ts';
import { learnerOf, provideProject, type Project } from './learner.svelte.ts';
import { showQuantity, valueOf } from './quantity.ts';

/** Words and sizes in turn. UpdateInlineSizes keeps a size in step with the learner's. */
export type Shown = (string | { of: string; text: string })[];

function patternOf(project: Project | undefined): Pattern | undefined {
  if (!project) return undefined;
  provideProject(project);
  return learnerOf(project.id).settledPattern;
}

/** Whether a text has sizes, so that a page that shows it follows the learner. */
export const hasSizes = (text: string | undefined): boolean => text !== undefined && bracketsIn(text).length > 0;

/** A text as plain words, for a title or a list. */
export const textAt = (text: string, project: Project | undefined): string =>
  hasSizes(text) ? inText(text, patternOf(project)) : inText(text, undefined);

/** A text whose sizes can follow the learner. */
export const shownAt = (text: string, project: Project | undefined): Shown =>
  shownIn(text, hasSizes(text) ? patternOf(project) : undefined);

/** The same on a page whose project is read already. */
export function shownIn(text: string, pattern: Pattern | undefined): Shown {
  if (!pattern) return [inText(text, undefined)];
  return partsOf(text).flatMap((part, i): Shown => {
    if (i % 2 === 1) return [{ of: part, text: showQuantity(valueOf(part, pattern), pattern) }];
    return part === '' ? [] : [part];
  });
}
