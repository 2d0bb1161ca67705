import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  drawPiece,
  drawPleatedFront,
  drawPleatSection,
  drawStrip,
  NARROWEST,
  rectangle,
} from '../../../src/core/index.ts';
import { runs } from '../../random.ts';
import { anyEdition, anyGrid, anyHeld, anyPiece, anyStrip, anyWidth, fivePockets, pieceOf } from './pieces.ts';
import { faults } from './read.ts';

const anySetting = fc.record({ edition: anyEdition, grid: anyGrid, fit: fc.record({ width: anyWidth }) });

describe('every drawing can be read', () => {
  it('of any piece, in any room', () => {
    fc.assert(
      fc.property(anyPiece, anySetting, (piece, setting) => {
        expect(faults(drawPiece(piece, setting))).toEqual([]);
      }),
      runs(600),
    );
  });

  it('of any strip, flat', () => {
    fc.assert(
      fc.property(anyStrip, anySetting, fc.double({ min: 0, max: 1, noNaN: true }), (strip, setting, share) => {
        const folds = Math.round(share * strip.pleats.folds.length);
        expect(faults(drawStrip(strip, { ...setting, folds }))).toEqual([]);
        expect(faults(drawPiece(strip, setting))).toEqual([]);
      }),
      runs(300),
    );
  });

  it('of any strip, folded or on its way, from the front and from the side', () => {
    fc.assert(
      fc.property(
        anyStrip,
        anySetting,
        fc.option(fc.double({ min: 0, max: 1, noNaN: true }), { nil: undefined }),
        fc.option(anyHeld, { nil: undefined }),
        (strip, any, share, held) => {
          const folds = share === undefined ? {} : { folds: share * strip.pleats.folds.length };
          const setting = { ...any, ...folds, ...(held && { held }) };
          expect(faults(drawPleatedFront(strip, setting))).toEqual([]);
          expect(faults(drawPleatSection(strip, setting))).toEqual([]);
        },
      ),
      runs(400),
    );
  });

  it('in a room that is narrower than a phone, which is taken for a phone', () => {
    const scene = drawPleatedFront(fivePockets(), { edition: 'inch', fit: { width: 12 } });
    expect(faults(scene)).toEqual([]);
    expect(scene.width).toBe(60);
  });

  it('with a name as long as a sentence, and one that is a single long word', () => {
    const label = 'Facing behind the pockets with the interfacing that is fused to its wrong side';
    const piece = pieceOf(rectangle(111, 163), { bottom: 6, right: 6, top: 6, left: 6 }, { label });
    expect(faults(drawPiece(piece, { edition: 'metric' }))).toEqual([]);
    const word = { ...piece, label: 'Taschenstreifenbeleginnenseitenverstärkungszuschnitt' };
    expect(faults(drawPiece(word, { edition: 'metric' }))).toEqual([]);
  });
});

it('is laid out for the narrowest screen when nobody says how much room there is', () => {
  // 320 CSS px less two margins of 16 px at each side: 256 px, 96 to the inch.
  expect(NARROWEST).toBeCloseTo((256 / 96) * 25.4, 6);
  expect(drawPiece(pieceOf(rectangle(50, 50), {}), { edition: 'metric' }).width).toBeCloseTo(NARROWEST, 6);
});
