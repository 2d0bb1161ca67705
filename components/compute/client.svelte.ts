/** What a part of the page asks its worker for, and how the answer comes along. */
import { untrack } from 'svelte';
import { wayOf, type Pattern } from '../../src/core/index.ts';
import type { Learner, Project } from '../page/learner.svelte.ts';
import { connection as ofPage, type Connection } from './connection.ts';
import type { Answer, Kind, FromWorker, Request, ChosenSize } from './protocol.ts';

/** Says kindly that the worker, or a part of it, could not be fetched. */
export const UNFETCHED = 'This could not be fetched. Go online once and open this page again.';

/** A project at the size of a pattern. */
export type Sized = { project: Project; pattern: Pattern };

/** What a learner chose, read off a pattern. */
export function sizeOf(pattern: Pattern): ChosenSize {
  const { edition, measures } = pattern;
  const chosen = Object.values(measures).filter(({ adjustable }) => adjustable);
  return {
    edition,
    values: Object.fromEntries(chosen.map(({ name, value }) => [name, value])),
    ...wayOf(pattern),
  };
}

export class Client<K extends Kind> {
  /** The latest answer. */
  value: Answer<K> | undefined = $state.raw();
  /** The pattern that the answer is of. */
  of: Pattern | undefined = $state.raw();
  /** Whether the answer is of an earlier request, or none is there yet. */
  stale = $state(true);
  /** How far the work is, 0 to 1; undefined while nothing is under way. */
  progress: number | undefined = $state();
  /** A sentence for the learner, or nothing. */
  error = $state('');

  readonly #rest: number;
  readonly #connection: Connection;
  #by: number | undefined;
  #n = 0;
  /** The patterns of the requests under way, by number. */
  readonly #asked = new Map<number, Pattern>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  /**
   * Make it while a component is being set up: it ends with the component.
   *
   * @param rest in ms: how long a request waits for a newer one, where a slider may still be moving
   */
  constructor({ rest = 0, connection = ofPage }: { rest?: number; connection?: Connection } = {}) {
    this.#rest = rest;
    this.#connection = connection;
    $effect(() => () => this.end());
  }

  /**
   * Asks anew for each size that the page was not built with. Call it while a component is being set up.
   */
  follow(learner: Learner, request: Request<K>): void {
    $effect(() => {
      const { isAsBuilt, project, settledPattern: pattern } = learner;
      untrack(() => {
        if (isAsBuilt) this.stop();
        else this.ask(request, { project, pattern });
      });
    });
  }

  /**
   * Asks. A newer request replaces an earlier one.
   *
   * @param rest in ms, where this request can wait longer than others
   */
  ask(request: Request<K>, { project, pattern }: Sized, rest = this.#rest): void {
    clearTimeout(this.#timer);
    const n = ++this.#n;
    this.#asked.set(n, pattern);
    this.stale = true;
    this.progress = 0;
    this.error = '';
    const plain = $state.snapshot<unknown>(request) as Request;
    const send = () => {
      this.#by ??= this.#connection.join({ hear: (news) => this.#hear(news), lost: () => this.#lose() });
      const { id, file, materials } = project;
      this.#connection.ask(this.#by, n, {
        project: id,
        source: { file, materials },
        size: sizeOf(pattern),
        request: plain,
      });
    };
    if (rest === 0) send();
    else this.#timer = setTimeout(send, rest);
  }

  /** Gives up what was asked; the latest answer stays. */
  stop(): void {
    clearTimeout(this.#timer);
    if (this.progress === undefined) return;
    this.progress = undefined;
    this.#asked.clear();
    if (this.#by !== undefined) this.#connection.stop(this.#by);
  }

  end(): void {
    this.stop();
    if (this.#by !== undefined) this.#connection.leave(this.#by);
    this.#by = undefined;
  }

  #hear(news: FromWorker): void {
    const pattern = this.#asked.get(news.n);
    // Given up meanwhile, or older than what is shown.
    if (!pattern) return;
    const isLatest = news.n === this.#n;
    if (news.kind === 'answer') {
      // An answer that comes late is nearer to what was asked than what is shown.
      this.value = news.value;
      this.of = pattern;
      this.stale = !isLatest;
      for (const n of this.#asked.keys()) if (n < news.n) this.#asked.delete(n);
      if (isLatest && news.isLast) this.progress = undefined;
    } else if (isLatest && news.kind === 'progress') this.progress = news.share;
    else if (isLatest && news.kind === 'error') this.#fail(news.message);
  }

  #lose(): void {
    if (this.progress !== undefined) this.#fail(UNFETCHED);
  }

  #fail(message: string): void {
    this.progress = undefined;
    this.#asked.clear();
    this.error = message;
  }
}
