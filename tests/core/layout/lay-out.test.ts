import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut, searchLayouts } from '../../../src/core/layout/index.ts';
import { polygon, rectangle } from '../../../src/core/geometry/index.ts';
import { cutUp } from './cut-up.ts';
import { faults, mismatches } from './verify.ts';
import type { Cloth, Demand, LayOptions, Wanted } from '../../../src/core/layout/index.ts';

const piece = (name: string, width: number, height: number, count: number, more: Partial<Wanted> = {}): Wanted => ({
  name,
  outline: rectangle(width, height),
  count,
  ...more,
});
const bolt = (width: number, more: Partial<Cloth> = {}): Cloth => ({ name: 'bolt', kind: 'bolt', width, ...more });

describe('rectangles cut from one piece of cloth', () => {
  // The cloth they were cut from is the shortest they can be laid in.
  test.each([
    ['free', false, 6, 1],
    ['free', true, 12, 1.05],
    ['free', true, 40, 1.06],
    ['free', true, 150, 1.06],
    ['straight cuts', false, 6, 1],
    ['straight cuts', false, 12, 1.1],
    ['straight cuts', false, 40, 1.3],
  ] as const)('%s, pinwheels %s, %i pieces: at most %f times the length', (manner, pinwheels, count, most) => {
    for (const seed of [1, 2, 3, 4]) {
      const demand = cutUp(seed, 60, 48, count, pinwheels).map((r, i) => piece(`part ${i}`, r.width, r.height, 1));
      const layout = layOut(demand, [bolt(60)], { manner });
      expect(faults(layout, demand, [bolt(60)], { manner })).toEqual([]);
      expect(layout.length).toBeGreaterThanOrEqual(48);
      expect(layout.length).toBeLessThanOrEqual(48 * most);
      expect(layout.bound.length).toBe(48);
      expect(layout.proven).toBe(layout.length === 48);
      expect(layout.share).toBeCloseTo(48 / layout.length, 10);
    }
  });

  test('lengths in inches lose nothing to rounding', () => {
    const third = 25.4 / 3;
    const layout = layOut([piece('third', third, third, 9)], [bolt(25.4)], {});
    expect(layout.length).toBeCloseTo(25.4, 3);
    expect(layout.proven).toBe(true);
  });
});

/** Any demand of rectangles a person might have, with the cloth and the options. */
const anyTask = fc.record({
  demand: fc
    .array(
      fc.record({
        width: fc.integer({ min: 1, max: 40 }),
        height: fc.integer({ min: 1, max: 60 }),
        count: fc.integer({ min: 0, max: 6 }),
        grain: fc.constantFrom('lengthwise', 'crosswise', 'any', 'bias', undefined),
        nap: fc.constantFrom('up', 'any', undefined),
      }),
      { maxLength: 7 },
    )
    .map((list) =>
      list.map(({ width, height, count, ...more }, i) => piece(`piece ${i}`, width * 6.35, height * 6.35, count, more)),
    ),
  cloths: fc.array(
    fc.record({
      kind: fc.constantFrom('bolt', 'pre-cut', 'offcut'),
      width: fc.integer({ min: 10, max: 60 }).map((n) => n * 6.35),
      length: fc.integer({ min: 10, max: 80 }).map((n) => n * 6.35),
      open: fc.boolean(),
      count: fc.constantFrom(undefined, 1, 2),
      selvage: fc.constantFrom(undefined, 0, 12.7),
      nap: fc.constantFrom('none', 'one way', undefined),
      folded: fc.constantFrom(true, false),
    }),
    { maxLength: 3 },
  ),
  options: fc.record({
    manner: fc.constantFrom('free', 'straight cuts', undefined),
    gap: fc.constantFrom(undefined, 0, 3),
    edge: fc.constantFrom(undefined, 0, 5),
    seed: fc.integer(),
    tries: fc.constantFrom(1, 20, 200),
  }) as fc.Arbitrary<LayOptions>,
});

const made = (list: { kind: string; open: boolean; length: number }[]): Cloth[] =>
  list.map(({ open, length, ...rest }, i) => ({
    ...(rest as Cloth),
    name: `cloth ${i}`,
    ...(open && rest.kind === 'bolt' ? {} : { length }),
  }));

describe('whatever is asked', () => {
  test('every layout stands up to an independent check', () => {
    fc.assert(
      fc.property(anyTask, ({ demand, cloths, options }) => {
        const on = made(cloths);
        expect(faults(layOut(demand, on, options), demand, on, options)).toEqual([]);
      }),
      { numRuns: 150 },
    );
  });

  test('the same seed and tries give the same layout, and steps only get better', () => {
    fc.assert(
      fc.property(anyTask, ({ demand, cloths, options }) => {
        const on = made(cloths);
        const steps = [...searchLayouts(demand, on, options)].flatMap((step) => step.better ?? []);
        expect(layOut(demand, on, options)).toEqual(steps.at(-1));
        const left = steps.map((step) => step.left.reduce((sum, { count }) => sum + count, 0));
        for (let i = 1; i < steps.length; i++) {
          const better =
            left[i]! - left[i - 1]! ||
            steps[i]!.preCuts - steps[i - 1]!.preCuts ||
            steps[i]!.length - steps[i - 1]!.length;
          expect(better).toBeLessThan(0);
        }
      }),
      { numRuns: 60 },
    );
  });

  test('numbers that are no numbers never throw', () => {
    const odd = fc.constantFrom(NaN, Infinity, -Infinity, -1, 0, 1e300, 1e-300, 100);
    fc.assert(
      fc.property(
        odd,
        odd,
        odd,
        odd,
        odd,
        odd,
        odd,
        odd,
        (width, height, count, clothWidth, selvage, length, gap, edge) => {
          const demand = [piece('odd', width, height, count), piece('even', 20, 20, 2)];
          const cloths: Cloth[] = [
            { name: 'odd cloth', kind: 'pre-cut', width: clothWidth, selvage, length, repeat: gap, count: 3 },
          ];
          const layout = layOut(demand, cloths, {
            gap,
            edge,
            selling: { shrinkage: edge, step: gap, straightening: edge },
            tries: 10,
          });
          expect(Number.isFinite(layout.buy.total)).toBe(true);
          expect(layout.findings.length + layout.cloths.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('grain, nap, fold and repeat', () => {
  test('a quarter turn only where the grain may be any', () => {
    const cloths = [bolt(300)];
    expect(layOut([piece('long', 100, 300, 2, { grain: 'any' })], cloths).length).toBe(200);
    expect(layOut([piece('long', 100, 300, 2)], cloths).length).toBe(300);
    expect(layOut([piece('long', 100, 300, 2, { grain: 'crosswise' })], cloths).length).toBe(200);
    expect(layOut([piece('long', 100, 300, 2, { grain: 'any', nap: 'up' })], cloths).length).toBe(300);
  });

  test('a half pattern is opened out on open cloth', () => {
    const demand = [piece('back', 100, 300, 1, { fold: 'left' })];
    const layout = layOut(demand, [bolt(250)]);
    expect(layout.cloths[0]!.placements[0]!.size).toEqual({ width: 200, height: 300 });
    expect(faults(layout, demand, [bolt(250)])).toEqual([]);
    expect(layOut([piece('back', 100, 300, 1, { fold: 'bottom' })], [bolt(250)]).length).toBe(600);
  });

  test('on folded cloth it lies at the fold, and others are cut two at once', () => {
    const demand = [
      piece('back', 100, 300, 1, { fold: 'right' }),
      piece('sleeve', 140, 200, 2),
      piece('collar', 100, 50, 3),
    ];
    const cloths = [bolt(500, { folded: true })];
    const layout = layOut(demand, cloths);
    expect(faults(layout, demand, cloths)).toEqual([]);
    // Back at the fold, sleeve beside it, and above the sleeve two cuts for three collars.
    expect(layout.length).toBe(300);
    expect(layout.cloths[0]!.placements.filter((one) => one.piece === 'sleeve')).toHaveLength(1);
    expect(layout.cloths[0]!.placements.find((one) => one.piece === 'back')).toMatchObject({ layers: 1, at: { x: 0 } });
  });

  test.each(['free', 'straight cuts'] as const)('%s: matched pieces take the same place on the repeat', (manner) => {
    const cloths = [bolt(900, { repeat: 240 })];
    const demand = [
      piece('front', 400, 500, 2, { match: { group: 'bodice', at: 100 } }),
      piece('back', 420, 530, 2, { match: { group: 'bodice', at: 130 } }),
      piece('cuff', 120, 90, 4, { match: { group: 'cuffs', at: 0 } }),
      piece('pocket', 150, 180, 3),
    ];
    const layout = layOut(demand, cloths, { manner });
    expect(layout.left).toEqual([]);
    expect(faults(layout, demand, cloths, { manner })).toEqual([]);
    expect(mismatches(layout, demand, cloths)).toEqual([]);
  });

  test('matching costs no more than whole repeats', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 300 }),
        fc.integer({ min: 50, max: 400 }),
        fc.integer({ min: 1, max: 5 }),
        (repeat, height, count) => {
          const demand = [piece('panel', 900, height, count, { match: { group: 'curtain', at: 0 } })];
          const drop = Math.ceil(height / repeat) * repeat;
          expect(layOut(demand, [bolt(1000, { repeat })]).length).toBeCloseTo((count - 1) * drop + height, 4);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('outlines of any shape nest, left and right, closer than the boxes round them', () => {
    const triangle = polygon(
      [
        { x: 0, y: 0 },
        { x: 100, y: 0 },
        { x: 0, y: 150 },
      ],
      ['base', 'slope', 'side'],
    );
    const demand: Demand = [{ name: 'flap', outline: triangle, count: 4 }];
    const layout = layOut(demand, [bolt(202)]);
    expect(faults(layout, demand, [bolt(202)])).toEqual([]);
    // Two by two they make boxes of 100 x 150, but for the clearance of a few hundredths.
    expect(layout.length).toBeLessThan(151);
    const pairs: Demand = [{ name: 'flap', outline: triangle, count: 4, mirrored: 2, nap: 'up' }];
    const mirrored = layOut(pairs, [bolt(450)], { gap: 2 });
    expect(faults(mirrored, pairs, [bolt(450)], { gap: 2 })).toEqual([]);
    expect(mirrored.cloths[0]!.placements.filter((one) => one.mirrored)).toHaveLength(2);
  });

  test('an outline on the fold, and outlines that match', () => {
    const half = polygon(
      [
        { x: 0, y: 0 },
        { x: 120, y: 0 },
        { x: 90, y: 200 },
        { x: 0, y: 260 },
      ],
      ['hem', 'side', 'shoulder', 'centre'],
    );
    const demand: Demand = [
      { name: 'front', outline: half, count: 2, fold: 'centre', match: { group: 'check', at: 20 } },
      {
        name: 'pocket',
        outline: polygon([
          { x: 0, y: 0 },
          { x: 60, y: 0 },
          { x: 30, y: 80 },
        ]),
        count: 3,
        match: { group: 'check', at: 0 },
      },
    ];
    for (const folded of [true, false]) {
      const cloths = [bolt(500, { folded, repeat: 50 })];
      const layout = layOut(demand, cloths);
      expect(layout.left).toEqual([]);
      expect(faults(layout, demand, cloths)).toEqual([]);
      expect(mismatches(layout, demand, cloths)).toEqual([]);
    }
  });

  test('by straight cuts other outlines are laid by the box round them, and on the bias aslant', () => {
    const demand: Demand = [
      {
        name: 'flap',
        outline: polygon([
          { x: 0, y: 0 },
          { x: 100, y: 0 },
          { x: 50, y: 60 },
        ]),
        count: 5,
      },
      piece('binding', 30, 200, 2, { grain: 'bias' }),
    ];
    for (const manner of ['free', 'straight cuts'] as const) {
      const layout = layOut(demand, [bolt(400)], { manner });
      expect(layout.left).toEqual([]);
      expect(faults(layout, demand, [bolt(400)], { manner })).toEqual([]);
    }
  });
});

describe('what straight cuts part can be cut out with scissors, too', () => {
  test('outlines whose boxes lie best in strips', () => {
    // Twelve stiffened covers with a flap each, its lower corners cut off: in strips, two covers high and one flap.
    const flap = polygon([
      { x: 0, y: 25 },
      { x: 25, y: 0 },
      { x: 83, y: 0 },
      { x: 108, y: 25 },
      { x: 108, y: 143 },
      { x: 0, y: 143 },
    ]);
    const demand = [piece('cover', 114, 162, 12), { name: 'flap', outline: flap, count: 12 }];
    const [free, straight] = (['free', 'straight cuts'] as const).map((manner) =>
      layOut(demand, [bolt(1118)], { manner }),
    );
    expect(free!.length).toBeLessThanOrEqual(straight!.length);
    expect(free).toMatchObject({ manner: 'free', left: [], cloths: [{ cuts: [] }] });
    expect(faults(free!, demand, [bolt(1118)])).toEqual([]);
  });

  test('a free layout is never longer, for the same seed and tries', () => {
    fc.assert(
      fc.property(anyTask, ({ demand, cloths, options }) => {
        const on = made(cloths).map((cloth) => ({ ...cloth, folded: false }));
        const [free, straight] = (['free', 'straight cuts'] as const).map((manner) =>
          layOut(demand, on, { ...options, manner }),
        );
        const left = (layout: typeof free): number => layout!.left.reduce((sum, { count }) => sum + count, 0);
        const more =
          left(free) - left(straight) || free!.preCuts - straight!.preCuts || free!.length - straight!.length;
        expect(more).toBeLessThanOrEqual(1e-6);
      }),
      { numRuns: 150 },
    );
  });
});

describe('several cloths', () => {
  test('offcuts are used first, and the bolt takes the rest', () => {
    const demand = [piece('square', 100, 100, 10)];
    const cloths: Cloth[] = [{ name: 'offcut', kind: 'offcut', width: 250, length: 210 }, bolt(300)];
    const layout = layOut(demand, cloths);
    expect(layout.cloths.map((laid) => [laid.cloth, laid.placements.length])).toEqual([
      ['offcut', 4],
      ['bolt', 6],
    ]);
    expect(layout.length).toBe(200);
    expect(faults(layout, demand, cloths)).toEqual([]);
  });

  test('as many pre-cuts as it takes, and no fewer can do', () => {
    const demand = [piece('large', 300, 300, 3), piece('small', 100, 100, 4)];
    const cloths: Cloth[] = [{ name: 'fat quarter', kind: 'pre-cut', width: 457, length: 558 }];
    const layout = layOut(demand, cloths);
    expect(layout).toMatchObject({ preCuts: 3, bound: { preCuts: 3 }, proven: true, length: 0 });
    expect(faults(layout, demand, cloths)).toEqual([]);
  });

  test('two short bolts save the gap between what lies on one and on the other', () => {
    const demand = [piece('a', 12.7, 31.75, 2, { grain: 'crosswise' }), piece('b', 31.75, 19.05, 2)];
    const cloths = [bolt(63.5, { length: 63.5, count: 2 })];
    const options: LayOptions = { manner: 'straight cuts', gap: 3, tries: 1 };
    const layout = layOut(demand, cloths, options);
    expect(faults(layout, demand, cloths, options)).toEqual([]);
    expect(layout.bound.length).toBeLessThanOrEqual(layout.length);
  });

  test('a bolt with an end gives what it can', () => {
    const layout = layOut([piece('square', 100, 100, 10)], [bolt(300, { length: 250 })]);
    expect(layout.left).toEqual([{ piece: 'square', count: 4 }]);
    expect(layout.proven).toBe(false);
    expect(layout.findings.map((finding) => finding.message)).toEqual([
      'There is not enough cloth: 4 pieces are left over.',
    ]);
  });
});

test('pieces match from one pre-cut to the next', () => {
  const cloths: Cloth[] = [{ name: 'panel', kind: 'pre-cut', width: 300, length: 500, repeat: 120 }];
  for (const manner of ['free', 'straight cuts'] as const) {
    const demand = [
      piece('front', 200, 300, 2, { match: { group: 'side', at: 40 } }),
      piece('back', 200, 280, 2, { match: { group: 'side', at: 90 } }),
      piece('pocket', 90, 100, 3),
    ];
    const layout = layOut(demand, cloths, { manner });
    expect(layout).toMatchObject({ left: [], preCuts: 4 });
    expect(mismatches(layout, demand, cloths)).toEqual([]);
    expect(faults(layout, demand, cloths, { manner })).toEqual([]);
  }
});

describe('straight cuts', () => {
  test('the list of cuts, strips first', () => {
    const layout = layOut([piece('big', 254, 200, 2), piece('small', 100, 80, 1)], [bolt(700, { selvage: 10 })], {
      manner: 'straight cuts',
    });
    const list = layout.cloths[0]!.cuts.map(
      (cut) => `${cut.of} ${cut.way} ${cut.measure}: ${cut.makes}, ${cut.leaves}`,
    );
    expect(list).toEqual([
      'bolt across 200: strip A, bolt',
      'strip A lengthwise 10: waste, strip A',
      'strip A lengthwise 254: big 1, strip A',
      'strip A lengthwise 254: big 2, strip A',
      'strip A lengthwise 100: strip B, waste',
      'strip B across 80: small 1, waste',
    ]);
  });

  test('strips across are preferred where they take no more', () => {
    const layout = layOut([piece('square', 50, 50, 12)], [bolt(200)], { manner: 'straight cuts' });
    expect(layout.cloths[0]!.cuts.filter((cut) => cut.way === 'across')).toHaveLength(3);
    expect(layout.cloths[0]!.cuts).toHaveLength(3 + 3 * 3);
  });
});

describe('anytime', () => {
  const demand = cutUp(9, 97, 89, 90, true).map((r, i) => piece(`part ${i}`, r.width, r.height, 1));

  test('ends when told to, with the best so far', () => {
    let asked = 0;
    const layout = layOut(demand, [bolt(97)], { tries: 1e9, cancelled: () => ++asked > 5 });
    expect(layout.left).toEqual([]);
    expect(faults(layout, demand, [bolt(97)])).toEqual([]);
  });

  test('ends when its time is up', () => {
    const began = Date.now();
    layOut(demand, [bolt(97)], { seconds: 0.2 });
    expect(Date.now() - began).toBeLessThan(5000);
  });

  test('a second opinion costs more tries and is never longer', () => {
    const [quick, long] = [5, 2000].map((tries) => layOut(demand, [bolt(97)], { tries }).length);
    expect(long!).toBeLessThanOrEqual(quick!);
  });

  test('word of how many layouts were tried comes between better ones, and never falls', () => {
    const steps = [...searchLayouts(demand, [bolt(97)], { tries: 2000 })];
    expect(steps.filter((step) => !step.better).length).toBeGreaterThan(5);
    expect(steps.at(-1)!.tries).toBeGreaterThan(1500);
    for (let i = 1; i < steps.length; i++) expect(steps[i]!.tries).toBeGreaterThanOrEqual(steps[i - 1]!.tries);
  });

  test('ten thousand alike are one kind', () => {
    const many = [piece('square', 50, 50, 10_000)];
    const layout = layOut(many, [bolt(1100)]);
    expect(layout.length).toBe(Math.ceil(10_000 / 22) * 50);
    expect(layout.proven).toBe(true);
  });
});

test('ten thousand of an outline are laid by the boxes round them', () => {
  const triangle = polygon([
    { x: 0, y: 0 },
    { x: 50, y: 0 },
    { x: 0, y: 50 },
  ]);
  const demand = [{ name: 'triangle', outline: triangle, count: 10_000, mirrored: 4 }];
  const layout = layOut(demand, [bolt(1100)]);
  expect(layout.left).toEqual([]);
  expect(layout.length).toBe(Math.ceil(10_000 / 22) * 50);
  expect(layout.proven).toBe(false);
});

describe('what cannot be laid is named', () => {
  const messages = (demand: Demand, cloths: Cloth[], options: LayOptions = {}): string[] =>
    layOut(demand, cloths, options).findings.map((finding) =>
      [finding.message, finding.fix].filter((text) => text !== undefined).join(' '),
    );

  test.each<[string, Demand, Cloth[], LayOptions, string[]]>([
    ['nothing', [], [bolt(100)], {}, ['There is no piece to lay.']],
    ['no cloth', [piece('a', 10, 10, 1)], [], {}, ['There is no cloth to lay on. Add a bolt, a pre-cut or an offcut.']],
    [
      'too wide, but not if turned',
      [piece('sash', 500, 80, 1)],
      [bolt(400)],
      {},
      [
        'Sash is 500 mm wide; bolt has room for 400 mm. Turned by a quarter it would fit: let its grain be any, if the piece allows it.',
      ],
    ],
    [
      'too wide, in inches',
      [piece('quilt back', 1270, 1270, 1)],
      [bolt(1016)],
      { edition: 'inch' },
      ['Quilt back is 50 in wide; bolt has room for 40 in. Join it from two pieces, or take wider cloth.'],
    ],
    [
      'too long',
      [piece('strip', 50, 900, 1)],
      [{ name: 'fat quarter', kind: 'pre-cut', width: 457, length: 558 }],
      {},
      ['Strip is 900 mm long; fat quarter has room for 558 mm. Join it from two pieces, or take a longer cloth.'],
    ],
    [
      'a repeat of nothing',
      [piece('a', 10, 10, 1)],
      [bolt(100, { repeat: 0 })],
      {},
      ['The repeat of bolt must be a length above 0. Leave it out where nothing repeats.'],
    ],
    [
      'nothing to match by',
      [piece('a', 10, 10, 1, { match: { group: 'g', at: 0 } })],
      [bolt(100)],
      {},
      ['Pieces are to match, and no cloth has a repeat. Give the cloth the height of its repeat.'],
    ],
    [
      'a repeat that is higher than the cloth',
      [
        piece('front', 200, 400, 1, { match: { group: 'side seam', at: 0 } }),
        piece('back', 200, 400, 1, { match: { group: 'side seam', at: 300 } }),
      ],
      [{ name: 'fat quarter', kind: 'pre-cut', width: 457, length: 558, repeat: 600 }],
      {},
      [
        'The repeat of fat quarter leaves back no place that matches its group. Take a longer cloth, or let it lie unmatched.',
      ],
    ],
    ['half a piece', [piece('a', 10, 10, 1.5)], [bolt(100)], {}, ['Give a a whole number of pieces, 0 or more.']],
    [
      'only selvage',
      [piece('a', 10, 10, 1)],
      [bolt(20, { selvage: 10 })],
      {},
      ['Nothing is left of the width of bolt between its edges.'],
    ],
    [
      'more shrinkage than cloth',
      [piece('a', 10, 10, 1)],
      [bolt(20)],
      { selling: { shrinkage: 100 } },
      ['The shrinkage must be 0 or more and at most 50; it is left out.'],
    ],
    [
      'an offcut of any length',
      [piece('a', 10, 10, 1)],
      [{ name: 'rest', kind: 'offcut', width: 50 }],
      {},
      ['Say how long rest is; only a bolt goes on.'],
    ],
    [
      'a fold edge that is not there',
      [piece('a', 10, 10, 1, { fold: 'centre' })],
      [bolt(20)],
      {},
      ['A has no straight edge called “centre” to lay on the fold.'],
    ],
    [
      'a fold edge across the grain',
      [piece('yoke', 10, 10, 1, { fold: 'bottom' })],
      [bolt(100, { folded: true })],
      {},
      [
        'The fold edge of yoke does not run along the grain, as the fold of the cloth does. Lay it on open cloth, or choose the other grain.',
      ],
    ],
    [
      'far too many',
      [piece('a', 10, 10, 30_000)],
      [bolt(100)],
      {},
      ['These are more than 20000 pieces; lay them in several layouts.'],
    ],
  ])('%s', (_what, demand, cloths, options, expected) => {
    expect(messages(demand, cloths, options)).toEqual(expected);
  });

  test('the rest is laid all the same', () => {
    const layout = layOut([piece('wide', 500, 50, 1), piece('narrow', 50, 50, 4)], [bolt(200)]);
    expect(layout.left).toEqual([{ piece: 'wide', count: 1 }]);
    expect(layout.length).toBe(50);
    expect(layout.findings[0]).toMatchObject({ place: ['pieces', 'wide'], code: 'piece too wide', amount: 300 });
  });
});
