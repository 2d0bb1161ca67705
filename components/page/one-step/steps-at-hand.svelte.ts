/**
 * The steps of a lesson, one at a time. All of them and their drawings are worked out when it is opened, and again for
 * each size, so that nothing is fetched while somebody sews.
 */
import { untrack } from 'svelte';
import { Client } from '../../compute/client.svelte.ts';
import type { Fit, Scene } from '../../../src/core/index.ts';
import type { Learner } from '../learner.svelte.ts';
import type { StepFacts } from '../../words/step/view.ts';
import type { Ticks } from '../../words/step/ticks.svelte.ts';

export class StepsAtHand {
  readonly #client = new Client<'making'>();
  readonly #learner: Learner;
  readonly #ids: readonly string[];
  readonly #ticks: Ticks;
  /** The id of the step that is looked at; undefined until the steps are there. */
  #id: string | undefined = $state();
  /** Its place among the steps: where its option takes it away, the one that comes to its place is shown. */
  #place = 0;

  /**
   * Make it while a component is being set up.
   *
   * @param ids the steps that the lesson tells; none: all
   * @param first the id of the step to begin with; left out, the first that is not ticked
   */
  constructor(learner: Learner, ticks: Ticks, ids: readonly string[], fit: Fit, first: string | undefined) {
    this.#learner = learner;
    this.#ids = ids;
    this.#ticks = ticks;
    this.#id = first;
    // From then on it stays where it is, whatever is ticked.
    $effect(() => {
      if (this.steps.length > 0) this.#id ??= this.#firstOpen(this.steps.map(({ id }) => id));
    });
    $effect(() => {
      const { project, settledPattern: pattern } = learner;
      untrack(() =>
        this.#client.ask({ kind: 'making', fit, first: this.#id ?? this.#firstOpen(ids) }, { project, pattern }),
      );
    });
  }

  /** Those of the lesson, in the order of the making. */
  readonly steps: readonly StepFacts[] = $derived.by(() => {
    const all = this.#client.value?.steps ?? [];
    return this.#ids.length === 0 ? all : all.filter(({ id }) => this.#ids.includes(id));
  });

  /** Where in them one is, from 0. */
  readonly at: number = $derived.by(() => {
    const wanted = this.#id ?? this.#firstOpen(this.steps.map(({ id }) => id));
    const found = this.steps.findIndex(({ id }) => id === wanted);
    return found >= 0 ? found : Math.max(0, Math.min(this.#place, this.steps.length - 1));
  });

  get step(): StepFacts | undefined {
    return this.steps[this.at];
  }

  /** The step's drawing, as soon as there is one. */
  get scene(): Scene | undefined {
    return this.step && this.#client.value?.drawings[this.step.id];
  }

  /** The step and its drawing are of another size than the page's. */
  get isBehind(): boolean {
    return this.#client.value !== undefined && this.#client.of !== this.#learner.settledPattern;
  }

  /** The pattern that the numbers are of. */
  get of() {
    return this.#client.of ?? this.#learner.settledPattern;
  }

  /** Every step and every drawing is here. */
  get isWhole(): boolean {
    return !this.isBehind && this.#client.value?.isWhole === true;
  }

  /** Why there are none, in a sentence; or nothing. */
  get error(): string {
    return this.#client.error;
  }

  /** Goes on by so many steps, as far as there are any. Returns whether it went anywhere. */
  go(by: 1 | -1): boolean {
    const next = this.steps[this.at + by];
    if (!next) return false;
    this.#place = this.at + by;
    this.#id = next.id;
    return true;
  }

  /** What is done already is not shown again, unless all of it is. */
  #firstOpen(ids: readonly string[]): string | undefined {
    return untrack(() => ids.find((id) => !this.#ticks.has(id)) ?? ids[0]);
  }
}
