/** What was said of a size, and what it is for this learner. Plain functions: page, captions and print share them. */
import { formatLength, type Edition, type Pattern } from '../../../src/core/index.ts';
import { valueOf } from '../../page/quantity.ts';

/** A spoken size that is a measure of the project. Places are UTF-16 indices into the text of its line. */
export type SaidSize = {
  start: number;
  end: number;
  /** In mm, in the order they were said. */
  values: number[];
  /** The formula that each value is of; null where it is none. */
  of: (string | null)[];
  edition: Edition;
};

/** A line of the recording; times in seconds. */
export type SaidLine = { from: number; to: number; text: string; sizes?: SaidSize[] };

/** Two readings of one mark of a ruler: a sixty-fourth of an inch, half a millimetre. */
const SAME_MARK = { inch: 25.4 / 64, metric: 0.5 };

/**
 * The learner's own size where it is not the one that was said: in their edition, or of another value.
 *
 * @returns undefined where the words are true for them, or where their options leave the measure out
 */
export function ownSize({ values, of, edition }: SaidSize, pattern: Pattern): string | undefined {
  const own = of.map((formula) => {
    const found = formula === null ? undefined : valueOf(formula, pattern);
    return found?.dimension === 1 ? found.value : undefined;
  });
  if (own.some((value) => value === undefined)) return undefined;
  const isSame = (value: number, i: number) => Math.abs(value - values[i]!) <= SAME_MARK[edition];
  if (pattern.edition === edition && own.every((value, i) => isSame(value!, i))) return undefined;
  return own.map((value) => formatLength(value!, pattern.edition, { grid: pattern.grid })).join(' × ');
}

/** A line with each size as it was said, and the reader's own behind it: "5 1/4 in (yours: 14 cm)". */
export function lineFor({ text, sizes = [] }: SaidLine, pattern: Pattern, label = 'yours: '): string {
  return partsFor({ text, sizes }, pattern)
    .map(({ text: said, own }) => (own === undefined ? said : `${said} (${label}${own})`))
    .join('');
}

/** The same in parts: what is said, and behind some of it the reader's own size. */
export function partsFor(
  { text, sizes = [] }: Pick<SaidLine, 'text' | 'sizes'>,
  pattern: Pattern,
): { text: string; isSize: boolean; own?: string | undefined }[] {
  const parts: { text: string; isSize: boolean; own?: string | undefined }[] = [];
  let at = 0;
  for (const size of sizes) {
    if (size.start > at) parts.push({ text: text.slice(at, size.start), isSize: false });
    parts.push({ text: text.slice(size.start, size.end), isSize: true, own: ownSize(size, pattern) });
    at = size.end;
  }
  if (at < text.length) parts.push({ text: text.slice(at), isSize: false });
  return parts;
}

/** Words as a caption may hold them: nothing of them is markup. */
export const inCaption = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');

/** Where a recording is published, at a second. */
export const addressAt = (pattern: string, seconds: number): string =>
  pattern.replaceAll('{second}', String(Math.floor(seconds)));
