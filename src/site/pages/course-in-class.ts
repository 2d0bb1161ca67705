import { pageUrl, type CoursePage } from './index.ts';
import { questionsOf } from '../content/lesson-questions.ts';
import { oncePerBuildBy } from './build-cache.ts';

/** Several pages of a course list its questions. */
const listed = oncePerBuildBy(questionsOf);

/** A course as the pages for handing in know it: its lessons with their questions and steps. */
export function courseInClass({ id, title, lessons }: CoursePage) {
  return {
    id,
    title,
    lessons: lessons.map(({ id, title, url, entry, project }) => ({
      id,
      title,
      url,
      path: pageUrl(url),
      ...(project && { project: project.id }),
      ...listed(entry.body ?? ''),
    })),
  };
}
