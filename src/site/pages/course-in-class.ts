import type { AskedInClass } from '../../../components/words/word.ts';
import { wordCalled } from '../../../components/words/index.ts';
import { inText, resolveProject, type Pattern } from '../../core/project/index.ts';
import { getGlossary, pageUrl, type CoursePage, type LessonPage, type ProjectPage } from './index.ts';
import type { GlossaryFile } from '../content/schemas.ts';
import { questionsOf, wordsOf } from '../content/lesson-questions.ts';
import { oncePerBuildBy } from './build-cache.ts';

/** Several pages of a course list its questions. */
const listed = oncePerBuildBy(questionsOf);

/** A course as the pages for handing in know it: its lessons with their questions and steps. */
export function courseInClass({ id, title, lessons, project }: CoursePage) {
  const glossary = getGlossary();
  return {
    id,
    title: said(title, project),
    lessons: lessons.map((lesson) => {
      const { id, title, url, text, project } = lesson;
      const { questions, practices, pieces, ...others } = listed(text);
      const asked = askedIn(lesson, glossary);
      const withAsked = <Q extends { name: string }>(as: string, question: Q): Q & { asked?: AskedInClass } => {
        const found = asked.get(`${as}:${question.name}`);
        return { ...question, ...(found && { asked: found }) };
      };
      return {
        id,
        title: said(title, project),
        url: url.slice(1),
        path: pageUrl(url),
        ...(project && { project: project.id }),
        ...others,
        pieces: [...pieces, ...piecesIn(lesson).filter(({ name }) => pieces.every((one) => one.name !== name))],
        questions: questions.map((question) => withAsked('answer', question)),
        practices: practices.map((set) => withAsked('practice', set)),
      };
    }),
  };
}

/** What words measure that take all pieces of the project; each once. */
function piecesIn({ text, project }: LessonPage): { name: string; words: string }[] {
  if (!project) return [];
  const found = wordsOf(text).flatMap(({ word }) => wordCalled(word)?.measured?.(project.file) ?? []);
  return [...new Map(found.map(({ name, of }) => [name, { name, words: of }])).values()];
}

/** How the answers of a lesson are read, by the key they are kept under. */
function askedIn({ text, project }: LessonPage, glossary: GlossaryFile): Map<string, AskedInClass> {
  let pattern: Pattern | undefined;
  const found = new Map<string, AskedInClass>();
  for (const { word, given } of wordsOf(text)) {
    const called = wordCalled(word);
    const kept = called?.saves?.(given);
    if (!kept || !called?.asked) continue;
    pattern ??= project && resolveProject(project.file, project);
    const read = called.asked(given, pattern, { glossary });
    if (read) found.set(`${kept.as}:${kept.name}`, read);
  }
  return found;
}

/** A title for lists and tables, at the lesson's own size. */
const said = (title: string, project: ProjectPage | undefined): string =>
  inText(title, project && title.includes('[') ? resolveProject(project.file, project) : undefined);
