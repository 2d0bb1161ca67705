import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { flip, fold, size, unfold } from '../../../src/core/cloth/index.ts';
import { runs } from '../../random.ts';
import { area, clothAreas, foldedWork, piece, rectangle, value, wholeFold } from './works.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const strip = piece('strip', rectangle(100, 60));

describe('a fold', () => {
  test('lays the moving part over, mirrored, other face up', () => {
    const folded = value(fold(strip, { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'over' }));
    expect(folded.plies.map(({ face, outline }) => [face, area(outline)])).toEqual([
      ['right', 4000],
      ['wrong', 2000],
    ]);
    expect(size(folded)).toEqual({ width: 100, height: 40, depth: 0 });
  });
  test('or under', () => {
    const folded = value(fold(strip, { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'under' }));
    expect(folded.plies.map(({ face }) => face)).toEqual(['wrong', 'right']);
  });
  test('turns the order of several plies round', () => {
    const once = value(fold(strip, { line: { at: { x: 0, y: 30 }, angle: 0 }, lands: 'over' }));
    const twice = value(fold(once, { line: { at: { x: 50, y: 0 }, angle: 90 }, lands: 'over' }));
    // Like a folded map: the two left-hand plies, then the right-hand pair turned over together.
    expect(twice.plies.map(({ face }) => face)).toEqual(['right', 'wrong', 'right', 'wrong']);
    expect(size(twice)).toEqual({ width: 50, height: 30, depth: 0 });
  });
  test('says so when it misses', () => {
    const missed = fold(strip, { line: { at: { x: 0, y: -5 }, angle: 0 }, lands: 'over' });
    expect(missed.ok ? undefined : missed.fault.code).toBe('misses');
  });
});

describe('laws of folding, for random cloth and random folds', () => {
  test('the area of every piece stays', () => {
    fc.assert(
      fc.property(foldedWork(5), wholeFold, (work, how) => {
        const folded = fold(work, how);
        if (!folded.ok) return;
        const [before, after] = [clothAreas(work)['cloth']!, clothAreas(folded.value)['cloth']!];
        expect(Math.abs(after - before)).toBeLessThan(1e-3);
      }),
      runs(3000),
    );
  });
  test('unfolding undoes it', () => {
    fc.assert(
      fc.property(foldedWork(4), wholeFold, (work, how) => {
        const folded = fold(work, how);
        if (!folded.ok) return;
        const undone = value(unfold(folded.value));
        expect(undone.plies).toBe(work.plies);
      }),
      runs(2000),
    );
  });
  test('flipping twice changes nothing', () => {
    fc.assert(
      fc.property(foldedWork(4), fc.constantFrom('upright' as const, 'level' as const), (work, about) => {
        const twice = value(flip(value(flip(work, about)), about));
        expect(drawn(twice)).toEqual(drawn(work));
      }),
      runs(2000),
    );
  });
  test('a flip shows the same outlines mirrored, in the other order, with the other faces', () => {
    fc.assert(
      fc.property(foldedWork(3), (work) => {
        const over = value(flip(work));
        expect(over.plies.map((ply) => ply.id)).toEqual(work.plies.map((ply) => ply.id).reverse());
        for (const ply of work.plies) {
          const now = over.plies.find((one) => one.id === ply.id)!;
          expect(now.face).not.toBe(ply.face);
          expect(area(now.outline)).toBeCloseTo(area(ply.outline), 6);
        }
      }),
      runs(500),
    );
  });
});

/** What can be seen of a work, to a thousandth of a mm; rings begin at their lowest corner. */
function drawn(work: Work) {
  return work.plies.map(({ id, face, outline }) => {
    const corners = outline.map(
      ({ name, from }) => [name, Math.round(from.x * 1000) + 0, Math.round(from.y * 1000) + 0] as const,
    );
    const first = corners.reduce((best, corner, i) => (String(corner) < String(corners[best]) ? i : best), 0);
    return { id, face, corners: [...corners.slice(first), ...corners.slice(0, first)] };
  });
}
