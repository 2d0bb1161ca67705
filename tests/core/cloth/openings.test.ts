/**
 * What is done round an opening, a folded work that is sewn up, and one work put into another. The worked figures are
 * reckoned by hand beside each; the laws hold for bags of any size.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  boxCorner,
  closeGap,
  fold,
  hem,
  join,
  lay,
  layersAt,
  sewRound,
  size,
  trim,
  turn,
} from '../../../src/core/cloth/index.ts';
import { edgesOn } from '../../../src/core/cloth/sides.ts';
import { hemOpening } from '../../../src/core/cloth/hem.ts';
import { joinOpenings, pushIn, putInto, turnThrough } from '../../../src/core/cloth/put.ts';
import { openingAsked, openingsOf } from '../../../src/core/cloth/openings.ts';
import { ok } from '../../../src/core/measure/index.ts';
import { area, piece, polygon, rectangle, value } from './works.ts';
import { pushTube } from '../../../src/core/cloth/push-tube.ts';
import { rowsAlong } from '../../../src/core/steps/rows.ts';
import { sewUp, sewUpFrench } from '../../../src/core/cloth/sew-up.ts';
import { wallsOf } from '../../../src/core/cloth/walls.ts';
import type { Ply, Sewn, Stitch, Work } from '../../../src/core/cloth/index.ts';

const inch = 25.4;

const bagOf = (name: string, w: number, h: number, s: number, gap?: number): Work =>
  value(
    sewRound(piece(`${name} front`, rectangle(w, h)), piece(`${name} back`, rectangle(w, h)), {
      allowance: s,
      open: ['top'],
      ...(gap !== undefined && { gap: { edge: 'bottom', length: gap } }),
    }),
  );

const mouth = (work: Work) => {
  const [one] = openingsOf(work);
  if (!one) throw new Error('Nothing is open.');
  return one;
};

const lengthOf = ({ runs }: Stitch): number =>
  runs.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

const put = (inner: Work, outer: Work, together: 'right' | 'wrong' = 'right'): Sewn =>
  putInto(outer, inner, {
    opening: mouth(outer),
    own: mouth(inner),
    together,
    called: { work: 'lining', nth: 1 },
  });

/** A lined bag, the lining put into the bag and both turned through the gap. */
const lined = (w: number, h: number, s: number): Work => {
  const bag = bagOf('bag', w, h, s);
  const lining = value(turn(bagOf('lining', w, h, s, w / 4)));
  const inside = value(put(lining, bag));
  const joined = value(joinOpenings(inside, mouth(inside), s));
  return value(pushIn(value(turnThrough(joined)), () => ok('inner')));
};

/** A lined bag whose corners are boxed at its bottom, and those of its lining. */
const linedBoxed = (w: number, h: number, s: number, square: number): Work => {
  const boxed = (work: Work) =>
    square === 0
      ? work
      : (['bottom left', 'bottom right'] as const).reduce(
          (now, corner) => value(boxCorner(now, { corner, square, allowance: s })),
          work,
        );
  const inside = value(put(value(turn(boxed(bagOf('lining', w, h, s, w / 4)))), boxed(bagOf('bag', w, h, s))));
  return value(pushIn(value(turnThrough(value(joinOpenings(inside, mouth(inside), s)))), () => ok('inner')));
};

/** The same bag by the other way: each panel joined to its lining at the top, both sewn round as one tube, turned and pushed in. */
const linedAsTube = (w: number, h: number, s: number, square = 0, closesFirst = true): Work => {
  const panel = (side: string) =>
    value(
      join(
        [
          { work: piece(`bag ${side}`, rectangle(w, h)), edge: 'top' },
          { work: piece(`lining ${side}`, rectangle(w, h)), edge: 'top' },
        ],
        { allowance: s, press: 'open' },
      ),
    );
  const [front, back] = [panel('front'), panel('back')];
  const tube = value(
    sewRound(front, back, { allowance: s, gap: { edge: value(edgesOn(front, ['top']))[0]!, length: w / 4 } }),
  );
  const all = ['bottom left', 'bottom right', 'top left', 'top right'] as const;
  const boxed =
    square === 0 ? tube : all.reduce((now, corner) => value(boxCorner(now, { corner, square, allowance: s })), tube);
  const turned = value(turn(boxed));
  const closed = closesFirst ? value(closeGap(turned)) : turned;
  return value(pushTube(closed, ({ piece: of }) => of.startsWith('lining'), { work: 'lining', nth: 1 }));
};

const middleOf = (work: Work) => {
  const xs = work.plies.flatMap(({ outline }) => outline.map(({ from }) => from.x));
  const ys = work.plies.flatMap(({ outline }) => outline.map(({ from }) => from.y));
  return { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
};

const sizes = fc.record({
  w: fc.integer({ min: 120, max: 500 }),
  h: fc.integer({ min: 120, max: 500 }),
  s: fc.integer({ min: 5, max: 15 }),
});

/** What a run goes through: plies of the one wall, of the other, or of both. */
const wallsThrough = (work: Work, opened: number, row: Stitch): Set<string> => {
  const { lower, upper } = wallsOf(work, opened);
  const isOf = (plies: readonly Ply[], ids: readonly number[]) => ids.some((id) => plies.some((ply) => ply.id === id));
  return new Set(
    row.runs.map(({ plies }) => `${isOf(lower, plies) ? 'lower' : ''}${isOf(upper, plies) ? 'upper' : ''}`),
  );
};

describe('at an opening', () => {
  test('a bag of 11 x 12 in is hemmed by 1/4 and 3/4 in to 10 x 10 1/2 in, in a row of 20 in', () => {
    const bag = value(turn(bagOf('bag', 11 * inch, 12 * inch, inch / 2)));
    expect(mouth(bag).round).toBeCloseTo(20 * inch, 6);
    const hemmed = value(hemOpening(bag, mouth(bag), { turn: inch / 4, then: (3 * inch) / 4 }));
    expect(size(hemmed)).toMatchObject({ width: 10 * inch, height: 10.5 * inch });
    const row = hemmed.stitches.at(-1)!;
    expect(lengthOf(row)).toBeCloseTo(20 * inch, 6);
    // Three layers of one wall; beside the seams their allowances lie there as well.
    const through = row.runs.map(({ plies }) => plies.length);
    expect(Math.min(...through)).toBe(3);
    expect(wallsThrough(hemmed, mouth(hemmed).row, row)).toEqual(new Set(['lower', 'upper']));
  });

  test('a hem is the same before the bag is turned and after', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, s }) => {
        const bag = bagOf('bag', w, h, s);
        const how = { turn: 6, then: 20 };
        const before = value(turn(value(hemOpening(bag, mouth(bag), how))));
        const turned = value(turn(bag));
        const after = value(hemOpening(turned, mouth(turned), how));
        expect(size(before).width).toBeCloseTo(size(after).width, 6);
        expect(size(before).height).toBeCloseTo(size(after).height, 6);
        expect(mouth(before).round).toBeCloseTo(mouth(after).round, 6);
        expect(before.plies.length).toBe(after.plies.length);
      }),
      { numRuns: 30 },
    );
  });

  test('a row is as long as the ring and never goes through both walls', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 30 }), fc.boolean(), ({ w, h, s }, by, isTurned) => {
        const sewnRound = bagOf('bag', w, h, s);
        const bag = isTurned ? value(turn(sewnRound)) : sewnRound;
        const after = value(rowsAlong(bag, ['opening'], 'topstitch', by));
        const row = after.stitches.at(-1)!;
        expect(lengthOf(row)).toBeCloseTo(2 * (w - 2 * s), 6);
        expect(wallsThrough(after, mouth(bag).row, row)).toEqual(new Set(['lower', 'upper']));
        expect(after.plies).toEqual(bag.plies);
      }),
      { numRuns: 30 },
    );
  });

  test('what is done to one wall leaves the rest of the bag where it was', () => {
    const bag = value(turn(bagOf('bag', 200, 240, 10)));
    const hemmed = value(hemOpening(bag, mouth(bag), { turn: 10 }));
    const below = { x: middleOf(bag).x, y: middleOf(bag).y };
    const seen = (work: Work) => layersAt(work, below).map(({ piece: of, face }) => `${of} ${face}`);
    expect(seen(hemmed)).toEqual(seen(bag));
  });

  test('a name that is no opening, or several, is told', () => {
    const bag = value(turn(bagOf('bag', 200, 240, 10)));
    expect(openingAsked(bag, ['top'])).toBeUndefined();
    expect(openingAsked(bag, ['bottom opening'])).toMatchObject({
      ok: false,
      fault: { code: 'unknown-edge', message: 'There is no “bottom opening” here. There is “top opening”.' },
    });
    expect(openingAsked(bag, ['opening', 'left'])).toMatchObject({ ok: false, fault: { code: 'one-edge' } });
    const band = value(
      fold(piece('band', rectangle(400, 60)), { line: { at: { x: 200, y: 0 }, angle: 90 }, lands: 'over' }),
    );
    const tube = value(sewUp(band, { edges: value(edgesOn(band, ['left'])), allowance: 10 }));
    expect(openingAsked(tube, ['opening'])).toMatchObject({
      ok: false,
      fault: { code: 'ambiguous-edge', message: 'There are 2 openings. Write “top opening” or “bottom opening”.' },
    });
  });
});

describe('sewn up', () => {
  const folded = (w: number, h: number) =>
    value(fold(piece('cloth', rectangle(w, h)), { line: { at: { x: 0, y: h / 2 }, angle: 0 }, lands: 'over' }));

  test('a cloth folded in two and sewn at its sides is a bag, open opposite the fold', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, s }) => {
        const work = folded(w, 2 * h);
        const bag = value(sewUp(work, { edges: value(edgesOn(work, ['left', 'right'])), allowance: s }));
        expect(openingsOf(bag)).toHaveLength(1);
        expect(mouth(bag).round).toBeCloseTo(2 * (w - 2 * s), 6);
        const turned = value(turn(bag));
        expect(size(turned)).toMatchObject({ depth: 0 });
        expect(size(turned).width).toBeCloseTo(w - 2 * s, 6);
        expect(size(turned).height).toBeCloseTo(h, 6);
        // Right side out: what is seen from above and from below is the right side.
        const there = layersAt(turned, middleOf(turned));
        expect(there.map(({ face }) => face)).toEqual(['wrong', 'right']);
        expect(mouth(turned).round).toBeCloseTo(mouth(bag).round, 6);
      }),
      { numRuns: 30 },
    );
  });

  test('with French seams it comes to the same size as with plain ones, and no raw edge shows', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, s }) => {
        const lying = (lands: 'over' | 'under') =>
          value(fold(piece('cloth', rectangle(w, 2 * h)), { line: { at: { x: 0, y: h }, angle: 0 }, lands }));
        const work = lying('under');
        const how = { first: 0.6 * s, second: 0.4 * s, trimTo: 0.2 * s };
        const edges = value(edgesOn(work, ['left', 'right']));
        const bag = value(sewUpFrench(work, edges, how));
        // Wrong side out, a ridge of the second allowance stands out at either side.
        expect(size(bag).width).toBeCloseTo(w - 1.2 * s, 6);
        expect(mouth(bag).round).toBeCloseTo(2 * (w - 2 * s), 6);
        const rows = bag.stitches.slice(-2);
        for (const row of rows) expect(lengthOf(row)).toBeCloseTo(2 * h, 6);
        const plain = lying('over');
        const other = value(
          turn(value(sewUp(plain, { edges: value(edgesOn(plain, ['left', 'right'])), allowance: s }))),
        );
        const turned = value(turn(bag));
        expect(size(turned).width).toBeCloseTo(size(other).width, 6);
        expect(size(turned).height).toBeCloseTo(size(other).height, 6);
        expect(mouth(turned).round).toBeCloseTo(mouth(other).round, 6);
        expect(layersAt(turned, middleOf(turned)).map(({ face }) => face)).toEqual(['wrong', 'right']);
        // What is cut away is all that is lost: 0.4 s of either allowance, on both walls, along two sides.
        const cloth = turned.plies.reduce((sum, { outline }) => sum + area(outline), 0);
        expect(cloth + (bag.done.at(-1)!.cutAway ?? 0)).toBeCloseTo(2 * w * h, 3);
        expect(bag.done.at(-1)!.cutAway).toBeCloseTo(4 * 0.4 * s * h, 3);
        // In the ridge, 0.1 s from the seam: each wall with its ridge and what is left of its first allowance.
        const { x, y } = middleOf(turned);
        expect(layersAt(turned, { x: x + w / 2 - s - 0.3 * s, y })).toHaveLength(6);
        expect(layersAt(turned, { x: x + w / 2 - s - 0.1 * s, y })).toHaveLength(4);
      }),
      { numRuns: 20 },
    );
  });

  test('a French seam is sewn wrong sides together first', () => {
    const work = folded(200, 300);
    const edges = value(edgesOn(work, ['left', 'right']));
    expect(sewUpFrench(work, edges, { first: 9, second: 6, trimTo: 3 })).toMatchObject({ fault: { code: 'faces' } });
    expect(sewUpFrench(work, edges, { first: 9, second: 6, trimTo: 7 })).toMatchObject({ fault: { code: 'too-deep' } });
  });

  test('a strip joined into a ring has two openings, each as long as the strip less its seam', () => {
    const strip = piece('band', rectangle(610, 80));
    const band = value(fold(strip, { line: { at: { x: 305, y: 0 }, angle: 90 }, lands: 'over' }));
    const tube = value(sewUp(band, { edges: value(edgesOn(band, ['left'])), allowance: 5 }));
    expect(openingsOf(tube).map(({ round }) => round)).toEqual([600, 600]);
  });

  test('a fold needs no seam, a flat work none of its own, and a single wall holds nothing', () => {
    const flat = piece('cloth', rectangle(200, 100));
    expect(sewUp(flat, { edges: value(edgesOn(flat, ['left'])), allowance: 5 })).toMatchObject({
      ok: false,
      fault: { code: 'misses' },
    });
    const work = folded(200, 300);
    const low = value(edgesOn(work, ['top', 'bottom', 'left']));
    const foldEdge = low.filter(
      ({ name }) => sewUp(work, { edges: [low.find((one) => one.name === name)!], allowance: 5 }).ok === false,
    );
    expect(foldEdge).toHaveLength(1);
    expect(sewUp(work, { edges: foldEdge, allowance: 5 })).toMatchObject({
      fault: { message: `The ${foldEdge[0]!.name} is folded, and needs no seam.` },
    });
  });

  test('a flap goes on beyond the pocket that is sewn up below it', () => {
    // 300 high, 100 of it folded up: a pocket of 100 with a flap of 100 above it.
    const work = value(
      fold(piece('cloth', rectangle(200, 300)), { line: { at: { x: 0, y: 100 }, angle: 0 }, lands: 'over' }),
    );
    const pouch = value(sewUp(work, { edges: value(edgesOn(work, ['left', 'right'])), allowance: 10 }));
    const [row] = pouch.stitches;
    expect(lengthOf(row!)).toBeCloseTo(200, 6);
    expect(mouth(pouch).round).toBeCloseTo(2 * 180, 6);
  });
});

test('what was laid on a work is no wall of it, however it is folded', () => {
  const folded = value(
    fold(piece('flounce', rectangle(200, 80)), { line: { at: { x: 100, y: 0 }, angle: 90 }, lands: 'over' }),
  );
  const laid = value(lay(piece('panel', rectangle(100, 80)), folded, { called: { work: 'flounce', nth: 1 } }));
  const sewn = sewUp(laid, { edges: value(edgesOn(laid, ['top'])), allowance: 10 });
  expect(sewn).toMatchObject({ ok: false, fault: { code: 'misses' } });
});

describe('how high a bag is', () => {
  const bag = bagOf('bag', 200, 240, 10);
  const withLaid = (wide: number) =>
    size(
      value(
        lay(bag, piece('strap', rectangle(wide, 60)), {
          edges: ['top', 'top'],
          inside: -40,
          called: { work: 'strap', nth: 1 },
        }),
      ),
    );

  test('a strap that stands out of its opening does not count', () => {
    expect(withLaid(40)).toEqual(size(bag));
    expect(withLaid(90)).toEqual(size(bag));
  });

  test('cloth that covers more than half of the opening does', () => {
    expect(withLaid(160)).toEqual({ ...size(bag), height: 240 + 40 });
  });
});

describe('what only looks like an opening, or a wall', () => {
  const trapezoid = (name: string, low: number, high: number, h: number) =>
    piece(
      name,
      polygon([
        { x: 0, y: 0 },
        { x: low, y: 0 },
        { x: (low + high) / 2, y: h },
        { x: (low - high) / 2, y: h },
      ]),
    );

  test('a bag with slanting sides has one opening, from seam to seam', () => {
    const bag = value(
      sewRound(trapezoid('front', 300, 260, 300), trapezoid('back', 300, 260, 300), {
        allowance: 10,
        open: [value(edgesOn(trapezoid('front', 300, 260, 300), ['top']))[0]!],
      }),
    );
    expect(openingsOf(bag).map(({ name }) => name)).toEqual(['top opening']);
    // An allowance of 10 mm square to sides that go in by 20 in 300 mm takes 10.02 mm of a level edge.
    expect(mouth(bag).round).toBeCloseTo(2 * (260 - 20 * Math.hypot(1, 20 / 300)), 6);
  });

  test('a hem that is folded once more is no fold between the walls, and its fold needs no unpicking', () => {
    const hemmed = value(hem(piece('cloth', rectangle(240, 400)), { edges: ['left', 'right'], turn: 10, then: 10 }));
    const work = value(fold(hemmed, { line: { at: { x: 0, y: 200 }, angle: 0 }, lands: 'over' }));
    const bag = value(sewUp(work, { edges: value(edgesOn(work, ['left', 'right'])), allowance: 5 }));
    expect(mouth(bag).round).toBeCloseTo(2 * (200 - 10), 6);
  });

  test('a pouch that is laid on a panel is no opening of the panel, and a bag sewn shut has none', () => {
    const pouch = value(turn(bagOf('pouch', 120, 140, 10)));
    const panel = piece('panel', rectangle(300, 300));
    const laid = value(lay(panel, pouch, { called: { work: 'pouch', nth: 1 } }));
    expect(openingsOf(laid)).toEqual([]);
    expect(turn(laid)).toMatchObject({ ok: false, fault: { code: 'not-sewn-round' } });
    const bag = value(turn(bagOf('bag', 200, 240, 10)));
    expect(openingsOf(value(rowsAlong(bag, ['top'], 'topstitch', 6, { 'sew shut': true })))).toEqual([]);
  });

  test('a loop that lies over the edge does not say which side of the bag is out', () => {
    const loop = piece('loop', rectangle(40, 60));
    const front = value(
      lay(piece('bag front', rectangle(200, 240)), loop, {
        edges: ['top', 'top'],
        face: 'down',
        called: { work: 'loop', nth: 1 },
      }),
    );
    const bag = value(
      turn(value(sewRound(front, piece('bag back', rectangle(200, 240)), { allowance: 10, open: ['top'] }))),
    );
    const hemmed = value(hemOpening(bag, mouth(bag), { turn: 20 }));
    const cloth = { ...hemmed, plies: hemmed.plies.filter(({ piece: of }) => of !== 'loop') };
    const { x } = middleOf(cloth);
    const there = layersAt(cloth, { x: x + 60, y: 210 });
    // Right side out on either side, both hems inside.
    expect([there[0]!.face, there.at(-1)!.face]).toEqual(['wrong', 'right']);
    expect(there.map(({ piece: of }) => of)).toEqual(['bag back', 'bag back', 'bag front', 'bag front']);
  });

  test('an opening that is trimmed lies further in, and one that is folded across is not known', () => {
    const bag = value(turn(bagOf('bag', 200, 240, 10)));
    const trimmed = value(trim(bag, { edge: 'top', by: 15 }));
    expect(mouth(trimmed).from.y).toBeCloseTo(mouth(bag).from.y - 15, 6);
    expect(size(value(hemOpening(trimmed, mouth(trimmed), { turn: 10 }))).height).toBeCloseTo(230 - 25, 6);
    const folded = value(fold(bag, { line: { at: { x: 0, y: 200 }, angle: 0 }, lands: 'over' }));
    expect(openingAsked(folded, ['opening'])).toMatchObject({ ok: false, fault: { code: 'held' } });
  });

  test('nothing is turned through a fold, and no gap is left where nothing is sewn', () => {
    const work = value(
      fold(piece('cloth', rectangle(200, 400)), { line: { at: { x: 0, y: 200 }, angle: 0 }, lands: 'over' }),
    );
    const all = value(edgesOn(work, ['top', 'right', 'bottom', 'left']));
    const folded = all.find((edge) => !sewUp(work, { edges: [edge], allowance: 10 }).ok)!;
    const raw = all.filter((edge) => edge !== folded);
    expect(turn(value(sewUp(work, { edges: raw, allowance: 10 })))).toMatchObject({ fault: { code: 'no-gap' } });
    const gap = { edge: raw[0]!, length: 40 };
    expect(sewUp(work, { edges: raw.slice(1), allowance: 10, gap })).toMatchObject({ fault: { code: 'no-gap' } });
  });
});

describe('one in the other', () => {
  test('a bag of 11 x 12 in, lined, comes to 10 x 11 in, four plies in the middle', () => {
    const bag = lined(11 * inch, 12 * inch, inch / 2);
    expect(size(bag).width).toBeCloseTo(10 * inch, 6);
    expect(size(bag).height).toBeCloseTo(11 * inch, 6);
    const there = layersAt(bag, middleOf(bag)).map(({ piece: of, face }) => `${of} ${face}`);
    // From below: the outside right side out, its lining wrong side to wrong side, and the same above, turned round.
    expect(there).toEqual(['bag back wrong', 'lining front right', 'lining back wrong', 'bag front right']);
  });

  test('whatever its size: one seam less, the mouth as long as before, no wall sewn to the other', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, s }) => {
        const bag = lined(w, h, s);
        expect(size(bag).width).toBeCloseTo(w - 2 * s, 6);
        expect(size(bag).height).toBeCloseTo(h - 2 * s, 6);
        expect(mouth(bag).round).toBeCloseTo(2 * (w - 2 * s), 6);
        const after = value(rowsAlong(bag, ['opening'], 'topstitch', 5));
        const row = after.stitches.at(-1)!;
        expect(lengthOf(row)).toBeCloseTo(2 * (w - 2 * s), 6);
        expect(wallsThrough(after, mouth(after).row, row)).toEqual(new Set(['lower', 'upper']));
      }),
      { numRuns: 25 },
    );
  });

  test('the bag put into its lining comes to the same as the lining put into its bag', () => {
    const [w, h, s] = [260, 300, 12];
    const bag = value(turn(bagOf('bag', w, h, s)));
    const lining = bagOf('lining', w, h, s, 80);
    const inside = value(put(bag, lining));
    const joined = value(joinOpenings(inside, mouth(inside), s));
    const done = value(pushIn(value(turnThrough(joined)), () => ok('outer')));
    const other = lined(w, h, s);
    expect(size(done).width).toBeCloseTo(size(other).width, 6);
    expect(size(done).height).toBeCloseTo(size(other).height, 6);
    expect(mouth(done).name).toBe('top opening');
    expect(layersAt(done, middleOf(done)).map(({ piece: of, face }) => `${of.split(' ')[0]} ${face}`)).toEqual(
      layersAt(other, middleOf(other)).map(({ piece: of, face }) => `${of.split(' ')[0]} ${face}`),
    );
  });

  test('boxed corners of both lie in one another', () => {
    const [w, h, s, square] = [360, 380, 12, 40];
    const boxed = (work: Work) =>
      (['bottom left', 'bottom right'] as const).reduce(
        (now, corner) => value(boxCorner(now, { corner, square, allowance: s })),
        work,
      );
    const bag = boxed(bagOf('bag', w, h, s));
    const lining = value(turn(boxed(bagOf('lining', w, h, s, 90))));
    const inside = value(put(lining, bag));
    const done = value(pushIn(value(turnThrough(value(joinOpenings(inside, mouth(inside), s)))), () => ok('inner')));
    // Width less two seams and two squares, height less two seams and a square; twice the square deep.
    expect(size(done)).toMatchObject({ depth: 2 * square });
    expect(size(done).width).toBeCloseTo(w - 2 * s - 2 * square, 6);
    expect(size(done).height).toBeCloseTo(h - 2 * s - square, 6);
  });

  test('sewn as one long tube and pushed into itself, it is the same bag as with a lining that is put in', () => {
    fc.assert(
      fc.property(sizes, fc.constantFrom(0, 20, 35), fc.boolean(), ({ w, h, s }, square, closesFirst) => {
        const [one, other] = [linedAsTube(w, h, s, square, closesFirst), linedBoxed(w, h, s, square)];
        expect(size(one).depth).toBe(2 * square);
        expect(size(one).width).toBeCloseTo(size(other).width, 6);
        expect(size(one).height).toBeCloseTo(size(other).height, 6);
        expect(openingsOf(one).map(({ name }) => name)).toEqual(['top opening']);
        expect(mouth(one).round).toBeCloseTo(mouth(other).round, 6);
        const seen = (work: Work, off: number) => {
          const { x, y } = middleOf(work);
          return layersAt(work, { x: x + off, y }).map(({ piece: of, face }) => `${of.split(' ')[0]} ${face}`);
        };
        expect(seen(one, 1)).toEqual(seen(other, 1));
        expect(seen(one, w / 2 - s - 1)).toHaveLength(seen(other, w / 2 - s - 1).length);
        const after = value(rowsAlong(one, ['opening'], 'topstitch', 5));
        expect(lengthOf(after.stitches.at(-1)!)).toBeCloseTo(2 * (w - 2 * s), 6);
        expect(wallsThrough(after, mouth(after).row, after.stitches.at(-1)!)).toEqual(new Set(['lower', 'upper']));
      }),
      { numRuns: 20 },
    );
  });

  test('a tube that is not turned, or not joined between outside and lining, is not pushed into itself', () => {
    const bag = value(turn(bagOf('bag', 260, 300, 12)));
    const isLining = ({ piece: of }: Ply) => of.startsWith('lining');
    const called = { work: 'lining', nth: 1 };
    expect(pushTube(bag, isLining, called)).toMatchObject({ fault: { code: 'not-sewn-round' } });
    const shut = value(
      turn(
        value(
          sewRound(piece('bag', rectangle(260, 300)), piece('lining', rectangle(260, 300)), {
            allowance: 12,
            gap: { edge: 'bottom', length: 80 },
          }),
        ),
      ),
    );
    expect(pushTube(shut, isLining, called)).toMatchObject({ fault: { code: 'misses' } });
    expect(pushTube(shut, ({ piece: of }) => of === 'other', called)).toMatchObject({
      fault: { code: 'unknown-piece' },
    });
  });

  test('sides that do not touch as is said, and what does not go in, are told', () => {
    const bag = bagOf('bag', 260, 300, 12);
    const lining = bagOf('lining', 260, 300, 12, 80);
    expect(put(lining, bag)).toMatchObject({
      ok: false,
      fault: { code: 'faces', fix: 'Turn “lining” first, so that it lies right side out as it goes in.' },
    });
    expect(put(value(turn(lining)), value(turn(bag)))).toMatchObject({
      ok: false,
      fault: {
        code: 'faces',
        fix: 'What “lining” goes into lies wrong side out for that: turn it, or leave it unturned.',
      },
    });
    expect(put(value(turn(bagOf('lining', 280, 300, 12, 80))), bag)).toMatchObject({
      ok: false,
      fault: { code: 'too-wide', amount: 40 },
    });
    expect(put(value(turn(bagOf('lining', 260, 320, 12, 80))), bag)).toMatchObject({
      ok: false,
      fault: { code: 'too-wide' },
    });
    const narrow = value(put(value(turn(bagOf('lining', 250, 300, 12, 80))), bag));
    expect(joinOpenings(narrow, mouth(narrow), 12)).toMatchObject({
      ok: false,
      fault: { code: 'shapes-differ', amount: 20 },
    });
    expect(joinOpenings(bag, mouth(bag), 12)).toMatchObject({ ok: false, fault: { code: 'opening' } });
    expect(pushIn(bag, () => ok('inner'))).toMatchObject({ ok: false, fault: { code: 'not-sewn-round' } });
  });

  test('of two that are boxed differently the outer one stands', () => {
    const [w, h, s] = [360, 380, 12];
    const boxed = (work: Work, square: number) =>
      (['bottom left', 'bottom right'] as const).reduce(
        (now, corner) => value(boxCorner(now, { corner, square, allowance: s })),
        work,
      );
    const lining = value(turn(boxed(bagOf('lining', w, h, s, 90), 40)));
    const inside = value(put(lining, bagOf('bag', w, h, s)));
    expect(size(inside)).toMatchObject({ width: w, height: h, depth: 0 });
    const done = value(pushIn(value(turnThrough(value(joinOpenings(inside, mouth(inside), s)))), () => ok('inner')));
    expect(size(done).depth).toBe(0);
    expect(size(done).width).toBeCloseTo(w - 2 * s, 6);
  });

  test('a gap that is closed after the lining is pushed in is closed in the lining alone', () => {
    const bag = lined(260, 300, 12);
    const closed = value(closeGap(bag, 'edgestitch'));
    const through = new Set(closed.stitches.at(-1)!.runs.flatMap(({ plies }) => plies));
    const pieces = new Set(closed.plies.flatMap(({ id, piece: of }) => (through.has(id) ? of : [])));
    expect(pieces).toEqual(new Set(['lining front', 'lining back']));
  });

  test('wrong sides together, the work stays as open as it was', () => {
    const bag = value(turn(bagOf('bag', 260, 300, 12)));
    const inside = value(put(bagOf('lining', 260, 300, 12), bag, 'wrong'));
    const joined = value(joinOpenings(inside, mouth(inside), 5));
    expect(openingsOf(joined).map(({ round }) => round)).toEqual([2 * (260 - 24)]);
    const hemmed = value(hemOpening(joined, mouth(joined), { turn: 10, then: 10 }));
    expect(openingsOf(hemmed)).toHaveLength(1);
    expect(size(hemmed).height).toBeCloseTo(300 - 12 - 20, 6);
  });

  test('wrong sides together, the allowances of the lining lie on its walls and not beside it', () => {
    const bag = value(turn(bagOf('bag', 260, 300, 12)));
    const inside = value(put(bagOf('lining', 260, 300, 12), bag, 'wrong'));
    expect(size(inside).width).toBeCloseTo(260 - 24, 6);
    expect(mouth(inside).round).toBeCloseTo(2 * (260 - 24), 6);
  });

  test('what is boxed through both works holds them together', () => {
    const bag = bagOf('bag', 260, 300, 12);
    const inside = value(put(value(turn(bagOf('lining', 260, 300, 12, 80))), bag));
    const boxed = value(boxCorner(inside, { corner: 'bottom left', square: 30, allowance: 12 }));
    const joined = value(joinOpenings(boxed, mouth(boxed), 12));
    expect(turnThrough(joined)).toMatchObject({ ok: false, fault: { code: 'sewn-down' } });
  });

  test('shut in both works, nothing can be turned', () => {
    const bag = bagOf('bag', 260, 300, 12);
    const inside = value(put(value(turn(bagOf('lining', 260, 300, 12))), bag));
    expect(turnThrough(value(joinOpenings(inside, mouth(inside), 12)))).toMatchObject({
      ok: false,
      fault: { code: 'no-gap' },
    });
  });
});
