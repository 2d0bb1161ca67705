/** The rules of the pleat study: which sizes it moves, how many folds are made, and what came of it. */
import { formatLength, isPleated, type Measure, type Pattern, type Pleated } from '../../../src/core/index.ts';
import { type Learner } from '../../page/learner.svelte.ts';
import { readFormula } from '../../page/quantity.ts';

/** How long one fold takes to watch. */
const FOLD_MS = 350;

export class PleatState {
  readonly #learner: Learner;
  readonly #name: string;
  /** Folds made; those of a strip that has got fewer folds are forgotten. */
  #made = $state(0);
  /** A part of a fold is one being made. */
  #shown = $state(0);
  /** The same, for drawings that are not looked at: they follow once the one that is has been painted. */
  #besides = $state(0);
  #lastWasFold = $state(false);
  #frame = 0;

  constructor(learner: Learner, name: string) {
    this.#learner = learner;
    this.#name = name;
  }

  /** The piece at the sizes chosen at this moment. */
  readonly piece: Pleated | undefined = $derived.by(() => pleatedIn(this.#learner.livePattern, this.#name));

  /** The piece as the page shows it: what is not looked at while a slider moves is drawn a moment later. */
  readonly rested: Pleated | undefined = $derived.by(() => pleatedIn(this.#learner.settledPattern, this.#name));

  /** The measures that the pleats are given by and a learner may change, by name: the file's matter, whatever is chosen. */
  readonly #wished: string[] = $derived.by(() => {
    const { lesson, project } = this.#learner;
    const { pockets, depth, step, lift, head, height } = project.file.pieces[this.#name]?.pleats ?? {};
    const named = [pockets, depth, step, lift, head, height].flatMap((wish) => {
      const formula = typeof wish === 'string' ? readFormula(wish, lesson) : undefined;
      return formula?.ok ? formula.value.names : [];
    });
    return Object.keys(lesson.measures).filter((name) => lesson.measures[name]?.adjustable && named.includes(name));
  });

  readonly wishes: Measure[] = $derived.by(() => {
    const { measures } = this.#learner.livePattern;
    return this.#wished.flatMap((name) => measures[name] ?? []);
  });

  get folds(): number {
    return this.piece?.pleats.folds.length ?? 0;
  }

  get made(): number {
    return Math.min(this.#made, this.folds);
  }

  get shown(): number {
    return Math.min(this.#shown, this.folds);
  }

  get besides(): number {
    return Math.min(this.#besides, this.rested?.pleats.folds.length ?? 0);
  }

  readonly changed: boolean = $derived.by(
    () => this.#made > 0 || this.wishes.some(({ value, adjustable }) => value !== adjustable?.lesson),
  );

  move(name: string, value: number): void {
    this.#lastWasFold = false;
    this.#learner.set(name, value);
  }

  /** Makes the next fold, before the eyes of whoever wants to see it move. */
  makeNext(): void {
    if (this.made >= this.folds) return;
    this.#foldTo(this.made + 1, !matchMedia('(prefers-reduced-motion: reduce)').matches);
  }

  /** Puts the strip to a number of folds at once. */
  foldTo(made: number): void {
    this.#foldTo(made, false);
  }

  back(): void {
    for (const { name, adjustable } of this.wishes) if (adjustable) this.#learner.set(name, adjustable.lesson);
    this.#foldTo(0, false);
    this.#lastWasFold = false;
  }

  /** One or two sentences on what the last move did. */
  readonly happened: string = $derived.by(() => {
    const piece = this.rested;
    if (!piece) return '';
    const { pleats } = piece;
    const fold = this.#lastWasFold ? pleats.folds[this.made - 1] : undefined;
    if (fold) {
      const part = fold.kind === 'mountain' ? 'top' : 'bottom';
      const rest =
        this.made === this.folds
          ? ` The panel is folded: ${this.#show(pleats.panelHeight)} high.`
          : ` The rest of the strip now ${fold.kind === 'mountain' ? 'hangs down behind' : 'goes up again'}.`;
      return `Fold ${this.made}, a ${fold.kind} fold, makes the ${part} of pocket ${fold.pocket}.${rest}`;
    }
    const lesson = pleatedIn(this.#learner.lesson, this.#name)?.pleats;
    const more = lesson ? pleats.stripLength - lesson.stripLength : 0;
    const sentence = `${pleats.pockets.length} pockets take a strip of ${this.#show(pleats.stripLength)}; folded, it is ${this.#show(pleats.panelHeight)} high.`;
    if (Math.abs(more) < 0.05) return sentence;
    return `${sentence} The strip is ${this.#show(Math.abs(more))} ${more > 0 ? 'longer' : 'shorter'} than in the lesson.`;
  });

  /** Why there is nothing to fold. */
  readonly trouble: string[] = $derived.by(() =>
    this.piece ? [] : this.#learner.livePattern.findings.filter((f) => f.severity === 'error').map((f) => f.message),
  );

  #foldTo(made: number, watched: boolean): void {
    const from = this.shown;
    this.#made = made;
    this.#lastWasFold = true;
    requestAnimationFrame(() => setTimeout(() => (this.#besides = this.#made)));
    cancelAnimationFrame(this.#frame);
    if (!watched) {
      this.#shown = made;
      return;
    }
    let began: number | undefined;
    const turn = (now: number) => {
      began ??= now;
      const part = Math.min(1, (now - began) / FOLD_MS);
      this.#shown = from + (made - from) * ease(part);
      if (part < 1) this.#frame = requestAnimationFrame(turn);
    };
    this.#frame = requestAnimationFrame(turn);
  }

  #show(mm: number): string {
    const { edition, grid } = this.#learner.livePattern;
    return formatLength(mm, edition, { grid, style: 'set' });
  }
}

function pleatedIn(pattern: Pattern, name: string): Pleated | undefined {
  const piece = pattern.pieces[name];
  return piece && isPleated(piece) ? piece : undefined;
}

/** Slow at both ends, as a hand turns cloth. */
const ease = (part: number): number => part * part * (3 - 2 * part);
