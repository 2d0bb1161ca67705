/** The page's side of the protocol: one worker for all parts of the page, started when the first of them asks. */
import type { FromWorker, Request, ToWorker, ChosenSize, ProjectSource } from './protocol.ts';

/** As much of a `Worker` as is needed. */
export type Port = {
  postMessage: (message: ToWorker) => void;
  terminate: () => void;
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

/** Takes what the worker says to one client. */
export type Listener = {
  hear: (news: FromWorker) => void;
  /** The worker, or a part of it, could not be fetched. */
  lost: () => void;
};

export type ClientRequest = { project: string; source: ProjectSource; size: ChosenSize; request: Request };

export class Connection {
  readonly #start: () => Port;
  #port: Port | undefined;
  /** The projects that the worker knows. */
  readonly #sent = new Map<string, ProjectSource['file']>();
  readonly #listeners = new Map<number, Listener>();
  #clients = 0;

  constructor(start: () => Port) {
    this.#start = start;
  }

  /** @returns the client's number */
  join(listener: Listener): number {
    this.#listeners.set(++this.#clients, listener);
    return this.#clients;
  }

  leave(by: number): void {
    this.stop(by);
    this.#listeners.delete(by);
  }

  /** Sends a request; `n` grows with each request of a client. */
  ask(by: number, n: number, { project, source, size, request }: ClientRequest): void {
    const port = (this.#port ??= this.#open());
    if (this.#sent.get(project) !== source.file) {
      this.#sent.set(project, source.file);
      port.postMessage({ kind: 'project', project, file: source.file, materials: source.materials });
    }
    port.postMessage({ kind: 'ask', by, n, project, size, request });
  }

  /** Gives up what a client has asked. */
  stop(by: number): void {
    this.#port?.postMessage({ kind: 'stop', by });
  }

  #open(): Port {
    const port = this.#start();
    port.onmessage = ({ data: news }) => {
      if (news.kind === 'unfetched') this.#lose(port);
      else this.#listeners.get(news.by)?.hear(news);
    };
    port.onerror = () => this.#lose(port);
    return port;
  }

  /** A browser may never ask again for a module that once did not come: who asks next gets a new worker. */
  #lose(port: Port): void {
    if (port !== this.#port) return;
    port.terminate();
    this.#port = undefined;
    this.#sent.clear();
    for (const listener of this.#listeners.values()) listener.lost();
  }
}

/** The page's own worker. */
export const connection = new Connection(() => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
