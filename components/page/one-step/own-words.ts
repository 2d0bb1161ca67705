/** What a lesson says of a step in its author's own words, for another place on the page. */

const cardOf = (id: string): HTMLElement | undefined =>
  [...document.querySelectorAll<HTMLElement>('section[data-step]')].find(({ dataset }) => dataset.step === id);

/** The words of a step: a copy to put somewhere, the same without markup, and which of its parts they tell. */
export type OwnWords = { copy: DocumentFragment; text: string; tells: string[] };

/**
 * A copy of the words and pictures between the tags of a step; undefined where the lesson has none. Questions stay where
 * they are: an answer has one place.
 */
export function ownWords(id: string): OwnWords | undefined {
  const written = cardOf(id)?.querySelector('.own > astro-slot');
  if (!written) return undefined;
  const copy = document.createDocumentFragment();
  copy.append(...[...written.childNodes].map((node) => node.cloneNode(true)));
  for (const island of copy.querySelectorAll('astro-island')) island.remove();
  // What a term means opens on the page, which lies behind.
  for (const term of copy.querySelectorAll('button.term')) term.replaceWith(...term.childNodes);
  for (const named of copy.querySelectorAll('[id]')) named.removeAttribute('id');
  const tells = [...copy.querySelectorAll<HTMLElement>('[data-told]')].map(({ dataset }) => dataset.told ?? '');
  return { copy, text: copy.textContent?.trim() ?? '', tells };
}

/** Fetches every picture among the words of steps, so that none is missed later. */
export const fetchPictures = (): Promise<unknown> =>
  Promise.allSettled(
    [...document.querySelectorAll<HTMLImageElement>('section[data-step] .own img')].map((picture) => {
      picture.loading = 'eager';
      return picture.decode();
    }),
  );

/** The button that shows what the lesson keeps back of a step until a question is answered; undefined where it keeps nothing. */
export const heldBack = (id: string): HTMLElement | undefined =>
  cardOf(id)?.closest('[data-held]')?.querySelector<HTMLElement>(':scope > .keeps [data-show-held]') ?? undefined;
