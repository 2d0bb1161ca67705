import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cropped, placedShapes } from '../../../src/core/handout/place.ts';
import { shareSheets } from '../../../src/core/handout/share.ts';
import type { Path } from '../../../src/core/index.ts';
import { runs } from '../../random.ts';

const box = { x: 10, y: 20, width: 100, height: 60 };

type At = { x: number; y: number };

/** Points along every stroke of a path, close together. */
function along(path: Path, steps = 400): At[] {
  const found: At[] = [];
  let [start, here]: At[] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  for (const command of path) {
    if (command[0] === 'M') {
      start = here = { x: command[1], y: command[2] };
      continue;
    }
    const [p, q, r, s] =
      command[0] === 'C'
        ? [here!, { x: command[1], y: command[2] }, { x: command[3], y: command[4] }, { x: command[5], y: command[6] }]
        : [here!, here!, undefined, command[0] === 'Z' ? start! : { x: command[1], y: command[2] }];
    for (let i = 0; i <= steps; i++) {
      const t = i / steps;
      const mix = (a: number, b: number, c: number | undefined, d: number) =>
        c === undefined
          ? a + (d - a) * t
          : a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t * t * (1 - t) + d * t ** 3;
      found.push({ x: mix(p.x, q.x, r?.x, s.x), y: mix(p.y, q.y, r?.y, s.y) });
    }
    here = s!;
  }
  return found;
}

const inside = ({ x, y }: At, blank = 0) =>
  x >= box.x - blank && x <= box.x + box.width + blank && y >= box.y - blank && y <= box.y + box.height + blank;

describe('a line on a sheet', () => {
  const number = fc.integer({ min: -60, max: 180 });
  const anyPath: fc.Arbitrary<Path> = fc
    .tuple(
      fc.tuple(number, number),
      fc.array(
        fc.oneof(
          fc.tuple(number, number).map(([x, y]) => ['L', x, y] as const),
          fc.tuple(number, number, number, number, number, number).map((numbers) => ['C', ...numbers] as const),
        ),
        { minLength: 1, maxLength: 5 },
      ),
      fc.boolean(),
    )
    .map(([[x, y], strokes, isClosed]) => [['M', x, y], ...strokes, ...(isClosed ? [['Z'] as const] : [])]);

  it('is cut off at its rim, and all of it within is kept', () => {
    fc.assert(
      fc.property(anyPath, (path) => {
        const kept = along(cropped(path, box));
        for (const point of kept) expect(inside(point, 1e-6)).toBe(true);
        // Every part of the line well within the box is still there: the nearest kept point is a step away at most.
        const far = along(path)
          .filter((point) => inside(point, -1))
          .filter((point) => !kept.some((other) => Math.hypot(other.x - point.x, other.y - point.y) < 2.5));
        expect(far).toEqual([]);
      }),
      runs(120),
    );
  });

  it('stays as it is, and closed, where all of it is within', () => {
    const path: Path = [['M', 20, 30], ['L', 40, 30], ['L', 40, 50], ['Z']];
    expect(cropped(path, box)).toEqual(path);
  });

  it('crosses a sheet from rim to rim', () => {
    const [from, to] = cropped(
      [
        ['M', 0, 50],
        ['L', 200, 50],
      ],
      box,
    ) as [['M', number, number], ['L', number, number]];
    expect([from[0], to[0]]).toEqual(['M', 'L']);
    expect(from[1]).toBeCloseTo(10, 9);
    expect(to[1]).toBeCloseTo(110, 9);
    expect([from[2], to[2]]).toEqual([50, 50]);
    expect(
      cropped(
        [
          ['M', 0, 0],
          ['L', 5, 200],
        ],
        box,
      ),
    ).toEqual([]);
  });

  it('keeps its look where it is moved and enlarged', () => {
    const text = { kind: 'text', name: 'a', text: 'A', x: 1, y: 2, size: 3, anchor: 'start' } as const;
    expect(placedShapes([text], { x: 10, y: 20 }, 2, 'b')).toEqual([{ ...text, name: 'b a', x: 12, y: 24, size: 6 }]);
  });
});

describe('pieces that share sheets', () => {
  const sheet = { width: 190, height: 225 };
  const anySize = fc.record({ width: fc.integer({ min: 5, max: 190 }), height: fc.integer({ min: 5, max: 225 }) });

  it('lie within, apart from each other, each once, and on no more sheets than there are pieces', () => {
    fc.assert(
      fc.property(fc.array(anySize, { minLength: 1, maxLength: 14 }), (sizes) => {
        const parcels = sizes.map((size, what) => ({
          what,
          size,
          turnedSize: { width: size.height, height: size.width },
        }));
        const sheets = shareSheets(parcels, sheet);
        expect(
          sheets
            .flat()
            .map(({ what }) => what)
            .sort((a, b) => a - b),
        ).toEqual(sizes.map((_, i) => i));
        for (const lots of sheets) {
          for (const [i, { what, turned, box }] of lots.entries()) {
            const size = sizes[what]!;
            expect([box.width, box.height]).toEqual(turned ? [size.height, size.width] : [size.width, size.height]);
            expect(Math.min(box.x, box.y)).toBeGreaterThanOrEqual(0);
            expect(box.x + box.width).toBeLessThanOrEqual(sheet.width);
            expect(box.y + box.height).toBeLessThanOrEqual(sheet.height);
            for (const { box: other } of lots.slice(i + 1)) {
              const apart = Math.max(
                other.x - box.x - box.width,
                box.x - other.x - other.width,
                other.y - box.y - box.height,
                box.y - other.y - other.height,
              );
              expect(apart).toBeGreaterThanOrEqual(5 - 1e-9);
            }
          }
        }
      }),
      runs(100),
    );
  });

  it('are turned only where that saves a sheet', () => {
    const square = { width: 60, height: 80 };
    const parcels = [1, 2, 3].map((what) => ({ what, size: square, turnedSize: { width: 80, height: 60 } }));
    expect(shareSheets(parcels, sheet).map((lots) => lots.map(({ turned }) => turned))).toEqual([
      [false, false, false],
    ]);
    // Two of 100 × 130 stand on no sheet beside each other or above: 205 or 265 mm. Lying they are 205 mm high.
    const long = { size: { width: 100, height: 130 }, turnedSize: { width: 130, height: 100 } };
    const lying = shareSheets(
      [1, 2].map((what) => ({ what, ...long })),
      sheet,
    );
    expect(lying).toHaveLength(1);
    expect(lying[0]!.every(({ turned }) => turned)).toBe(true);
  });
});
