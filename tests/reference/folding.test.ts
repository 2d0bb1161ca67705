import ear from 'rabbit-ear';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fold } from '../../src/core/cloth/index.ts';
import { direction } from '../../src/core/geometry/point.ts';
import { polygon } from '../../src/core/geometry/index.ts';
import { line, piece } from '../core/cloth/works.ts';
import { runs } from '../random.ts';
import type { Line, Point } from '../../src/core/geometry/index.ts';
import type { Sheet } from 'rabbit-ear';

// Second opinion: rabbit-ear 0.9.32 (R. Kraft), a general library for flat folding, on where the parts of a sheet come
// to lie and in which order. It folds convex faces of a whole stack over.

const sheetOf = (points: readonly Point[]): Sheet =>
  ear.graph.populate({
    vertices_coords: points.map(({ x, y }) => [x, y]),
    edges_vertices: points.map((_, i) => [i, (i + 1) % points.length]),
    edges_assignment: points.map(() => 'B'),
    edges_foldAngle: points.map(() => 0),
    faces_vertices: [points.map((_, i) => i)],
  });

/** Folds what lies right of our line; theirs moves what lies left of theirs. */
function foldTheirs(sheet: Sheet, { at, angle }: Line): void {
  const { x, y } = direction(angle + 180);
  ear.graph.flatFold(sheet, [x, y], [at.x, at.y], 'V');
}

type Layer = { x: number; y: number; area: number; up: boolean };

/** The faces of the folded sheet, bottom to top, each by its middle, its area, and which side is up. */
function theirLayers(sheet: Sheet): Layer[] {
  const layers = sheet.faces_vertices.map((face, i) => {
    const [a, b, c, d, e, f] = sheet.faces_matrix2![i]! as [number, number, number, number, number, number];
    const corners = face.map((v) => {
      const [x, y] = sheet.vertices_coords[v]! as [number, number];
      return { x: a * x + c * y + e, y: b * x + d * y + f };
    });
    return { level: sheet.faces_layer![i]!, layer: layerOf(corners, a * d - b * c > 0) };
  });
  return layers.sort((p, q) => p.level - q.level).map(({ layer }) => layer);
}

function layerOf(corners: readonly Point[], up: boolean): Layer {
  let [area, x, y] = [0, 0, 0];
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    const cross = a.x * b.y - b.x * a.y;
    area += cross / 2;
    x += ((a.x + b.x) * cross) / 6;
    y += ((a.y + b.y) * cross) / 6;
  });
  return { x: x / area, y: y / area, area: Math.abs(area), up };
}

/** A convex outline with corners on a circle, none near another. */
const convex = fc.uniqueArray(fc.integer({ min: 0, max: 23 }), { minLength: 3, maxLength: 8 }).map((steps) =>
  [...steps]
    .sort((a, b) => a - b)
    .map((step) => {
      const way = direction(step * 15 + 1);
      return { x: Math.round(100 + 95 * way.x), y: Math.round(100 + 95 * way.y) };
    }),
);

describe('folding against rabbit-ear', () => {
  test('every part lies where it lies for them, the same face up, in the same order', () => {
    let folded = 0;
    fc.assert(
      fc.property(convex, fc.array(line, { minLength: 1, maxLength: 5 }), (points, lines) => {
        let work = piece('sheet', polygon(points));
        const sheet = sheetOf(points);
        for (const crease of lines) {
          // Lines that pass a corner within a tenth of a mm are left out: two libraries may see them on either side.
          const near = work.plies.some(({ outline }) => outline.some(({ from }) => Math.abs(off(crease, from)) < 0.1));
          if (near) continue;
          const next = fold(work, { line: crease, lands: 'over' });
          if (!next.ok) continue;
          // Theirs turns a sheet that lies wholly beyond the line in ways of its own.
          if (!work.plies.some(({ outline }) => outline.some(({ from }) => off(crease, from) > 0))) continue;
          work = next.value;
          foldTheirs(sheet, crease);
        }
        fc.pre(work.plies.length > 1);
        const theirs = theirLayers(sheet);
        const ours = work.plies.map(({ outline, face }) =>
          layerOf(
            outline.map(({ from }) => from),
            face === 'right',
          ),
        );
        folded++;
        expect(ours.length).toBe(theirs.length);
        ours.forEach((layer, i) => {
          expect(layer.x).toBeCloseTo(theirs[i]!.x, 5);
          expect(layer.y).toBeCloseTo(theirs[i]!.y, 5);
          expect(layer.area).toBeCloseTo(theirs[i]!.area, 4);
          expect(layer.up).toBe(theirs[i]!.up);
        });
      }),
      runs(600),
    );
    expect(folded).toBeGreaterThan(300);
  });
});

const off = ({ at, angle }: Line, p: Point): number => {
  const way = direction(angle);
  return way.x * (p.y - at.y) - way.y * (p.x - at.x);
};
