/** The worker's side of the protocol: what is asked waits in a queue, and each client has one request at a time. */
import { resolveProject, type Pattern } from '../../src/core/index.ts';
import type { Answer, Kind, FromWorker, Request, ToWorker, ChosenSize, ProjectSource } from './protocol.ts';

/** What an answer that takes long may do meanwhile. */
export type RequestTask<T> = {
  /** Sends an answer that a better one follows. */
  send: (value: T) => void;
  /** @param share of the work that is done, 0 to 1 */
  progress: (share: number) => void;
  /** Lets messages in. It rejects once the client asks for something else: the work ends there. */
  pause: () => Promise<void>;
};

/** Works out the answer to one kind of request. */
export type Handler<K extends Kind> = (
  pattern: Pattern,
  request: Request<K>,
  task: RequestTask<Answer<K>>,
) => Answer<K> | Promise<Answer<K>>;

/** By kind, a function that fetches its handler. */
export type Handlers = { [K in Kind]: () => Promise<Handler<K>> };

/** An error whose message is a sentence for the learner. */
export class RequestError extends Error {}

/** The client asked for something else, or for nothing any more. */
class Superseded extends Error {}

/** A project with its last patterns: the parts of a page share what is made up of them. */
type Known = ProjectSource & { patterns: Map<string, Pattern> };
/** A page shows one size, and another while it follows. */
const MOST_PATTERNS = 2;

type Ask = Extract<ToWorker, { kind: 'ask' }>;

const FAILED = 'This could not be worked out. Load the page again, and try once more.';

/**
 * Answers what a page sends.
 *
 * @param post sends news to the page
 * @returns takes a message of the page
 */
export function serveRequests(works: Handlers, post: (news: FromWorker) => void): (message: ToWorker) => void {
  const projects = new Map<string, Known>();
  const waiting = new Map<number, Ask>();
  /** The number of each client's latest request. */
  const latest = new Map<number, number>();
  let isWorking = false;

  return (message) => {
    if (message.kind === 'project') {
      const { project, file, materials } = message;
      projects.set(project, { file, materials, patterns: new Map() });
      return;
    }
    waiting.delete(message.by);
    latest.delete(message.by);
    if (message.kind === 'stop') return;
    latest.set(message.by, message.n);
    waiting.set(message.by, message);
    void work();
  };

  /** Takes one request after the other. One that pauses goes on beside the next: a long search stops no drawing. */
  async function work(): Promise<void> {
    if (isWorking) return;
    isWorking = true;
    for (;;) {
      await messagesIn();
      const [ask] = waiting.values();
      if (!ask) break;
      waiting.delete(ask.by);
      void answer(ask);
    }
    isWorking = false;
  }

  async function answer({ by, n, project, size, request }: Ask): Promise<void> {
    const isOver = () => latest.get(by) !== n;
    const send = (value: Answer<Kind>, isLast: boolean) => post({ by, n, kind: 'answer', value, isLast });
    const task: RequestTask<Answer<Kind>> = {
      send: (value) => send(value, false),
      progress: (share) => post({ by, n, kind: 'progress', share }),
      async pause() {
        await messagesIn();
        if (isOver()) throw new Superseded();
      },
    };
    let found: Handler<Kind>;
    try {
      found = (await works[request.kind]()) as Handler<Kind>;
    } catch {
      post({ by, n, kind: 'unfetched' });
      return;
    }
    try {
      if (!isOver()) send(await found(patternOf(project, size), request, task), true);
    } catch (error) {
      if (error instanceof Superseded || isOver()) return;
      if (!(error instanceof RequestError)) console.error(error);
      post({ by, n, kind: 'error', message: error instanceof RequestError ? error.message : FAILED });
    }
  }

  function patternOf(project: string, size: ChosenSize): Pattern {
    const known = projects.get(project);
    if (!known) throw new Error(`The project "${project}" was never sent.`);
    const { file, materials, patterns } = known;
    const key = JSON.stringify([size.edition, size.values, size.options, size.size]);
    const pattern = patterns.get(key) ?? resolveProject(file, { ...size, materials });
    // Ordered by use, the latest last.
    patterns.delete(key);
    patterns.set(key, pattern);
    if (patterns.size > MOST_PATTERNS) patterns.delete([...patterns.keys()][0]!);
    return pattern;
  }
}

/** Lets messages in. A timer would wait 4 ms each time. */
function messagesIn(): Promise<void> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      done();
    };
    port2.postMessage(undefined);
  });
}
