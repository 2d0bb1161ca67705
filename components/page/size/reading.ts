/**
 * The drawing that belongs to what is read, beside the text: the last one that the reader came past, once it is out of
 * sight. While it is in sight, and before the first, the finished thing stands there.
 */
import { ANSWERED } from '../answered.ts';
import { WIDE } from './wide.ts';

/** Drawings that tell no answer: those in questions stay in their questions. */
const DRAWINGS = '.prose figure.drawing > svg';
const APART = '[data-question], [data-practice], [data-measured]';

/** Follows the page as it is scrolled. */
export function followReading(): void {
  const wide = matchMedia(WIDE);
  let shown: SVGElement | undefined;
  let frame = 0;
  const changes = new MutationObserver(() => ask(true));

  function ask(anew = false): void {
    if (anew) shown = undefined;
    if (wide.matches) frame ||= requestAnimationFrame(look);
  }
  function look(): void {
    frame = 0;
    // The part may wake at any time, and brings its own elements.
    const place = document.querySelector<HTMLElement>('.reading .passed');
    if (!place) return;
    const passed = passedBy();
    if (passed === shown && (passed === undefined) === place.hidden) return;
    changes.disconnect();
    shown = passed;
    place.hidden = !passed;
    document.querySelector<HTMLElement>('.reading .whole')!.hidden = passed !== undefined;
    place.replaceChildren();
    if (!passed) return;
    place.innerHTML = copyOf(passed);
    changes.observe(passed, { subtree: true, childList: true, characterData: true, attributes: true });
  }
  addEventListener('scroll', () => ask(), { passive: true });
  addEventListener('resize', () => ask(), { passive: true });
  document.addEventListener(ANSWERED, () => ask(true));
  ask();
}

/** The last drawing above the window. */
function passedBy(): SVGElement | undefined {
  const all = [...document.querySelectorAll<SVGElement>(DRAWINGS)].filter(
    (one) => !one.closest(APART) && one.getClientRects().length > 0,
  );
  const last = all.findLast((one) => one.getBoundingClientRect().top < innerHeight * 0.5);
  return last && last.getBoundingClientRect().bottom < 80 ? last : undefined;
}

/** A drawing with ids of its own, and without results that the page keeps back. */
function copyOf(drawing: SVGElement): string {
  const copy = drawing.cloneNode(true) as SVGElement;
  if (drawing.closest('[data-held]')) for (const result of copy.querySelectorAll('[data-result]')) result.remove();
  copy.removeAttribute('aria-labelledby');
  return copy.outerHTML.replaceAll(/( id="|url\(#)/gu, '$1beside-');
}
