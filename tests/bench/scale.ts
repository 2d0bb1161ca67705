/**
 * Whether a large school builds in step with its size: 200 lessons and 20 projects, then ten times as many, without
 * documents and in one run. What counts is the processor's time and the most memory that a build holds.
 *
 *     node tests/bench/scale.ts
 */
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { build, fillKit, kitHouse, PER_COURSE, told } from './generated-course.ts';
import type { Usage } from './generated-course.ts';

const bench = await mkdtemp(path.join(os.tmpdir(), 'school-'));
const [few = 200, many = 2000] = (process.argv[2] ?? '').split(',').filter(Boolean).map(Number);

try {
  const house = await kitHouse(bench);
  await fillKit(house, PER_COURSE);
  build(house, 'src/author/astro.ts');
  const usages: Usage[] = [];
  for (const lessons of [few, many]) {
    await fillKit(house, lessons);
    const usage = build(house, 'src/author/astro.ts');
    usages.push(usage);
    console.log(`${lessons} lessons, ${lessons / PER_COURSE} projects: ${told(usage)} (at most 2.5 GB)`);
  }
  const [small, large] = usages;
  console.log(
    `${many / few} times the lessons take ${(large!.seconds / small!.seconds).toFixed(1)} times the time (at most 11)`,
  );
} finally {
  await rm(bench, { recursive: true, force: true });
}
