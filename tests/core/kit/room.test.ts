/** Queues worked out by hand, one held against the formula for a queue with few customers, and sessions packed. */
import { describe, expect, test } from 'vitest';
import { outlookOf, planSessions, runRoom, sessionLines, tasksOf } from '../../../src/core/kit/index.ts';
import { random } from '../../../src/core/layout/random.ts';
import { folio, shelf } from '../project/files.ts';
import { resolveProject } from '../../../src/core/project/index.ts';
import type { ClassTask, Visit } from '../../../src/core/kit/index.ts';

const iron = (minutes: number): Visit => ({ at: 'iron', minutes });
const machine = (minutes: number): Visit => ({ at: 'machine', minutes });
const table = (minutes: number): Visit => ({ at: 'table', minutes });
const one = { iron: 1, machine: 1 };

describe('a room, worked out by hand', () => {
  test('four makers, one iron, five minutes each: the last is done after 20, and 30 minutes are waited', () => {
    const run = runRoom([[iron(5)], [iron(5)], [iron(5)], [iron(5)]], one);
    expect(run.ends).toEqual([5, 10, 15, 20]);
    expect(run.iron).toEqual({ waited: 5 + 10 + 15, longest: 3, busy: 20 });
    expect(run.machine).toEqual({ waited: 0, longest: 0, busy: 0 });
  });

  test('two irons halve it', () => {
    const run = runRoom([[iron(5)], [iron(5)], [iron(5)], [iron(5)]], { iron: 2, machine: 1 });
    expect(run.ends).toEqual([5, 5, 10, 10]);
    expect(run.iron).toEqual({ waited: 10, longest: 2, busy: 20 });
  });

  test('whoever comes first is served first, whatever their number', () => {
    // The second comes at 1, the first at 3, the third at 2: the iron serves second, third, first.
    const run = runRoom(
      [
        [table(3), iron(4)],
        [table(1), iron(4)],
        [table(2), iron(4)],
      ],
      one,
    );
    expect(run.ends).toEqual([13, 5, 9]);
    expect(run.iron).toEqual({ waited: 3 + 6, longest: 2, busy: 12 });
  });

  test('who waited at the iron comes late to the machine', () => {
    // A: iron 0 to 2, machine 2 to 12. B: iron 2 to 4, machine 12 to 13. C: machine from 0 to 3 delays A to 3.
    const run = runRoom([[iron(2), machine(10)], [iron(2), machine(1)], [machine(3)]], one);
    expect(run.ends).toEqual([13, 14, 3]);
    expect(run.machine).toEqual({ waited: 1 + 9, longest: 1, busy: 14 });
    expect(run.iron.waited).toBe(2);
  });

  test('nobody, and makers with nothing to do', () => {
    expect(runRoom([], one).ends).toEqual([]);
    expect(runRoom([[], [table(4)]], one).ends).toEqual([0, 4]);
  });
});

test('an iron among few makers is in use as the formula for a finite source says', () => {
  // The machine repair model (Palm): N makers come back to one iron after a while at their tables, both exponential.
  // p0 = 1 / sum of N! / (N - k)! r^k for k from 0 to N, where r is ironing over table time; the iron is in use 1 - p0
  // of the time. From memory, as queueing textbooks have it.
  const [makers, ironing, away, rounds] = [6, 3, 12, 4000];
  const r = ironing / away;
  let [sum, term] = [1, 1];
  for (let k = 1; k <= makers; k++) sum += term *= (makers - k + 1) * r;
  const chance = random(7);
  const exponential = (mean: number) => -mean * Math.log(1 - chance.share());
  const visits = Array.from({ length: makers }, () =>
    Array.from({ length: rounds }, () => [table(exponential(away)), iron(exponential(ironing))]).flat(),
  );
  const run = runRoom(visits, one);
  // While everybody is still coming back: until the first is through.
  const inUse = run.iron.busy / Math.max(...run.ends);
  expect(inUse).toBeCloseTo(1 - 1 / sum, 1);
  expect(Math.abs(inUse - (1 - 1 / sum))).toBeLessThan(0.02);
});

const task = (id: string, visits: Visit[], keepWithNext = false): ClassTask => ({
  id,
  title: id,
  minutes: visits.reduce((all, { minutes }) => all + minutes, 0),
  visits,
  keepWithNext,
});
const alone = { makers: 1, machines: 1, irons: 1 };

describe('the outlook of a class', () => {
  const tasks = [task('press', [iron(10)]), task('sew', [machine(10)])];

  test('is the same for the same seed, and another for another', () => {
    const room = { makers: 8, machines: 4, irons: 1 };
    expect(outlookOf(tasks, room, 3)).toEqual(outlookOf(tasks, room, 3));
    expect(outlookOf(tasks, room, 4)).not.toEqual(outlookOf(tasks, room, 3));
  });

  test('one maker never waits; the quickest and the slowest stay within their pace', () => {
    const outlook = outlookOf(tasks, alone);
    expect(outlook).toMatchObject({ alone: 20, waits: { iron: 0, machine: 0 }, queue: { iron: 0, machine: 0 } });
    expect(outlook.half).toBeGreaterThan(20 * 0.75 * 0.8);
    expect(outlook.most).toBeLessThan(20 * 1.5 * 1.2);
    expect(outlook.half).toBeLessThan(outlook.most);
  });

  test('more irons never make anybody wait longer, and as many as makers nobody at all', () => {
    const waits = [1, 2, 4, 8].map((irons) => outlookOf(tasks, { makers: 8, machines: 8, irons }).waits.iron);
    expect(waits).toEqual(waits.toSorted((a, b) => b - a));
    // Eight makers queue for one iron, ten minutes each or a little more: on average 3.5 times that long.
    expect(waits[0]!).toBeGreaterThan(3 * 10);
    expect(waits.at(-1)).toBe(0);
  });
});

describe('sessions', () => {
  const ids = (plan: ReturnType<typeof planSessions>) => plan.sessions.map((one) => one.tasks.map(({ id }) => id));
  // A maker at the table alone, all tasks of 20 minutes: nine in ten are done within 1.5 × 1.2 times that.
  const four = ['a', 'b', 'c', 'd'].map((id) => task(id, [table(20)]));

  test('keep the order, and never part what belongs together', () => {
    const plan = planSessions(four, { minutes: [70], room: alone });
    expect(ids(plan)).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    expect(plan.findings.map(({ code }) => code)).toEqual(['more sessions']);
    const kept = four.map((one) => (one.id === 'b' ? { ...one, keepWithNext: true } : one));
    expect(ids(planSessions(kept, { minutes: [70, 70, 70], room: alone }))).toEqual([['a'], ['b', 'c'], ['d']]);
  });

  test('hold what nine in ten makers manage, setting up and tidying counted in', () => {
    const plan = planSessions(four, {
      minutes: [200],
      setUp: 10,
      tidyUp: 15,
      room: { makers: 6, machines: 2, irons: 2 },
    });
    expect(plan.sessions).toHaveLength(1);
    const { outlook, spare } = plan.sessions[0]!;
    expect(spare).toBeCloseTo(200 - 25 - outlook.most, 9);
    expect(spare).toBeGreaterThan(0);
  });

  test('fill with waiting where irons are few', () => {
    const ironed = ['a', 'b'].map((id) => task(id, [iron(10)]));
    const plan = (irons: number) =>
      planSessions(ironed, { minutes: [60, 60, 60], room: { makers: 6, machines: 1, irons } });
    expect(plan(6).sessions).toHaveLength(1);
    expect(plan(1).sessions.length).toBeGreaterThan(1);
    expect(plan(1).oneMore.iron).toBeGreaterThan(10);
    expect(plan(6).oneMore.iron).toBeCloseTo(0, 9);
  });

  test('count lessons before the making, each in its session', () => {
    const lessons = [
      { title: 'Sums', minutes: 30, session: 1 },
      { title: 'Folds', minutes: 40, session: 2 },
    ];
    const plan = planSessions(four, { minutes: [110, 90, 90], lessons, room: alone });
    expect(plan.sessions.map(({ taught }) => taught)).toEqual([30, 40, 0]);
    expect(ids(plan)).toEqual([['a', 'b'], ['c'], ['d']]);
    for (const { minutes, taught, outlook, spare } of plan.sessions) {
      expect(spare).toBeCloseTo(minutes - 10 - taught - outlook.most, 9);
      expect(spare).toBeGreaterThan(0);
    }
    expect(plan.findings).toEqual([]);
    // Without them the same makers are done in two.
    expect(planSessions(four, { minutes: [110, 90, 90], room: alone }).sessions).toHaveLength(2);
  });

  test('a lesson of no session goes where there is room, and not before the one it follows', () => {
    const lesson = (title: string, minutes: number, session?: number) => ({ title, minutes, session });
    const seats = (minutes: number[], ...lessons: ReturnType<typeof lesson>[]) =>
      planSessions([], { minutes, lessons, room: alone }).sessions.map((one) => one.lessons.map(({ title }) => title));
    expect(seats([60, 60], lesson('a', 30), lesson('b', 30), lesson('c', 20))).toEqual([['a'], ['b', 'c']]);
    expect(seats([60, 60], lesson('a', 10, 2), lesson('b', 10))).toEqual([[], ['a', 'b']]);
    // A class that meets less often than the course says has it in its last session.
    expect(seats([90], lesson('a', 10, 3))).toEqual([['a']]);
  });

  test('lessons that are longer than their session are told at it', () => {
    const lessons = [{ title: 'Sums', minutes: 55, session: 2 }];
    const { findings } = planSessions([], { minutes: [60, 60], lessons, room: alone });
    expect(findings).toMatchObject([{ severity: 'warning', place: ['sessions', 1, 'minutes'], amount: 5 }]);
  });

  test('what does not fit waits for a longer session, if one is planned', () => {
    const long = [task('quilt', [table(60)])];
    expect(ids(planSessions(long, { minutes: [60, 150], room: alone }))).toEqual([[], ['quilt']]);
    expect(planSessions(long, { minutes: [60, 150], room: alone }).findings).toEqual([]);
    expect(ids(planSessions(long, { minutes: [60, 60], room: alone }))).toEqual([['quilt']]);
  });

  test('a session without minutes is as long as it has to be', () => {
    const plan = planSessions(four, { minutes: [70, undefined], room: alone });
    expect(ids(plan)).toEqual([
      ['a', 'b'],
      ['c', 'd'],
    ]);
    const { minutes, outlook, spare } = plan.sessions[1]!;
    expect(minutes).toBe(Math.ceil(outlook.most + 10));
    expect(spare).toBeLessThan(1);
    expect(plan.findings).toEqual([]);
  });

  test('a task that is longer than any session is told, and planned all the same', () => {
    const plan = planSessions([task('quilt', [machine(300)])], { minutes: [90], room: alone });
    expect(ids(plan)).toEqual([['quilt']]);
    expect(plan.sessions[0]!.spare).toBeLessThan(0);
    expect(plan.findings[0]!.message).toMatch(/^“quilt” takes \d+ minutes more than a session of 90 minutes has\.$/);
  });

  test('no sessions, no minutes, no tasks', () => {
    expect(planSessions(four, { minutes: [], room: alone })).toMatchObject({
      sessions: [],
      findings: [{ code: 'no session' }],
    });
    expect(planSessions(four, { minutes: [-5, NaN], room: alone }).findings).toHaveLength(1);
    expect(planSessions([], { minutes: [60], room: alone })).toMatchObject({ sessions: [], findings: [] });
    expect(planSessions(four, { minutes: [60], setUp: 40, tidyUp: 40, room: alone }).sessions).toHaveLength(4);
  });

  test('the folio’s steps are all planned, once and in order', () => {
    // Of its eight pieces the teacher cuts two.
    const tasks = tasksOf(resolveProject(folio(), { materials: shelf() }));
    const plan = planSessions(tasks, { minutes: [90, 90, 150], room: { makers: 8, machines: 4, irons: 2 } });
    expect(plan.sessions.flatMap((one) => one.tasks)).toEqual(tasks);
    expect(tasks[0]).toMatchObject({ id: 'cut', title: 'Cut the 6 pieces' });
    for (const { minutes, visits } of tasks)
      expect(visits.reduce((sum, visit) => sum + visit.minutes, 0)).toBeCloseTo(minutes, 6);
  });
});

describe('a session in words', () => {
  const task = (id: string, visits: ClassTask['visits']): ClassTask => ({
    ...{ id, title: id, visits, keepWithNext: false },
    minutes: visits.reduce((sum, { minutes }) => sum + minutes, 0),
  });
  const tasks = [task('press', [{ at: 'iron', minutes: 6 }]), task('sew', [{ at: 'machine', minutes: 10 }])];
  const lessons = [{ title: 'Look', minutes: 20 }];
  const room = { makers: 8, machines: 2, irons: 1 };
  const [sitting] = planSessions(tasks, { minutes: [240], lessons, room }).sessions;

  test('the clock goes on from setting up to tidying up, and says who waits where', () => {
    const lines = sessionLines(sitting!, '18:30');
    expect(lines.map(({ what }) => what)).toEqual(['Set up', 'Lesson: Look', 'press', 'sew', 'Tidy up']);
    expect(lines.map(({ until }) => until).slice(0, 2)).toEqual(['18:35', '18:55']);
    expect(lines.at(-1)!.until).toBe('22:30');
    // Eight come to one iron at once: seven stand and wait. From 3.5 turns of six minutes on average, a little less or more.
    expect(lines[2]!.waiting).toMatch(/^up to 7 at the iron, (?:19|2[0-4]) min each$/);
    const minutes = lines.map(({ until }) => until.split(':').map(Number)).map(([h = 0, m = 0]) => 60 * h + m);
    expect(minutes).toEqual(minutes.toSorted((a, b) => a - b));
  });

  test('without a time of day the minutes are counted, and past midnight the day begins anew', () => {
    expect(sessionLines(sitting!)[1]!.until).toBe('0:25');
    expect(sessionLines(sitting!, '23:50')[1]!.until).toBe('0:15');
  });

  test('the last task is done when the whole is, and nobody waits where there is enough of everything', () => {
    expect(sitting!.outlook.tasks.at(-1)!.most).toBeCloseTo(sitting!.outlook.most, 9);
    const enough = planSessions(tasks, { minutes: [240], room: { makers: 8, machines: 8, irons: 8 } }).sessions[0]!;
    expect(sessionLines(enough).every(({ waiting }) => waiting === '')).toBe(true);
  });
});
