/** How much of a cloth or an interfacing is bought: its pieces laid out on its own width. */
import { bounds, rectangle } from '../geometry/index.ts';
import { layOut, soldIn, toBuy, wanted } from '../layout/index.ts';
import { quote } from '../measure/index.ts';
import { matchingOf } from '../project/matching.ts';
import { JOIN, stripsFor } from './strips.ts';
import type { Cloth, Demand, LayOptions, Layout, Purchase, Selling, Wanted } from '../layout/index.ts';
import type { Edition } from '../measure/index.ts';
import type { Finding, Material, Pattern, Piece, Role } from '../project/pattern.ts';

/** What is lost where the shop's end is cut straight. Common practice, no source. */
export const STRAIGHTENING: Readonly<Record<Edition, number>> = { inch: 25.4, metric: 25 };

/** Kinds of material that are bought by length and cut from a width. */
const byLength: ReadonlySet<Material['kind']> = new Set(['cloth', 'interfacing', 'batting']);

/** A role whose pieces are cut from a width of cloth. */
export const isCloth = ({ material }: Role): boolean => material !== undefined && byLength.has(material.kind);

/** The pieces that are cut from a role. */
export const piecesOf = (pattern: Pattern, role: string): Piece[] =>
  Object.values(pattern.pieces).filter((piece) => piece.material === role);

export type ClothNeed = {
  /** Everything laid on one length. */
  layout: Layout;
  /** What to ask for. */
  buy: Purchase;
  /** One maker's share, bought by itself; the same as `buy` for one set. */
  single: Purchase;
  width: number;
  findings: Finding[];
};

/** How cloth of a material is sold, in an edition. */
export const sellingOf = (material: Material, edition: Edition): Required<Selling> => ({
  step: (material.sold?.by === 'length' ? material.sold.each : undefined) ?? soldIn[edition],
  shrinkage: material.shrinks ?? 0,
  straightening: material.straightening ?? STRAIGHTENING[edition],
});

/**
 * The pieces of a role as something to lay, for so many sets. A piece that may be joined from strips comes as strips
 * where it is longer than the cloth is wide.
 */
export function demandOf(pattern: Pattern, role: string, sets: number, width: number): Demand {
  const { matches, repeats } = matchingOf(pattern);
  return piecesOf(pattern, role).map((piece) => {
    const match = repeats.has(role) ? matches.get(piece.name) : undefined;
    const one = { ...wanted(piece), ...(match && { match }) };
    return times(piece.joined ? inStrips(one, width) : one, sets);
  });
}

const times = (one: Wanted, sets: number): Wanted => ({ ...one, count: one.count * sets });

function inStrips(one: Wanted, width: number): Wanted {
  const { width: across, height: up } = bounds(one.outline);
  const [length, narrow] = [Math.max(across, up), Math.min(across, up)];
  const strips = stripsFor(length, width, JOIN);
  if (strips <= 1 || !Number.isFinite(strips)) return one;
  // Strips lie across the print: nothing of it goes on from one to the next.
  const { match: _, ...rest } = one;
  return { ...rest, outline: rectangle(narrow, width), grain: 'crosswise', count: one.count * strips };
}

/** The bolt that a role is cut from. */
export function boltOf(pattern: Pattern, role: Role, width: number): Cloth {
  const repeat = matchingOf(pattern).repeats.get(role.role);
  const nap = role.material?.nap ?? 'none';
  return { name: role.label, kind: 'bolt', width, nap, ...(repeat !== undefined && { repeat }) };
}

/** Lays the pieces of a role out for so many sets; undefined where nothing is cut from it, or its width is not known. */
export function clothNeed(
  pattern: Pattern,
  role: Role,
  sets: number,
  options: LayOptions & { width?: number } = {},
): ClothNeed | Finding | undefined {
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
      mend: `Give ${quote(material.name)} a width in materials.yaml.`,
    };
  const { edition, cutting } = pattern;
  const selling = sellingOf(material, edition);
  const laying = { ...cutting, edition, ...options, selling };
  const bolt = boltOf(pattern, role, width);
  const layout = layOut(demandOf(pattern, role.role, sets, width), [bolt], laying);
  const single = sets === 1 ? layout : layOut(demandOf(pattern, role.role, 1, width), [bolt], laying);
  const findings = layout.findings.map((finding) => inProject(finding, role));
  return { layout, buy: layout.buy, single: toBuy(single.length, selling), width, findings };
}

/** A finding of the layout at its place in the project file. */
export const inProject = (finding: Finding, { role }: Role): Finding =>
  finding.place[0] === 'pieces' && finding.place.length > 1 ? finding : { ...finding, place: ['materials', role] };
