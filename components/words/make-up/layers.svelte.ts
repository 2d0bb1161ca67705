/** The most layers after each step. Counting them takes longer than all the rest, so it waits until the hand rests for a while. */
import type { Pattern } from '../../../src/core/index.ts';
import type { InView } from '../../page/in-view.svelte.ts';
import type { Making } from '../../compute/making.svelte.ts';

/** In ms. */
const REST = 800;

export class Layers {
  readonly #making: Making;
  readonly #built: readonly number[];
  #counted = $state.raw<readonly number[]>([]);
  #of = $state.raw<Pattern>();

  /** @param built those of the lesson's own size */
  constructor(making: Making, built: readonly number[]) {
    this.#making = making;
    this.#built = built;
  }

  /** After a step, counted from 0; undefined while it is being counted. */
  at(i: number): number | undefined {
    const { isAsBuilt, learner } = this.#making;
    if (isAsBuilt) return this.#built[i];
    return this.#of === learner.pattern ? this.#counted[i] : undefined;
  }

  /** Call while a component is being set up. Each step is counted in a task of its own. */
  follow(inView: InView): void {
    $effect(() => {
      const { isAsBuilt, isCurrent, made } = this.#making;
      if (isAsBuilt || !isCurrent || !made || !inView.is || this.#of === made.pattern) return;
      const { engine, pattern } = made;
      const ids = engine.tellAll(pattern).map(({ id }) => id);
      const counted: number[] = [];
      let turn = setTimeout(function count() {
        counted.push(engine.layersMost(pattern, ids[counted.length]!));
        turn = counted.length < ids.length ? setTimeout(count) : setTimeout(finish);
      }, REST);
      const finish = () => {
        this.#counted = counted;
        this.#of = pattern;
      };
      return () => clearTimeout(turn);
    });
  }
}
