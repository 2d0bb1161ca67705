/** How far the making has been played. */
const STEP_MS = 350;

export class Play {
  readonly #count: () => number;
  #done = $state(0);
  /** How far the step that was done last has come, 0 to 1. */
  #share = $state(1);
  #frame = 0;

  /** @param count how many steps there are now */
  constructor(count: () => number) {
    this.#count = count;
  }

  /** Steps done; those that an option takes away are forgotten. */
  get done(): number {
    return Math.min(this.#done, this.#count());
  }

  get share(): number {
    return this.#share;
  }

  /** Does the next step, before the eyes of whoever wants to see it move. */
  next(): void {
    if (this.done >= this.#count()) return;
    this.to(this.done + 1);
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return;
    let began: number | undefined;
    const turn = (now: number) => {
      began ??= now;
      const part = Math.min(1, (now - began) / STEP_MS);
      this.#share = part * part * (3 - 2 * part);
      if (part < 1) this.#frame = requestAnimationFrame(turn);
    };
    this.#share = 0;
    this.#frame = requestAnimationFrame(turn);
  }

  /** Puts the work to a number of steps at once. */
  to(done: number): void {
    cancelAnimationFrame(this.#frame);
    this.#done = Math.max(0, Math.min(done, this.#count()));
    this.#share = 1;
  }
}
