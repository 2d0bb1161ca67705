/** The most layers after each step. Counting them takes longer than all the rest, so it waits until the size has been left alone for a while. */
import { Client } from '../../compute/client.svelte.ts';
import type { Learner } from '../../page/learner.svelte.ts';

/** In ms. */
const REST = 800;

export class LayerCounts {
  readonly #learner: Learner;
  readonly #built: readonly string[];
  readonly #client = new Client<'layer counts'>({ rest: REST });

  /**
   * Make it while a component is being set up.
   *
   * @param built those of the lesson's own size
   */
  constructor(learner: Learner, built: readonly string[]) {
    this.#learner = learner;
    this.#built = built;
    this.#client.follow(learner, { kind: 'layer counts' });
  }

  /** After a step, counted from 0; undefined while it is being counted. */
  at(i: number): string | undefined {
    const { isAsBuilt, settledPattern: pattern } = this.#learner;
    if (isAsBuilt) return this.#built[i];
    return this.#client.of === pattern ? this.#client.value?.[i] : undefined;
  }
}
