/** Layouts and lists, for the worker. */
import { buy, forClass, layOutOnCloth, SECONDS } from './cutting.ts';
import type { DrawnLayout } from './cutting-types.ts';
import type { RequestTask, Handler } from './serve-requests.ts';

/** How often the page is told of a search, in ms. */
const OFTEN = 100;

/** The first layout comes at once, and better ones as long as it is worth the wait. */
export const layout: Handler<'layout'> = async (pattern, { wish, fit }, { send, progress, pause }) => {
  const began = performance.now();
  let sentAt = -Infinity;
  let best: DrawnLayout | undefined;
  for (const laid of layOutOnCloth(pattern, wish, fit, SECONDS)) {
    best = laid ?? best;
    const now = performance.now();
    if (now - sentAt >= OFTEN && best) {
      sentAt = now;
      send(best);
      progress(Math.min(1, (now - began) / (1000 * SECONDS)));
    }
    await pause();
  }
  return best;
};

export const list: Handler<'list'> = async (pattern, { currency }, { pause }) =>
  (await finish(buy(pattern, { makers: 1, spares: 0 }, { currency }), pause)).list;

export const forOneClass: Handler<'class'> = (pattern, { wish, currency }, { pause }) =>
  finish(forClass(pattern, wish, currency), pause);

/** Does all steps of some work, and lets messages in between them. */
async function finish<T>(steps: Iterator<undefined, T>, pause: RequestTask<T>['pause']): Promise<T> {
  for (;;) {
    const next = steps.next();
    if (next.done) return next.value;
    await pause();
  }
}
