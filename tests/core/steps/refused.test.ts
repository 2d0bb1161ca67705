/** What a step cannot do is told at its place, and nothing is done that it does not say. */
import { describe, expect, it } from 'vitest';
import { check, makeUp, MaterialsFile } from '../../../src/core/project/index.ts';
import { lines, resolved } from '../project/files.ts';
import { found, ledger, panels } from '../project/steps.ts';

const errors = (steps: string, more = '') => found(panels(steps, more)).filter((line) => line.startsWith('error'));

describe('materials', () => {
  const materials = MaterialsFile.parse({
    linen: { kind: 'cloth' },
    fleece: { kind: 'batting' },
    stay: { kind: 'interfacing' },
    clasp: { kind: 'hardware' },
  });
  const told = (step: string) => {
    const yaml = panels(
      step,
      '  patch: { size: [40 mm, 30 mm], from: outer }\n  stay: { size: [40 mm, 30 mm], from: stiff }\n  soft: { size: [40 mm, 30 mm], from: filling }\n' +
        'materials: { outer: linen, stiff: stay, filling: fleece, snap: clasp }',
    );
    return lines(check(resolved(yaml, { materials }))).filter((line) => line.startsWith('error'));
  };
  it('only interfacing and batting are fused', () => {
    expect(told('- { fuse: stay, to: front }')).toEqual([]);
    expect(told('- { fuse: soft, to: front }')).toEqual([]);
    expect(told('- { fuse: patch, to: front }')).toEqual([
      'error steps > 0: other-material: “patch” is cloth, and only interfacing is fused.',
    ]);
  });
  it('only hardware is set', () => {
    expect(told('- { attach: snap, to: front, at: [5 cm, 4 cm] }')).toEqual([]);
    expect(told('- { attach: outer, to: front, at: [5 cm, 4 cm] }')).toEqual([
      'error steps > 0: other-material: “outer” is cloth, and only hardware is set.',
    ]);
  });
});

describe('boxed corners', () => {
  const bag = (box: string, seam = '') =>
    `- { sew round: [front, back], open: top${seam} }\n- { box corner: front, ${box} }`;
  it('are at corners, and of two layers', () => {
    expect(errors(bag('at: [bottom left, bottom right], square: 2 cm'))).toEqual([]);
    expect(errors(bag('at: bottom, square: 2 cm'))).toEqual([
      'error steps > 1 > at: unknown-edge: “bottom” is no corner. Write bottom left, bottom right, top left or top right.',
    ]);
    expect(errors('- { box corner: front, at: bottom left, square: 2 cm }')).toEqual([
      'error steps > 0 > at: misses: There are no two layers in a square corner here: only a bag that is sewn or folded can be boxed.',
    ]);
  });
  it('are measured from the seams as they were sewn, whatever the measure says', () => {
    const size = (seam: string) => ledger(panels(bag('at: [bottom left, bottom right], square: 2 cm', seam))).at(-1);
    // 100 - 2 * (6 + 20) wide and 80 - (6 + 20) high, and with seams of 10: 100 - 2 * 30 and 80 - 30.
    expect(size('')).toBe('Box the corners of the front -> front 48 x 54');
    expect(size(', seam: 10 mm')).toBe('Box the corners of the front -> front 40 x 50');
    // Seams wider than half of the bag: 100 - 2 * (45 + 4) wide, and 80 - (45 + 4) high.
    const wide = ', seam: 45 mm';
    expect(ledger(panels(bag('at: [bottom left, bottom right], square: 4 mm', wide))).at(-1)).toBe(
      'Box the corners of the front -> front 2 x 31',
    );
    expect(errors(bag('at: bottom left, square: 2 cm, seam: 6 mm', ', seam: 10 mm'))).toEqual([
      'error steps > 1 > at: shapes-differ: The seams beside the bottom left corner do not lie so far inside.',
    ]);
  });
  it('are boxed once, and beside one another', () => {
    expect(errors(bag('at: [bottom left, bottom left], square: 1 cm'))[0]).toContain('boxed already');
    const closed = '- { sew round: [front, back] }\n- { box corner: front, at: [bottom left, top left], square: 4 cm }';
    expect(errors(closed)[0]).toContain('too-deep: The squares of two boxed corners lie on one another.');
  });
  it('are not folded or hemmed afterwards', () => {
    const boxed = bag('at: [bottom left, bottom right], square: 1 cm');
    for (const step of ['hem: front, fold: 2 cm, at: left', 'fold: front, at: 2 cm, from: left'])
      expect(errors(`${boxed}\n- { ${step} }`)[0]).toContain(
        'sewn-down: The boxed corner bottom left would be folded here',
      );
  });
  it('have no allowance at a fold', () => {
    const folded = '- { fold: front, from: bottom, at: 4 cm }\n- { box corner: front, at: bottom left, square: 1 cm }';
    expect(errors(folded)).toEqual([]);
    const box = makeUp(resolved(panels(folded))).at(-1)!;
    // 6 of the side, which is not sewn yet, and none at the fold.
    const bottom = Math.min(...box.after.plies.flatMap(({ outline }) => outline.map(({ from }) => from.y)));
    expect(box.after.marks[0]!.at.x).toBeCloseTo(16, 6);
    expect(box.after.marks[0]!.at.y - bottom).toBeCloseTo(10, 6);
  });
});

describe('a row that would go nowhere', () => {
  it('is no row', () => {
    expect(errors('- { sew round: [front, back], seam: 0, open: top }')[0]).toContain(
      'error steps > 0: misses: The row',
    );
    expect(errors('- { tuck: front, at: 3 cm, depth: 0.0000001 mm }')[0]).toContain('error steps > 0: misses: The row');
    expect(errors('- { tuck: front, at: 3 cm, depth: 3 mm }')).toEqual([]);
  });
});

describe('what mends a step', () => {
  const strap =
    '  tab: { size: [30 mm, 60 mm] }\n  plate: { size: [80 mm, 60 mm], allowance: 0, corners: { round: 10 mm } }\n  disc: { circle: 80 mm, allowance: 0 }\n  tape: { size: [432 mm, 40 mm] }\n  skirt: { size: [300 mm, 80 mm], pleats: { on: top, kind: knife, count: 2, depth: 20 mm } }\n  lining: { size: [300 mm, 80 mm], pleats: { on: top, kind: knife, count: 2, depth: 20 mm } }';
  it.each([
    [
      '- { gather: front, at: top, to: 0 mm }',
      'error steps > 0 > to: not-finite: An edge cannot be drawn up to nothing. Make “to” longer.',
    ],
    [
      '- { topstitch: front, at: top, by: 0 mm }',
      'error steps > 0 > by: misses: The row of stitches misses the cloth. Make “by” larger.',
    ],
    [
      '- { topstitch: front, at: top, by: 81 mm }',
      'error steps > 0 > by: misses: The row of stitches misses the cloth. Make “by” smaller.',
    ],
    [
      '- { gather: front, at: top, to: 120 mm }',
      'error steps > 0 > at: not-shorter: The edge top is only 100 mm long: to 120 mm it is not drawn up.',
    ],
    [
      '- { bind: plate, with: tape, at: all, width: 10 mm }',
      'error steps > 0 > with: not-straight: The outline is curved, and the strip is not cut on the bias: it would not lie flat there. Cut it on the bias: grain: bias.',
    ],
    [
      '- { bind: disc, with: tape, at: edge, width: 10 mm }',
      'error steps > 0 > with: not-straight: The edge is curved, and the strip is not cut on the bias: it would not lie flat there. Cut it on the bias: grain: bias.',
    ],
    [
      '- { lay: plate, on: front }\n- { topstitch: front, at: plate tpo }',
      'error steps > 1 > at: unknown-edge: There is no free edge “plate tpo”. Did you mean “plate top”?',
    ],
    [
      '- { join: [front, back], at: top, press: to panel 6 }',
      'error steps > 0 > press: unknown-piece: Allowances are pressed to one of the two works, and “panel 6” is neither. Write “press: to front” or “press: to back”.',
    ],
    [
      '- { join: [front, back], at: top }\n- { topstitch: front, at: back top }',
      'error steps > 1 > at: unknown-edge: The edge “back top” is held by a seam already. Free are bottom, right, left, seam.',
    ],
    [
      '- { topstitch: front, at: left and right }',
      'error steps > 0 > at: unknown-edge: There is no free edge “left and right”. Write [left, right].',
    ],
    [
      '- { topstitch: front, at: lower edge }',
      'error steps > 0 > at: unknown-edge: There is no free edge “lower edge”. Did you mean “bottom”?',
    ],
    [
      '- { join: [front, back], at: top, between: tab }',
      'error steps > 0 > at: edges-differ: On the stitch line the top of “front” is 100 mm, the top of “tab” is 30 mm, the top of “back” is 100 mm. They differ by 70 mm. Lay “tab” on one of the two in a step before, and leave “between” out: this seam holds it then.',
    ],
    [
      '- { sew round: [front, back], open: top }\n- { turn: front, by way of: frnt }',
      'error steps > 1 > by way of: unknown-piece: There is no piece “frnt” here. Did you mean “front”?',
    ],
    [
      '- { attach: snap, to: disc, from top: 10 mm }',
      'error steps > 0: not-straight: The top is curved there: it does not lie on one straight line. Give its place from the left and from the bottom: “at: [2, 1]”.',
    ],
    [
      '- { attach: snap, to: front }',
      'error steps > 0: off-the-work: Where the snap is set is not said. Write “from top: 1”, “at: [2, 1]” or “meets”.',
    ],
    [
      '- { buttonhole: front, length: 20 mm }',
      'error steps > 0: off-the-work: Where the buttonhole lies is not said. Write “from top: 1”, “at: [2, 1]” or “meets”.',
    ],
    [
      '- { lay: back, on: front, at: left, overlap: 101 mm }',
      'error steps > 0 > overlap: off-the-work: It would overlap more than there is. Make “overlap” smaller.',
    ],
    [
      '- { fold: tape, at: 200 mm, from: left }\n- { bind: front, with: tape, at: all, width: 10 mm }',
      'error steps > 1: held: A strip that is bound round corners lies flat, in one layer with straight ends. Bind with a strip that is neither folded nor gathered.',
    ],
    [
      '- { join: [skirt, lining], at: bottom, makes: s }\n- { pleat: s }',
      'error steps > 1: held: Several layers of “s” have pleats: skirt and lining. Fold them before they are sewn together.',
    ],
    [
      '- { cut apart: front, every: 101 mm }',
      'error steps > 0 > every: too-deep: It is only 100 mm wide. Make “every” smaller.',
    ],
  ])('is told with what is wrong: %s', (steps, message) => {
    expect(errors(steps, `${strap}\nmaterials: { snap: clasp }`)).toEqual([message]);
  });
});
