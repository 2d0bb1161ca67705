/** How the tests write what was heard: kind, values in the unit that was said, the unit, and signs of doubt. */
import { spokenLengths, type SpokenLength, type SpokenOptions } from '../../../src/core/index.ts';

const sizes = { in: 25.4, ft: 304.8, yd: 914.4, mm: 1, cm: 10, m: 1000 };

/**
 * A length in one word or two: `5.5 in`, `5.5 x 3 in`, `8..10 in`, `~20 in`. A unit in brackets was not said; a `?` asks the
 * author.
 */
export function written({ kind, values, unit, unitSaid, about, asks }: SpokenLength): string {
  const numbers = values.map((mm) => Number((mm / sizes[unit]).toFixed(4))).join(kind === 'range' ? '..' : ' x ');
  return `${kind === 'about' || about ? '~' : ''}${numbers} ${unitSaid ? unit : `(${unit})`}${asks ? ' ?' : ''}`;
}

/** All that was heard in a text, or `none`. */
export const heard = (text: string, options?: SpokenOptions): string =>
  spokenLengths(text, options).map(written).join('; ') || 'none';
