/** Questions that are answered by picking, ordering and pairing. Pure rules; what is right comes from the pattern. */
import type { Piece } from '../project/pattern.ts';

/** What was right, left out, and picked though it does not belong. */
export type Picked = { right: boolean; missed: string[]; extra: string[] };

/**
 * Judges what was picked from a list, or pointed at in a drawing; the order does not count.
 *
 * @example judgePicks(['left'], ['left', 'right']) // => { right: false, missed: ['right'], extra: [] }
 */
export function judgePicks(picked: readonly string[], wanted: readonly string[]): Picked {
  const missed = wanted.filter((one) => !picked.includes(one));
  const extra = picked.filter((one) => !wanted.includes(one));
  return { right: missed.length + extra.length === 0, missed, extra };
}

/** The edges of a piece that are sewn: those that have an allowance. */
export const sewnEdges = ({ allowance }: Piece): string[] =>
  Object.entries(allowance).flatMap(([edge, mm]) => (mm > 0 ? [edge] : []));

/**
 * Judges an order of steps. `move` are the fewest steps that must change place: all others already follow each other
 * as they should.
 *
 * @example judgeOrder(['cut', 'press', 'pin', 'sew'], ['cut', 'pin', 'sew', 'press']).move // => ['press']
 */
export function judgeOrder(given: readonly string[], wanted: readonly string[]): { right: boolean; move: string[] } {
  const places = given.map((step) => wanted.indexOf(step));
  // For each step the longest run of rightly ordered steps that ends with it.
  const runs: number[][] = [];
  for (const [i, place] of places.entries()) {
    const before = runs.filter((run) => places[run.at(-1)!]! < place).reduce<number[]>(longer, []);
    runs.push(place < 0 ? [] : [...before, i]);
  }
  const stay = runs.reduce<number[]>(longer, []);
  const move = given.filter((_, i) => !stay.includes(i));
  return { right: move.length === 0 && given.length === wanted.length, move };
}

const longer = (a: number[], b: number[]) => (b.length > a.length ? b : a);

/**
 * Judges pairs, such as terms and what they mean.
 *
 * @example judgePairs({ nap: 'the way the pile lies' }, { nap: 'the way the pile lies', bias: '45° to the grain' }) // => { right: false, wrong: [], open: ['bias'] }
 */
export function judgePairs(
  given: Readonly<Record<string, string | undefined>>,
  wanted: Readonly<Record<string, string>>,
): { right: boolean; wrong: string[]; open: string[] } {
  const open = Object.keys(wanted).filter((term) => given[term] === undefined);
  const wrong = Object.keys(wanted).filter((term) => given[term] !== undefined && given[term] !== wanted[term]);
  return { right: open.length + wrong.length === 0, wrong, open };
}
