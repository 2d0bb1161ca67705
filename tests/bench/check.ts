/**
 * How long `npm run check` takes for a large school, from the start of the program to its last line: 500 lessons as long
 * as the demo's, in 50 courses of 10, each course with a project of its own.
 *
 *     node tests/bench/check.ts
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { copyKit } from '../copy-kit.ts';

const COURSES = 50;
const LESSONS = 10;

const kit = fileURLToPath(new URL('../../content', import.meta.url));
const demos = readdirSync(path.join(kit, 'courses')).map((id) => {
  const course = path.join(kit, 'courses', id);
  const [, project = ''] = /^project: (.+)$/m.exec(readFileSync(path.join(course, 'course.yaml'), 'utf8')) ?? [];
  const lessons = readdirSync(course).filter((name) => name.endsWith('.mdx'));
  return { project, texts: lessons.map((name) => readFileSync(path.join(course, name), 'utf8')) };
});

const { folder, remove } = await copyKit();
try {
  for (const part of ['courses', 'projects']) rmSync(path.join(folder, 'content', part), { recursive: true });
  let words = 0;
  for (let c = 0; c < COURSES; c += 1) {
    const { project, texts } = demos[c % demos.length]!;
    cpSync(path.join(kit, 'projects', project), path.join(folder, `content/projects/project-${c}`), {
      recursive: true,
    });
    const course = path.join(folder, `content/courses/course-${c}`);
    mkdirSync(course, { recursive: true });
    const names = Array.from({ length: LESSONS }, (_, i) => `${String(i + 1).padStart(2, '0')}-lesson-${i + 1}.mdx`);
    for (const [i, name] of names.entries()) {
      const text = texts[i % texts.length]!.replace(/^session: .*\n/m, '');
      words += text.split(/\s+/).length;
      writeFileSync(path.join(course, name), text);
    }
    writeFileSync(
      path.join(course, 'course.yaml'),
      `title: Course ${c}\nsummary: Sewing.\nlevel: first steps\nproject: project-${c}\nlessons: [${names.join(', ')}]\n`,
    );
  }
  const start = performance.now();
  const { stdout } = spawnSync(process.execPath, ['src/author/check.ts'], { cwd: folder, encoding: 'utf8' });
  const seconds = (performance.now() - start) / 1000;
  const lessons = COURSES * LESSONS;
  console.log(`check, ${lessons} lessons of ${Math.round(words / lessons)} words: ${seconds.toFixed(2)} s (at most 5)`);
  console.log(`  ${stdout.trim().split('\n').at(-1)}`);
} finally {
  await remove();
}
