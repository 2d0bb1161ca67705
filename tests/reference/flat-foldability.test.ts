import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fold, hem } from '../../src/core/cloth/index.ts';
import { polygon, rectangle } from '../../src/core/geometry/index.ts';
import { foldedWork, lands, line, piece, value } from '../core/cloth/works.ts';
import { runs } from '../random.ts';
import { creases, type Crease } from './creases.ts';
import type { Work } from '../../src/core/cloth/index.ts';
import type { Point } from '../../src/core/geometry/index.ts';

// Two laws hold wherever creases meet inside a sheet that lies flat (general knowledge of flat folding):
// Kawasaki: going round the point, every other angle between creases adds up to 180 degrees.
// Maekawa: mountains and valleys differ by two.

type Vertex = { at: Point; rays: { angle: number; kind: Crease['kind'] }[] };

const near = (p: Point, q: Point) => Math.hypot(p.x - q.x, p.y - q.y) < 0.01;

/** The points inside a piece, of the outline given, where creases end or pass. */
function vertices(work: Work, name: string, outline: readonly { from: Point }[]): Vertex[] {
  const found: Vertex[] = [];
  const all = creases(work, name);
  for (const { from, to } of all) {
    for (const at of [from, to]) {
      if (found.some((one) => near(one.at, at)) || onEdge(outline, at)) continue;
      const rays = all.flatMap((crease) => {
        const ends = near(crease.from, at) ? [crease.to] : near(crease.to, at) ? [crease.from] : [];
        return ends.map((end) => ({ angle: Math.atan2(end.y - at.y, end.x - at.x), kind: crease.kind }));
      });
      found.push({ at, rays: rays.sort((a, b) => a.angle - b.angle) });
    }
  }
  return found;
}

function onEdge(outline: readonly { from: Point }[], { x, y }: Point): boolean {
  return outline.some(({ from: a }, i) => {
    const b = outline[(i + 1) % outline.length]!.from;
    const [dx, dy] = [b.x - a.x, b.y - a.y];
    const t = Math.min(1, Math.max(0, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy)));
    return Math.hypot(a.x + t * dx - x, a.y + t * dy - y) < 0.05;
  });
}

/** The sum of every other angle, in degrees. */
function everyOther({ rays }: Vertex): number {
  const angles = rays.map(({ angle }, i) => {
    const next = rays[(i + 1) % rays.length]!.angle;
    return (((next - angle) * 180) / Math.PI + 360) % 360;
  });
  return angles.filter((_, i) => i % 2 === 0).reduce((sum, angle) => sum + angle, 0);
}

const surplus = ({ rays }: Vertex): number =>
  Math.abs(rays.reduce((sum, { kind }) => sum + (kind === 'mountain' ? 1 : -1), 0));

function holds(found: readonly Vertex[]): void {
  for (const vertex of found) {
    expect(vertex.rays.length % 2).toBe(0);
    expect(everyOther(vertex)).toBeCloseTo(180, 3);
    expect(surplus(vertex)).toBe(2);
  }
}

describe('a mitred corner', () => {
  test('of a hem turned once: six creases meet at the finished corner', () => {
    const outline = rectangle(200, 150);
    const edges = ['bottom', 'right', 'top', 'left'];
    const hemmed = value(hem(piece('napkin', outline), { edges, turn: 20, corners: 'mitred' }));
    const found = vertices(hemmed, 'napkin', outline);
    expect(found.map(({ at }) => [Math.round(at.x), Math.round(at.y)]).sort()).toEqual([
      [180, 130],
      [180, 20],
      [20, 130],
      [20, 20],
    ]);
    expect(found.map(({ rays }) => rays.length)).toEqual([6, 6, 6, 6]);
    holds(found);
  });
  test('of a hem turned twice, at corners of any outer angle', () => {
    let corners = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 50, max: 130 }),
        fc.integer({ min: 4, max: 12 }),
        fc.integer({ min: 8, max: 24 }),
        (degrees, turn, then) => {
          const lean = 150 / Math.tan((degrees * Math.PI) / 180);
          const outline = polygon(
            [
              { x: 0, y: 0 },
              { x: 300, y: 0 },
              { x: 300 + lean, y: 150 },
              { x: lean, y: 150 },
            ],
            ['bottom', 'right', 'top', 'left'],
          );
          const hemmed = hem(piece('cloth', outline), { edges: ['left', 'bottom'], turn, then, corners: 'mitred' });
          if (!hemmed.ok) return;
          const found = vertices(hemmed.value, 'cloth', outline);
          expect(found.length).toBeGreaterThan(0);
          corners += found.length;
          holds(found);
        },
      ),
      runs(500),
    );
    expect(corners).toBeGreaterThan(1000);
  });
});

test('the laws hold wherever creases meet in random folded works, folded as a whole or in part', () => {
  let met = 0;
  fc.assert(
    fc.property(
      foldedWork(3),
      fc.array(fc.record({ line, lands, bits: fc.nat() }), { maxLength: 2 }),
      (start, folds) => {
        const first = start.done[1]?.undo?.before.plies[0];
        if (!first) return;
        // Cut wrong side up, the piece is seen mirrored from its right side.
        const outline = first.outline.map(({ from }) => ({ from: { x: from.x * first.transform.a, y: from.y } }));
        let work = start;
        for (const { line, lands, bits } of folds) {
          const plies = new Set(work.plies.flatMap(({ id }, i) => ((bits >> (i % 30)) & 1 ? [id] : [])));
          const next = fold(work, { line, lands, plies });
          if (next.ok) work = next.value;
        }
        // Where a fold passes a corner of another within a hair, two points of the pattern run together.
        const found = vertices(work, 'cloth', outline);
        const apart = (p: Vertex, q: Vertex) => p === q || Math.hypot(p.at.x - q.at.x, p.at.y - q.at.y) > 1;
        if (!found.every((one) => found.every((other) => apart(one, other)))) return;
        met += found.length;
        holds(found);
      },
    ),
    runs(6000),
  );
  expect(met).toBeGreaterThan(800);
});
