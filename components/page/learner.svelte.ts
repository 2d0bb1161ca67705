/**
 * What this learner has chosen for this page: the edition, their sizes and their options. Every widget reads the
 * pattern from here, so that moving one slider changes every number, drawing and question on the page.
 *
 * On the server nothing is chosen yet: a page is rendered at the lesson's own size in the site's edition.
 */
import {
  resolveProject,
  type Edition,
  type Materials,
  type Measure,
  type Pattern,
  type ProjectFile,
} from '../../src/core/index.ts';
import { flushSync } from 'svelte';
import { writeAddress } from './address.ts';
import { askedChoices, keptChoices, moved, refusal, SIZE_CHOSEN, withoutSized, writeChoices } from './choices.ts';
import type { Choices, Chosen } from './choices.ts';
import { editionChoice } from './edition.svelte.ts';
import { load, onStorageChange, save } from './storage.ts';

/** A project as a page carries it: the file's own numbers, and what its materials are. */
export type Project = { id: string; file: ProjectFile; materials: Materials; edition: Edition };

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

/** One project on this page, at this learner's size. */
export class Learner {
  readonly project: Project;
  #values = $state<Record<string, Chosen>>({});
  #options = $state<Choices['options']>({});
  #size = $state<string>();
  /** Measures, options, choices and the size whose choice the browser does not keep yet. Another tab may have chosen others meanwhile. */
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
    this.changed ? this.#resolve(this.edition, this.#valuesFor(this.edition), this.#options, this.#size) : this.lesson,
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
    options: Choices['options'];
    size: string | undefined;
    materials: Materials;
  } {
    const { edition } = this;
    const { materials } = this.project;
    return { edition, values: this.#valuesFor(edition), options: this.#options, size: this.#size, materials };
  }

  /** The sizes for work that came out otherwise than planned, while the page shows them. */
  get asMade(): Pattern | undefined {
    return this.#asMade;
  }

  /** Shows the whole page at sizes that fit work as it really is, until the plan changes; undefined: as planned again. */
  carryOn(asMade: Pattern | undefined): void {
    this.#asMade = asMade;
    this.#follow();
  }

  /** The pattern at the lesson's own size and options, in the edition shown. */
  readonly lesson: Pattern = $derived.by(() => this.#lessonIn(this.edition));

  /** True when anything differs from the lesson's size. */
  readonly changed: boolean = $derived(
    Object.keys(this.#values).length + Object.keys(this.#options).length > 0 || this.#size !== undefined,
  );

  #resolve(edition: Edition, values: Record<string, number>, options: Choices['options'], size?: string): Pattern {
    const { file, materials } = this.project;
    return resolveProject(file, { edition, values, options, size, materials });
  }

  #valuesFor(edition: Edition): Record<string, number> {
    const out: Record<string, number> = {};
    const lesson = this.#lessonIn(edition);
    for (const [name, chosen] of Object.entries(this.#values)) out[name] = moved(name, chosen, lesson);
    return out;
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
    // In the chosen size, and with what is chosen beside it.
    const lesson = this.livePattern.measures[name]?.adjustable?.lesson;
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

  /** Takes an option in or leaves it out, or chooses one of several. */
  choose(name: string, one: boolean | string): void {
    this.#asMade = undefined;
    const { options, choices } = this.lesson;
    if (one === (options[name] ?? choices[name])?.default) delete this.#options[name];
    else this.#options[name] = one;
    this.#unsaved.add(name);
    this.#follow();
    this.#store();
  }

  /** Chooses a size. Its measures are those of the size again, whatever their sliders said. */
  chooseSize(size: string): void {
    this.#asMade = undefined;
    this.#values = withoutSized(this.#values, this.lesson);
    this.#size = size === this.lesson.sizes?.default ? undefined : size;
    for (const name of [SIZE_CHOSEN, ...(this.lesson.sizes?.measures ?? [])]) this.#unsaved.add(name);
    this.#follow();
    this.#store();
  }

  /** Back to the lesson's size. */
  reset(): void {
    this.#asMade = undefined;
    this.#values = {};
    this.#options = {};
    this.#size = undefined;
    const { measures, options, choices } = this.lesson;
    for (const name of [SIZE_CHOSEN, ...[measures, options, choices].flatMap((group) => Object.keys(group))])
      this.#unsaved.add(name);
    this.refused = [];
    this.#follow();
    this.#store();
  }

  /** Why a value cannot be taken for a measure, as a sentence for the learner; undefined if it can. */
  refusal(name: string, value: number, edition: Edition = this.edition): string | undefined {
    return refusal(this.#lessonIn(edition), name, value);
  }

  /** Takes what the address asks for, else what the browser kept, else the lesson's size. */
  #begin(): void {
    const query = new URLSearchParams(location.search);
    const asked = askedChoices(query, this.#lessonIn(this.edition), this.#saved());
    for (const name of asked.taken) this.#unsaved.add(name);
    this.#values = asked.values;
    this.#options = asked.options;
    this.#size = asked.size;
    this.refused = asked.refused;
  }

  /** What the browser keeps, as far as it can be taken. */
  #saved(): Choices {
    const kept = load(this.#key, (value) => value);
    return keptChoices(kept, (edition) => this.#lessonIn(edition), this.edition);
  }

  /** What another tab has chosen; what was chosen here since stays. */
  #takeOver(): void {
    const saved = this.#merged();
    const { values, options, size } = this.#chosen;
    if (JSON.stringify(saved) === JSON.stringify({ values, options, ...(size !== undefined && { size }) })) return;
    this.#asMade = undefined;
    this.#values = saved.values;
    this.#options = saved.options;
    this.#size = saved.size;
    this.#follow();
    this.#store();
  }

  /** What the browser keeps, with what was chosen here and is not kept yet. */
  #merged(): Choices {
    const { values, options, size: saved } = this.#saved();
    const size = this.#unsaved.has(SIZE_CHOSEN) ? this.#size : saved;
    for (const name of this.#unsaved) {
      const [value, on] = [this.#values[name], this.#options[name]];
      delete values[name];
      delete options[name];
      if (value) values[name] = value;
      if (on !== undefined) options[name] = on;
    }
    return { values, options, ...(size !== undefined && { size }) };
  }

  get #chosen(): Choices {
    return { values: this.#values, options: this.#options, ...(this.#size !== undefined && { size: this.#size }) };
  }

  #save(): void {
    if (this.#unsaved.size === 0) return;
    const merged = this.#merged();
    const { values, options, size } = merged;
    const isEmpty = Object.keys(values).length + Object.keys(options).length === 0 && size === undefined;
    if (save(this.#key, isEmpty ? undefined : merged) === undefined) this.#unsaved.clear();
  }

  /** Keeps the choices and writes them into the address. Both are slow, so both wait until the size has settled. */
  #store(): void {
    writeAddress(`size of ${this.project.id}`, (query) => {
      this.#save();
      const lesson = this.#lessonIn(this.settledPattern.edition);
      writeChoices(query, this.#chosen, lesson);
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
  if (found?.project !== project) learners.set(id, (found = new Learner(project)));
  return found;
}
