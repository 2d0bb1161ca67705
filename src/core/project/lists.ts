/** Rows for the tables of a lesson: what to cut, and what to have at hand. */
import { formatLength, listed } from '../measure/index.ts';
import type { Pattern, Piece, Role, Size } from './pattern.ts';

export type CutRow = {
  piece: string;
  label: string;
  count: number;
  /** The material’s label, or its role where the file names no material. */
  from: string;
  /** Cut size in mm. */
  size: Size;
  grain: Piece['grain'];
  /** Short phrases: `10 fold lines`, `rounded at bottom-left corner`. */
  notes: string[];
};

/**
 * The cutting list, in the file’s order.
 *
 * @example cutList(resolveProject(file))[0].label // => 'Pocket strip'
 */
export function cutList(pattern: Pattern): CutRow[] {
  return Object.values(pattern.pieces).map((piece) => ({
    piece: piece.name,
    label: piece.label,
    count: piece.count,
    from: roleOf(pattern, piece)?.label ?? piece.material,
    size: piece.size,
    grain: piece.grain,
    notes: notesOf(piece, pattern),
  }));
}

/** Whether a piece goes onto the wrong side of another: it has no right side of its own. */
export function stiffens(piece: Piece, materials: Pattern['materials']): boolean {
  const kind = materials[piece.material]?.material?.kind;
  return kind === 'interfacing' || kind === 'batting';
}

function notesOf(piece: Piece, { edition, grid, materials, pieces }: Pattern): string[] {
  const notes: string[] = [];
  if (piece.nap === 'up') notes.push('print or pile upright');
  if (piece.pleats) {
    const folds = piece.pleats.folds.length;
    notes.push(
      `${folds} fold lines, pleated to ${formatLength(piece.pleats.panelHeight, edition, { grid, style: 'set' })}`,
    );
  }
  if (piece.edgePleats) {
    const { kind, count, depth, pleated, edge } = piece.edgePleats;
    const set = (mm: number) => formatLength(mm, edition, { grid, style: 'set' });
    notes.push(`${count} ${kind} pleat${count === 1 ? '' : 's'} of ${set(depth)}, ${edge} pleated to ${set(pleated)}`);
  }
  const shaped = piece.cutOutline.filter((edge) => piece.corners.includes(edge.name));
  if (shaped.length > 0) {
    const how = shaped.every((edge) => edge.bulge !== 0) ? 'rounded' : 'shaped';
    notes.push(
      `${how} at the ${listed([...new Set(shaped.map((edge) => edge.name.replace(' corner', '')))])} corner${shaped.length > 1 ? 's' : ''}`,
    );
  }
  if (piece.insetFrom !== undefined && stiffens(piece, materials))
    notes.push(`for ${pieces[piece.insetFrom]?.label ?? piece.insetFrom}`);
  if (piece.note !== undefined) notes.push(piece.note);
  return notes;
}

export type MaterialRow = {
  role: string;
  label: string;
  /** The material’s own label. */
  material: string;
  kind?: NonNullable<Role['material']>['kind'];
  /** Labels of the pieces cut from it. */
  pieces: string[];
  /** How many, for what is counted. */
  count?: number;
  note?: string;
};

/**
 * The materials list, in the file’s order; a role that nothing is cut from and nobody counts is left out.
 *
 * @example materialsList(resolveProject(file)).map((row) => row.label) // => ['Print for the cover and the flap', 'Lining']
 */
export function materialsList(pattern: Pattern): MaterialRow[] {
  return Object.values(pattern.materials).flatMap((role): MaterialRow[] => {
    const pieces = Object.values(pattern.pieces).filter((piece) => piece.material === role.role);
    if (pieces.length === 0 && role.count === undefined) return [];
    const note = role.note ?? role.material?.note;
    return [
      {
        role: role.role,
        label: role.label,
        material: role.material?.label ?? role.use,
        ...(role.material && { kind: role.material.kind }),
        pieces: pieces.map((piece) => piece.label),
        ...(role.count !== undefined && { count: role.count }),
        ...(note !== undefined && { note }),
      },
    ];
  });
}

const roleOf = (pattern: Pattern, piece: Piece): Role | undefined =>
  Object.hasOwn(pattern.materials, piece.material) ? pattern.materials[piece.material] : undefined;
