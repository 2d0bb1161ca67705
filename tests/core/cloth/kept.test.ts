import { describe, expect, test } from 'vitest';
import {
  attach,
  baste,
  bind,
  boxCorner,
  clipCorners,
  closeGap,
  flip,
  frenchSeam,
  fuse,
  gather,
  grade,
  lay,
  layersAt,
  topstitch,
  rotate,
  sewRound,
  visibleFrom,
  trim,
  turn,
} from '../../../src/core/cloth/index.ts';
import { crossesOver, withCorners } from '../../../src/core/geometry/index.ts';
import { cut, finish, fold } from '../../../src/core/cloth/index.ts';
import { cutApart } from '../../../src/core/cloth/apart.ts';
import { renamed } from '../../../src/core/cloth/carve.ts';
import { clothAreas, piece, polygon, rectangle, value } from './works.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

/** Rows of which a ply that they hold does not lie under their middle. */
const loose = (work: Work): string[] =>
  work.stitches.flatMap(({ kind, runs }) =>
    runs.flatMap(({ from, to, plies }) => {
      const there = layersAt(work, { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 }).map(({ id }) => id);
      return plies.every((id) => there.includes(id)) ? [] : [kind];
    }),
  );

const long = (work: Work, kind: string): number =>
  work.stitches
    .filter((stitch) => stitch.kind === kind)
    .flatMap(({ runs }) => runs)
    .reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

const row = (x: number, high = 80) => ({
  way: [
    { x, y: 0 },
    { x, y: high },
  ],
});

describe('where cloth is cut away', () => {
  test('rows on a trimmed allowance of a French seam end with it', () => {
    const basted = value(baste(piece('front', rectangle(100, 80)), row(98)));
    const seamed = value(
      frenchSeam(basted, piece('back', rectangle(100, 80)), {
        edges: ['right', 'left'],
        first: 9,
        trimTo: 3,
        second: 6,
      }),
    );
    expect(loose(seamed)).toEqual([]);
    expect(long(seamed, 'baste')).toBe(0);
  });

  test('a row across a graded allowance ends at the cut, and goes on in the layers that keep theirs', () => {
    const pair = value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), { allowance: 10 }),
    );
    const across = value(
      baste(pair, {
        way: [
          { x: 50, y: 0 },
          { x: 50, y: 80 },
        ],
      }),
    );
    const graded = value(grade(across, [2, 6]));
    expect(loose(graded)).toEqual([]);
    // 4 mm less at either end: where neither layer is left.
    expect(long(graded, 'baste')).toBeCloseTo(72, 6);
    const both = graded.stitches.at(-1)!.runs.filter(({ plies }) => plies.length === 2);
    expect(both.map(({ from, to }) => [from.y, to.y])).toEqual([[8, 72]]);
  });

  test('of a ply that falls in two, each row stays on the part it lies on', () => {
    const arch = polygon(
      [
        [0, 0],
        [40, 0],
        [40, 60],
        [60, 60],
        [60, 0],
        [100, 0],
        [100, 80],
        [0, 80],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    const rows = [20, 80].reduce((work, x) => value(baste(work, row(x))), piece('arch', arch));
    const legs = value(trim(rows, { line: { at: { x: 0, y: 50 }, angle: 180 } }));
    expect(legs.plies).toHaveLength(2);
    expect(loose(legs)).toEqual([]);
    const held = legs.stitches.map(({ runs }) => runs.map(({ plies }) => plies).flat());
    expect(new Set(held.flat())).toEqual(new Set(legs.plies.map(({ id }) => id)));
    expect(held.map((plies) => plies.length)).toEqual([1, 1]);
  });

  test('gathered cloth counts as often as it is full', () => {
    const frill = value(gather(piece('frill', rectangle(200, 100)), { edge: 'top', to: 100 }));
    const trimmed = value(trim(frill, { line: { at: { x: 0, y: 90 }, angle: 0 } }));
    const after = Object.values(clothAreas(trimmed)).reduce((sum, one) => sum + one, 0);
    expect(after + trimmed.done.at(-1)!.cutAway!).toBeCloseTo(20_000, 6);
  });

  test('a work that comes second keeps the rows of its steps in its book', () => {
    const bag = value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), { allowance: 10, open: ['top'] }),
    );
    const both = value(lay(value(baste(piece('mat', rectangle(200, 200)), row(50))), bag));
    const [seam] = both.stitches.filter(({ kind }) => kind === 'seam');
    expect(both.done.find(({ did }) => did === 'sew round')!.stitches).toEqual([seam!.id]);
  });

  test('hardware is not cut through', () => {
    const pair = value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), { allowance: 10 }),
    );
    const snapped = value(attach(pair, { name: 'snap', at: { x: 50, y: 2 } }));
    expect(grade(snapped, 3)).toMatchObject({ ok: false, fault: { code: 'blocked' } });
  });

  test('allowances that lie inside are out of reach', () => {
    const pair = value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), {
        allowance: 10,
        gap: { edge: 'left', length: 30 },
      }),
    );
    expect(grade(pair, 3).ok).toBe(true);
    for (const turned of [grade(value(turn(pair)), 3), clipCorners(value(turn(pair)))])
      expect(turned).toMatchObject({ ok: false, fault: { code: 'held' } });
    const bound = value(
      bind(piece('mat', rectangle(100, 80)), piece('strip', rectangle(100, 40)), { edge: 'top', width: 10 }),
    );
    expect(grade(bound, 3)).toMatchObject({ ok: false, fault: { code: 'held' } });
  });

  test('corners are clipped outside the stitches, and nowhere into the body beyond them', () => {
    // Two legs, 24 mm apart: beyond the corner of one lies the body of the other.
    const shape = polygon(
      [
        [0, 0],
        [100, 0],
        [100, 80],
        [62, 80],
        [62, 30],
        [38, 30],
        [38, 50],
        [0, 50],
      ].map(([x, y]) => ({ x: x!, y: y! })),
    );
    const mirror = polygon(shape.map(({ from }) => ({ x: -from.x, y: from.y })));
    const pair = value(sewRound(piece('front', shape), piece('back', mirror), { allowance: 10 }));
    const clipped = value(clipCorners(pair, 1));
    for (const point of [
      { x: 72.5, y: 55 },
      { x: 27.5, y: 39 },
      { x: 50, y: 19.5 },
    ])
      expect(layersAt(clipped, point)).toHaveLength(2);
  });
});

test('a ring of the clipping library goes nowhere and back', () => {
  const ring = polygon(
    [
      [10, 30],
      [6, 30],
      [7, 30],
      [7, 0],
      [10, 0],
    ].map(([x, y]) => ({ x: x!, y: y! })),
  );
  const [clean, ...others] = renamed([ring], [rectangle(10, 30)]);
  expect(others).toEqual([]);
  expect(clean!.map(({ from: { x, y } }) => [x, y])).toEqual([
    [10, 30],
    [7, 30],
    [7, 0],
    [10, 0],
  ]);
});

describe('interfacing', () => {
  test('takes its rows along, and lies as it lay when it was fused', () => {
    const stay = value(rotate(value(baste(piece('stay', rectangle(40, 20)), row(10, 20))), 90));
    const fused = value(fuse(piece('front', rectangle(100, 80)), stay, { inset: { left: 30, bottom: 10 } }));
    expect(loose(fused)).toEqual([]);
    const { transform: lie, outline } = fused.plies[0]!;
    // The corner that was its lower left as it was cut lies lower right now.
    expect([lie.e, lie.f].map((one) => Math.round(one * 1000) / 1000)).toEqual([50, 10]);
    expect(Math.max(...outline.map(({ from }) => from.y))).toBeCloseTo(50, 9);
  });

  test('is not fused through a fold', () => {
    const folded = value(
      fold(piece('front', rectangle(100, 80)), { line: { at: { x: 0, y: 50 }, angle: 180 }, lands: 'under' }),
    );
    const work = value(lay(piece('cover', rectangle(150, 150)), folded));
    const stay = (high: number) =>
      fuse(work, piece('stay', rectangle(80, high)), { to: 'front', inset: { left: 10, bottom: 5 } });
    expect(stay(60)).toMatchObject({ ok: false, fault: { code: 'blocked' } });
    expect(stay(30).ok).toBe(true);
  });

  test('that is larger than its cloth is told, but not what a ruler cannot see', () => {
    const front = piece('front', rectangle(100, 80));
    expect(fuse(front, piece('stay', rectangle(110, 80)))).toMatchObject({
      ok: false,
      fault: { code: 'shapes-differ' },
    });
    // A hair wider than its cloth, it makes no steps in the seam.
    const fused = value(fuse(front, piece('stay', rectangle(100.02, 60))));
    const pair = value(sewRound(fused, piece('back', rectangle(100, 80)), { allowance: 15, open: ['bottom'] }));
    expect(pair.stitches[0]!.round!.ring).toHaveLength(4);
    const turned = value(turn(value(clipCorners(pair, 3))));
    expect(turned.plies.filter(({ piece: name }) => name === 'front').length).toBeLessThan(8);
  });

  test('hides no edge of the cloth behind its own in a drawing', () => {
    const front = value(fuse(piece('front', rectangle(100, 80)), piece('stay', rectangle(60, 80))));
    const work = value(lay(front, piece('cover', rectangle(120, 100))));
    const hidden = visibleFrom(work, 'front').hidden.filter(({ edge }) => edge.name === 'top');
    expect(hidden.map(({ ply }) => ply.piece)).toContain('front');
    const along = hidden
      .filter(({ ply }) => ply.piece === 'front')
      .reduce((sum, { from, to }) => sum + Math.abs(to.x - from.x), 0);
    expect(along).toBeCloseTo(100, 6);
  });
});

describe('a pair sewn round', () => {
  const pair = (gap = 30) =>
    value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), {
        allowance: 10,
        gap: { edge: 'left', length: gap },
      }),
    );

  test('has its gap closed where it lies, also when it was turned over', () => {
    const closed = value(closeGap(value(turn(value(flip(pair())))), 'edgestitch'));
    expect(long(closed, 'edgestitch')).toBeCloseTo(30, 6);
    expect(loose(closed)).toEqual([]);
  });

  test('is not turned when both layers were folded together', () => {
    const folded = value(fold(pair(), { line: { at: { x: 0, y: 76 }, angle: 180 }, lands: 'over' }));
    expect(turn(folded)).toMatchObject({ ok: false, fault: { code: 'held' } });
  });

  test('is not turned where hardware or a boxed corner holds it together', () => {
    const snap = (through: number) => value(attach(pair(), { name: 'snap', at: { x: 50, y: 40 }, through }));
    expect(turn(snap(2))).toMatchObject({ ok: false, fault: { code: 'sewn-down' } });
    expect(turn(snap(1)).ok).toBe(true);
    const strap = value(
      lay(piece('front', rectangle(100, 80)), piece('strap', rectangle(20, 40)), { edges: ['top', 'top'] }),
    );
    const caught = { ...strap, plies: strap.plies.slice(1) };
    const bag = value(
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), {
        allowance: 10,
        open: ['bottom'],
        caught: [caught],
      }),
    );
    const boxed = (square: number) => value(boxCorner(bag, { corner: 'top left', square, allowance: 10 }));
    expect(turn(boxed(38))).toMatchObject({ ok: false, fault: { code: 'sewn-down', piece: 'strap' } });
    expect(turn(boxed(10)).ok).toBe(true);
  });

  test('is not turned into what is too narrow for its allowances', () => {
    const sewn = (allowance: number) =>
      value(
        sewRound(piece('front', rectangle(60, 200)), piece('back', rectangle(60, 200)), {
          allowance,
          gap: { edge: 'top', length: 2 },
        }),
      );
    expect(turn(sewn(29))).toMatchObject({ ok: false, fault: { code: 'too-deep' } });
    expect(turn(sewn(28)).ok).toBe(true);
  });

  test('needs a gap that something goes through', () => {
    const sewn = sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), {
      allowance: 10,
      gap: { edge: 'left', length: 1e-7 },
    });
    expect(sewn).toMatchObject({ ok: false, fault: { code: 'no-gap' } });
  });

  test.each(['no gap', 'a gap of 0.06 mm'])(
    'has no more cloth than went in, fused, open at the bottom, with %s',
    (gap) => {
      const [front, back] = [piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80))];
      const fused = value(fuse(front, piece('stay', rectangle(100, 80))));
      const how = { allowance: 15, open: ['bottom'] };
      const sewn = (length: number) => sewRound(fused, back, { ...how, gap: { edge: 'left', length } });
      expect(sewn(1e-7)).toMatchObject({ ok: false, fault: { code: 'no-gap' } });
      const clipped = value(clipCorners(value(gap === 'no gap' ? sewRound(fused, back, how) : sewn(0.06)), 3));
      const cutAway = clipped.done.reduce((sum, one) => sum + (one.cutAway ?? 0), 0);
      expect(cutAway).toBeGreaterThan(100);
      const cloth = (...works: Work[]) =>
        works.flatMap((work) => Object.values(clothAreas(work))).reduce((sum, area) => sum + area, 0);
      expect(cloth(fused, back) - cloth(clipped)).toBeCloseTo(cutAway, 2);
      expect(cloth(value(turn(clipped)))).toBeCloseTo(cloth(clipped), 2);
    },
  );

  test('does not sew down what is caught in it', () => {
    const caught = (width: number) =>
      sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), {
        allowance: 10,
        gap: { edge: 'bottom', length: 30 },
        caught: [
          value(
            lay(piece('front', rectangle(100, 80)), piece('flap', rectangle(width, 50)), { edges: ['top', 'top'] }),
          ),
        ].map((both) => ({ ...both, plies: both.plies.slice(1) })),
      });
    expect(caught(80).ok).toBe(true);
    expect(caught(90)).toMatchObject({ ok: false, fault: { code: 'sewn-down', piece: 'flap' } });
  });
});

test('turning keeps a row that lies on itself in what lies on the pair', () => {
  const edged = value(finish(piece('flap', rectangle(80, 30)), ['bottom'], 'zigzag'));
  const flap = value(fold(edged, { line: { at: { x: 40, y: 0 }, angle: 90 }, lands: 'over' }));
  const pair = value(
    sewRound(piece('front', rectangle(100, 80)), piece('back', rectangle(100, 80)), { allowance: 10, open: ['top'] }),
  );
  const laid = value(lay(pair, flap, { called: { work: 'flap', nth: 1 } }));
  expect(long(laid, 'zigzag')).toBeCloseTo(80, 6);
  expect(long(value(turn(laid)), 'zigzag')).toBeCloseTo(80, 6);
});

test('no stitch line runs so far inside a curve that bends more tightly', () => {
  const outline = value(withCorners(rectangle(240, 120), { rounded: 30 }));
  const sewn = (allowance: number) =>
    sewRound(piece('front', outline), piece('back', outline), { allowance, open: ['right'] });
  expect(sewn(10).ok).toBe(true);
  expect(sewn(60)).toMatchObject({ ok: false, fault: { code: 'too-deep' } });
});

test('so many slices are cut apart as there are, and none that lacks a hair', () => {
  // 378 of them would take 150.02 mm.
  const { done } = value(cutApart(piece('strip', rectangle(150, 80)), { every: 0.396875 }));
  expect(done.at(-1)).toMatchObject({ apart: { many: 377 } });
  expect(done.at(-1)!.cutAway).toBeCloseTo((80 * (150 - 377 * 0.396875)) / 377, 6);
});

test('a row on the line where cloth was drawn up before is drawn up with it once more', () => {
  // A narrow frill is drawn up to half of how wide it is.
  const once = value(gather(piece('frill', rectangle(100, 20)), { edge: 'top', to: 60 }));
  for (const [from, to] of [
    [0, 100],
    [100, 0],
  ] as const) {
    const way = [
      { x: from, y: 10 },
      { x: to, y: 10 },
    ];
    const twice = value(gather(value(topstitch(once, { way })), { edge: 'top', to: 30 }));
    expect(loose(twice)).toEqual([]);
    // It holds the cloth below, which is as wide as it was, or what is drawn up, from 60 to 30.
    expect([30, 100]).toContain(Math.round(long(twice, 'topstitch')));
  }
});

test('an outline that crosses itself is no piece', () => {
  const points = [
    { x: 0, y: 0 },
    { x: 100, y: 80 },
    { x: 100, y: 0 },
    { x: 0, y: 60 },
  ];
  expect(crossesOver(polygon(points))).toBe(true);
  const made = cut({ piece: 'bow', material: 'linen', outline: polygon(points) });
  expect(made).toMatchObject({ ok: false, fault: { code: 'crosses-itself', piece: 'bow' } });
  // Where it only touches itself, it is one.
  const touches = polygon([
    { x: 0, y: 0 },
    { x: 100, y: 0 },
    { x: 100, y: 80 },
    { x: 50, y: 0 },
    { x: 0, y: 80 },
  ]);
  expect(crossesOver(touches)).toBe(false);
});
