import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';
import type { Plugin } from 'vite';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { compiledOnce } from '../../../src/site/pages/compiled-once.ts';

let folder: string;
beforeEach(async () => void (folder = await mkdtemp(path.join(os.tmpdir(), 'compiled-'))));
afterEach(() => rm(folder, { recursive: true }));
const file = () => path.join(folder, 'deep/components.json');

type Part = [consumer: string, id: string, code: string];
const CARD: Part = ['server', '/Card.svelte', 'one'];
const CARD_THERE: Part = ['client', '/Card.svelte', 'one'];
const SLIDER: Part = ['client', '/Slider.svelte', 'two'];

/** A build of some components with a compiler that says what it is asked for, and fails at `fault`. */
async function build(parts: Part[], { mode = 'production' } = {}): Promise<{ asked: string[]; got: unknown[] }> {
  const asked: string[] = [];
  const transform = {
    handler(this: { environment: { config: { consumer: string } } }, code: string, id: string) {
      asked.push(`${id} ${this.environment.config.consumer}`);
      if (code === 'fault') throw new Error('a fault');
      return code === 'plain' ? undefined : { code: code.toUpperCase(), meta: { css: id } };
    },
  };
  const other = { name: 'other', transform: { handler: () => ({ code: 'never' }) } };
  const plugin = compiledOnce(file()) as { [hook in 'configResolved' | 'buildEnd']: (...of: unknown[]) => void };
  plugin.configResolved({ plugins: [other, { name: 'vite-plugin-svelte:compile', transform }] as Plugin[] });
  const there = (consumer: string) => ({ environment: { config: { consumer, isProduction: mode === 'production' } } });
  const got: unknown[] = [];
  for (const [consumer, id, code] of parts) got.push(await transform.handler.call(there(consumer), code, id));
  for (const consumer of ['server', 'client']) plugin.buildEnd.call(there(consumer));
  return { asked, got };
}

test('what was compiled in one build comes out of the next as it was', async () => {
  const parts: Part[] = [CARD, CARD_THERE, SLIDER, ['client', '/sums.svelte.ts', 'plain']];
  const first = await build(parts);
  expect(first.asked).toEqual([
    '/Card.svelte server',
    '/Card.svelte client',
    '/Slider.svelte client',
    '/sums.svelte.ts client',
  ]);
  expect(await build(parts)).toEqual({ asked: [], got: first.got });
});

test('what has changed is compiled again, and so is all where it comes out otherwise', async () => {
  await build([CARD, SLIDER]);
  const { asked, got } = await build([CARD, ['client', '/Slider.svelte', 'three']]);
  expect(asked).toEqual(['/Slider.svelte client']);
  expect(got[1]).toEqual({ code: 'THREE', meta: { css: '/Slider.svelte' } });
  expect((await build([CARD], { mode: 'development' })).asked).toHaveLength(1);
});

test('what no build asks for is not kept on', async () => {
  await build([CARD, SLIDER]);
  await build([CARD]);
  expect(Object.keys(JSON.parse(await readFile(file(), 'utf8')))).toHaveLength(1);
});

test('a fault is told every time, and a file that cannot be read holds nothing', async () => {
  const broken: Part = ['client', '/Card.svelte', 'fault'];
  for (let i = 0; i < 2; i++) await expect(build([broken])).rejects.toThrow('a fault');
  await build([CARD]);
  await writeFile(file(), '{"half a');
  expect((await build([CARD])).asked).toHaveLength(1);
  expect((await build([CARD])).asked).toHaveLength(0);
});

test('where it cannot be kept the build goes on', async () => {
  await writeFile(path.join(folder, 'deep'), 'a file where the folder would be');
  expect((await build([CARD])).got).toEqual([{ code: 'ONE', meta: { css: '/Card.svelte' } }]);
});
