/** How much of a cloth or an interfacing is bought: its pieces laid out on its own width. */
import { bounds, rectangle } from '../geometry/index.ts';
import { layOut, saleSteps, toBuy, wanted } from '../layout/index.ts';
import { type Diagnostic, quote } from '../measure/index.ts';
import { matchingOf } from '../project/matching.ts';
import { formatLength } from '../measure/index.ts';
import { inSizeWords, type Share } from './shares.ts';
import { JOIN, squaresForBias, stripsFor } from './strips.ts';
import type { Cloth, Demand, LayOptions, Layout, Purchase, Selling, Wanted } from '../layout/index.ts';
import type { Edition } from '../measure/index.ts';
import type { Material, Pattern, Piece, Role } from '../project/pattern.ts';

/** What is lost where the shop's end is cut straight. Common practice, no source. */
export const STRAIGHTENING: Readonly<Record<Edition, number>> = { inch: 25.4, metric: 25 };

/** Kinds of material that are bought by length and cut from a width. */
const byLength: ReadonlySet<Material['kind']> = new Set(['cloth', 'interfacing', 'batting']);

/** A role whose pieces are cut from a width of cloth. */
export const isCloth = ({ material }: Role): boolean => material !== undefined && byLength.has(material.kind);

/** A role whose pieces are lengths of what is as narrow as they are: cord, elastic, webbing, ribbon, piping cord. */
export const isByLength = ({ material }: Role): boolean => material?.kind === 'by length';

/** The pieces that are cut from a role. */
export const piecesOf = (pattern: Pattern, role: string): Piece[] =>
  Object.values(pattern.pieces).filter((piece) => piece.material === role);

export type ClothNeed = {
  /** Everything laid on one length. */
  layout: Layout;
  /** What to ask for. */
  buy: Purchase;
  /** One maker's share, bought by itself, of the largest where the makers make several sizes; the same as `buy` for one set. */
  single: Purchase;
  /** In the shop. */
  width: number;
  /** Once it is washed: what the pieces are laid on. */
  washed: number;
  findings: Diagnostic[];
};

/**
 * How wide cloth is once it is washed: what is left of the width in the shop.
 *
 * @param width in the shop, mm
 * @example washedWidth(1371.6, material) // => 1316.736, where it shrinks by 4 % across
 */
export const washedWidth = (width: number, material: Material): number =>
  width * (1 - (material.shrinksAcross ?? 0) / 100);

/** How cloth of a material is sold, in an edition. */
export const sellingOf = (material: Material, edition: Edition): Required<Selling> => ({
  step: (material.sold?.by === 'length' ? material.sold.each : undefined) ?? saleSteps[edition],
  shrinkage: material.shrinks ?? 0,
  straightening: material.straightening ?? (material.kind === 'by length' ? 0 : STRAIGHTENING[edition]),
});

/**
 * The pieces of a role as something to lay, for so many sets. A piece that may be joined from strips comes as strips
 * where it is longer than the cloth is wide.
 */
export function demandOf(pattern: Pattern, role: string, sets: number, width: number): Demand {
  const { matches, repeats } = matchingOf(pattern);
  const material = pattern.materials[role]?.material;
  return piecesOf(pattern, role).map((piece) => {
    if (material?.kind === 'by length') return times(endToEnd(piece, material, width), sets);
    const match = repeats.has(role) ? matches.get(piece.name) : undefined;
    const one = { ...wanted(piece), ...(match && { match }) };
    return times(
      piece.joined ? joinedFrom(one, stripsOf(piece, width - 2 * pattern.cutting.edge, pattern.edition)) : one,
      sets,
    );
  });
}

/** A length of goods as narrow as the goods, with what both of its ends lose. */
function endToEnd(piece: Piece, { ends = 0 }: Material, width: number): Wanted {
  const long = Math.max(piece.size.width, piece.size.height) + 2 * ends;
  return { ...wanted(piece), outline: rectangle(width, long), grain: 'lengthwise' };
}

const times = (one: Wanted, sets: number): Wanted => ({ ...one, count: one.count * sets });

/** How a piece that may be joined is cut: whole, as strips from selvage to selvage, or on the bias from squares. */
type Strips =
  { how: 'whole' } | { how: 'strips'; strips: number; width: number } | { how: 'bias'; squares: number; side: number };

/** Squares are cut by the marks that a long ruler shows well, in mm: quarters of an inch, and half centimetres. */
const SQUARE_STEP: Readonly<Record<Edition, number>> = { inch: 6.35, metric: 5 };

function stripsOf(piece: Piece, width: number, edition: Edition): Strips {
  const { width: across, height: up } = piece.size;
  const [length, narrow] = [Math.max(across, up), Math.min(across, up)];
  const join = piece.joinSeam ?? JOIN;
  if (piece.grain === 'bias') {
    // On the bias a strip lies corner to corner, and both its ends reach out.
    if ((length + narrow) / Math.SQRT2 <= width) return { how: 'whole' };
    const found = squaresForBias(length, narrow, width, join, SQUARE_STEP[edition]);
    return found ? { how: 'bias', ...found } : { how: 'whole' };
  }
  const strips = stripsFor(length, width, join);
  return strips <= 1 || !Number.isFinite(strips) ? { how: 'whole' } : { how: 'strips', strips, width };
}

function joinedFrom(one: Wanted, cut: Strips): Wanted {
  if (cut.how === 'whole') return one;
  const { width: across, height: up } = bounds(one.outline);
  // Neither strips that lie across the print nor squares go on in it from one to the next.
  const { match: _, ...rest } = one;
  return cut.how === 'bias'
    ? { ...rest, outline: rectangle(cut.side, cut.side), grain: 'lengthwise', count: one.count * cut.squares }
    : {
        ...rest,
        outline: rectangle(Math.min(across, up), cut.width),
        grain: 'crosswise',
        count: one.count * cut.strips,
      };
}

/**
 * How the strips of a cloth are cut and joined, in a sentence for each; undefined where nothing is joined.
 *
 * @example stripWords(pattern, 'outer', 1067)
 * // => '“Binding” is one strip on the bias, 60 in long and 1 1/2 in wide: cut it round and round from a square of 11 1/4 in.'
 */
export function stripWords(pattern: Pattern, role: string, width: number): string | undefined {
  const say = (mm: number): string => formatLength(mm, pattern.edition, { grid: pattern.grid });
  const words = piecesOf(pattern, role).flatMap((piece): string[] => {
    if (!piece.joined) return [];
    const cut = stripsOf(piece, width - 2 * pattern.cutting.edge, pattern.edition);
    const size = `${say(Math.max(piece.size.width, piece.size.height))} long and ${say(Math.min(piece.size.width, piece.size.height))} wide`;
    const seam = `a seam of ${say(piece.joinSeam ?? JOIN)}`;
    const what = `${quote(piece.label)} is ${piece.count > 1 ? `${piece.count} strips, each` : 'one strip'}`;
    if (cut.how === 'strips') return [`${what} ${size}: join ${cut.strips} strips cut across the cloth with ${seam}.`];
    if (cut.how === 'whole') return [];
    const squares = cut.squares === 1 ? 'a square' : `${cut.squares} squares`;
    const then = cut.squares === 1 ? `with ${seam}` : `with ${seam}, and join the strips`;
    return [`${what} on the bias, ${size}: cut it round and round from ${squares} of ${say(cut.side)}, ${then}.`];
  });
  return words.length === 0 ? undefined : words.join(' ');
}

/** The bolt that a role is cut from. */
export function boltOf(pattern: Pattern, role: Role, width: number): Cloth {
  const repeat = matchingOf(pattern).repeats.get(role.role);
  const nap = role.material?.nap ?? 'none';
  return { name: role.label, kind: 'bolt', width, nap, ...(repeat !== undefined && { repeat }) };
}

/**
 * Lays the pieces of a role out for so many sets; undefined where nothing is cut from it, or its width is not known.
 *
 * @param shares where the sets are of several sizes, so many of each
 */
export function clothNeed(
  pattern: Pattern,
  role: Role,
  sets: number,
  { shares = [{ pattern, sets }], ...options }: LayOptions & { width?: number; shares?: readonly Share[] } = {},
): ClothNeed | Diagnostic | undefined {
  const pieces = piecesOf(pattern, role.role);
  const { material } = role;
  if (pieces.length === 0 || !material) return undefined;
  const width = options.width ?? material.width;
  if (width === undefined)
    return {
      severity: 'error',
      place: ['materials', role.role],
      code: 'no width',
      message: `How wide ${quote(material.label)} is sold is not known, so no length can be worked out.`,
      fix: `Give ${quote(material.name)} a width in materials.yaml.`,
    };
  const { edition, cutting } = pattern;
  const selling = sellingOf(material, edition);
  // One length after the other, with nothing beside them.
  const manner = isByLength(role) ? { manner: 'straight cuts' as const, gap: 0, edge: 0 } : cutting;
  const laying = { ...manner, edition, ...options, selling };
  const washed = washedWidth(width, material);
  const bolt = boltOf(pattern, role, washed);
  const demand = shares.flatMap((share) => ofSize(demandOf(share.pattern, role.role, share.sets, washed), share));
  const layout = layOut(demand, [bolt], laying);
  const alone =
    sets === 1 && shares.length === 1
      ? [layout]
      : shares.map((share) => layOut(demandOf(share.pattern, role.role, 1, washed), [bolt], laying));
  // Whichever size a maker makes.
  const single = Math.max(...alone.map(({ length }) => length));
  const findings = layout.findings.map((finding) => inProject(finding, role));
  return { layout, buy: layout.buy, single: toBuy(single, selling), width, washed, findings };
}

/** Pieces of several sizes have names of their own, and a print is matched among those of one size. */
const ofSize = (demand: Demand, { size }: Share): Demand =>
  size === undefined
    ? demand
    : demand.map(({ match, ...one }) => ({
        ...one,
        name: inSizeWords(one.name, size),
        ...(one.label !== undefined && { label: inSizeWords(one.label, size) }),
        ...(match && { match: { ...match, group: inSizeWords(match.group, size) } }),
      }));

/** A finding of the layout at its place in the project file. */
export const inProject = (finding: Diagnostic, { role }: Role): Diagnostic =>
  finding.place[0] === 'pieces' && finding.place.length > 1 ? finding : { ...finding, place: ['materials', role] };
