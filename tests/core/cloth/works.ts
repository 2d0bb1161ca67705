import fc from 'fast-check';
import { area, polygon, rectangle } from '../../../src/core/geometry/index.ts';
import { cut, fold } from '../../../src/core/cloth/index.ts';
import { simplePolygon } from '../geometry/shapes.ts';
import type { Line, Outline } from '../../../src/core/geometry/index.ts';
import type { Fold, Work } from '../../../src/core/cloth/index.ts';

export { value } from '../geometry/shapes.ts';

/** Lines that mostly go through a polygon inside a square of 200 mm. */
export const line: fc.Arbitrary<Line> = fc.record({
  at: fc.record({ x: fc.integer({ min: 20, max: 180 }), y: fc.integer({ min: 20, max: 180 }) }),
  angle: fc.integer({ min: 0, max: 359 }),
});

export const lands = fc.constantFrom('over' as const, 'under' as const);

/** A whole fold of the work along a random line. */
export const wholeFold: fc.Arbitrary<Fold> = fc.record({ line, lands });

export const shape: fc.Arbitrary<Outline> = fc.oneof(
  simplePolygon({ min: 3, max: 8 }),
  fc.tuple(fc.integer({ min: 20, max: 200 }), fc.integer({ min: 20, max: 200 })).map(([w, h]) => rectangle(w, h)),
);

export function piece(name: string, outline: Outline, material = 'linen', face: 'right' | 'wrong' = 'right'): Work {
  const work = cut({ piece: name, material, outline, face });
  if (!work.ok) throw new Error(work.fault.message);
  return work.value;
}

/** One piece, folded up to `most` times as a whole; folds that miss it are left out. */
export const foldedWork = (most = 4): fc.Arbitrary<Work> =>
  fc
    .tuple(shape, fc.constantFrom('right' as const, 'wrong' as const), fc.array(wholeFold, { maxLength: most }))
    .map(([outline, face, folds]) => {
      let work = piece('cloth', outline, 'linen', face);
      for (const how of folds) {
        const next = fold(work, how);
        if (next.ok) work = next.value;
      }
      return work;
    });

/** The area of the cloth in a work by piece, gathers let out, in mm². */
export function clothAreas(work: Work): Record<string, number> {
  const areas: Record<string, number> = {};
  for (const ply of work.plies) areas[ply.piece] = (areas[ply.piece] ?? 0) + area(ply.outline) * ply.fullness;
  return areas;
}

export { area, polygon, rectangle };
