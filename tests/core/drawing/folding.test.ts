/** The strip on its way from flat to folded, held against folding it step by step on paper. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { drawPleatedFront, drawPleatSection, drawStrip } from '../../../src/core/index.ts';
import { flatLayers, rangeOf, uncovered } from '../../../src/core/drawing/folding.ts';
import { runs } from '../../random.ts';
import { anyStrip, fivePockets } from './pieces.ts';
import { boxOf, paths, segments, stops, texts } from './read.ts';

const anyStage = anyStrip.chain((strip) =>
  fc.record({ strip: fc.constant(strip), made: fc.integer({ min: 0, max: strip.pleats.folds.length }) }),
);

describe('folding step by step', () => {
  it('puts every point of the strip where reflecting it at each fold in turn puts it', () => {
    fc.assert(
      fc.property(anyStage, fc.double({ min: 0, max: 1, noNaN: true }), ({ strip, made }, share) => {
        const { pleats } = strip;
        const point = share * (pleats.stripLength - pleats.trim);
        // Each fold reflects what lies beyond it at the place where it lies now.
        let [height, turned, layer] = [point, 0, 0];
        const folds = pleats.folds.slice(0, made).map(({ at }) => ({ at, height: at }));
        folds.forEach((fold, i) => {
          const axis = fold.height;
          if (point > fold.at) [height, turned, layer] = [2 * axis - height, turned + 1, layer + 1];
          for (const later of folds.slice(i + 1)) later.height = 2 * axis - later.height;
        });
        const run = flatLayers(pleats, made)[layer]!;
        const { from, to } = rangeOf(run);
        expect(height).toBeGreaterThanOrEqual(from - 1e-6);
        expect(height).toBeLessThanOrEqual(to + 1e-6);
        expect(run.face).toBe(turned % 2 === 0 ? 'right side' : 'wrong side');
      }),
      runs(500),
    );
  });

  it('keeps the strip its length', () => {
    fc.assert(
      fc.property(anyStage, ({ strip, made }) => {
        const length = flatLayers(strip.pleats, made).reduce((sum, { from, to }) => sum + Math.abs(to - from), 0);
        expect(length).toBeCloseTo(strip.pleats.stripLength, 6);
      }),
      runs(200),
    );
  });

  it('turns the rest without a jump from one fold to the next', () => {
    const { pleats } = fivePockets();
    for (let k = 0; k < pleats.folds.length; k++) {
      const before = flatLayers(pleats, k).at(-1)!;
      const began = flatLayers(pleats, k + 1e-9).at(-1)!;
      expect(began.to).toBeCloseTo(before.to, 3);
      const after = flatLayers(pleats, k + 1).at(-1)!;
      const ended = flatLayers(pleats, k + 1 - 1e-9).at(-1)!;
      expect(ended.to).toBeCloseTo(after.to, 3);
    }
  });

  it('shows the rest of the strip upright after even folds and hanging, wrong side in front, after odd ones', () => {
    const faces = (folds: number) => paths(drawPleatedFront(fivePockets(), { edition: 'metric', folds }));
    const hangs = faces(3).filter(({ name }) => name === 'wrong side');
    expect(hangs).toHaveLength(1);
    expect(faces(4).filter(({ name }) => name === 'wrong side')).toHaveLength(0);
    // After three folds the rest hangs below the panel's raw bottom edge.
    const [right] = faces(3).filter(({ name }) => name === 'right side');
    expect(boxOf(stops(hangs[0]!.path)).y).toBeCloseTo(
      boxOf(stops(right!.path)).y + boxOf(stops(right!.path)).height,
      6,
    );
  });

  it('holds the drawing still from the first fold to the last', () => {
    fc.assert(
      fc.property(anyStrip, (strip) => {
        for (const draw of [drawStrip, drawPleatedFront, drawPleatSection]) {
          const sheets = Array.from({ length: strip.pleats.folds.length + 1 }, (_, folds) =>
            draw(strip, { edition: 'metric', folds }),
          );
          expect(new Set(sheets.map(({ scale, height }) => `${scale.toFixed(9)} ${height.toFixed(6)}`)).size).toBe(1);
        }
      }),
      runs(60),
    );
  });

  it('shows what is trimmed off at the end', () => {
    fc.assert(
      fc.property(anyStrip, (strip) => {
        const { pleats } = strip;
        fc.pre(pleats.trim > 0);
        const scene = drawPleatedFront(strip, { edition: 'metric', folds: pleats.folds.length });
        const trimmed = paths(scene).find(({ name }) => name === 'trimmed');
        expect(boxOf(segments(trimmed!.path).flat()).height / scene.scale).toBeCloseTo(pleats.trim, 6);
      }),
      runs(60),
    );
  });

  it('takes too many or too few folds for all or none', () => {
    const notes = (folds: number) =>
      texts(drawPleatedFront(fivePockets(), { edition: 'metric', folds }))
        .filter(({ name }) => name.startsWith('note'))
        .map(({ text }) => text)
        .slice(0, 2);
    expect(notes(99)).toEqual(['Folds made: 10 of 10.', 'Still flat: nothing.']);
    expect(notes(-3)).toEqual(['Folds made: 0 of 10.', 'Still flat: 896\u202fmm.']);
  });
});

describe('what others leave to be seen', () => {
  it('of a range is the range less theirs', () => {
    expect(
      uncovered({ from: 0, to: 10 }, [
        { from: 2, to: 4 },
        { from: 8, to: 12 },
      ]),
    ).toEqual([
      { from: 0, to: 2 },
      { from: 4, to: 8 },
    ]);
    expect(uncovered({ from: 3, to: 4 }, [{ from: 0, to: 10 }])).toEqual([]);
  });
});
