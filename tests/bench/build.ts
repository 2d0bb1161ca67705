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
import { cp, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { MaterialsFile, ProjectFile, resolveProject } from '../../src/core/index.ts';
import type { Pattern } from '../../src/core/index.ts';
import { byHand } from './by-hand.ts';
import { build, demoLessons, fillKit, kitHouse, PER_COURSE, root, told } from './generated-course.ts';

const bench = await mkdtemp(path.join(os.tmpdir(), 'course-'));
const sizes = (process.argv[2] ?? '50,100,200').split(',').map(Number);

try {
  const kit = await kitHouse(bench);
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

/** A plain Astro site that shows MDX (`plain/`), with the kit's style sheets. */
async function plainHouse(): Promise<string> {
  const house = path.join(bench, 'plain');
  await cp(fileURLToPath(new URL('plain', import.meta.url)), house, { recursive: true });
  await cp(path.join(root, 'src/styles'), path.join(house, 'src/styles'), { recursive: true });
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  await writeFile(path.join(house, 'package.json'), '{"type":"module"}');
  return house;
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
