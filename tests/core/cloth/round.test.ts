/**
 * Binding and gathers all round an opening, and one ring sewn to another. The worked figures are reckoned by hand beside each;
 * the laws hold for bags and tubes of any size.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bindOpening } from '../../../src/core/cloth/bind-opening.ts';
import { clothAreas, piece, rectangle, value } from './works.ts';
import { drawIn } from '../../../src/core/cloth/draw-in.ts';
import { edgesOn } from '../../../src/core/cloth/sides.ts';
import { fold, layersAt, sewRound, size, topstitch, turn } from '../../../src/core/cloth/index.ts';
import { gatherOpening } from '../../../src/core/cloth/gather.ts';
import { hemOpening } from '../../../src/core/cloth/hem.ts';
import { inverse, transformPoint } from '../../../src/core/geometry/transform.ts';
import { joinOpenings, putInto, turnThrough } from '../../../src/core/cloth/put.ts';
import { openingNamed, openingsOf } from '../../../src/core/cloth/openings.ts';
import { rowsAlong } from '../../../src/core/steps/rows.ts';
import { sewUp } from '../../../src/core/cloth/sew-up.ts';
import { withChannels } from '../../../src/core/cloth/channel.ts';
import { wallsOf } from '../../../src/core/cloth/walls.ts';
import type { Ply, Stitch, Work } from '../../../src/core/cloth/index.ts';

const inch = 25.4;

const sewnOpen = (w: number, h: number, s: number, open: readonly string[]): Work =>
  value(sewRound(piece('front', rectangle(w, h)), piece('back', rectangle(w, h)), { allowance: s, open }));

const bagOf = (w: number, h: number, s: number): Work => sewnOpen(w, h, s, ['top']);
const tubeOf = (w: number, h: number, s: number): Work => sewnOpen(w, h, s, ['top', 'bottom']);
const at = (work: Work, name: string) => value(openingNamed(work, name));
const strip = (length: number, width: number): Work => piece('strip', rectangle(length, width), 'lawn');

const lengthOf = ({ runs }: Stitch): number =>
  runs.reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

/** Whether every run of a row goes through one wall alone. */
const staysInWalls = (work: Work, opened: number, row: Stitch): boolean => {
  const { lower, upper } = wallsOf(work, opened);
  const isOf = (plies: readonly Ply[], ids: readonly number[]) => ids.some((id) => plies.some((ply) => ply.id === id));
  return row.runs.every(({ plies }) => isOf(lower, plies) !== isOf(upper, plies));
};

const sizes = fc.record({
  w: fc.integer({ min: 160, max: 500 }),
  h: fc.integer({ min: 120, max: 500 }),
  s: fc.integer({ min: 5, max: 15 }),
});

describe('bound all round', () => {
  const boundBag = (w: number, h: number, s: number, width: number) => {
    const bag = value(turn(bagOf(w, h, s)));
    return value(bindOpening(bag, strip(2 * (w - 2 * s) + 2 * s, 4 * width), at(bag, 'opening'), { width, seam: s }));
  };

  test('a bag of 10 in is bound with a strip of 21 x 2 in: it keeps its size, with rows of 2, 20 and 20 in', () => {
    const bag = boundBag(11 * inch, 12 * inch, inch / 2, inch / 2);
    expect(size(bag).width).toBeCloseTo(10 * inch, 6);
    expect(size(bag).height).toBeCloseTo(11.5 * inch, 6);
    expect(at(bag, 'opening').round).toBeCloseTo(20 * inch, 6);
    const rows = bag.stitches.slice(1);
    expect(rows.map(({ kind }) => kind)).toEqual(['seam', 'seam', 'edgestitch']);
    expect(rows.map(lengthOf).map((mm) => Math.round(mm * 100) / 100)).toEqual([2, 20, 20].map((in_) => in_ * inch));
    // Beside the middle, 1/4 in below the edge: on each wall the strip's four layers and the wall; its folds at the sides.
    const { from, to } = at(bag, 'opening');
    const there = layersAt(bag, { x: from.x + (to.x - from.x) / 3, y: from.y - inch / 4 });
    expect(there.filter(({ piece: of }) => of === 'strip')).toHaveLength(8);
    expect(there).toHaveLength(10);
    // Seen from either side the binding is right side out.
    expect([there[0]!.piece, there[0]!.face, there.at(-1)!.piece, there.at(-1)!.face]).toEqual([
      'strip',
      'wrong',
      'strip',
      'right',
    ]);
  });

  test('it keeps size, opening and cloth; its rows are as long as the ring, and nothing of the strip stays raw', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 6, max: 15 }), ({ w, h, s }, width) => {
        const bag = value(turn(bagOf(w, h, s)));
        const round = 2 * (w - 2 * s);
        const bound = boundBag(w, h, s, width);
        expect(size(bound)).toEqual(size(bag));
        expect(at(bound, 'opening').round).toBeCloseTo(round, 6);
        const areas = { ...clothAreas(bag), strip: (round + 2 * s) * 4 * width };
        for (const [name, area] of Object.entries(areas)) expect(clothAreas(bound)[name]).toBeCloseTo(area, 3);
        const [join, seam, row] = bound.stitches.slice(1);
        expect(lengthOf(join!)).toBeCloseTo(4 * width, 6);
        for (const one of [seam!, row!]) {
          expect(lengthOf(one)).toBeCloseTo(round, 6);
          expect(staysInWalls(bound, at(bound, 'opening').row, one)).toBe(true);
        }
        const plies = bound.plies.filter(({ piece: of }) => of === 'strip');
        for (const { outline } of plies) {
          for (const { fold: number, held } of outline) expect(number !== undefined || held !== undefined).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });

  test('the strip is one ring: at either side both walls hold the same place of it', () => {
    const bound = boundBag(260, 300, 10, 8);
    const { from, to, row } = at(bound, 'opening');
    const { lower, upper } = wallsOf(bound, row);
    for (const { x } of [from, to]) {
      const placesOf = (plies: readonly Ply[]) =>
        plies
          .filter(
            ({ piece: of, outline }) => of === 'strip' && outline.some((edge) => Math.abs(edge.from.x - x) < 1e-6),
          )
          .map(({ transform }) => transformPoint(inverse(transform), { x, y: from.y - 4 }))
          .map((p) => `${p.x.toFixed(3)} ${p.y.toFixed(3)}`)
          .toSorted();
      expect(placesOf(lower)).toHaveLength(4);
      expect(placesOf(lower)).toEqual(placesOf(upper));
    }
  });

  test('a strip of another length or width, and a handle that stands out, are told', () => {
    const bag = value(turn(bagOf(260, 300, 10)));
    const bind = (one: Work, width = 10) => bindOpening(bag, one, at(bag, 'opening'), { width, seam: 10 });
    expect(bind(strip(490, 40))).toMatchObject({
      ok: false,
      fault: { code: 'strip-length', lengths: [490, 480, 10, 500], amount: -10 },
    });
    expect(bind(strip(500, 30))).toMatchObject({ ok: false, fault: { code: 'too-deep' } });
    expect(
      bind(value(fold(strip(500, 40), { line: { at: { x: 250, y: 0 }, angle: 90 }, lands: 'over' }))),
    ).toMatchObject({ ok: false, fault: { code: 'held' } });
  });
});

describe('gathered all round', () => {
  test('a tube of 54 in is drawn up to 30 in: fuller by 1.8, in two rows of 30 in, and as wide as before below', () => {
    const tube = tubeOf(28 * inch, 20 * inch, inch / 2);
    const gathered = value(gatherOpening(tube, at(tube, 'top'), { to: 30 * inch }));
    expect(openingsOf(gathered).map(({ name, round }) => [name, Math.round((round / inch) * 1e6) / 1e6])).toEqual([
      ['bottom opening', 54],
      ['top opening', 30],
    ]);
    expect(gathered.stitches.slice(1).map((row) => lengthOf(row) / inch)).toEqual([
      expect.closeTo(30, 6),
      expect.closeTo(30, 6),
    ]);
    expect(Math.max(...gathered.plies.map(({ fullness }) => fullness))).toBeCloseTo(1.8, 9);
    expect(size(gathered)).toEqual(size(tube));
    expect(gathered.done.at(-1)).toMatchObject({
      did: 'gather',
      drawnUp: { from: expect.closeTo(54 * inch, 6), to: 30 * inch },
    });
  });

  test('cloth times fullness stays, the other opening too, and rows hold one wall at a time', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.double({ min: 0.3, max: 0.95, noNaN: true }),
        fc.boolean(),
        ({ w, h, s }, share, turned) => {
          const sewn = tubeOf(w, h, s);
          const tube = turned ? value(turn(sewn)) : sewn;
          const to = 2 * (w - 2 * s) * share;
          const gathered = value(gatherOpening(tube, at(tube, 'top'), { to }));
          for (const [name, area] of Object.entries(clothAreas(tube))) {
            expect(clothAreas(gathered)[name]).toBeCloseTo(area, 2);
          }
          expect(at(gathered, 'top').round).toBeCloseTo(to, 6);
          expect(at(gathered, 'bottom').round).toBeCloseTo(2 * (w - 2 * s), 6);
          for (const row of gathered.stitches.slice(-2)) {
            expect(lengthOf(row)).toBeCloseTo(to, 6);
            expect(staysInWalls(gathered, at(gathered, 'top').row, row)).toBe(true);
          }
          // A row below the gathers is as long as the tube is round there.
          const below = value(rowsAlong(gathered, ['top opening'], 'topstitch', 40)).stitches.at(-1)!;
          expect(lengthOf(below)).toBeCloseTo(2 * (w - 2 * s), 6);
        },
      ),
      { numRuns: 40 },
    );
  });

  test('turned before or after, it comes to the same', () => {
    fc.assert(
      fc.property(sizes, ({ w, h, s }) => {
        const tube = tubeOf(w, h, s);
        const to = w;
        const first = value(turn(value(gatherOpening(tube, at(tube, 'top'), { to }))));
        const turned = value(turn(tube));
        const last = value(gatherOpening(turned, at(turned, 'top'), { to }));
        expect(size(first).width).toBeCloseTo(size(last).width, 6);
        expect(size(first).height).toBeCloseTo(size(last).height, 6);
        expect(at(first, 'top').round).toBeCloseTo(to, 6);
        for (const [name, area] of Object.entries(clothAreas(last))) {
          expect(clothAreas(first)[name]).toBeCloseTo(area, 2);
        }
      }),
      { numRuns: 20 },
    );
  });

  test('to more than it is round, and what is turned in below the gathers, are told', () => {
    const tube = tubeOf(260, 300, 10);
    expect(gatherOpening(tube, at(tube, 'top'), { to: 500 })).toMatchObject({
      ok: false,
      fault: { code: 'not-shorter', lengths: [480, 500] },
    });
    const gathered = value(gatherOpening(tube, at(tube, 'top'), { to: 300 }));
    expect(hemOpening(gathered, at(gathered, 'top'), { turn: 10, then: 20 })).toMatchObject({
      ok: false,
      fault: { code: 'too-deep' },
    });
    expect(topstitch(gathered, { edge: 'back bottom', inside: 5 }).ok).toBe(true);
  });
});

describe('ring to ring', () => {
  /** A band of a strip, folded in two and sewn into a ring. */
  const bandOf = (round: number, height: number, s: number): Work => {
    const flat = strip(round + 2 * s, height);
    const folded = value(fold(flat, { line: { at: { x: round / 2 + s, y: 0 }, angle: 90 }, lands: 'over' }));
    return value(sewUp(folded, { edges: value(edgesOn(folded, ['left'])), allowance: s }));
  };

  const banded = (w: number, h: number, s: number, to: number, high: number) => {
    const skirt = tubeOf(w, h, s);
    const gathered = value(gatherOpening(skirt, at(skirt, 'top'), { to }));
    const band = value(turn(bandOf(to, high, s)));
    const inside = value(
      putInto(gathered, band, {
        opening: at(gathered, 'top'),
        own: at(band, 'top'),
        together: 'right',
        called: { work: 'band', nth: 1 },
      }),
    );
    return value(turnThrough(value(joinOpenings(inside, at(inside, 'top'), s))));
  };

  test('a band stands on the gathered top of a skirt, one seam less, and is open at its upper end', () => {
    fc.assert(
      fc.property(sizes, fc.integer({ min: 50, max: 120 }), ({ w, h, s }, high) => {
        const to = 1.2 * (w - 2 * s);
        const skirt = banded(w, h, s, to, high);
        expect(size(skirt).height).toBeCloseTo(h + high - 2 * s, 6);
        expect(size(skirt).width).toBeCloseTo(w - 2 * s, 6);
        expect(at(skirt, 'top').round).toBeCloseTo(to, 6);
        expect(at(skirt, 'bottom').round).toBeCloseTo(2 * (w - 2 * s), 6);
      }),
      { numRuns: 20 },
    );
  });
});

describe('drawn into a casing', () => {
  /** A bag with a casing all round: so much room, its row 2 mm inside the inner fold and open for the way in. */
  const cased = (w: number, h: number, s: number, room: number, wayIn?: number): Work => {
    const bag = value(turn(bagOf(w, h, s)));
    const how = { turn: 6, then: room + 2, inside: 2, gap: wayIn };
    return withChannels(bag, value(hemOpening(bag, at(bag, 'opening'), how)), room);
  };
  const draw = (work: Work, one: Work, to?: number, overlap = 25) =>
    drawIn(work, one, { opening: at(work, 'opening'), overlap, ...(to !== undefined && { to }) });
  const elastic = (length: number, width: number) => piece('elastic', rectangle(length, width), 'rubber');

  test('a casing of 40 in is drawn up to 26 in by elastic of 27 in, with an overlap of 1', () => {
    const bag = cased(21 * inch, 20 * inch, inch / 2, 1.125 * inch, 2 * inch);
    const drawn = value(draw(bag, elastic(27 * inch, inch), 26 * inch, inch));
    expect(at(drawn, 'opening').round).toBeCloseTo(26 * inch, 6);
    expect(size(drawn)).toEqual(size(bag));
    const [ends, wayIn] = drawn.stitches.slice(-2);
    expect(lengthOf(ends!)).toBeCloseTo(inch, 6);
    // 2 in of the row, drawn up from 40 to 26.
    expect(lengthOf(wayIn!)).toBeCloseTo(1.3 * inch, 6);
    // In the middle of either wall, 1/2 in below the fold: the wall, the elastic and what was turned in; above, both its ends.
    const { from, to } = at(drawn, 'opening');
    const middle = { x: (from.x + to.x) / 2, y: from.y - inch / 2 };
    const there = layersAt(drawn, middle).map(({ piece: of }) => of);
    expect(there.filter((of) => of === 'elastic')).toHaveLength(3);
    expect(there).toHaveLength(7);
    expect([there[1], there[4], there[5]]).toEqual(['elastic', 'elastic', 'elastic']);
  });

  test('cloth and elastic stay as much as they were, the opening is as long as is said, also turned twice more', () => {
    fc.assert(
      fc.property(
        sizes,
        fc.double({ min: 0.4, max: 0.98, noNaN: true }),
        fc.integer({ min: 6, max: 20 }),
        fc.boolean(),
        ({ w, h, s }, share, wide, isTwice) => {
          const made = cased(w, h, s, wide + 4, wide + 6);
          const to = 2 * (w - 2 * s) * share;
          const one = elastic(to + 20, wide);
          const drawn = value(draw(made, one, to, 20));
          const done = isTwice ? value(turn(value(turn(drawn)))) : drawn;
          expect(at(done, 'opening').round).toBeCloseTo(to, 6);
          const areas: Record<string, number> = { ...clothAreas(made), elastic: (to + 20) * wide };
          for (const [name, area] of Object.entries(areas)) expect(clothAreas(done)[name]).toBeCloseTo(area, 2);
          expect(size(done).width).toBeCloseTo(w - 2 * s, 6);
          expect(size(done).height).toBeCloseTo(h - s - (6 + wide + 6), 6);
        },
      ),
      { numRuns: 30 },
    );
  });

  test('a cord goes round once, draws nothing up, and both its ends hang out equally long', () => {
    const made = cased(260, 300, 10, 20, 25);
    for (const bag of [made, value(turn(value(turn(made))))]) {
      const corded = value(draw(bag, piece('cord', rectangle(680, 6), 'cord')));
      expect(at(corded, 'opening').round).toBeCloseTo(480, 6);
      expect(clothAreas(corded)['cord']).toBeCloseTo(680 * 6, 3);
      const cords = corded.plies.filter(({ piece: of }) => of === 'cord');
      expect(cords).toHaveLength(5);
      // 680 less 480 round: 100 a side, from the middle of the cord where it turns down.
      const low = cords.map(({ outline }) => Math.min(...outline.map(({ from }) => from.y))).toSorted((a, b) => a - b);
      expect(low[0]).toBeCloseTo(low[1]!, 6);
      expect(at(corded, 'opening').from.y - 10 - low[0]!).toBeCloseTo(100 + 3, 6);
    }
  });

  test('what does not go in, and elastic of another length, are told', () => {
    const bag = cased(260, 300, 10, 20, 25);
    const unturned = withChannels(
      bagOf(260, 300, 10),
      value(
        hemOpening(bagOf(260, 300, 10), at(bagOf(260, 300, 10), 'opening'), { turn: 6, then: 22, inside: 2, gap: 25 }),
      ),
      20,
    );
    const code = (sewn: ReturnType<typeof draw>) => (sewn.ok ? 'sewn' : sewn.fault.code);
    expect(code(draw(bag, elastic(325, 15), 300))).toBe('sewn');
    expect(code(draw(unturned, elastic(325, 15), 300))).toBe('held');
    expect(code(draw(bag, elastic(320, 15), 300))).toBe('strip-length');
    expect(code(draw(bag, elastic(525, 15), 500))).toBe('not-shorter');
    expect(code(draw(bag, elastic(325, 21), 300))).toBe('too-wide');
    expect(code(draw(cased(260, 300, 10, 20, 12), elastic(325, 15), 300))).toBe('too-wide');
    expect(code(draw(cased(260, 300, 10, 20), elastic(325, 15), 300))).toBe('unclear-casing');
    expect(code(draw(bagOf(260, 300, 10), elastic(325, 15), 300))).toBe('unclear-casing');
    expect(code(draw(bag, elastic(470, 6)))).toBe('strip-length');
    const drawn = value(draw(bag, elastic(325, 15), 300));
    expect(code(draw(drawn, elastic(325, 15), 290))).toBe('unclear-casing');
  });
});
