/** What is wrong between a course, its lessons and its project. */
import { didYouMean, quote } from '../../core/measure/index.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';
import type { CourseFile } from '../content/schemas.ts';
import type { ProjectFile } from '../../core/project/schema.ts';
import { ownPages } from './own-pages.ts';

const noProject = (name: string, projects: readonly string[]): Pick<Diagnostic, 'severity' | 'message' | 'fix'> => {
  const inPath = name.split(/[/\\]/u).find((part) => projects.includes(part));
  return {
    severity: 'error',
    message: `There is no project ${quote(name)} in content/projects.`,
    fix:
      (inPath && `Write ${inPath} alone.`) ??
      didYouMean(name, projects) ??
      (projects.length ? `There are: ${projects.join(', ')}.` : undefined),
  };
};

/** @param own the lessons in its folder */
export function courseProblems(
  course: Entry<CourseFile>,
  own: readonly LessonEntry[],
  projects: readonly Pick<Entry<ProjectFile>, 'id' | 'value'>[],
): Diagnostic[] {
  if (!course.value) return [];
  const { file, locate, value } = course;
  const problems: Diagnostic[] = [];
  const project = projects.find(({ id }) => id === value.project);
  if (value.project !== undefined && !project) {
    const ids = projects.map(({ id }) => id);
    problems.push({ file, ...locate(['project']), ...noProject(value.project, ids) });
  }
  const level = project?.value?.level;
  if (level !== undefined && level !== value.level) {
    problems.push({
      ...{ file, ...locate(['level']), severity: 'warning' as const },
      message: `The course is for ${quote(value.level)}, and its project for ${quote(level)}.`,
      fix: 'Say the same in both files: learners choose by it.',
    });
  }
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

/** What a lesson says at its top of its project and its session. */
export function frontProblems(
  lesson: LessonEntry,
  course: Entry<CourseFile> | undefined,
  projects: readonly string[],
): Diagnostic[] {
  if (!lesson.value) return [];
  const { file, locate, value } = lesson;
  const problems: Diagnostic[] = [];
  if (value.project !== undefined && !projects.includes(value.project)) {
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
