import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { area, bounds, difference, OVERLAP, polygon, rectangle, tile, tileName } from '../../../src/core/index.ts';
import type { Tiling } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';
import { lShape, rounded, slanting } from './shapes.ts';

const sheet = { width: 190, height: 225 };
const frames = ({ tiles }: Tiling) => tiles.map(({ box }) => rectangle(box.width, box.height, { x: box.x, y: box.y }));
const left = (outline: Parameters<typeof tile>[0], covering: ReturnType<typeof frames>) =>
  difference([outline], covering).reduce((sum, ring) => sum + area(ring), 0);

describe('sheets over a piece', () => {
  it('are as few as a rectangle needs, worked out by hand', () => {
    // 0.5 mm of blank at each side; the first sheet in a row gives 190 mm, each further one 180.
    expect(tile(rectangle(189, 224), sheet).tiles).toHaveLength(1);
    expect(tile(rectangle(189.1, 224), sheet).tiles).toHaveLength(2);
    expect(tile(rectangle(369, 224), sheet)).toMatchObject({ rows: 1, columns: 2 });
    expect(tile(rectangle(369.1, 439), sheet)).toMatchObject({ rows: 2, columns: 3 });
  });

  it('cover all of any piece, and none of them can be missed', () => {
    const corner = fc.record({ x: fc.integer({ min: 0, max: 900 }), y: fc.integer({ min: 0, max: 900 }) });
    fc.assert(
      fc.property(fc.tuple(corner, corner, corner), (corners) => {
        const triangle = polygon(corners);
        fc.pre(area(triangle) > 2000);
        const tiling = tile(triangle, sheet);
        expect(left(triangle, frames(tiling))).toBeLessThan(0.01);
        for (const one of tiling.tiles) {
          const others = { ...tiling, tiles: tiling.tiles.filter((other) => other !== one) };
          expect(left(triangle, frames(others))).toBeGreaterThan(1e-3);
        }
      }),
      runs(60),
    );
  });

  it.each([
    ['an L', lShape],
    ['a gore', slanting],
    ['a mat', rounded],
  ])('leave out what shows nothing of %s', (_, outline) => {
    const { tiles } = tile(outline, sheet);
    const { width, height } = bounds(outline);
    const grid = Math.ceil((width - 9) / 180) * Math.ceil((height - 9) / 215);
    expect(tiles.length).toBeLessThanOrEqual(grid);
    expect(left(outline, frames(tile(outline, sheet)))).toBeLessThan(0.5);
  });

  it('need five for the L, not the nine of its box', () => {
    // The foot is 520 mm long: three sheets. The leg goes on above the first of them: two more.
    const { rows, columns, tiles } = tile(lShape, sheet);
    expect(rows * columns).toBe(9);
    expect(tiles.length).toBe(5);
  });

  it('share a strip with each neighbour', () => {
    const { tiles } = tile(rectangle(500, 500), sheet);
    const at = (row: number, column: number) => tiles.find((one) => one.row === row && one.column === column)!.box;
    expect(at(0, 0).x + at(0, 0).width - at(0, 1).x).toBeCloseTo(OVERLAP);
    expect(at(1, 0).y + at(1, 0).height - at(0, 0).y).toBeCloseTo(OVERLAP);
  });

  it('are lettered by row and numbered by column', () => {
    expect(tileName({ row: 0, column: 0 })).toBe('A1');
    expect(tileName({ row: 25, column: 9 })).toBe('Z10');
    expect(tileName({ row: 26, column: 0 })).toBe('AA1');
  });
});
