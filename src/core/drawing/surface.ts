import type { Pattern, Piece } from '../project/pattern.ts';
import type { ShapeRole } from './scene.ts';
import type { DrawingSetting } from './sheet.ts';

/** What the drawings of pieces need to know. A Pattern's own `edition`, `grid`, `materials` and `pieces` will do. */
export type PieceSetting = DrawingSetting & { materials?: Pattern['materials']; pieces?: Pattern['pieces'] };

/** What shows of a piece that lies right side up: role and material say whether it is a lining or an interfacing. */
export function surfaceOf(piece: Pick<Piece, 'material'>, materials: Pattern['materials'] = {}): ShapeRole {
  const kind = materials[piece.material]?.material?.kind;
  if (kind === 'interfacing' || kind === 'batting') return 'interfacing';
  return materials[piece.material]?.lining ? 'lining' : 'right side';
}

/** The legend's words for the surface, where the material has better ones. */
export function surfaceWords(piece: Piece, materials: Pattern['materials'] = {}): Partial<Record<ShapeRole, string>> {
  return materials[piece.material]?.material?.kind === 'batting' ? { interfacing: 'batting' } : {};
}
