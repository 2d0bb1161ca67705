/**
 * A course of any length for benches: a copy of the kit filled with the demo course's lessons over and over, each project
 * of a size of its own; and a build of it, with what it took of the machine.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cp, mkdir, readFile, readdir, rm, symlink, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));
export const PER_COURSE = 10;

/** A copy of the kit below `bench`, with no content yet. */
export async function kitHouse(bench: string): Promise<string> {
  const house = path.join(bench, 'kit');
  await mkdir(house);
  for (const part of ['src', 'components', 'package.json', 'tsconfig.json', 'astro.config.mjs'])
    await cp(path.join(root, part), path.join(house, part), { recursive: true });
  await symlink(path.join(root, 'node_modules'), path.join(house, 'node_modules'));
  return house;
}

type Lesson = { file: string; text: string };

/** The demo course's lessons, over and over, until there are enough. */
export async function demoLessons(): Promise<Lesson[]> {
  const folder = path.join(root, 'content/courses/pocket-folio');
  const files = (await readdir(folder)).filter((file) => file.endsWith('.mdx')).sort();
  return Promise.all(files.map(async (file) => ({ file, text: await readFile(path.join(folder, file), 'utf8') })));
}

/** So many lessons in courses of ten, each course with a project of its own. */
export async function fillKit(house: string, lessons: number): Promise<void> {
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
    await cp(path.join(root, 'content/courses/pocket-folio/recordings'), path.join(folder, 'recordings'), {
      recursive: true,
    });
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

/** What a build took: by the clock, of the processor on all its cores, and at most of memory. */
export type Usage = { wall: number; seconds: number; gigabytes: number };

export function told({ wall, seconds, gigabytes }: Usage): string {
  return `${seconds.toFixed(1)} s of the processor's time, ${wall.toFixed(1)} s by the clock, ${gigabytes.toFixed(2)} GB`;
}

/**
 * Builds with nothing left of a build before, but for what depends on programs alone; without documents unless
 * `environment` asks for them.
 */
export function build(house: string, command: string, environment: NodeJS.ProcessEnv = {}): Usage {
  for (const folder of ['dist', '.astro', '.cache/astro']) spawnSync('rm', ['-rf', path.join(house, folder)]);
  const from = performance.now();
  const usage = path.join(house, 'usage.json');
  const run = spawnSync(process.execPath, ['--import', new URL('usage.ts', import.meta.url).href, command, 'build'], {
    cwd: house,
    encoding: 'utf8',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', HANDOUTS: 'no', USAGE: usage, ...environment },
  });
  if (run.status !== 0) throw new Error(`The build failed.\n${run.stdout}\n${run.stderr}`);
  const used = JSON.parse(readFileSync(usage, 'utf8')) as Omit<Usage, 'wall'>;
  return { wall: (performance.now() - from) / 1000, ...used };
}
