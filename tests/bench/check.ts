/**
 * How long `npm run check` takes for a large school: 500 lessons of the length of the demo's, in 50 courses of 10.
 *
 *     node tests/bench/check.ts
 */
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { findContentProblems } from '../../src/site/find-content-problems.ts';

const kit = fileURLToPath(new URL('../..', import.meta.url));
const COURSES = 50;
const LESSONS = 10;

const root = mkdtempSync(path.join(tmpdir(), 'sewing-bench-'));
try {
  cpSync(path.join(kit, 'content'), path.join(root, 'content'), { recursive: true });
  const own = path.join(root, 'content/courses/pocket-folio');
  const lesson = readFileSync(path.join(own, '02-pleat-the-strip.mdx'), 'utf8').replace(/^session: .*\n/m, '');
  rmSync(own, { recursive: true });
  for (let c = 1; c <= COURSES; c += 1) {
    const folder = path.join(root, `content/courses/course-${c}`);
    mkdirSync(folder);
    const names = Array.from({ length: LESSONS }, (_, i) => `${String(i + 1).padStart(2, '0')}-lesson-${i + 1}.mdx`);
    for (const name of names) writeFileSync(path.join(folder, name), lesson);
    writeFileSync(
      path.join(folder, 'course.yaml'),
      `title: Course ${c}\nsummary: Pockets.\nlevel: first steps\nproject: swatch-folio\nlessons: [${names.join(', ')}]\n`,
    );
  }
  const start = performance.now();
  const problems = findContentProblems(root);
  const seconds = (performance.now() - start) / 1000;
  console.log(
    `check, ${COURSES * LESSONS} lessons: ${seconds.toFixed(2)} s (at most 5), ${problems.length} problems found`,
  );
} finally {
  rmSync(root, { recursive: true, force: true });
}
