/** A class as its teacher has it open: who handed in, what changed, and what of it the browser keeps. */
import { untrack } from 'svelte';
import type { StorageTrouble } from '../page/storage.ts';
import { forgetClass, isClassKept, keepLearner, keptLearners, onClassChange } from './class-storage.ts';
import type { HandIn } from './hand-in.ts';
import { changeInWords, nameKey, takeIn, when, type ClassLearner } from './learners.ts';
import type { HandedFrom } from './read-handed-in.ts';

/** A class and its repeats; more would only be slow. */
const MOST_LEARNERS = 500;

/** What came of opening some: who was taken, each in a sentence, and what was not. */
export type Opened = {
  taken: number;
  changes: { name: string; words: string }[];
  refused: { from: string; fault: string }[];
};

export class ClassBook {
  readonly #course: string;
  /** Those the browser could not keep: they are there until the page is left. */
  readonly #unkept = new Set<string>();
  learners = $state.raw<readonly ClassLearner[]>([]);
  /** Why what was opened is not kept. */
  trouble = $state<StorageTrouble>();

  constructor(course: string) {
    this.#course = course;
  }

  /** Shows what is kept, and follows other tabs. Call in an effect; returns the way to stop. */
  follow(): () => void {
    // What is looked at and then changed is no reason to look again.
    untrack(() => void this.#look());
    return onClassChange(this.#course, () => void this.#look());
  }

  async #look(): Promise<void> {
    // What reads files from elsewhere is fetched once there is something to read.
    const read = isClassKept(this.#course) ? (await import('./wire.ts')).asHandIn : () => undefined;
    const kept = keptLearners(this.#course, read).filter(({ handIn }) => handIn.course === this.#course);
    const here = this.learners.filter(({ key }) => this.#unkept.has(key));
    this.learners = inOrder([...kept.filter(({ key }) => !this.#unkept.has(key)), ...here]);
  }

  /** Takes hand-ins, the oldest first, so that the last of each learner counts. */
  async take(found: readonly HandedFrom[]): Promise<Opened> {
    // Another tab may have taken some since.
    await this.#look();
    const known = new Map(this.learners.map((learner) => [learner.key, learner]));
    const opened: Opened = { taken: 0, changes: [], refused: [] };
    const refuse = (from: string, fault: string) => void opened.refused.push({ from, fault });
    const whole: { from: string; handIn: HandIn }[] = [];
    for (const { from, read } of found) {
      if (!read.ok) refuse(from, read.sentence);
      else if (read.value.course !== this.#course) refuse(from, 'It belongs to another course.');
      else whole.push({ from, handIn: read.value });
    }
    for (const { from, handIn } of whole.toSorted((a, b) => (when(a.handIn) < when(b.handIn) ? -1 : 1))) {
      const before = known.get(nameKey(handIn.name));
      if (!before && known.size >= MOST_LEARNERS) {
        refuse(from, `${MOST_LEARNERS} are enough at once.`);
        continue;
      }
      const { what, learner } = takeIn(before, handIn);
      if (what === 'same') refuse(from, 'It is here already.');
      else if (what === 'older')
        refuse(from, `It is older than what is here of that name, from ${when(learner.handIn)}.`);
      else {
        known.set(learner.key, learner);
        opened.taken += 1;
        this.#keep(learner);
        if (what === 'again' && learner.change)
          opened.changes.push({ name: handIn.name, words: `handed in again: ${changeInWords(learner.change)}.` });
      }
    }
    this.learners = inOrder([...known.values()]);
    return opened;
  }

  /** Keeps a note to a learner while it is written. */
  setNote(key: string, note: string): void {
    this.learners = this.learners.map((learner) => (learner.key === key ? { ...learner, note } : learner));
    const learner = this.learners.find((one) => one.key === key);
    if (learner) this.#keep(learner);
  }

  /** Forgets everybody. Says whether the browser did. */
  clear(): boolean {
    this.trouble = forgetClass(this.#course);
    if (this.trouble) return false;
    this.learners = [];
    this.#unkept.clear();
    return true;
  }

  #keep(learner: ClassLearner): void {
    const trouble = keepLearner(this.#course, learner.key, learner);
    if (trouble) this.#unkept.add(learner.key);
    else this.#unkept.delete(learner.key);
    this.trouble = this.#unkept.size > 0 ? (trouble ?? this.trouble) : undefined;
  }
}

const inOrder = (learners: ClassLearner[]): ClassLearner[] =>
  learners.toSorted((a, b) => a.handIn.name.localeCompare(b.handIn.name));
