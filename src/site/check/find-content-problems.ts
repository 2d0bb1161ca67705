import { inReadingOrder, placeIn } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { allEntries, readContent } from '../content/read-content.ts';
import type { Content } from '../content/read-content.ts';
import { bracketProblems } from './bracket-problems.ts';
import { aroundParts, examinePart, partsOf } from './content-parts.ts';
import { courseProblems } from './course-problems.ts';
import { glossaryProblems } from './glossary-problems.ts';
import { linkProblems, pagesOf } from './link-problems.ts';
import { materialProblems } from './project-problems.ts';
import { textsOfNoProject } from './texts.ts';

/**
 * Every mistake in the content folder, of all files at once. The live preview, the build and `npm run check` all say
 * what this says.
 *
 * @param root folder of the project, the one that holds `content/`
 * @param thorough whether the sizes that learners may choose are tried, too
 */
export function findContentProblems(root: string, thorough: Thorough = {}): Diagnostic[] {
  return examine(readContent(root), root, thorough).problems;
}

/** The ends of the sliders take longer than all the rest and give warnings alone: `npm run check` tries them. */
export type Thorough = { ends?: boolean };

export type ContentReport = {
  problems: Diagnostic[];
  /** Files that cannot be shown as they are: unreadable ones, and projects with a size that cannot be worked out. */
  unusable: Set<string>;
};

/** The same for a folder that has been read already. What a project was worked out for goes before the next begins. */
export function examine(content: Content, root: string, thorough: Thorough = {}): ContentReport {
  const around = aroundParts(content, root, thorough);
  const parts = partsOf(content).map((part) => examinePart(part, around));
  return allTogether(examineWhole(content), parts);
}

/** What can be told of the content without working out any project. */
export function examineWhole(content: Content): ContentReport {
  const { materials, projects, courses, lessons } = content;
  const problems = [...content.problems];
  const unusable = new Set<string>();
  for (const entry of allEntries(content)) {
    problems.push(...entry.problems);
    if (entry.value === undefined || ('lesson' in entry && entry.lesson.faults.length > 0)) unusable.add(entry.file);
  }
  problems.push(...materialProblems(materials));
  for (const [{ file }, texts] of textsOfNoProject(content)) problems.push(...bracketProblems(file, texts, undefined));
  const lessonsIn = Map.groupBy(lessons, ({ course }) => course);
  for (const course of courses) problems.push(...courseProblems(course, lessonsIn.get(course.id) ?? [], projects));
  const pages = pagesOf(content);
  for (const lesson of lessons)
    for (const { at, ...rest } of linkProblems(lesson, pages))
      problems.push({ file: lesson.file, ...placeIn(lesson.text, at), ...rest });
  problems.push(...glossaryProblems(content));
  return { problems, unusable };
}

/** In reading order. */
export const allTogether = (whole: ContentReport, parts: readonly ContentReport[]): ContentReport => ({
  problems: inReadingOrder([whole, ...parts].flatMap(({ problems }) => problems)),
  unusable: new Set([whole, ...parts].flatMap(({ unusable }) => [...unusable])),
});
