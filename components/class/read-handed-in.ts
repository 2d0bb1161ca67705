/** The page's side of reading what a class handed in: a worker for each heap, ended when it is read or given up. */
import type { HandInResult } from './wire.ts';

/** What is to be read: a text with codes in it, or files. */
export type Unread = { pasted: string } | { files: File[] };

/** One hand-in or what stands in its place, and where it came from. */
export type HandedFrom = { from: string; read: HandInResult };

/** What has been read since the news before; `done` of `of` are read by now. */
export type ReadNews = { all: HandedFrom[]; done: number; of: number; isLast: boolean };

/** As much of a `Worker` as is needed. */
export type Reader = {
  postMessage: (unread: Unread) => void;
  terminate: () => void;
  onmessage: ((event: MessageEvent<ReadNews>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
};

const startReader = (): Reader => new Worker(new URL('./hand-in-worker.ts', import.meta.url), { type: 'module' });

/**
 * Reads the codes in a text that was pasted, however long it is.
 *
 * @param signal ends the reading at once; what was not read by then is told in the last news
 */
export const readPasted = (text: string, signal: AbortSignal, start = startReader): AsyncGenerator<ReadNews> =>
  reading({ pasted: text }, signal, start);

/** Reads files: hand-ins, and pictures of codes. */
export const readFiles = (files: File[], signal: AbortSignal, start = startReader): AsyncGenerator<ReadNews> =>
  reading({ files }, signal, start);

async function* reading(unread: Unread, signal: AbortSignal, start: () => Reader): AsyncGenerator<ReadNews> {
  const heard: ReadNews[] = [];
  let wake = () => {};
  let fault: string | undefined;
  const end = (sentence: string) => {
    fault ??= sentence;
    wake();
  };
  const stop = () => end('Not read: you stopped.');
  const reader = start();
  reader.onmessage = ({ data: news }) => {
    heard.push(news);
    wake();
  };
  reader.onerror = () => end('Not read: a part of this page did not come. Load the page again.');
  signal.addEventListener('abort', stop);
  if (signal.aborted) stop();
  else reader.postMessage(unread);
  let [done, of] = [0, 0];
  try {
    for (;;) {
      const news = heard.shift();
      if (news) {
        ({ done, of } = news);
        yield news;
        if (news.isLast) return;
      } else if (fault !== undefined) {
        const from = of > done ? `${of - done} more` : 'All of it';
        yield { all: [{ from, read: { ok: false, sentence: fault } }], done, of, isLast: true };
        return;
      } else await new Promise<void>((resolve) => (wake = resolve));
    }
  } finally {
    signal.removeEventListener('abort', stop);
    reader.terminate();
  }
}
