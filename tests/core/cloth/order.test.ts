import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fold, hem, pleat } from '../../../src/core/cloth/index.ts';
import { runs } from '../../random.ts';
import { tangle } from './order.ts';
import { foldedWork, lands, line, piece, rectangle, value, wholeFold } from './works.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

/** A fold of some of the plies: those whose bits are set. */
const someFold = fc.record({ line, lands, bits: fc.nat(), inside: fc.boolean() });

const chosen = (work: Work, bits: number): Set<number> =>
  new Set(work.plies.flatMap(({ id }, i) => ((bits >> (i % 30)) & 1 ? [id] : [])));

describe('no ply passes through another', () => {
  test('in folds of the whole work', () => {
    fc.assert(
      fc.property(foldedWork(5), (work) => {
        expect(tangle(work)).toBeUndefined();
      }),
      runs(1500),
    );
  });
  test('in folds of some plies: what cannot lie so is refused', () => {
    let [folded, refused] = [0, 0];
    fc.assert(
      fc.property(foldedWork(3), fc.array(someFold, { minLength: 1, maxLength: 3 }), (start, folds) => {
        let work = start;
        for (const { line, lands, bits, inside } of folds) {
          const next = fold(work, { line, lands, inside, plies: chosen(work, bits) });
          if (!next.ok) {
            refused++;
            expect(['misses', 'blocked', 'held']).toContain(next.fault.code);
            continue;
          }
          folded++;
          work = next.value;
          expect(tangle(work)).toBeUndefined();
        }
      }),
      runs(3000),
    );
    expect(folded).toBeGreaterThan(500);
    expect(refused).toBeGreaterThan(500);
  });
  test('in pleats and hems', () => {
    const strip = piece('strip', rectangle(120, 200));
    const kinds = fc.constantFrom('mountain' as const, 'valley' as const);
    const places = fc.array(fc.record({ at: fc.integer({ min: 5, max: 195 }), kind: kinds }), { maxLength: 6 });
    fc.assert(
      fc.property(places, fc.integer({ min: 3, max: 9 }), fc.integer({ min: 3, max: 12 }), (folds, turn, then) => {
        const pleats = folds.filter(({ at }, i) => folds.every((other, k) => k >= i || other.at !== at));
        const pleated = pleat(strip, { from: 'bottom', folds: pleats });
        if (!pleated.ok) return;
        expect(tangle(pleated.value)).toBeUndefined();
        for (const corners of ['square', 'mitred'] as const) {
          const hemmed = hem(strip, { edges: ['bottom', 'right', 'top', 'left'], turn, then, corners });
          expect(tangle(value(hemmed))).toBeUndefined();
        }
      }),
      runs(300),
    );
  });
  test('the check itself sees a tangle', () => {
    const once = value(
      fold(piece('a', rectangle(100, 60)), { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'over' }),
    );
    const other = piece('b', rectangle(100, 60)).plies[0]!;
    const tangled: Work = { ...once, plies: [once.plies[0]!, { ...other, id: 99 }, once.plies[1]!] };
    expect(tangle(tangled)).toBe('ply 99 passes through the fold between 1 and 3');
    const beside: Work = { ...once, plies: [...once.plies, { ...other, id: 99 }] };
    expect(tangle(beside)).toBeUndefined();
  });
  test('after a whole fold of a stack that was folded in part', () => {
    fc.assert(
      fc.property(foldedWork(2), someFold, wholeFold, (work, some, whole) => {
        const first = fold(work, { ...some, plies: chosen(work, some.bits) });
        if (!first.ok) return;
        const second = fold(first.value, whole);
        if (second.ok) expect(tangle(second.value)).toBeUndefined();
      }),
      runs(1500),
    );
  });
});
