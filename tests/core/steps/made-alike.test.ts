/** Works made alike: lots done as often as a step says and taken one by one, rows of units, slices and triangles. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawStep, makeUp, threadIn } from '../../../src/core/index.ts';
import { plural } from '../../../src/core/steps/words.ts';
import { found, ledger } from '../project/steps.ts';
import { resolved } from '../project/files.ts';

const project = (pieces: string, steps: string, pairs = 3) => `
title: Patches
units: metric
measures: { seam: { mm: 6, in: 1/4 }, pairs: { count: ${pairs} } }
pieces:
${pieces.replace(/^/gmu, '  ')}
steps:
${steps.replace(/^/gmu, '  ')}
`;
const squares = (many: number) =>
  `light: { cut: ${many}, size: [100 mm, 100 mm] }\ndark: { cut: ${many}, size: [100 mm, 100 mm] }`;

it('two of one name are called both, and two of several names by theirs', () => {
  const titles = (steps: string) => makeUp(resolved(project(squares(2), steps))).map(({ title }) => title);
  expect(titles('- { sew round: [light, light], open: [top], makes: bag }')).toEqual([
    'Sew both lights together, leaving the top open',
  ]);
  expect(titles('- { sew round: [light, dark], open: [top], makes: bag }')[0]).toContain('light and the');
});

describe('a step done several times', () => {
  const yaml = project(
    squares(4),
    `- { join: [light, dark], at: [right, left], times: 4, makes: pair }
- { sew in rows: [pair, pair turned round], times: 2, makes: block }
- { sew in rows: [[2 of block]], makes: front }`,
  );

  it('makes so many, which later steps take one by one', () => {
    expect(ledger(yaml)).toEqual([
      'Join each light at the right and each dark at the left -> pair 188 x 100',
      'Sew 2 × pair below one another -> block 188 x 188',
      'Sew 2 × block in a row -> front 364 x 188',
    ]);
    expect(makeUp(resolved(yaml)).map(({ times }) => times)).toEqual([4, 2, 1]);
    expect(found(yaml).filter((line) => !line.includes('pairs'))).toEqual([]);
  });

  it('follows a formula, and says when there are not so many', () => {
    const times = (asked: string) =>
      found(project(squares(3), `- { join: [light, dark], at: [right, left], times: ${asked}, makes: pair }`));
    expect(times('pairs').filter((line) => line.startsWith('error'))).toEqual([]);
    expect(times('pairs + 1')).toContain(
      'error steps > 0 > times: used-up: “light” is enough for 3 of these, and the step is done 4 times. Write “times: 3”, or make more.',
    );
    expect(times('pairs / 2')[0]).toMatch(
      /^error steps > 0 > times: not-a-count: A whole number from 1 up belongs here/u,
    );
  });

  it('is done to all of a name that it keeps', () => {
    expect(found(project(squares(3), '- { hem: light, at: top, fold: 10 mm, times: 2 }'))).toContain(
      'error steps > 0 > times: uneven: There are 3 “light” here, and this step is done to 2 of them only: two sorts of one name ' +
        'could not be told apart. Give the result a name of its own: “makes: first light”.',
    );
  });

  it('is done to one sort of a name alone', () => {
    const yaml = project(
      'a: { cut: 2, size: [50 mm, 80 mm] }\nb: { cut: 2, size: [50 mm, 80 mm] }',
      '- { sew in rows: [[a, b]], makes: unit }\n- { sew in rows: [[a], [b]], makes: unit }\n- { press: unit }',
    );
    expect(found(yaml).filter((line) => line.startsWith('error'))).toEqual([
      'error steps > 2: uneven: Not all “unit” are alike, so this step would come out differently each time. Give each sort a name of its own.',
    ]);
    expect(ledger(yaml)).toHaveLength(2);
  });

  it('tells which of several it takes', () => {
    const titles = ledger(
      project(
        'front: { size: [200 mm, 200 mm] }\nloop: { cut: 2, size: [20 mm, 60 mm] }',
        '- { hem: loop, at: left, fold: 5 mm }\n- { lay: loop, on: front, at: top, from left: 0 }\n- { lay: loop, on: front, at: top, from right: 0 }',
      ),
    ).map((line) => line.split(' -> ')[0]);
    expect(titles).toEqual([
      'Hem both loops at the left',
      'Lay the first loop on the front at the top, measured from the left',
      'Lay the second loop on the front at the top, measured from the right',
    ]);
  });
});

it.each([
  ['strap', 'straps'],
  ['pocket lining', 'pocket linings'],
  ['patch', 'patches'],
  ['box', 'boxes'],
  ['body', 'bodies'],
  ['tray', 'trays'],
  ['half', 'halves'],
  ['tie', 'ties'],
  ['ties', 'ties'],
  ['dress', 'dresses'],
])('two of %s are %s', (one, both) => {
  expect(plural(one)).toBe(both);
});

describe('a step done to some of a name', () => {
  it('says how many of them', () => {
    const step = '- { hem: napkin, at: left, fold: 5 mm, times: 2, makes: hemmed }';
    expect(ledger(project('napkin: { cut: 4, size: [90 mm, 90 mm] }', `${step}\n${step}`))).toEqual([
      'Hem 2 × napkin at the left -> hemmed 85 x 90',
      'Hem 2 × napkin at the left -> hemmed 85 x 90',
    ]);
  });
});

describe('rows of units', () => {
  it('lose a seam of two allowances between each two, in both directions', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 30, max: 90 }),
        fc.constantFrom('open', 'in turn'),
        (rows, columns, side, press) => {
          fc.pre(rows * columns > 1);
          const grid = `[${Array.from({ length: rows }, () => `[${columns} of unit]`).join(', ')}]`;
          const yaml = project(
            `unit: { cut: ${rows * columns}, size: [${side} mm, 60 mm] }`,
            `- { sew in rows: ${grid}, press: ${press}, makes: block }`,
          );
          const [step] = makeUp(resolved(yaml));
          expect(step!.size.width).toBeCloseTo(columns * side - 12 * (columns - 1), 6);
          expect(step!.size.height).toBeCloseTo(rows * 60 - 12 * (rows - 1), 6);
          expect(step!.stitches).toHaveLength(rows * (columns - 1) + rows - 1);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('lie turned where they say so', () => {
    const yaml = project(
      'tall: { size: [40 mm, 80 mm] }\nwide: { size: [80 mm, 40 mm] }',
      '- { sew in rows: [tall, wide turned left], makes: block }',
    );
    expect(found(yaml).filter((line) => !line.includes('pairs'))).toEqual([]);
    expect(ledger(yaml)).toEqual(['Sew the tall and the wide below one another -> block 40 x 148']);
  });

  it('are of as many as somebody sews, and of some', () => {
    const rows = (cells: string) =>
      found(project('unit: { cut: 120, size: [40 mm, 80 mm] }', `- { sew in rows: ${cells}, makes: block }`)).filter(
        (line) => line.startsWith('error'),
      );
    expect(rows('[[120 of unit]]')).toEqual([
      'error steps > 0 > sew in rows > 0 > 0: too-many: At most 100 of one work lie in a row. Check the number, or sew rows of fewer first.',
    ]);
    expect(rows('[[2 of unit], [2 of unit, 0 of unit]]')).toEqual([
      'error steps > 0 > sew in rows > 1 > 1: none: None of “unit” is no work. Leave it out, or say how many.',
    ]);
  });

  it('have a finished size, a seam allowance smaller at every side', () => {
    const block = (finished: string) =>
      project(
        'light: { cut: 2, size: [62 mm, 62 mm] }\ndark: { cut: 2, size: [62 mm, 62 mm] }',
        `- { sew in rows: [[light, dark], [dark, light]], finished: ${finished}, makes: block }`,
      );
    // Units of 50 mm finished: two of them are 100 mm, and 112 mm unfinished.
    expect(ledger(block('[100 mm, 100 mm]'))).toEqual(['Sew 2 × light and 2 × dark in 2 rows -> block 112 x 112']);
    expect(found(block('[112 mm, 100 mm]'))[0]).toBe(
      'error steps > 0 > finished: shapes-differ: Less a seam allowance at every side its width is smaller than “finished” says. Check the sizes of the units: unfinished they are a seam allowance larger at every side, too.',
    );
  });

  it('say which edges differ', () => {
    const yaml = project(
      'tall: { size: [40 mm, 80 mm] }\nwide: { size: [80 mm, 40 mm] }',
      '- { sew in rows: [[tall, wide]], makes: block }',
    );
    expect(found(yaml)[0]).toMatch(
      /^error steps > 0: edges-differ: On the stitch line the right of “tall” is 80 mm, the left of “wide” is 40 mm\. They differ by 40 mm\./u,
    );
  });
});

describe('slices', () => {
  const strips = (cut: string, pieces = 'light: { size: [500 mm, 60 mm] }\ndark: { like: light, allowance: seam }') =>
    project(pieces, `- { sew in rows: [light, dark], makes: set }\n- { cut apart: set, ${cut}, makes: pair }`);

  it('are as many as the strips give, and the rest is cut away', () => {
    const [, step] = makeUp(resolved(strips('every: 60 mm')));
    expect(step!.size).toEqual({ width: 60, height: 108 });
    expect(step!.after.done.at(-1)!.apart!.many).toBe(8);
    // 20 mm of both strips are left over, shared by eight.
    expect(step!.after.done.at(-1)!.cutAway).toBeCloseTo((20 * 120) / 8, 6);
    expect(drawStep(step!, resolved(strips('every: 60 mm'))).text).toContain('Cut across every 60 millimetres.');
  });

  it('are cut apart once, whatever is done to them afterwards', () => {
    const steps = makeUp(resolved(`${strips('every: 60 mm')}  - { press: pair }\n  - { quarter turn: pair }\n`));
    expect(steps.map(({ times }) => times)).toEqual([1, 1, 8, 8]);
    expect(found(`${strips('every: 60 mm')}  - { press: pair }\n`).filter((line) => line.startsWith('error'))).toEqual(
      [],
    );
  });

  it('are no more than there are, and alike', () => {
    expect(found(strips('every: 60 mm, into: 9'))[0]).toBe(
      'error steps > 1 > into: too-many: Only 8 so wide come out of it. Write “into: 8”, or cut narrower slices.',
    );
    expect(found(strips('every: 0.1 mm'))[0]).toBe(
      'error steps > 1 > every: too-many: 5000 slices would come out of it, and nobody cuts more than 500. Make “every” larger, or say “into”.',
    );
    const slanting = 'light: { outline: [[0 mm, 0 mm], [500 mm, 0 mm], [500 mm, 60 mm], [0 mm, 80 mm]], allowance: 0 }';
    expect(found(project(slanting, '- { cut apart: light, every: 60 mm, makes: patch }'))[0]).toBe(
      'error steps > 0: shapes-differ: The slices would not be alike: number 2 differs from the first.',
    );
  });
});

describe('squares of two triangles', () => {
  const yaml = (side = 100, more = '') =>
    project(
      `light: { cut: 2, size: [${side} mm, ${side} mm] }\ndark: { cut: 2, size: [${side} mm, ${side} mm] }`,
      `- { triangles: [light, dark], times: 2, makes: unit }${more}`,
    );

  it('are two for each pair of squares, the side of the square less the seam times the root of two', () => {
    // 100 - 6 √2 = 91.51, dog ears left out.
    const trimmed = (side: string) => yaml(100, `\n- { trim: unit, size: [${side} mm, ${side} mm] }`);
    expect(makeUp(resolved(trimmed('91.5'))).map(({ times }) => times)).toEqual([2, 4]);
    expect(found(trimmed('91.8'))[0]).toMatch(/too-deep: The work does not fill/u);
  });

  it('take thread for both seams of a pair', () => {
    const steps = makeUp(resolved(yaml()));
    // Twice two rows along a diagonal, each 2 x 6 mm shorter than it.
    expect(threadIn(steps).sewn).toBeCloseTo(4 * (100 * Math.SQRT2 - 12), 3);
  });

  it('turn the grain of the second square by a quarter, as cloth does that is folded over a diagonal', () => {
    const [step] = makeUp(resolved(yaml()));
    const [light, dark] = ['light', 'dark'].map(
      (name) => step!.after.plies.find(({ piece, face }) => piece === name && face === 'right')!.transform,
    );
    expect([light!.a, light!.b]).toEqual([1, 0]);
    expect(Math.abs(dark!.a)).toBeLessThan(1e-9);
    expect(Math.abs(dark!.b)).toBeCloseTo(1, 9);
  });

  it('are made of squares', () => {
    expect(
      found(
        project(
          'light: { size: [100 mm, 100 mm] }\ndark: { size: [100 mm, 90 mm] }',
          '- { triangles: [light, dark], makes: unit }',
        ),
      )[0],
    ).toBe('error steps > 0: shapes-differ: Pairs of triangles are made of two squares of one size.');
  });
});
