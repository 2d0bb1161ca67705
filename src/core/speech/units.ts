/** Units as they are said, and as machines write them down. */
import { MM_PER_INCH, type Edition } from '../measure/index.ts';
import { breaksBefore, type Token } from './tokens.ts';

export type SpokenUnit = 'in' | 'ft' | 'yd' | 'mm' | 'cm' | 'm';

/** One of each unit in mm. */
export const unitSize: Readonly<Record<SpokenUnit, number>> = {
  ...{ in: MM_PER_INCH, ft: 12 * MM_PER_INCH, yd: 36 * MM_PER_INCH },
  ...{ mm: 1, cm: 10, m: 1000 },
};

export const editionOf = (unit: SpokenUnit): Edition =>
  unit === 'in' || unit === 'ft' || unit === 'yd' ? 'inch' : 'metric';

const said = new Map<string, SpokenUnit>([
  ...['inch', 'inches', 'inchs', 'ins', 'incher'].map((word) => [word, 'in'] as const),
  ...['foot', 'feet', 'ft'].map((word) => [word, 'ft'] as const),
  ...['yard', 'yards', 'yd', 'yds'].map((word) => [word, 'yd'] as const),
  ...['mm', 'mil', 'mils', 'mill', 'mills', 'mls', 'millimetre', 'millimetres'].map((word) => [word, 'mm'] as const),
  ...['millimeter', 'millimeters', 'milimeter', 'milimeters', 'millis'].map((word) => [word, 'mm'] as const),
  ...['cm', 'cms', 'centimetre', 'centimetres', 'centimeter', 'centimeters', 'centi', 'centis'].map(
    (word) => [word, 'cm'] as const,
  ),
  ...['metre', 'metres', 'meter', 'meters'].map((word) => [word, 'm'] as const),
]);

/** The unit a word names whatever stands around it. */
export const unitNamed = (word: string): SpokenUnit | undefined => said.get(word);

/** After a number “in” is short for inch unless one of these follows: cut 2 in the lining, sew 3 in a row, 4 in all. */
const afterPreposition = new Set(
  (
    'the a an this that these those my your our his her its their all total each every here there one half halves front ' +
    'place between order turn case fact addition advance contrast white black red blue green grey gray yellow pink orange ' +
    'purple brown cream linen cotton denim canvas felt wool silk lining interfacing'
  ).split(' '),
);

/** A unit at a token. `sure` is less than 1 where the word may be another. */
export type FoundUnit = { unit: SpokenUnit; next: number; sure: number; plural?: true };

/**
 * The unit that stands at a token. `fraction` tells that what stands before it has a fraction, which makes “in” an inch in
 * nearly every place.
 */
export function unitAt(tokens: readonly Token[], i: number, fraction: boolean): FoundUnit | undefined {
  const token = tokens[i];
  if (!token || breaksBefore(token)) return undefined;
  if (token.kind === 'mark') return { unit: token.word as SpokenUnit, next: i + 1, sure: 1 };
  if (token.kind !== 'word') return undefined;
  const before = tokens[i - 1];
  const unit = said.get(token.word);
  if (unit === 'ft' && fraction && token.word === 'foot') return undefined; // A quarter foot sews a quarter of an inch.
  if (token.word === 'foot' && /^(?:pedal|control|off|on|down)$/u.test(tokens[i + 1]?.word ?? '')) return undefined;
  if (unit) {
    const plural = /s$|^feet$/u.test(token.word) && !/^(?:mils?|mills|mls|cms|yds|ins)$/u.test(token.word);
    const ofMachine = token.word === 'foot' && !/^(?:long|wide|tall|deep)$/u.test(tokens[i + 1]?.word ?? '');
    return { unit, next: i + 1, sure: ofMachine ? 0.8 : 1, ...(plural && { plural }) };
  }
  if (token.word === 'm' && before?.kind === 'number') return { unit: 'm', next: i + 1, sure: 0.9 };
  if (token.word === 'yarn' || token.word === 'yarns') {
    const near = tokens
      .slice(i + 1, i + 5)
      .some(({ word }) => /^(?:fabric|cloth|wide|white|lining|cotton)$/u.test(word));
    return near ? { unit: 'yd', next: i + 1, sure: 0.3 } : undefined;
  }
  if (token.word !== 'in') return undefined;
  const after = tokens[i + 1];
  const figures = before?.kind === 'number' || before?.kind === 'fraction';
  const preposition = after?.kind === 'word' && !breaksBefore(after) && afterPreposition.has(after.word);
  if (preposition && !(fraction && figures)) return undefined;
  if (!figures) return fraction && !preposition ? { unit: 'in', next: i + 1, sure: 0.7 } : undefined;
  if (!fraction && after?.kind === 'number' && !breaksBefore(after)) {
    // Two in one; and a list of inches may go on so.
    return after.value === 1 && !tokens[i + 2] ? undefined : { unit: 'in', next: i + 1, sure: 0.75 };
  }
  return { unit: 'in', next: i + 1, sure: fraction ? 0.95 : after ? 0.9 : 0.75 };
}
