import type { Edition } from './edition.ts';

/** A unit of length. Its size in mm is `over / under`, two whole numbers, so that no digit is lost. */
export type Unit = { name: 'in' | 'ft' | 'yd' | 'mm' | 'cm' | 'm'; edition: Edition; over: number; under: number };

const inch: Unit = { name: 'in', edition: 'inch', over: 127, under: 5 };
const foot: Unit = { name: 'ft', edition: 'inch', over: 12 * 127, under: 5 };
const yard: Unit = { name: 'yd', edition: 'inch', over: 36 * 127, under: 5 };
const millimetre: Unit = { name: 'mm', edition: 'metric', over: 1, under: 1 };
const centimetre: Unit = { name: 'cm', edition: 'metric', over: 10, under: 1 };
const metre: Unit = { name: 'm', edition: 'metric', over: 1000, under: 1 };

/** The unit of a number that names none, by edition. */
export const bareUnit: Record<Edition, Unit> = { inch, metric: millimetre };

export { inch, foot };

const words = new Map<string, Unit>([
  ...['in', 'inch', 'inches', 'ins'].map((word) => [word, inch] as const),
  ...['ft', 'foot', 'feet'].map((word) => [word, foot] as const),
  ...['yd', 'yard', 'yards', 'yds'].map((word) => [word, yard] as const),
  ...['mm', 'millimetre', 'millimetres', 'millimeter', 'millimeters'].map((word) => [word, millimetre] as const),
  ...['cm', 'centimetre', 'centimetres', 'centimeter', 'centimeters'].map((word) => [word, centimetre] as const),
  ...['m', 'metre', 'metres', 'meter', 'meters'].map((word) => [word, metre] as const),
]);

/** Every word that names a unit, for near-miss suggestions. */
export const unitWords: readonly string[] = [...words.keys()];

/** Straight and typographic quotation marks and primes. Two single marks are one double mark. */
const marks = /(["“”„″〃]|['‘’′´]{2})|(['‘’′´])|(\p{L}+)(\.?)/uy;

/** The unit that begins exactly at `at`, with the index after it; an abbreviation may end in a full stop. */
export function unitAt(text: string, at: number): { unit: Unit; end: number } | undefined {
  marks.lastIndex = at;
  const found = marks.exec(text);
  if (!found) return undefined;
  if (found[1]) return { unit: inch, end: marks.lastIndex };
  if (found[2]) return { unit: foot, end: marks.lastIndex };
  const unit = words.get(found[3]!.toLowerCase());
  return unit && { unit, end: at + found[0].length };
}
