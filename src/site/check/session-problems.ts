/** Whether the sessions of a course hold its lessons and the steps of its project. */
import { planSessions, tasksOf } from '../../core/kit/index.ts';
import type { CourseFile, SiteFile } from '../content/schemas.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { WorkedOut } from './project-problems.ts';

/** What the plan of the class, the one that its page and its paper tell, cannot hold. */
export function sessionProblems(
  { file, locate, value }: Entry<CourseFile>,
  lessons: readonly LessonEntry[],
  worked: WorkedOut | undefined,
  { class: room, edition }: Pick<SiteFile, 'class' | 'edition'>,
): Diagnostic[] {
  if (!value || value.sessions.length === 0) return [];
  const inOrder = value.lessons.flatMap((name) => lessons.find(({ fileName }) => fileName === name)?.value ?? []);
  const tasks = worked ? tasksOf(worked.variants[0][edition]) : [];
  const { findings } = planSessions(tasks, {
    minutes: value.sessions.map(({ minutes }) => minutes),
    lessons: inOrder,
    room,
  });
  return findings.map(({ place, message, fix }) => ({ file, ...locate(place), severity: 'warning', message, fix }));
}
