/** Circles, arcs, smooth curves, halves on the fold, shares of an edge, and edge lengths as numbers. */
import { describe, expect, test } from 'vitest';
import { area, bounds, length } from '../../../src/core/geometry/index.ts';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';
import type { Edition, Pattern } from '../../../src/core/index.ts';

const EDITIONS = ['inch', 'metric'] as const;

/** A file with pieces and steps of its own. */
const file = (pieces: string, more = '', edition: Edition = 'metric'): Pattern =>
  resolved(
    `
title: Round things
measures:
  seam: { in: 3/8, mm: 10 }
  across: { in: 8, mm: 200 }
${more.includes('measures:') ? more.replace('measures:\n', '') : ''}
pieces:
${pieces.trim().replace(/^/gmu, '  ')}
${more.includes('measures:') ? '' : more}
`,
    { edition },
  );

const errors = (pattern: Pattern): string[] => lines(check(pattern)).filter((line) => line.startsWith('error'));
const value = ({ measures }: Pattern, name: string): number => measures[name]!.value;

describe.each(EDITIONS)('a circle, in the %s edition', (edition) => {
  const [d, seam] = edition === 'inch' ? [8 * 25.4, 9.525] : [200, 10];
  test('is as wide as its diameter, cut with a seam round it', () => {
    const pattern = file('base: { circle: across }', '', edition);
    expect(errors(pattern)).toEqual([]);
    expect(value(pattern, 'base finished width')).toBeCloseTo(d, 9);
    expect(value(pattern, 'base width')).toBeCloseTo(d + 2 * seam, 9);
    expect(value(pattern, 'base length')).toBeCloseTo(d + 2 * seam, 9);
    expect(area(pattern.pieces.base!.outline)).toBeCloseTo((Math.PI * d * d) / 4, 6);
    // Its width is said as a sum, too.
    expect(pattern.measures['base width']!.formula!.text).toBe('across + 2 * seam');
  });
  test('gives its length round to formulas, on either line', () => {
    const pattern = file(
      'base: { circle: across }\nside: { size: [base stitch line + 2 * seam, 4 in] }',
      'measures:\n  rim: base edge cut line',
      edition,
    );
    expect(errors(pattern)).toEqual([]);
    expect(value(pattern, 'side width')).toBeCloseTo(Math.PI * d + 2 * seam, 9);
    expect(value(pattern, 'rim')).toBeCloseTo(Math.PI * (d + 2 * seam), 9);
  });
  test('of two alike is sewn all round', () => {
    const pattern = file(
      'front: { circle: across }\nback: { like: front }',
      'steps:\n  - { sew round: [front, back], makes: pad }',
      edition,
    );
    expect(errors(pattern)).toEqual([]);
    const [pad] = makeUp(pattern);
    // Cloth lies in chords, which leave their curve by 0.05 mm at most.
    expect(pad!.stitches[0]!.length / (Math.PI * (d - 2 * 0.05))).toBeGreaterThan(0.999);
    expect(pad!.stitches[0]!.length).toBeLessThanOrEqual(Math.PI * d);
  });
  test.each([
    ['a gap in it', 'sew round: [front, back], gap: { edge: edge, length: 3 in }'],
    ['gathers', 'gather: front, at: edge, to: 6 in'],
  ])('has no straight edge for %s, which is said', (_, step) => {
    const pattern = file('front: { circle: across }\nback: { like: front }', `steps:\n  - { ${step} }`, edition);
    expect(errors(pattern).join()).toContain(
      'not-straight: The edge edge does not lie on one straight line. Name a straight edge',
    );
  });
});

test('a row follows the edge of a circle, so far inside it', () => {
  const pattern = file('front: { circle: across }', 'steps:\n  - { topstitch: front, at: edge, by: 5 mm }');
  expect(errors(pattern)).toEqual([]);
  const [row] = makeUp(pattern)[0]!.stitches;
  // Cut with a seam of 10 mm round 200 mm. Chords leave their curve by 0.05 mm at most.
  expect(Math.abs(row!.length - Math.PI * (220 - 2 * 5))).toBeLessThan(0.5);
});

describe('half a circle', () => {
  const pattern = file('pocket: { half circle: across }');
  test('lies on its straight edge', () => {
    expect(errors(pattern)).toEqual([]);
    const { width, height } = pattern.pieces.pocket!.size;
    expect([width, height]).toEqual([expect.closeTo(220, 9), expect.closeTo(120, 9)]);
    expect(value(pattern, 'pocket bottom stitch line')).toBeCloseTo(200, 9);
    expect(value(pattern, 'pocket curve stitch line')).toBeCloseTo(Math.PI * 100, 9);
    expect(value(pattern, 'pocket stitch line')).toBeCloseTo(200 + Math.PI * 100, 9);
  });
});

describe('arcs and curves in an outline', () => {
  const yoke = (way: string) => `
yoke:
  allowance: { others: seam, neck: 0 mm }
  outline:
    - { at: [0, 0], edge: hem }
    - { at: [300 mm, 0], edge: side }
    - { at: [300 mm, 200 mm], edge: neck, ${way} }
    - { at: [0, 200 mm], edge: other side }`;
  test('an arc of a radius or a rise goes out, or in where it says so', () => {
    // Half a circle of 300 mm holds 35343 mm²; a rise of 50 mm over 300 mm is a radius of 250 mm.
    for (const [way, more, neck] of [
      ['radius: 150 mm', (Math.PI * 150 ** 2) / 2, Math.PI * 150],
      ['radius: 150 mm, bends: in', (-Math.PI * 150 ** 2) / 2, Math.PI * 150],
      ['rise: 50 mm, bends: in', -(250 ** 2 * Math.asin(0.6) - 150 * 200), 500 * Math.asin(0.6)],
    ] as const) {
      const pattern = file(yoke(way));
      expect.soft(errors(pattern), way).toEqual([]);
      expect.soft(area(pattern.pieces.yoke!.outline), way).toBeCloseTo(300 * 200 + more, 6);
      expect.soft(value(pattern, 'yoke neck stitch line'), way).toBeCloseTo(neck, 9);
    }
  });
  test('both lines of an edge are numbers: the cut line of an armhole is shorter than its stitch line', () => {
    const pattern = file(yoke('radius: 150 mm, bends: in').replace('neck: 0 mm', 'side: 0 mm, other side: 0 mm'));
    expect(value(pattern, 'yoke neck stitch line') - value(pattern, 'yoke neck cut line')).toBeCloseTo(Math.PI * 10, 9);
    expect(value(pattern, 'yoke hem cut line')).toBeCloseTo(300, 9);
  });
  test('a curve goes through its points, on a circle as long as an arc', () => {
    const on = (degrees: number) =>
      `[${150 + 150 * Math.cos((degrees * Math.PI) / 180)} mm, ${200 - 150 * Math.sin((degrees * Math.PI) / 180)} mm]`;
    const pattern = file(yoke(`curve through: [${on(40)}, ${on(100)}, ${on(150)}]`));
    expect(errors(pattern)).toEqual([]);
    expect(value(pattern, 'yoke neck stitch line')).toBeCloseTo(Math.PI * 150, 3);
  });
  test('corners between sides of one name are rounded as others are', () => {
    const along = (turn: number) => (100 + 100 * turn).toFixed(9);
    const at = (k: number) => `[${along(Math.cos((k * Math.PI) / 3))} mm, ${along(Math.sin((k * Math.PI) / 3))} mm]`;
    const points = Array.from({ length: 6 }, (_, k) => `{ at: ${at(k)}, edge: side }`).join(', ');
    const pattern = file(`coaster: { outline: [${points}], corners: { round: 20 mm } }`);
    expect(errors(pattern)).toEqual([]);
    // Six arcs of 60 degrees make a circle of the radius; each takes r tan 30° off both its sides.
    const sharp = 6 * (100 - 2 * 20 * Math.tan(Math.PI / 6));
    expect(value(pattern, 'coaster stitch line')).toBeCloseTo(sharp + 2 * Math.PI * 20, 6);
  });
  test('rounded corners leave the arcs of a curve alone', () => {
    const pattern = file(
      `${yoke('curve through: [[200 mm, 150 mm], [100 mm, 150 mm]]')}\n  corners: { at: hem-side, round: 20 mm }`,
    );
    expect(errors(pattern)).toEqual([]);
    expect(value(pattern, 'yoke stitch line')).toBeCloseTo(length(pattern.pieces.yoke!.outline), 9);
    // Their edges are shorter than they were drawn: they are asked for all round.
    expect(pattern.measures['yoke hem stitch line']).toBeUndefined();
  });
  test.each([
    [
      'rise: 160 mm',
      'no-arc: The ends of this edge lie 300 mm apart: an arc over them rises by 150 mm at most, as half a circle.',
    ],
    [
      'radius: 149 mm',
      'no-arc: The ends of this edge lie 300 mm apart, which no circle of a radius of 149 mm reaches over. Make the radius 150 mm or more.',
    ],
    ['rise: 0 mm', 'no-arc: This comes to 0 mm. An arc into the piece says “bends: in”.'],
    [
      'rise: 20 mm, radius: 300 mm',
      'curve-unclear: The edge from here is curved twice: by “rise” and “radius”. Keep one of them.',
    ],
    [
      'bends: in',
      'curve-unclear: “bends” belongs to an arc, with “rise” or “radius”. Give the arc one of them: “rise: 1/2 in”.',
    ],
    [
      'curve through: [[300 mm, 200 mm]]',
      'curve-unclear: Two neighbouring points of a curve of “yoke” are the same, so that it has no way there.',
    ],
    ['curve through: [[20 mm, 150 mm], [280 mm, 150 mm]]', 'outline-crosses: The outline of “yoke” crosses itself.'],
  ])('%s is refused', (way, says) => {
    expect(errors(file(yoke(way))).join('\n')).toContain(says);
  });
});

describe('on the fold', () => {
  const half = (more = '') => `
front:
  on fold: middle${more}
  outline:
    - { at: [0, 0], edge: hem }
    - { at: [150 mm, 0], edge: side }
    - { at: [120 mm, 200 mm], edge: shoulder }
    - { at: [60 mm, 220 mm], edge: neck, radius: 60 mm, bends: in }
    - { at: [0, 180 mm], edge: middle }`;
  test('an outline is one half, and the piece is cut whole', () => {
    const pattern = file(half());
    expect(errors(pattern)).toEqual([]);
    const { outline } = pattern.pieces.front!;
    expect(bounds(outline).width).toBeCloseTo(300, 9);
    const one = file(half().replace('on fold: middle', 'allowance: 0 mm')).pieces.front!;
    expect(area(outline)).toBeCloseTo(2 * area(one.outline), 6);
    expect(outline.map(({ name }) => name)).toEqual([
      'hem',
      'side',
      'shoulder',
      'neck',
      'neck',
      'other shoulder',
      'other side',
    ]);
    expect(value(pattern, 'front hem stitch line')).toBeCloseTo(300, 9);
    expect(value(pattern, 'front other side stitch line')).toBeCloseTo(Math.hypot(30, 200), 9);
    expect(value(pattern, 'front neck stitch line')).toBeCloseTo(2 * length(one.outline, 'neck'), 9);
  });
  test('an allowance holds for both halves, unless the other names its own', () => {
    const same = file(half('\n  allowance: { others: 10 mm, side: 25 mm }')).pieces.front!;
    expect(same.allowance).toEqual({
      hem: 10,
      side: 25,
      shoulder: 10,
      neck: 10,
      'other shoulder': 10,
      'other side': 25,
    });
    const own = file(half('\n  allowance: { others: 10 mm, side: 25 mm, other side: 5 mm }')).pieces.front!;
    expect(own.allowance).toMatchObject({ side: 25, 'other side': 5 });
  });
  test('left and right are called as they lie', () => {
    const pattern = file(`
pocket:
  on fold: left
  outline: [{ at: [0, 0], edge: bottom }, { at: [80 mm, 0], edge: right }, { at: [80 mm, 100 mm], edge: top }, { at: [0, 100 mm], edge: left }]`);
    expect(pattern.pieces.pocket!.outline.map(({ name }) => name)).toEqual(['bottom', 'right', 'top', 'left']);
    expect(pattern.pieces.pocket!.size).toEqual({ width: 180, height: 120 });
  });
  test.each([
    ['on fold: midle', 'unknown-name: “front” has no edge called “midle”. Do you mean “middle”?'],
    [
      'on fold: neck',
      'fold-curved: The edge “neck” of “front” is curved: only a straight edge lies on the fold. Name a straight edge.',
    ],
    ['on fold: twice', 'name-twice: “front” has 2 edges called “twice”, and one lies on the fold.'],
    [
      'on fold: shoulder',
      'fold-inside: “front” lies on both sides of its edge “shoulder”, which is to lie on the fold. Give the outline of one half.',
    ],
  ])('%s is refused', (fold, says) => {
    const twice = fold.endsWith('twice')
      ? half().replace('edge: middle', 'edge: twice').replace('edge: side', 'edge: twice')
      : half();
    const yaml = twice.replace('on fold: middle', fold);
    const caved = fold.endsWith('shoulder') ? yaml.replace('[120 mm, 200 mm]', '[62 mm, 100 mm]') : yaml;
    expect(errors(file(caved)).join('\n')).toContain(says);
  });
  test.each([
    ['right', 'left', 'On the other half “right” is called “left”, and this half has an edge of that name.'],
    ['side', 'other side', 'On the other half “side” is called “other side”, and this half has an edge of that name.'],
  ])('names of both halves are told apart: %s and %s', (side, shoulder, says) => {
    const yaml = half().replace('edge: side', `edge: ${side}`).replace('edge: shoulder', `edge: ${shoulder}`);
    expect(errors(file(yaml)).join('\n')).toContain(`name-twice: ${says} Call one of the two something else.`);
  });
  test('edges of one name that lie apart have no length and no notch', () => {
    const tray = `tray:
  outline: [{ at: [0, 0], edge: hem }, { at: [80 mm, 0], edge: side }, { at: [90 mm, 90 mm], edge: top }, { at: [0, 90 mm], edge: side }]`;
    expect(errors(file(tray))).toEqual([]);
    expect(errors(file(`${tray}\n  notches: [{ on: side, at: middle }]`))).toEqual([
      'error pieces > tray > notches > 0 > on: name-twice: “tray” has edges called “side” that lie apart. Give each a name of its own.',
    ]);
    expect(errors(file(`${tray}\nstrip: { size: [tray side stitch line, 1 in] }`)).join()).toContain('unknown-name');
    expect(errors(file(`${tray}\nstrip: { size: [tray top stitch line, 1 in] }`))).toEqual([]);
  });
  test('only an outline has a half', () => {
    expect(errors(file('front: { size: [100 mm, 50 mm], on fold: left }'))).toEqual([
      'error pieces > front > on fold: fold-of-whole: Only an outline lies on the fold here. Give the piece its whole size, or an outline of one half.',
    ]);
  });
});

describe('notches by a share of an edge', () => {
  test('quarters of a circle begin at its lowest point', () => {
    const pattern = file(
      'base: { circle: across, notches: [{ on: edge, share: 0 }, { on: edge, share: 1/4 }, { on: edge, share: 1/2 }, { on: edge, share: 0.75 }] }',
    );
    expect(errors(pattern)).toEqual([]);
    const at = pattern.pieces.base!.notches.map(({ at: { x, y } }) => [Math.round(x), Math.round(y)]);
    expect(at).toEqual([
      [110, 0],
      [220, 110],
      [110, 220],
      [0, 110],
    ]);
  });
  test('a third of a straight edge, and of a curve of several arcs', () => {
    const pattern = file(
      'flap: { half circle: across, notches: [{ on: bottom, share: 1/3 }, { on: curve, at: middle }] }',
    );
    const [third, middle] = pattern.pieces.flap!.notches;
    // A third of the stitch line, which begins a seam inside the widest place of the cut line.
    const { x } = bounds(pattern.pieces.flap!.outline);
    expect(third!.at).toEqual({ x: expect.closeTo(x + 200 / 3, 6) as number, y: 0 });
    expect(middle!.at).toEqual({ x: expect.closeTo(x + 100, 6) as number, y: expect.closeTo(120, 6) as number });
  });
  test('those of a base and of the side that is sewn to it meet', () => {
    const shares = [1 / 4, 1 / 2, 3 / 4];
    const notched = (on: string) => `notches: [${shares.map((share) => `{ on: ${on}, share: ${share} }`).join(', ')}]`;
    const { base, side } = file(
      `base: { circle: across, ${notched('edge')} }\nside: { finished: [base stitch line, 4 in], ${notched('bottom')} }`,
    ).pieces;
    const [middle, seam, round] = [110, 10, 200 * Math.PI];
    for (const [i, share] of shares.entries()) {
      const { x, y } = base!.notches[i]!.at;
      const turned = Math.atan2(y - middle, x - middle) / (2 * Math.PI) + 1 / 4;
      expect((turned + 1) % 1).toBeCloseTo(share, 9);
      expect(side!.notches[i]!.at).toEqual({ x: expect.closeTo(seam + share * round, 6) as number, y: 0 });
    }
  });
  test.each([
    ['share: 3/2', 'no-share: This comes to 1.5. A share of an edge lies between 0 and 1. Write 1/4 for a quarter.'],
    ['share: 1/4, at: middle', 'notch-unclear: A notch lies at a length along its edge, or at a share of it.'],
    ['label: middle', 'notch-unclear: A notch lies at a length along its edge, or at a share of it.'],
  ])('%s is refused', (notch, says) => {
    expect(errors(file(`base: { circle: across, notches: [{ on: edge, ${notch} }] }`)).join('\n')).toContain(says);
  });
});

test('a curve that turns back on itself is refused', () => {
  const back = 'tab: { outline: [{ at: [0, 1 in], curve through: [[0, 0]] }, [0, 2 in], [1 in, 1 in]] }';
  expect(errors(file(back))).toEqual([
    'error pieces > tab > outline: curve-unclear: A curve of “tab” has no way through its points. Move a point of the curve, or put one more between.',
  ]);
});

test('a smooth curve whose ends stand straight across is as long as two half circles there', () => {
  const wave = `wave: { allowance: 0 mm, outline: [{ at: [0 mm, 50 mm], edge: curve, curve through: [[20 mm, 10 mm], [40 mm, 70 mm]] }, [60 mm, 50 mm], [60 mm, 200 mm], [0 mm, 200 mm]] }`;
  const pattern = file(wave);
  expect(errors(pattern)).toEqual([]);
  expect(value(pattern, 'wave curve stitch line')).toBeGreaterThan((Math.PI / 2) * Math.hypot(20, 60));
});

test('an arc that goes farther in than its chord has room makes a crescent', () => {
  const pattern = file(`moon:
  allowance: 0 mm
  outline: [{ at: [0 mm, 60 mm], edge: curve, rise: 40 mm, bends: in }, [100 mm, 60 mm], [50 mm, 40 mm]]`);
  expect(errors(pattern)).toEqual([]);
  // A circular segment less the triangle over it: r = (c² / 4 + h²) / 2h, and the segment r² (t - sin t) / 2.
  const r = (50 ** 2 + 40 ** 2) / 80;
  const turn = 2 * Math.asin(50 / r);
  expect(area(pattern.pieces.moon!.outline)).toBeCloseTo((r * r * (turn - Math.sin(turn))) / 2 - (100 * 20) / 2, 6);
});

describe('a name that two pieces give', () => {
  test('is refused where one has an edge of it', () => {
    const front = 'front: { outline: [[0, 0 in], [6 in, 0 in], { at: [6 in, 6 in], edge: pocket }, [0, 6 in]] }';
    expect(errors(file(`${front}\nfront pocket: { circle: 10 in }`))).toEqual([
      'error pieces > front > outline: name-twice: “front pocket stitch line” would be the length of an edge of “front” and of “front pocket”. Call the edge or the piece something else.',
    ]);
  });
});

describe('what cannot be', () => {
  test.each([
    ['base: { circle: 0 mm }', 'nothing-left: The diameter of “base” comes to 0 mm. There is nothing to cut.'],
    ['base: { circle: across, corners: { round: 5 mm } }', 'corners-of-circle: A circle has no corners to shape.'],
    [
      'base: { circle: across, size: [1 in, 1 in] }',
      'size-twice: The piece “base” gets its size twice: by “size” and “circle”.',
    ],
    ['base: { circle: base stitch line }', 'cycle'],
    ['base: { size: [base stitch line, 1 in] }', 'base stitch line'],
  ])('%s', (pieces, says) => {
    expect(errors(file(pieces)).join('\n')).toContain(says);
  });
});

describe.each(EDITIONS)('edges that are meant to meet, in the %s edition', (edition) => {
  const say =
    edition === 'inch'
      ? ['≈ 25 1/8 in', '24 in', '≈ 1 1/8 in', '1 3/16 in']
      : ['≈ 628 mm', '600 mm', '≈ 28 mm', '29 mm'];
  const round = (side: string, meets = 'side bottom') => `
base: { circle: across, meets: { edge: ${meets} } }
side: { finished: [${side}, 4 in] }`;
  const wide = '{ in: 24, mm: 600 }';
  test('are as long as each other on their stitch lines', () => {
    expect(errors(file(round('base stitch line'), '', edition))).toEqual([]);
    expect(errors(file(round(wide), '', edition))).toEqual([
      `error pieces > base > meets > edge: edges-differ: On the stitch line the edge of “base” is ${say[0]}, and the bottom of ` +
        `“side” is ${say[1]}. They differ by ${say[2]}. Make both alike. What is eased in is said with it: { edges: side bottom, eased: ${say[3]} }.`,
    ]);
  });
  test('or are eased as much as is said, which may pucker', () => {
    expect(errors(file(round(wide, '{ edges: side bottom, eased: { in: 1 1/4, mm: 30 } }'), '', edition))).toEqual([]);
    expect(errors(file(round(wide, '{ edges: side bottom, eased: { in: 1, mm: 25 } }'), '', edition)).join()).toContain(
      'edges-differ',
    );
    const short = file(round('{ in: 20, mm: 500 }', '{ edges: side bottom, eased: { in: 6, mm: 150 } }'), '', edition);
    expect(lines(check(short)).join()).toContain('warning pieces > base > meets > edge: edges-differ');
  });
  test('several make up one', () => {
    const halves = `
base: { circle: across, meets: { edge: [front bottom, back bottom] } }
front: { finished: [base stitch line / 2, 4 in] }
back: { like: front }`;
    expect(errors(file(halves, '', edition))).toEqual([]);
    expect(errors(file(halves.replace('/ 2', '/ 2 + 1 in'), '', edition)).join()).toContain(
      'Make both alike. What is eased in is said with it: { edges: [front bottom, back bottom], eased: ',
    );
  });
  test.each([
    ['sid bottom', 'unknown-name: There is no piece called “sid bottom”. Name the piece and its edge: “side bottom”.'],
    ['side botom', 'unknown-name: “side” has no edge called “botom”. Do you mean “bottom”?'],
  ])('are named with their pieces: %s', (named, says) => {
    expect(errors(file(round(wide, named), '', edition)).join()).toContain(says);
  });
});

describe.each(EDITIONS)('what is held in a round piece, in the %s edition', (edition) => {
  // A card of 6 x 8 cm lies across in 10 cm: Pythagoras.
  const holds = (width: string) =>
    file('pocket: { circle: 10 cm }', `holds: [{ what: a card, size: [${width}, 8 cm], in: pocket }]`, edition);
  test('lies within its curve, not only within the box round it', () => {
    expect(errors(holds('5.9 cm'))).toEqual([]);
    expect(errors(holds('6.3 cm')).join()).toContain('A card does not fit the pocket: it is');
  });
});
