/** A drawing that follows the learner's size while it is in sight, each in a task of its own. */
import type { Scene } from '../../src/core/index.ts';
import type { InView } from './in-view.svelte.ts';
import type { Making } from './making.svelte.ts';

type Made = NonNullable<Making['made']>;

export class Drawn {
  readonly #making: Making;
  #scene = $state.raw<Scene>();
  /** What the scene was drawn from. */
  #of = $state.raw<Made['pattern']>();

  constructor(making: Making) {
    this.#making = making;
  }

  /** The drawing to show; undefined where the one that the page was built with will do, or nothing better is there yet. */
  get scene(): Scene | undefined {
    return this.#making.isAsBuilt ? undefined : this.#scene;
  }

  /** The drawing shown is of another size than the learner's. */
  get isOfAnotherSize(): boolean {
    return !this.#making.isAsBuilt && this.#of !== this.#making.learner.pattern;
  }

  /** Call while a component is being set up. */
  follow(inView: InView, draw: (made: Made) => Scene | undefined): void {
    $effect(() => {
      const making = this.#making;
      if (making.isAsBuilt || !inView.is) return;
      making.ask();
      const { made } = making;
      if (!made || !making.isCurrent || this.#of === made.pattern) return;
      const turn = () => {
        this.#scene = draw(made);
        this.#of = made.pattern;
      };
      if (inView.isPrinting) {
        turn();
        return;
      }
      const soon = setTimeout(turn);
      return () => clearTimeout(soon);
    });
  }
}
