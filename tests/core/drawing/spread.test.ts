import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { spread } from '../../../src/core/drawing/spread.ts';
import { runs } from '../../random.ts';

const anyLabels = fc
  .array(
    fc.record({
      at: fc.double({ min: 0, max: 100, noNaN: true }),
      size: fc.double({ min: 0.5, max: 12, noNaN: true }),
    }),
    {
      minLength: 1,
      maxLength: 12,
    },
  )
  .map((labels) => labels.sort((a, b) => a.at - b.at));

const moved = (labels: readonly { at: number }[], places: readonly number[]) =>
  labels.reduce((sum, { at }, i) => sum + (places[i]! - at) ** 2, 0);

describe('spreading labels', () => {
  it('leaves labels alone that have room', () => {
    expect(
      spread(
        [
          { at: 0, size: 4 },
          { at: 9, size: 4 },
          { at: 13, size: 4 },
        ],
        0,
      ),
    ).toEqual([0, 9, 13]);
  });

  it('moves two labels that want the same place by half their size each', () => {
    expect(
      spread(
        [
          { at: 5, size: 4 },
          { at: 5, size: 4 },
        ],
        0,
      ),
    ).toEqual([3, 7]);
  });

  it('never lets labels touch, and keeps their order', () => {
    fc.assert(
      fc.property(anyLabels, fc.double({ min: 0, max: 3, noNaN: true }), (labels, gap) => {
        const places = spread(labels, gap);
        for (let i = 1; i < places.length; i++) {
          const apart = (labels[i - 1]!.size + labels[i]!.size) / 2 + gap;
          expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(apart - 1e-9);
        }
      }),
      runs(500),
    );
  });

  it('moves them as little as may be: no nearby placing without touching is closer to what they want', () => {
    fc.assert(
      fc.property(
        anyLabels,
        fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 12, maxLength: 12 }),
        (labels, nudges) => {
          const places = spread(labels, 0);
          // A nudge, pushed apart again from the first label on, is another placing without touching.
          const other: number[] = [];
          labels.forEach(({ size }, i) => {
            const wish = places[i]! + nudges[i]!;
            const least = i === 0 ? -Infinity : other[i - 1]! + (labels[i - 1]!.size + size) / 2;
            other.push(Math.max(wish, least));
          });
          expect(moved(labels, places)).toBeLessThanOrEqual(moved(labels, other) + 1e-6);
        },
      ),
      runs(500),
    );
  });

  it('keeps them in the room as long as they fit', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        const needed = labels.reduce((sum, { size }) => sum + size, 0);
        const room = { from: 20, to: 20 + needed + 1 };
        const places = spread(labels, 0, room);
        labels.forEach(({ size }, i) => {
          expect(places[i]! - size / 2).toBeGreaterThanOrEqual(room.from - 1e-9);
          expect(places[i]! + size / 2).toBeLessThanOrEqual(room.to + 1e-9);
        });
      }),
      runs(300),
    );
  });
});
