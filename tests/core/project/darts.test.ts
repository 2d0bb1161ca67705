/** Darts under pieces, and the step that sews them. */
import { describe, expect, it } from 'vitest';
import { drawPiece, makeUp } from '../../../src/core/index.ts';
import { inverse, transformPoint } from '../../../src/core/geometry/transform.ts';
import { bounds } from '../../../src/core/geometry/index.ts';
import { areaOf } from '../../../src/core/cloth/ring.ts';
import { edgeOn } from '../../../src/core/cloth/index.ts';
import { found, panels } from './steps.ts';
import { resolved } from './files.ts';

const darted = (darts: string, more = '', steps = '- { press: front }') =>
  panels(steps, more).replace('front: { size: [100 mm, 80 mm]', `front: { size: [100 mm, 80 mm], darts: [${darts}]`);
const one = '{ on: top, at: middle, width: 12 mm, length: 30 mm }';
const errors = (yaml: string) => found(yaml).filter((line) => line.startsWith('error'));

describe('a dart on a piece', () => {
  it('leaves the cut size, and takes its width of the edge on the stitch line', () => {
    const pattern = resolved(darted(one));
    const { front } = pattern.pieces;
    expect(front!.size).toEqual({ width: 100, height: 80 });
    // 100 - 2 x 6 - 12.
    expect(pattern.measures['front top stitch line']!.value).toBeCloseTo(76, 9);
    expect(pattern.measures['front top cut line']!.value).toBeCloseTo(100, 9);
    expect(pattern.measures['front bottom stitch line']!.value).toBeCloseTo(88, 9);
    expect(front!.darts).toMatchObject([
      { edge: 'top', width: 12, length: 30, allowance: 6, middle: { x: 50, y: 80 } },
    ]);
    expect(drawPiece(front!, pattern).text).toContain(
      'A dart on the top edge, 12 millimetres wide on the stitch line and 30 millimetres long.',
    );
  });

  it('is compared where edges meet as it is sewn', () => {
    const band = `  band: { size: [88 mm, 40 mm], meets: { bottom: front top } }`;
    // 88 - 12 = 76 between its stitch lines.
    expect(errors(darted(one, band))).toEqual([]);
    expect(errors(darted(one, band.replace('88', '100')))).toEqual([
      'error pieces > band > meets > bottom: edges-differ: On the stitch line the bottom of “band” is 88 mm, and the top of “front” is 76 mm. They differ by 12 mm. Make both alike. What is eased in is said with it: { edges: front top, eased: 12 mm }.',
    ]);
  });

  it.each([
    [
      '{ on: tpo, at: middle, width: 12 mm, length: 30 mm }',
      'on: unknown-name: “front” has no edge called “tpo”. Do you mean “top”?',
    ],
    [
      '{ on: top, at: 10 mm, width: 12 mm, length: 30 mm }',
      'at: dart-off-edge: This dart reaches 2 mm past the end of the top of “front”. Lay it farther in, or make it narrower.',
    ],
    [
      '{ on: top, at: middle, width: 12 mm, length: 80 mm }',
      'length: dart-too-long: The point of this dart lies outside “front”. Make it shorter.',
    ],
    [
      '{ on: top, at: middle, width: 0 mm, length: 30 mm }',
      'width: dart-of-nothing: A dart without a width takes in nothing. Make its width longer.',
    ],
    [
      `${one}, { on: top, at: 60 mm, width: 12 mm, length: 30 mm }`,
      'at: darts-overlap: This dart reaches 2 mm into the one before it. Lay them farther apart.',
    ],
  ])('is refused where it cannot be sewn: %s', (darts, message) => {
    expect(errors(darted(darts)).join()).toContain(message);
  });
});

describe('a step that sews darts', () => {
  const sewn = (darts: string) => makeUp(resolved(darted(darts, '', '- { dart: front }')))[0]!;

  it('takes the edge in, keeps the other edges and all of the cloth', () => {
    const step = sewn(one);
    expect(step.title).toBe('Sew the darts of the front, and press them toward the middle');
    expect(step.size).toEqual({ width: 100, height: 80 });
    const length = (edge: string) => {
      const at = edgeOn(step.after, edge);
      return at.ok ? at.value.length : at.fault.code;
    };
    expect(length('bottom')).toBeCloseTo(100, 6);
    // The legs run straight on to the cut edge, 6 mm beyond the stitch line: 12 x 36 / 30 = 14.4 wide there. A side that
    // slants is not one straight line any more.
    expect([length('top'), length('left')]).toEqual([expect.closeTo(85.6, 6), 'not-straight']);
    expect(step.after.plies.reduce((sum, { outline }) => sum + areaOf(outline), 0)).toBeCloseTo(8000, 3);
    // The row runs from the cut edge to the point: 6 + 30.
    expect(step.stitches.map((row) => [row.kind, row.length, row.layers])).toEqual([
      ['seam', expect.closeTo(36, 6), 3],
    ]);
  });

  it('lays each flap on the wrong side, toward the middle', () => {
    const pair =
      '{ on: top, at: 30 mm, width: 12 mm, length: 30 mm }, { on: top, at: 70 mm, width: 12 mm, length: 30 mm }';
    const { plies } = sewn(pair).after;
    expect(plies.map(({ face }) => face)).toEqual(['right', 'wrong', 'right', 'wrong', 'right']);
    // On the cut edge the legs come together 7.2 mm nearer to the middle for the other dart, and each flap is 7.2 wide;
    // the points stay at 30 and 70.
    const [high, , low] = plies.map(({ outline }) => bounds(outline));
    const spans = [high, low].map((box) => [box!.x, box!.x + box!.width]).toSorted((a, b) => a[0]! - b[0]!);
    expect(spans.map((span) => span.map(Math.round))).toEqual([
      [30, 44],
      [56, 70],
    ]);
  });

  it('is followed by a seam along the edge that it takes in', () => {
    const steps = '- { dart: front }\n- { join: [front, band], at: [top, bottom], makes: top }';
    const [, joined] = makeUp(resolved(darted(one, '  band: { size: [88 mm, 40 mm] }', steps)));
    // 80 - 6 and 40 - 6.
    expect(joined!.size.height).toBeCloseTo(108, 6);
    expect(joined!.stitches[0]!.length).toBeCloseTo(88, 6);
    expect(errors(darted(one, '  band: { size: [88 mm, 40 mm] }', steps))).toEqual([]);
  });

  it('is sewn first', () => {
    const after = (step: string) => errors(darted(one, '', `${step}\n- { dart: front }`));
    expect(after('- { fold: front, from: left, at: 20 mm }')).toEqual([
      'error steps > 1: held: Something else lies on this piece, or it is folded already. Sew its darts first.',
    ]);
    expect(after('- { topstitch: front, at: left }')).toEqual([
      'error steps > 1: sewn-down: Rows of stitches or hardware are on this piece already. Sew its darts first.',
    ]);
    expect(after('- { trim: front, at: top, by: 10 mm }')).toEqual([
      'error steps > 1: misses: The edge with the dart is no longer where it was cut. Sew its darts first.',
    ]);
    // Its point lies 36 mm from the top.
    expect(after('- { trim: front, at: bottom, by: 40 mm }')).toEqual([]);
    expect(after('- { trim: front, at: bottom, by: 50 mm }')).toEqual([
      'error steps > 1: misses: front was cut off before the point of its dart. Sew its darts first.',
    ]);
    expect(errors(panels('- { dart: front }'))).toEqual([
      'error steps > 0: unknown-piece: “front” has no darts under pieces. Give it some: darts: [{ on: top, at: middle, width: 3/4, length: 3 }].',
    ]);
  });
});

it('is told by how each half of it lies: the fold is the middle of the dart, and the seam its legs', () => {
  const step = makeUp(resolved(darted(one, '', '- { dart: front }')))[0]!;
  const [straight, turned] = step.after.plies;
  const home = ({ transform, outline }: NonNullable<typeof turned>, name: string) => {
    const at = outline.findIndex((edge) => edge.name === name);
    const [a, b] = [outline[at]!.from, outline[(at + 1) % outline.length]!.from];
    return [a, b].map((p) => transformPoint(inverse(transform), p).x).toSorted((p, q) => p - q);
  };
  expect(home(straight!, 'dart')).toEqual([expect.closeTo(50, 6), expect.closeTo(50, 6)]);
  expect(home(turned!, 'dart')).toEqual([expect.closeTo(50, 6), expect.closeTo(50, 6)]);
  // 7.2 on either side of the middle at the cut edge, and the point.
  const legs = [...home(straight!, 'seam'), ...home(turned!, 'seam')].toSorted((p, q) => p - q);
  expect(legs).toEqual([42.8, 50, 50, 57.2].map((x) => expect.closeTo(x, 6)));
});

describe('the darts of another piece', () => {
  const off = '{ on: top, at: 30 mm, width: 12 mm, length: 30 mm }';
  const like = (more: string) => resolved(darted(off, `  other: { like: front${more} }`)).pieces['other'];

  it('are taken with “the same”, and lie on the mirror image where they are mirrored', () => {
    expect(like(', darts: the same')!.darts).toMatchObject([
      { edge: 'top', width: 12, length: 30, middle: { x: 30, y: 80 } },
    ]);
    // 30 mm from the left there is 30 mm from the right here, of 100.
    expect(like(', mirrored: true, darts: the same')!.darts).toMatchObject([{ edge: 'top', middle: { x: 70, y: 80 } }]);
    expect(like('')!.darts).toEqual([]);
    const left = '{ on: left, at: 30 mm, width: 12 mm, length: 30 mm }';
    const mirrored = resolved(darted(left, '  other: { like: front, mirrored: true, darts: the same }'));
    expect(mirrored.pieces['other']!.darts).toMatchObject([{ edge: 'right', middle: { x: 100, y: 30 } }]);
  });

  it('shorten the edge in formulas, and are sewn', () => {
    const yaml = darted(
      off,
      '  other: { like: front, darts: the same, allowance: seam }',
      '- { dart: front }\n- { dart: other }',
    );
    const pattern = resolved(yaml);
    expect(pattern.measures['other top stitch line']!.value).toBeCloseTo(76, 9);
    expect(makeUp(pattern).map(({ stitches }) => stitches.length)).toEqual([1, 1]);
  });

  it.each([
    ['back: { size: [100 mm, 80 mm], darts: the same }', 'It is like no other piece whose darts it could have.'],
    ['other: { like: back, darts: the same }', '“back” has no darts that are written there.'],
    ['other: { like: front, inset: 2 mm, darts: the same }', 'It is cut smaller than “front”'],
  ])('are refused: %s', (piece, message) => {
    const yaml = darted(off).replace(
      '  back: { size: [100 mm, 80 mm] }',
      piece.startsWith('back') ? `  ${piece}` : `  back: { size: [100 mm, 80 mm] }\n  ${piece}`,
    );
    expect(errors(yaml).join()).toContain(`darts-of-none: ${message}`);
  });
});
