import type { ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { draw } from '../../components/making/draw-step.ts';
import { drawnAhead, keepAhead } from '../../components/making/drawn-ahead.ts';
import { besideBuild } from '../../src/author/beside-build.ts';
import { makeUp, resolveProject } from '../../src/core/index.ts';
import type { Word } from '../../src/site/integration.ts';
import { readContent } from '../../src/site/read-content.ts';

test('a build hears that all is well, and then gets every drawing that its pages would make', async () => {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const words: Word[] = [];
  const build = {
    connected: true,
    // As it comes over a channel between two processes.
    send: (word: Word) => words.push(JSON.parse(JSON.stringify(word)) as Word),
    disconnect: () => words.push('all is well'),
  };
  await besideBuild(build as unknown as ChildProcess, root, false);
  expect(words[0]).toBe('all is well');
  for (const word of words) if (word !== 'all is well') keepAhead(word);

  const { projects, materials, site } = readContent(root);
  let drawn = 0;
  for (const { id, value } of projects) {
    const pattern = resolveProject(value!, { edition: site.value!.edition, materials: materials.value! });
    for (const step of makeUp(pattern)) {
      expect(drawnAhead(id, step.id)).toEqual(draw(pattern, step.id));
      drawn++;
    }
  }
  expect(drawn).toBeGreaterThan(10);
});
