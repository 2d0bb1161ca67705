import { expect, test } from 'vitest';
import { classPlan, resolveProject, type Plan } from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';

const plan: Plan = {
  title: 'A folio',
  summary: 'Make a folio.',
  level: 'first steps',
  makers: 8,
  spares: 1,
  sessions: [],
  defersTo: 'The manuals go first.',
};

/** Everything that stands on the pages of a plan. */
const words = (of: Plan): string =>
  classPlan(of, resolveProject(folio(), { materials: shelf() }), { paper: 'A4' })
    .pages.flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])))
    .join(' ');

test('the class plan counts the machines of the room: needles and spools are for them', () => {
  expect(words({ ...plan, machines: 3 })).toMatch(/Planned for 8 makers at 3 machines, with 1 set to spare/u);
  expect(words({ ...plan, machines: 3 })).toMatch(/3 of NM \d+ \(US \d+\)/u);
  expect(words(plan)).toMatch(/Planned for 8 makers, with 1 set to spare/u);
  expect(words(plan)).toMatch(/8 of NM \d+ \(US \d+\)/u);
});
