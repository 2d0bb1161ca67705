/**
 * `client:use={key}`: an island that stays plain HTML until somebody uses it, so that a page full of questions costs
 * little. One for which something is kept under `key` wakes by itself, as does one that is answered in another tab; several
 * names stand a line each.
 * One that shows sizes, `client:use="sizes"`, wakes when they are no longer those that the page was built with; a question
 * that shows some in its answers, `client:use="sizes+answer#name"`, wakes for either reason. One that every reader needs, `client:use="soon"`, wakes as soon as the page has come to rest; below an element with
 * `data-rests` only when it is used, or shows other sizes than the page was built with.
 * One that the address may ask for, `client:use="at#one-step"`, wakes as soon as the address ends in `#one-step`.
 * What keeps the sizes of such a page in step, `client:use="others#edition#project"`, wakes with the first of the others.
 *
 * Nothing done before it is awake is lost: what was typed or chosen is handed over, and what was pressed is pressed again.
 */
import type { ClientDirective } from 'astro';
import { isSaved, onStorageChange, pagePath } from './storage.ts';

declare module 'astro' {
  interface AstroClientDirectives {
    /** What is kept for the island on this page: `answer#name`, `practice#name`, `measured#name`; or `sizes`, `sizes+answer#name`, `soon`, `at#…` or `others#…`. */
    'client:use'?: string;
  }
}

type Control = HTMLInputElement | HTMLSelectElement;

const UNFETCHED = 'This part of the page could not be fetched. Try again when you are connected.';

const wakeOnUse: ClientDirective = (load, { value }, island) => {
  const [reasons = '', name] = String(value).split(/#(.*)/su);
  const kind = reasons.replace('sizes+', '');
  const keys = (name ?? '').split('\n').map((one) => `${kind}:${pagePath()}#${one}`);
  let isWaking = false;
  /** The last thing that was pressed, to be pressed again. */
  let pressed: (() => void) | undefined;
  let trouble: HTMLElement | undefined;

  const use = (event: Event) => {
    const { target, type } = event;
    if (!(target instanceof Element)) return;
    const clicked = target instanceof SVGElement ? target : target.closest('button:not([popovertarget])');
    const again = (at: Element) => () => at.dispatchEvent(new (event.constructor as typeof Event)(type, event));
    if (type === 'click' && clicked) pressed = again(clicked);
    if ((event as KeyboardEvent).key === 'Enter' && target instanceof HTMLInputElement) pressed = again(target);
    if (type === 'pointerdown') pressed = again(target);
    if (/up$|cancel$/u.test(type)) pressed = undefined;
    void wake();
  };
  const uses = ['pointerover', 'pointerdown', 'pointerup', 'pointercancel', 'click', 'keydown', 'input', 'focusin'];
  for (const type of uses) island.addEventListener(type, use);
  const stops = keys.map((key) => onStorageChange(key, () => void wake()));
  // On a page of examples most readers only read.
  const rests = kind === 'soon' && island.closest('[data-rests]') !== null;
  if ((kind === 'soon' && !rests) || keys.some(isSaved)) requestIdle(() => void wake());
  if (reasons.startsWith('sizes') || rests) onOwnSize(() => void wake());
  if (kind === 'at') onHash(`#${name}`, () => void wake());
  if (kind === 'others') onOthers(name!, () => void wake());

  async function wake(): Promise<void> {
    if (isWaking) return;
    isWaking = true;
    dispatchEvent(new Event(WAKES));
    trouble?.remove();
    let touched: (() => void)[] = [];
    if (await isInReach(island.getAttribute('component-url')!)) {
      const hydrate = await load();
      await parentAwake(island);
      touched = touchedIn(island);
      await hydrate();
    }
    if (island.hasAttribute('ssr')) {
      isWaking = false;
      pressed = undefined;
      trouble = Object.assign(document.createElement('p'), { role: 'alert', textContent: UNFETCHED });
      island.append(trouble);
      return;
    }
    for (const type of uses) island.removeEventListener(type, use);
    for (const stop of stops) stop();
    for (const handOver of touched) handOver();
    pressed?.();
  }
};
export default wakeOnUse;

const reached = new Set<string>();
let reaching = Promise.resolve(true);

/**
 * Whether a script and all that it imports can be fetched. A browser may never ask again for a module that once did not
 * come, so none is imported before that is known; what was fetched here lies in the browser's cache.
 */
function isInReach(script: string): Promise<boolean> {
  const reach = async (url: string): Promise<unknown> => {
    if (reached.has(url)) return;
    reached.add(url);
    const text = await (await fetch(url)).text();
    return Promise.all(
      [...text.matchAll(/(?:from|import)"(\.\/[^"]+)"/gu)].map(([, path]) => reach(new URL(path!, url).href)),
    );
  };
  // One check after the other, so that none counts a script that another has only begun to fetch.
  return (reaching = reaching
    .then(() => reach(new URL(script, location.href).href))
    .then(
      () => true,
      () => {
        reached.clear();
        return false;
      },
    ));
}

/** An island in another, as a question among the words of a step, waits for that one. */
function parentAwake(island: HTMLElement): Promise<unknown> | undefined {
  const parent = island.parentElement?.closest('astro-island[ssr]');
  return parent ? new Promise((awake) => parent.addEventListener('astro:hydrate', awake, { once: true })) : undefined;
}

/** Dispatched on the window when an island begins to wake. */
const WAKES = 'course-kit:wakes';

/**
 * Calls once another island wakes, or this reader has chosen an edition or a size.
 *
 * @param built the edition that the page was built with, and its project: `inch#folio`
 */
function onOthers(built: string, then: () => void): void {
  const [edition, project] = built.split('#');
  const page = document.documentElement;
  const look = () => page.dataset['edition'] !== edition && then();
  new MutationObserver(look).observe(page, { attributeFilter: ['data-edition'] });
  look();
  addEventListener(WAKES, then, { once: true });
  if (location.search !== '' || isSaved(`size:${project}`)) then();
}

/** Calls as often as the address comes to end in this. */
function onHash(hash: string, then: () => void): void {
  const look = () => location.hash.startsWith(hash) && then();
  addEventListener('hashchange', look);
  look();
}

/** As UpdateInlineSizes.svelte marks the page. */
const OWN_SIZE = 'data-own-size';

/** Calls once the page shows other sizes than it was built with, or the other edition. */
function onOwnSize(then: () => void): void {
  const page = document.documentElement;
  const look = () => page.hasAttribute(OWN_SIZE) && then();
  new MutationObserver(look).observe(page, { attributeFilter: [OWN_SIZE] });
  look();
}

/** Controls changed since the page was loaded, each with a function that makes the change again. */
function touchedIn(island: HTMLElement): (() => void)[] {
  const controls = [...island.querySelectorAll<Control>('input, select')];
  return controls.flatMap((control) => {
    const tick = control instanceof HTMLInputElement && /^(?:radio|checkbox)$/u.test(control.type);
    const { value } = control;
    const checked = tick && control.checked;
    // Of radio buttons the one that was chosen speaks for all.
    const isTouched = tick
      ? checked !== control.defaultChecked && (checked || control.type === 'checkbox')
      : 'defaultValue' in control
        ? value !== control.defaultValue
        : control.selectedOptions[0]?.defaultSelected === false && control.selectedIndex > 0;
    if (!isTouched) return [];
    return () => {
      if (tick) control.checked = checked;
      else if (control.type !== 'file') control.value = value; // files that were chosen stay chosen
      for (const type of ['input', 'change']) control.dispatchEvent(new Event(type, { bubbles: true }));
    };
  });
}

// Safari has no requestIdleCallback.
const requestIdle = (then: () => void) =>
  'requestIdleCallback' in globalThis ? requestIdleCallback(then) : setTimeout(then, 200);
