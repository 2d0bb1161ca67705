/** The way through the steps of a project: by dynamic programming over all clauses of a recording. */
import { plainOf, type Cut } from './cuts.ts';
import { HEADING } from './turns-of-phrase.ts';
import { weights } from './weights.ts';
import type { Evidence } from './evidence.ts';
import type { SpokenText } from './lines.ts';
import type { Step } from '../project/index.ts';

/** Whether a later step does the same to the same as an earlier one, by their states. */
export type Alike = (from: number, to: number) => boolean;

/** Two steps in a row are alike when nothing but their fields tells them apart; others when they are done to the same. */
export function alikeIn(steps: readonly Step[]): Alike {
  const takes = steps.map((step) => step.takes.toSorted().join('\n'));
  return (from, to) => {
    const [one, other] = [steps[from - 1], steps[to - 1]];
    if (!one || !other || to <= from || one.verb !== other.verb) return false;
    return to === from + 1 ? takes[from - 1] === takes[to - 1] : one.takes[0] === other.takes[0];
  };
}

/** What it costs to go on to another step at a clause, in the same measure as the evidence. */
function cost(from: number, to: number, last: number, cut: Cut, like: boolean): number {
  if (from === to) return 0;
  const turned = weights.enter + (cut.turn === 'strong' ? 0 : cut.turn === 'weak' ? weights.weakTurn : weights.noTurn);
  const here =
    turned -
    (cut.announced ? weights.announced : 0) +
    (cut.done ? weights.done : 0) -
    (cut.starts && from === 0 ? weights.starts : 0);
  if (to === from + 1 && cut.onward.has(to)) return here - weights.onward;
  if (to === from + 1 && like) return here + weights.likeNext;
  if (to > from)
    return (
      here +
      Math.min(weights.skipMost, weights.skip * (to - from - 1)) * (to === last ? 0.5 : 1) +
      (like ? weights.likeSkipped : 0)
    );
  if (to === 0) return here + weights.toStart;
  return here + (cut.again ? weights.backAgain : weights.back) + Math.min(3, 0.3 * (from - to));
}

const BEGIN: Cut = {
  ...{ first: 0, next: 0, turn: 'strong', again: false, aside: false, onward: new Set() },
  ...{ done: false, starts: false, announced: false },
};

/** What it costs to go on by one at a beginning that says nothing else. */
const ENTERED = weights.enter;

/**
 * The costs of going from each state (the row) to each other (the column) at a cut, each as `of` makes it; worked out once
 * for cuts that are alike.
 */
function movesFor(states: number, alike: Alike, of: (cost: number) => number): (cut: Cut) => Float64Array {
  const last = states - 1;
  const known = new Map<string, Float64Array>();
  const bases = new Map<boolean, Float64Array>();
  const baseFor = (again: boolean): Float64Array => {
    let base = bases.get(again);
    if (!base) {
      base = new Float64Array(states * states);
      for (let from = 0; from < states; from++)
        for (let to = 0; to < states; to++)
          base[from * states + to] = cost(from, to, last, { ...BEGIN, again }, alike(from, to));
      bases.set(again, base);
    }
    return base;
  };
  return (cut) => {
    const { turn, again, done, starts, announced, onward } = cut;
    const key = `${turn} ${again} ${done} ${starts} ${announced}`;
    let moves = known.get(key);
    if (!moves) {
      // What the cut itself costs is the same for all but the first row, where a beginning is announced.
      const base = baseFor(again);
      const own = cost(1, 2, last, { ...cut, again: false, onward: new Set() }, false) - ENTERED;
      const first = own - (starts ? weights.starts : 0);
      moves = base.map((value, k) => of(k % (states + 1) === 0 ? 0 : value + (k < states ? first : own)));
      known.set(key, moves);
    }
    if (onward.size === 0) return moves;
    const easedKey = `${key} ${[...onward].join(' ')}`;
    let eased = known.get(easedKey);
    if (!eased) {
      eased = moves.slice();
      for (const to of onward) eased[(to - 1) * states + to] = of(cost(to - 1, to, last, cut, false));
      known.set(easedKey, eased);
    }
    return eased;
  };
}

/** The state of every clause: 0 before the first step, then the steps, then behind the last. */
export function bestPath({ stays, begins }: Evidence, clauses: readonly Cut[], alike: Alike): number[] {
  const states = stays[0]!.length;
  const last = states - 1;
  let best = stays[0]!.map((value, state) =>
    state === 0 ? value : value + begins[0]![state]! - cost(0, state, last, BEGIN, false),
  );
  const from: Int32Array[] = [];
  const movesAt = movesFor(states, alike, (cost) => cost);
  for (let t = 1; t < stays.length; t++) {
    const moves = movesAt(clauses[t]!);
    const back = new Int32Array(states);
    const before = best;
    best = stays[t]!.map((value, to) => {
      const into = begins[t]![to]!;
      // Of two ways that are as good, the one that goes on later: who digresses has not begun the next step.
      let [most, origin] = [before[to]!, to];
      for (let state = 0; state < states; state++) {
        const sum = before[state]! - moves[state * states + to]! + into;
        if (state !== to && sum > most) [most, origin] = [sum, state];
      }
      back[to] = origin;
      return most + value;
    });
    from.push(back);
  }
  let state = best.indexOf(Math.max(...best));
  const path = [state];
  for (const back of from.reverse()) path.push((state = back[state]!));
  return path.reverse();
}

/** So many seconds may lie between a turn of the talk and the words that tell of the step. */
const TO_TURN = 20;

/** So much the words between may tell of the step before. */
const TELLS_OF_LAST = 0.4;

/** A step begins where the talk turns to it, and not where its words are said, if nothing between tells of the step before. */
export function toTurns(path: number[], { stays }: Evidence, spoken: SpokenText, clauses: readonly Cut[]): void {
  const { words } = spoken;
  const heads = (k: number): boolean => HEADING.test(plainOf(spoken, clauses[k]!));
  const last = stays[0]!.length - 1;
  for (let t = 1; t < path.length; t++) {
    const [state, before] = [path[t]!, path[t - 1]!];
    if (state === before || state === 0 || state === last || heads(t) || path.indexOf(state) < t) continue;
    let own = 0;
    for (let k = t - 1; k > 0 && path[k] === before && path[k - 1] === before; k--) {
      if (words[clauses[t]!.first]!.from - words[clauses[k]!.first]!.from > TO_TURN || clauses[k]!.done) break;
      own += stays[k]![state]! - stays[k]![before]!;
      if (own < -TELLS_OF_LAST) break;
      if (!heads(k)) continue;
      path.fill(state, k, t);
      break;
    }
  }
}

/** As many clauses are looked at for a step that is told once more. */
const MOST_AGAIN = 8;

/** By how much the words must speak for the earlier step. */
const LEAST_AGAIN = 0.8;

/**
 * A speaker who says that something comes again goes back to one step for a while, and on from where they were. So much the
 * costs of going from step to step cannot know; the words alone decide.
 *
 * @returns How sure each is, by the clause it begins at.
 */
export function tellAgain(path: number[], evidence: Evidence, clauses: readonly Cut[]): ReadonlyMap<number, number> {
  const retold = new Map<number, number>();
  for (let t = 0; t < path.length; t++) {
    if (!clauses[t]!.again) continue;
    const farthest = Math.max(...path.slice(0, t));
    let best = { state: 0, end: t, gain: LEAST_AGAIN };
    for (let state = 1; state < farthest; state++) {
      let gain = Math.max(...evidence.recalls.slice(t, t + 3).map((row) => row[state]!)) - weights.recall;
      for (let end = t; end < Math.min(path.length, t + MOST_AGAIN); end++) {
        // The way through the whole comes back to it by itself, a little later.
        if (path[end] === state) {
          if (gain > best.gain) best = { state, end, gain };
          break;
        }
        gain += evidence.stays[end]![state]! - evidence.stays[end]![path[end]!]!;
        if (gain > best.gain) best = { state, end: end + 1, gain };
      }
    }
    if (best.end === t) continue;
    path.fill(best.state, t, best.end);
    retold.set(t, 1 - Math.exp(-best.gain));
    t = best.end - 1;
  }
  return retold;
}

/** The chance of each state at each clause, all ways through the recording taken together: forwards and backwards. */
export function chances({ stays, begins }: Evidence, clauses: readonly Cut[], alike: Alike): Float64Array[] {
  const states = stays[0]!.length;
  const movesAt = movesFor(states, alike, (cost) => Math.exp(-cost));
  const likely = stays.map((row) => row.map(Math.exp));
  const entering = begins.map((row) => row.map(Math.exp));
  const scaled = (row: Float64Array): Float64Array => {
    const sum = row.reduce((all, value) => all + value, 0) || 1;
    return row.map((value) => value / sum);
  };
  const start = movesAt(BEGIN);
  const forwards = [
    scaled(likely[0]!.map((value, state) => value * (state === 0 ? 1 : start[state]! * entering[0]![state]!))),
  ];
  for (let t = 1; t < stays.length; t++) {
    const [move, row, before, into] = [movesAt(clauses[t]!), new Float64Array(states), forwards[t - 1]!, entering[t]!];
    for (let state = 0; state < states; state++) {
      const weight = before[state]!;
      if (weight < 1e-12) continue;
      for (let to = 0; to < states; to++)
        row[to]! += to === state ? weight : weight * move[state * states + to]! * into[to]!;
    }
    forwards.push(scaled(row.map((value, to) => value * likely[t]![to]!)));
  }
  const result: Float64Array[] = [];
  let after: Float64Array = new Float64Array(states).fill(1);
  for (let t = stays.length - 1; t >= 0; t--) {
    result[t] = scaled(forwards[t]!.map((value, state) => value * after[state]!));
    if (t === 0) break;
    const [move, row, into] = [movesAt(clauses[t]!), new Float64Array(states), entering[t]!];
    for (let to = 0; to < states; to++) {
      const weight = after[to]! * likely[t]![to]!;
      if (weight < 1e-12) continue;
      for (let state = 0; state < states; state++)
        row[state]! += state === to ? weight : weight * move[state * states + to]! * into[to]!;
    }
    after = scaled(row);
  }
  return result;
}
