import { spawn } from 'node:child_process';
import path from 'node:path';
import { text } from 'node:stream/consumers';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { draw, drawWhole } from '../../components/making/draw-step.ts';
import { drawnAhead, keepAhead, madeAhead } from '../../components/making/drawn-ahead.ts';
import { besideBuild } from '../../src/author/beside-build.ts';
import { makeUp, resolveProject } from '../../src/core/index.ts';
import type { Word } from '../../src/site/integration.ts';
import { readContent } from '../../src/site/read-content.ts';

test('a build hears that all is well, and then gets every drawing that its pages would make', async () => {
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
  // Its output is for the test here, and not passed on.
  await besideBuild(Object.assign(build, { stdout: null }), root, false);
  const words = (await heard)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Word);
  expect(words[0]).toBe('all is well');
  const ofWorkers = words.flatMap((word) => (typeof word === 'object' && 'workers' in word ? word.workers! : []));
  const programs = ofWorkers.filter(({ worker }) => worker);
  expect(programs.map(({ worker }) => path.basename(worker!)).sort()).toEqual(['press.ts', 'table.ts']);
  expect(programs.every(({ code }) => code.includes('postMessage('))).toBe(true);
  for (const word of words) if (typeof word === 'object' && 'steps' in word) keepAhead(word);

  const { projects, materials, site } = readContent(root);
  let drawn = 0;
  for (const { id, value } of projects) {
    const pattern = resolveProject(value!, { edition: site.value!.edition, materials: materials.value! });
    expect(madeAhead(id)).toEqual(drawWhole(pattern));
    for (const step of makeUp(pattern)) {
      expect(drawnAhead(id, step.id)).toEqual(draw(pattern, step.id));
      drawn++;
    }
  }
  expect(drawn).toBeGreaterThan(10);
});
