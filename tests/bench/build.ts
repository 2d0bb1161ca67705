/**
 * How long a large course takes to build: 200 lessons and 20 projects with all their studies and questions, against
 * the same prose as plain Astro pages; and whether the time grows in step with the number of lessons.
 *
 *     node tests/bench/build.ts
 */
import { spawnSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, readFile, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const bench = await mkdtemp(path.join(os.tmpdir(), 'course-'));
const sizes = (process.argv[2] ?? '50,100,200').split(',').map(Number);
const PER_COURSE = 10;

try {
  const kit = await kitHouse();
  const plain = await plainHouse();
  for (const lessons of sizes) {
    await fillKit(kit, lessons);
    await fillPlain(plain, lessons);
    const ours = build(kit, 'src/author/astro.ts');
    const theirs = build(plain, 'node_modules/astro/bin/astro.mjs');
    console.log(
      `${lessons} lessons, ${lessons / PER_COURSE} projects: ${ours.toFixed(1)} s; the same prose as plain pages ` +
        `${theirs.toFixed(1)} s; ratio ${(ours / theirs).toFixed(2)} (at most 2); ${((ours / lessons) * 1000).toFixed(0)} ms a lesson`,
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

/** A bare Astro site that shows MDX. */
async function plainHouse(): Promise<string> {
  const house = path.join(bench, 'plain');
  await mkdir(path.join(house, 'src/pages/[...path]'), { recursive: true });
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  await writeFile(path.join(house, 'package.json'), '{"type":"module"}');
  await writeFile(
    path.join(house, 'astro.config.mjs'),
    `import mdx from '@astrojs/mdx';
import { satteri } from '@astrojs/markdown-satteri';
import { defineConfig } from 'astro/config';
export default defineConfig({
  integrations: [mdx()],
  markdown: { syntaxHighlight: 'prism', processor: satteri({}) },
  // As the kit does: a warning for every lesson, which says nothing.
  vite: { build: { rolldownOptions: { onLog: (level, log, pass) => log.code !== 'MODULE_LEVEL_DIRECTIVE' && pass(level, log) } } },
});
`,
  );
  await writeFile(
    path.join(house, 'src/content.config.ts'),
    `import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';
export const collections = { lessons: defineCollection({ loader: glob({ pattern: '**/*.mdx', base: './content' }) }) };
`,
  );
  await writeFile(
    path.join(house, 'src/pages/[...path]/index.astro'),
    `---
import { getCollection, render } from 'astro:content';
export const getStaticPaths = async () =>
  (await getCollection('lessons')).map((entry) => ({ params: { path: entry.id }, props: { entry } }));
const { Content } = await render(Astro.props.entry);
---
<html lang="en"><head><title>Lesson</title></head><body><Content /></body></html>
`,
  );
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
  const resized = text
    .replace(/^title: .*$/m, `title: Folio ${n}`)
    .replace('{ in: 4 1/4, mm: 105,', `{ in: ${4.25 + (n % 14) / 8}, mm: ${105 + (n % 50)},`)
    .replace('{ in: 3, mm: 74,', `{ in: ${3 + (n % 16) / 8}, mm: ${74 + (n % 50)},`);
  if (!resized.includes(`mm: ${105 + (n % 50)},`) || !resized.includes(`mm: ${74 + (n % 50)},`))
    throw new Error('The demo project no longer states its cards as this bench knows them.');
  await writeFile(file, resized);
}

/** The same words between the tags, with no word of the kit. */
async function fillPlain(house: string, lessons: number): Promise<void> {
  const content = path.join(house, 'content');
  const demo = await demoLessons();
  await rm(content, { recursive: true, force: true });
  await mkdir(content, { recursive: true });
  for (let i = 0; i < lessons; i++) {
    const prose = demo[i % demo.length]!.text.replace(/<Size[^>]*\/>/g, '4 in').replace(/<\/?[A-Z][^>]*>/g, '');
    await writeFile(path.join(content, `lesson-${i}.mdx`), prose);
  }
}

/** Builds from cold and returns the seconds it took. */
function build(house: string, command: string): number {
  for (const folder of ['dist', '.astro', '.cache/astro']) spawnSync('rm', ['-rf', path.join(house, folder)]);
  const from = performance.now();
  const run = spawnSync(process.execPath, [command, 'build'], {
    cwd: house,
    encoding: 'utf8',
    // The plain pages have no documents to print; npm run bench measures those by themselves.
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', HANDOUTS: 'no' },
  });
  if (run.status !== 0) throw new Error(`The build failed.\n${run.stdout}\n${run.stderr}`);
  return (performance.now() - from) / 1000;
}
