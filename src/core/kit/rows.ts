/** The lines of a list in words and numbers, for a page, for paper and for a spreadsheet. */
import { formatLength } from '../measure/index.ts';
import { needleWords } from '../project/needle.ts';
import { shopAmount, shopLength } from './shop.ts';
import type { Edition, Style } from '../measure/index.ts';
import type { KitLine } from './kit.ts';

export type KitRow = {
  key: string;
  label: string;
  material: string;
  /** For what: the pieces, or the steps of a needle. */
  pieces: string[];
  /** What to ask for: 1 3/8 yd, 2 packs of 6, 3 spools of 100 m. */
  buy: string;
  /** The same as a number and its unit. */
  amount: number;
  unit: string;
  /** How it comes to that much, each part by itself. */
  how: { what: string; amount: string }[];
  /** A word on it. */
  note?: string;
  /** What the price is for: 1 yd, 1 pack. */
  per?: string;
};

/** Reads one line. Needles come as one line for each size. */
export function kitRows(line: KitLine, edition: Edition, style: Style = 'set'): KitRow[] {
  const { key, label, material, pieces, note, price } = line;
  const shared = {
    ...{ key, label, material, pieces },
    ...(note !== undefined && { note }),
    ...((price?.per ?? line.per) && { per: (price?.per ?? line.per)!.words }),
  };
  const say = (mm: number): string => formatLength(mm, edition, { style });
  const shop = (mm: number): string => shopLength(mm, edition, style);
  switch (line.kind) {
    case 'cloth': {
      const { buy, single, width, washed, layout } = line;
      const parts = [
        { what: 'as laid out', mm: buy.laid },
        { what: 'for shrinking', mm: buy.shrinkage },
        { what: 'to straighten the end', mm: buy.straightening },
        { what: 'to the next length sold', mm: buy.rounding },
      ];
      const how = parts
        .filter(({ what, mm }) => what === 'as laid out' || mm > 0.05)
        .map(({ what, mm }) => ({ what, amount: say(mm) }));
      if (layout.proven) how[0]!.what = 'as laid out, proven shortest';
      return [
        {
          ...shared,
          buy: buy.total > 0 ? `${shop(buy.total)}, ${say(width)} wide` : 'nothing',
          ...shopAmount(buy.total, edition),
          how: [
            ...how,
            ...(washed < width - 0.05 ? [{ what: 'wide once washed', amount: say(washed) }] : []),
            ...(single.total === buy.total ? [] : [{ what: 'for one alone', amount: shop(single.total) }]),
          ],
        },
      ];
    }
    case 'thread': {
      const { thread, waste, spool, spools, byLength, total } = line;
      return [
        {
          ...shared,
          buy: `${spools} ${spools === 1 ? 'spool' : 'spools'} of ${shop(spool)}`,
          amount: spools,
          unit: 'spool',
          how: [
            { what: 'in one maker’s stitches', amount: shop(about(thread)) },
            { what: 'for ends and unpicking', amount: shop(about(waste)) },
            { what: 'for all', amount: shop(about(total)) },
            ...(spools > byLength ? [{ what: 'one at each machine', amount: String(spools) }] : []),
          ],
        },
      ];
    }
    case 'counted': {
      const { needed, pack, packs, over, length } = line;
      const long = length === undefined ? '' : `, ${say(length)} long or longer`;
      const inPacks = pack > 1;
      return [
        {
          ...shared,
          buy: (inPacks ? `${packs} ${packs === 1 ? 'pack' : 'packs'} of ${pack}` : String(needed)) + long,
          amount: inPacks ? packs : needed,
          unit: inPacks ? 'pack' : 'piece',
          how: [
            ...(inPacks ? [{ what: 'needed', amount: String(needed) }] : []),
            ...(over > 0 ? [{ what: 'left over', amount: String(over) }] : []),
          ],
        },
      ];
    }
    case 'needles':
      return line.needles.map(({ suits, count, steps }): KitRow => {
        return {
          ...shared,
          label: suits.raised > 0 ? 'Needles for thick stacks' : 'Needles',
          buy: `${count} of ${needleWords(suits)}`,
          amount: count,
          unit: 'piece',
          pieces: steps,
          how: [],
        };
      });
  }
}

/** Thread is never known to the millimetre: to the next 10 cm, or to the next 1/8 yd. */
const about = (mm: number): number => Math.ceil(mm / 100) * 100;
