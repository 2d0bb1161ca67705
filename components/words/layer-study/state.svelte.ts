/** The layers of a work after a step: which place is looked at, and how thick the materials are taken to be. */
import { layersInWords, suits, thicknessIn, type Pattern } from '../../../src/core/index.ts';
import { Client } from '../../compute/client.svelte.ts';
import type { Learner } from '../../page/learner.svelte.ts';
import type { LayerPlace } from './layers.ts';
import { adviceOn } from './advice.ts';

/** Material by material: its layers in the place, one layer and all of them in mm. */
export type ThicknessRow = { role: string; label: string; layers: number; each: number; together: number };

/** How the work is looked at. */
export type LayerView = 'above' | 'cut' | 'apart';
export const layerViews: readonly { value: LayerView; label: string }[] = [
  { value: 'above', label: 'From above' },
  { value: 'cut', label: 'Cut through' },
  { value: 'apart', label: 'Layers apart' },
];

export class LayerState {
  readonly #learner: Learner;
  readonly #built: readonly LayerPlace[];
  readonly #client = new Client<'places'>();
  #chosen = $state(1);
  /** Thickness of one layer in mm, by role, where the learner tries another. */
  #tried = $state<Record<string, number>>({});
  /** Somebody plays: the drawing must follow. */
  isTouched = $state(false);
  #view = $state<LayerView>('above');

  /**
   * Make it while a component is being set up.
   *
   * @param built the places at the lesson's own size
   */
  constructor(learner: Learner, step: string, built: readonly LayerPlace[]) {
    this.#learner = learner;
    this.#built = built;
    this.#client.follow(learner, { kind: 'places', step });
  }

  get #pattern(): Pattern {
    return this.#learner.settledPattern;
  }

  /** Of another size, and the right ones are on their way. */
  readonly isWaiting: boolean = $derived.by(() => !this.#learner.isAsBuilt && this.#client.of !== this.#pattern);

  /** Why they do not come, in a sentence for the learner; or nothing. */
  get error(): string {
    return this.#client.error;
  }

  readonly places: readonly LayerPlace[] = $derived.by(() =>
    this.#learner.isAsBuilt ? this.#built : (this.#client.value ?? this.#built),
  );

  readonly place: LayerPlace | undefined = $derived.by(
    () => this.places.find(({ n }) => n === this.#chosen) ?? this.places[0],
  );

  choose(n: number): void {
    this.isTouched = true;
    this.#chosen = n;
  }

  get view(): LayerView {
    return this.#view;
  }

  lookAt(view: LayerView): void {
    this.isTouched = true;
    this.#view = view;
  }

  readonly roles: string[] = $derived.by(() => [
    ...new Set(this.places.flatMap(({ stack }) => stack.map(({ material }) => material))),
  ]);

  label(role: string): string {
    return this.#pattern.materials[role]?.label ?? role;
  }

  /** One layer as the shelf has it, in mm. */
  own(role: string): number {
    return thicknessIn(this.#pattern)(role);
  }

  /** One layer as it is taken to be now, in mm. */
  readonly thickness = (role: string): number => this.#tried[role] ?? this.own(role);

  tryThickness(role: string, mm: number): void {
    this.isTouched = true;
    if (Math.abs(mm - this.own(role)) < 1e-6) delete this.#tried[role];
    else this.#tried[role] = mm;
  }

  get hasTried(): boolean {
    return Object.keys(this.#tried).length > 0;
  }

  back(): void {
    this.#tried = {};
    this.#chosen = 1;
    this.#view = 'above';
  }

  thicknessOf({ stack }: LayerPlace): number {
    return stack.reduce((sum, { material, fullness }) => sum + this.thickness(material) * fullness, 0);
  }

  readonly rows: ThicknessRow[] = $derived.by(() =>
    this.roles.flatMap((role): ThicknessRow[] => {
      const here = this.place?.stack.filter(({ material }) => material === role) ?? [];
      if (here.length === 0) return [];
      const each = this.thickness(role);
      const together = here.reduce((sum, { fullness }) => sum + each * fullness, 0);
      return [{ role, label: this.label(role), layers: here.length, each, together }];
    }),
  );

  /** The thickest stack that goes under the foot, and who says so. */
  get machine(): { lifts: number; source: string } {
    return this.#pattern.making?.machine ?? { lifts: 5, source: 'common practice, no source' };
  }

  readonly suits = $derived.by(() => {
    const roles = (this.place?.stack ?? []).map(({ material }) => material);
    const of = (role: string) => this.#pattern.materials[role]?.material;
    const cloth = Math.max(0, ...roles.map((role) => (of(role)?.kind === 'cloth' ? this.thickness(role) : 0)));
    const point = (['leather', 'jeans'] as const).find((one) => roles.some((role) => of(role)?.needle === one));
    return suits({ thickness: this.place ? this.thicknessOf(this.place) : 0, cloth, ...(point && { point }) });
  });

  #fusedIn({ stack }: LayerPlace): number {
    return stack.filter(({ material }) => this.#pattern.materials[material]?.material?.kind === 'interfacing').length;
  }

  /** How many layers lie at a place, in words. */
  layersAt(place: LayerPlace): string {
    return layersInWords({ layers: place.stack.length, fused: this.#fusedIn(place) });
  }

  readonly advice: string[] = $derived.by(() => {
    const { place } = this;
    if (!place) return [];
    const fused = this.#fusedIn(place);
    return adviceOn({ thickness: this.thicknessOf(place), fused, isSewn: place.sewn, lifts: this.machine.lifts });
  });
}

/** Thickness in mm in both editions: no ruler has marks so fine. */
export const thin = (mm: number): string => `${Math.round(mm * 100) / 100}\u202fmm`;
