import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { clothAreas, piece, rectangle, value } from '../cloth/works.ts';
import { errors, lengthsOf, readingsIn, sizeOf } from './wrong.ts';
import { makeUp } from '../../../src/core/project/index.ts';
import { pipe } from '../../../src/core/cloth/pipe.ts';
import { resolved } from '../project/files.ts';
import { runs } from '../../random.ts';
import { boxOf, size } from '../../../src/core/cloth/size.ts';
import { attach, sewRound, turn } from '../../../src/core/cloth/index.ts';
import { tangle } from '../cloth/order.ts';
import type { Edition } from '../../../src/core/index.ts';

/** A cord of 1/4 in or 6 mm is 0.785 in or 18.85 mm round. */
const cushion = (
  front: string,
  strip: string,
  cord: string,
  at = 'all',
  seam = '',
  edition: Edition = 'inch',
  more = '',
) =>
  resolved(
    `title: Cushion
units: ${edition}
measures: { seam: { in: 1/2, mm: 12 } }
materials: { outer: canvas, bias: canvas, cord: rope }
pieces:
  front: { from: outer, ${front} }
  back: { from: outer, like: front, allowance: seam }
  strip: { from: bias, size: [${strip}], allowance: 0, may be joined: true${more} }
  cord: { from: cord, size: [${cord}], allowance: 0 }
steps:
  - { pipe: front, with: strip, cord: cord, at: ${at} }
  - { sew round: [front, back]${seam}, gap: { edge: bottom, length: { in: 6, mm: 150 } }, makes: cushion }
  - { turn: cushion }
`,
    {
      edition,
      materials: {
        canvas: { kind: 'cloth' },
        rope: { kind: 'by length', width: { in: 0.25, mm: 6, source: 'a test' } },
      },
    },
  );

describe('a piped cushion', () => {
  it('is measured from seam to seam, and its cord stands out all round it', () => {
    // Four sides of 16 in, and an inch more where the ends of the strip overlap; 0.785 + 2 x 1/2 wide, to the next 1/4.
    const pattern = cushion('finished: [16, 16]', '65, 1 3/4', '64, 1/4');
    expect(errors(pattern)).toEqual([]);
    const [piped, sewn, turned] = makeUp(pattern);
    expect(piped!.title).toBe('Fold the strip round the cord, and baste it to the front all round, raw edges together');
    expect([sizeOf(piped!), sizeOf(sewn!), sizeOf(turned!)]).toEqual([
      [17, 17],
      [17, 17],
      [16, 16],
    ]);
    // Of the front, and twice of the strip and of its ends that overlap.
    expect([lengthsOf(piped!), piped!.stitches[0]!.layers]).toEqual([[64], 5]);
    expect([lengthsOf(sewn!), sewn!.stitches[0]!.layers]).toEqual([[58], 4]);
    // 1/4 in of cord beyond the seams at both sides.
    const { width, height } = boxOf(turned!.after.plies);
    expect([width / 25.4, height / 25.4].map((inch) => inch.toFixed(3))).toEqual(['16.500', '16.500']);
    expect([piped, sewn].map((step) => step!.sewing?.foot)).toEqual(['zip foot', 'zip foot']);
  });

  it('in the metric edition', () => {
    const pattern = cushion('finished: [400 mm, 400 mm]', '1625 mm, 43 mm', '1600 mm, 6 mm', 'all', '', 'metric');
    expect(errors(pattern)).toEqual([]);
    const steps = makeUp(pattern);
    expect([steps[2]!.size.width, steps[2]!.size.height]).toEqual([400, 400]);
    expect(readingsIn(1).lengthsOf(steps[0]!)).toEqual([1600]);
  });

  it('may be piped along some of its edges, a curve among them, whose ends run off at the corners', () => {
    const front =
      'outline: [{ at: [0, 0], edge: bottom }, { at: [7, 0], edge: right }, { at: [7, 5], edge: top, rise: 1 }, { at: [0, 5], edge: left }]';
    const pattern = cushion(front, '20, 1 3/4', '20, 1/4', '[left, top, right]', '', 'inch', ', grain: bias');
    expect(errors(pattern)).toEqual([]);
    const [piped, , turned] = makeUp(pattern);
    // An arc that rises 1 in over 7 in has a radius of 6.625: 2 x 6.625 x asin(3.5 / 6.625) = 7.375, and two sides of 5.
    expect(lengthsOf(piped!)[0]).toBeCloseTo(17.375, 2);
    expect(sizeOf(turned!)[0]).toBe(7);
    // Nothing of the piping stands out below the bottom.
    expect(boxOf(turned!.after.plies).height / 25.4).toBeCloseTo(6.25, 2);
  });

  const whole = 'finished: [16, 16]';
  it.each([
    [
      'a strip too narrow',
      whole,
      '65, 1 1/4',
      '64, 1/4',
      'The cord is ≈ 13/16 in round: with two allowances of 1/2 in the strip is cut ≈ 1 13/16 in wide, and it is 1 1/4 in.',
    ],
    ['a strip far too wide', whole, '65, 3', '64, 1/4', 'the strip is cut ≈ 1 13/16 in wide, and it is 3 in.'],
    [
      'a strip too short',
      whole,
      '64 1/2, 1 3/4',
      '64, 1/4',
      'The strip is 64 1/2 in long, and the stitch line it goes along is 64 in; its ends overlap by 1 in.',
    ],
    [
      'a cord too short',
      whole,
      '65, 1 3/4',
      '60, 1/4',
      'The cord is 60 in long, and the stitch line it goes along is 64 in.',
    ],
    [
      'a strip on the straight grain',
      'circle: 16',
      '60, 1 3/4',
      '60, 1/4',
      'The strip is not cut on the bias, and would not lie along the curve edge.',
    ],
    ['a curve too tight', 'circle: 1/4', '60, 1 3/4', '60, 1/4', 'bends too tightly'],
  ])('%s is refused', (_, front, strip, cord, message) => {
    const more = front.startsWith('circle: 1/4') ? ', grain: bias' : '';
    expect(errors(cushion(front, strip, cord, 'all', '', 'inch', more)).join()).toContain(message);
  });

  it('is refused where the seam would run over the cord, or leaves a piped edge open', () => {
    const wide = cushion(whole, '65, 1 3/4', '64, 1/4', 'all', ', seam: 3/4');
    expect(errors(wide).join()).toContain('The seam does not run where the piping was basted');
    const open = cushion(whole, '65, 1 3/4', '64, 1/4', 'all', ', open: [top]');
    expect(errors(open).join()).toContain('The seam does not run where the piping was basted');
  });
});

test('random cushions keep their cloth and their size, and the cord stands out by its thickness', () => {
  const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
  fc.assert(
    fc.property(mm(120, 400), mm(120, 400), mm(6, 15), mm(2, 8), (w, h, seam, thick) => {
      const round = 2 * (w + h - 4 * seam);
      const [long, wide] = [round + 25, Math.PI * thick + 2 * seam];
      const [front, back] = [piece('front', rectangle(w, h)), piece('back', rectangle(w, h))];
      const [strip, cord] = [piece('strip', rectangle(long, wide)), piece('cord', rectangle(round, thick))];
      const how = { at: ['all'], seam, overlap: 25, called: { work: 'strip', nth: 1 }, isBias: false };
      const piped = value(pipe(front, strip, cord, how));
      // Nothing is cut off of a strip that is just long and wide enough.
      expect(piped.done.at(-1)!.cutAway ?? 0).toBeLessThan(0.01);
      const turned = value(
        turn(value(sewRound(piped, back, { allowance: seam, gap: { edge: 'bottom', length: 50 } }))),
      );
      expect(tangle(turned)).toBeUndefined();
      const cloth = clothAreas(turned);
      expect(cloth['strip']).toBeCloseTo(long * wide, 2);
      expect(cloth['cord']).toBeCloseTo(round * thick, 2);
      expect([size(turned).width, size(turned).height]).toEqual(
        [w - 2 * seam, h - 2 * seam].map((one) => expect.closeTo(one, 6)),
      );
      const box = boxOf(turned.plies);
      expect(box.width).toBeCloseTo(w - 2 * seam + 2 * thick, 6);
      expect(box.height).toBeCloseTo(h - 2 * seam + 2 * thick, 6);
    }),
    runs(100),
  );
});

it('takes no strip and no cord with hardware on it, which would hang in the air', () => {
  const front = piece('front', rectangle(200, 150));
  const [strip, cord] = [piece('strip', rectangle(800, 43)), piece('cord', rectangle(800, 6))];
  const snapped = (work: typeof strip) => value(attach(work, { name: 'snap', at: { x: 100, y: 3 } }));
  const how = { at: ['all'], seam: 12, overlap: 25, called: { work: 'strip', nth: 1 }, isBias: true };
  expect(pipe(front, strip, cord, how).ok).toBe(true);
  const held = { ok: false, fault: { code: 'held' } };
  expect(pipe(front, snapped(strip), cord, how)).toMatchObject(held);
  expect(pipe(front, strip, snapped(cord), how)).toMatchObject(held);
});
