/** Two tabs of one site, and two sites of one host: neither undoes what was done in the other. */
import { beforeEach, expect, test, vi } from 'vitest';
import { addressNow } from '../../../components/page/address.ts';
import { Tape } from '../../../components/page/tape/tape.svelte.ts';
import { Ticks } from '../../../components/words/step/ticks.svelte.ts';
import { pagePath } from '../../../components/page/storage.ts';
import { learner, newPage, visit } from '../lesson.ts';

beforeEach(() => newPage());

const kept = (key: string): unknown => JSON.parse(localStorage.getItem(`course-kit:${key}`) ?? 'null');
/** As a browser tells the other tabs. */
const tell = (key: string) => dispatchEvent(new StorageEvent('storage', { key: `course-kit:${key}` }));

test('steps done in two tabs are all done, and one that is taken back stays so', () => {
  const [one, other] = [new Ticks('folio'), new Ticks('folio')];
  one.set('press', true);
  other.set('hem', true);
  expect(kept('steps:folio')).toEqual({ press: true, hem: true });
  tell('steps:folio');
  expect([one.has('hem'), other.has('press')]).toEqual([true, true]);
  one.set('press', false);
  other.set('turn', true);
  expect(kept('steps:folio')).toEqual({ hem: true, turn: true });
});

test('where nothing can be kept, steps stay done as long as the page is there', () => {
  const full = vi.spyOn(Storage.prototype, 'setItem').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError');
  });
  const ticks = new Ticks('folio');
  ticks.set('press', true);
  ticks.set('hem', true);
  expect([ticks.has('press'), ticks.has('hem')]).toEqual([true, true]);
  full.mockRestore();
  ticks.set('turn', true);
  expect(kept('steps:folio')).toEqual({ press: true, hem: true, turn: true });
});

test('sizes and features chosen in two tabs are all chosen', () => {
  const [one, other] = [learner(), learner()];
  expect(one.set('card width', 5 * 25.4)).toBeUndefined();
  addressNow();
  other.choose('flap', false);
  addressNow();
  expect(kept('size:demo')).toEqual({
    values: { 'card width': { value: 127, edition: 'inch' } },
    options: { flap: false },
  });
  tell('size:demo');
  addressNow();
  expect(one.settings).toMatchObject({ values: { 'card width': 127 }, options: { flap: false } });
  expect(other.settings).toMatchObject({ values: { 'card width': 127 }, options: { flap: false } });
  expect(other.settledPattern.measures['card width']?.value).toBe(127);
  expect(addressNow()).toContain('card-width=5+in');

  other.set('card width', 4.5 * 25.4);
  addressNow();
  visit();
  expect(learner().settings.values['card width']).toBeCloseTo(4.5 * 25.4);
});

test('what was just chosen here is not undone by another tab, and a reset is one', () => {
  const [one, other] = [learner(), learner()];
  one.set('card width', 5 * 25.4);
  addressNow();
  other.set('card width', 4.5 * 25.4);
  tell('size:demo');
  expect(other.settings.values['card width']).toBeCloseTo(4.5 * 25.4);
  addressNow();
  one.reset();
  addressNow();
  expect(kept('size:demo')).toBeNull();
});

test('sections read in two tabs are all read, and a section without anything to do is never done', async () => {
  document.body.innerHTML = '<article><h2 id="cut">Cut</h2><h2 id="sew">Sew</h2></article>';
  const top = vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect');
  const steps = ['cut', 'sew'].map((slug) => ({ slug, text: slug }));
  // The reader is past the first heading, and the page does not end yet.
  top.mockImplementation(function (this: HTMLElement) {
    return { top: this.id === 'cut' ? -900 : this.id === 'sew' ? -10 : 0, bottom: 5000 } as DOMRect;
  });
  Object.defineProperty(document.documentElement, 'scrollHeight', { value: 99_999, configurable: true });
  const tape = new Tape(steps, 'lesson/');
  const stop = tape.follow();
  // Another tab ends the lesson before this one looks.
  localStorage.setItem('course-kit:read:/lesson/', '["sew"]');
  await vi.waitFor(() => expect(tape.read).toContain('cut'));
  expect(kept('read:/lesson/')).toEqual(expect.arrayContaining(['cut', 'sew']));
  tell('read:/lesson/');
  await vi.waitFor(() => expect(tape.read.toSorted()).toEqual(['cut', 'sew']));
  expect(tape.done).toEqual([]);
  stop();
  top.mockRestore();
});

/** A page of a site that lies at a path of its host. */
async function siteAt(root: string) {
  document.head.innerHTML = `<link rel="icon" href="${root}mark.svg" />`;
  vi.resetModules();
  return {
    ...(await import('../../../components/page/storage.ts')),
    ...(await import('../../../components/page/saved-entries.ts')),
  };
}

test('two sites of one host keep apart', async () => {
  const sewing = await siteAt('/sewing/');
  sewing.save('theme', 'dark');
  const bags = await siteAt('/bags/');
  expect(bags.savedEntries()).toEqual(new Map());
  bags.save('steps:folio', { hem: true });
  const top = await siteAt('/');
  expect(top.savedEntries()).toEqual(new Map());
  top.save('theme', 'light');
  expect((await siteAt('/sewing/')).savedEntries()).toEqual(new Map([['theme', '"dark"']]));
  expect((await siteAt('/bags/')).replaceSaved(new Map())).toBeUndefined();
  expect((await siteAt('/sewing/')).load('theme', String)).toBe('dark');
  expect((await siteAt('/')).load('theme', String)).toBe('light');
});

test('what a site below a path kept before is taken over once', async () => {
  const before = {
    'answer:/sewing/a/#x': '{"tries":1}',
    'answer:/bags/a/#x': '{"tries":2}',
    'steps:folio': '{"hem":true}',
  };
  for (const [key, text] of Object.entries(before)) localStorage.setItem(`course-kit:${key}`, text);
  const sewing = await siteAt('/sewing/');
  expect([...sewing.savedEntries().keys()]).toEqual(['answer:/sewing/a/#x', 'steps:folio']);
  sewing.replaceSaved(new Map());
  expect((await siteAt('/sewing/')).savedEntries().size).toBe(0);
});

test('a page has one name, whether its address names the file or not', () => {
  visit();
  expect(pagePath()).toBe('/lesson/');
  history.replaceState(null, '', '/lesson/index.html?x#y');
  expect(pagePath()).toBe('/lesson/');
  expect(pagePath('../courses/bags/cut/index.html')).toBe('/courses/bags/cut/');
  expect(pagePath('/courses/bags/my-index.html')).toBe('/courses/bags/my-index.html');
});
