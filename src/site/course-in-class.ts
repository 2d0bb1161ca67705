import { pageUrl, type CoursePage } from './index.ts';
import { questionsOf, type Listed } from './lesson-questions.ts';
import { standing } from './standing.ts';

/** Several pages of a course list its questions. */
const known = standing(() => new Map<string, Listed>());

/** A course as the pages for handing in know it: its lessons with their questions and steps. */
export function courseInClass({ id, title, lessons }: CoursePage) {
  return {
    id,
    title,
    lessons: lessons.map(({ id, title, url, entry }) => ({
      id,
      title,
      url,
      path: pageUrl(url),
      ...listed(entry.body ?? ''),
    })),
  };
}

function listed(body: string): Listed {
  const questions = known().get(body) ?? questionsOf(body);
  known().set(body, questions);
  return questions;
}
