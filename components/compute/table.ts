/**
 * The cutting table: a worker that lays cloth and reckons lists away from the page. It looks up between two tries, so
 * that the next order, or the word to stop, ends the one under way.
 */
import { resolveProject, type Fit } from '../../src/core/index.ts';
import { buy, forClass, lay, SECONDS } from './cutting.ts';
import type { Sized } from './sized.ts';
import type { ClassWish, Laid, LayoutWish, ToldClass, ToldList } from './cutting-types.ts';

export type Order = Sized & { currency: string } & (
    { kind: 'layout'; wish: LayoutWish; fit: Fit } | { kind: 'list' } | { kind: 'class'; wish: ClassWish }
  );

/** What a page may send: an order, or the word to stop. Orders are numbered, so that late news finds nobody. */
export type Sent = { n: number; order?: Order };

/** What each kind of order is answered with. */
export type Answers = { layout: Laid; list: ToldList; class: ToldClass };

export type News = { n: number } & (
  | { kind: 'layout'; told: Answers['layout']; done: boolean }
  | { kind: 'list'; told: Answers['list'] }
  | { kind: 'class'; told: Answers['class'] }
  | { kind: 'progress'; share: number }
  | { kind: 'done' }
  | { kind: 'failed'; message: string }
);

const tell = (news: News): void => postMessage(news);
/** Lets messages in. */
const pause = (): Promise<void> => new Promise((done) => setTimeout(done));
/** How often the page hears of a search, in ms. */
const OFTEN = 100;

let current = 0;

addEventListener('message', async ({ data: { n, order } }: MessageEvent<Sent>) => {
  current = n;
  if (!order) return;
  try {
    const { file, materials, edition, values, options } = order;
    await work(n, order, () => current !== n, resolveProject(file, { edition, values, options, materials }));
  } catch (error) {
    tell({ n, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
});

async function work(
  n: number,
  order: Order,
  isOver: () => boolean,
  pattern: ReturnType<typeof resolveProject>,
): Promise<void> {
  if (order.kind !== 'layout') {
    const { currency } = order;
    const steps =
      order.kind === 'list'
        ? buy(pattern, { makers: 1, spares: 0 }, { currency })
        : forClass(pattern, order.wish, currency);
    for (;;) {
      const next = steps.next();
      if (next.done) {
        if (order.kind === 'class') tell({ n, kind: 'class', told: next.value as ToldClass });
        else tell({ n, kind: 'list', told: (next.value as { list: ToldList }).list });
        return;
      }
      await pause();
      if (isOver()) return;
    }
  }
  const began = performance.now();
  let heard = 0;
  let best: Laid | undefined;
  for (const told of lay(pattern, order.wish, order.fit, SECONDS)) {
    best = told ?? best;
    const now = performance.now();
    if (now - heard < OFTEN && best && heard > 0) continue;
    heard = now;
    if (best) tell({ n, kind: 'layout', told: best, done: false });
    tell({ n, kind: 'progress', share: Math.min(1, (now - began) / (1000 * SECONDS)) });
    await pause();
    if (isOver()) return;
  }
  if (best) tell({ n, kind: 'layout', told: best, done: true });
  tell({ n, kind: 'done' });
}
