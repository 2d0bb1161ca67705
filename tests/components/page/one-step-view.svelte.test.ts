/** The steps at hand as somebody works through them. The worker is the real one, in the same thread. */
import { flushSync, mount, unmount } from 'svelte';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { handlers } from '../../../components/compute/handlers.ts';
import type { FromWorker, ToWorker } from '../../../components/compute/protocol.ts';
import { serveRequests } from '../../../components/compute/serve-requests.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learnerOf, provideProject } from '../../../components/page/learner.svelte.ts';
import OneStep from '../../../components/page/one-step/OneStep.svelte';
import { ANSWERED } from '../../../components/page/answered.ts';
import { ticksOf } from '../../../components/words/step/ticks.svelte.ts';
import { folio, shelf } from '../../core/project/files.ts';
import { newPage, plain } from '../lesson.ts';

/** A worker in this thread: what is asked and answered is copied, as on its way to another. */
class Here {
  onmessage: ((event: { data: FromWorker }) => void) | null = null;
  onerror = null;
  readonly #take = serveRequests(handlers, (news) => this.onmessage?.({ data: structuredClone(news) }));
  postMessage(message: ToWorker): void {
    this.#take(structuredClone(message));
  }
  terminate(): void {}
}

const title = () => plain(document.querySelector('h2')?.textContent ?? '').trim();
const shown = () => plain(document.querySelector('dialog')?.textContent ?? '');
const now = () => plain(document.querySelector('dd[data-result]')?.textContent ?? '');
const button = (name: string) =>
  [...document.querySelectorAll('button')].find(({ textContent }) => textContent.trim() === name)!;
const tick = () => document.querySelector<HTMLInputElement>('.tick input')!;
function press(key: string, on: Element = document.activeElement ?? document.body, more: KeyboardEventInit = {}): void {
  on.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }));
  flushSync();
}

let page: Record<string, unknown>;
let projects = 0;
let project: string;
async function open(first = '', steps: string[] = []): Promise<void> {
  // Each test has a project of its own, so that nothing is ticked before.
  project = `folio-${(projects += 1)}`;
  provideProject({ id: project, file: folio(), materials: shelf(), edition: 'inch' });
  // As on a page, where what keeps its sizes in step comes first.
  learnerOf(project);
  page = mount(OneStep, { target: document.body, props: { project, steps } });
  history.replaceState(null, '', `/lesson/#one-step${first && `:${first}`}`);
  dispatchEvent(new Event('hashchange'));
  flushSync();
  await vi.waitFor(() => expect(shown()).toContain('All steps are here.'), { timeout: 30_000 });
}

beforeEach(() => {
  newPage();
  document.body.innerHTML = '';
  editionChoice.choose('inch');
  vi.stubGlobal('Worker', Here);
  vi.stubGlobal(
    'ResizeObserver',
    class {
      observe() {}
      disconnect() {}
    },
  );
  Object.assign(HTMLDialogElement.prototype, {
    showModal(this: HTMLDialogElement) {
      this.open = true;
    },
    close(this: HTMLDialogElement) {
      this.open = false;
    },
  });
});
afterEach(async () => {
  await unmount(page);
  vi.unstubAllGlobals();
});

test('nineteen steps, one after the other, each with its drawing and its facts', { timeout: 60_000 }, async () => {
  await open();
  for (let n = 1; n <= 19; n += 1) {
    expect(title()).toMatch(new RegExp(`^Step ${n} of 19: \\S`, 'u'));
    expect(document.querySelector('svg[role="img"]')).not.toBeNull();
    expect(now()).toMatch(/\d.* wide, .*\d.* high/u);
    expect(document.activeElement).toBe(document.querySelector('h2'));
    press(n % 2 === 0 ? 'PageDown' : ' ');
  }
  expect(shown()).toContain('That was the last step.');
  expect(title()).toMatch(/^Step 19 of 19/u);
});

test('it begins at the first step that is not ticked, and ticks those of the page', { timeout: 60_000 }, async () => {
  await open('', ['stiffen', 'pleat', 'hold-pleats']);
  expect(title()).toMatch(/^Step 1 of 19/u);
  tick().click();
  flushSync();
  expect(ticksOf(project).has('stiffen')).toBe(true);
  // It stays where it is until somebody goes on; the lesson's own steps alone come up.
  expect(title()).toMatch(/^Step 1 of 19/u);
  press('Enter');
  press('ArrowRight');
  expect(title()).toMatch(/^Step 4 of 19/u);
  press('PageUp');
  press('ArrowLeft');
  press('ArrowLeft');
  expect(title()).toMatch(/^Step 1 of 19/u);
  button('Close').click();
  flushSync();
  expect(document.querySelector('dialog')).toBeNull();
  await vi.waitFor(() => expect(document.activeElement).toBe(button('One step at a time')));
  button('One step at a time').click();
  flushSync();
  await vi.waitFor(() => expect(title()).toMatch(/^Step 2 of 19/u), { timeout: 30_000 });
});

test(
  'a key that is held turns one step, and a control that has the focus keeps its own',
  { timeout: 60_000 },
  async () => {
    await open('pleat');
    press('PageDown');
    press('PageDown', document.activeElement!, { repeat: true });
    expect(title()).toMatch(/^Step 3 of 19/u);
    press(' ', button('Next'));
    press('Enter', tick());
    expect(title()).toMatch(/^Step 3 of 19/u);
    press('PageUp', tick());
    expect(title()).toMatch(/^Step 2 of 19/u);
    press(' ', document.querySelector('h2')!, { shiftKey: true });
    expect(title()).toMatch(/^Step 1 of 19/u);
  },
);

test('edition, size and options are followed at once', { timeout: 60_000 }, async () => {
  await open('pleat');
  // 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4 in; 105 + 2 * 3 + 2 * 10 = 131 mm; cards 5 mm wider: 136 mm.
  expect(now()).toMatch(/^5¼ in wide/u);
  editionChoice.choose('metric');
  flushSync();
  expect(now()).toBe('working it out…');
  await vi.waitFor(() => expect(now()).toMatch(/^131 mm wide/u), { timeout: 30_000 });
  learnerOf(project).set('card width', 110);
  learnerOf(project).choose('flap', false);
  await vi.waitFor(() => expect(now()).toMatch(/^136 mm wide/u), { timeout: 30_000 });
  // Without the flap there are 11 steps.
  expect(title()).toMatch(/^Step 2 of 11/u);
});

test('the screen is kept on while it is open, and no longer', { timeout: 60_000 }, async () => {
  const asked: string[] = [];
  const request = (kind: string) => {
    asked.push(kind);
    return Promise.resolve({ release: () => Promise.resolve(void asked.push('released')) });
  };
  Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } });
  await open();
  expect(asked).toEqual(['screen']);
  button('Close').click();
  flushSync();
  await vi.waitFor(() => expect(asked).toEqual(['screen', 'released']));
  Reflect.deleteProperty(navigator, 'wakeLock');
});

test('one voice of this device reads, and none that asks a host', { timeout: 60_000 }, async () => {
  const said: { text: string; voice: { name: string } }[] = [];
  const far = { name: 'far', lang: 'en', localService: false, default: true };
  const near = { name: 'near', lang: 'en', localService: true, default: false };
  let voices = [far];
  const speech = Object.assign(new EventTarget(), {
    getVoices: () => voices,
    cancel: () => {},
    speak: (one: (typeof said)[number]) => said.push(one),
  });
  vi.stubGlobal('speechSynthesis', speech);
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      text: string;
      constructor(text: string) {
        this.text = text;
      }
    },
  );
  document.documentElement.lang = 'en';
  await open('pleat');
  expect(button('Read aloud')).toBeUndefined();
  voices = [far, near];
  speech.dispatchEvent(new Event('voiceschanged'));
  flushSync();
  button('Read aloud').click();
  flushSync();
  press('PageDown', document.querySelector('h2')!);
  expect(said.map(({ voice }) => voice.name)).toEqual(['near', 'near']);
  expect(said[0]!.text).toContain('Step 2 of 19. Fold the pleats of the pocket strip.');
  expect(said[0]!.text).toContain('5 and 1 quarter inches wide');
});

test(
  'what fuses is waited for by the clock, and a wait goes on beside the next step',
  { timeout: 60_000 },
  async () => {
    await open('stiffen');
    // The light fusible of the shelf says 15 seconds, and nothing of how long it cools.
    expect(shown()).toContain('Press for about 15 seconds on each place, as usual for this material.');
    expect(shown()).toContain('Cool as long as the material’s maker says.');
    expect(button('Start cooling').getAttribute('aria-disabled')).toBe('true');
    const cool = document.querySelectorAll<HTMLInputElement>('.wait input')[1]!;
    cool.value = '2';
    cool.dispatchEvent(new Event('input', { bubbles: true }));
    flushSync();
    button('Start cooling').click();
    flushSync();
    press('PageDown', document.querySelector('h2')!);
    expect(shown()).toContain('Cooling: 0:02');
    await vi.waitFor(() => expect(shown()).toContain('Cooling: time is up.'), { timeout: 5000 });
    press('PageUp', document.querySelector('h2')!);
    // What was typed is there again.
    expect(document.querySelectorAll<HTMLInputElement>('.wait input')[1]!.value).toBe('2');
  },
);

test('an effect that tells of an answer does not come to depend on the view', { timeout: 60_000 }, async () => {
  await open();
  let runs = 0;
  const stop = $effect.root(() => {
    $effect(() => {
      runs += 1;
      document.dispatchEvent(new CustomEvent(ANSWERED));
    });
  });
  flushSync();
  await new Promise((later) => setTimeout(later, 50));
  flushSync();
  expect(runs).toBe(1);
  stop();
});
