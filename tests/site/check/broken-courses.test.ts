/**
 * Every slip that an author can make, each in a course that is sound otherwise: tests/fixtures/broken holds a folder
 * for each with the files that differ from tests/fixtures/sound, and the whole of what `npm run check` answers.
 */
import { cpSync, existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { check } from '../../../src/author/check.ts';
import { contentFolder } from '../content-folder.ts';

const BROKEN = fileURLToPath(new URL('../../fixtures/broken', import.meta.url));

/** The content folder with one slip; `without.txt` names files that are missing. */
function broken(name: string): string {
  const without = path.join(BROKEN, name, 'without.txt');
  const gone = existsSync(without) ? readFileSync(without, 'utf8').split('\n').filter(Boolean) : [];
  const root = contentFolder(Object.fromEntries(gone.map((file) => [file, undefined])));
  // As bytes: some are saved in another encoding.
  const own = path.join(BROKEN, name, 'content');
  if (existsSync(own)) cpSync(own, path.join(root, 'content'), { recursive: true });
  return root;
}

test('the course that they all differ from has no mistake', () => {
  expect(check(contentFolder()).text).toBe('No mistakes found.');
});

test.each(readdirSync(BROKEN))('%s', (name) => {
  const file = path.join(BROKEN, name, 'expected.txt');
  expect(existsSync(file), 'expected.txt').toBe(true);
  expect(`${check(broken(name)).text}\n`).toBe(readFileSync(file, 'utf8'));
});
