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
