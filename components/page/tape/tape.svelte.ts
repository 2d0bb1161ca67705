/** Where the reader is on the lesson's tape, and which of its steps are done. */
import { ANSWERED } from '../answered.ts';
import { load, onStorageChange, save } from '../storage.ts';

export type TapeStep = { slug: string; text: string };

const asSlugs = (value: unknown) =>
  Array.isArray(value) ? value.filter((v): v is string => typeof v === 'string') : undefined;

export class Tape {
  readonly steps: TapeStep[];
  readonly #key: string;
  /** How far along the tape the reader is, 0 to 1; each step takes the same length. */
  at = $state(0);
  current = $state(0);
  done = $state<string[]>([]);

  constructor(steps: TapeStep[], lesson: string) {
    this.steps = steps;
    this.#key = `done:${lesson}`;
  }

  /** Follows the page as it is scrolled. Call in an effect; returns the way to stop. */
  follow(): () => void {
    this.done = load(this.#key, asSlugs) ?? [];
    let frame = 0;
    const look = () => {
      frame = 0;
      this.#look();
    };
    const ask = () => {
      frame ||= requestAnimationFrame(look);
    };
    addEventListener('scroll', ask, { passive: true });
    addEventListener('resize', ask, { passive: true });
    // An answer changes what is done without any scrolling.
    document.addEventListener(ANSWERED, ask);
    const stop = onStorageChange(this.#key, () => {
      this.done = load(this.#key, asSlugs) ?? [];
      ask();
    });
    ask();
    return () => {
      stop();
      cancelAnimationFrame(frame);
      removeEventListener('scroll', ask);
      removeEventListener('resize', ask);
      document.removeEventListener(ANSWERED, ask);
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
    if (current < 0) this.at = 0;
    else {
      const from = tops[current] ?? 0;
      const to = tops[current + 1] ?? end;
      const part = atEnd ? 1 : Math.min(1, Math.max(0, (line - from) / Math.max(1, to - from)));
      this.at = (current + part) / this.steps.length;
    }
    const done = this.steps.filter((step, i) => {
      const passed = i < current || (atEnd && i === current);
      const open = openQuestions(heads[i], heads[i + 1]);
      // A question that has not loaded yet may have been answered on an earlier visit.
      const wasDone = this.done.includes(step.slug) && open.every((question) => question.closest('astro-island[ssr]'));
      return wasDone || (passed && open.length === 0);
    });
    if (done.length !== this.done.length || done.some((step, i) => step.slug !== this.done[i])) {
      const now = done.map((step) => step.slug);
      // What another tab has done meanwhile stays done.
      const saved = load(this.#key, asSlugs) ?? [];
      const others = saved.filter((slug) => !this.done.includes(slug) && !now.includes(slug));
      this.done = now;
      save(this.#key, [...now, ...others]);
    }
  }
}

/** A step with questions in it is done when they are answered. */
function openQuestions(head: HTMLElement | null | undefined, next: HTMLElement | null | undefined): Element[] {
  const open: Element[] = [];
  for (let el = head?.nextElementSibling; el && el !== next; el = el.nextElementSibling)
    open.push(...el.querySelectorAll('[data-question]:not([data-question="right"])'));
  return open;
}
