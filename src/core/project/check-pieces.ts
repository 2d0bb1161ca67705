/** Whether each piece can be measured, and can lie on the cloth it is cut from. */
import { type Diagnostic, formatLength, isOnGrid, listed, quote, SAME } from '../measure/index.ts';
import { bounds, rotate, sides } from '../geometry/index.ts';

import type { Material, Pattern, Piece } from './pattern.ts';

const CUT_FROM_WIDTH: ReadonlySet<string> = new Set(['cloth', 'interfacing', 'batting']);

/**
 * A piece that is cut in one must fit across its cloth, the way its grain lies. Along the cloth it may be as long as
 * it likes; a strip that may be joined is cut as several.
 */
export function checkCloth(pattern: Pattern): Diagnostic[] {
  return Object.values(pattern.pieces).flatMap((piece): Diagnostic[] => {
    const material = pattern.materials[piece.material]?.material;
    if (material?.kind === 'by length') return asWideAsGoods(pattern, piece, material);
    if (!material?.width || !CUT_FROM_WIDTH.has(material.kind) || piece.joined) return [];
    // Pieces are laid on washed cloth.
    const room = material.width * (1 - (material.shrinksAcross ?? 0) / 100) - 2 * pattern.cutting.edge;
    const across = acrossOf(piece);
    if (across <= room + SAME) return [];
    const say = (mm: number) => formatLength(mm, pattern.edition, { grid: pattern.grid });
    const message =
      `${quote(piece.label)} needs ${say(across)} across the cloth, cut ${howOf(piece)}. ` +
      `${quote(material.label)} is ${say(room)} wide${material.shrinksAcross ? ' once washed' : ''}.`;
    const place = ['pieces', piece.name];
    return [
      { severity: 'error', place, code: 'wider-than-cloth', message, fix: fixOf(piece, room), amount: across - room },
    ];
  });
}

/** A length of cord or webbing is as wide as the shop has it. */
function asWideAsGoods(pattern: Pattern, piece: Piece, { label, width }: Material): Diagnostic[] {
  const narrow = Math.min(piece.size.width, piece.size.height);
  if (width === undefined || Math.abs(narrow - width) <= SAME) return [];
  const say = (mm: number) => formatLength(mm, pattern.edition, { grid: pattern.grid });
  const message = `${quote(piece.label)} is ${say(narrow)} wide, and ${quote(label)} is ${say(width)} wide: a length of it is as wide as it is bought.`;
  const fix = `Write its size with ${say(width)}, and no allowance along its sides, or take goods of another width.`;
  const place = ['pieces', piece.name];
  return [{ severity: 'error', place, code: 'other-width', message, fix, amount: narrow - width }];
}

/** How much of the width a piece takes; of one without a grain, the way it takes least. */
function acrossOf({ size, grain, cutOutline }: Piece): number {
  switch (grain) {
    case 'lengthwise':
      return size.width;
    case 'crosswise':
      return size.height;
    case 'any':
      return Math.min(size.width, size.height);
    case 'bias':
      return Math.min(...[45, 135].map((angle) => bounds(rotate(cutOutline, angle)).width));
  }
}

const howOf = ({ grain }: Piece): string => (grain === 'bias' ? 'on the bias' : grain === 'any' ? 'either way' : grain);

function fixOf({ size, grain }: Piece, room: number): string {
  const other = grain === 'crosswise' ? size.width : size.height;
  const turn = grain === 'lengthwise' ? 'crosswise' : 'lengthwise';
  const turned = grain !== 'any' && grain !== 'bias' && other <= room + SAME ? `Cut it ${turn} (grain: ${turn}), ` : '';
  return `${turned === '' ? 'Let' : `${turned}let`} it be joined (may be joined: true), or take a wider cloth.`;
}

/**
 * A cut size that a formula brings between two marks is shown rounded; the author should know. Where a stated measure
 * lies between marks that has its note already, and the sizes that follow from it have none.
 */
export function noteOffRuler({ pieces, edition, grid, findings }: Pattern): Diagnostic[] {
  if (findings.some(({ code }) => code === 'off-grid')) return [];
  return Object.values(pieces).flatMap((piece): Diagnostic[] => {
    // Any other shape is cut by a template.
    if (!isUpright(piece)) return [];
    const off = (['width', 'height'] as const).filter((what) => !isOnGrid(piece.size[what], edition, grid));
    if (off.length === 0) return [];
    const shown = off.map(
      (what) => `${quote(formatLength(piece.size[what], edition, { grid }))} ${what === 'width' ? 'wide' : 'high'}`,
    );
    const message = `${quote(piece.label)} is cut between two marks of the ${edition} ruler. Pages show it ${listed(shown)}.`;
    const fix = 'Round its formula, such as “round up width / 3 to 1/8 in”, or choose other measures.';
    return [{ severity: 'note', place: ['pieces', piece.name], code: 'off-ruler', message, fix }];
  });
}

/** Whether all edges run across or up: a shape that is cut along a ruler. */
const isUpright = ({ cutOutline }: Piece): boolean =>
  sides(cutOutline).every(
    ({ from, to, bulge }) => bulge === 0 && Math.min(Math.abs(from.x - to.x), Math.abs(from.y - to.y)) < SAME,
  );
