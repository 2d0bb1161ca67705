import { drawPiece, type Pattern, type Scene } from '../../../src/core/index.ts';
import type { ViewContext } from '../word.ts';
import type { Attributes } from './word.ts';

/** The drawing of the piece; no scene where the project leaves it out. */
export function view(pattern: Pattern, { name }: Attributes, { fit }: ViewContext): { scene?: Scene } {
  const piece = pattern.pieces[name];
  return piece ? { scene: drawPiece(piece, { ...pattern, ...(fit && { fit }) }) } : {};
}
