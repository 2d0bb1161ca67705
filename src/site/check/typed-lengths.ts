import { parseLength } from '../../core/measure/index.ts';
import type { Edition } from '../../core/measure/index.ts';
import { JOINER } from '../content/lesson-prose.ts';

/** A length that is typed in running text. */
export type TypedLength = { start: number; end: number; text: string; mm: number; edition: Edition };

const gap = `[\\s\\u00a0\\u202f\\u2009${JOINER}]*`;
const fraction = '(?:\\d+[/⁄]\\d+|[¼-¾⅐-⅞])';
const number = `(?:\\d+(?:${gap}|-)${fraction}|${fraction}|\\d+(?:[.,]\\d+)?)`;
const inchUnit = '(?:inches|inch|ins?(?![\\p{L}\\p{N}])|["”″]|feet|foot|ft|yards?|yds?)';
const metricUnit = '(?:millimet(?:re|er)s?|mm|centimet(?:re|er)s?|cm|met(?:re|er)s?|m(?!\\p{L}))';
const pattern = new RegExp(
  `(?<![\\p{L}\\p{N}.,/⁄"“″$€£-])(${number})(?:${gap}|-)((${inchUnit})|${metricUnit})(?![\\p{L}\\p{N}])`,
  'gu',
);

/**
 * The lengths in a text, with their units. Left alone are plain numbers, ranges (3 to 4 mm), what is no unit but the
 * word “in” (fold 2 in half), and the settings of a machine (a stitch length of 2.5 mm).
 *
 * @example typedLengths('Cut it 4 1/2 in wide.').map(({ text, mm }) => [text, mm]) // => [['4 1/2 in', 114.3]]
 * @example typedLengths('Fold 2 in half with a needle of size 80/12.') // => []
 */
export function typedLengths(text: string): TypedLength[] {
  return [...text.matchAll(pattern)].flatMap((found) => {
    const [written, amount = '', unit = ''] = found;
    const start = found.index;
    const end = start + written.length;
    const after = text.slice(end);
    const before = text.slice(0, start);
    if (unit === 'in' && /^\d+$/.test(amount) && !isUnit(after)) return [];
    if (/["“”″]/.test(unit) && isQuoted(before)) return [];
    if (isRange(before) || isSetting(before, after)) return [];
    const edition: Edition = found[3] ? 'inch' : 'metric';
    const read = parseLength(written.replaceAll(JOINER, '').replace(/-(?=\p{L})/u, ' '), edition);
    return read.ok && read.value > 0
      ? [{ start, end, text: written.replaceAll(JOINER, '').replace(/\s+/g, ' '), mm: read.value, edition }]
      : [];
  });
}

/** After a whole number “in” is a unit before a full stop or a word that goes with sizes, and else an ordinary word. */
const isUnit = (after: string): boolean =>
  /^[\u2060]*\s*($|[.,;:!?)(/×\ufffc]|-|(wide|high|long|deep|tall|thick|across|apart|from|away|above|below|outside|inside|beyond|by|x|and|or|to|on|at|of|off|square|each way|all round|seams?|allowances?|strips?|more|less|longer|shorter|wider|narrower)\b)/u.test(
    after,
  );

/** The number stands in quotation marks, and the mark after it closes them. */
const isQuoted = (before: string): boolean => /["“][\d\s/⁄.,-]*$/.test(before);

const isRange = (before: string): boolean => /\d\s*(to|–)\s*$/.test(before);

/** The numbers of a machine are its own: length and width of its stitches, and its needles. */
const isSetting = (before: string, after: string): boolean =>
  /\b(stitch(es)?[ -](length|width)|length of (the |your )?stitch(es)?|stitches of|settings?|dial|tension|needle)\b[^.;:!?]{0,24}$/i.test(
    before,
  ) || /^[\s-]*((long|wide)[\s-]+)?(straight |basting |zigzag )?(stitch(es)?|zigzag|twin needle|needle)\b/i.test(after);
