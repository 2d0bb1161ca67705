/**
 * How long a large course takes to build: 200 lessons and 20 projects with all their studies and questions, against
 * the same prose as plain Astro pages; and whether the time grows in step with the number of lessons. What counts is the
 * processor's time, which other work on the machine changes little, and the most memory that a build holds.
 *
 * The plain lessons are what somebody would type who has no kit (`by-hand.ts`): every sentence that the author wrote,
 * hints and replies among them, the sizes in figures, and the sums in TeX, set by the same KaTeX, in pages of one frame
 * and style. What nobody types is not in them: the drawings, the studies, the lists and the steps that the kit works
 * out. Nor are the sheets and the pages of courses, of which the kit makes 85. So the kit is measured with all that it
 * makes against what a plain site can hold of it.
 *
 * What both keep of their programs from one build to the next is there: a first build of each comes before, and is told
 * by itself. Of the content nothing is left.
 *
 *     node tests/bench/build.ts
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cp, mkdir, mkdtemp, readFile, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { MaterialsFile, ProjectFile, resolveProject } from '../../src/core/index.ts';
import type { Pattern } from '../../src/core/index.ts';
import { byHand } from './by-hand.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bench = await mkdtemp(path.join(os.tmpdir(), 'course-'));
const sizes = (process.argv[2] ?? '50,100,200').split(',').map(Number);
const PER_COURSE = 10;

try {
  const kit = await kitHouse();
  const plain = await plainHouse();
  const pattern = await demoPattern();
  await fillKit(kit, PER_COURSE);
  await fillPlain(plain, PER_COURSE, (text) => byHand(text, pattern));
  const first = build(kit, 'src/author/astro.ts');
  const firstPlain = build(plain, 'node_modules/astro/bin/astro.mjs');
  console.log(`${PER_COURSE} lessons, the first build of all: ${told(first)}; as plain pages ${told(firstPlain)}`);
  for (const lessons of sizes) {
    await fillKit(kit, lessons);
    const ours = build(kit, 'src/author/astro.ts');
    await fillPlain(plain, lessons, (text) => byHand(text, pattern));
    const typed = build(plain, 'node_modules/astro/bin/astro.mjs');
    console.log(
      `${lessons} lessons, ${lessons / PER_COURSE} projects: ${told(ours)}; typed by hand as plain pages ${told(typed)}; ` +
        `ratio of the processor's time ${(ours.seconds / typed.seconds).toFixed(2)} (at most 3.5); ` +
        `${((ours.seconds / lessons) * 1000).toFixed(0)} ms a lesson`,
    );
  }
} finally {
  await rm(bench, { recursive: true, force: true });
}

/** A copy of the kit with no content yet. */
async function kitHouse(): Promise<string> {
  const house = path.join(bench, 'kit');
  await mkdir(house);
  for (const part of ['src', 'components', 'package.json', 'tsconfig.json', 'astro.config.mjs'])
    await cp(path.join(root, part), path.join(house, part), { recursive: true });
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  return house;
}

/** A plain Astro site that shows MDX (`plain/`), with the kit's style sheets. */
async function plainHouse(): Promise<string> {
  const house = path.join(bench, 'plain');
  await cp(fileURLToPath(new URL('plain', import.meta.url)), house, { recursive: true });
  await cp(path.join(root, 'src/styles'), path.join(house, 'src/styles'), { recursive: true });
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  await writeFile(path.join(house, 'package.json'), '{"type":"module"}');
  return house;
}

type Lesson = { file: string; text: string };

/** The demo course's lessons, over and over, until there are enough. */
async function demoLessons(): Promise<Lesson[]> {
  const folder = path.join(root, 'content/courses/pocket-folio');
  const files = (await readdir(folder)).filter((file) => file.endsWith('.mdx')).sort();
  return Promise.all(files.map(async (file) => ({ file, text: await readFile(path.join(folder, file), 'utf8') })));
}

async function fillKit(house: string, lessons: number): Promise<void> {
  const content = path.join(house, 'content');
  const demo = await demoLessons();
  await rm(content, { recursive: true, force: true });
  for (const file of ['site.yaml', 'materials.yaml', 'glossary.yaml'])
    await cp(path.join(root, 'content', file), path.join(content, file));
  for (let course = 0; course < lessons / PER_COURSE; course++) {
    const project = path.join(content, `projects/folio-${course}`);
    await cp(path.join(root, 'content/projects/swatch-folio'), project, { recursive: true });
    await resize(path.join(project, 'project.yaml'), course);
    const folder = path.join(content, `courses/course-${course}`);
    await mkdir(folder, { recursive: true });
    const names: string[] = [];
    for (let i = 0; i < PER_COURSE; i++) {
      const { text } = demo[i % demo.length]!;
      const name = `${String(i + 1).padStart(2, '0')}-lesson-${i + 1}.mdx`;
      await writeFile(path.join(folder, name), text.replace(/^session:.*\n/m, ''));
      names.push(name);
    }
    const listed = names.map((name) => `  - ${name}`).join('\n');
    await writeFile(
      path.join(folder, 'course.yaml'),
      `title: Course ${course}\nsummary: Generated.\nlevel: some experience\nproject: folio-${course}\nlessons:\n${listed}\n`,
    );
  }
}

/** Makes a project differ from the others in its title and in the size of its cards, on which every size depends. */
async function resize(file: string, n: number): Promise<void> {
  const text = await readFile(file, 'utf8');
  // Both editions grow alike, as the check wants it.
  const [width, height] = [(n % 14) / 8, (n % 16) / 8];
  const cards = [
    `{ in: ${4.25 + width}, mm: ${105 + Math.round(width * 25.4)},`,
    `{ in: ${3 + height}, mm: ${74 + Math.round(height * 25.4)},`,
  ] as const;
  const resized = text
    .replace(/^title: .*$/m, `title: Folio ${n}`)
    .replace('{ in: 4 1/4, mm: 105,', cards[0])
    .replace('{ in: 3, mm: 74,', cards[1]);
  if (!cards.every((card) => resized.includes(card)))
    throw new Error('The demo project no longer states its cards as this bench knows them.');
  await writeFile(file, resized);
}

/** The demo lessons, each turned into a plain one. */
async function fillPlain(house: string, lessons: number, plain: (text: string) => string): Promise<void> {
  const content = path.join(house, 'content');
  const pages = (await demoLessons()).map(({ text }) => plain(text));
  await rm(content, { recursive: true, force: true });
  await mkdir(content, { recursive: true });
  for (let i = 0; i < lessons; i++) await writeFile(path.join(content, `lesson-${i}.mdx`), pages[i % pages.length]!);
}

/** The demo project at its own size. */
async function demoPattern(): Promise<Pattern> {
  const read = async (file: string): Promise<unknown> =>
    parse(await readFile(path.join(root, 'content', file), 'utf8'));
  const project = ProjectFile.parse(await read('projects/swatch-folio/project.yaml'));
  return resolveProject(project, { materials: MaterialsFile.parse(await read('materials.yaml')) });
}

/** What a build took: by the clock, of the processor on all its cores, and at most of memory. */
type Usage = { wall: number; seconds: number; gigabytes: number };

function told({ wall, seconds, gigabytes }: Usage): string {
  return `${seconds.toFixed(1)} s of the processor's time, ${wall.toFixed(1)} s by the clock, ${gigabytes.toFixed(2)} GB`;
}

/** Builds with nothing left of a build before, but for what depends on programs alone. */
function build(house: string, command: string): Usage {
  for (const folder of ['dist', '.astro', '.cache/astro']) spawnSync('rm', ['-rf', path.join(house, folder)]);
  const from = performance.now();
  const usage = path.join(bench, 'usage.json');
  const run = spawnSync(process.execPath, ['--import', new URL('usage.ts', import.meta.url).href, command, 'build'], {
    cwd: house,
    encoding: 'utf8',
    // The plain pages have no documents to print; npm run bench measures those by themselves.
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', HANDOUTS: 'no', USAGE: usage },
  });
  if (run.status !== 0) throw new Error(`The build failed.\n${run.stdout}\n${run.stderr}`);
  const used = JSON.parse(readFileSync(usage, 'utf8')) as Omit<Usage, 'wall'>;
  return { wall: (performance.now() - from) / 1000, ...used };
}
