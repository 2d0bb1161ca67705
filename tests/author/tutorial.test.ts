import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { check } from '../../src/author/check.ts';
import { copyKit } from '../copy-kit.ts';
import { followTutorial } from '../tutorial.ts';
import type { Followed } from '../tutorial.ts';

let kit: Awaited<ReturnType<typeof copyKit>>;
let followed: Followed[];
beforeAll(async () => {
  kit = await copyKit();
  followed = followTutorial(kit.folder);
}, 120_000);
afterAll(() => kit.remove());

test('each command says what the tutorial promises', () => {
  expect(followed).toHaveLength(5);
  for (const { printed, promised } of followed) for (const text of promised) expect(printed).toContain(text);
  expect(followed.flatMap(({ promised }) => promised)).toHaveLength(5);
});

test('at its end there is a lesson without a mistake', () => {
  expect(check(kit.folder).text).toBe('No mistakes found.');
  const lesson = readFileSync(path.join(kit.folder, 'content/courses/sleeves/01-first-lesson.mdx'), 'utf8');
  expect(lesson).toContain('so you cut it <Size of="cut width" /> wide.');
});
