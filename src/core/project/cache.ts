/** What was worked out of a pattern so far, so that nothing is worked out twice. */
import type { Pattern } from './pattern.ts';

/** So many patterns that share a cache are remembered: the first, and copies with another field. */
const MOST = 4;

/**
 * A pattern carries its cache, and hands it on to its copies. It answers for the fields it was asked with and no others,
 * so that a copy with other pieces never hears of the old ones. What it holds is private: a pattern that was asked much
 * equals one that was not, and as JSON says the same.
 */
export class PatternCache {
  /** The latest first. */
  #kept: { fields: Pattern; answers: Map<unknown, unknown> }[] = [];

  /** What is known of a pattern that has just these fields, to be read and added to. */
  answersFor(pattern: Pattern): Map<unknown, unknown> {
    const found = this.#kept.find(({ fields }) => haveSame(fields, pattern));
    const own = found ?? { fields: { ...pattern }, answers: new Map<unknown, unknown>() };
    if (own !== this.#kept[0]) this.#kept = [own, ...this.#kept.filter((one) => one !== own)].slice(0, MOST);
    return own.answers;
  }
}

function haveSame(a: Pattern, b: Pattern): boolean {
  const keys = Object.keys(a) as (keyof Pattern)[];
  return keys.length === Object.keys(b).length && keys.every((key) => a[key] === b[key]);
}

/**
 * A function of a pattern, and of texts if it takes any, that works out once what it is asked again and again. It must
 * rest on nothing else. A pattern whose cache was lost, as one that came from another thread, is worked out each time.
 *
 * @example
 * const length = oncePer((pattern: Pattern, name: string) => pattern.title.length + name.length);
 * length(pattern, 'seam') // => 16
 */
export function oncePer<Texts extends string[], T>(
  workOut: (pattern: Pattern, ...texts: Texts) => T,
): (pattern: Pattern, ...texts: Texts) => T {
  return (pattern, ...texts) => {
    if (!(pattern.cache instanceof PatternCache)) return workOut(pattern, ...texts);
    const answers = pattern.cache.answersFor(pattern);
    let own = answers.get(workOut) as Map<string, T> | undefined;
    if (!own) answers.set(workOut, (own = new Map<string, T>()));
    const key = texts.join('\n');
    if (!own.has(key)) own.set(key, workOut(pattern, ...texts));
    return own.get(key)!;
  };
}
