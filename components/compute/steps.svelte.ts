/**
 * The steps at this learner's size, for all parts of a page. A page is built with its steps at the lesson's own size;
 * only where a learner has another, they are asked for.
 */
import { untrack } from 'svelte';
import type { Pattern } from '../../src/core/index.ts';
import { learnerOf, type Learner } from '../page/learner.svelte.ts';
import type { StepFacts } from '../words/step/view.ts';
import { skipOutOfSight } from '../page/out-of-sight.ts';
import { Client } from './client.svelte.ts';

export class Steps {
  readonly learner: Learner;
  #client: Client<'steps'> | undefined = $state.raw();

  constructor(learner: Learner) {
    this.learner = learner;
    if (typeof document === 'undefined') return;
    skipOutOfSight();
    // As long as the page: whichever part asks first, the others share the steps.
    $effect.root(() => {
      const client = new Client<'steps'>();
      this.#client = client;
      $effect(() => {
        const { isAsBuilt, settledPattern: pattern, project } = learner;
        untrack(() => {
          if (isAsBuilt) client.stop();
          else client.ask({ kind: 'steps' }, { project, pattern });
        });
      });
    });
  }

  /** Whether the page's size is the one that it was built with. */
  get isAsBuilt(): boolean {
    return this.learner.isAsBuilt;
  }

  /** The steps that were worked out last, and the pattern that they are of; undefined before the first. */
  get made(): { steps: StepFacts[]; of: Pattern } | undefined {
    const { value, of } = this.#client ?? {};
    return value && of && { steps: value, of };
  }

  /** Whether they are of the learner's size. */
  get isCurrent(): boolean {
    return this.#client?.of === this.learner.settledPattern;
  }

  /** They are of another size than the learner's: what shows them must say so. */
  get isBehind(): boolean {
    return !this.isAsBuilt && !this.isCurrent;
  }

  /** Why there are none, in a sentence for the learner; or nothing. */
  get error(): string {
    return this.#client?.error ?? '';
  }
}

const known = new WeakMap<Learner, Steps>();

/** The steps of a project on this page. */
export function stepsOf(project: string): Steps {
  const learner = learnerOf(project);
  let steps = known.get(learner);
  if (!steps) known.set(learner, (steps = new Steps(learner)));
  return steps;
}
