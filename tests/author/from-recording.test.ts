/** Drafts from a recording: whole files, as an author gets them. The recording is invented. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { make, readWords, requestFrom } from '../../src/author/new.ts';
import { isError } from '../../src/site/content/diagnostic.ts';
import { findContentProblems } from '../../src/site/check/find-content-problems.ts';
import { readContent } from '../../src/site/content/read-content.ts';
import { contentFolder, GOOD } from '../site/content-folder.ts';

const read = (root: string, file: string) => readFileSync(path.join(root, file), 'utf8');
const mistakes = (root: string) =>
  findContentProblems(root)
    .filter(isError)
    .map(({ file, line, message }) => `${file}:${line} ${message}`);

const COURSE = 'title: Mats\nsummary: A mat to put a cup on.\nlevel: first steps\nlessons:\n  - 01-cut.mdx\n';
const LESSON = '---\ntitle: Cut\nsummary: Cut it.\nminutes: 5\n---\n\nCut it.\n';
const MAT = `0:05 so um today we make a tea mat cut the lining ten inches by seven inches
0:20 the seam allowance is a quarter of an inch now sew the lining right sides together
0:40 then turn it and press {it} <well> topstitch an eighth of an inch from the edge
0:50 and sew the strap five inches long
`;
const mats = (more: Record<string, string | undefined> = {}) =>
  contentFolder({
    'content/courses/mats/course.yaml': COURSE,
    'content/courses/mats/01-cut.mdx': LESSON,
    'content/courses/mats/recordings/mat.txt': MAT,
    ...more,
  });

test('without a project there is a draft of one, and it has no mistake', () => {
  const root = mats();
  const made = make(root, { kind: 'lesson', course: 'mats', name: 'The mat', recording: 'mat' });
  expect(made).toMatchObject({
    ok: true,
    written: [
      'content/courses/mats/02-the-mat.mdx',
      'content/projects/mat/project.yaml',
      'content/courses/mats/recordings/mat.yaml',
    ],
    changed: ['content/courses/mats/course.yaml'],
  });
  const project = read(root, 'content/projects/mat/project.yaml');
  // Sizes under the names that were said beside them, each with its second.
  expect(project).toMatch(/# 0:\d\d “.*seam allowance.*\n.*other ruler\?\n {2}seam: \{ in: 1\/4, label: Seam \}/);
  expect(project).toMatch(/\n {2}strap height: \{ in: 5, label: Strap height \}/);
  expect(project).toMatch(/\n {2}row: \{ in: 1\/8, /);
  expect(project).toMatch(
    /# 0:\d\d “.*” Is this with the seam allowance\?\n {2}lining:\n {4}label: Lining\n {4}size: \[10 in, 7 in\]/,
  );
  expect(project).toMatch(/ {2}# strap: named at 0:40\. How wide and how high is it cut\?/);
  // “It” may be anything, and two things are done: nothing is sure.
  expect(project).toMatch(
    /\n# {3}0:40 Then turn it and press .*\n# {5}- \{ turn: \? \} Is it “turn” or “topstitch”\?\n/,
  );
  const lesson = read(root, 'content/courses/mats/02-the-mat.mdx');
  expect(lesson).toContain('project: mat\n');
  expect(lesson).toContain('the seam allowance is <Size of="seam" />.');
  // Filler is dropped, signs mean nothing.
  expect(lesson).not.toMatch(/\bum\b/);
  expect(lesson).toContain('press \\{it\\} \\<well\\>');
  expect(mistakes(root)).toEqual([]);
});

test('a draft of a project has steps where verb, works and sizes were heard for sure, and the others are asked', () => {
  const root = mats({
    'content/courses/mats/recordings/mat.txt': `0:05 today we make a tea mat cut the lining ten inches by seven inches
0:12 and the pocket is six inches by five inches the seam allowance is a quarter of an inch
0:20 now fold the bottom of the pocket under by half an inch
0:30 next hem the top of the pocket a quarter inch and then another half an inch
0:42 now lay the pocket on the lining three inches down from the top
0:55 then topstitch it an eighth of an inch from the edge
1:05 we will fold the top of the lining down by one inch later
1:15 now turn the lining right side out through the gap
`,
  });
  expect(make(root, { kind: 'lesson', course: 'mats', name: 'The mat', recording: 'mat' }).ok).toBe(true);
  const project = read(root, 'content/projects/mat/project.yaml');
  const steps = project.slice(project.indexOf('\nsteps:\n') + 1);
  // By hand: what is folded, from where and by how much is all said; a hem’s second turn, too. Half an inch has one name.
  expect(project).toContain('  size at 0 27: { in: 1/2, label: Size at 0 27 }\n');
  expect(steps).toContain('  # 0:20 Now fold the bottom of the pocket under by half an inch.\n');
  expect(steps).toContain('  - { id: fold-pocket, fold: pocket, at: size at 0 27, from: bottom, lands: under }\n');
  expect(steps).toContain('  - { id: hem-pocket, hem: pocket, fold: "1/4 in", at: top, then: size at 0 27 }\n');
  // Where three inches go is not said by any field that must be there.
  expect(steps).toMatch(
    / {2}# {3}What is “three inches”\?\n {2}- \{ id: lay-pocket, lay: pocket, on: lining, at: top \}\n/,
  );
  // Of what comes later nobody knows whether it is done here, and nothing can be turned that is not sewn together.
  expect(steps).toMatch(/# 0:55 .*\n {2}# {3}- \{ topstitch: lining \} Is it done here, or only spoken of\?\n/);
  expect(steps).toMatch(/# 1:15 .*\n {2}# {3}- \{ id: turn-lining, turn: lining \} The work cannot be done so here\./);
  const [draft] = readContent(root).projects.filter(({ id }) => id === 'mat');
  expect(draft?.value?.steps?.map(({ id }) => id)).toEqual(['fold-pocket', 'hem-pocket', 'lay-pocket']);
  const lesson = read(root, 'content/courses/mats/02-the-mat.mdx');
  for (const id of ['fold-pocket', 'hem-pocket', 'lay-pocket']) expect(lesson).toContain(`<Step id="${id}"`);
  expect(mistakes(root)).toEqual([]);
});

test('with a project the steps are headings, and what nobody says is to decide', () => {
  const root = contentFolder({
    'content/courses/pleats/recordings/whole.txt':
      '0:05 hello today we make the folio\n0:12 now pleat the strip fold it at the ticks and press the pleats\n0:40 that is it bye\n',
  });
  const made = make(root, { kind: 'lesson', course: 'pleats', name: 'whole', recording: 'whole' });
  expect(made.ok).toBe(true);
  const lesson = read(root, 'content/courses/pleats/03-whole.mdx');
  const { projects } = readContent(root);
  const steps = (projects[0]?.value?.steps ?? []).flatMap(({ id }) => (typeof id === 'string' ? [id] : []));
  for (const id of steps) expect(lesson).toContain(`<Step id="${id}"`);
  expect(lesson).toContain('<Recording name="whole" />');
  expect(mistakes(root)).toEqual([]);
});

test('a recording of an apron reads as an instructor would write it down, and what is unsure is to decide', () => {
  const file = (name: string) => readFileSync(path.join(import.meta.dirname, '../fixtures', name), 'utf8');
  const apron = {
    'content/materials.yaml': `${GOOD['content/materials.yaml']}\n${file('classes/materials.yaml')}`,
    'content/projects/half-apron/project.yaml': file('classes/half-apron.yaml').replace(
      '{ hem: skirt, at: bottom',
      '{ id: bottom, hem: skirt, at: bottom',
    ),
    'content/courses/mats/course.yaml': COURSE.replace('level', 'project: half-apron\nlevel'),
    'content/courses/mats/recordings/mat.vtt': file('recordings/half-apron.vtt'),
    'content/courses/mats/recordings/mat.txt': undefined,
  };
  const root = mats(apron);
  expect(make(root, { kind: 'lesson', course: 'mats', name: 'Apron', recording: 'mat' }).ok).toBe(true);
  const lesson = read(root, 'content/courses/mats/02-apron.mdx');
  const sentence = lesson.split('\n').filter((line) => /^(?:[A-Z]|<Size)/.test(line));
  expect(sentence.length).toBeGreaterThan(70);
  expect(sentence.every((one) => /[.?]$/.test(one))).toBe(true);
  const words = sentence.map((one) => one.replace(/<Size[^>]*>/g, 'size').split(' ').length);
  expect(words.filter((count) => count <= 30).length / words.length).toBeGreaterThan(0.9);
  expect(lesson).toContain('those are <Size of="tie length" /> wide and <Size of="tie width" /> long.');
  expect(lesson).toContain('Now you\'ve got a pocket that\'s <Size of="pocket side" /> square');
  expect(lesson).toContain('{/* decide 4:09: “him” may have been “hem” */}');
  // Four inches of thread are as long as something of the project, and no size of it.
  expect(lesson).toContain('four inches of thread');
  // One step has an id, the others cannot be named: its tag, and the one in the comment that says so.
  expect(lesson.match(/<Step /g)).toHaveLength(2);
  expect(lesson).toContain('<Step id="bottom">');
  expect(lesson.match(/Thank you so much/g)).toHaveLength(1);
  expect(mistakes(root)).toEqual([]);
});

test('what cannot be drafted from is said, and nothing is written', () => {
  const root = mats({ 'content/courses/mats/recordings/bad.vtt': 'WEBVTT\n\n00:05.000 --> 00:01.000\nx\n' });
  const why = (course: string, recording: string) => {
    const made = make(root, { kind: 'lesson', course, name: 'x', recording });
    return made.ok ? '' : made.why;
  };
  expect(why('mats', 'mta')).toBe(
    'There is no recording “mta”. Did you mean “mat”? It lies in content/courses/mats/recordings.',
  );
  expect(why('mats', 'bad')).toBe(
    'content/courses/mats/recordings/bad.vtt has a mistake. Mend it first: npm run check tells where.',
  );
  expect(read(root, 'content/courses/mats/course.yaml')).toBe(COURSE);
  make(root, { kind: 'lesson', course: 'mats', name: 'The mat', recording: 'mat' });
  const again = make(root, { kind: 'lesson', course: 'mats', name: 'Again', recording: 'mat' });
  expect(again.ok).toBe(true); // its project is there now, and the recording names it
  expect(mistakes(root)).toEqual(['content/courses/mats/recordings/bad.vtt:3 This line ends before it begins.']);
});

test('the command takes the name of the recording for the lesson, too', async () => {
  const content = readContent(mats());
  const never = () => Promise.reject(new Error('asked'));
  const words = readWords(['lesson', 'mats', '--from-recording', 'mat'], {});
  expect(words.ok && (await requestFrom(words, content, never))).toEqual({
    ...{ kind: 'lesson', course: 'mats', name: 'mat', title: undefined, recording: 'mat' },
  });
});
