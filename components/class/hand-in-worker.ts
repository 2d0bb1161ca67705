/** Reads what a class handed in, away from the page: whatever comes, the page stays awake, and ends the worker to stop. */
import { codesIn } from './codes.ts';
import { readPicture } from './picture.ts';
import type { HandedFrom, ReadNews, Unread } from './read-handed-in.ts';
import { readHandIn } from './wire.ts';

/** A class and its repeats; more would only be slow. */
const MOST = 500;
/** In bytes. */
const LARGEST_FILE = 2_000_000;
const LARGEST_PICTURE = 25_000_000;
/** In ms: the page hears so often how far it is. */
const BETWEEN_NEWS = 100;

/** Something to read at its turn, so that a heap of large files fits. */
type Waiting = { from: string; read: () => Promise<HandedFrom['read']> };

const no = (sentence: string): HandedFrom['read'] => ({ ok: false, sentence });

function inPasted(pasted: string): { waiting: Waiting[]; beyond: HandedFrom[] } {
  const { codes, others } = codesIn(pasted);
  const waiting = codes.slice(0, MOST).map((code, i) => ({ from: `Code ${i + 1}`, read: () => readHandIn(code) }));
  const beyond: HandedFrom[] = [];
  const more = codes.length - waiting.length;
  if (more > 0)
    beyond.push({ from: more === 1 ? '1 more code' : `${more} more codes`, read: no(`${MOST} are enough at once.`) });
  const from = others === 1 ? 'One other word' : `${others} other words`;
  if (others > 0) beyond.push({ from, read: no('No code: a code begins with SEW1.') });
  return { waiting, beyond };
}

function inFiles(files: readonly File[]): { waiting: Waiting[]; beyond: HandedFrom[] } {
  const waiting = files.slice(0, MOST).map((file) => ({ from: file.name, read: () => readFile(file) }));
  const more = files.length - waiting.length;
  const fault = no(`${MOST} are opened at once, and these were not. Open them on a page of their own.`);
  return {
    waiting,
    beyond: more > 0 ? [{ from: more === 1 ? '1 more file' : `${more} more files`, read: fault }] : [],
  };
}

async function readFile(file: File): Promise<HandedFrom['read']> {
  // Only as much as a hand-in may have, and some signs more, which tell that it is too large.
  if (!file.type.startsWith('image/')) return readHandIn(await file.slice(0, LARGEST_FILE).text());
  if (file.size > LARGEST_PICTURE) return no('The picture is too large. A screenshot will do.');
  const text = await readPicture(file);
  if (text !== undefined) return readHandIn(text);
  return no('No code could be read in this picture. Take it straight on, with the whole code in it.');
}

async function readAll({ waiting, beyond }: { waiting: readonly Waiting[]; beyond: readonly HandedFrom[] }) {
  const of = waiting.length;
  let news: HandedFrom[] = [];
  let told = performance.now();
  const tell = (done: number, isLast = false) => {
    postMessage({ all: news, done, of, isLast } satisfies ReadNews);
    news = [];
    told = performance.now();
  };
  tell(0);
  for (const [i, { from, read }] of waiting.entries()) {
    news.push({ from, read: await read().catch(() => no('It could not be read.')) });
    if (performance.now() - told > BETWEEN_NEWS) tell(i + 1);
  }
  news.push(...beyond);
  tell(of, true);
}

addEventListener('message', ({ data: unread }: MessageEvent<Unread>) => {
  void readAll('pasted' in unread ? inPasted(unread.pasted) : inFiles(unread.files));
});
