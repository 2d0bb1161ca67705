/** What things cost. Amounts are rounded line by line, so that a sum adds up as it is printed. */
import { type Diagnostic, quote } from '../measure/index.ts';
import type { Edition } from '../measure/index.ts';
import type { Price, Role } from '../project/pattern.ts';

/** What an amount buys: a length in mm or one of what is counted, and how that is said. */
export type Per = Pick<Price, 'per' | 'words'>;

/** A price as it was used in the sum. */
export type Priced = {
  amount: number;
  per: Per;
  cost: number;
};

/** What is bought of a material: so much length in mm, or so many of what is counted. */
export type Bought = { length: number } | Partial<Record<'spool' | 'pack' | 'piece', number>>;

/** How many decimals a currency has: two for EUR, none for JPY. */
export const digitsOf = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;

/**
 * An amount of money as a language writes it.
 *
 * @example formatMoney(4.2, 'EUR', 'en-GB') // => '€4.20'
 */
export const formatMoney = (amount: number, currency: string, language: string): string =>
  new Intl.NumberFormat(language, { style: 'currency', currency }).format(amount);

const rounded = (amount: number, digits: number): number => Math.round(amount * 10 ** digits + 1e-6) / 10 ** digits;

/**
 * What a purchase costs; a finding where the price cannot be used, undefined where there is none.
 *
 * @param amount a price that goes before that of materials.yaml
 */
export function priced(
  role: Role,
  bought: Bought,
  { currency, edition }: { currency: string; edition: Edition },
  amount = role.material?.price?.amount,
): Priced | Diagnostic | undefined {
  const { material } = role;
  const place = ['materials', role.role];
  const severity = 'warning';
  if (amount === undefined || !material) return undefined;
  const name = quote(material.label);
  if (!(amount >= 0) || !Number.isFinite(amount)) {
    const message = `The price of ${name} is not a number of 0 or more, so it is left out.`;
    return { severity: 'error', place, code: 'bad price', message };
  }
  const own = material.price?.currency;
  if (own !== undefined && own !== currency && amount === material.price?.amount) {
    const message = `The price of ${name} is in ${own} and not in ${currency}, so it is left out of the sum.`;
    return { severity, place, code: 'other currency', message, fix: 'Give it in the currency of site.yaml.' };
  }
  const per = perOf(role, bought, edition);
  const units = unitsOf(bought, per.per);
  if (units === undefined) {
    const message = `The price of ${name} is for “${per.words}”, and it is not sold so.`;
    return { severity, place, code: 'price-per', message, fix: 'Let “per” and “sold” in materials.yaml agree.' };
  }
  return { amount, per, cost: rounded(amount * units, digitsOf(currency)) };
}

/** What a price is for: as materials.yaml says; else a yard or a metre, or one of what is counted. */
export function perOf({ material }: Role, bought: Bought, edition: Edition): Per {
  if (material?.price) return material.price;
  if ('length' in bought) return edition === 'inch' ? { per: 914.4, words: '1 yd' } : { per: 1000, words: '1 m' };
  const per = (['spool', 'pack', 'piece'] as const).find((unit) => bought[unit] !== undefined) ?? 'piece';
  return { per, words: per };
}

function unitsOf(bought: Bought, per: Per['per']): number | undefined {
  if ('length' in bought) return typeof per === 'number' ? bought.length / per : undefined;
  return typeof per === 'number' ? undefined : bought[per];
}
