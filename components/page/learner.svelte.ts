/**
 * What this learner has chosen for this page: the edition, their sizes and their options. Every widget reads the
 * pattern from here, so that moving one slider changes every number, drawing and question on the page.
 *
 * On the server nothing is chosen yet: a page is rendered at the lesson's own size in the site's edition.
 */
import {
  formatLength,
  parseLength,
  resolveProject,
  toGrid,
  type Edition,
  type Materials,
  type Measure,
  type Pattern,
  type ProjectFile,
} from '../../src/core/index.ts';
import { flushSync } from 'svelte';
import { writeAddress } from './address.ts';
import { editionChoice } from './edition.svelte.ts';
import { asRecord, load, onStorageChange, save } from './storage.ts';

/** A project as a page carries it: the file's own numbers, and what its materials are. */
export type Project = { id: string; file: ProjectFile; materials: Materials; edition: Edition };

/** A size the learner chose: as chosen, in the edition it was chosen in, so that going there and back loses nothing. */
type Chosen = { value: number; edition: Edition };

const inBrowser = typeof document !== 'undefined';
const projects = new Map<string, Project>();

/** Puts a project where widgets find it. Pages call this while they are built; in the browser the page's own copy is read. */
export function provideProject(project: Project): void {
  projects.set(project.id, project);
}

function fetchProject(id: string): Project {
  const found = projects.get(id);
  if (found) return found;
  const text = inBrowser ? document.getElementById(`project-${id}`)?.textContent : undefined;
  if (!text) throw new Error(`The page does not carry the project "${id}".`);
  const project = JSON.parse(text) as Project;
  projects.set(id, project);
  return project;
}

/** In ms. A page that takes longer than `QUICK` to update would hold the slider up; it waits `REST` after the last move. */
const [QUICK, REST] = [4, 150];

/** Whether a size is being changed at this moment: what updates after it waits (idle-queue.ts). */
export const sizeChange = { isUnderWay: false };

/** How a measure or option is named in the address: `packet width` as `packet-width`. */
const inAddress = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, '-');

/** One project on this page, at this learner's size. */
export class Learner {
  readonly project: Project;
  #values = $state<Record<string, Chosen>>({});
  #options = $state<Record<string, boolean>>({});
  /** Measures and options whose choice the browser does not keep yet. Another tab may have chosen others meanwhile. */
  readonly #unsaved = new Set<string>();
  /** Work as it really came out, until the plan changes. */
  #asMade = $state.raw<Pattern>();
  /** What could not be taken from the address or from what was kept; a sentence each. */
  refused = $state<string[]>([]);

  constructor(project: Project) {
    this.project = project;
    if (inBrowser) this.#begin();
    this.settledPattern = $state.raw(this.livePattern);
    if (!inBrowser) return;
    editionChoice.onChange(() => {
      this.#asMade = undefined;
      this.#follow();
      this.#store();
    });
    // A page goes to the printer as it is now.
    addEventListener('beforeprint', () => this.#follow());
    onStorageChange(this.#key, () => this.#takeOver());
  }

  get #key(): string {
    return `size:${this.project.id}`;
  }

  get edition(): Edition {
    return editionChoice.chosen ?? this.project.edition;
  }

  /** At the sizes that the learner chose. A server works a derived value out at each reading, and nobody chooses there. */
  readonly #planned: Pattern = $derived.by(() =>
    this.changed ? this.#resolve(this.edition, this.#valuesFor(this.edition), this.#options) : this.lesson,
  );

  /** The pattern at the sizes chosen at this moment: sliders and fields show it at once. */
  readonly livePattern: Pattern = $derived.by(() => this.#asMade ?? this.#planned);

  /**
   * The pattern that the rest of the page shows, a moment later on a slow machine. It is a state of its own, so that the
   * slider is painted before anything else changes.
   */
  settledPattern: Pattern;

  /** Whether the page shows what it was built with: what it carries ready-made will do. */
  readonly isAsBuilt: boolean = $derived.by(() => this.settledPattern === this.#lessonIn(this.project.edition));
  #soon: ReturnType<typeof setTimeout> | undefined;
  /** How long the page took to update the last time, in ms. The first time it is unknown, and many parts load. */
  #took = Infinity;

  /** What this learner has chosen, as `resolveProject` takes it. */
  get settings(): {
    edition: Edition;
    values: Record<string, number>;
    options: Record<string, boolean>;
    materials: Materials;
  } {
    const { edition } = this;
    return { edition, values: this.#valuesFor(edition), options: this.#options, materials: this.project.materials };
  }

  /** True while the page shows sizes for work that came out otherwise than planned. */
  get isAsMade(): boolean {
    return this.#asMade !== undefined;
  }

  /** Shows the whole page at sizes that fit work as it really is, until the plan changes; undefined: as planned again. */
  carryOn(asMade: Pattern | undefined): void {
    this.#asMade = asMade;
    this.#follow();
  }

  /** The pattern at the lesson's own size and options, in the edition shown. */
  readonly lesson: Pattern = $derived.by(() => this.#lessonIn(this.edition));

  /** True when anything differs from the lesson's size. */
  readonly changed: boolean = $derived(Object.keys(this.#values).length + Object.keys(this.#options).length > 0);

  #resolve(edition: Edition, values: Record<string, number>, options: Record<string, boolean>): Pattern {
    return resolveProject(this.project.file, { edition, values, options, materials: this.project.materials });
  }

  #valuesFor(edition: Edition): Record<string, number> {
    const out: Record<string, number> = {};
    for (const [name, chosen] of Object.entries(this.#values)) out[name] = this.#moved(name, chosen, edition);
    return out;
  }

  /** A chosen size in another edition: moved to that edition's marks, and never past its range. */
  #moved(name: string, chosen: Chosen, edition: Edition): number {
    if (chosen.edition === edition) return chosen.value;
    const range = this.#lessonIn(edition).measures[name]?.adjustable;
    if (!range || range.kind === 'count') return chosen.value;
    const steps = Math.round((toGrid(chosen.value, edition) - range.min) / range.step);
    return Math.min(range.max, Math.max(range.min, range.min + steps * range.step));
  }

  #lessons: Partial<Record<Edition, Pattern>> = {};

  #lessonIn(edition: Edition): Pattern {
    return (this.#lessons[edition] ??= this.#resolve(edition, {}, {}));
  }

  /** The measures a learner may change, in the file's order. */
  readonly adjustable: Measure[] = $derived(Object.values(this.livePattern.measures).filter((m) => m.adjustable));

  /** Sets a measure. Returns a kind sentence if the value cannot be taken; then nothing changes. */
  set(name: string, value: number): string | undefined {
    const trouble = this.refusal(name, value);
    if (trouble) return trouble;
    this.#asMade = undefined;
    const lesson = this.lesson.measures[name]?.adjustable?.lesson;
    if (lesson !== undefined && Math.abs(lesson - value) < 1e-6) delete this.#values[name];
    else this.#values[name] = { value, edition: this.edition };
    this.#unsaved.add(name);
    this.#followSoon();
    this.#store();
    return undefined;
  }

  /** The rest of the page is updated once the slider has been painted. */
  #followSoon(): void {
    clearTimeout(this.#soon);
    sizeChange.isUnderWay = true;
    const wait = this.#took > QUICK ? REST : 0;
    requestAnimationFrame(() => {
      clearTimeout(this.#soon);
      this.#soon = setTimeout(() => this.#follow(), wait);
    });
  }

  #follow(): void {
    clearTimeout(this.#soon);
    const began = performance.now();
    this.settledPattern = this.livePattern;
    flushSync();
    this.#took = performance.now() - began;
    sizeChange.isUnderWay = false;
  }

  choose(option: string, on: boolean): void {
    this.#asMade = undefined;
    if (on === this.lesson.options[option]?.default) delete this.#options[option];
    else this.#options[option] = on;
    this.#unsaved.add(option);
    this.#follow();
    this.#store();
  }

  /** Back to the lesson's size. */
  reset(): void {
    this.#asMade = undefined;
    this.#values = {};
    this.#options = {};
    for (const name of [...Object.keys(this.lesson.measures), ...Object.keys(this.lesson.options)])
      this.#unsaved.add(name);
    this.refused = [];
    this.#follow();
    this.#store();
  }

  /** Why a value cannot be taken for a measure, as a sentence for the learner; undefined if it can. */
  refusal(name: string, value: number, edition: Edition = this.edition): string | undefined {
    const measure = this.#lessonIn(edition).measures[name];
    const range = measure?.adjustable;
    if (!measure || !range) return `This project has no size called “${name}” to change.`;
    const show = (v: number) => (range.kind === 'count' ? String(v) : formatLength(v, edition, { style: 'set' }));
    const close = 1e-6;
    if (!Number.isFinite(value) || value < range.min - close || value > range.max + close)
      return `${measure.label} can be from ${show(range.min)} to ${show(range.max)}.`;
    const steps = (value - range.min) / range.step;
    if (Math.abs(steps - Math.round(steps)) > 1e-4)
      return `${measure.label} goes in steps of ${show(range.step)} from ${show(range.min)}.`;
    return undefined;
  }

  /** Takes what the address asks for, else what the browser kept, else the lesson's size. */
  #begin(): void {
    const query = new URLSearchParams(location.search);
    const edition = this.edition;
    const pattern = this.#lessonIn(edition);
    const { values, options } = this.#saved();
    const refused: string[] = [];

    for (const measure of Object.values(pattern.measures)) {
      const range = measure.adjustable;
      if (!range) continue;
      const asked = query.get(inAddress(measure.name));
      if (asked !== null) {
        delete values[measure.name];
        const read: { ok: true; value: number } | { ok: false } =
          range.kind === 'count' && /^\d{1,3}$/.test(asked.trim())
            ? { ok: true, value: Number(asked) }
            : range.kind === 'length'
              ? parseLength(asked, edition)
              : { ok: false };
        const trouble = read.ok
          ? this.refusal(measure.name, read.value)
          : `The address gives no size that can be read for ${measure.label}.`;
        if (trouble) refused.push(`${trouble} The lesson’s size is kept.`);
        else if (read.ok) {
          values[measure.name] = { value: read.value, edition };
          this.#unsaved.add(measure.name);
        }
      }
    }
    for (const [name, option] of Object.entries(pattern.options)) {
      const asked = query.get(inAddress(name));
      if (asked === null) continue;
      const on = asked === 'yes' ? true : asked === 'no' ? false : options[name];
      if (asked !== 'yes' && asked !== 'no') refused.push(`The address says neither yes nor no for “${option.label}”.`);
      else this.#unsaved.add(name);
      delete options[name];
      if (on !== undefined && on !== option.default) options[name] = on;
    }
    this.#values = values;
    this.#options = options;
    this.refused = refused;
  }

  /** What the browser keeps, as far as it can be taken. */
  #saved(): { values: Record<string, Chosen>; options: Record<string, boolean> } {
    const kept = load(this.#key, asRecord) ?? {};
    const [keptValues, keptOptions] = [asRecord(kept.values) ?? {}, asRecord(kept.options) ?? {}];
    const values: Record<string, Chosen> = {};
    const options: Record<string, boolean> = {};
    const pattern = this.#lessonIn(this.edition);
    for (const { name, adjustable } of Object.values(pattern.measures)) {
      const before = adjustable && asRecord(keptValues[name]);
      if (typeof before?.value !== 'number' || (before.edition !== 'inch' && before.edition !== 'metric')) continue;
      const { value, edition } = before;
      if (!this.refusal(name, value, edition)) values[name] = { value, edition };
    }
    for (const [name, option] of Object.entries(pattern.options)) {
      const on = keptOptions[name];
      if (typeof on === 'boolean' && on !== option.default) options[name] = on;
    }
    return { values, options };
  }

  /** What another tab has chosen; what was chosen here since stays. */
  #takeOver(): void {
    const saved = this.#merged();
    if (JSON.stringify(saved) === JSON.stringify({ values: this.#values, options: this.#options })) return;
    this.#asMade = undefined;
    this.#values = saved.values;
    this.#options = saved.options;
    this.#follow();
    this.#store();
  }

  /** What the browser keeps, with what was chosen here and is not kept yet. */
  #merged(): { values: Record<string, Chosen>; options: Record<string, boolean> } {
    const { values, options } = this.#saved();
    for (const name of this.#unsaved) {
      const [value, on] = [this.#values[name], this.#options[name]];
      delete values[name];
      delete options[name];
      if (value) values[name] = value;
      if (on !== undefined) options[name] = on;
    }
    return { values, options };
  }

  #save(): void {
    if (this.#unsaved.size === 0) return;
    const merged = this.#merged();
    const isEmpty = Object.keys(merged.values).length + Object.keys(merged.options).length === 0;
    if (save(this.#key, isEmpty ? undefined : merged) === undefined) this.#unsaved.clear();
  }

  /** Keeps the choices and writes them into the address. Both are slow, so both wait until the size has settled. */
  #store(): void {
    writeAddress(`size of ${this.project.id}`, (query) => {
      const values = this.#values;
      const options = this.#options;
      const { edition, grid } = this.settledPattern;
      const empty = Object.keys(values).length + Object.keys(options).length === 0;
      this.#save();
      for (const measure of this.adjustable) {
        const key = inAddress(measure.name);
        const chosen = values[measure.name];
        if (!chosen) query.delete(key);
        else {
          const value = this.#moved(measure.name, chosen, edition);
          query.set(key, measure.adjustable?.kind === 'count' ? String(value) : formatLength(value, edition, { grid }));
        }
      }
      for (const name of Object.keys(this.lesson.options)) {
        const on = options[name];
        if (on === undefined) query.delete(inAddress(name));
        else query.set(inAddress(name), on ? 'yes' : 'no');
      }
      if (!empty) query.set('edition', edition);
    });
  }
}

const learners = new Map<string, Learner>();

/**
 * The learner of a project on this page. On the server nobody chooses anything, so that all pages of a project share
 * one; an edited project file is another project, and begins afresh.
 */
export function learnerOf(id: string): Learner {
  const project = fetchProject(id);
  let found = learners.get(id);
  if (found?.project.file !== project.file) learners.set(id, (found = new Learner(project)));
  return found;
}
