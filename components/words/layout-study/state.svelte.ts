/** What is tried in the layout study, and the layout that comes of it. */
import type { Fit } from '../../../src/core/index.ts';
import { Client } from '../../compute/client.svelte.ts';
import { preCuts } from './pre-cuts.ts';
import type { LayoutRequest, OwnClothText } from '../../compute/cutting-types.ts';
import type { Learner } from '../../page/learner.svelte.ts';
import type { RulerRange } from '../../ui/ruler-slider/ruler.ts';

/** In ms: so long a choice rests before it is sent. */
const REST = 120;

/** A cloth that can be laid out: its role, what learners call it, its own width and whether it has a direction. */
export type ClothChoice = Pick<LayoutRequest, 'role' | 'width' | 'nap'> & { label: string };

/** Widths that cloth is sold in, from interfacing to sheeting, in mm. */
const WIDTHS = {
  inch: { min: 18 * 25.4, max: 66 * 25.4, step: 25.4 },
  metric: { min: 450, max: 1700, step: 10 },
} as const;
const MOST_SETS = 20;

export class LayoutState {
  readonly #learner: Learner;
  readonly #start: LayoutRequest;
  readonly client = new Client<'layout'>({ rest: REST });
  /** What was changed; the rest is the project's own. */
  #tried = $state<Partial<Omit<LayoutRequest, 'own'>>>({});
  /** What was written stays written, whether it is laid on or not. */
  #written = $state<OwnClothText>();
  usesOwn = $state(false);

  constructor(learner: Learner, start: LayoutRequest) {
    this.#learner = learner;
    this.#start = start;
  }

  /** The cloths at this size, in this edition: their widths differ between editions. */
  readonly cloths: ClothChoice[] = $derived.by(() => {
    const { pieces, materials } = this.#learner.settledPattern;
    return Object.values(materials).flatMap(({ role, label, material }): ClothChoice[] => {
      const isCut = Object.values(pieces).some((piece) => piece.material === role);
      const width = material?.width;
      const isCloth = material && ['cloth', 'interfacing', 'batting'].includes(material.kind);
      return isCut && isCloth && width !== undefined ? [{ role, label, width, nap: material.nap === 'one way' }] : [];
    });
  });

  readonly wish: LayoutRequest | undefined = $derived.by(() => {
    const role = this.#tried.role ?? this.#start.role;
    const cloth = this.cloths.find((one) => one.role === role) ?? this.cloths[0];
    if (!cloth) return undefined;
    const { cutting } = this.#learner.settledPattern;
    const own = { role: cloth.role, as: 'bolt', width: cloth.width, nap: cloth.nap, folded: false, sets: 1 };
    const wish = { ...own, manner: cutting.manner, ...this.#tried, role: cloth.role };
    return this.usesOwn ? { ...wish, own: this.own } : wish;
  });

  get isTouched(): boolean {
    return this.usesOwn || Object.keys(this.#tried).length > 0;
  }

  /** A learner's own cloth as it is written. What is written in one edition means the same in the other. */
  get own(): OwnClothText {
    const written = this.#written;
    const isEmpty = !written || (written.offcuts + written.bolts).trim() === '';
    return isEmpty ? { offcuts: '', bolts: '', edition: this.#learner.edition } : written;
  }

  /** Whether the bolts that are written take the place of the project's own cloth. */
  get hasBolts(): boolean {
    return this.usesOwn && this.own.bolts.trim() !== '';
  }

  get preCuts() {
    return preCuts[this.#learner.edition];
  }

  get widths(): RulerRange & { lesson: number } {
    const { min, max, step } = WIDTHS[this.#learner.edition];
    const own = this.cloths.find(({ role }) => role === this.wish?.role)?.width ?? min;
    return { kind: 'length', min, max, step, lesson: own };
  }

  readonly sets: RulerRange & { lesson: number } = { kind: 'count', min: 1, max: MOST_SETS, step: 1, lesson: 1 };

  /** Another cloth has a width of its own. */
  choose(role: string): void {
    const { width: _, nap: __, ...rest } = this.#tried;
    this.#tried = { ...rest, role };
  }

  write(which: 'offcuts' | 'bolts', text: string): void {
    this.#written = { ...this.own, [which]: text };
    this.usesOwn = true;
  }

  useOwn(uses: boolean): void {
    this.usesOwn = uses;
  }

  try(wish: Partial<LayoutRequest>): void {
    this.#tried = { ...this.#tried, ...wish };
  }

  /** Back to the project's own; what is written stays to be used again. */
  back(): void {
    this.#tried = {};
    this.usesOwn = false;
  }

  /** The edition's own widths do not carry over. */
  forgetWidth(): void {
    const { width: _, ...rest } = this.#tried;
    this.#tried = rest;
  }

  /** Asks for a layout as it is wished. */
  ask(fit: Fit): void {
    const { project, settledPattern: pattern } = this.#learner;
    if (this.wish) this.client.ask({ kind: 'layout', wish: this.wish, fit }, { project, pattern });
  }

  /** Whether the page was built with what is wished now. */
  get isAsBuilt(): boolean {
    const { edition, changed, project } = this.#learner;
    return !this.isTouched && !changed && edition === project.edition;
  }
}
