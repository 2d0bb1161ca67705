import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Command } from '../../../src/core/drawing/path.ts';
import { inStrokes } from '../../../src/core/drawing/strokes.ts';
import { runs } from '../../random.ts';

const line = (...spots: [number, number][]): Command[] => spots.map(([x, y], i) => [i === 0 ? 'M' : 'L', x, y]);
const moves = (path: readonly Command[]) => path.filter(([letter]) => letter === 'M').length;

describe('strokes', () => {
  it('go through what was told stretch by stretch, in any order and either way round', () => {
    expect(inStrokes([...line([5, 0], [9, 0]), ...line([0, 0], [5, 0])])).toEqual(line([0, 0], [9, 0]));
    expect(inStrokes([...line([5, 0], [0, 0]), ...line([9, 0], [5, 0])])).toEqual(line([9, 0], [0, 0]));
    const [a, b, c] = [line([0, 0], [5, 0]), line([9, 0], [5, 0]), line([9, 0], [9, 4])];
    expect(inStrokes([...a, ...c, ...b])).toEqual(line([9, 4], [9, 0], [0, 0]));
  });

  it('keep corners, ends that lie apart, and ways back', () => {
    expect(inStrokes([...line([0, 0], [5, 0]), ...line([5, 0], [5, 3])])).toEqual(line([0, 0], [5, 0], [5, 3]));
    const apart = [...line([0, 0], [5, 0]), ...line([5.02, 0], [9, 0])];
    expect(inStrokes(apart)).toEqual(apart);
    expect(inStrokes([...line([0, 0], [5, 0]), ...line([5, 0], [3, 0])])).toEqual(line([0, 0], [5, 0], [3, 0]));
  });

  it('go round a ring of lines, and leave closed rings and curves alone', () => {
    const round = [...line([0, 0], [4, 0]), ...line([4, 4], [4, 0]), ...line([4, 4], [0, 4]), ...line([0, 0], [0, 4])];
    expect(moves(inStrokes(round))).toBe(1);
    const ring: Command[] = [...line([0, 0], [4, 0], [4, 4]), ['Z']];
    const curve: Command[] = [
      ['M', 0, 0],
      ['C', 1, 0, 2, 1, 2, 2],
    ];
    expect(inStrokes([...ring, ...curve])).toEqual([...ring, ...curve]);
  });

  it('cover the same points as the lines, no more and no fewer, and never lift the pen more often', () => {
    const spot = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 }));
    const lines = fc.array(
      fc.tuple(spot, spot).filter(([[a, b], [c, d]]) => a !== c || b !== d),
      { maxLength: 14 },
    );
    fc.assert(
      fc.property(lines, (told) => {
        const path = told.flatMap(([from, to]) => line(from, to));
        const drawn = inStrokes(path);
        expect(lengthOf(drawn)).toBeCloseTo(lengthOf(path), 6);
        expect(points(drawn)).toEqual(points(path));
        expect(moves(drawn)).toBeLessThanOrEqual(moves(path));
      }),
      runs(500),
    );
  });
});

function* straights(path: readonly Command[]): Generator<[number, number, number, number]> {
  let [x, y] = [0, 0];
  for (const command of path) {
    if (command[0] === 'L') yield [x, y, command[1], command[2]];
    if (command[0] !== 'Z') [x, y] = [command[1], command[2]];
  }
}

const lengthOf = (path: readonly Command[]): number =>
  [...straights(path)].reduce((sum, [a, b, c, d]) => sum + Math.hypot(c - a, d - b), 0);

/** Points of a fine grid that lie on a path. */
function points(path: readonly Command[]): string[] {
  const found = new Set<string>();
  for (const [a, b, c, d] of straights(path)) {
    for (let i = 0; i <= 8; i++) {
      for (let j = 0; j <= 8; j++) {
        const [x, y] = [i / 2, j / 2];
        const beside = Math.abs((c - a) * (y - b) - (d - b) * (x - a)) > 1e-9;
        const beyond = x < Math.min(a, c) || x > Math.max(a, c) || y < Math.min(b, d) || y > Math.max(b, d);
        if (!beside && !beyond) found.add(`${x} ${y}`);
      }
    }
  }
  return [...found].sort();
}
