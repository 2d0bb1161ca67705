/**
 * A queue of short tasks that update the page after a slider has moved. None runs while it moves, so that no move waits
 * for one.
 */
import { flushSync } from 'svelte';
import { sizeChange } from './learner.svelte.ts';

/** In ms: tasks that take less than this are run one after the other without a pause. */
const SHORT = 4;
/** In ms: how often to look whether the slider still moves. */
const LOOK = 50;

/** Tasks for what is in sight run first. */
const queues = [new Set<() => void>(), new Set<() => void>()] as const;
let soon: ReturnType<typeof setTimeout> | undefined;

/** Runs a task when the page is idle. Returns a function that cancels it. */
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
