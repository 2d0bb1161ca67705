/** The drawing of a study: the one that the page was built with until somebody plays, and a live one from then on. */
import type { Scene } from '../../src/core/index.ts';
import type { InView } from '../page/in-view.svelte.ts';
import type { Making } from './making.svelte.ts';

type Made = NonNullable<Making['made']>;

export class Live {
  readonly #making: Making;
  readonly #inView: InView;
  readonly #isTouched: () => boolean;
  readonly #draw: (made: Made) => Scene | undefined;
  /** Stays to be looked at, dimmed, while the next one is on its way. */
  #last: Scene | undefined;

  /**
   * Make it while a component is being set up.
   *
   * @param isTouched whether somebody plays, so that what the page was built with no longer shows it
   */
  constructor(making: Making, inView: InView, isTouched: () => boolean, draw: (made: Made) => Scene | undefined) {
    this.#making = making;
    this.#inView = inView;
    this.#isTouched = isTouched;
    this.#draw = draw;
    $effect(() => {
      if (this.isNeeded && inView.is) making.ask();
    });
  }

  readonly isNeeded: boolean = $derived.by(() => !this.#making.isAsBuilt || this.#isTouched());

  readonly #now: Scene | undefined = $derived.by(() => {
    const { made } = this.#making;
    return this.isNeeded && made && this.#inView.is ? this.#draw(made) : undefined;
  });

  /** Undefined where the drawing that the page was built with will do, or nothing better is there yet. */
  readonly scene: Scene | undefined = $derived.by(() => {
    if (!this.isNeeded) return undefined;
    this.#last = this.#now ?? this.#last;
    return this.#last;
  });

  /** What is shown is of another size, or of another state of the study. */
  readonly isBehind: boolean = $derived.by(() => this.isNeeded && (!this.#now || !this.#making.isCurrent));
}
