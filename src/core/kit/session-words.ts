/** A session of a class in words: the clock, what is done, and who waits where. Page and paper print these lines. */
import type { PlannedSitting, SessionPlan } from './sessions.ts';
import type { Station } from './tasks.ts';

/** A line of a session. `until`: the time of day, or the time since the session began where that is not known. */
export type SessionLine = { until: string; what: string; minutes: string; waiting: string };

export const sessionHeads = ['Until', 'What is done', 'Minutes', 'Who waits'] as const;

/** What the times of the table mean. */
export const SESSION_NOTE =
  'A line ends when nine in ten makers have done it, waiting at irons and machines counted in: tried 60 times with quick and slow makers. Your own class knows better.';

/**
 * The lines of a session, in their order: setting up, lessons, what is made, tidying up.
 *
 * @param begins as 18:30; left out, times count from the beginning
 * @example sessionLines(sitting, '18:30')[0] // => { until: '18:35', what: 'Set up', minutes: '5', waiting: '' }
 */
export function sessionLines(
  { lessons, taught, tasks, outlook, minutes, setUp, tidyUp }: PlannedSitting,
  begins?: string,
): SessionLine[] {
  const line = (at: number, what: string, taken: number, waiting = ''): SessionLine => {
    return { until: clock(at, begins), what, minutes: String(Math.round(taken)), waiting };
  };
  let taughtSoFar = setUp;
  const shown = lessons.map(({ title, minutes: own }) => line((taughtSoFar += own), `Lesson: ${title}`, own));
  const start = setUp + taught;
  const made = tasks.map(({ title, minutes: own }, i) => {
    const { most = 0, waits, queue } = outlook.tasks[i] ?? {};
    const waiting = stations.flatMap((at) => waitingWords(at, waits?.[at] ?? 0, queue?.[at] ?? 0));
    return line(start + most, title, own, waiting.join('; '));
  });
  const end = Math.max(minutes, start + outlook.most + tidyUp);
  return [line(setUp, 'Set up', setUp), ...shown, ...made, line(end, 'Tidy up', tidyUp)];
}

const stations: readonly Station[] = ['iron', 'machine'];

/** Below half a minute each nobody notices. */
function waitingWords(at: Station, each: number, longest: number): string[] {
  if (each < 0.5) return [];
  const most = Math.max(1, Math.round(longest));
  return [`up to ${most} at the ${at}, ${Math.max(1, Math.round(each))} min each`];
}

/** Minutes from the beginning as a time. */
function clock(minutes: number, begins: string | undefined): string {
  const [hour = 0, minute = 0] = (begins ?? '0:00').split(':').map(Number);
  const all = Math.round(hour * 60 + minute + minutes);
  const hours = Math.floor(all / 60) % (begins === undefined ? Infinity : 24);
  return `${hours}:${String(all % 60).padStart(2, '0')}`;
}

/** What one more iron or machine would be worth. */
export function oneMoreWords({ oneMore }: SessionPlan): string {
  const [iron, machine] = [Math.round(oneMore.iron), Math.round(oneMore.machine)];
  const gains = [
    ...(iron >= 1 ? [`one more iron saves the class ${iron} minutes`] : []),
    ...(machine >= 1 ? [`one more machine saves ${machine}`] : []),
  ];
  return gains.length > 0 ? `Tried out: ${gains.join(', ')}.` : 'Tried out: more irons or machines would save nothing.';
}
