import { parseLength, type Edition } from '../measure/index.ts';

/**
 * Reads the tolerance an author writes: one length for both editions, or one each with a bar between them.
 * A bare number is in the unit of `home`. Undefined when it cannot be read.
 *
 * @example readTolerance('1/16 in | 1 mm', 'inch') // => { inch: 1.5875, metric: 1 }
 * @example readTolerance('1/8', 'inch') // => { inch: 3.175, metric: 3.175 }
 */
export function readTolerance(text: string, home: Edition): Record<Edition, number> | undefined {
  const lengths = text.split('|').map((part) => parseLength(part, home));
  const [first, second] = lengths.map((length) => (length.ok ? length.value : undefined));
  if (first === undefined || lengths.length > 2) return undefined;
  if (lengths.length === 1) return { inch: first, metric: first };
  return second === undefined ? undefined : { inch: first, metric: second };
}
