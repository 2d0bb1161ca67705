/** Rows from a place to a place, through so many layers, secured at their ends, along curves and outlines. */
import { describe, expect, it } from 'vitest';
import { drawStep, makeUp, threadIn } from '../../../src/core/index.ts';
import { found, panels } from '../project/steps.ts';
import { resolved } from '../project/files.ts';

const pieces = `  pocket: { size: [40 mm, 30 mm], allowance: 0 }
  round: { size: [40 mm, 30 mm], allowance: 0, corners: { round: 10 mm } }
  disc: { circle: 40 mm, allowance: 0 }
  moon: { half circle: 40 mm, allowance: 0 }`;
const steps = (yaml: string) => makeUp(resolved(panels(yaml, pieces)));
const last = (yaml: string) => steps(yaml).at(-1)!;
const row = (topstitch: string) => last(`- { topstitch: front, at: top, by: 5 mm, ${topstitch} }`);
const refused = (yaml: string) => found(panels(yaml, pieces)).filter((line) => line.startsWith('error'));

describe('a row along one edge', () => {
  const ends = (topstitch: string) => {
    const { runs } = last(`- { topstitch: front, by: 5 mm, ${topstitch} }`).after.stitches.at(-1)!;
    return [runs[0]!.from, runs.at(-1)!.to].map(({ x, y }) => [x, y].map((mm) => Math.round(mm * 1000) / 1000));
  };

  it('begins from its left or lower end, and ends before the other, whichever way it is walked', () => {
    // The front is 100 x 80 mm, its lower left corner at 0, 0. The top is walked from the right, the left from above.
    expect(ends('at: bottom, begins: 20 mm, ends: 10 mm').flat()).toEqual([20, 5, 90, 5]);
    expect(ends('at: top, begins: 20 mm, ends: 10 mm').toSorted().flat()).toEqual([20, 75, 90, 75]);
    expect(ends('at: left, begins: 20 mm').toSorted().flat()).toEqual([5, 20, 5, 80]);
    expect(ends('at: right, ends: 30 mm').toSorted().flat()).toEqual([95, 0, 95, 50]);
  });

  it('is sewn back and forth at its ends, which takes thread and leaves it as long', () => {
    const [plain, secured] = [row(''), row('back and forth: 10 mm')];
    expect(secured.stitches[0]!.length).toBe(100);
    // At both ends 10 mm back and 10 mm forth again: 40 of 100 more.
    expect(threadIn([secured]).sewn).toBe(threadIn([plain]).sewn);
    expect(secured.stitches[0]!.thread / plain.stitches[0]!.thread).toBeCloseTo(1.4, 9);
    const text = drawStep(secured, resolved(panels('- { topstitch: front, at: top }'))).text.join(' ');
    expect(text).toContain('Sew 10 millimetres back and forth at both ends.');
  });

  it('goes through so many layers, counted from the top', () => {
    const through = (many: number) =>
      last(
        `- { lay: pocket, on: front }\n- { lay: back, on: front }\n- { topstitch: front, at: pocket left, by: 5 mm, through: ${many} }`,
      );
    expect(
      through(2)
        .after.stitches.at(-1)!
        .runs.map(({ plies }) => plies),
    ).toEqual([[2, 3]]);
    expect(through(1).stitches[0]).toMatchObject({ layers: 1, length: 30 });
    expect(through(1).title).toBe('Topstitch the front at the pocket left through the upper layer');
  });

  it.each([
    [
      'at: [top, bottom], begins: 10 mm',
      'begins: one-edge: At which of its ends the row begins so far in is not clear: it is more than one row. Write a step for each edge.',
    ],
    [
      'at: top, begins: 60 mm, ends: 40 mm',
      'begins: too-deep: The row is 100 mm long: so far in from its ends nothing is left of it. Make “begins” shorter.',
    ],
    [
      'at: top, back and forth: 60 mm',
      'back and forth: too-deep: The row is shorter than what is sewn back and forth at its ends. Make “back and forth” smaller.',
    ],
    [
      'at: top, through: 2',
      'through: too-many: Only one layer lies along this row. Leave “through” out, and the row goes through all.',
    ],
    [
      'at: outline, begins: 10 mm',
      'begins: one-edge: At which of its ends the row begins so far in is not clear: it is a ring. Write a step for each edge.',
    ],
    [
      'at: outline, by: 50 mm',
      'by: too-deep: So far inside its outline nothing is left to sew round. Make “by” smaller.',
    ],
    // The front is 100 mm wide: a row 60 mm inside the left and one 60 mm inside the right have passed one another.
    [
      'at: [left, bottom, right], by: 60 mm',
      'by: too-deep: So far inside, 60 mm, the rows at the ends of the bottom meet or pass one another: none is left along it. Write a smaller “by”, so that the rows turn sooner.',
    ],
    [
      'at: [left, bottom, right], by: 50 mm',
      'by: too-deep: So far inside, 50 mm, the rows at the ends of the bottom meet or pass one another: none is left along it. Write a smaller “by”, so that the rows turn sooner.',
    ],
    [
      'at: pokcet outline',
      'at: unknown-edge: Nothing called “pokcet” lies here. Name what was laid on it, as in “pocket outline”, or write “outline” for the whole.',
    ],
  ])('says what cannot be: %s', (said, message) => {
    expect(refused(`- { topstitch: front, ${said} }`)).toEqual([`error steps > 0 > ${message}`]);
  });
});

it('turns at corners as long as something is left between them', () => {
  // 80 down, 2 along, 80 up, less twice 49 where it turns.
  expect(last('- { topstitch: front, at: [left, bottom, right], by: 49 mm }').stitches[0]!.length).toBeCloseTo(64, 6);
  // A strip that is as wide as the row lies inside it, usual as that is.
  expect(refused('- { cut apart: front, every: 3 mm }\n- { baste: front, at: all }').at(-1)).toMatch(
    /too-deep: So far/u,
  );
});

it('names the step where it says no “by”, and nothing is left at the usual one', () => {
  const narrow = '  slip: { size: [100 mm, 5 mm], allowance: 0 }';
  expect(found(panels('- { topstitch: slip, at: slip outline }', narrow))[0]).toBe(
    'error steps > 0 > at: too-deep: So far inside its outline nothing is left to sew round. Write a smaller “by”.',
  );
});

describe('a row that follows a curve', () => {
  const long = (topstitch: string, laid: string) =>
    last(`- { lay: ${laid}, on: front }\n- { topstitch: front, ${topstitch} }`).stitches.map(({ length }) => length);

  it('is as long as the arc so far inside it', () => {
    // A circle of 40 mm, 3 mm inside: 34 π; chords leave an arc by 0.05 mm at most.
    expect(long('at: disc outline, by: 3 mm', 'disc')[0]).toBeCloseTo(34 * Math.PI, 0);
    expect(long('at: moon curve, by: 3 mm', 'moon')[0]).toBeCloseTo(17 * Math.PI, 0);
    expect(long('at: disc edge, by: 3 mm', 'disc')[0]).toBeCloseTo(34 * Math.PI, 0);
  });

  it('turns with rounded corners, and not outside of them', () => {
    // 20 + 10 + 20 straight and two quarters of a circle of 7 mm, and all round: 60 + 14 π of 100.
    const [all] = long('at: round outline, by: 3 mm', 'round');
    expect(all).toBeCloseTo(2 * 20 + 2 * 10 + 14 * Math.PI, 0);
    const bottom = last(
      '- { lay: round, on: front }\n- { topstitch: front, at: [round left, round bottom], by: 3 mm }',
    );
    const on = bottom.after.stitches.at(-1)!.runs;
    // The pocket lies from 30 to 70 and from 25 to 55; the corner of the row has its middle at 40, 35.
    const away = on.flatMap(({ from, to }) => [from, to]).map(({ x, y }) => Math.hypot(x - 40, y - 35));
    expect(Math.min(...away)).toBeGreaterThan(6.9);
    expect(on.every(({ plies }) => plies.length === 2)).toBe(true);
  });

  it('turns with a corner of any size, and with one that was cut off', () => {
    const corners = (shape: string) =>
      `  big: { size: [150 mm, 175 mm], allowance: 0, corners: { at: [bottom left, bottom right], ${shape} } }`;
    const rows = (shape: string, at: string) =>
      makeUp(resolved(panels(`- { topstitch: big, at: ${at}, by: 3 mm }`, corners(shape)))).at(-1)!.stitches;
    // Two sides of 125, 50 below, two quarters of a circle of 47.
    const round = rows('round: 50 mm', '[left, bottom, right]');
    expect(round).toHaveLength(1);
    expect(round[0]!.length).toBeCloseTo(2 * 125 + 50 + 47 * Math.PI, 0);
    // Each bend of 45 degrees takes 3 tan 22.5 off both lines.
    const cut = rows('cut off: 25 mm', '[left, bottom, right]');
    const bend = 3 * Math.tan(Math.PI / 8);
    expect(cut.map(({ length }) => length)).toEqual([expect.closeTo(2 * 150 + 100 + 50 * Math.SQRT2 - 8 * bend, 3)]);
  });

  it('is one row along straight sides and a curve, and its ends lie on the cloth', () => {
    const shapes = `  pouch: { outline: [{ at: [0, 75 mm], edge: curve, rise: 75 mm }, [150 mm, 75 mm], [150 mm, 175 mm], [0, 175 mm]], allowance: 0 }
  bib: { outline: [[0, 0], [150 mm, 0], { at: [150 mm, 150 mm], edge: neck, rise: 25 mm, bends: in }, [0, 150 mm]], allowance: 0 }`;
    const rows = (topstitch: string) =>
      makeUp(resolved(panels(`- { topstitch: ${topstitch} }`, shapes)))
        .at(-1)!
        .stitches.map(({ length }) => length);
    // Two sides of 100 and half a circle of 72.
    const around = rows('pouch, at: [left, curve, right], by: 3 mm, back and forth: 5 mm');
    expect(around).toEqual([expect.closeTo(200 + 72 * Math.PI, 0)]);
    expect(rows('pouch, at: left, by: 3 mm, begins: 10 mm, ends: 10 mm')).toEqual([expect.closeTo(80, 3)]);
    // An arc of 150 over 25 has a radius of 125; 12 mm further out it ends at the sides, 75 to either side of its middle.
    const arc = 2 * 137 * Math.asin(75 / 137);
    expect(rows('bib, at: neck, by: 12 mm')).toEqual([expect.closeTo(arc, 0)]);
    expect(rows('bib, at: neck, by: 12 mm, begins: 20 mm, ends: 20 mm')).toEqual([expect.closeTo(arc - 40, 0)]);
    // With a side it turns where both rows cross.
    expect(rows('bib, at: [right, neck], by: 12 mm')).toHaveLength(1);
  });

  it('asks which of two alike is meant, whatever is named of them', () => {
    const two = 'moon, on: front, from bottom: 20 mm';
    const lay = `- { lay: ${two}, from left: 0 mm }\n- { lay: ${two}, from right: 0 mm }`;
    const twice = pieces.replace('{ half circle', '{ cut: 2, half circle');
    const said = (at: string) =>
      found(panels(`${lay}\n- { topstitch: front, at: ${at}, by: 3 mm }`, twice)).filter((line) =>
        line.startsWith('error'),
      );
    for (const part of ['curve', 'outline']) {
      expect(said(`moon ${part}`)[0]).toContain(
        `ambiguous-edge: 2 works called “moon” lie here. Write “first moon ${part}” or “second moon ${part}”.`,
      );
      expect(said(`second moon ${part}`)).toEqual([]);
    }
    const middle = (at: string) => {
      const { runs } = makeUp(resolved(panels(`${lay}\n- { topstitch: front, at: ${at}, by: 3 mm }`, twice)))
        .at(-1)!
        .after.stitches.at(-1)!;
      return runs[0]!.from.x > 50;
    };
    expect([middle('first moon curve'), middle('second moon curve')]).toEqual([false, true]);
  });

  it('goes round the work and not round what stands out beyond it', () => {
    const row = last(
      '- { lay: pocket, on: front, at: top, beyond: 20 mm }\n- { topstitch: front, at: outline, by: 5 mm }',
    );
    expect(row.stitches.map(({ length }) => length)).toEqual([2 * 90 + 2 * 70]);
  });

  it('does not follow a bend that is too tight', () => {
    expect(refused('- { topstitch: moon, at: curve, by: 21 mm }')).toEqual([
      'error steps > 0 > by: too-deep: The curve bends so tightly that no row follows it so far inside. Make “by” smaller.',
    ]);
  });

  it('is refused where it would sew an opening shut', () => {
    const bag = '- { sew round: [front, back], open: top, makes: bag }\n- { turn: bag }';
    expect(refused(`${bag}\n- { topstitch: bag, at: outline }`)[0]).toContain('opening: The row runs along an opening');
    expect(refused(`${bag}\n- { topstitch: bag, at: outline, sew shut: true }`)).toEqual([]);
    // A pocket from 10 to 50 mm of an opening that is 100 mm long: a part of it would be sewn shut.
    const pocket = (from: string) => `${bag}\n- { lay: pocket, on: bag, from left: 10 mm, from top: ${from} }`;
    const round = '- { topstitch: bag, at: pocket outline, by: 3 mm }';
    expect(refused(`${pocket('0 mm')}\n${round}`)[0]).toContain('opening: The row runs along an opening');
    expect(refused(`${pocket('10 mm')}\n${round}`)).toEqual([]);
  });

  it('through the upper layer alone leaves an opening open', () => {
    const bag = '- { sew round: [front, back], open: top, makes: bag }\n- { turn: bag }';
    expect(refused(`${bag}\n- { topstitch: bag, at: top, through: 1 }`)).toEqual([]);
    expect(refused(`${bag}\n- { topstitch: bag, at: top, through: 2 }`)[0]).toContain('opening: The top is an opening');
  });
});

describe('a row on each pleat’s own edge', () => {
  const strip = '  strip: { size: [112 mm, 400 mm], pleats: { pockets: 3, depth: 40 mm, step: 20 mm } }';
  const pleated = (topstitch: string) => makeUp(resolved(panels(`- { pleat: strip${topstitch} }`, strip)))[0]!;

  it('is sewn before the next is folded, through both sides of the pleat and nothing below', () => {
    const [plain, rowed] = [pleated(''), pleated(', topstitch: 4 mm')];
    expect(rowed.size).toEqual(plain.size);
    expect(rowed.stitches.map(({ length, layers }) => [length, layers])).toEqual([
      [112, 2],
      [112, 2],
      [112, 2],
    ]);
    expect(rowed.tools).toContain('sewing machine');
    const folds = (y: number) =>
      rowed.after.plies.flatMap(({ outline }) => outline.map(({ from }) => Math.abs(from.y - y)));
    // Each lies 4 mm inside a fold.
    const ys = rowed.after.stitches.map(({ runs }) => runs[0]!.from.y);
    expect(ys.every((y) => folds(y + 4).some((off) => off < 1e-6))).toBe(true);
  });

  it('lies on the edge that one sees, when the piece is pleated from its wrong side', () => {
    const over = makeUp(resolved(panels('- { turn over: strip }\n- { pleat: strip, topstitch: 4 mm }', strip))).at(-1)!;
    const [ply] = over.after.plies;
    expect(ply!.face).toBe('wrong');
    const rows = over.after.stitches.map(({ runs }) => runs[0]!.from.y);
    const right = pleated(', topstitch: 4 mm').after.stitches.map(({ runs }) => runs[0]!.from.y);
    expect(rows).toEqual(right.map((y) => expect.closeTo(y, 6)));
  });

  it('is folded in one piece of cloth: of two alike sewn together not in one alone', () => {
    const skirt =
      '  skirt: { cut: 2, size: [200 mm, 100 mm], pleats: { on: top, kind: knife, count: 2, depth: 15 mm } }';
    const both = found(panels('- { join: [skirt, skirt], at: [right, left], makes: s }\n- { pleat: s }', skirt));
    expect(both.filter((line) => line.startsWith('error'))).toEqual([
      expect.stringContaining(
        'held: Several layers of “s” have pleats: 2 cut as skirt. Fold them before they are sewn together.',
      ),
    ]);
  });

  it('lies on the pleat', () => {
    const told = found(panels('- { pleat: strip, topstitch: 41 mm }', strip)).filter((line) =>
      line.startsWith('error'),
    );
    expect(told).toEqual([
      'error steps > 0 > topstitch: too-deep: The row on the edge of a pleat lies beyond it: the pleat is not so deep. Make “topstitch” smaller.',
    ]);
  });
});
