/** Packs the lessons of a course and the tasks of its project into the sessions of a class. */
import { quote } from '../measure/index.ts';
import type { Diagnostic } from '../measure/index.ts';
import { outlookOf } from './simulate.ts';
import type { Outlook, Room } from './simulate.ts';
import type { Station, ClassTask } from './tasks.ts';

/** A lesson that is held in a class: it is shown and talked over, and takes so many minutes of a session. */
export type Taught = {
  title: string;
  minutes: number;
  /** The session it belongs to, counted from 1; left out, the first that has room for it. */
  session?: number | undefined;
};

export type SessionOptions = {
  /**
   * Minutes of each session; when they are used up, the last one's length is taken on. One that is left out is as long
   * as it has to be.
   */
  minutes: readonly (number | undefined)[];
  /** Lessons in their order; none if left out. In each session they come before the making. */
  lessons?: readonly Taught[];
  /** At the beginning, to set up, and at the end, to tidy. Five each if left out (common practice, no source). */
  setUp?: number;
  tidyUp?: number;
  room: Room;
  seed?: number;
};

export type PlannedSitting = {
  /** As long as the room is booked, or has to be. */
  minutes: number;
  lessons: Taught[];
  /** Minutes of its lessons. */
  taught: number;
  tasks: ClassTask[];
  outlook: Outlook;
  /** Minutes for setting up before and tidying up after. */
  setUp: number;
  tidyUp: number;
  /** Minutes left when nine in ten makers are done, lessons and tidying included; below 0 it is too short. */
  spare: number;
};

export type SessionPlan = {
  sessions: PlannedSitting[];
  /** What one more iron or one more machine would save nine in ten makers, over all sessions, in minutes. */
  oneMore: Record<Station, number>;
  /** Their place is `sessions`, and of one session `sessions`, its index and `minutes`. */
  findings: Diagnostic[];
};

const USUAL = 5;
/** More sessions than this are a sign that the minutes are too few for anything. */
const MOST_SESSIONS = 40;

/**
 * The plan of a class, which pages, paper and check tell alike: lessons stand in their sessions; tasks stay in order, a
 * task is never parted, and those that belong together stay in one session. A session takes tasks as long as nine in ten
 * makers are done in time, waiting at irons and machines counted in.
 *
 * @example
 * planSessions(tasks, { minutes: [90, 90], room: { makers: 8, machines: 4, irons: 2 } }).sessions.length // => 2
 */
export function planSessions(tasks: readonly ClassTask[], wish: SessionOptions): SessionPlan {
  const { room, seed = 1, setUp = USUAL, tidyUp = USUAL } = wish;
  const findings: Diagnostic[] = [];
  const booked = wish.minutes.map((minutes = Infinity) => minutes).filter((minutes) => minutes > 0);
  const groups = groupsOf(tasks);
  const sessions: PlannedSitting[] = [];
  if (booked.length === 0) {
    const message = 'Give a session some minutes.';
    findings.push({ severity: 'error', place: ['sessions'], code: 'no session', message });
    return { sessions, oneMore: { iron: 0, machine: 0 }, findings };
  }
  const usable = booked.map((minutes) => minutes - setUp - tidyUp);
  const lessons = seated(wish.lessons ?? [], usable);
  const last = lessons.findLastIndex((own) => own.length > 0);
  let i = 0;
  while ((i < groups.length || sessions.length <= last) && sessions.length < MOST_SESSIONS) {
    const n = sessions.length;
    const at = Math.min(n, booked.length - 1);
    const [minutes, own] = [booked[at]!, lessons[n] ?? []];
    const taught = minutesOf(own);
    const time = usable[at]! - taught;
    if (time < 0 && taught > 0) findings.push(lessonsTooLong(n, minutes, taught, -time));
    let taken: readonly ClassTask[] = [];
    let outlook = outlookOf([], room, seed);
    while (i < groups.length) {
      const more = [...taken, ...groups[i]!];
      const then = outlookOf(more, room, seed);
      if (then.most > time) {
        // It waits for a longer session, if one is planned.
        const later = usable.some((one, s) => s > n && one - minutesOf(lessons[s] ?? []) > time);
        if (taken.length > 0 || later) break;
        if (time >= 0 || taught === 0) findings.push(tooLong(more, then.most - time, n, minutes, taught));
      }
      [taken, outlook] = [more, then];
      i++;
      if (then.most > time) break;
    }
    const needed = setUp + taught + outlook.most + tidyUp;
    const long = minutes === Infinity ? Math.ceil(needed) : minutes;
    outlook = outlookOf(taken, room, seed, undefined, true);
    sessions.push({
      minutes: long,
      lessons: own,
      taught,
      tasks: [...taken],
      outlook,
      setUp,
      tidyUp,
      spare: long - needed,
    });
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
      message:
        `${lessons.length > 0 ? 'Lessons and making take' : 'The making takes'} ${sessions.length} sessions; ` +
        `${booked.length} ${booked.length === 1 ? 'is' : 'are'} planned.`,
      fix: 'Make the sessions longer, plan another, let makers finish at home, or get more ready before the class.',
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

const minutesOf = (lessons: readonly Taught[]): number => lessons.reduce((sum, { minutes }) => sum + minutes, 0);

/** The lessons of each session. One that belongs to none goes where there is room, and not before the one it follows. */
function seated(lessons: readonly Taught[], usable: readonly number[]): Taught[][] {
  if (lessons.length === 0) return [];
  const seats = usable.map((): Taught[] => []);
  const most = seats.length - 1;
  for (const lesson of lessons) {
    if (lesson.session !== undefined) seats[Math.min(Math.max(lesson.session, 1) - 1, most)]!.push(lesson);
  }
  let from = 0;
  for (const lesson of lessons) {
    if (lesson.session !== undefined) {
      from = Math.max(from, Math.min(lesson.session - 1, most));
      continue;
    }
    const room = (s: number): boolean => minutesOf(seats[s]!) + lesson.minutes <= usable[s]!;
    while (from < most && !room(from)) from++;
    seats[from]!.push(lesson);
  }
  return seats;
}

/** Tasks that stay together. */
function groupsOf(tasks: readonly ClassTask[]): ClassTask[][] {
  const groups: ClassTask[][] = [];
  let open = false;
  for (const task of tasks) {
    if (open) groups.at(-1)!.push(task);
    else groups.push([task]);
    open = task.keepWithNext;
  }
  return groups;
}

function tooLong(
  tasks: readonly ClassTask[],
  over: number,
  session: number,
  minutes: number,
  taught: number,
): Diagnostic {
  const what = tasks.length === 1 ? quote(tasks[0]!.title) : `What begins with ${quote(tasks[0]!.title)}`;
  const beside = taught > 0 ? ` beside its lessons (${taught})` : '';
  return {
    severity: 'warning',
    place: ['sessions', session, 'minutes'],
    code: 'session too short',
    message: `${what} takes ${Math.ceil(over)} minutes more than a session of ${minutes} minutes has${beside}.`,
    fix: 'Make the session longer, or get it ready before the class.',
    amount: over,
  };
}

function lessonsTooLong(session: number, minutes: number, taught: number, over: number): Diagnostic {
  return {
    severity: 'warning',
    place: ['sessions', session, 'minutes'],
    code: 'session too short',
    message: `Session ${session + 1} has ${minutes} minutes with setting up and tidying up, and its lessons take ${taught}.`,
    fix: 'Make it longer, or move a lesson to another session.',
    amount: over,
  };
}
