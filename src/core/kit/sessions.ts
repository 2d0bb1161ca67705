/** Packs the tasks of a project into the sessions of a class. */
import type { Diagnostic } from '../measure/index.ts';
import { outlookOf } from './simulate.ts';
import type { Outlook, Room } from './simulate.ts';
import type { Station, Task } from './tasks.ts';

export type SessionWish = {
  /** Minutes of each session; when they are used up, the last one's length is taken on. */
  minutes: readonly number[];
  /** At the beginning, to set up, and at the end, to tidy. Five each if left out (common practice, no source). */
  setUp?: number;
  tidyUp?: number;
  room: Room;
  seed?: number;
};

export type PlannedSitting = {
  /** As long as the room is booked. */
  minutes: number;
  tasks: Task[];
  outlook: Outlook;
  /** Minutes left when nine in ten makers are done, tidying included; below 0 it is too short. */
  spare: number;
};

export type SessionPlan = {
  sessions: PlannedSitting[];
  /** What one more iron or one more machine would save nine in ten makers, over all sessions, in minutes. */
  oneMore: Record<Station, number>;
  findings: Diagnostic[];
};

const USUAL = 5;
/** More sessions than this are a sign that the minutes are too few for anything. */
const MOST_SESSIONS = 40;

/**
 * A plan: tasks stay in order, a task is never parted, and those that belong together stay in one session. A session
 * takes tasks as long as nine in ten makers are done in time, waiting at irons and machines counted in.
 *
 * @example
 * planSessions(tasks, { minutes: [90, 90], room: { makers: 8, machines: 4, irons: 2 } }).sessions.length // => 2
 */
export function planSessions(tasks: readonly Task[], wish: SessionWish): SessionPlan {
  const { room, seed = 1, setUp = USUAL, tidyUp = USUAL } = wish;
  const findings: Diagnostic[] = [];
  const booked = wish.minutes.filter((minutes) => minutes > 0 && Number.isFinite(minutes));
  const usable = (minutes: number): number => minutes - setUp - tidyUp;
  const sessions: PlannedSitting[] = [];
  const groups = groupsOf(tasks);
  if (booked.length === 0 || groups.length === 0) {
    if (booked.length === 0)
      findings.push({
        severity: 'error',
        place: ['sessions'],
        code: 'no session',
        message: 'Give a session some minutes.',
      });
    return { sessions, oneMore: { iron: 0, machine: 0 }, findings };
  }
  let i = 0;
  while (i < groups.length && sessions.length < MOST_SESSIONS) {
    const minutes = booked[Math.min(sessions.length, booked.length - 1)]!;
    const time = usable(minutes);
    let taken = groups[i]!;
    let outlook = outlookOf(taken, room, seed);
    i++;
    if (outlook.most > time) findings.push(tooLong(taken, outlook.most - time, minutes));
    while (i < groups.length) {
      const more = [...taken, ...groups[i]!];
      const then = outlookOf(more, room, seed);
      if (then.most > time) break;
      [taken, outlook] = [more, then];
      i++;
    }
    sessions.push({ minutes, tasks: taken, outlook, spare: time - outlook.most });
  }
  if (i < groups.length)
    findings.push({
      severity: 'error',
      place: ['sessions'],
      code: 'too many sessions',
      message: `Even ${MOST_SESSIONS} sessions are too few for all the tasks.`,
      fix: 'Make the sessions longer.',
    });
  else if (sessions.length > booked.length)
    findings.push({
      severity: 'warning',
      place: ['sessions'],
      code: 'more sessions',
      message: `The making takes ${sessions.length} sessions; ${booked.length} ${booked.length === 1 ? 'is' : 'are'} planned.`,
      fix: 'Let makers finish at home, cut before the class, or plan another session.',
    });
  const saved = (more: Partial<Room>): number =>
    sessions.reduce((sum, { tasks: own, outlook }) => {
      return sum + outlook.most - outlookOf(own, { ...room, ...more }, seed).most;
    }, 0);
  return {
    sessions,
    oneMore: { iron: saved({ irons: room.irons + 1 }), machine: saved({ machines: room.machines + 1 }) },
    findings,
  };
}

/** Tasks that stay together. */
function groupsOf(tasks: readonly Task[]): Task[][] {
  const groups: Task[][] = [];
  let open = false;
  for (const task of tasks) {
    if (open) groups.at(-1)!.push(task);
    else groups.push([task]);
    open = task.keepWithNext;
  }
  return groups;
}

function tooLong(tasks: readonly Task[], over: number, minutes: number): Diagnostic {
  const [first] = tasks;
  const what = tasks.length === 1 ? `“${first!.title}”` : `What begins with “${first!.title}”`;
  return {
    severity: 'warning',
    place: ['sessions'],
    code: 'session too short',
    message: `${what} takes ${Math.ceil(over)} minutes more than a session of ${minutes} minutes has.`,
    fix: 'Make the session longer, or get it ready before the class.',
    amount: over,
  };
}
