/** Something that the cutting table is asked for, and how it comes along. */
import type { Answers, News, Order } from './table.ts';

/** So long a choice rests before it is sent: a moving slider would otherwise ask at every step. */
const REST = 120;

export class Errand<K extends Order['kind']> {
  /** The latest answer. */
  told = $state.raw<Answers[K]>();
  /** Whether it answers what was asked last. */
  isCurrent = $state(false);
  isUnderWay = $state(false);
  /** How far a search is, from 0 to 1. */
  share = $state(0);
  failed = $state('');
  /** The errand's own, started when something is asked: another errand on the page must not end this one. */
  #worker: Worker | undefined;
  #n = 0;
  #timer: ReturnType<typeof setTimeout> | undefined;

  /** Asks, once the hand rests. An earlier question of this errand is given up. */
  ask(order: Extract<Order, { kind: K }>): void {
    this.stop();
    this.isCurrent = false;
    this.isUnderWay = true;
    this.share = 0;
    this.failed = '';
    this.#timer = setTimeout(() => {
      this.#table().postMessage({ n: ++this.#n, order: $state.snapshot(order) });
    }, REST);
  }

  /** Gives it up; what is told so far stays. */
  stop(): void {
    clearTimeout(this.#timer);
    if (this.isUnderWay) this.#worker?.postMessage({ n: ++this.#n });
    this.isUnderWay = false;
  }

  /** Lets the worker go, with the part of the page that asked. */
  end(): void {
    clearTimeout(this.#timer);
    this.#worker?.terminate();
    this.#worker = undefined;
  }

  #table(): Worker {
    if (!this.#worker) {
      this.#worker = new Worker(new URL('./table.ts', import.meta.url), { type: 'module' });
      this.#worker.onmessage = ({ data: news }: MessageEvent<News>) => news.n === this.#n && this.#hear(news);
      this.#worker.onerror = () => {
        this.#worker = undefined;
        this.isUnderWay = false;
        this.failed = 'This could not be worked out. Load the page again, and try once more.';
      };
    }
    return this.#worker;
  }

  #hear(news: News): void {
    if (news.kind === 'progress') this.share = news.share;
    else if (news.kind === 'failed') this.failed = news.message;
    else if ('told' in news) {
      this.told = news.told as Answers[K];
      this.isCurrent = true;
    }
    const isOver = news.kind === 'failed' || news.kind === 'done' || news.kind === 'list' || news.kind === 'class';
    if (isOver) this.isUnderWay = false;
  }
}
