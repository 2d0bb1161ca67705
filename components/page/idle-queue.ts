/**
 * What follows the hand when it has moved something: in turns so short that the next move never waits long for one, and
 * in none while it moves.
 */
import { flushSync } from 'svelte';
import { sizeChange } from './learner.svelte.ts';

/** In ms: turns that are over sooner are taken together. */
const SHORT = 4;
/** In ms: how often to look whether the hand rests. */
const LOOK = 50;

/** What is in sight goes before what is not. */
const queues = [new Set<() => void>(), new Set<() => void>()] as const;
let soon: ReturnType<typeof setTimeout> | undefined;

/** Does something once it is its turn. Returns the way to give it up. */
export function whenIdle(work: () => void, isInSight = true): () => void {
  const queue = queues[isInSight ? 0 : 1];
  queue.add(work);
  begin();
  return () => queue.delete(work);
}

function begin(): void {
  soon ??= setTimeout(take, sizeChange.isUnderWay ? LOOK : 0);
}

function take(): void {
  soon = undefined;
  const end = performance.now() + SHORT;
  while (!sizeChange.isUnderWay && performance.now() < end) {
    const queue = queues.find(({ size }) => size > 0);
    const [work] = queue ?? [];
    if (!work) return;
    queue!.delete(work);
    work();
    flushSync();
  }
  begin();
}
