/** The page's side of reading: news as they come, and an end at any time. */
import { expect, test } from 'vitest';
import { readPasted, type Reader, type ReadNews } from '../../../components/class/read-handed-in.ts';

/** A worker that says what the test makes it say. */
function fake() {
  const reader = {
    asked: [] as unknown[],
    isEnded: false,
    postMessage: (unread: unknown) => void reader.asked.push(unread),
    terminate: () => void (reader.isEnded = true),
    onmessage: null as Reader['onmessage'],
    onerror: null as Reader['onerror'],
    tells: (news: ReadNews) => reader.onmessage?.(new MessageEvent('message', { data: news })),
  };
  return reader;
}
const refused = (from: string, sentence: string) => ({ from, read: { ok: false as const, sentence } });
const news = (done: number, of: number, isLast = false): ReadNews => ({
  all: [refused(`Code ${done}`, 'It is not a hand-in.')],
  done,
  of,
  isLast,
});
async function all(read: AsyncIterable<ReadNews>): Promise<ReadNews[]> {
  const heard: ReadNews[] = [];
  for await (const one of read) heard.push(one);
  return heard;
}

test('all that the worker says is passed on in its order, and then the worker is ended', async () => {
  const reader = fake();
  const read = all(readPasted('text', new AbortController().signal, () => reader));
  reader.tells(news(1, 3));
  reader.tells(news(2, 3));
  await Promise.resolve();
  expect(reader.isEnded).toBe(false);
  reader.tells(news(3, 3, true));
  expect(await read).toEqual([news(1, 3), news(2, 3), news(3, 3, true)]);
  expect(reader.asked).toEqual([{ pasted: 'text' }]);
  expect(reader.isEnded).toBe(true);
});

test('who stops hears how much was not read, and what was read stays', async () => {
  const reader = fake();
  const stop = new AbortController();
  const read = all(readPasted('text', stop.signal, () => reader));
  reader.tells(news(2, 9));
  stop.abort();
  expect((await read).map((one) => one.all)).toEqual([news(2, 9).all, [refused('7 more', 'Not read: you stopped.')]]);
  expect(reader.isEnded).toBe(true);
});

test('a worker that does not come is said', async () => {
  const reader = fake();
  const read = all(readPasted('text', new AbortController().signal, () => reader));
  reader.onerror?.({} as ErrorEvent);
  expect((await read).at(-1)).toMatchObject({
    all: [refused('All of it', 'Not read: a part of this page did not come. Load the page again.')],
    isLast: true,
  });
  expect(reader.isEnded).toBe(true);
});

test('who stopped before it began reads nothing', async () => {
  const reader = fake();
  expect(await all(readPasted('text', AbortSignal.abort(), () => reader))).toHaveLength(1);
  expect(reader.asked).toEqual([]);
});
