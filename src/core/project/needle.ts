/** Which needle and stitch length suit a row. The machine's manual and a scrap go before any table. */

export type Weight = 'light' | 'medium' | 'heavy' | 'very heavy';

/** universal: for woven cloth. jeans: slender and stiff, for dense cloth and thick stacks. leather: it cuts its way. */
export type NeedlePoint = 'universal' | 'jeans' | 'leather';

/** From and to. */
export type ThicknessRange = readonly [number, number];

/** What a needle has to go through. */
export type NeedleStack = {
  /** Of all layers together, pressed flat, mm. */
  thickness: number;
  /** One layer of the thickest cloth in it, mm; 0 where that is not known. */
  cloth: number;
  /** The point that a material of it asks for. */
  point?: NeedlePoint;
};

export type Suits = {
  /** Of the whole stack. */
  weight: Weight;
  /** Needle size NM: a hundred times the blade's diameter in mm (DIN 5325, as relayed by a page on needle numbers). */
  nm: number;
  /** The same by the other number printed on the packet: US = 8 + (NM - 60) / 5. */
  us: number;
  point: NeedlePoint;
  /** By how many sizes the stack raises what the cloth alone would take. */
  raised: 0 | 1 | 2;
  /** Stitch length in mm. */
  stitch: ThicknessRange;
};

/**
 * Needles by the cloth, one layer of it: 70 for lawn and batiste, 80 for muslin and light linen, 90 for linen and light
 * twill, 100 for denim (Treadle Yard Goods, 2021). The bounds in mm are common practice, no source; denim measures 0.80
 * to 1.19 mm (Journal of Textiles 2016, article 4614168, table 5).
 */
const byCloth: readonly { upTo: number; nm: number }[] = [
  { upTo: 0.25, nm: 70 },
  { upTo: 0.45, nm: 80 },
  { upTo: 0.75, nm: 90 },
  { upTo: Infinity, nm: 100 },
];
/** Where the thickness of a cloth is not known, the needle that a machine is sold with. Common practice, no source. */
const USUAL = 80;

/**
 * A thick stack raises the needle by a size, a very thick one by two, never beyond NM 110. Jeans needles are made up to
 * it (a shop's guide to one maker's needles, sewansome); universal ones go to 120, which bends in a home machine's stack
 * all the same: common practice, no source.
 */
const LARGEST = 110;

/**
 * Stitch lengths: 1 to 2 mm in light cloth and 2 to 3 mm in an ordinary seam (course notes on stitch lengths); longer
 * ones for thick stacks are common practice, no source. `upTo` in mm of all layers together. The bounds are common
 * practice, no source.
 */
const byStack: readonly { weight: Weight; upTo: number; raised: Suits['raised']; stitch: ThicknessRange }[] = [
  { weight: 'light', upTo: 0.45, raised: 0, stitch: [1, 2] },
  { weight: 'medium', upTo: 1.5, raised: 0, stitch: [2, 3] },
  { weight: 'heavy', upTo: 3, raised: 1, stitch: [3, 3.5] },
  { weight: 'very heavy', upTo: Infinity, raised: 2, stitch: [3.5, 4] },
];

const within = <T extends { upTo: number }>(table: readonly T[], mm: number): T =>
  table.find(({ upTo }) => mm <= upTo + 1e-9) ?? table.at(-1)!;

/**
 * How heavy a stack is to sew.
 *
 * @param thickness of all layers together, in mm
 * @example weightOf(2) // => 'heavy'
 */
export const weightOf = (thickness: number): Weight => within(byStack, thickness).weight;

/**
 * The needle and the stitch length for a stack: chosen by its cloth, raised by at most two sizes for its thickness.
 *
 * @example
 * suits({ thickness: 0.6, cloth: 0.3 }) // => { weight: 'medium', nm: 80, us: 12, point: 'universal', … }
 * suits({ thickness: 3.5, cloth: 0.35 }).nm // => 100
 */
export function suits({ thickness, cloth, point }: NeedleStack): Suits {
  const { weight, raised: wished, stitch } = within(byStack, thickness);
  const own = cloth > 0 ? within(byCloth, cloth).nm : USUAL;
  const nm = Math.min(LARGEST, own + 10 * wished);
  const raised = ((nm - own) / 10) as Suits['raised'];
  return { weight, nm, us: 8 + (nm - 60) / 5, point: point ?? (nm >= 100 ? 'jeans' : 'universal'), raised, stitch };
}

/**
 * The needle as it is asked for.
 *
 * @example needleWords(suits({ thickness: 0.6, cloth: 0.3 })) // => 'NM 80 (US 12), universal'
 */
export const needleWords = ({ nm, us, point }: Pick<Suits, 'nm' | 'us' | 'point'>): string =>
  `NM ${nm} (US ${us}), ${point}`;
