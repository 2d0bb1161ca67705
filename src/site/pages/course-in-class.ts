import { inText, resolveProject } from '../../core/project/index.ts';
import { pageUrl, type CoursePage, type ProjectPage } from './index.ts';
import { questionsOf } from '../content/lesson-questions.ts';
import { oncePerBuildBy } from './build-cache.ts';

/** Several pages of a course list its questions. */
const listed = oncePerBuildBy(questionsOf);

/** A course as the pages for handing in know it: its lessons with their questions and steps. */
export function courseInClass({ id, title, lessons, project }: CoursePage) {
  return {
    id,
    title: said(title, project),
    lessons: lessons.map(({ id, title, url, entry, project }) => ({
      id,
      title: said(title, project),
      url: url.slice(1),
      path: pageUrl(url),
      ...(project && { project: project.id }),
      ...listed(entry.body ?? ''),
    })),
  };
}

/** A title for lists and tables, at the lesson's own size. */
const said = (title: string, project: ProjectPage | undefined): string =>
  inText(title, project && title.includes('[') ? resolveProject(project.file, project) : undefined);
