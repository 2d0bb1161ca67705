import { describe, expect, test } from 'vitest';
import { check, makeUp, resolveProject } from '../../../src/core/project/index.ts';
import { folio, lines, project, shelf } from '../project/files.ts';
import type { Edition } from '../../../src/core/measure/index.ts';
import type { Materials } from '../../../src/core/project/index.ts';

/** A case of 4 1/2 x 10 1/2 in that closes with something; it is folded 2 in from its top at the end. */
const closing = (closure: string, steps: string, edition: Edition, more: Materials = {}, pieces = '') =>
  resolveProject(
    project(`
title: Case
measures: { seam: { in: 1/4, mm: 6 } }
materials: { cloth: quilting cotton, ${closure} }
pieces:
  outside: { from: cloth, size: [{ in: 5, mm: 130 }, { in: 11, mm: 280 }] }
  inside: { from: cloth, like: outside }
${pieces}
steps:
  - { sew round: [inside, outside], gap: { edge: left, length: { in: 3, mm: 80 } }, makes: case }
  - { turn: case }
${steps}
  - { fold: case, from: top, at: { in: 2, mm: 50 }, turn of cloth: { in: 1/8, mm: 3 } }
`),
    { edition, materials: { ...shelf(), ...more } },
  );

/** Closed with a snap, its second half as a test wants it. */
const snapped = (second: string, edition: Edition = 'inch') =>
  closing(
    'snap: { use: prong snap, count: 1 }',
    `  - { id: first, attach: snap, to: case, at: [{ in: 2 1/4, mm: 59 }, { in: 7, mm: 180 }] }
  - { id: second, attach: snap, to: case, ${second} }`,
    edition,
  );

const found = (second: string, edition?: Edition) => lines(check(snapped(second, edition)));

describe('the halves of a snap', () => {
  test('the second is placed by the first, in both editions', () => {
    for (const edition of ['inch', 'metric'] as const) {
      expect(found('meets: first', edition)).toEqual([]);
      const { marks } = makeUp(snapped('meets: first', edition)).at(-1)!.after;
      const [a, b] = marks.map(({ at }) => at);
      expect(Math.hypot(a!.x - b!.x, a!.y - b!.y)).toBeCloseTo(0, 6);
    }
    // 10 1/2 in high, folded 2 in from the top: 7 in from the bottom meets 10 in from the bottom.
    const second = makeUp(snapped('meets: first'))[3]!;
    expect(second.instruction).toMatchObject({
      verb: 'attach',
      at: { x: expect.closeTo(2.25 * 25.4, 6), y: expect.closeTo(10 * 25.4, 6) },
    });
  });
  test('what was laid on the case and hangs out beyond its left does not shift it', () => {
    const strap = closing(
      'snap: { use: prong snap, count: 1 }',
      `  - { lay: strap, on: case, at: left, beyond: 1 in }
  - { id: first, attach: snap, to: case, at: [2 1/4 in, 7 in] }
  - { id: second, attach: snap, to: case, meets: first }`,
      'inch',
      {},
      '  strap: { from: cloth, size: [3 in, 1 in] }',
    );
    expect(strap.findings.filter(({ severity }) => severity === 'error')).toEqual([]);
    const set = makeUp(strap)[4]!;
    // The same place as without it, from the left and the bottom of the case.
    expect(set.instruction).toMatchObject({
      verb: 'attach',
      at: { x: expect.closeTo(2.25 * 25.4, 6), y: expect.closeTo(10 * 25.4, 6) },
    });
    expect(check(strap).filter(({ code }) => code === 'halves-apart')).toEqual([]);
  });
  test('a place of its own must meet the other half', () => {
    expect(found('meets: first, at: [2 1/4 in, 10 in]')).toEqual([]);
    expect(found('meets: first, at: [2 1/4 in, 9 5/8 in]')).toEqual([
      'error steps > 3 > meets: halves-apart: The halves of “snap” lie 3/8 in apart on the finished work. ' +
        'Leave out “at”, and it is set where it meets the other half.',
    ]);
  });
  test('what says otherwise is named as it was written', () => {
    expect(found('meets: first, from top: 1 in, from left: 1 in').join()).toContain(
      'Leave out “from top” and “from left”, and it is set where it meets the other half.',
    );
  });
  test('snaps that are set twice are taken for two halves', () => {
    expect(found('at: [2 1/4 in, 9 5/8 in]').join()).toContain('warning steps > 3: halves-apart');
    expect(found('at: [2 1/4 in, 10 in]')).toEqual([]);
  });
  test('a half that nothing sets is named at its place', () => {
    expect(found('meets: frist')).toContain(
      'error steps > 3 > meets: halves-apart: No step “frist” has set the other half on this work. Did you mean “first”?',
    );
  });
  test('those of the folio meet', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const pattern = resolveProject(folio(), { edition, options: { flap: true }, materials: shelf() });
      expect(lines(check(pattern)).filter((line) => line.includes('halves-apart'))).toEqual([]);
    }
  });
});

/** The same case with a button on its body and a buttonhole in what is folded over it. */
const buttoned = (second: string, more = '', edition: Edition = 'inch') =>
  closing(
    'button: { use: flat button, count: 1 }',
    `  - { id: button, attach: button, to: case, at: [{ in: 2 1/4, mm: 59 }, { in: 7, mm: 180 }] }
  - { id: hole, buttonhole: case, length: { in: 3/4, mm: 20 }, ${second} }
  ${more}`,
    edition,
    { 'flat button': { kind: 'hardware', hardware: 'button' } },
  );

describe('a button and its buttonhole', () => {
  const found = (second: string, more?: string) =>
    lines(check(buttoned(second, more))).filter((line) => line.includes('halves-apart'));

  test('the hole is placed by the button, in both editions', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const pattern = buttoned('meets: button', '', edition);
      expect(lines(check(pattern))).toEqual([]);
      const { marks, stitches } = makeUp(pattern).at(-1)!.after;
      expect(marks.map(({ name }) => name)).toEqual(['button', 'buttonhole']);
      const [button, hole] = marks.map(({ at }) => at);
      expect(Math.hypot(button!.x - hole!.x, button!.y - hole!.y)).toBeCloseTo(0, 6);
      // Down one side of the slit and up the other, through both layers of the case and no more.
      const rows = stitches.at(-1)!.runs;
      expect(rows.map(({ from, to }) => Math.hypot(from.x - to.x, from.y - to.y))).toEqual(
        [1, 2].map(() => expect.closeTo(edition === 'inch' ? 0.75 * 25.4 : 20, 6) as number),
      );
      for (const { plies } of rows) expect(plies).toHaveLength(2);
    }
  });
  test('a hole with a place of its own must meet its button', () => {
    expect(found('meets: button, at: [2 1/4 in, 10 in]')).toEqual([]);
    expect(found('meets: button, at: [2 1/4 in, 9 5/8 in]')).toEqual([
      'error steps > 3 > meets: halves-apart: The buttonhole and “button” lie 3/8 in apart on the finished work. ' +
        'Leave out “at”, and it is set where it meets the button.',
    ]);
  });
  test('as many buttons as holes are taken for each other, in their order', () => {
    expect(found('at: [2 1/4 in, 10 in]')).toEqual([]);
    expect(found('at: [2 1/4 in, 9 5/8 in]')).toEqual([
      expect.stringMatching(/^warning steps > 3: halves-apart: The buttonhole and “button” lie 3\/8 in apart/u),
    ]);
    // A hole for a cord beside it: nobody can say which one is the button’s.
    expect(found('at: [2 1/4 in, 9 5/8 in]', '- { buttonhole: case, at: [1 in, 2 in], length: 1/2 in }')).toEqual([]);
  });
  test('a hole that runs off the cloth, or lies beside it, is none', () => {
    const wrong = (second: string) => lines(check(buttoned(second))).join('\n');
    expect(wrong('at: [1/4 in, 10 in]')).toContain('The buttonhole runs off the cloth');
    expect(wrong('at: [9 in, 10 in]')).toContain('no cloth where the buttonhole is');
  });
});

const flatButton: Materials[string] = {
  kind: 'hardware',
  hardware: 'button',
  across: { in: '3/4', mm: 20, source: 'made up' },
  thickness: { mm: 25.4 / 8, source: 'made up' },
};

describe('a half on a work that is folded more than once', () => {
  /** A pouch of one strip: a pocket is folded up from the bottom, and then a flap down over it. */
  const pouch = (first: string, second: string) =>
    resolveProject(
      project(`
title: Pouch
units: inch
measures: { seam: { in: 1/2, mm: 12 } }
materials: { cloth: canvas, button: { use: flat button }, stud: { use: press stud } }
pieces: { body: { from: cloth, size: [5 in, 13 in], allowance: 0 } }
steps:
  - { id: first, ${first} }
  - { id: second, ${second} }
  - { fold: body, from: bottom, at: 5 in }
  - { fold: body, from: top, at: 3 in }
`),
      {
        edition: 'inch',
        materials: { 'flat button': flatButton, 'press stud': { kind: 'hardware', hardware: 'snap' } },
      },
    );
  const hole = 'buttonhole: body, length: 1 in';
  const button = 'attach: button, to: body';

  // The pocket brings what lies at y to 10 - y in; the fold of the flap at 10 in brings that to 10 + y.
  test.each([1, 2])('lies in the flap, and not in the pocket: %d in from the bottom', (from) => {
    const pattern = pouch(`${button}, from bottom: ${from} in`, `${hole}, meets: first`);
    expect(makeUp(pattern)[1]!.after.marks[1]!.at.y).toBeCloseTo((10 + from) * 25.4, 6);
    expect(lines(check(pattern)).filter((line) => line.includes('halves-apart'))).toEqual([]);
  });
  test('the button is set by its hole as well', () => {
    const pattern = pouch(`${hole}, from bottom: 12 in`, `${button}, meets: first`);
    expect(makeUp(pattern)[1]!.after.marks[1]!.at.y).toBeCloseTo(2 * 25.4, 6);
  });
  test('a hole is as long as the button that it meets needs', () => {
    const made = makeUp(pouch(`${button}, from bottom: 2 in`, 'buttonhole: body, meets: first'));
    const { from, to } = made[1]!.after.stitches.at(-1)!.runs[0]!;
    // 3/4 in across and 1/8 in thick.
    expect(Math.hypot(from.x - to.x, from.y - to.y)).toBeCloseTo((7 / 8) * 25.4, 6);
  });
  test.each([
    [
      `${button}, from bottom: 2 in`,
      'buttonhole: body, length: 1/4 in, meets: first',
      'length: too-small: “button” does not go through',
    ],
    [
      'attach: stud, to: body, from bottom: 2 in',
      `${hole}, meets: first`,
      'meets: halves-apart: A buttonhole does not close with a snap',
    ],
    [
      'attach: stud, to: body, from bottom: 2 in',
      `${button}, meets: first`,
      'meets: halves-apart: A button does not close with a snap',
    ],
  ])('does not close with what is no half of it: %s, %s', (first, second, message) => {
    expect(lines(check(pouch(first, second))).join()).toContain(`error steps > 1 > ${message}`);
  });
});

test('halves on two works must come together', () => {
  const said = (last: string) =>
    lines(
      check(
        resolveProject(
          project(`
title: Two
units: inch
measures: { seam: { in: 1/2, mm: 12 } }
materials: { cloth: canvas, stud: { use: press stud } }
pieces: { front: { from: cloth, size: [5 in, 5 in] }, back: { from: cloth, size: [5 in, 5 in] } }
steps:
  - { id: first, attach: stud, to: front, from top: 2 in }
  - { id: second, attach: stud, to: back, meets: first }
${last}
`),
          { edition: 'inch', materials: { 'press stud': { kind: 'hardware', hardware: 'snap' } } },
        ),
      ),
    ).filter((line) => line.includes('halves-apart'));
  expect(said('  - { join: [front, back], at: top, press: unopened, makes: case }')).toEqual([]);
  expect(said('')).toEqual([
    'error steps > 1 > meets: halves-apart: The two halves never come together: no step brings their works to lie on one another. Sew or fold both works together, or leave “meets” out.',
  ]);
});
