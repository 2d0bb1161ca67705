import { Worker } from 'node:worker_threads';
import type { LiveProblems } from './messages.ts';
import type { Overview } from './overview.ts';

/** What a check found, and the lessons whose pages show something else than when they were asked for. */
export type Checked = LiveProblems & { changed: string[] };

/** What is said to the thread that checks, and what it says. */
export type ToCheck = { kind: 'look' } | { kind: 'lesson'; id: number; file: string };
export type FromCheck =
  | { kind: 'read'; overview: Overview }
  | { kind: 'checked'; checked: Checked }
  | { kind: 'failed'; message: string }
  | { kind: 'lesson'; id: number; text: string | undefined };

/** The check of the content while the site is being edited, in a thread of its own. It begins at once. */
export class ContentCheck {
  readonly #worker: Worker;
  readonly #asked = new Map<number, (text: string | undefined) => void>();
  readonly #listeners: Listener[] = [];
  readonly #overview = Promise.withResolvers<Overview>();
  #last = Promise.withResolvers<Checked>();
  #isDone = false;
  #id = 0;

  /** @param root the folder that holds content/ */
  constructor(root: string) {
    this.#worker = new Worker(new URL('check-worker.ts', import.meta.url), { workerData: root });
    this.#worker.unref();
    this.#worker.on('message', (message: FromCheck) => this.#hear(message));
    this.#worker.on('error', (error) => this.#fail(String(error)));
    this.#say({ kind: 'look' });
  }

  /** What the content holds, as soon as it has been read. */
  get overview(): Promise<Overview> {
    return this.#overview.promise;
  }

  /** What is wrong in the content as it was when `look` was called last. */
  get checked(): Promise<Checked> {
    return this.#last.promise;
  }

  /** Told after each check, and of one that is done already. */
  listen(listener: Listener): void {
    this.#listeners.push(listener);
    if (this.#isDone) void this.checked.then(listener);
  }

  /** The content may have changed. */
  look(): void {
    if (this.#isDone) this.#last = Promise.withResolvers();
    this.#isDone = false;
    this.#say({ kind: 'look' });
  }

  /**
   * What the page of a lesson is made from, as its file is now. Does not wait for the check of other projects.
   *
   * @param file from the root, with forward slashes
   */
  lesson(file: string): Promise<string | undefined> {
    const { promise, resolve } = Promise.withResolvers<string | undefined>();
    this.#asked.set(++this.#id, resolve);
    this.#say({ kind: 'lesson', id: this.#id, file });
    return promise;
  }

  /** Ends the thread. */
  async close(): Promise<void> {
    await this.#worker.terminate();
  }

  /** Who waits goes on with what there is; the next change is another try. */
  #fail(message: string): void {
    console.error(`\nThe content could not be read: ${message}`);
    this.#overview.resolve({ site: undefined, projects: [], files: [] });
    this.#isDone = true;
    this.#last.resolve({ problems: [], kept: [], changed: [] });
  }

  #say(message: ToCheck): void {
    this.#worker.postMessage(message);
  }

  #hear(message: FromCheck): void {
    switch (message.kind) {
      case 'read':
        return this.#overview.resolve(message.overview);
      case 'lesson':
        this.#asked.get(message.id)?.(message.text);
        this.#asked.delete(message.id);
        return;
      case 'failed':
        return this.#fail(message.message);
      case 'checked':
        this.#isDone = true;
        this.#last.resolve(message.checked);
        for (const listener of this.#listeners) listener(message.checked);
    }
  }
}

type Listener = (checked: Checked) => void;

const checks = new Map<string, ContentCheck>();

/** The check of a folder, one for the command and the pages. */
export function contentCheckOf(root: string): ContentCheck {
  const known = checks.get(root) ?? new ContentCheck(root);
  checks.set(root, known);
  return known;
}
