/**
 * Where the reader is on the lesson's tape, which of its sections were read, and which of these are done: all their
 * questions answered, all their steps ticked. To scroll past a section is to read it, and no more.
 */
import { ANSWERED } from '../answered.ts';
import { rememberPlace } from '../place.ts';
import { load, onStorageChange, save } from '../storage.ts';

export type TapeStep = { slug: string; text: string };

const asSlugs = (value: unknown) =>
  Array.isArray(value) ? value.filter((v): v is string => typeof v === 'string') : undefined;

export class Tape {
  readonly steps: TapeStep[];
  readonly #lesson: string;
  readonly #key: string;
  /** What was kept under this name before sections read and questions answered were told apart. */
  readonly #before: string;
  /** To open a lesson is not yet to be anywhere in it. */
  #hasMoved = false;
  /** How far along the tape the reader is, 0 to 1; each step takes the same length. */
  at = $state(0);
  current = $state(0);
  /** Sections that the reader came past, by their heading. */
  read = $state<string[]>([]);
  /** Of these the ones with questions or steps, all of them done. */
  done = $state<string[]>([]);

  /**
   * @param lesson its address from the top of the site, without the first stroke: in a copy of the site, what begins
   * with one is made relative to each page
   */
  constructor(steps: TapeStep[], lesson: string) {
    this.steps = steps;
    this.#lesson = lesson;
    this.#key = `read:/${lesson}`;
    this.#before = `done:/${lesson}`;
  }

  /** Follows the page as it is scrolled. Call in an effect; returns the way to stop. */
  follow(): () => void {
    this.read = this.#saved();
    let frame = 0;
    const look = () => {
      frame = 0;
      this.#look();
    };
    const ask = () => {
      frame ||= requestAnimationFrame(look);
    };
    const move = () => {
      this.#hasMoved = true;
      ask();
    };
    addEventListener('scroll', move, { passive: true });
    addEventListener('resize', ask, { passive: true });
    // An answer changes what is done without any scrolling.
    document.addEventListener(ANSWERED, move);
    const stop = onStorageChange(this.#key, () => {
      this.read = this.#saved();
      ask();
    });
    ask();
    return () => {
      stop();
      cancelAnimationFrame(frame);
      removeEventListener('scroll', move);
      removeEventListener('resize', ask);
      document.removeEventListener(ANSWERED, move);
    };
  }

  #look(): void {
    const heads = this.steps.map((step) => document.getElementById(step.slug));
    const line = innerHeight * 0.35;
    const tops = heads.map((head) => head?.getBoundingClientRect().top ?? Infinity);
    const article = heads[0]?.parentElement;
    const end = article?.getBoundingClientRect().bottom ?? 0;
    let current = tops.findLastIndex((top) => top <= line);
    const atEnd = innerHeight + scrollY >= document.documentElement.scrollHeight - 4;
    if (atEnd && this.steps.length > 0) current = this.steps.length - 1;
    this.current = Math.max(0, current);
    const step = this.steps[current];
    if (this.#hasMoved && step) {
      rememberPlace(this.#lesson, { section: step.slug, words: step.text.includes('[') ? '' : step.text });
    }
    if (current < 0) this.at = 0;
    else {
      const from = tops[current] ?? 0;
      const to = tops[current + 1] ?? end;
      const part = atEnd ? 1 : Math.min(1, Math.max(0, (line - from) / Math.max(1, to - from)));
      this.at = (current + part) / this.steps.length;
    }
    const read = this.steps.flatMap(({ slug }, i) =>
      this.read.includes(slug) || i < current || (atEnd && i === current) ? [slug] : [],
    );
    const done = this.steps.flatMap(({ slug }, i) =>
      read.includes(slug) && isAllDone(heads[i], heads[i + 1]) ? [slug] : [],
    );
    if (done.join('\n') !== this.done.join('\n')) this.done = done;
    if (read.length === this.read.length) return;
    // What another tab has read meanwhile stays read.
    this.read = [...new Set([...this.#saved(), ...read])];
    save(this.#key, this.read);
  }

  #saved(): string[] {
    return [...new Set([...(load(this.#before, asSlugs) ?? []), ...(load(this.#key, asSlugs) ?? [])])];
  }
}

/** Whether a section has questions or steps, and all of them are right or ticked. */
function isAllDone(head: HTMLElement | null | undefined, next: HTMLElement | null | undefined): boolean {
  const asked: Element[] = [];
  for (let el = head?.nextElementSibling; el && el !== next; el = el.nextElementSibling)
    asked.push(...el.querySelectorAll('[data-question]'));
  return asked.length > 0 && asked.every((one) => one.getAttribute('data-question') === 'right');
}
