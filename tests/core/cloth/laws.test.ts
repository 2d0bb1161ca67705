import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  clipCorners,
  closeGap,
  findEdge,
  freeEdges,
  gather,
  hem,
  join,
  layerMap,
  outlineNow,
  pleat,
  rotate,
  sewRound,
  size,
  tuck,
  turn,
} from '../../../src/core/cloth/index.ts';
import { bounds, length, polygon, reflect, removeAllowance, withCorners } from '../../../src/core/geometry/index.ts';
import { runs } from '../../random.ts';
import { simplePolygon } from '../geometry/shapes.ts';
import { tangle } from './order.ts';
import { area, clothAreas, piece, rectangle, value } from './works.ts';
import type { Outline } from '../../../src/core/geometry/index.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
const press = fc.constantFrom('open' as const, 'to first' as const, 'to second' as const);
const opposite = { bottom: 'top', right: 'left', top: 'bottom', left: 'right' } as const;
const side = fc.constantFrom('bottom' as const, 'right' as const, 'top' as const, 'left' as const);
const angle = fc.integer({ min: 0, max: 359 });

/** What must stay whatever is sewn, and what the steps must never do. */
function sound(after: Work, before: readonly Work[], cutAway = 0): void {
  expect(tangle(after)).toBeUndefined();
  const areaOf = (works: readonly Work[]) =>
    works.reduce((sum, work) => sum + Object.values(clothAreas(work)).reduce((all, one) => all + one, 0), 0);
  expect(Math.abs(areaOf([after]) + cutAway - areaOf(before))).toBeLessThan(0.01);
}

describe('joining', () => {
  test('widths a and b with allowance s give a + b - 2 s, whichever edges, however they lie and are pressed', () => {
    fc.assert(
      fc.property(
        mm(32, 200),
        mm(32, 200),
        mm(30, 150),
        mm(1, 15),
        press,
        side,
        side,
        angle,
        angle,
        (a, b, wide, s, how, p, q, u, v) => {
          const along = (edge: string, deep: number) =>
            edge === 'top' || edge === 'bottom' ? rectangle(wide, deep) : rectangle(deep, wide);
          const first = value(rotate(piece('first', along(p, a)), u));
          const second = value(rotate(piece('second', along(q, b)), v));
          const layers = [
            { work: first, edge: p },
            { work: second, edge: q },
          ];
          const joined = value(join(layers, { allowance: s, press: how }));
          sound(joined, [first, second]);
          const { width, height } = size(value(rotate(joined, -u)));
          const [long, across] = p === 'top' || p === 'bottom' ? [height, width] : [width, height];
          expect(long).toBeCloseTo(a + b - 2 * s, 6);
          expect(across).toBeCloseTo(wide, 6);
          // The bodies lie right side up, and the far edges are as they were.
          expect(joined.plies.at(-1)!.face).toBe('right');
          expect(joined.done.at(-1)!.together).toBe('right sides together');
          const far = freeEdges(joined).filter(({ ply, edge }) => ply.piece === 'second' && edge === opposite[q]);
          expect(far.map(({ length }) => Math.round(length * 1000))).toEqual([Math.round(wide * 1000)]);
        },
      ),
      runs(1000),
    );
  });
  test('one seam after another: n strips lose two allowances at each seam', () => {
    fc.assert(
      fc.property(fc.array(mm(25, 80), { minLength: 2, maxLength: 6 }), mm(2, 10), press, (widths, s, how) => {
        const strips = widths.map((width, i) => piece(`strip ${i}`, rectangle(width, 60)));
        const joined = strips.slice(1).reduce((work, strip, i) => {
          const layers = [
            { work, edge: `strip ${i} right` },
            { work: strip, edge: 'left' },
          ];
          return value(join(layers, { allowance: s, press: how }));
        }, strips[0]!);
        const sum = widths.reduce((all, width) => all + width, 0);
        expect(size(joined).width).toBeCloseTo(sum - 2 * s * (widths.length - 1), 6);
        sound(joined, strips);
      }),
      runs(300),
    );
  });
});

/** Pairs of one shape, as they are cut: the second is the mirror of the first, so that right sides can touch. */
const mirrored = (outline: Outline): Outline => reflect(outline, { at: { x: 0, y: 0 }, angle: 90 });

describe('turning', () => {
  test('a pair of w x h sewn at s gives (w - 2 s) x (h - 2 s), right sides out', () => {
    fc.assert(
      fc.property(mm(40, 300), mm(40, 300), mm(2, 15), (w, h, s) => {
        const [front, back] = [piece('front', rectangle(w, h)), piece('back', rectangle(w, h))];
        const sewn = value(sewRound(front, back, { allowance: s, gap: { edge: 'bottom', length: (w - 2 * s) / 3 } }));
        const turned = value(turn(sewn));
        sound(turned, [front, back]);
        expect(size(turned).width).toBeCloseTo(w - 2 * s, 6);
        expect(size(turned).height).toBeCloseTo(h - 2 * s, 6);
        const [bottom, top] = [turned.plies[0]!, turned.plies.at(-1)!];
        expect([bottom.piece, bottom.face, top.piece, top.face]).toEqual(['back', 'wrong', 'front', 'right']);
        expect(area(top.outline)).toBeCloseTo((w - 2 * s) * (h - 2 * s), 4);
        // Only the gap's edges are free until it is closed.
        const free = freeEdges(turned);
        expect(free.map(({ edge }) => edge)).toEqual(['bottom', 'bottom']);
        expect(freeEdges(value(closeGap(turned, 'edgestitch')))).toEqual([]);
      }),
      runs(500),
    );
  });
  test('a pair of any shape comes to its stitch line, inner corners clipped', () => {
    let [turnedShapes, hollow, whole] = [0, 0, 0];
    fc.assert(
      fc.property(simplePolygon({ min: 3, max: 7 }), mm(2, 8), (outline, s) => {
        const inside = removeAllowance(outline, s);
        if (!inside.ok) return;
        const [front, back] = [piece('front', outline), piece('back', mirrored(outline))];
        const sewn = sewRound(front, back, { allowance: s, gap: { edge: outline[0]!.name, length: 5 } });
        // A gap of 5 mm may not fit into an edge that the allowances use up.
        if (!sewn.ok) return void expect(['misses', 'unknown-edge']).toContain(sewn.fault.code);
        const turned = turn(sewn.value);
        if (!turned.ok) return void expect(['blocked', 'too-deep']).toContain(turned.fault.code);
        turnedShapes++;
        if (clipped(turned.value)) hollow++;
        sound(turned.value, [front, back]);
        const body = turned.value.plies.at(-1)!;
        // Where the allowances use up most of an edge, inset and stitches are cut short in ways of their own.
        if (inside.value.length !== outline.length || outline.some(({ name }) => length(outline, name) < 4 * s)) return;
        whole++;
        // The same stitch line to a thousandth of a millimetre, all along it.
        const apart = Math.abs(area(body.outline) - area(inside.value));
        expect(apart).toBeLessThan(0.001 * length(outline));
      }),
      runs(250),
    );
    expect(turnedShapes).toBeGreaterThan(100);
    expect(hollow).toBeGreaterThan(30);
    expect(whole).toBeGreaterThan(60);
  });
});

describe('turning along curves', () => {
  const within = (outline: Outline, s: number) => value(removeAllowance(outline, { ...sewnBy(outline, s), top: 0 }));
  const sewnBy = (outline: Outline, s: number) => Object.fromEntries(outline.map(({ name }) => [name, s]));
  /** Both layers of a pair, open at the top. */
  const pair = (outline: Outline, s: number): Work => {
    const [front, back] = [piece('front', outline), piece('back', mirrored(outline))];
    return value(sewRound(front, back, { allowance: s, open: ['top'] }));
  };

  test('rounded corners come to the stitch line, and each chord folds in once', () => {
    fc.assert(
      fc.property(mm(60, 200), mm(60, 200), mm(2, 10), mm(3, 25), mm(3, 25), (w, h, s, p, q) => {
        const outline = value(
          withCorners(rectangle(w, h), { 'bottom-left': { rounded: p }, 'bottom-right': { rounded: q } }),
        );
        const sewn = pair(outline, s);
        const turned = value(turn(sewn));
        sound(turned, [sewn]);
        expect(size(turned).width).toBeCloseTo(w - 2 * s, 6);
        expect(size(turned).height).toBeCloseTo(h - s, 6);
        const body = turned.plies.at(-1)!;
        const apart = Math.abs(area(body.outline) - area(within(outline, s)));
        // Chords leave a curve by 0.05 mm; a curve shorter than a stitch of 2.5 mm is sewn as a corner.
        expect(apart).toBeLessThan(0.05 * length(outline) + 2);
        // A sharp corner is folded twice; everything else once.
        const chords = sewn.stitches[0]!.round!.ring.length - 1;
        expect(turned.plies.length).toBeLessThanOrEqual(2 * (1 + chords + 2));
      }),
      runs(150),
    );
  });

  test('notched curves lie flat: nowhere more than the two layers and their allowances', () => {
    fc.assert(
      fc.property(mm(2, 8), mm(1, 30), (s, more) => {
        // On a curve narrower than its allowance the straight sides' own allowances meet.
        const outline = value(withCorners(rectangle(150, 120), { rounded: 2 * s + more }));
        const sewn = pair(outline, s);
        const notched = value(clipCorners(sewn, 0));
        const turned = value(turn(notched));
        sound(turned, [sewn], notched.done.at(-1)!.cutAway);
        const most = layerMap(turned).filter((region) => region.area > 0.01);
        expect(Math.max(...most.map((region) => region.plies.length))).toBe(4);
      }),
      runs(60),
    );
  });

  test('scallops come to their stitch line, clipped between them', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 5 }), mm(2, 5), mm(4, 12), (many, s, deep) => {
        const wide = 40;
        const scallops = Array.from({ length: many }, (_, i) => ({
          name: `scallop ${i + 1}`,
          from: { x: i * wide, y: 0 },
          bulge: (2 * deep) / wide,
        }));
        const outline: Outline = [
          ...scallops,
          { name: 'right', from: { x: many * wide, y: 0 }, bulge: 0 },
          { name: 'top', from: { x: many * wide, y: 80 }, bulge: 0 },
          { name: 'left', from: { x: 0, y: 80 }, bulge: 0 },
        ];
        const sewn = pair(outline, s);
        const turned = value(turn(sewn));
        sound(turned, [sewn]);
        const apart = Math.abs(area(turned.plies.at(-1)!.outline) - area(within(outline, s)));
        expect(apart).toBeLessThan(0.05 * length(outline) + 2);
      }),
      runs(40),
    );
  });
});

const clipped = (work: Work): boolean => work.plies.some((ply) => ply.outline.some((edge) => edge.name === 'clip'));

describe('hems', () => {
  test('a double-fold hem of f then h on all sides takes 2 (f + h) from each direction, at both kinds of corner', () => {
    fc.assert(
      fc.property(
        mm(120, 300),
        mm(120, 300),
        mm(1, 12),
        mm(2, 20),
        fc.constantFrom('square' as const, 'mitred' as const),
        (w, h, first, then, corners) => {
          const cloth = piece('cloth', rectangle(w, h));
          const edges = ['bottom', 'right', 'top', 'left'];
          const hemmed = value(hem(cloth, { edges, turn: first, then, corners }));
          sound(hemmed, [cloth]);
          expect(size(hemmed).width).toBeCloseTo(w - 2 * (first + then), 6);
          expect(size(hemmed).height).toBeCloseTo(h - 2 * (first + then), 6);
          expect(freeEdges(hemmed)).toEqual([]);
        },
      ),
      runs(300),
    );
  });
  test('a hem of one edge takes what is turned in, at any slant', () => {
    fc.assert(
      fc.property(mm(100, 200), mm(60, 150), mm(2, 10), mm(3, 15), angle, side, (w, h, first, then, degrees, edge) => {
        const cloth = value(rotate(piece('cloth', rectangle(w, h)), degrees));
        const hemmed = value(hem(cloth, { edges: [edge], turn: first, then }));
        sound(hemmed, [cloth]);
        const now = size(value(rotate(hemmed, -degrees)));
        const level = edge === 'top' || edge === 'bottom';
        expect(level ? now.height : now.width).toBeCloseTo((level ? h : w) - first - then, 6);
        expect(level ? now.width : now.height).toBeCloseTo(level ? w : h, 6);
      }),
      runs(300),
    );
  });
});

describe('pleats, tucks and gathers', () => {
  test('each pair of folds takes twice its depth', () => {
    const depths = fc.array(mm(5, 20), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(depths, fc.boolean(), side, angle, (all, up, from, degrees) => {
        const sum = all.reduce((total, depth) => total + depth, 0);
        const deep = 30 + 2 * sum + 25 * all.length;
        const level = from === 'top' || from === 'bottom';
        const cloth = value(rotate(piece('strip', level ? rectangle(80, deep) : rectangle(deep, 80)), degrees));
        let at = 5;
        const folds = all.flatMap((depth) => {
          at += 20;
          const pair = [at, at + depth];
          at += 2 * depth;
          return pair.map((place, i) => ({
            at: place,
            kind: (i === 0) === up ? ('mountain' as const) : ('valley' as const),
          }));
        });
        const pleated = value(pleat(cloth, { from, folds }));
        sound(pleated, [cloth]);
        const now = size(value(rotate(pleated, -degrees)));
        expect(level ? now.height : now.width).toBeCloseTo(deep - 2 * sum, 6);
      }),
      runs(500),
    );
  });
  test('a tuck takes twice its depth', () => {
    fc.assert(
      fc.property(mm(2, 20), mm(40, 60), (depth, at) => {
        const cloth = piece('yoke', rectangle(100, 120));
        const tucked = value(tuck(cloth, { from: 'top', at, depth }));
        sound(tucked, [cloth]);
        expect(size(tucked).height).toBeCloseTo(120 - 2 * depth, 6);
        expect(tucked.stitches[0]!.runs.map((run) => run.plies.length)).toEqual([2]);
      }),
      runs(200),
    );
  });
  test('gathers keep area times fullness, draw up their own edge, and leave the rest as wide as it was', () => {
    fc.assert(
      fc.property(mm(100, 300), mm(40, 100), angle, side, (wide, to, degrees, edge) => {
        const level = edge === 'top' || edge === 'bottom';
        const cloth = value(rotate(piece('frill', level ? rectangle(wide, 60) : rectangle(60, wide)), degrees));
        const gathered = gather(cloth, { edge, to });
        if (wide / to > 5) return void expect(gathered.ok).toBe(false);
        sound(value(gathered), [cloth]);
        const now = value(rotate(value(gathered), -degrees));
        expect(level ? size(now).width : size(now).height).toBeCloseTo(wide, 6);
        expect(value(findEdge(now, edge)).length).toBeCloseTo(to, 6);
        expect(value(findEdge(now, opposite[edge])).length).toBeCloseTo(wide, 6);
        for (const { runs } of now.stitches) {
          expect(
            runs.reduce((sum, { from, to: end }) => sum + Math.hypot(end.x - from.x, end.y - from.y), 0),
          ).toBeCloseTo(to, 6);
        }
      }),
      runs(200),
    );
  });
});

test('a folded outline, with its holes, covers what its plies cover', () => {
  const cloth = piece('cloth', polygon(mirrored(rectangle(80, 60)).map((edge) => edge.from)));
  const total = outlineNow(cloth).reduce((sum, patch) => sum + patch.area, 0);
  expect(total).toBeCloseTo(4800, 6);
  expect(bounds(cloth.plies[0]!.outline)).toEqual({ x: -80, y: 0, width: 80, height: 60 });
});
