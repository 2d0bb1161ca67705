import { expect, test } from 'vitest';
import { classPlan, planSessions, resolveProject, sessionLines, tasksOf, type Plan } from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';

const plan: Plan = {
  title: 'A folio',
  summary: 'Make a folio.',
  level: 'first steps',
  makers: 8,
  spares: 1,
  machines: 4,
  irons: 2,
  sessions: [{ title: 'Begin', minutes: 150 }, { title: 'Go on', minutes: 150 }, { title: 'Make it up' }],
  lessons: [{ title: 'Size it', summary: 'The sums.', minutes: 35, session: 1, shows: [], cautions: [] }],
  defersTo: 'The manuals go first.',
};

/** Everything that stands on the pages of a plan. */
const words = (of: Plan): string =>
  classPlan(of, resolveProject(folio(), { materials: shelf() }), { paper: 'A4' })
    .pages.flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])))
    .join(' ');

test('the class plan counts the machines of the room: needles and spools are for them', () => {
  expect(words({ ...plan, machines: 3 })).toMatch(
    /Planned for 8 makers at 3 machines and 2 irons, with 1 set to spare/u,
  );
  expect(words({ ...plan, machines: 3 })).toMatch(/3 of NM \d+ \(US \d+\)/u);
  expect(words({ ...plan, machines: 1, spares: 2 })).toMatch(/at 1 machine and 2 irons, with 2 sets to spare/u);
  expect(words(plan)).toMatch(/4 of NM \d+ \(US \d+\)/u);
});

test('it is the plan that the page and the check tell, lessons and making in their sessions', () => {
  const pattern = resolveProject(folio(), { materials: shelf() });
  const tasks = tasksOf(pattern);
  const { sessions } = planSessions(tasks, {
    minutes: [150, 150, undefined],
    lessons: plan.lessons,
    room: { makers: 8, machines: 4, irons: 2 },
  });
  expect(sessions.map(({ taught }) => taught)).toEqual([35, 0, 0]);
  expect(sessions.flatMap((one) => one.tasks)).toEqual(tasks);
  const text = words(plan);
  for (const [i, { minutes, taught, outlook, tasks: own }] of sessions.entries()) {
    const { title } = plan.sessions[i]!;
    expect(text).toContain(`${i + 1}. ${title}`);
    expect(text).toContain(`${minutes} ${taught} ${Math.ceil(outlook.most)}`);
    for (const task of own.slice(0, 2)) expect(text).toContain(task.title.split(' ').slice(0, 4).join(' '));
  }
  expect(text).toContain('Size it (35)');
});

test('a plan that its sessions cannot hold says so on paper', () => {
  const short = words({ ...plan, sessions: [{ title: 'Begin', minutes: 60 }] });
  expect(short).toMatch(/Lessons and making take \d+ sessions; 1 is planned/u);
  expect(short).toContain('Not planned yet');
  expect(words(plan)).not.toMatch(/planned yet|Lessons and making take \d/u);
});

test('the clock and the queues are printed line for line as the page shows them', () => {
  const begins = '18:30';
  const [first, ...others] = plan.sessions;
  const text = words({ ...plan, sessions: [{ ...first!, begins }, ...others] }).replace(/\s+/gu, ' ');
  const { sessions } = planSessions(tasksOf(resolveProject(folio(), { materials: shelf() })), {
    minutes: plan.sessions.map(({ minutes }) => minutes),
    lessons: plan.lessons,
    room: plan,
  });
  for (const [i, sitting] of sessions.entries()) {
    for (const { until, waiting } of sessionLines(sitting, i === 0 ? begins : undefined)) {
      expect(text).toContain(until);
      for (const word of waiting.split(' ')) expect(text).toContain(word);
    }
  }
  expect(text).toContain('18:35 Set up 5');
});
