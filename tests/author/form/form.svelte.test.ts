/** What the author's form says while somebody types. It runs in a browser, and speaks as `npm run check` does. */
import { flushSync } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { FormClient } from '../../../src/author/form/form.svelte.ts';
import type { FormField, FormState } from '../../../src/author/form/messages.ts';
import { folio, shelf } from '../../core/project/files.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** What the form finds once something else is typed into one box, and the hands rest. */
async function findingsAfter(field: FormField, typed: string) {
  const entry = { place: field.place.slice(0, 2), name: '', fields: [field], more: [] };
  const state: FormState = {
    file: 'project.yaml',
    sections: [{ name: 'measures', entries: [entry] }],
    project: folio(),
    materials: shelf(),
  };
  vi.stubGlobal('fetch', () => Promise.resolve(Response.json(state)));
  const form = new FormClient('/');
  const stop = $effect.root(() => form.followFindings());
  await form.read();
  flushSync();
  vi.advanceTimersByTime(1000);
  expect(form.about(entry)).toEqual([]);
  form.type(field, typed);
  flushSync();
  vi.advanceTimersByTime(1000);
  stop();
  return form.about(entry);
}

test('a name that no measure has is named, with the likeliest one', async () => {
  const field = {
    place: ['measures', 'head', 'is'],
    label: 'is',
    value: 'max(card height - depth, least head) + ease + seam',
    line: 89,
  };
  expect(await findingsAfter(field, 'max(card height - depth, least head) + eas + seam')).toMatchObject([
    { severity: 'error', message: 'There is no measure called “eas”. Do you mean “ease”?' },
  ]);
});

test('a value between two marks of the ruler gets its note', async () => {
  const field = { place: ['measures', 'seam', 'mm'], label: 'mm', value: '10', line: 31 };
  expect(await findingsAfter(field, '9.7')).toMatchObject([
    { severity: 'note', message: 'This lies between two marks of the metric ruler. Pages show it as “≈ 10 mm”.' },
  ]);
});

/** A form of one box that has been read, and what the server then says to a change. */
async function changed(say: () => Promise<Response>) {
  const field = { place: ['measures', 'seam', 'mm'], label: 'mm', value: '6', line: 31 };
  const entry = { place: field.place.slice(0, 2), name: '', fields: [field], more: [] };
  const sections = [{ name: 'measures', entries: [entry] }];
  const state: FormState = { file: 'project.yaml', sections, project: folio(), materials: shelf() };
  vi.stubGlobal('fetch', (_: string, { method }: RequestInit = {}) =>
    method === 'POST' ? say() : Promise.resolve(Response.json(state)),
  );
  const form = new FormClient('/');
  await form.read();
  form.type(field, '7');
  await form.write(field);
  return { form, field };
}

test.each([
  [
    'the disk is full',
    () => Promise.resolve(Response.json({ kind: 'refused', message: 'The disk is full.', fix: 'Make room.' })),
    'The disk is full.',
  ],
  [
    'the project is gone',
    () => Promise.resolve(Response.json({ message: 'There is no such project.' }, { status: 404 })),
    'There is no such project.',
  ],
  [
    'something fails',
    () => Promise.resolve(Response.json({ message: 'The form could not do this.' }, { status: 500 })),
    'The form could not do this.',
  ],
  [
    'the server is gone',
    () => Promise.reject(new TypeError('fetch failed')),
    'npm start does not answer. Is it still running?',
  ],
  [
    'the answer breaks off',
    () => Promise.resolve(new Response('{"kind":')),
    'npm start does not answer. Is it still running?',
  ],
])('where %s, the reason is said, and the box keeps what was typed, marked', async (_, say, message) => {
  let saying: () => Promise<Response> = say;
  const { form, field } = await changed(() => saying());
  expect(form.value(field)).toBe('7');
  expect(form.status(field)).toMatchObject({ kind: 'refused', message });
  expect(form.said).toBe(`Not written. ${message}`);
  expect(form.isUnwritten).toBe(true);
  // Once the reason is gone, the same value is written.
  saying = () => Promise.resolve(Response.json({ kind: 'written', line: 31, form: form.state }));
  await form.write(field);
  expect(form.status(field)).toEqual({ kind: 'written', line: 31 });
  expect(form.isUnwritten).toBe(false);
});

test('what is added is not written either, and the reason is said at its place', async () => {
  const { form } = await changed(() => Promise.reject(new TypeError('fetch failed')));
  expect(await form.add(['measures', 'flap'], '3')).toBe('npm start does not answer. Is it still running?');
});
