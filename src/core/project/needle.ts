/** Which needle and stitch length suit a stack of layers. The machine's manual and a scrap go before any table. */

export type Weight = 'light' | 'medium' | 'heavy' | 'very heavy';

/** From and to. */
export type Span = readonly [number, number];

export type Suits = {
  weight: Weight;
  /** Needle size NM: a hundred times the blade's diameter in mm (DIN 5325, as relayed by a page on needle numbers). */
  nm: Span;
  /** The same by the other number printed on the packet. */
  us: Span;
  /** Stitch length in mm. */
  stitch: Span;
};

/**
 * Needles by the weight of cloth: woven light, medium and heavy, and heavy denim (Texpedia, Needles for stitching
 * textiles, 2013). Stitch lengths: 1 to 2 mm in light cloth and 2 to 3 mm in an ordinary seam (course notes on stitch
 * lengths); longer ones for thick stacks are common practice, no source.
 *
 * `upTo` in mm of all layers together, pressed flat. The bounds are common practice, no source. Two layers of denim,
 * which measures 0.80 to 1.19 mm (Journal of Textiles 2016, article 4614168, table 5), fall under heavy.
 */
const table: readonly (Suits & { upTo: number })[] = [
  { weight: 'light', upTo: 0.45, nm: [65, 75], us: [9, 11], stitch: [1, 2] },
  { weight: 'medium', upTo: 1.5, nm: [80, 90], us: [12, 14], stitch: [2, 3] },
  { weight: 'heavy', upTo: 3, nm: [100, 110], us: [16, 18], stitch: [3, 3.5] },
  { weight: 'very heavy', upTo: Infinity, nm: [110, 140], us: [18, 22], stitch: [3.5, 4] },
];

/**
 * The needle and the stitch length that suit a stack.
 *
 * @param thickness of all layers together, in mm
 * @example
 * suits(0.6).nm // => [80, 90]
 * suits(2).weight // => 'heavy'
 */
export function suits(thickness: number): Suits {
  const { weight, nm, us, stitch } = table.find(({ upTo }) => thickness <= upTo + 1e-9) ?? table.at(-1)!;
  return { weight, nm, us, stitch };
}
