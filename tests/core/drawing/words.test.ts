/** Whoever cannot see a drawing gets the same numbers in its text. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { drawPiece, drawPleatedFront, drawPleatSection, drawStrip } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';
import { anyEdition, anyPiece, anyStrip, fivePockets } from './pieces.ts';
import { unsaid } from './read.ts';

describe('the text beside a drawing', () => {
  it('says every length that a piece shows', () => {
    fc.assert(
      fc.property(anyPiece, anyEdition, (piece, edition) => {
        expect(unsaid(drawPiece(piece, { edition, fit: { width: 300 } }), edition)).toEqual([]);
      }),
      runs(300),
    );
  });

  it('says every length that pleats show', () => {
    fc.assert(
      fc.property(anyStrip, anyEdition, fc.double({ min: 0, max: 1, noNaN: true }), (strip, edition, share) => {
        const folds = Math.round(share * strip.pleats.folds.length);
        for (const draw of [drawStrip, drawPleatedFront, drawPleatSection]) {
          expect(unsaid(draw(strip, { edition }), edition)).toEqual([]);
          expect(unsaid(draw(strip, { edition, folds }), edition)).toEqual([]);
        }
      }),
      runs(150),
    );
  });

  it('reads as sentences', () => {
    expect(drawPleatedFront(fivePockets(), { edition: 'metric' }).text.slice(0, 3)).toEqual([
      'Pocket strip, folded and trimmed, seen from the front: 129 millimetres wide and 196 millimetres high, seam allowances included.',
      'The seam allowance at the bottom is 6 millimetres.',
      'Pocket 1: its top is 86 millimetres above the bottom edge; it is 70 millimetres deep and shows 80 millimetres.',
    ]);
    expect(drawStrip(fivePockets(), { edition: 'metric' }).text.slice(1, 3)).toEqual([
      'Fold 1, for pocket 1: a mountain fold, 86 millimetres from the bottom edge.',
      'Fold 2, for pocket 1: a valley fold, 156 millimetres from the bottom edge, 70 millimetres from fold 1.',
    ]);
  });
});
