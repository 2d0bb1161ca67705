/** Cloth as people write it down: a line for each, such as “2 of 18 × 22 in”. */
import { formatLength, parseLength, type Edition, type Grid } from '../../../src/core/index.ts';

/** A piece of cloth: across, from selvage to selvage, and along; a bolt may go on. In mm. */
export type OwnCloth = { width: number; length?: number; count: number };

export type OwnClothReading = {
  cloths: OwnCloth[];
  /** What was understood, to be compared with what was meant. */
  words: string[];
  /** A sentence for each line that could not be read. */
  faults: string[];
};

/** Nobody has more of one size. */
const MOST = 99;

/** Multiplication as people write it between two lengths. */
const TIMES = /\s*(?:[×*]|\bby\b|(?<=[\d\s"”″'’½¼¾⅛⅜⅝⅞a-z])x(?=[\s\d½¼¾⅛⅜⅝⅞.]))\s*/iu;
/** How many, before the size: “2 of”, “2 pieces of”, “2:”. */
const MANY = /^\s*(\d{1,5})\s*(?:(?:pieces?|offcuts?|bolts?)\s+)?(?:of\b|:)\s*/iu;
/** The unit at the end of a length. */
const UNIT = /(?:[a-z]+\.?|["”″'’])\s*$/iu;

/**
 * Reads a stash or a list of bolts, each line by itself: what cannot be read is named, and the rest holds. A unit after
 * the last length is meant for both. Width first, then length.
 *
 * @param edition whose unit a bare number has
 * @param goesOn whether a line may be a width alone, as of a bolt of which there is enough
 * @example
 * readOwnCloth('2 of 18 x 22 in', { edition: 'inch', goesOn: false }).cloths // => [{ width: 457.2, length: 558.8, count: 2 }]
 */
export function readOwnCloth(text: string, how: { edition: Edition; grid?: Grid; goesOn: boolean }): OwnClothReading {
  const read: OwnClothReading = { cloths: [], words: [], faults: [] };
  for (const [i, written] of text.split(/[\n;]/u).entries()) {
    const line = written.trim();
    if (line === '') continue;
    const found = readLine(line, how);
    if (typeof found === 'string') read.faults.push(`Line ${i + 1}, “${shortened(line)}”: ${found}`);
    else {
      read.cloths.push(found);
      read.words.push(sizeWords(found, how));
    }
  }
  return read;
}

const shortened = (line: string): string => (line.length > 40 ? `${line.slice(0, 39)}…` : line);

function sizeWords({ width, length, count }: OwnCloth, { edition, grid }: { edition: Edition; grid?: Grid }): string {
  const set = (mm: number): string => formatLength(mm, edition, { style: 'set', ...(grid && { grid }) });
  const size = length === undefined ? `${set(width)} wide` : `${set(width)} wide and ${set(length)} long`;
  return count === 1 ? size : `${count} of ${size}`;
}

function readLine(line: string, { edition, goesOn }: { edition: Edition; goesOn: boolean }): OwnCloth | string {
  const example = edition === 'inch' ? '18 x 22 in' : '46 x 56 cm';
  const wanted = goesOn
    ? `Write a width, and a length if it ends, such as ${example}.`
    : `Write a width and a length, such as ${example}.`;
  const many = MANY.exec(line);
  const count = many ? Number(many[1]) : 1;
  if (count < 1 || count > MOST) return `How many are there? Write a number from 1 to ${MOST}.`;
  const parts = line.slice(many?.[0].length ?? 0).split(TIMES);
  if (parts.length > 2 || (parts.length === 1 && !goesOn)) return wanted;
  const unit = UNIT.exec(parts.at(-1)!)?.[0] ?? '';
  const lengths: number[] = [];
  for (const part of parts) {
    const read = parseLength(UNIT.test(part) ? part : `${part} ${unit}`, edition);
    if (!read.ok) return read.fault.code === 'huge-length' ? read.fault.message : wanted;
    if (!(read.value > 0)) return 'A size is more than nothing.';
    lengths.push(read.value);
  }
  const [width, length] = lengths as [number, number?];
  return { width, count, ...(length !== undefined && { length }) };
}
