/** What a screen shows of a step, as a voice says it. */
import { THIN } from '../../../src/core/index.ts';

/** What a fraction of a ruler is called, by the number under its stroke. */
const parts: Readonly<Record<string, string>> = {
  2: 'half',
  4: 'quarter',
  8: 'eighth',
  16: 'sixteenth',
  32: 'thirty-second',
};
const units: Readonly<Record<string, string>> = { in: 'inches', mm: 'millimetres', cm: 'centimetres' };

/**
 * A text with its measures in words: voices stumble over the fractions and units of a ruler.
 *
 * @example sayAloud('Fold 1¾ in down') // => 'Fold 1 and 3 quarters inches down'
 */
export const sayAloud = (text: string): string =>
  text
    // A fraction that is one sign becomes two numbers and a stroke, apart from the whole number before it.
    .replace(
      /(\d?)([¼½¾⅛⅜⅝⅞])/gu,
      (_, whole: string, sign: string) => `${whole && `${whole} `}${sign.normalize('NFKC')}`,
    )
    .replace(/(?:(\d+)[\s\u202f])?(\d+)⁄(\d+)/gu, (_, whole: string | undefined, over: string, under: string) => {
      const name = parts[under];
      const part = name === undefined ? `${over} over ${under}` : `${over} ${name}${over === '1' ? '' : 's'}`;
      return whole === undefined ? part : `${whole} and ${part}`;
    })
    .replace(new RegExp(`${THIN}(in|mm|cm)(?![\\p{L}])`, 'gu'), (_, unit: string) => ` ${units[unit]}`)
    .replace(/≈\s*/gu, 'about ')
    .replace(/\s*×\s*/gu, ' by ')
    .replace(/\s+/gu, ' ');
