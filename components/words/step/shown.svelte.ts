/**
 * A step as its card shows it. A page may hold twenty of them: each follows the page in a turn of its own, those in
 * sight first, and its drawing in another turn once it is in sight.
 */
import type { Pattern, Scene } from '../../../src/core/index.ts';
import { inTurn } from '../../page/idle-queue.ts';
import type { InView } from '../../page/in-view.svelte.ts';
import type { Making } from '../../compute/making.svelte.ts';
import type { ToldStep } from '../../compute/step-types.ts';

/** A step and the pattern that its numbers are of; undefined where an option leaves it out. */
type Telling = { step: ToldStep | undefined; of: Pattern };

export class Shown {
  readonly #making: Making;
  readonly #inView: InView;
  readonly #id: string;
  readonly #built: ToldStep | undefined;
  #telling: Telling;
  /** Its drawing and the pattern that it is of; without a scene the one that the page was built with. */
  #drawing: { scene?: Scene | undefined; of: Pattern | undefined };
  /** The numbers are of another size than the page's. */
  isBehind: boolean;
  /** And the engine that knows better is on its way. */
  isWaiting: boolean;
  #giveUp = () => {};

  /**
   * Make it while a component is being set up.
   *
   * @param built the step at the lesson's own size
   */
  constructor(making: Making, inView: InView, id: string, built: ToldStep | undefined) {
    this.#making = making;
    this.#inView = inView;
    this.#id = id;
    this.#built = built;
    this.#telling = $state.raw({ step: built, of: making.learner.pattern });
    this.#drawing = $state.raw({ of: making.isAsBuilt ? making.learner.pattern : undefined });
    this.isBehind = $state(!making.isAsBuilt);
    this.isWaiting = $state(!making.isAsBuilt);
    $effect(() => {
      const { isAsBuilt, isCurrent, made } = making;
      const { is: isInSight, isPrinting } = inView;
      if (!isAsBuilt && isInSight) making.ask();
      if (isPrinting) this.#follow();
      // Whoever is out of sight need not say first that it is behind.
      else if (isAsBuilt || isCurrent || !made || isInSight) this.#giveUp = inTurn(() => this.#follow(), isInSight);
      return () => this.#giveUp();
    });
  }

  get step(): ToldStep | undefined {
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

  #follow(): void {
    const { isAsBuilt, isCurrent, made, learner } = this.#making;
    if (isAsBuilt) {
      this.#tell({ step: this.#built, of: learner.pattern });
      this.#drawing = { of: learner.pattern };
    } else if (made && isCurrent) {
      const { engine, pattern } = made;
      this.#tell({ step: engine.tellStep(pattern, this.#id), of: pattern });
      const draw = () => (this.#drawing = { scene: engine.draw(pattern, this.#id), of: pattern });
      if (this.#drawing.of === pattern) return;
      if (this.#inView.isPrinting) draw();
      else if (this.#inView.is) this.#giveUp = inTurn(draw);
    } else {
      this.isBehind = true;
      this.isWaiting = !made;
    }
  }

  #tell(telling: Telling): void {
    if (telling.of !== this.of || this.isBehind) this.#telling = telling;
    this.isBehind = this.isWaiting = false;
  }
}
