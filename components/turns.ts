/**
 * What follows the hand when it has moved something: in turns so short that the next move never waits long for one, and
 * in none while it moves.
 */
import { flushSync } from 'svelte';

/** In ms: turns that are over sooner are taken together. */
const SHORT = 4;

/** What is in sight goes before what is not. */
const queues = [new Set<() => void>(), new Set<() => void>()] as const;
let soon: ReturnType<typeof setTimeout> | undefined;
let isHeld = false;

/** Does something once it is its turn. Returns the way to give it up. */
export function inTurn(work: () => void, isInSight = true): () => void {
  const queue = queues[isInSight ? 0 : 1];
  queue.add(work);
  begin();
  return () => queue.delete(work);
}

/** The hand moves: nobody gets a turn before `goOn`. */
export function hold(): void {
  isHeld = true;
}

export function goOn(): void {
  isHeld = false;
  begin();
}

function begin(): void {
  soon ??= setTimeout(take);
}

function take(): void {
  soon = undefined;
  const end = performance.now() + SHORT;
  while (!isHeld) {
    const queue = queues.find(({ size }) => size > 0);
    const [work] = queue ?? [];
    if (!work) return;
    queue!.delete(work);
    work();
    flushSync();
    if (performance.now() > end) return begin();
  }
}
