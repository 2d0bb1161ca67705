/** One size that a learner may change: by typing it as people write lengths, or with the ruler. */
import { formatChosen, parseLength, readPlainNumber, type Measure } from '../../../src/core/index.ts';
import type { Learner } from '../learner.svelte.ts';
import { stepAt, valueAt } from '../../ui/ruler-slider/ruler.ts';

type Read = { value: number } | { trouble: string };

export class SizeField {
  readonly #learner: Learner;
  readonly #name: string;
  /** What is being typed; it stays as it is until it can be taken, and the field is left. */
  #typed = $state<string>();
  /** Trouble is only spoken of when the field is left or Enter is pressed: half a size is not a mistake. */
  #settled = $state(false);

  constructor(learner: Learner, name: string) {
    this.#learner = learner;
    this.#name = name;
  }

  get measure(): Measure | undefined {
    return this.#learner.livePattern.measures[this.#name];
  }

  readonly shown: string = $derived.by(() => (this.measure ? this.#write(this.measure.value) : ''));

  get text(): string {
    return this.#typed ?? this.shown;
  }

  readonly #read: Read | undefined = $derived(this.#typed === undefined ? undefined : this.#judge(this.#typed));

  /** Why the typed size cannot be taken. */
  get trouble(): string | undefined {
    return this.#settled && this.#read && 'trouble' in this.#read ? this.#read.trouble : undefined;
  }

  /** The nearest size that can be taken, when what was typed can be read but not taken. */
  readonly nearest: { text: string; value: number } | undefined = $derived.by(() => {
    const range = this.measure?.adjustable;
    if (!this.#settled || this.#typed === undefined || !range) return undefined;
    const read = this.#number(this.#typed);
    if (!read || this.#learner.refusal(this.#name, read) === undefined) return undefined;
    const value = valueAt(range, stepAt(range, read));
    return { text: this.#write(value), value };
  });

  type(text: string): void {
    this.#typed = text;
    this.#settled = false;
    if (this.#read && 'value' in this.#read) this.#learner.set(this.#name, this.#read.value);
  }

  /** The field is left, or Enter pressed: a size that was taken is written out neatly. */
  settle(): void {
    if (this.#read && 'value' in this.#read) this.#typed = undefined;
    this.#settled = true;
  }

  move(value: number): void {
    this.#typed = undefined;
    this.#learner.set(this.#name, value);
  }

  #judge(text: string): Read {
    const measure = this.measure;
    if (!measure?.adjustable) return { trouble: '' };
    if (measure.adjustable.kind === 'length') {
      const read = parseLength(text, this.#learner.edition);
      if (!read.ok) return { trouble: read.fault.message };
    }
    const value = this.#number(text);
    if (value === undefined) {
      const what = measure.adjustable.kind === 'count' ? 'how many' : 'a number';
      return { trouble: `Write ${what}, such as ${measure.adjustable.lesson}.` };
    }
    const trouble = this.#learner.refusal(this.#name, value);
    return trouble === undefined ? { value } : { trouble };
  }

  #number(text: string): number | undefined {
    const kind = this.measure?.adjustable?.kind;
    if (kind === 'count') return /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : undefined;
    if (kind === 'number') return readPlainNumber(text);
    const read = parseLength(text, this.#learner.edition);
    return read.ok ? read.value : undefined;
  }

  #write(value: number): string {
    const { edition, grid } = this.#learner.livePattern;
    return formatChosen(value, this.measure?.adjustable?.kind ?? 'length', edition, { grid });
  }
}
