import { nestOf, type Nest, type Places } from './nest.ts';
import { random, type Random } from './random.ts';
import type { BoxLayout, BoxTask } from './boxes.ts';

/**
 * Lays outlines of any shape. A first layout takes one after the other, each to the lowest place where it fits. Then
 * the cloth is made a little shorter again and again: pieces that now overlap are moved one by one to where they
 * overlap least, and overlaps that stay come to weigh more, until all lie apart. Where they never do, two pieces of one
 * of the attempts that came nearest change places and it is tried again, or the cloth is made shorter by less.
 *
 * Overlap minimisation with growing weights: Egeblad, Nielsen & Odgaard 2007, EJOR 183(3):1249-1266; moving by samples
 * and shrinking steps: Gardeyn, Vanden Berghe & Wauters 2025, arXiv:2509.13329.
 */
export function* layOutlines(task: BoxTask, known: BoxLayout | undefined): Generator<BoxLayout | number, void, void> {
  const nest = nestOf(task);
  const source = random(task.seed);
  let tries = known?.tries ?? 0;
  let most = known?.spots.length ?? 0;
  let least = known?.length ?? Infinity;
  let length = Infinity;
  let best: Places | undefined;

  for (const order of nest.orders().slice(0, nest.n > MANY ? 1 : undefined)) {
    tries++;
    nest.clear();
    for (const i of order) {
      nest.lay(i, task.height);
      yield tries;
      if (task.stop()) break;
    }
    const placed = nest.reach();
    const count = nest.count();
    if (count === nest.n && placed < length) {
      length = placed;
      best = nest.kept();
    }
    if (count > most || (count === most && placed < least)) {
      [most, least] = [count, placed];
      yield { spots: nest.spots(), length: placed, tries };
    }
    if (task.first || task.stop()) return;
  }
  if (!best) return;

  let shrink = FIRST_SHRINK;
  let failures = 0;
  let target = 0;
  /** Of the attempts at the present length those that overlap least, the best first. */
  let nearly: { places: Places; overlap: number }[] = [];
  const aim = (share: number): void => {
    nearly = [];
    nest.restore(best!);
    target = Math.max(nest.shortest, length * (1 - share));
    nest.squeeze(target, source);
  };
  aim(shrink);
  while (tries < task.tries && !task.stop()) {
    let apart = false;
    for (const done of separate(nest, target, source)) {
      tries++;
      apart = done;
      yield tries;
      if (apart || task.stop() || tries >= task.tries) break;
    }
    if (apart) {
      failures = 0;
      length = nest.reach();
      best = nest.kept();
      if (length < least) {
        least = length;
        yield { spots: nest.spots(), length, tries };
      }
      if (length <= nest.shortest + 1e-6) return;
      aim(shrink);
    } else if (shrink > SHRINK) aim((shrink = Math.max(SHRINK, shrink / 2)));
    else {
      const turn = ++failures % (ATTEMPTS + LITTLE.length);
      if (turn >= ATTEMPTS) aim(LITTLE[turn - ATTEMPTS]!);
      else if (turn === 0) aim(SHRINK * (1 + source.share()));
      else {
        nearly.push({ places: nest.kept(), overlap: nest.look() });
        nearly.sort((p, q) => p.overlap - q.overlap);
        nearly.splice(KEPT);
        nest.restore(nearly[source.below(source.below(nearly.length) + 1)]!.places);
        nest.exchange(source);
      }
    }
  }
}

/** The share by which the cloth is made shorter at first, and, halved again and again, from then on. */
const FIRST_SHRINK = 0.02;
const SHRINK = 0.005;

/** So often it is tried to lay all in a length, and so many of these attempts are kept to begin from. */
const ATTEMPTS = 12;
const KEPT = 8;

/** Then it is tried to gain a little by what is left between the pieces, until the next attempts. */
const LITTLE = [0.004, 0.002, 0.001, 0.0005];

/** With more pieces than this, laying them in several orders takes long. */
const MANY = 100;

/** With more pieces than this the boxes round them are laid instead. */
export const MOST_OUTLINES = 400;

/** Rounds without a better one before an attempt is given up. */
const PATIENCE = 60;

/** Moves pieces apart below `end`. Yields before each round whether all lie apart; leaves them where they overlap least. */
function* separate(nest: Nest, end: number, source: Random): Generator<boolean, void, void> {
  nest.forget();
  let least = Infinity;
  let fewest: Places | undefined;
  for (let idle = 0; idle < PATIENCE; idle++) {
    const sum = nest.look();
    yield sum === 0;
    if (sum === 0) return;
    if (sum < least) {
      if (sum < least * 0.98) idle = 0;
      least = sum;
      fewest = nest.kept();
    }
    nest.round(end, source);
  }
  if (fewest) nest.restore(fewest);
}
