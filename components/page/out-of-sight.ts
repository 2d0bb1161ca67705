/**
 * Lets the browser skip the layout of steps and studies that are out of sight (`lesson.css`), once it has laid everything
 * out and knows how high each part is: with guessed heights the page would jump where somebody scrolls.
 */

/** In ms: fonts and frames settle, and a window that is being made narrower comes to rest. */
const REST = 300;

export function skipOutOfSight(): void {
  const prose = document.querySelector('.prose')!;
  let width = 0;
  let soon: ReturnType<typeof setTimeout> | undefined;
  new ResizeObserver(() => {
    if (prose.clientWidth === width) return;
    width = prose.clientWidth;
    prose.classList.remove('laid-out');
    clearTimeout(soon);
    soon = setTimeout(() => prose.classList.add('laid-out'), REST);
  }).observe(prose);
}
