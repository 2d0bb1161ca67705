/**
 * How long a list and a plan take to reckon, as when a teacher changes a number, and how far the laid lengths of the
 * list are from what no layout can undercut.
 *
 *     node tests/bench/kit.ts
 */
import { kitFor, makeUp, planSessions, resolveProject, tasksOf } from '../../src/core/index.ts';
import { folio, shelf } from '../core/project/files.ts';

const RUNS = 15;
const pattern = resolveProject(folio(), { materials: shelf() });
makeUp(pattern);

const median = (act: () => unknown): string => {
  const times = Array.from({ length: RUNS }, () => {
    const start = performance.now();
    act();
    return performance.now() - start;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(RUNS / 2)]!.toFixed(0);
};

for (const makers of [1, 8, 12, 30]) {
  const group = { makers, spares: makers > 1 ? 1 : 0, machines: 4 };
  const cloths = kitFor(pattern, group).lines.filter((line) => line.kind === 'cloth');
  const over = cloths.map(({ layout }) => 100 * (layout.length / layout.bound.length - 1));
  const ms = median(() => kitFor(pattern, group));
  const worst = Math.max(...over).toFixed(1);
  console.log(
    `list for ${makers}: median ${ms} ms; ${cloths.filter(({ layout }) => layout.proven).length} of ${cloths.length} lengths proven shortest, the others at most ${worst} % above the bound`,
  );
}
const tasks = tasksOf(pattern);
for (const makers of [8, 30]) {
  const wish = { minutes: [90, 90, 150], room: { makers, machines: Math.ceil(makers / 2), irons: 2 } };
  console.log(`plan for ${makers} makers: median ${median(() => planSessions(tasks, wish))} ms`);
}
