/** Pieces to draw: by hand where a test says what it expects, and any that can be sewn for the laws. */
import fc from 'fast-check';
import { addAllowance, bounds, planPleats, rectangle, translate, withCorners } from '../../../src/core/index.ts';
import type { Edition, Grid, HoldCheck, Outline, Piece, Pleated, PleatSettings } from '../../../src/core/index.ts';

type Edges = { bottom: number; right: number; top: number; left: number };

export function pieceOf(stitch: Outline, allowance: Record<string, number>, more: Partial<Piece> = {}): Piece {
  const cut = addAllowance(stitch, allowance);
  if (!cut.ok) throw new Error(cut.fault.message);
  const { x, y, width, height } = bounds(cut.value);
  const sewn = bounds(stitch);
  return {
    name: 'piece',
    label: 'Piece',
    material: 'outer',
    count: 1,
    outline: translate(stitch, { x: -x, y: -y }),
    corners: [...new Set(stitch.map(({ name }) => name))].filter((name) => name.endsWith(' corner')),
    cutOutline: translate(cut.value, { x: -x, y: -y }),
    allowance,
    size: { width, height },
    sewn: { width: sewn.width, height: sewn.height },
    grain: 'lengthwise',
    nap: 'any',
    folds: [],
    notches: [],
    darts: [],
    ...more,
  };
}

export function stripOf(width: number, wish: PleatSettings, sides = { left: 6, right: 6 }): Pleated {
  const planned = planPleats(wish);
  if (!planned.ok) throw new Error(planned.fault.code);
  const pleats = planned.value;
  const allowance: Edges = { ...sides, bottom: wish.allowance.bottom, top: wish.allowance.top };
  const cut = { width: width + sides.left + sides.right, height: pleats.stripLength };
  const stitch = rectangle(width, cut.height - allowance.bottom - allowance.top);
  const folds = pleats.folds.map(({ at, kind, pocket }) => ({
    kind,
    edge: pleats.from,
    at: pleats.from === 'top' ? pleats.stripLength - at : at,
    from: { x: 0, y: at },
    to: { x: cut.width, y: at },
    pocket,
  }));
  const sewn = { width, height: pleats.panelHeight - allowance.bottom - allowance.top };
  return { ...pieceOf(stitch, allowance, { name: 'pocket strip', label: 'Pocket strip', folds, sewn }), pleats };
}

/** Five stepped pockets, as a course might have them; metric, all worked out by hand. */
export const fivePockets = (): Pleated =>
  stripOf(117, { pockets: 5, depth: 70, step: 20, lift: 10, head: 30, allowance: { bottom: 6, top: 6 } });

/** Something to put into a pocket of the strip. */
export const heldIn = (pocket: number, width: number, height: number): HoldCheck => ({
  state: 'open',
  what: 'a card',
  thing: 'Card',
  size: { width, height },
  source: 'project file',
  piece: 'pocket strip',
  pocket,
  place: ['holds', 0],
  fits: true,
  room: { width: 0, height: 0 },
  covered: 1,
  cover: 0.5,
  shows: 0,
  sentence: 'A card fits.',
});

const tenths = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((n) => n / 10);
const edges = fc.record({ bottom: tenths(0, 30), right: tenths(0, 30), top: tenths(0, 30), left: tenths(0, 30) });
const words = fc.stringMatching(/^[A-Za-zäéñ]{1,14}( [A-Za-z,]{1,16}){0,4}$/);

export const anyEdition = fc.constantFrom<Edition>('inch', 'metric');
export const anyGrid = fc.record<Grid>({ inch: fc.constantFrom(8, 16, 32), metric: fc.constantFrom(1, 0.5, 0.1) });

/** The room from 256 px, inside a box on a phone, to a wide screen, in mm. */
export const anyWidth = tenths(67, 300);

/** Any plain piece: rectangular or with rounded corners, with folds, notches and a grain. */
export const anyPiece: fc.Arbitrary<Piece> = fc
  .record({
    width: tenths(20, 1500),
    height: tenths(20, 1500),
    allowance: edges,
    rounded: fc.boolean(),
    label: words,
    count: fc.integer({ min: 1, max: 12 }),
    grain: fc.constantFrom<Piece['grain']>('lengthwise', 'crosswise', 'bias', 'any'),
    folds: fc.array(
      fc.record({
        share: fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        edge: fc.constantFrom<'bottom' | 'left' | 'top' | 'right'>('bottom', 'left', 'top', 'right'),
        kind: fc.constantFrom<'valley' | 'mountain'>('valley', 'mountain'),
        label: fc.option(words, { nil: undefined }),
      }),
      { maxLength: 4 },
    ),
    notched: fc.boolean(),
  })
  .map(({ width, height, allowance, rounded, label, count, grain, folds, notched }) => {
    const plain = rectangle(width, height);
    const radius = Math.min(width, height) / 4;
    const shaped = withCorners(plain, { 'bottom-left corner': { rounded: radius } });
    if (!shaped.ok) throw new Error(shaped.fault.message);
    const corner = Math.max(allowance.bottom, allowance.left);
    const piece = rounded
      ? pieceOf(
          shaped.value,
          { ...allowance, bottom: corner, left: corner, 'bottom-left corner': corner },
          { label, count, grain },
        )
      : pieceOf(plain, allowance, { label, count, grain });
    const { width: across, height: high } = piece.size;
    return {
      ...piece,
      folds: folds.map(({ share, edge, kind, label }) => {
        const lies = edge === 'bottom' || edge === 'top';
        const place = share * (lies ? high : across);
        const at = edge === 'bottom' || edge === 'left' ? place : (lies ? high : across) - place;
        const from = lies ? { x: 0, y: place } : { x: place, y: 0 };
        const to = lies ? { x: across, y: place } : { x: place, y: high };
        return { kind, edge, at, from, to, ...(label !== undefined && { label }) };
      }),
      notches: notched ? [{ edge: 'top', at: { x: across / 2, y: high } }] : [],
    };
  });

/** Any strip of pleats that can be folded. */
export const anyStrip: fc.Arbitrary<Pleated> = fc
  .record({
    width: tenths(30, 600),
    pockets: fc.integer({ min: 1, max: 24 }),
    depth: tenths(8, 300),
    step: tenths(3, 120),
    lift: tenths(0, 50),
    head: tenths(0, 80),
    allowance: edges,
    spare: fc.oneof(fc.constant(0), tenths(0, 90)),
    from: fc.constantFrom<'bottom' | 'top'>('bottom', 'top'),
    bottoms: fc.constantFrom<'stepped' | 'level'>('stepped', 'level'),
  })
  .map(({ width, head, spare, allowance, ...wish }) => {
    const least = { ...wish, head: head + allowance.top, allowance };
    const planned = planPleats(least);
    if (!planned.ok) throw new Error(planned.fault.code);
    const { stripLength, panelHeight } = planned.value;
    const { head: _, ...rest } = least;
    // With some cloth to spare, there is something to trim off.
    const given = spare > 0 ? { ...rest, length: stripLength + spare, height: panelHeight } : least;
    return stripOf(width, given, allowance);
  });

/** Anything that may or may not fit a pocket. */
export const anyHeld = fc
  .tuple(fc.integer({ min: 1, max: 24 }), tenths(10, 700), tenths(10, 500))
  .map(([pocket, width, height]) => heldIn(pocket, width, height));
