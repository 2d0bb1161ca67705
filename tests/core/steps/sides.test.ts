import { describe, expect, test } from 'vitest';
import { makeUp } from '../../../src/core/project/index.ts';
import { boxesOf, errors, lastOf, lengthsOf, readingsIn, rowsOf, sizeOf, wrong } from './wrong.ts';
import { found, ledger } from '../project/steps.ts';
import { resolved } from '../project/files.ts';

/** A panel of 12 x 12 in and steps. */
const panel = (steps: string, more = ''): string => `
title: Panel
measures: { seam: 1/2 }
pieces:
  panel: { size: [12, 12] }
${more}
steps:
${steps.replace(/^/gmu, '  ')}
`;

describe('sides are where the work lies', () => {
  test('a row at a folded side lies on the folded side', () => {
    const row = lastOf(wrong('row-at-folded-side'));
    expect(rowsOf(row)).toEqual(['4.125,12 to 4.125,0, 2 layers']);
  });
  test.each([
    ['top', '12,7.875 to 0,7.875, 2 layers'],
    ['right', '7.875,0 to 7.875,12, 2 layers'],
    ['bottom', '0,4.125 to 12,4.125, 2 layers'],
    ['left', '4.125,12 to 4.125,0, 2 layers'],
  ])('at the %s as well, and the raw edge keeps the name of its piece', (side, row) => {
    const steps = (at: string) =>
      panel(`- { fold: panel, from: ${side}, at: 4, lands: under, makes: folded }\n- { topstitch: folded, at: ${at} }`);
    expect(rowsOf(lastOf(resolved(steps(side))))).toEqual([row]);
    // The raw edge lies 4 in inside the fold, and its cloth on the side of the fold.
    const [ends] = rowsOf(lastOf(resolved(steps(`panel ${side}`))));
    expect(ends).toContain(side === 'top' || side === 'right' ? '4.125' : '7.875');
  });
  test('after the work is turned over, left is where left is now', () => {
    const step = (at: string) =>
      lastOf(
        resolved(
          panel(
            `- { fold: panel, from: left, at: 4, lands: under }\n- { turn over: panel }\n- { topstitch: panel, at: ${at} }`,
          ),
        ),
      );
    expect(rowsOf(step('right'))).toEqual(['11.875,0 to 11.875,12, 2 layers']);
    expect(rowsOf(step('left'))).toEqual(['4.125,12 to 4.125,0, 1 layers']);
  });
  test.each(['left', 'right'])('a curved top that was turned to the side is the %s, and no more the top', (towards) => {
    const curved = 'outline: [[0, 0], [12, 0], { at: [12, 9], edge: top, curve through: [[6, 12]] }, [0, 9]]';
    const row = (at: string, more = '') =>
      lastOf(
        resolved(panel(`${more}- { topstitch: cloth, at: ${at}, by: 1 }`, `  cloth: { ${curved} }`)),
      ).after.stitches.at(-1)!.runs;
    const turn = `- { quarter turn: cloth, towards: ${towards} }\n`;
    // It is as high then as the piece was wide, about its middle, and its straight top ends where the curve begins.
    const ys = row('top', turn).flatMap(({ from, to }) => [from.y, to.y]);
    expect(Math.max(...ys) - Math.min(...ys)).toBeLessThan(1e-6);
    expect(row('top', turn)).toHaveLength(1);
    // As it was cut, the row follows the curve.
    expect(row('top').length).toBeGreaterThan(4);
  });
  test('a curve that was turned to a side is named as the piece has it', () => {
    const curved = (through: string) =>
      `outline: [[0, 0], { at: [9, 0], edge: right, curve through: [${through}] }, [9, 12], [0, 12]]`;
    const told = (at: string, through = '[12, 6]') =>
      found(
        panel(
          `- { quarter turn: cloth }\n- { topstitch: cloth, at: ${at}, by: 1 }`,
          `  cloth: { ${curved(through)}, allowance: 0 }`,
        ),
      ).filter((line) => line.startsWith('error'));
    // By a quarter to the left, its right lies at the top, and what was its top at the left.
    expect(told('top')).toEqual([
      'error steps > 1 > at: not-straight: The top is curved there: it does not lie on one straight line. Name the edge that lies there: “cloth right”.',
    ]);
    expect(told('cloth right')).toEqual([]);
    expect(told('left')).toEqual([]);
    // One that bends in has no outermost edge at all.
    expect(told('top', '[6, 6]')).toEqual([
      'error steps > 1 > at: unknown-edge: There is no straight side at the top, and no edge that was called so when it was cut. Name the edge of the piece that lies there, as in “front right”.',
    ]);
  });
  test('a pocket is laid by its folded side, right side up, within the panel', () => {
    const laid = lastOf(wrong('lay-by-folded-side'));
    expect(sizeOf(laid)).toEqual([12, 12]);
    expect(boxesOf(laid.after, 'pocket')).toEqual(['0 2.5 0.5 9.5 wrong', '0 2.5 7.5 9.5 right']);
  });
  test.each(['top', 'right', 'bottom'])('also at the %s', (side) => {
    const laid = lastOf(
      resolved(
        panel(
          `- { fold: pocket, from: ${side}, at: 1/2, lands: under }\n- { lay: pocket, on: panel, at: ${side} }\n- { topstitch: panel, at: pocket ${side}, by: 1/8 }`,
          '  pocket: { size: [6, 6] }',
        ),
      ),
    );
    const box = { top: '3 6.5 9 12 right', right: '6.5 3 12 9 right', bottom: '3 0 9 5.5 right' }[side];
    expect(boxesOf(laid.after, 'pocket').at(-1)).toBe(box);
    // A work that was laid on another keeps its sides by its name: the folded one, not the raw edge beneath.
    expect(lengthsOf(laid)).toEqual([6]);
    expect(laid.stitches[0]!.layers).toBe(3);
  });
  test('the right side of a work of several pieces is its right', () => {
    const laid = lastOf(wrong('right-is-right'));
    expect(boxesOf(laid.after, 'flap')).toEqual(['6 0.875 8 2.875 right']);
    const caught = lastOf(wrong('right-is-right-caught'));
    expect(boxesOf(caught.after, 'flap')).toEqual(['6 0.875 8 2.875 right']);
    expect(errors(wrong('right-is-right-caught'))).toEqual([]);
  });
  test('a row beside the fold is measured from the fold, not from interfacing inside', () => {
    expect(rowsOf(lastOf(wrong('row-beside-interfacing')))).toEqual(['4,3.625 to 0,3.625, 4 layers']);
  });
  test('the side of a four-patch is all of it', () => {
    const sashed = lastOf(wrong('side-of-many-pieces'));
    expect(errors(wrong('side-of-many-pieces'))).toEqual([]);
    expect(sizeOf(sashed)).toEqual([5.5, 4.5]);
    expect(lengthsOf(sashed)).toEqual([4.5]);
  });
  test('each side of a four-patch can be joined, hemmed and trimmed', () => {
    const patch = (step: string) =>
      panel(
        `- { join: [a, b], at: [right, left], makes: pair 1 }
- { join: [a, b], at: [right, left], makes: pair 2 }
- { join: [pair 1, pair 2], at: [bottom, top], makes: four }
${step}`,
        '  a: { cut: 2, size: [4, 4] }\n  b: { cut: 2, size: [4, 4] }',
      );
    for (const side of ['left', 'right', 'top', 'bottom']) {
      const level = side === 'left' || side === 'right';
      const sizeAfter = (step: string) => sizeOf(lastOf(resolved(patch(step))));
      const less = (by: number) => (level ? [7 - by, 7] : [7, 7 - by]);
      expect(sizeAfter(`- { hem: four, at: ${side}, fold: 1/4, then: 1/2 }`)).toEqual(less(0.75));
      expect(sizeAfter(`- { trim: four, at: ${side}, by: 1/4 }`)).toEqual(less(0.25));
    }
  });
  test('where a flap stands out, the side that is meant must be said', () => {
    const yaml = (at: string) =>
      panel(
        `- { sew round: [panel, back], between: tab, at: [right, bottom], gap: { edge: bottom, length: 6 }, makes: case }
- { turn: case }
- { topstitch: case, at: ${at}, by: 1/4 }`,
        '  back: { size: [12, 12] }\n  tab: { size: [2, 3] }',
      );
    expect(found(yaml('right')).join()).toContain(
      'The right is not one straight side: tab stands out beyond panel. Write “tab top” or “panel right”.',
    );
    expect(lengthsOf(lastOf(resolved(yaml('panel right'))))).toEqual([11]);
    expect(lengthsOf(lastOf(resolved(yaml('tab top'))))).toEqual([2]);
  });
});

describe('a row ends with what it sews', () => {
  test('the row that divides a pocket ends with the pocket, in both editions', () => {
    expect(lengthsOf(lastOf(wrong('dividing-row')))).toEqual([6]);
    expect(lastOf(wrong('dividing-row', '', 'metric')).stitches[0]!.length).toBeCloseTo(152, 6);
  });
  test.each(['right', 'top', 'bottom'])('from its %s as well', (side) => {
    const yaml = panel(
      `- { lay: pocket, on: panel }\n- { topstitch: panel, at: pocket ${side}, by: 2 }`,
      '  pocket: { size: [6, 5] }',
    );
    expect(lengthsOf(lastOf(resolved(yaml)))).toEqual([side === 'right' ? 5 : 6]);
  });
  test('a pocket laid turned keeps its own sides', () => {
    const yaml = panel(
      `- { lay: pocket, on: panel, at: [left, top] }\n- { baste: panel, at: pocket top, by: 1/4 }`,
      '  pocket: { size: [6, 5] }',
    );
    expect(rowsOf(lastOf(resolved(yaml)))).toEqual(['0.25,9 to 0.25,3, 2 layers']);
  });
  test('of two alike, the first or the second is named', () => {
    const yaml = (at: string) =>
      panel(
        `- { lay: pocket, on: panel, at: left }\n- { lay: pocket, on: panel, at: right }\n- { topstitch: panel, at: ${at}, by: 1/4 }`,
        '  pocket: { cut: 2, size: [4, 5] }',
      );
    expect(found(yaml('pocket left')).join()).toContain(
      '2 works called “pocket” lie here. Write “first pocket left” or “second pocket left”.',
    );
    expect(rowsOf(lastOf(resolved(yaml('first pocket left'))))).toEqual(['0.25,8.5 to 0.25,3.5, 2 layers']);
    expect(rowsOf(lastOf(resolved(yaml('second pocket left'))))).toEqual(['8.25,8.5 to 8.25,3.5, 2 layers']);
  });
});

describe('a pocket is as deep as its opening lies above the row that closes it', () => {
  const pocket = (steps: string, card: string): string =>
    panel(
      `- { hem: pocket, at: top, fold: 1/4, then: 1 }
- { lay: pocket, on: panel, at: bottom }
- { topstitch: panel, at: [pocket left, pocket bottom, pocket right], by: 1/4 }
${steps}`,
      `  pocket: { size: [8, 6], allowance: 0 in }\nholds: [{ what: a card, size: ${card}, in: pocket }]`,
    );
  test('a hem is no bottom, and a flange is none', () => {
    for (const name of ['hem-is-no-bottom', 'flange-is-no-bottom']) {
      for (const edition of ['inch', 'metric'] as const) expect(errors(wrong(name, '', edition))).toEqual([]);
    }
  });
  test('the row that closes it is: 6 in, less a hem of 1 1/4 in and a row 1/4 in up', () => {
    expect(found(pocket('', '[3, 4 1/2]'))).toEqual([]);
    expect(found(pocket('', '[3, 4 5/8]')).join()).toContain('the pocket is 4 1/2 in deep. That is 1/8 in too shallow');
  });
  test('a second row higher up closes it there', () => {
    const row = '- { topstitch: panel, at: pocket bottom, by: 1 }';
    expect(found(pocket(row, '[3, 4]')).join()).toContain('the pocket is 3 3/4 in deep. That is 1/4 in too shallow');
  });
});

describe('what is caught, turned and trimmed', () => {
  test('a flap basted on first stands out as if it were caught between', () => {
    const turned = lastOf(wrong('flap-basted-first'));
    expect(sizeOf(turned)).toEqual([11.875, 4.25]);
    expect(boxesOf(turned.after, 'flap')).toEqual(['10.25 1.5 12.25 3.5 right']);
    expect(turned.after.stitches.filter(({ kind }) => kind === 'baste')).toEqual([]);
  });
  test('a pocket held on three sides stays where it was laid', () => {
    const yaml = panel(
      `- { lay: pocket, on: panel, at: bottom }
- { topstitch: panel, at: [pocket left, pocket right], by: 1/8 }
- { sew round: [panel, back], gap: { edge: top, length: 6 }, makes: case }
- { turn: case }`,
      '  back: { size: [12, 12] }\n  pocket: { size: [6, 5] }',
    );
    expect(sizeOf(lastOf(resolved(yaml)))).toEqual([11, 11]);
  });
  test('allowances are trimmed at the sides that are named; the gap keeps its own, and the size stays', () => {
    const trimmed = wrong('trim-sewn-allowance');
    expect(errors(trimmed)).toEqual([]);
    expect(sizeOf(lastOf(trimmed))).toEqual([10.5, 4.75]);
    const turned = lastOf(wrong('trim-sewn-allowance', '  - { turn: case }\n'));
    expect(sizeOf(turned)).toEqual([10.25, 4.25]);
    expect(errors(wrong('trim-sewn-allowance', '  - { trim: case, at: left, by: 1/4 }\n')).join()).toContain(
      'That cuts away the row of seam stitches along this edge.',
    );
  });
  test('grading leaves the allowance at the gap whole', () => {
    const graded = lastOf(wrong('grade-beside-gap'));
    for (const { outline } of graded.after.plies) {
      const free = outline.findIndex(({ held }) => held === undefined);
      const [from, to] = [outline[free]!.from, outline[(free + 1) % outline.length]!.from];
      expect([from.y, to.y].map((y) => y / 25.4)).toEqual([5, 5]);
      expect(Math.abs(from.x - to.x) / 25.4).toBeCloseTo(4, 9);
    }
    expect(sizeOf(lastOf(wrong('grade-beside-gap', '  - { turn: case }\n')))).toEqual([10.25, 4.25]);
  });
  test('a triangle unit is trimmed with the ruler on its seam', () => {
    const unit = lastOf(wrong('trim-triangle-unit'));
    expect(sizeOf(unit)).toEqual([3.5, 3.5]);
    // The seam runs from corner to corner of the square.
    const { plies, stitches } = unit.after;
    const corners = plies.flatMap(({ outline }) => outline.map(({ from }) => from));
    const [left, low] = [Math.min(...corners.map(({ x }) => x)), Math.min(...corners.map(({ y }) => y))];
    const ends = stitches[0]!.runs.flatMap(({ from, to }) => [from, to]);
    for (const { x, y } of ends) expect((x - left + (y - low)) / 25.4).toBeCloseTo(3.5, 6);
  });
  test('a work turned by a quarter fits, and the error says how', () => {
    expect(errors(wrong('quarter-turn')).join()).toContain(
      'One lies turned by a quarter: “quarter turn: inside” before this step turns it.',
    );
    const yaml = panel(
      `- { quarter turn: inside, towards: right }\n- { sew round: [outside, inside], gap: { edge: left, length: 4 }, makes: case }\n- { turn: case, now: { width: 4, height: 10 } }`,
      '  outside: { size: [5, 11] }\n  inside: { size: [11, 5] }',
    );
    expect(ledger(yaml)[0]).toBe('Turn the inside by a quarter to the right -> inside 127 x 279.4');
    expect(found(yaml).filter((line) => line.startsWith('error'))).toEqual([]);
  });
  test('only the gathered edge is drawn up', () => {
    const gathered = lastOf(wrong('gather-one-edge'));
    expect(sizeOf(gathered)).toEqual([30, 18]);
    expect(lengthsOf(gathered)).toEqual([20, 20]);
    expect(boxesOf(gathered.after, 'pocket')).toEqual(['11.5 5.5 18.5 12.5 right']);
    expect(gathered.after.plies.map(({ fullness }) => fullness)).toEqual([1, 1.5, 1]);
  });
  test.each(['fuse-own-inset', 'fuse-given-inset'])('interfacing lies as it is cut: %s', (name) => {
    expect(boxesOf(lastOf(wrong(name)).after, 'stay')).toEqual(['0 0.5 2.5 4.5 right']);
  });
  test('a patch of interfacing lies at its place', () => {
    const pattern = wrong('patch-behind-hardware');
    expect(boxesOf(lastOf(pattern).after, 'patch')).toEqual(['2.25 3 3.25 4 right']);
    expect(lastOf(pattern).after.marks[0]!.plies.length).toBe(2);
    expect(errors(pattern)).toEqual([]);
  });
});

describe('what cannot be done lying flat says so', () => {
  test.each([
    ['bind-four-edges', 'strip-length: The strip is'],
    ['hem-round-mouth', 'The top is an opening: sewn as it lies, through both layers, it would be sewn shut.'],
    ['fold-sew-turn', 'A folded piece is sewn at its sides by “sew up”.'],
    [
      'join-between-lengths',
      'the top of “front” is 10 in, the bottom of “tape” is 7 in, the top of “front lining” is 9 in',
    ],
  ])('%s', (name, says) => {
    for (const edition of ['inch', 'metric'] as const) {
      const found = errors(wrong(name, '', edition)).join('\n');
      if (edition === 'inch' || name !== 'join-between-lengths') expect(found).toContain(says);
      else expect(found).toContain('edges-differ');
    }
    if (name === 'bind-four-edges')
      expect(errors(wrong(name)).join()).toContain('12 in long, and the edges that it goes along are 48 in together');
  });
  test.each(['hem: bag, at: top, fold: 1/4', 'casing: bag, at: top, width: 1/2, then: 1/4', 'topstitch: bag, at: top'])(
    'round a mouth: %s',
    (step) => {
      const yaml = panel(
        `- { sew round: [panel, back], open: top, makes: bag }\n- { turn: bag }\n- { ${step} }`,
        '  back: { size: [12, 12] }',
      );
      expect(found(yaml).join()).toContain('steps > 2 > at: opening: ');
    },
  );
  test('a row that is meant to sew an opening shut says so', () => {
    const yaml = panel(
      `- { sew round: [panel, back], open: top, makes: bag }\n- { turn: bag }\n- { topstitch: bag, at: top, sew shut: true }`,
      '  back: { size: [12, 12] }',
    );
    expect(lengthsOf(lastOf(resolved(yaml)))).toEqual([11]);
  });
  test('a hem that is wider than its cloth, and a first turn wider than its hem', () => {
    expect(found(panel('- { hem: panel, at: top, fold: 1/4, then: 6 }')).join()).toContain('deeper than the work');
    expect(found(panel('- { hem: panel, at: top, fold: 1, then: 1/2 }')).join()).toContain(
      'The first turn is wider than the hem that it lies in.',
    );
  });
  test('a casing adds up in both editions', () => {
    for (const edition of ['inch', 'metric'] as const) expect(errors(wrong('casing-inch', '', edition))).toEqual([]);
    expect(sizeOf(lastOf(wrong('casing-inch')))).toEqual([10, 13.563]);
  });
});

describe('made alike, taken one by one', () => {
  test.each(['two-straps', 'two-alike', 'two-alike-pleated'])('%s', (name) => {
    for (const edition of ['inch', 'metric'] as const) expect(errors(wrong(name, '', edition))).toEqual([]);
  });
  test('what is done to both is done to both, and each is taken once', () => {
    expect(makeUp(wrong('two-straps')).map(({ times }) => times)).toEqual([2, 1, 1]);
    expect(errors(wrong('two-straps', '  - { lay: strap, on: front, at: [bottom, top] }\n')).join()).toContain(
      '“strap” went into “back” in step 3.',
    );
  });
  test('a step that would be done to some of them only is refused', () => {
    const yaml = panel('- { join: [a, b], at: top }', '  a: { cut: 3, size: [4, 4] }\n  b: { cut: 2, size: [4, 4] }');
    expect(found(yaml).join()).toContain('There are 3 “a” here, but 2 “b”: this step could be done to 2 of them only.');
  });
  test('the same step twice makes two of one name', () => {
    const yaml = panel(
      `- { join: [a, b], at: [right, left], makes: pair }
- { join: [a, b], at: [right, left], makes: pair }
- { join: [pair, pair], at: [bottom, top], makes: four, now: { width: 7, height: 7 } }`,
      '  a: { cut: 2, size: [4, 4] }\n  b: { cut: 2, size: [4, 4] }',
    );
    expect(found(yaml).filter((line) => line.startsWith('error'))).toEqual([]);
  });
});

/**
 * The projects above that are read in inches there. Each length of a file is moved to the nearest mm, a seam of 1/4 in to
 * 6 mm, and the sizes are worked out by hand from those: 12 in are 305 mm, less a fold of 4 in, 102 mm, are 203 mm.
 */
describe('the same projects in the metric edition', () => {
  const mm = readingsIn(1);
  const last = (name: string, more = '') => lastOf(wrong(name, more, 'metric'));
  test.each([
    ['row-at-folded-side', [203, 305], ['105,305 to 105,0, 2 layers']],
    ['lay-by-folded-side', [305, 305], []],
    ['right-is-right', [203, 97], []],
    ['row-beside-interfacing', [102, 97], ['102,94 to 0,94, 4 layers']],
    ['flap-basted-first', [300, 107], []],
    ['trim-sewn-allowance', [267, 121], []],
    ['grade-beside-gap', [271, 123], []],
    ['gather-one-edge', [762, 457], ['635,451 to 127,451, 1 layers', '635,445 to 127,445, 1 layers']],
    ['patch-behind-hardware', [127, 279], []],
    ['fuse-own-inset', [76, 127], []],
    ['fuse-given-inset', [76, 127], []],
    ['hardware-behind', [140, 90], []],
    ['casing-inch', [254, 344], ['254,325 to 0,325, 3 layers']],
  ])('%s', (name, size, rows) => {
    expect(errors(wrong(name, '', 'metric'))).toEqual([]);
    expect(mm.sizeOf(last(name))).toEqual(size);
    expect(mm.rowsOf(last(name))).toEqual(rows);
  });
  test.each([
    ['lay-by-folded-side', 'pocket', ['0 63.5 13 241.5 wrong', '0 63.5 190 241.5 right']],
    ['right-is-right', 'flap', ['152 23 203 74 right']],
    ['flap-basted-first', 'flap', ['259 38 310 89 right']],
    // One layer keeps twice as much of the allowance as the other, and both all of it at the gap.
    ['grade-beside-gap', 'outside', ['7 7 272 127 right']],
    ['grade-beside-gap', 'inside', ['4 4 275 127 wrong']],
    ['gather-one-edge', 'pocket', ['292 139.5 470 317.5 right']],
    ['gather-one-edge', 'skirt', ['0 0 762 438 right', '127 438 635 457 right']],
    ['patch-behind-hardware', 'patch', ['57 76 82 101 right']],
    ['fuse-own-inset', 'stay', ['0 13 63 114 right']],
    ['fuse-given-inset', 'stay', ['0 13 63 114 right']],
  ])('where it lies: %s, %s', (name, piece, boxes) => {
    expect(mm.boxesOf(last(name).after, piece)).toEqual(boxes);
  });
  test('hardware is mirrored with the piece that is turned', () => {
    const [snap] = last('hardware-behind').after.marks;
    expect([snap!.at.x, snap!.at.y]).toEqual([152 - 38, 51]);
  });
  test('turned, they are as large', () => {
    for (const name of ['trim-sewn-allowance', 'grade-beside-gap'])
      expect(mm.sizeOf(last(name, '  - { turn: case }\n'))).toEqual([279 - 2 * 10, 127 - 2 * 10]);
  });
  test.each([
    // Twice 102 mm less twice 6 mm is folded at 95 mm: 97 mm stay, and the back is 95 mm high.
    ['right-is-right-caught', 'steps > 2: shapes-differ: The two works sewn round do not have one shape.'],
    // Twice 64 mm less 12 mm is 116 mm, and 4 1/2 in are 114 mm.
    ['side-of-many-pieces', 'the left of “a and b” is 116 mm, the right of “sash” is 114 mm. They differ by 2 mm.'],
    // A unit of 76 mm and twice 6 mm is 88 mm, and 3 1/2 in are 89 mm.
    ['trim-triangle-unit', 'The work does not fill the size that it is trimmed to.'],
  ])('what does not add up in mm says so: %s', (name, says) => {
    expect(errors(wrong(name, '', 'metric')).join()).toContain(says);
  });
});
