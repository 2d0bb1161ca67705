/** The worker that reads hand-ins, run in this thread: Node has no worker of a page. */
import type { HandedFrom, ReadNews, Unread } from '../../../components/class/read-handed-in.ts';

type Listener = (event: { data: Unread }) => void;

let listener: Listener | undefined;
const own = globalThis as { addEventListener?: unknown; postMessage?: unknown };
const before = own.addEventListener;
own.addEventListener = (_: string, hears: Listener) => (listener = hears);
await import('../../../components/class/hand-in-worker.ts');
own.addEventListener = before;

/** Hands the worker what is to be read, and gives all that it says of it, and of how much it says how far it is. */
export async function workerRead(unread: Unread): Promise<{ all: HandedFrom[]; of: number }> {
  const before = own.postMessage;
  const all: HandedFrom[] = [];
  const of = await new Promise<number>((resolve) => {
    own.postMessage = (news: ReadNews) => {
      all.push(...news.all);
      if (news.isLast) resolve(news.of);
    };
    listener!({ data: unread });
  });
  own.postMessage = before;
  return { all, of };
}
