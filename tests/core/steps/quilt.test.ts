/** Rows across a work, one through its middle. */
import { describe, expect, it } from 'vitest';
import { found, ledger, panels } from '../project/steps.ts';
import { drawStep, makeUp } from '../../../src/core/index.ts';
import { resolved } from '../project/files.ts';

const rows = (lines: string) =>
  makeUp(resolved(panels(`- { quilt: front, every: 30 mm${lines} }`)))[0]!.after.stitches.at(-1)!.runs;
const long = (lines: string) =>
  rows(lines).reduce((sum, { from, to }) => sum + Math.hypot(to.x - from.x, to.y - from.y), 0);

describe('quilting', () => {
  it('runs through the middle and so far apart, as far as the cloth goes', () => {
    // The front is 100 x 80 mm: three level rows, at 40 and 30 from it, and three upright ones.
    expect(rows(', lines: level').map(({ from }) => from.y)).toEqual([10, 40, 70]);
    expect(long(', lines: level')).toBeCloseTo(300, 6);
    expect(long(', lines: upright')).toBeCloseTo(240, 6);
    expect(long('')).toBeCloseTo(540, 6);
  });

  it('sews no row along the very edge', () => {
    const [step] = makeUp(resolved(panels('- { quilt: front, every: 20 mm, lines: level }')));
    expect(step!.stitches[0]!.length).toBeCloseTo(300, 6);
  });

  it('crosses in diamonds whose rows lie as far apart', () => {
    const there = rows(', lines: diamonds').filter(({ from, to }) => (to.x - from.x) * (to.y - from.y) > 0);
    const off = there.map(({ from }) => (from.y - from.x) * Math.SQRT1_2).sort((a, b) => a - b);
    off.slice(1).forEach((one, i) => expect(one - off[i]!).toBeCloseTo(30, 6));
  });

  it('goes through all layers, and is told', () => {
    const yaml = panels('- { lay: back, on: front, makes: mat }\n- { quilt: mat, every: 30 mm, lines: diamonds }');
    const pattern = resolved(yaml);
    const step = makeUp(pattern).at(-1)!;
    expect(step.stitches[0]!.layers).toBe(2);
    expect(ledger(yaml).at(-1)).toBe('Quilt the mat in diamonds -> mat 100 x 80');
    expect(drawStep(step, pattern).text).toContain(
      'Sew a row through the middle, and the others 30 millimetres from row to row.',
    );
  });

  it('says when rows would lie on one another, or sew an opening shut', () => {
    expect(found(panels('- { quilt: front, every: 0 mm }'))[0]).toBe(
      'error steps > 0 > every: not-finite: The rows would lie on one another. Say how far apart they lie: “every: 2”.',
    );
    expect(found(panels('- { quilt: front, every: 0.1 mm }'))[0]).toBe(
      'error steps > 0 > every: too-many: More than 500 rows would be sewn one way. Make “every” larger.',
    );
    const bag = '- { sew round: [front, back], open: [top], makes: bag }\n- { quilt: bag, every: 30 mm';
    expect(found(panels(`${bag} }`))[0]).toMatch(/^error steps > 1( > at)?: opening:/u);
    expect(found(panels(`${bag}, sew shut: true }`)).filter((line) => line.startsWith('error'))).toEqual([]);
  });
});

describe('one too many for a step that takes two of a name', () => {
  it('is not left over among what was made', () => {
    const yaml = panels('- { join: [strip, strip], at: [right, left] }', '  strip: { cut: 3, size: [50 mm, 20 mm] }');
    expect(found(yaml)[0]).toBe(
      'error steps > 0: uneven: There are 3 “strip” here, and this step takes 2 at a time: 1 would be left over under the name of ' +
        'the others. Give the result a name of its own: “makes: pair of strip”.',
    );
  });
});
