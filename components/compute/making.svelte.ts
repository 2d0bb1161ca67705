/**
 * The steps at this learner's size. A page is built with its steps drawn at the lesson's own size. Only when a learner
 * has another size, or plays with a study, the engine that makes cloth up is fetched; until it has done its work,
 * whoever shows a step must say that it is of another size.
 */
import type { Pattern } from '../../src/core/index.ts';
import { learnerOf, type Learner } from '../page/learner.svelte.ts';
import { skipOutOfSight } from '../page/out-of-sight.ts';
import { inTurn } from '../page/idle-queue.ts';

type Engine = typeof import('./engine.ts');

export class Making {
  readonly learner: Learner;
  #engine = $state.raw<Engine>();
  #made = $state.raw<Pattern>();
  /** The engine could not be fetched: no way to the site, and no copy kept. */
  failed = $state(false);
  #isAsked = false;

  constructor(learner: Learner) {
    this.learner = learner;
    if (typeof document !== 'undefined') skipOutOfSight();
  }

  /** Whether the page's size is the one that it was built with. */
  get isAsBuilt(): boolean {
    return this.learner.isAsBuilt;
  }

  /** The engine and the pattern it has made up, which may be a moment behind the learner's. */
  readonly made: { engine: Engine; pattern: Pattern } | undefined = $derived.by(() =>
    this.#engine && this.#made ? { engine: this.#engine, pattern: this.#made } : undefined,
  );

  /** Whether what is made up is of the learner's size. */
  readonly isCurrent: boolean = $derived.by(() => this.#made === this.learner.pattern);

  /** What is made up is of another size than the learner's: whoever shows it must say so. */
  get isBehind(): boolean {
    return !this.isAsBuilt && !this.isCurrent;
  }

  /** Fetches the engine, once. From then on the steps follow the page, one by one and each in a turn of its own. */
  ask(): void {
    if (this.#isAsked || typeof document === 'undefined') return;
    this.#isAsked = true;
    this.failed = false;
    import('./engine.ts').then(
      (engine) => this.#follow(engine),
      () => {
        this.failed = true;
        this.#isAsked = false;
      },
    );
  }

  #follow(engine: Engine): void {
    this.#engine = engine;
    $effect.root(() => {
      $effect(() => {
        const { pattern } = this.learner;
        if (pattern === this.#made) return;
        const steps = engine.make(pattern);
        const next = () => {
          if (steps.next().done) this.#made = pattern;
          else giveUp = inTurn(next);
        };
        let giveUp = inTurn(next);
        return () => giveUp();
      });
    });
    // A page goes to the printer as it is now.
    addEventListener('beforeprint', () => {
      const { pattern } = this.learner;
      const steps = engine.make(pattern);
      while (!steps.next().done);
      this.#made = pattern;
    });
  }
}

const makings = new WeakMap<Learner, Making>();

/** The steps of a project on this page. */
export function makingOf(project: string): Making {
  const learner = learnerOf(project);
  let making = makings.get(learner);
  if (!making) makings.set(learner, (making = new Making(learner)));
  return making;
}
