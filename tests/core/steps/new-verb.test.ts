/** A verb is one file and its line in the list: in a copy of the kit a made-up one is added so, and looked for everywhere. */
import { execFileSync } from 'node:child_process';
import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { copyKit } from '../../copy-kit.ts';

const FILE = `
import { edges, length, optional, work } from '../fields.ts';
import { lay } from '../../cloth/lay.ts';
import { trim } from '../../cloth/trim.ts';
import { verb } from '../verb.ts';

export const pinking = verb({
  name: 'pink out',
  fields: {
    'pink out': work('Cuts an edge in teeth.'),
    at: edges('the edge that gets teeth.'),
    depth: length('from the tip of a tooth to its root.'),
    over: optional(length('how far the teeth stand out.')),
  },
  cuts: true,
  ironsFirst: true,
  handling: 6,
  title: ({ 'pink out': cloth, at }) => 'Pink out the ' + cloth + ' at ' + at.join(' and '),
  tools: () => ['iron', 'scissors', 'pins'],
  pressing: () => 'a fold',
  cautions: () => ['blade'],
  apply: ({ at, depth }, { 'pink out': cloth }) => trim(cloth, { edge: at[0]!, by: depth }),
});
`;

const PROJECT = `
title: Panels
units: metric
measures: { seam: { mm: 6 }, tooth: { mm: 8 } }
materials: { outer: vinyl }
pieces:
  front: { size: [100 mm, 80 mm], from: outer }
steps:
  - { id: teeth, pink out: front, at: top, depth: tooth }
`;

const LOOK = `
import { parse } from 'yaml';
import { checkAll, drawStep, makeUp, MaterialsFile, ProjectFile, check, resolveProject, tasksOf } from './src/core/index.ts';
import { editorFiles } from './src/site/content/editor-files.ts';
import { fieldsOf } from './src/site/pages/reference.ts';

const file = ProjectFile.parse(parse(process.argv[2]));
const source = 'made up';
const materials = MaterialsFile.parse({ vinyl: { kind: 'cloth', heat: { celsius: 60, source }, holes: 'stay' } });
const pattern = resolveProject(file, { materials });
const wrong = { ...file, steps: [{ 'pink out': 'front', at: 'top', gap: { edge: 'top', length: '1 cm' } }] };
const [step] = makeUp(pattern);
const lines = (findings) => findings.map(({ message, fix }) => [message, fix].filter(Boolean).join(' '));
console.log(JSON.stringify({
  json: JSON.parse(editorFiles().get('.schema/project.json')).definitions.Step.properties,
  reference: fieldsOf(ProjectFile).filter(({ path }) => path[0] === 'steps'),
  step: { ...step, before: undefined, after: undefined },
  tasks: tasksOf(pattern),
  drawn: drawStep(step, pattern).text,
  findings: lines(check(pattern)),
  wrong: lines(check(resolveProject(wrong, { materials }))),
}));
`;

type Seen = {
  json: Record<string, { description?: string }>;
  reference: { path: string[]; about: string }[];
  step: { title: string; size: { height: number }; minutes: { value: number }; tools: string[]; cautions: string[] };
  tasks: { id: string; visits: { at: string }[] }[];
  drawn: string[];
  findings: string[];
  wrong: string[];
};

describe('a verb that was added', () => {
  let seen: Seen;
  let remove: () => Promise<void>;

  beforeAll(async () => {
    const copy = await copyKit();
    ({ remove } = copy);
    const verbs = path.join(copy.folder, 'src/core/steps/verbs');
    await writeFile(path.join(verbs, 'pinking.ts'), FILE);
    const list = path.join(verbs, 'index.ts');
    const before = await readFile(list, 'utf8');
    const after = `import { pinking } from './pinking.ts';\n${before.replace('\n] as const', '\n  pinking,\n] as const')}`;
    await writeFile(list, after);
    await writeFile(path.join(copy.folder, 'look.ts'), LOOK);
    const out = execFileSync(process.execPath, ['look.ts', PROJECT], { cwd: copy.folder, encoding: 'utf8' });
    seen = JSON.parse(out) as Seen;
  }, 60_000);

  afterAll(() => remove());

  it('is in the schema that an editor reads, with what its fields mean', () => {
    expect(seen.json['pink out']?.description).toBe('Cuts an edge in teeth.');
    expect(seen.json['over']?.description).toBe('pink out: how far the teeth stand out.');
    expect(seen.json['depth']?.description).toBe(
      'tuck: from its fold to its stitches. pink out: from the tip of a tooth to its root.',
    );
  });

  it('is in the authoring reference', () => {
    const told = new Map(seen.reference.map((field) => [field.path.at(-1), field.about]));
    expect(told.get('pink out')).toBe('Cuts an edge in teeth.');
    expect(told.get('at')).toContain('pink out: the edge that gets teeth.');
  });

  it('is read, done to the cloth, and told', () => {
    expect(seen.step).toMatchObject({ id: 'teeth', verb: 'pink out', title: 'Pink out the front at top' });
    expect(seen.step.size.height).toBe(72);
    // 1 to get ready, 6 of handling, and 1 for the fold that is pressed, each twice as long for a learner.
    expect(seen.step.minutes.value).toBe(16);
    expect(seen.step.tools).toEqual(['iron', 'scissors', 'clips']);
    expect(seen.step.cautions).toEqual(['iron', 'scissors', 'coating', 'blade']);
  });

  it('is drawn by its traits, and planned for a class', () => {
    expect(seen.drawn).toContain('Cloth is cut away along the marked lines.');
    const task = seen.tasks.find(({ id }) => id === 'teeth');
    expect(task?.visits.map(({ at }) => at)).toEqual(['table', 'iron']);
  });

  it('is checked like any other', () => {
    expect(seen.findings).toEqual([
      'This step needs an iron, whose coolest setting, one dot, is 110 °C (230 °F). “vinyl” takes only 60 °C (140 °F). Crease it with a bone folder, or topstitch it flat.',
      'Holes stay in “vinyl”, so this step cannot be pinned. Hold it with clips, and unpick nothing.',
    ]);
    expect(seen.wrong).toEqual([
      '“gap” does not belong to “pink out”. With “pink out” go “at”, “depth” and “over”.',
      '“pink out” needs “depth” too.',
    ]);
  });
});
