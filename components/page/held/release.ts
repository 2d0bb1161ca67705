/** Shows the results that a page keeps back once they are answered, or asked for. */
import { ANSWERED } from '../answered.ts';
import { asRecord, load, pagePath } from '../storage.ts';

/** Right, or tried so often that the worked solution is offered. */
function isAnswered(name: unknown): boolean {
  const kept = load(`answer:${pagePath()}#${String(name)}`, asRecord);
  const tries = typeof kept?.tries === 'number' ? kept.tries : 0;
  return asRecord(kept?.checked)?.right === true || tries > 1;
}

function release(): void {
  for (const held of document.querySelectorAll<HTMLElement>('[data-held]')) {
    const names: unknown = JSON.parse(held.dataset.held ?? '[]');
    if (Array.isArray(names) && names.every(isAnswered)) delete held.dataset.held;
  }
}

function show({ target }: Event): void {
  if (!(target instanceof Element) || !target.closest('[data-show-held]')) return;
  const held = target.closest<HTMLElement>('[data-held]');
  if (!held) return;
  delete held.dataset.held;
  // The button is gone; who pressed it by key goes on from here.
  held.focus({ preventScroll: true });
}

/** Follows what is answered. Call in an effect; returns the way to stop. */
export function followHeld(): () => void {
  release();
  document.addEventListener('click', show);
  document.addEventListener(ANSWERED, release);
  return () => {
    document.removeEventListener('click', show);
    document.removeEventListener(ANSWERED, release);
  };
}
