import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { expect, test, vi } from 'vitest';
import type { Ahead } from '../../components/words/ahead.ts';
import { shown } from '../../components/words/shows.ts';
import { besideBuild } from '../../src/author/beside-build.ts';
import { resolveProject } from '../../src/core/index.ts';
import { CHECKED_BESIDE, left } from '../../src/site/pages/beside.ts';
import type { Word } from '../../src/site/integration.ts';
import { shelvesOf } from '../../src/site/pages/loader.ts';
import { readContent } from '../../src/site/content/read-content.ts';

test('a build hears that all is well, and then gets what its pages would work out', async () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  // Too busy to listen at first, as a build is that bundles: the channel fills up meanwhile.
  const busy = 'const until = Date.now() + 2000; while (Date.now() < until);';
  const hear = (word: Word) => {
    console.log(JSON.stringify(word));
    if (typeof word === 'object' && 'project' in word && word.project === process.argv[1]) process.disconnect();
  };
  const ids = readContent(root).projects.map(({ id }) => id);
  const build = spawn(process.execPath, ['-e', `${busy} process.on('message', ${hear.toString()})`, ids.at(-1)!], {
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  const heard = text(build.stdout!);
  const folder = mkdtempSync(path.join(os.tmpdir(), 'beside-'));
  const file = path.join(folder, 'content');
  // Its output is for the test here, and not passed on.
  await besideBuild(Object.assign(build, { stdout: null }), root, false, file);
  const words = (await heard)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Word);
  expect(words[0]).toBe('all is well');
  const ofWorkers = words.flatMap((word) => (typeof word === 'object' && 'workers' in word ? word.workers! : []));
  const programs = ofWorkers.filter(({ worker }) => worker);
  expect(programs.map(({ worker }) => path.basename(worker!)).sort()).toEqual(['press.ts', 'table.ts']);
  expect(programs.every(({ code }) => code.includes('postMessage('))).toBe(true);
  const { projects, materials, site } = readContent(root);
  vi.stubEnv(CHECKED_BESIDE, file);
  expect(left()).toEqual(shelvesOf(readContent(root)));
  let asked = 0;
  for (const { id, value } of projects) {
    const pattern = resolveProject(value!, { edition: site.value!.edition, materials: materials.value! });
    const told = words.find((word) => typeof word === 'object' && 'project' in word && word.project === id) as Ahead;
    expect(Object.keys(told.shown)).toContain('["Made"]');
    for (const [key, ahead] of Object.entries(told.shown)) {
      const [word, ...given] = JSON.parse(key) as [Parameters<typeof shown>[0], ...(string | null)[]];
      const onPage = shown(word, 'not worked out ahead', pattern, ...given.map((one) => one ?? undefined));
      expect(ahead, key).toEqual(JSON.parse(JSON.stringify(onPage)));
      asked++;
    }
  }
  expect(asked).toBeGreaterThan(20);
  rmSync(folder, { recursive: true });
});
