/** Puts a question of the lesson into a set; its island is fetched when its turn comes. */
import { mount, unmount, type Component } from 'svelte';
import type { SetQuestion } from '../word.ts';

type Mixed = { mixAnew: (shown: SetQuestion['view'], seed: string) => SetQuestion['view'] };

/** Of each word whose questions are mixed anew, how. */
const folders = import.meta.glob<Mixed>('../*/again.ts');

/** The folder of a word: AskFold is in ask-fold. */
const folderOf = (word: string): string => word.replace(/([a-z])([A-Z])/gu, '$1-$2').toLowerCase();

/**
 * The code of the question's island. The question stands in the same lesson, marked by its name, and its island says
 * where its code is. A plain `import()` of the file fails in a built site: it fetches the file's style sheet first, and
 * Astro's build has taken that away, because the page has the same styles in its own.
 */
function islandOf(name: string): Promise<{ default: Component<Record<string, unknown>> }> {
  const island = document.querySelector(`[data-asks="${CSS.escape(name)}"] > astro-island`);
  const place = new URL(island?.getAttribute('component-url') ?? '', document.baseURI).href;
  return import(/* @vite-ignore */ place) as ReturnType<typeof islandOf>;
}

/**
 * Mounts it by hand: what Svelte needs for a part known only later would weigh on every lesson.
 *
 * @param seed the same seed mixes what can be chosen alike
 * @param more what the set adds to what the question shows
 * @param failed called when the island cannot be fetched
 * @returns takes it away again
 */
export function showQuestion(
  target: HTMLElement,
  { word, view: shown }: SetQuestion,
  seed: string,
  more: Record<string, unknown>,
  failed: () => void,
): () => void {
  let isLeft = false;
  let part: Record<string, unknown> | undefined;
  const fetched = Promise.all([islandOf(shown.name), folders[`../${folderOf(word)}/again.ts`]?.()]);
  fetched.then(([{ default: Question }, mixed]) => {
    const props = { ...(mixed?.mixAnew(shown, seed) ?? shown), ...more };
    if (!isLeft) part = mount(Question, { target, props });
  }, failed);
  return () => {
    isLeft = true;
    if (part) void unmount(part);
  };
}
