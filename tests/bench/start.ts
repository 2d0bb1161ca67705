/**
 * How long `npm start` takes to its first page, for a school of 10 lessons and for one of 2,000 with 200 projects: from
 * the start of the program until the front page, a course and a lesson have been sent, one after the other. What the
 * program used of the processor until the first is told beside it, since other work on the machine changes that less: by
 * the thread that makes the pages, and in all, where the check of the content, which goes on beside the pages, is part.
 *
 *     node tests/bench/start.ts
 */
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fillKit, kitHouse } from './generated-course.ts';
import { freePort } from '../free-port.ts';

const bench = await mkdtemp(path.join(os.tmpdir(), 'start-'));
const sizes = (process.argv[2] ?? '10,2000').split(',').map(Number);

try {
  const house = await kitHouse(bench);
  for (const lessons of sizes) {
    await fillKit(house, lessons);
    await rm(path.join(house, '.astro'), { recursive: true, force: true });
    // The first start of all packs the libraries; it is not counted.
    if (lessons === sizes[0]) await started(house);
    const { pages, seconds, inPages } = await started(house);
    const told = pages.map(({ page, at }) => `${page} after ${at.toFixed(1)} s`).join(', ');
    console.log(
      `npm start, ${lessons} lessons: ${told} (at most 5 s); ` +
        `of the processor until the first ${inPages.toFixed(1)} s by the thread of the pages, ${seconds.toFixed(1)} s in all`,
    );
  }
} finally {
  await rm(bench, { recursive: true, force: true });
}

async function started(house: string) {
  const port = await freePort();
  const from = performance.now();
  const child = spawn(process.execPath, ['src/author/start.ts', '--port', String(port)], {
    cwd: house,
    stdio: 'ignore',
    env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
  });
  const pages: { page: string; at: number }[] = [];
  let [seconds, inPages] = [NaN, NaN];
  for (const page of ['/', '/courses/course-0/', '/courses/course-0/lesson-1/']) {
    await answered(`http://127.0.0.1:${port}${page}`);
    pages.push({ page, at: (performance.now() - from) / 1000 });
    if (pages.length > 1) continue;
    seconds = await usedBy(`/proc/${child.pid}/stat`);
    inPages = await usedBy(`/proc/${child.pid}/task/${child.pid}/stat`);
  }
  const ended = new Promise((done) => child.once('exit', done));
  child.kill();
  await ended;
  return { pages, seconds, inPages };
}

async function answered(address: string): Promise<void> {
  for (;;) {
    try {
      const response = await fetch(address);
      await response.text();
      if (response.ok) return;
    } catch {
      // It does not listen yet.
    }
    await setTimeout(20);
  }
}

/** Seconds of the processor that a program or a thread used so far; NaN where the system does not tell. */
async function usedBy(stat: string): Promise<number> {
  const text = await readFile(stat, 'utf8').catch(() => '');
  const [user, system] = text
    .slice(text.lastIndexOf(')') + 2)
    .split(' ')
    .slice(11, 13)
    .map(Number);
  return (user! + system!) / 100;
}
