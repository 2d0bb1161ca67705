/** A work is laid where the step measures it, and a gap is left where it says. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bounds, drawStep, makeUp, MaterialsFile } from '../../../src/core/index.ts';
import { found, ledger, panels } from '../project/steps.ts';
import { resolved } from '../project/files.ts';
import { layersAt } from '../../../src/core/cloth/index.ts';
import type { Box } from '../../../src/core/index.ts';

const pocket = '  pocket: { size: [40 mm, 30 mm] }';

/** Where the pocket lies on the front, which is 100 x 80 mm with its lower left corner at 0, 0. */
function laid(lay: string, more = pocket): Box {
  const [step] = makeUp(resolved(panels(`- { lay: pocket, on: front, ${lay} }`, more)));
  const { plies } = step!.after;
  const [front, above] = ['front', 'pocket'].map((name) => bounds(plies.find(({ piece }) => piece === name)!.outline));
  return { ...above!, x: above!.x - front!.x, y: above!.y - front!.y };
}
const refused = (lay: string) => found(panels(`- { lay: pocket, on: front, ${lay} }`, pocket))[0];

describe('a work that is laid at distances', () => {
  it('lies so far from the sides that are named, middle on middle the other way', () => {
    expect(laid('from top: 10 mm, from left: 15 mm')).toMatchObject({ x: 15, y: 40 });
    expect(laid('from bottom: 10 mm, from right: 5 mm')).toMatchObject({ x: 55, y: 10 });
    expect(laid('from top: 10 mm')).toMatchObject({ x: 30, y: 40 });
    expect(laid('from left: 0')).toMatchObject({ x: 0, y: 25 });
    expect(laid('left of middle: 5 mm')).toMatchObject({ x: 5, y: 25 });
    expect(laid('right of middle: 5 mm, from top: 0')).toMatchObject({ x: 55, y: 50 });
  });

  it('keeps its edge on the one it is laid at, and is measured along it as it lies then', () => {
    // Turned by a half its bottom lies at the top of the front.
    expect(laid('at: [top, bottom], from left: 15 mm')).toMatchObject({ x: 15, y: 50 });
    // Turned by a quarter it is 30 wide and 40 high.
    expect(laid('at: [left, top], from bottom: 5 mm')).toEqual({ x: 0, y: 5, width: 30, height: 40 });
  });

  it('reaches beyond an edge or overlaps it by as much as is said', () => {
    expect(laid('at: top, beyond: 12 mm, from left: 15 mm')).toMatchObject({ x: 15, y: 62 });
    expect(laid('at: left, overlap: 10 mm')).toMatchObject({ x: -30, y: 25 });
    expect(laid('at: top, overlap: 10 mm')).toMatchObject({ x: 30, y: 70 });
  });

  it('is measured from the sides as they lie: folded, and beneath what stands out', () => {
    const [, , step] = makeUp(
      resolved(
        panels(
          '- { fold: front, from: left, at: 20 mm }\n- { lay: tab, on: front, at: top, beyond: 8 mm }\n- { lay: pocket, on: front, from left: 5 mm, from top: 10 mm }',
          `${pocket}\n  tab: { size: [20 mm, 20 mm] }`,
        ),
      ),
    );
    const at = bounds(step!.after.plies.find(({ piece }) => piece === 'pocket')!.outline);
    // The front lies from 20 to 100 and up to 80.
    expect(at).toMatchObject({ x: 25, y: 40 });
  });

  it('lies as far from one side as the other distance leaves of the room', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.integer({ min: 0, max: 50 }), (left, top) => {
        const a = laid(`from left: ${left} mm, from top: ${top} mm`);
        const b = laid(`from right: ${60 - left} mm, from bottom: ${50 - top} mm`);
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(0.001);
      }),
      { numRuns: 20 },
    );
  });

  it('says what cannot be: two places, no edge, and off the other side', () => {
    expect(refused('from left: 1 mm, from right: 1 mm')).toBe(
      'error steps > 0 > from right: two-places: “from left” and “from right” both say where it lies. Leave one of the two out.',
    );
    expect(refused('at: top, from top: 1 mm')).toBe(
      'error steps > 0 > from top: two-places: “at: top” and “from top” both say where it lies. Leave one of the two out.',
    );
    expect(refused('from left: 61 mm')).toBe(
      'error steps > 0 > from left: off-the-work: So far from the left it would reach beyond the right. Check from which edge it is measured.',
    );
    expect(refused('beyond: 5 mm')).toBe(
      'error steps > 0 > beyond: no-edge: Of which edge “beyond” speaks is not said. Name the edge: “at: top”.',
    );
    expect(refused('at: left, overlap: 101 mm')).toMatch(/^error steps > 0 > overlap: off-the-work: It would overlap/u);
    // The pocket is 40 mm wide: so far out it touches the front, and no more.
    for (const [over, message] of [
      ['overlap: 0', 'It would not overlap: the two would only touch.'],
      ['beyond: 40 mm', 'It would lie beyond the work altogether.'],
    ] as const)
      expect(refused(`at: left, ${over}`)).toContain(`${over.split(':')[0]!}: off-the-work: ${message}`);
    expect(laid('at: left, beyond: 39 mm')).toBeDefined();
  });

  it('is told with its distances, in the drawing too', () => {
    const pattern = resolved(panels('- { lay: pocket, on: front, from top: 10 mm, from left: 15 mm }', pocket));
    const [step] = makeUp(pattern);
    expect(step!.title).toBe('Lay the pocket on the front, measured from the top and the left');
    expect(step!.tools).toContain('ruler');
    const drawn = drawStep(step!, pattern);
    expect(drawn.text).toContain('Its top lies 10 millimetres from the top.');
    const lettered = drawn.shapes.flatMap((shape) => (shape.kind === 'text' ? shape.text : [])).join(' ');
    expect(lettered).toMatch(/Its left lies 15\smm from the left\./u);
  });
});

describe('both ends of a strap', () => {
  const strap = '  strap: { size: [200 mm, 10 mm], allowance: 0 }';
  const lying = (lay: string) =>
    makeUp(resolved(panels(`- { lay: strap, on: front, ${lay} }\n- { join: [front, back], at: top }`, strap)));

  it('lie at one edge, each so far from the side next to it, and hang in two flat folds', () => {
    const [step, joined] = lying('at: top, both ends: 20 mm');
    expect(step!.title).toBe('Lay both ends of the strap on the front at the top');
    const ends = step!.after.plies.slice(1).flatMap(({ outline }) => outline.map(({ from }) => from));
    // The front is 100 mm wide: from 20 to 80. Its middle goes down 75, across 50 and up 75 mm, and its lower side 5 more.
    expect([Math.min(...ends.map(({ x }) => x)), Math.max(...ends.map(({ x }) => x))]).toEqual([20, 80]);
    expect(Math.max(...ends.map(({ y }) => y))).toBeCloseTo(80, 9);
    expect(Math.min(...ends.map(({ y }) => y))).toBeCloseTo(80 - 75 - 5, 9);
    // Both ends are caught in the seam of the top, the right side of each up.
    const held = joined!.after.stitches.at(-1)!.runs.map(({ plies }) => plies.length);
    expect(held).toEqual([2, 3, 2, 3, 2]);
    const upAt = (x: number) => layersAt(step!.after, { x, y: 75 }).at(-1)!;
    expect([25, 75].map((x) => [upAt(x).piece, upAt(x).face])).toEqual([
      ['strap', 'right'],
      ['strap', 'right'],
    ]);
  });

  it('say what cannot be', () => {
    const told = (lay: string) => found(panels(`- { lay: strap, on: front, ${lay} }`, strap))[0];
    expect(told('both ends: 20 mm')).toBe(
      'error steps > 0 > both ends: no-edge: At which edge both ends lie is not said. Name the edge: “at: top”.',
    );
    expect(told('at: [top, left], both ends: 20 mm')).toBe(
      'error steps > 0 > at > 1: too-many-edges: Both its ends lie at the edge: “at” names that edge alone. Write “at: top”.',
    );
    expect(told('at: top, both ends: 45 mm')).toMatch(/too-deep: The ends would lie so near to one another/u);
    expect(told('at: top, both ends: 20 mm, from left: 3 mm')).toMatch(/two-places: “both ends” and “from left”/u);
    expect(
      found(
        panels('- { lay: tab, on: front, at: top, both ends: 20 mm }', '  tab: { size: [50 mm, 10 mm], allowance: 0 }'),
      )[0],
    ).toBe(
      'error steps > 0 > both ends: too-deep: The strap is too short: its ends do not reach so far apart. Make “both ends” larger, or the strap longer.',
    );
  });
});

describe('a work that lies turned', () => {
  it('is turned before it is laid, and measured as it lies then', () => {
    expect(laid('turned: left, from left: 5 mm, from top: 0')).toEqual({ x: 5, y: 40, width: 30, height: 40 });
    expect(laid('turned: round, at: top')).toMatchObject({ x: 30, y: 50, width: 40 });
  });
});

describe('what is set at a place', () => {
  const set = (at: string, more = '') =>
    makeUp(
      resolved(
        panels(
          `- { ${at} }`,
          `  stay: { size: [20 mm, 10 mm], allowance: 0, from: stiff }\nmaterials: { snap: clasp, stiff: web, knob: button${more} }`,
        ),
        {
          materials: MaterialsFile.parse({
            clasp: { kind: 'hardware', hardware: 'snap' },
            web: { kind: 'interfacing' },
            button: {
              kind: 'hardware',
              hardware: 'button',
              thickness: { mm: 3, source: 'made up' },
              across: { in: '3/4', mm: 20, source: 'made up' },
            },
          }),
        },
      ),
    );
  const markOf = (at: string) => set(at)[0]!.after.marks[0]!.at;

  it.each(['at: top, both ends: 15 mm', 'at: top, beyond: 20 mm', 'at: right, beyond: 20 mm'])(
    'counts the work itself, and not what hangs out: %s',
    (hangs) => {
      const hanging = (set: string) =>
        panels(
          `- { lay: strap, on: front, ${hangs} }\n- { ${set} }`,
          `  strap: { size: [30 mm, 300 mm], allowance: 0 }
  stay: { size: [20 mm, 10 mm], allowance: 0, from: stiff }
materials: { snap: clasp, stiff: web }`,
        );
      const materials = MaterialsFile.parse({
        clasp: { kind: 'hardware', hardware: 'snap' },
        web: { kind: 'interfacing' },
      });
      const last = (set: string) => makeUp(resolved(hanging(set), { materials })).at(-1)!.after;
      const place = (at: string) => last(`attach: snap, to: front, ${at}`).marks.at(-1)!.at;
      const [{ x, y }, middle] = [place('at: [10 mm, 20 mm]'), place('from top: 10 mm')];
      const patch = (at: string) => {
        const { plies } = last(`fuse: stay, to: front, ${at}`);
        return bounds(plies.find(({ piece }) => piece === 'stay')!.outline);
      };
      expect(patch('at: [10 mm, 20 mm]')).toMatchObject({ x: expect.closeTo(x, 6), y: expect.closeTo(y, 6) });
      expect(patch('from top: 10 mm')).toMatchObject({ x: expect.closeTo(x + 30, 6), y: expect.closeTo(y + 40, 6) });
      // The front is 100 x 80 mm: so far from its own corner, and in its own middle.
      expect([middle.x - x, middle.y - y]).toEqual([expect.closeTo(40, 6), expect.closeTo(50, 6)]);
      const side = place('from left: 10 mm');
      expect([side.x - x, side.y - y]).toEqual([expect.closeTo(0, 6), expect.closeTo(20, 6)]);
    },
  );

  it('is measured from any side, and lies in the middle where none is named', () => {
    expect(markOf('attach: snap, to: front, from top: 10 mm')).toEqual({ x: 50, y: 70 });
    expect(markOf('attach: snap, to: front, from right: 10 mm, from bottom: 5 mm')).toEqual({ x: 90, y: 5 });
    expect(markOf('attach: snap, to: front, from left: 10 mm')).toEqual({ x: 10, y: 40 });
    expect(markOf('buttonhole: front, length: 20 mm, from right: 30 mm')).toEqual({ x: 70, y: 40 });
    expect(set('attach: snap, to: front, from top: 10 mm')[0]!.title).toBe(
      'Set the snap on the front, measured from the top',
    );
    const patch = bounds(set('fuse: stay, to: front, from top: 10 mm, from left: 5 mm')[0]!.after.plies[0]!.outline);
    expect(patch).toMatchObject({ x: 5, y: 60 });
    expect(bounds(set('fuse: stay, to: front, from bottom: 0')[0]!.after.plies[0]!.outline)).toMatchObject({
      x: 40,
      y: 0,
    });
  });

  it('is told by the sides that it is measured from, also of a patch that is seen from the back', () => {
    const fused = set('fuse: stay, to: front, from top: 10 mm, from left: 5 mm')[0]!;
    const { text } = drawStep(fused, resolved(panels('- { press: front }')));
    expect(text.join(' ')).toContain(
      'Its top lies 10 millimetres from the top. Its left lies 5 millimetres from the left, as seen from the front.',
    );
  });

  it('has a buttonhole as long as its button is across and thick', () => {
    const slit = (said: string) =>
      set(`buttonhole: front, from top: 20 mm, ${said}`)[0]?.after.stitches[0]!.runs.reduce(
        (sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y) / 2,
        0,
      );
    expect(slit('for: knob')).toBeCloseTo(23, 9);
    expect(slit('for: knob, length: 26 mm')).toBeCloseTo(26, 9);
    expect(slit('for: knob, length: 22 mm')).toBeUndefined();
  });
});

describe('a work that is trimmed', () => {
  const sizes = (yaml: string) => ledger(panels(yaml)).at(-1);
  it('comes to a height or a width', () => {
    expect(sizes('- { trim: front, at: top, height: 60 mm }')).toContain('front 100 x 60');
    expect(sizes('- { trim: front, at: left, width: 70 mm }')).toContain('front 70 x 80');
  });
  it('has no one height along a slanting side', () => {
    const slope = '  slope: { outline: [[0 mm, 0 mm], [100 mm, 0 mm], [100 mm, 90 mm], [0 mm, 60 mm]], allowance: 0 }';
    const trimmed = (to: string) => found(panels(`- { trim: slope, ${to} }`, slope))[0];
    expect(trimmed('at: top, height: 50 mm')).toBe(
      'error steps > 0 > height: not-straight: The top slants: trimmed along it, the work has no one height. Say with “by” how much comes off.',
    );
    expect(trimmed('at: top, by: 5 mm')).not.toContain('error');
    expect(trimmed('at: bottom, height: 50 mm')).not.toContain('error');
  });
  it('keeps an allowance beyond a seam on the sides that are named', () => {
    const bag = '- { sew round: [front, back], seam: 15 mm, makes: bag }\n';
    expect(sizes(`${bag}- { trim: bag, at: [left, right], leaving: 5 mm }`)).toContain('bag 80 x 80');
    expect(sizes(`${bag}- { trim: bag, at: top, leaving: 6 mm }`)).toContain('bag 100 x 71');
  });
  it('is refused where all the sides are so already', () => {
    const bag = '- { sew round: [front, back], seam: 15 mm, makes: bag }\n';
    const told = found(panels(`${bag}- { trim: bag, at: [left, right], leaving: 15 mm }`));
    expect(told.filter((line) => line.startsWith('error'))).toEqual([
      'error steps > 1 > leaving: misses: All of these sides are so already: nothing would be cut off. Leave this step out.',
    ]);
  });
  it.each([
    [
      'at: left, height: 60 mm',
      'height: two-places: To trim the left does not change the height. Name “top” or “bottom”, or trim to another measure.',
    ],
    [
      'at: top, height: 90 mm',
      'height: misses: It is no higher than that: nothing would be cut off. Trim to less, or leave this step out.',
    ],
    [
      'at: [top, bottom], height: 60 mm',
      'one-edge: How much is trimmed off each side does not follow from the height. Trim one of them to it, or both with “by”.',
    ],
    [
      'at: top, leaving: 6 mm',
      'leaving: misses: No seam lies along the top, and none cross next to it. Say how much is trimmed off: “by”.',
    ],
    [
      'at: top, by: 6 mm, height: 60 mm',
      'height: two-places: “by” and “height” both say how much is trimmed. Leave one of the two out.',
    ],
    ['height: 60 mm', 'no-edge: Which side is trimmed is not said. Name the side: “at: top”.'],
  ])('says what cannot be: %s', (said, message) => {
    const place = message.startsWith('one-edge') || message.startsWith('no-edge') ? ': ' : ' > ';
    expect(found(panels(`- { trim: front, ${said} }`))[0]).toBe(`error steps > 0${place}${message}`);
  });
});

describe('a gap', () => {
  const round = (gap: string) => panels(`- { sew round: [front, back], gap: { ${gap} }, makes: bag }`);
  const gapOf = (gap: string) => makeUp(resolved(round(gap)))[0]!.after.stitches.at(-1)!.round!.gap!;

  it('lies in the middle, or so far from the left or the lower end', () => {
    // Seams of 6 mm: the stitch line runs from 6 to 94 and from 6 to 74.
    const xs = (gap: string) => [gapOf(gap).from.x, gapOf(gap).to.x].sort((a, b) => a - b);
    const ys = (gap: string) => [gapOf(gap).from.y, gapOf(gap).to.y].sort((a, b) => a - b);
    expect(xs('edge: bottom, length: 40 mm')).toEqual([30, 70]);
    expect(xs('edge: bottom, length: 40 mm, begins: 10 mm')).toEqual([16, 56]);
    expect(xs('edge: top, length: 40 mm, begins: 10 mm')).toEqual([16, 56]);
    expect(ys('edge: left, length: 40 mm, begins: 10 mm')).toEqual([16, 56]);
    expect(ys('edge: right, length: 40 mm, begins: 28 mm')).toEqual([34, 74]);
  });

  it('ends with its edge', () => {
    expect(found(round('edge: bottom, length: 40 mm, begins: 50 mm'))[0]).toBe(
      'error steps > 0 > gap: misses: The gap reaches beyond the end of the edge bottom inside its allowances.',
    );
  });
});

describe('backs that overlap', () => {
  const cushion = (overlap: number, basted = 'baste') => `
title: Cushion
units: metric
measures: { seam: { mm: 10, in: 3/8 } }
pieces:
  front: { size: [100 mm, 100 mm] }
  left back: { size: [${50 + overlap / 2} mm, 100 mm] }
  right back: { size: [${50 + overlap / 2} mm, 100 mm] }
steps:
  - { lay: left back, on: right back, at: left, overlap: ${overlap} mm, makes: back }
  - { ${basted}: back, at: [top, bottom] }
  - { sew round: [front, back], makes: cushion }
  - { turn: cushion }
`;

  it('are a way to turn the work through', () => {
    expect(ledger(cushion(30)).at(-1)).toBe('Turn the cushion right side out -> cushion 80 x 80');
    expect(found(cushion(30))).toEqual([]);
    // Each of the three is folded in once along a side; where the backs overlap they are four layers, and the front two.
    const { after } = makeUp(resolved(cushion(30))).at(-1)!;
    const { x, y, width, height } = bounds(after.plies.flatMap(({ outline }) => outline));
    expect(layersAt(after, { x: x + width / 2, y: y + height - 5 })).toHaveLength(6);
    expect(layersAt(after, { x: x + width / 2, y: y + height / 2 })).toHaveLength(3);
    expect(layersAt(after, { x: x + 20, y: y + height / 2 })).toHaveLength(2);
  });

  it('and are none once a row holds them together', () => {
    expect(found(cushion(30, 'topstitch'))).toEqual([
      'error steps > 3: no-gap: There is no gap to turn the work through. Leave a gap when you sew round.',
    ]);
  });
});
