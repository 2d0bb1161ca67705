/** The drawing of a study: the one that the page was built with until somebody plays, and a live one from then on. */
import { untrack } from 'svelte';
import { Client } from './client.svelte.ts';
import type { Drawing, Drawn } from './protocol.ts';
import type { Learner } from '../page/learner.svelte.ts';
import type { InView } from '../page/in-view.svelte.ts';

/** In ms: what is out of sight is drawn after what is looked at. It is drawn all the same: somebody may print the page. */
export const OUT_OF_SIGHT_DELAY = 300;

export class LiveDrawing {
  readonly #learner: Learner;
  readonly #inView: InView;
  readonly #isTouched: () => boolean;
  readonly #drawing: () => Drawing | undefined;
  readonly #client = new Client<'drawing'>();
  /** Stays to be looked at, dimmed, while the next one is on its way. */
  #last: Drawn | undefined;

  /**
   * Make it while a component is being set up.
   *
   * @param isTouched whether somebody plays, so that what the page was built with no longer shows it
   * @param drawing what is to be drawn; undefined where there is nothing
   */
  constructor(learner: Learner, inView: InView, isTouched: () => boolean, drawing: () => Drawing | undefined) {
    this.#learner = learner;
    this.#inView = inView;
    this.#isTouched = isTouched;
    this.#drawing = drawing;
    $effect(() => {
      const { project, settledPattern: pattern } = learner;
      const wanted = this.isNeeded ? drawing() : undefined;
      untrack(() => {
        if (wanted)
          this.#client.ask(
            { kind: 'drawing', drawing: wanted },
            { project, pattern },
            inView.is ? 0 : OUT_OF_SIGHT_DELAY,
          );
        else this.#client.stop();
      });
    });
  }

  readonly isNeeded: boolean = $derived.by(() => !this.#learner.isAsBuilt || this.#isTouched());

  /** Undefined where the drawing that the page was built with will do, or nothing better is there yet. */
  readonly drawn: Drawn | undefined = $derived.by(() => {
    if (!this.isNeeded) return undefined;
    // Out of sight nothing is painted anew.
    if (this.#inView.is) this.#last = this.#client.value ?? this.#last;
    return this.#last;
  });

  /** What is shown is of another size, or of another state of the study. */
  readonly isBehind: boolean = $derived.by(() => {
    const { of, value, stale } = this.#client;
    if (!this.isNeeded) return false;
    return of !== this.#learner.settledPattern || this.drawn !== value || (stale && !this.#isPlaying);
  });

  /** While a step is on its way, each drawing is followed by the next. */
  readonly #isPlaying: boolean = $derived.by(() => {
    const drawing = this.#drawing();
    return drawing?.of === 'play' && drawing.at > 0 && drawing.at < 1;
  });

  /** Why the drawing is behind, in a sentence for the learner; or nothing. */
  get error(): string {
    return this.#client.error;
  }
}
