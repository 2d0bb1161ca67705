import { didYouMean, quote } from '../../core/measure/index.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import { stepsWithoutCaution, toolsWithoutCaution } from './caution-problems.ts';
import { glossaryProblems } from './glossary-problems.ts';
import { lessonProblems } from './lesson-problems.ts';
import { linkProblems, pagesOf } from './link-problems.ts';
import { ownPages } from './own-pages.ts';
import { inReadingOrder, placeIn } from '../content/diagnostic.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { isWhole, materialProblems, projectProblems, workOut } from './project-problems.ts';
import type { WorkedOut } from './project-problems.ts';
import { allEntries, projectOfLesson, readContent } from '../content/read-content.ts';
import type { Content, Entry, LessonEntry } from '../content/read-content.ts';
import { classOf } from '../content/schemas.ts';
import type { CourseFile } from '../content/schemas.ts';
import { mathsProblems } from './maths-problems.ts';
import { idleMeasures } from './measure-problems.ts';
import { questionProblems } from './question-problems.ts';
import { readingProblems } from './reading-problems.ts';
import { sessionProblems } from './session-problems.ts';
import { untoldSteps } from './step-problems.ts';
import { typedNumbers } from './typed-numbers.ts';
import { wordProblems } from './word-problems.ts';

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

export type Examined = {
  problems: Diagnostic[];
  /** Files that cannot be shown as they are: unreadable ones, and projects with a size that cannot be worked out. */
  unusable: Set<string>;
  /** Every project that can be read, worked out. */
  worked: ReadonlyMap<string, WorkedOut>;
};

/** The same for a folder that has been read already. */
export function examine(content: Content, root: string, { ends = false }: Thorough = {}): Examined {
  const { materials, projects, courses, lessons } = content;
  const problems = [...content.problems];
  const unusable = new Set<string>();
  for (const entry of allEntries(content)) {
    problems.push(...entry.problems);
    if (entry.value === undefined || ('lesson' in entry && entry.lesson.faults.length > 0)) unusable.add(entry.file);
  }

  const worked = new Map<string, WorkedOut>();
  for (const project of projects) {
    if (!project.value) continue;
    const out = workOut(project.value, materials.value);
    worked.set(project.id, out);
    problems.push(...projectProblems(project, out, ends));
    if (!isWhole(out)) unusable.add(project.file);
  }
  problems.push(...materialProblems(materials));
  const site = { class: classOf(content.site.value), edition: content.site.value?.edition ?? ('inch' as const) };
  for (const course of courses) {
    problems.push(...courseProblems(course, lessons, projects));
    const own = lessons.filter((lesson) => lesson.course === course.id);
    problems.push(...sessionProblems(course, own, worked.get(course.value?.project ?? ''), site));
  }
  const pages = pagesOf(content);
  for (const lesson of lessons) {
    const course = courses.find(({ id }) => id === lesson.course);
    const project = projectOfLesson(lesson, courses);
    problems.push(...frontProblems(lesson, course, projects));
    problems.push(
      ...lessonProblems(lesson, root, {
        // A lesson or course that could not be read may well name one.
        project: project ?? (lesson.value && course?.value ? undefined : ''),
        worked: worked.get(project ?? ''),
        projects: projects.map(({ id }) => id),
      }),
    );
    const own = worked.get(project ?? '');
    const said = [
      ...linkProblems(lesson, pages),
      ...(own ? [...typedNumbers(lesson, own), ...wordProblems(lesson, own)] : []),
      ...toolsWithoutCaution(lesson),
      ...questionProblems(lesson),
      ...mathsProblems(lesson),
      ...readingProblems(lesson, content.site.value?.language ?? 'en'),
    ];
    for (const { at, ...rest } of said) {
      problems.push({ file: lesson.file, ...placeIn(lesson.text, at), ...rest });
    }
  }
  problems.push(
    ...glossaryProblems(content),
    ...untoldSteps(content),
    ...idleMeasures(content),
    ...stepsWithoutCaution(content, worked),
  );
  return { problems: inReadingOrder(problems), unusable, worked };
}

const noProject = (name: string, projects: Entry<ProjectFile>[]): Pick<Diagnostic, 'severity' | 'message' | 'fix'> => {
  const ids = projects.map(({ id }) => id);
  return {
    severity: 'error',
    message: `There is no project ${quote(name)} in content/projects.`,
    fix: didYouMean(name, ids) ?? (ids.length ? `There are: ${ids.join(', ')}.` : undefined),
  };
};

function courseProblems(
  course: Entry<CourseFile>,
  lessons: LessonEntry[],
  projects: Entry<ProjectFile>[],
): Diagnostic[] {
  if (!course.value) return [];
  const { file, locate, value } = course;
  const problems: Diagnostic[] = [];
  if (value.project !== undefined && !projects.some(({ id }) => id === value.project)) {
    problems.push({ file, ...locate(['project']), ...noProject(value.project, projects) });
  }
  const own = lessons.filter((lesson) => lesson.course === course.id);
  const names = own.map(({ fileName }) => fileName);
  for (const [i, name] of value.lessons.entries()) {
    const at = { file, ...locate(['lessons', i]), severity: 'error' as const };
    if (value.lessons.indexOf(name) < i) {
      problems.push({ ...at, message: `The lesson ${quote(name)} is listed twice.`, fix: 'Keep one of them.' });
    } else if (!names.includes(name)) {
      const unlisted = names.filter((one) => !value.lessons.includes(one));
      problems.push({
        ...at,
        message: `There is no lesson ${quote(name)} beside this file.`,
        fix: didYouMean(name, unlisted),
      });
    }
  }
  for (const lesson of own) {
    if (!value.lessons.includes(lesson.fileName)) {
      problems.push({
        file: lesson.file,
        line: 1,
        column: 1,
        severity: 'warning',
        message: 'No page shows this lesson.',
        fix: `List it under “lessons” in ${file}.`,
      });
    }
    if (Object.hasOwn(ownPages, lesson.slug)) {
      problems.push({
        file: lesson.file,
        line: 1,
        column: 1,
        severity: 'error',
        message: `At the address ${quote(lesson.slug)} each course has a page of its own: ${ownPages[lesson.slug]}.`,
        fix: `Give the lesson another name, such as ${quote(`the-${lesson.slug}`)}.`,
      });
    }
    const twin = own.find((other) => other.slug === lesson.slug);
    if (twin && twin !== lesson) {
      problems.push({
        file: lesson.file,
        line: 1,
        column: 1,
        severity: 'error',
        message: `This lesson would have the same address as ${quote(twin.fileName)}: numbers in front do not count.`,
        fix: 'Give it another name.',
      });
    }
  }
  return problems;
}

function frontProblems(
  lesson: LessonEntry,
  course: Entry<CourseFile> | undefined,
  projects: Entry<ProjectFile>[],
): Diagnostic[] {
  if (!lesson.value) return [];
  const { file, locate, value } = lesson;
  const problems: Diagnostic[] = [];
  if (value.project !== undefined && !projects.some(({ id }) => id === value.project)) {
    problems.push({ file, ...locate(['project']), ...noProject(value.project, projects) });
  }
  const sessions = course?.value?.sessions.length;
  if (value.session !== undefined && sessions !== undefined && value.session > sessions) {
    problems.push({
      file,
      ...locate(['session']),
      severity: 'error',
      message: `session: the course has ${sessions === 0 ? 'no sessions' : sessions === 1 ? '1 session' : `${sessions} sessions`}.`,
      fix: `Add one under “sessions” in ${course?.file}.`,
    });
  }
  return problems;
}
