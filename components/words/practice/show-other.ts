/** Puts the part that asks a question of another kind into a set; it is fetched when its turn comes. */
import { mount, unmount, type Component } from 'svelte';
import type { Kind, Other } from './other.ts';

/**
 * Where the part of a kind is. The question stands in the same lesson too, and its island says so. An `import()` by its
 * name would fetch its styles first, which Astro gives to the page and to nobody else.
 */
function placeOf(word: Kind): string {
  const island = document.querySelector(`astro-island[component-url*="/${word}."]`);
  return new URL(island?.getAttribute('component-url') ?? '', document.baseURI).href;
}

/**
 * Mounts it by hand: what Svelte needs for a part known only later would weigh on every lesson.
 *
 * @param more what the set adds to what the question shows
 * @param failed called when the part cannot be fetched
 * @returns takes it away again
 */
export function showOther(
  target: HTMLElement,
  { word, shown }: Other,
  more: Record<string, unknown>,
  failed: () => void,
): () => void {
  let isLeft = false;
  let part: Record<string, unknown> | undefined;
  const fetched = import(/* @vite-ignore */ placeOf(word)) as Promise<{ default: Component<Record<string, unknown>> }>;
  fetched.then(({ default: Part }) => {
    if (!isLeft) part = mount(Part, { target, props: { ...shown, ...more } });
  }, failed);
  return () => {
    isLeft = true;
    if (part) void unmount(part);
  };
}
