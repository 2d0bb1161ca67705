import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  flip,
  fold,
  freeEdges,
  layerMap,
  layersAt,
  middleOf,
  outlineNow,
  rotate,
  section,
  visibleFrom,
  size,
  stackThickness,
  stitchLines,
  thickest,
} from '../../../src/core/cloth/index.ts';
import { direction } from '../../../src/core/geometry/point.ts';
import { area, clothAreas, foldedWork, line, piece, rectangle, value } from './works.ts';
import { runs } from '../../random.ts';
import type { EdgeStretch, Patch, VisiblePart, Work } from '../../../src/core/cloth/index.ts';
import type { Point } from '../../../src/core/geometry/index.ts';

const level = (y: number) => ({ at: { x: 0, y }, angle: 0 });
const strip = piece('strip', rectangle(100, 60));
/** A strip of 100 x 60 folded up by 20: 100 x 40, double in its lower half. */
const folded = value(fold(strip, { line: level(20), lands: 'over' }));
/** A double hem along the lower edge: folded up by 5, then by 10. */
const hemmed = value(fold(value(fold(strip, { line: level(5), lands: 'over' })), { line: level(15), lands: 'over' }));
const thin = () => 0.3;

/** Two works on each other, as a step that lays one on the other makes them. */
function laid(lower: Work, upper: Work): Work {
  const plies = upper.plies.map((ply) => ({
    ...ply,
    id: ply.id + 100,
    piece: 'upper',
    material: 'felt',
    outline: ply.outline.map((edge) => (edge.fold === undefined ? edge : { ...edge, fold: edge.fold + 100 })),
  }));
  return { ...lower, plies: [...lower.plies, ...plies] };
}

/** How far outside or inside the rings of a patch a point is, to tell whether it is clear of the edges. */
function clearOf({ rings }: Patch, p: Point): number {
  let least = Infinity;
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length]!;
      const [x, y] = [b.x - a.x, b.y - a.y];
      const t = Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / (x * x + y * y || 1)));
      least = Math.min(least, Math.hypot(p.x - a.x - x * t, p.y - a.y - y * t));
    }
  }
  return least;
}

function inside({ rings }: Patch, { x, y }: Point): boolean {
  let odd = false;
  for (const ring of rings) {
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length]!;
      if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) odd = !odd;
    }
  }
  return odd;
}

const total = (patches: readonly Patch[]) => patches.reduce((sum, patch) => sum + patch.area, 0);
const ringArea = (ring: readonly Point[]) =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
/** Areas of works of up to 200 mm agree to this, in mm²: a thousandth of a mm along all their edges. */
const CLOSE = 0.5;

const place = fc.record({
  x: fc.double({ min: -50, max: 250, noNaN: true }),
  y: fc.double({ min: -50, max: 250, noNaN: true }),
});
/** One or two pieces, each folded, one on the other. */
const heaped = fc.oneof(
  foldedWork(5),
  fc.tuple(foldedWork(4), foldedWork(3)).map(([a, b]) => laid(a, b)),
);

describe('layers', () => {
  test('a strip folded up has two layers below and one above', () => {
    expect(layersAt(folded, { x: 50, y: 30 }).map((ply) => ply.face)).toEqual(['right', 'wrong']);
    expect(layersAt(folded, { x: 50, y: 50 }).map((ply) => ply.face)).toEqual(['right']);
    expect(stackThickness(layersAt(folded, { x: 50, y: 30 }), thin)).toBeCloseTo(0.6, 12);
  });
  test('at a point are the plies of the region it lies in', () => {
    fc.assert(
      fc.property(heaped, place, (work, at) => {
        const map = layerMap(work);
        if (map.some((region) => clearOf(region, at) < 0.01)) return;
        const here = map.filter((region) => inside(region, at));
        expect(here.length).toBeLessThan(2);
        expect(here[0]?.plies ?? []).toEqual(layersAt(work, at));
      }),
      runs(3000),
    );
  });
});

describe('the layer map', () => {
  test('of a double hem', () => {
    const found = layerMap(hemmed).map(({ plies, area: size }) => [plies.length, Math.round(size)]);
    expect(found.sort(([a], [b]) => a! - b!)).toEqual([
      [1, 3500],
      [2, 500],
      [3, 500],
    ]);
    const most = thickest(layerMap(hemmed), thin)!;
    expect(most.thickness).toBeCloseTo(0.9, 12);
    expect(middleOf(most.region).at).toEqual({ x: 50, y: expect.closeTo(22.5, 9) });
  });
  test('knows a hole: a small piece in the middle of a large one', () => {
    const map = layerMap(laid(strip, piece('patch', rectangle(20, 10, { x: 40, y: 25 }))));
    expect(map.map(({ plies, area: size, rings }) => [plies.length, size, rings.length])).toEqual([
      [1, 5800, 2],
      [2, 200, 1],
    ]);
  });
  test('of pieces beside each other and of pieces that meet at a corner', () => {
    const beside = laid(strip, piece('other', rectangle(10, 10, { x: 120, y: 20 })));
    expect(outlineNow(beside).map((patch) => patch.area)).toEqual([6000, 100]);
    const corner = laid(strip, piece('other', rectangle(10, 10, { x: 100, y: 60 })));
    expect(outlineNow(corner).map((patch) => patch.area)).toEqual([6000, 100]);
  });
  test('areas times layers are the areas of the plies, ply by ply', () => {
    fc.assert(
      fc.property(heaped, (work) => {
        const map = layerMap(work);
        for (const ply of work.plies) {
          const covered = total(map.filter(({ plies }) => plies.includes(ply)));
          expect(Math.abs(covered - area(ply.outline))).toBeLessThan(CLOSE);
        }
        const cloth = Object.values(clothAreas(work)).reduce((sum, one) => sum + one, 0);
        const counted = map.reduce((sum, region) => sum + region.area * region.plies.length, 0);
        expect(Math.abs(counted - cloth)).toBeLessThan(CLOSE);
      }),
      runs(3000),
    );
  });
  test('rings enclose the area they say, and the middle lies inside', () => {
    fc.assert(
      fc.property(heaped, (work) => {
        for (const region of layerMap(work)) {
          const drawn = region.rings.reduce((sum, ring) => sum + ringArea(ring), 0);
          expect(Math.abs(drawn - region.area)).toBeLessThan(0.1);
          if (region.area < 1) continue;
          const { at, room } = middleOf(region);
          expect(inside(region, at)).toBe(true);
          expect(room).toBeCloseTo(clearOf(region, at), 9);
        }
      }),
      runs(1000),
    );
  });
});

describe('turned or slid on the table', () => {
  test('a work has the same layers, as far as sums of turned corners hold', () => {
    fc.assert(
      fc.property(heaped, fc.double({ min: 0, max: 360, noNaN: true }), (work, degrees) => {
        const there = layerMap(value(rotate(work, degrees)));
        const here = layerMap(work);
        for (const { id } of work.plies) {
          const covered = (map: typeof here) => total(map.filter(({ plies }) => plies.some((ply) => ply.id === id)));
          expect(Math.abs(covered(there) - covered(here))).toBeLessThan(CLOSE);
        }
        // Regions of nearly 1 mm² may fall on either side of that bound.
        if (here.some((one) => Math.abs(one.area - 1) < 0.1)) return;
        const layers = (map: typeof here) =>
          Math.max(...map.filter((one) => one.area > 1).map((one) => one.plies.length));
        expect(layers(there)).toBe(layers(here));
      }),
      runs(1000),
    );
  });
});

describe('the outline now', () => {
  test('of the folded strip', () => {
    expect(outlineNow(folded)).toEqual([{ area: 4000, rings: [expect.any(Array)] }]);
  });
  test('has the size of the work', () => {
    fc.assert(
      fc.property(foldedWork(5), (work) => {
        const points = outlineNow(work).flatMap(({ rings }) => rings.flat());
        const { width, height } = size(work);
        const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
        expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(width, 2);
        expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(height, 2);
      }),
      runs(1000),
    );
  });
});

describe('what shows', () => {
  test('of a double hem, from the front', () => {
    const { parts, edges, hidden } = visibleFrom(hemmed);
    expect(parts.map(({ face, area: size }) => [face, Math.round(size)])).toEqual([
      ['right', 3500],
      ['wrong', 1000],
    ]);
    expect(edges.filter(({ edge }) => edge.name === 'fold').length).toBe(2);
    // The raw edge lies inside the hem, 5 above the fold at 15.
    expect(hidden.map(({ edge, from, to }) => [edge.name, from.y, to.y])).toEqual([['bottom', 20, 20]]);
  });
  test('of a double hem, from the back', () => {
    const { parts, hidden } = visibleFrom(hemmed, 'back');
    expect(parts.map(({ face, area: size }) => [face, Math.round(size)])).toEqual([['wrong', 4500]]);
    expect(hidden.map(({ edge, from }) => [edge.name, from.y]).sort()).toEqual([
      ['bottom', 20],
      ['fold', 25],
    ]);
  });
  test('adds up to the outline of the work, on both sides', () => {
    fc.assert(
      fc.property(heaped, fc.constantFrom('front' as const, 'back' as const), (work, side) => {
        const { parts } = visibleFrom(work, side);
        expect(Math.abs(total(parts) - total(outlineNow(work)))).toBeLessThan(CLOSE);
      }),
      runs(2000),
    );
  });
  test('at a point is the ply nearest to the eye', () => {
    fc.assert(
      fc.property(heaped, place, (work, at) => {
        const front = visibleFrom(work, 'front').parts;
        if (front.some((part) => clearOf(part, at) < 0.01)) return;
        expect(front.find((part) => inside(part, at))?.ply).toBe(layersAt(work, at).at(-1));
        const back = visibleFrom(work, 'back').parts;
        if (back.some((part) => clearOf(part, at) < 0.01)) return;
        const part = back.find((one) => inside(one, at));
        expect(part?.ply).toBe(layersAt(work, at)[0]);
        if (part) expect(part.face).toBe(part.ply.face === 'right' ? 'wrong' : 'right');
      }),
      runs(2000),
    );
  });
  test('from the back is what shows from the front of the work turned over', () => {
    fc.assert(
      fc.property(heaped, (work) => {
        const back = visibleFrom(work, 'back');
        const over = visibleFrom(value(flip(work)), 'front');
        for (const ply of work.plies) {
          const [there, here] = [partsOf(over.parts, ply.id), partsOf(back.parts, ply.id)];
          expect(Math.abs(total(there) - total(here))).toBeLessThan(0.1);
          expect(new Set(there.map(({ face }) => face))).toEqual(new Set(here.map(({ face }) => face)));
        }
        for (const kind of ['edges', 'hidden'] as const) {
          expect(Math.abs(lengthOf(over[kind]) - lengthOf(back[kind]))).toBeLessThan(0.05);
        }
      }),
      runs(1000),
    );
  });
  test('edges seen and hidden are together where any ply ends', () => {
    fc.assert(
      fc.property(heaped, (work) => {
        const [front, back] = [visibleFrom(work, 'front'), visibleFrom(work, 'back')];
        const all = ({ edges, hidden }: typeof front) => lengthOf(edges) + lengthOf(hidden);
        expect(Math.abs(all(front) - all(back))).toBeLessThan(0.05);
      }),
      runs(500),
    );
  });
});

describe('a section', () => {
  test('of a double hem', () => {
    const cut = section(hemmed, { at: { x: 50, y: 0 }, angle: 90 }, thin);
    expect(cut.columns.map(({ from, to, layers }) => [from, to, layers.length])).toEqual([
      [15, 20, 2],
      [20, 25, 3],
      [25, 60, 1],
    ]);
    expect(cut.columns.map((one) => one.thickness.toFixed(1))).toEqual(['0.6', '0.9', '0.3']);
    // Bottom to top: the strip, its turned-in end, the hem over it.
    expect(cut.layers.map(({ ply, from, to }) => [ply.face, from.at, to.at])).toEqual([
      ['right', 15, 60],
      ['right', 20, 25],
      ['wrong', 15, 25],
    ]);
    expect(cut.turns).toEqual([
      { at: 15, lower: 0, upper: 2, turns: 'begins' },
      { at: 25, lower: 1, upper: 2, turns: 'ends' },
    ]);
    expect(cut.layers[1]!.from.edge.name).toBe('bottom');
  });
  test('agrees with the layers at each point of its line', () => {
    fc.assert(
      fc.property(heaped, line, fc.double({ min: -200, max: 200, noNaN: true }), (work, through, along) => {
        const cut = section(work, through, thin);
        const near = cut.layers.some(
          ({ from, to }) => Math.abs(from.at - along) < 0.01 || Math.abs(to.at - along) < 0.01,
        );
        const way = direction(through.angle);
        const at = { x: through.at.x + way.x * along, y: through.at.y + way.y * along };
        const edges = [...visibleFrom(work).edges, ...visibleFrom(work).hidden];
        if (near || edges.some((edge) => runsAlong(edge, at))) return;
        const column = cut.columns.find(({ from, to }) => from < along && along < to);
        expect((column?.layers ?? []).map(({ layer }) => cut.layers[layer]!.ply)).toEqual(layersAt(work, at));
        expect(column?.thickness ?? 0).toBeCloseTo(stackThickness(layersAt(work, at), thin), 9);
      }),
      runs(3000),
    );
  });
  test('each fold it meets turns one layer into one other', () => {
    fc.assert(
      fc.property(foldedWork(5), line, (work, through) => {
        const { layers, turns } = section(work, through, thin);
        // Where the line runs close by a corner of a fold, only one side of it may be met.
        const corners = work.plies.flatMap((ply) => ply.outline.map(({ from }) => from));
        const way = direction(through.angle);
        const off = ({ x, y }: Point) => way.x * (y - through.at.y) - way.y * (x - through.at.x);
        if (corners.some((corner) => Math.abs(off(corner)) < 0.01)) return;
        const folds = layers.flatMap(({ from, to }) => [from, to]).filter(({ edge }) => edge.fold !== undefined);
        expect(turns.length * 2).toBe(folds.length);
        for (const { lower, upper } of turns) {
          expect(layers[lower]!.ply.face).not.toBe(layers[upper]!.ply.face);
          expect(layers[lower]!.level).toBeLessThan(layers[upper]!.level);
        }
      }),
      runs(2000),
    );
  });
  test('beside the work is empty', () => {
    expect(section(strip, level(70), thin)).toEqual({ line: level(70), layers: [], turns: [], columns: [] });
  });
});

describe('free edges', () => {
  test('of a double hem: the fold is none', () => {
    const found = freeEdges(hemmed).map(({ ply, edge, length }) => [ply.id, edge, length]);
    expect(found.filter(([, edge]) => edge === 'bottom')).toEqual([[expect.any(Number), 'bottom', 100]]);
    expect(found.some(([, edge]) => edge === 'fold')).toBe(false);
    // 45 + 5 + 10 of each side of the strip, in three layers.
    const right = freeEdges(hemmed).filter(({ edge }) => edge === 'right');
    expect(right.reduce((sum, { length }) => sum + length, 0)).toBe(60);
  });
  test('an edge that stitches hold, and the edges of interfacing, are none', () => {
    const ply = strip.plies[0]!;
    const outline = ply.outline.map((edge) => (edge.name === 'top' ? { ...edge, held: 9 } : edge));
    expect(freeEdges({ ...strip, plies: [{ ...ply, outline }] }).map((one) => one.edge)).toEqual([
      'bottom',
      'right',
      'left',
    ]);
    expect(freeEdges({ ...strip, plies: [{ ...ply, fusedTo: 7 }] })).toEqual([]);
  });
  test('folding makes none and takes none away', () => {
    fc.assert(
      fc.property(foldedWork(1), line, (work, through) => {
        const next = fold(work, { line: through, lands: 'over' });
        if (!next.ok) return;
        const free = (one: Work) => freeEdges(one).reduce((sum, { length }) => sum + length, 0);
        expect(Math.abs(free(next.value) - free(work))).toBeLessThan(0.01);
      }),
      runs(1000),
    );
  });
});

describe('stitch lines', () => {
  const [low, high] = hemmed.plies.map((ply) => ply.id).filter((_, i) => i !== 1) as [number, number];
  const within = hemmed.plies[1]!.id;
  const rows = (from: Point, to: Point, plies: number[], kind: 'hem' | 'seam' = 'hem') =>
    stitchLines({ ...hemmed, stitches: [{ id: 50, kind, class: '301', runs: [{ from, to, plies }] }] });

  test('a row along the hem goes through three layers', () => {
    const [row] = rows({ x: 0, y: 23 }, { x: 100, y: 23 }, [low, within, high]);
    expect(row).toMatchObject({ id: 50, kind: 'hem', class: '301', length: 100 });
    expect(row!.stretches.map(({ plies, length, front, back }) => [plies.length, length, front, back])).toEqual([
      [3, 100, true, true],
    ]);
  });
  test('a row across the hem goes through three, then two layers, and beyond it through one', () => {
    const [row] = rows({ x: 50, y: 15 }, { x: 50, y: 60 }, [low, within, high]);
    expect(row!.stretches.map(({ plies, from, to }) => [plies.length, from.y, to.y])).toEqual([
      [2, 15, 20],
      [3, 20, 25],
      [1, 25, 60],
    ]);
  });
  test('a row that goes through the lower layer only is covered where the hem lies over it', () => {
    const [row] = rows({ x: 50, y: 15 }, { x: 50, y: 60 }, [low]);
    expect(row!.stretches.map(({ from, to, front, back }) => [from.y, to.y, front, back])).toEqual([
      [15, 25, false, true],
      [25, 60, true, true],
    ]);
  });
  test('a row that lies in a fold is not seen, but still goes through its plies', () => {
    const [row] = rows({ x: 0, y: 15 }, { x: 100, y: 15 }, [low, high], 'seam');
    expect(row!.stretches.map(({ plies, front, back }) => [plies.length, front, back])).toEqual([[2, false, false]]);
  });
  test('stretches follow each other and are as long as their row, through the plies that lie there', () => {
    fc.assert(
      fc.property(heaped, place, place, (work, from, to) => {
        if (Math.hypot(to.x - from.x, to.y - from.y) < 1) return;
        const plies = work.plies.map((ply) => ply.id);
        const stitches = [{ id: 999, kind: 'topstitch' as const, class: '301', runs: [{ from, to, plies }] }];
        const { length, stretches } = stitchLines({ ...work, stitches })[0]!;
        expect(length).toBeCloseTo(Math.hypot(to.x - from.x, to.y - from.y), 3);
        for (const [i, stretch] of stretches.entries()) {
          if (i > 0) expect(stretch.from).toEqual(stretches[i - 1]!.to);
          if (stretch.length < 0.05) continue;
          const middle = { x: (stretch.from.x + stretch.to.x) / 2, y: (stretch.from.y + stretch.to.y) / 2 };
          const edges = [...visibleFrom(work).edges, ...visibleFrom(work).hidden];
          if (edges.some((edge) => runsAlong(edge, middle))) continue;
          expect(stretch.plies).toEqual(layersAt(work, middle));
          expect(stretch.front).toBe(stretch.plies.length > 0);
        }
      }),
      runs(1000),
    );
  });
});

/** Whether a point lies on an edge, as near as a hundredth of a mm. */
function runsAlong({ from, to }: EdgeStretch, p: Point): boolean {
  return clearOf({ rings: [[from, to]], area: 0 }, p) < 0.01;
}

const lengthOf = (edges: readonly EdgeStretch[]) =>
  edges.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

/** The parts of a ply that show, slips of the arithmetic left out. */
const partsOf = (parts: readonly VisiblePart[], id: number) =>
  parts.filter((part) => part.ply.id === id && part.area > 0.01);
