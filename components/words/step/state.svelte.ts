/**
 * A step as its card shows it. A page may hold twenty of them: each follows the page in a turn of its own, those in
 * sight first, and its drawing is painted once it is in sight.
 */
import { untrack } from 'svelte';
import type { Pattern, Scene } from '../../../src/core/index.ts';
import { Client } from '../../compute/client.svelte.ts';
import type { Steps } from '../../compute/steps.svelte.ts';
import type { InView } from '../../page/in-view.svelte.ts';
import { OUT_OF_SIGHT_DELAY } from '../../compute/live-drawing.svelte.ts';
import { whenIdle } from '../../page/idle-queue.ts';
import type { StepFacts } from './view.ts';

/** A step and the pattern that its numbers are of; undefined where an option leaves it out. */
type FactsOfPattern = { step: StepFacts | undefined; of: Pattern };

export class StepState {
  readonly #steps: Steps;
  readonly #client = new Client<'drawing'>();
  readonly #inView: InView;
  readonly #id: string;
  readonly #built: StepFacts | undefined;
  #telling: FactsOfPattern;
  /** Its drawing and the pattern that it is of; without a scene the one that the page was built with. */
  #drawing: { scene?: Scene | undefined; of: Pattern | undefined };
  /** The numbers are of another size than the page's. */
  isBehind: boolean;
  /** And none of this size were there yet. */
  isWaiting: boolean;
  #giveUp = () => {};

  /**
   * Make it while a component is being set up.
   *
   * @param built the step at the lesson's own size
   */
  constructor(steps: Steps, inView: InView, id: string, built: StepFacts | undefined) {
    this.#steps = steps;
    this.#inView = inView;
    this.#id = id;
    this.#built = built;
    this.#telling = $state.raw({ step: built, of: steps.learner.settledPattern });
    this.#drawing = $state.raw({ of: steps.isAsBuilt ? steps.learner.settledPattern : undefined });
    this.isBehind = $state(!steps.isAsBuilt);
    this.isWaiting = $state(!steps.isAsBuilt);
    const client = this.#client;
    $effect(() => {
      const { isAsBuilt, learner } = steps;
      const { project, settledPattern: pattern } = learner;
      untrack(() => {
        if (isAsBuilt) client.stop();
        else
          client.ask(
            { kind: 'drawing', drawing: { of: 'step', id } },
            { project, pattern },
            inView.is ? 0 : OUT_OF_SIGHT_DELAY,
          );
      });
    });
    $effect(() => {
      const { isAsBuilt, isCurrent } = steps;
      const { is: isInSight, isPrinting } = inView;
      void client.value;
      if (isPrinting) this.#follow();
      // What is out of sight need not say first that it is behind.
      else if (isAsBuilt || isCurrent || isInSight) this.#giveUp = whenIdle(() => this.#follow(), isInSight);
      return () => this.#giveUp();
    });
  }

  get step(): StepFacts | undefined {
    return this.#telling.step;
  }

  /** The pattern that the numbers are of. */
  get of(): Pattern {
    return this.#telling.of;
  }

  /** The drawing to show; undefined where the one that the page was built with will do, or nothing better is there yet. */
  get scene(): Scene | undefined {
    return this.#drawing.scene;
  }

  /** The drawing shown is of another size than the page's. */
  get isOfAnotherSize(): boolean {
    return this.isBehind || this.#drawing.of !== this.of;
  }

  /** Why it is behind, in a sentence for the learner; or nothing. */
  get error(): string {
    return this.#steps.error || this.#client.error;
  }

  #follow(): void {
    const { isAsBuilt, isCurrent, made, learner } = this.#steps;
    if (isAsBuilt) {
      this.#tell({ step: this.#built, of: learner.settledPattern });
      this.#drawing = { of: learner.settledPattern };
    } else if (made && isCurrent) {
      this.#tell({ step: made.steps.find(({ id }) => id === this.#id), of: made.of });
      const { value, of } = this.#client;
      if (of === made.of && this.#drawing.of !== of && this.#inView.is) this.#drawing = { scene: value?.scene, of };
    } else {
      this.isBehind = true;
      this.isWaiting = !made;
    }
  }

  #tell(telling: FactsOfPattern): void {
    if (telling.of !== this.of || this.isBehind) this.#telling = telling;
    this.isBehind = this.isWaiting = false;
  }
}
