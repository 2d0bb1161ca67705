import fc from 'fast-check';
import { areaPathsD, FillRule, intersectD } from 'clipper2-ts';
import { describe, expect, test } from 'vitest';
import { EDGE, noFitPolygon, wayOut } from '../../../src/core/layout/no-fit-polygon.ts';
import { lowestHeight } from '../../../src/core/layout/bounds.ts';
import { inOrder } from '../../../src/core/layout/in-order.ts';
import { change, FAR, firstOrders, TURNED, UP, undo } from '../../../src/core/layout/orders.ts';
import { random } from '../../../src/core/layout/random.ts';
import { skyline } from '../../../src/core/layout/skyline.ts';
import { byStraightCuts } from '../../../src/core/layout/strips.ts';
import { sample } from '../../../src/core/geometry/index.ts';
import { simplePolygon } from '../geometry/shapes.ts';
import type { RectangleKind } from '../../../src/core/layout/box.ts';

const side = fc.integer({ min: 1, max: 9 });
const someKinds = fc.array(
  fc.record({ width: side, height: side, count: fc.integer({ min: 1, max: 4 }), turns: fc.boolean() }),
  { minLength: 1, maxLength: 7 },
);

describe('every layer', () => {
  const layers = {
    skyline,
    'in order': inOrder,
    'straight cuts': (kinds: readonly RectangleKind[]) => byStraightCuts(kinds),
    strips: (kinds: readonly RectangleKind[]) => byStraightCuts(kinds, true),
  };
  test.each(Object.entries(layers))('%s: the waste is the box less what lies in it', (_name, layer) => {
    fc.assert(
      fc.property(
        someKinds,
        fc.integer({ min: 9, max: 20 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer(),
        (kinds, width, cap, seed) => {
          const source = random(seed);
          const [order] = firstOrders(kinds);
          const ways = Uint8Array.from(kinds, (kind) => (kind.turns ? TURNED : 0) | UP | FAR);
          for (let i = 0; i < 20; i++) change(order!, ways, source);
          const one = layer(kinds);
          const wasted = one.lay(order!, width, cap, Infinity);
          const laid = one.laid();
          const total = kinds.reduce((sum, kind) => sum + kind.count, 0);
          const area = laid.reduce((sum, { kind }) => sum + kinds[kind]!.width * kinds[kind]!.height, 0);
          expect(wasted).toBe(laid.length === total ? 0 : width * cap - area);
          expect(one.height()).toBeLessThanOrEqual(cap);
          // With a limit it gives the same, or more than the limit.
          const limited = one.lay(order!, width, cap, 10);
          expect(limited === wasted || limited > 10).toBe(true);
        },
      ),
      { numRuns: 300 },
    );
  });

  test('a change taken back is no change', () => {
    fc.assert(
      fc.property(someKinds, fc.integer(), (kinds, seed) => {
        const source = random(seed);
        const order = firstOrders(kinds)[2]!;
        const before = [...order];
        const changed = change(
          order,
          Uint8Array.from(kinds, () => TURNED | UP | FAR),
          source,
        );
        if (changed) {
          expect([...order]).not.toEqual(before);
          undo(order, changed);
        }
        expect([...order]).toEqual(before);
      }),
    );
  });
});

/** The least height by straight cuts, by trying every way to part the rectangles in two. For a handful only. */
function leastByCutting(kinds: readonly RectangleKind[], width: number): number {
  const rects = kinds.flatMap((kind) => Array.from({ length: kind.count }, () => kind));
  const known = new Map<number, [number, number][]>();
  /** The boxes, as wide as the strip at most, that a set of rectangles can be cut from: none better both ways. */
  const boxes = (set: number): [number, number][] => {
    const before = known.get(set);
    if (before) return before;
    const found: [number, number][] = [];
    if ((set & (set - 1)) === 0) {
      const { width: w, height: h, turns } = rects[Math.log2(set)]!;
      found.push([w, h]);
      if (turns) found.push([h, w]);
    }
    for (let part = (set - 1) & set; part > 0; part = (part - 1) & set) {
      if (part < (set ^ part)) continue;
      for (const [w, h] of boxes(part))
        for (const [w2, h2] of boxes(set ^ part)) found.push([w + w2, Math.max(h, h2)], [Math.max(w, w2), h + h2]);
    }
    const kept = found
      .filter(([w]) => w <= width)
      .sort((a, b) => a[0] - b[0] || a[1] - b[1])
      .reduce<[number, number][]>(
        (list, box) => (list.length > 0 && list.at(-1)![1] <= box[1] ? list : [...list, box]),
        [],
      );
    known.set(set, kept);
    return kept;
  };
  return Math.min(...boxes((1 << rects.length) - 1).map(([, height]) => height));
}

test('the bound is never above what a complete search finds', () => {
  const few = fc.array(fc.record({ width: side, height: side, count: fc.constant(1), turns: fc.boolean() }), {
    minLength: 1,
    maxLength: 6,
  });
  let met = 0;
  fc.assert(
    fc.property(few, fc.integer({ min: 9, max: 14 }), (kinds, width) => {
      const bound = lowestHeight(kinds, width);
      const least = leastByCutting(kinds, width);
      expect(bound).toBeLessThanOrEqual(least);
      if (bound === least) met++;
    }),
    { numRuns: 200 },
  );
  // A bound that is always far below proves nothing.
  expect(met).toBeGreaterThan(100);
});

test('what cutting allows is found by straight cuts, for a handful of rectangles', async () => {
  const { layOut } = await import('../../../src/core/layout/index.ts');
  const { rectangle } = await import('../../../src/core/geometry/index.ts');
  const few = fc.array(fc.record({ width: side, height: side, count: fc.constant(1), turns: fc.constant(false) }), {
    minLength: 1,
    maxLength: 6,
  });
  fc.assert(
    fc.property(few, fc.integer({ min: 9, max: 14 }), (kinds, width) => {
      const demand = kinds.map((kind, i) => ({ name: `${i}`, outline: rectangle(kind.width, kind.height), count: 1 }));
      const layout = layOut(demand, [{ name: 'bolt', kind: 'bolt', width }], { manner: 'straight cuts' });
      expect(layout.length).toBe(leastByCutting(kinds, width));
    }),
    { numRuns: 40, seed: 7 },
  );
});

const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);

test('moves are forbidden just where the clipping library finds a common part', () => {
  let [apart, common] = [0, 0];
  fc.assert(
    fc.property(simplePolygon(), simplePolygon(), share, share, (one, other, across, up) => {
      const [a, b] = [sample(one, 0.01), sample(other, 0.01)];
      const moves = noFitPolygon(a, b);
      const [x, y] = [moves.left + across * (moves.right - moves.left), moves.low + up * (moves.high - moves.low)];
      const deep = wayOut(moves, x, y);
      const moved = b.map((point) => ({ x: point.x + x, y: point.y + y }));
      const shared = Math.abs(areaPathsD(intersectD([a.map((p) => ({ ...p }))], [moved], FillRule.NonZero, 6)));
      // Nearer than a tenth of a millimetre to touching, either answer will do.
      if (deep > 0.1) {
        common++;
        expect(shared).toBeGreaterThan(0);
      } else if (deep === 0) {
        apart++;
        expect(shared).toBeLessThan(1);
      }
    }),
    { numRuns: 300 },
  );
  expect(Math.min(apart, common)).toBeGreaterThan(20);
});

test('the way out of an overlap is the shortest, whichever edges the grid remembers', () => {
  let inside = 0;
  fc.assert(
    fc.property(simplePolygon(), simplePolygon(), share, share, (one, other, across, up) => {
      const moves = noFitPolygon(sample(one, 0.01), sample(other, 0.01));
      const { edges } = moves;
      const [x, y] = [moves.left + across * (moves.right - moves.left), moves.low + up * (moves.high - moves.low)];
      // Every edge is asked.
      let nearest = Infinity;
      for (let i = 0; i < edges.length; i += EDGE) {
        const [ax, ay, wx, wy] = [edges[i]!, edges[i + 1]!, edges[i + 3]!, edges[i + 4]!];
        const along = Math.min(1, Math.max(0, ((x - ax) * wx + (y - ay) * wy) / (wx * wx + wy * wy)));
        nearest = Math.min(nearest, Math.hypot(ax + along * wx - x, ay + along * wy - y));
      }
      const out = new Float64Array(2);
      const deep = wayOut(moves, x, y, out);
      if (deep === 0) return;
      inside++;
      expect(deep).toBeCloseTo(nearest, 9);
      expect(Math.hypot(out[0]!, out[1]!)).toBeCloseTo(deep, 9);
      // A little farther the same way, and it is out.
      expect(wayOut(moves, x + out[0]! * (1 + 1e-6), y + out[1]! * (1 + 1e-6))).toBeLessThan(1e-3);
    }),
    { numRuns: 500 },
  );
  expect(inside).toBeGreaterThan(40);
});
