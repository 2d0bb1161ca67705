/** A text cut into what is read: words, numbers, fractions and signs, each with its place. */

/**
 * One of them. `at` and `end` are UTF-16 places in the text. `word` is lower case without apostrophes.
 *
 * `number` has its value; `fraction` is written with a stroke or one sign; `ordinal` is a figure with its ending, as in
 * 8ths; `mark` is a sign of a unit (" or '); `lost` is a sign that stands where a machine could not write one.
 */
export type Token = {
  kind: 'word' | 'number' | 'fraction' | 'ordinal' | 'mark' | 'lost';
  word: string;
  at: number;
  end: number;
  value?: number;
  over?: number;
  under?: number;
  /** What stands between it and the one before, such as a hyphen or the end of a sentence. */
  gap: string;
};

const signs: Readonly<Record<string, readonly [number, number]>> = {
  ...{ '½': [1, 2], '¼': [1, 4], '¾': [3, 4], '⅛': [1, 8], '⅜': [3, 8], '⅝': [5, 8], '⅞': [7, 8] },
  ...{ '⅓': [1, 3], '⅔': [2, 3], '⅕': [1, 5], '⅖': [2, 5], '⅗': [3, 5], '⅘': [4, 5], '⅙': [1, 6], '⅚': [5, 6] },
};

const pattern =
  /(?<sign>[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚])|(?<over>\d{1,4})\s?[/⁄]\s?(?<under>\d{1,3})(?:ths?|rds?|nds?|s(?!\p{L}))?(?![\d/])|(?<ordinal>\d{1,4})(?:sts?|nds?|rds?|ths?|s)(?!\p{L})|(?<number>\d{1,3}(?:,\d{3})+(?!\d)|\d{1,9}(?:[.,]\d{1,6})?|\.\d{1,6})|(?<mark>["“”″]|\s?['’′]{2}|(?<=[\d½¼¾⅛⅜⅝⅞])\s?['’′](?![\p{L}'’′]))|(?<lost>[?\ufffd]+|\[\s?_*\s?\]|_{2,})|(?<times>[×*]|(?<=[\d½¼¾⅛⅜⅝⅞]\s?(?:["”″]|['’]{1,2}|in\.?|cm|mm|inch|inches)?\s?)x(?=\s?[\d.]))|(?<and>&)|(?<word>\p{L}+(?:['’]\p{L}+)*)/giu;

/**
 * Cuts a text into tokens.
 *
 * @example tokensOf('2 1/2"').map(({ kind }) => kind) // => ['number', 'fraction', 'mark']
 */
export function tokensOf(text: string): Token[] {
  const tokens: Token[] = [];
  let before = 0;
  for (const found of text.matchAll(pattern)) {
    const groups = found.groups!;
    const at = found.index;
    const end = at + found[0].length;
    const base = { word: found[0].toLowerCase().replace(/['’]/gu, ''), at, end, gap: text.slice(before, at) };
    before = end;
    // The full stop of “3 in. by 5 in.” ends no sentence.
    if (shortUnits.test(tokens.at(-1)?.word ?? '') && /^(?:by|x)$/u.test(base.word))
      base.gap = base.gap.replace('.', '');
    if (groups['sign']) {
      const [over, under] = signs[groups['sign']]!;
      tokens.push({ ...base, kind: 'fraction', over, under, value: over / under });
    } else if (groups['over']) {
      const [over, under] = [Number(groups['over']), Number(groups['under'])];
      tokens.push({ ...base, kind: 'fraction', over, under, value: under === 0 ? NaN : over / under });
    } else if (groups['ordinal']) tokens.push({ ...base, kind: 'ordinal', value: Number(groups['ordinal']) });
    else if (groups['number']) tokens.push({ ...base, kind: 'number', value: numberOf(groups['number']) });
    else if (groups['mark']) tokens.push({ ...base, kind: 'mark', word: isFoot(found[0]) ? 'ft' : 'in' });
    else if (groups['lost']) tokens.push({ ...base, kind: 'lost' });
    else if (groups['times']) tokens.push({ ...base, kind: 'word', word: 'by' });
    else if (groups['and']) tokens.push({ ...base, kind: 'word', word: 'and' });
    else tokens.push({ ...base, kind: 'word' });
  }
  return tokens;
}

const shortUnits = /^(?:ins?|ft|yds?|cm|mm)$/u;

const isFoot = (mark: string): boolean => /^\s?['’′]$/u.test(mark);

/** A comma before three digits parts thousands; any other is a decimal comma. */
const numberOf = (text: string): number =>
  Number(/^\d{1,3}(?:,\d{3})+$/u.test(text) ? text.replace(/,/gu, '') : text.replace(',', '.'));

/** Whether a token ends what came before it: a full stop, a colon, or the end of a line of captions. */
export const breaksBefore = ({ gap }: Token): boolean => /[.;:!)(]|\n\s*\n/u.test(gap);
