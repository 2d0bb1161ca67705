/** Whether the sessions of a course hold its lessons and the steps of its project. */
import { quote } from '../../core/measure/index.ts';
import { tasksOf } from '../../core/kit/index.ts';
import type { CourseFile } from '../content/schemas.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { WorkedOut } from './project-problems.ts';

/** At the beginning of a session to set up and at its end to tidy up, together. Common practice, no source. */
const AROUND = 10;

/**
 * A session that its own lessons overrun, and sessions that together cannot hold the lessons and the making. Minutes
 * are those of one maker who waits for nobody, so what is said here is the least that is lacking.
 */
export function sessionProblems(
  { file, locate, value }: Entry<CourseFile>,
  lessons: readonly LessonEntry[],
  worked: WorkedOut | undefined,
): Diagnostic[] {
  if (!value || value.sessions.length === 0) return [];
  const problems: Diagnostic[] = [];
  const say = (place: (string | number)[], message: string, fix: string) =>
    problems.push({ file, ...locate(place), severity: 'warning', message, fix });
  const told = lessons.flatMap(({ value: front }) => front ?? []);
  for (const [i, { title, minutes }] of value.sessions.entries()) {
    const own = told.filter(({ session }) => session === i + 1).reduce((sum, lesson) => sum + lesson.minutes, 0);
    if (minutes === undefined || own <= minutes) continue;
    const message = `The session ${quote(title)} has ${minutes} minutes, and its lessons take ${own}.`;
    say(['sessions', i, 'minutes'], message, 'Make it longer, or move a lesson to another session.');
  }
  const booked = value.sessions.map(({ minutes }) => minutes);
  if (!worked || booked.includes(undefined)) return problems;
  const has = booked.reduce<number>((sum, minutes) => sum + Math.max(0, minutes! - AROUND), 0);
  const making = Math.round(tasksOf(worked.variants[0].inch).reduce((sum, { minutes }) => sum + minutes, 0));
  const shown = told.reduce((sum, { minutes }) => sum + minutes, 0);
  if (making + shown <= has) return problems;
  const message =
    `The sessions leave ${has} minutes beside setting up and tidying up. ` +
    `The lessons take ${shown}, and cutting and making ${making}.`;
  say(
    ['sessions'],
    message,
    'Plan longer sessions or one more, or have steps done before the class (done by: teacher).',
  );
  return problems;
}
