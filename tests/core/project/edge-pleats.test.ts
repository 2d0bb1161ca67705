/** Pleats along an edge: what they take, where their folds lie, what is folded, and what an author may get wrong. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { areaOf } from '../../../src/core/cloth/ring.ts';
import { check, makeUp, planEdgePleats } from '../../../src/core/project/index.ts';
import { layersAt } from '../../../src/core/cloth/index.ts';
import { lines, resolved } from './files.ts';
import { runs } from '../../random.ts';
import type { Edition, Pattern } from '../../../src/core/index.ts';

const file = (skirt: string, steps = '- { pleat: skirt }', edition: Edition = 'inch'): Pattern =>
  resolved(
    `title: Pleats\nmeasures: { seam: { in: 1/2, mm: 12 } }\npieces:\n  skirt: { ${skirt} }\n  band: { size: [skirt pleated edge + 2 * seam, { in: 3, mm: 80 }] }\nsteps:\n${steps.replace(/^/gmu, '  ')}\n`,
    { edition },
  );
const errors = (pattern: Pattern) => lines(check(pattern)).filter((line) => line.startsWith('error'));
const inches = (mm: number) => Number((mm / 25.4).toFixed(6));
const value = ({ measures }: Pattern, name: string) => inches(measures[name]!.value);

describe('what pleats take', () => {
  // Twice the depth of each fold: NIMI (Government of India), CITS Dress Making Trade Practical, p. 203 and 204.
  it.each([
    ['knife', 4, 2 * 4],
    ['box', 2, 4 * 2],
    ['inverted', 2, 4 * 2],
  ])('%s pleats of 1 in, %i of them, take %i in', (kind, count, taken) => {
    const pattern = file(`finished: [10, 6], pleats: { on: top, kind: ${kind}, count: ${count}, depth: 1 }`);
    expect(errors(pattern)).toEqual([]);
    expect(value(pattern, 'skirt takeup')).toBe(taken);
    expect(value(pattern, 'skirt width')).toBe(10 + taken + 1);
    expect(value(pattern, 'skirt finished width')).toBe(10);
    expect(inches(makeUp(pattern)[0]!.size.width)).toBe(11);
    // Its sum is told in the file's own words.
    expect(pattern.measures['skirt width']!.formula!.text).toBe('10 in + skirt takeup + 2 * seam');
  });

  it('is worked out from two of count, depth and the length it comes to', () => {
    const skirt = (pleats: string) => file(`size: [19, 7], pleats: { on: top, kind: knife, ${pleats} }`);
    for (const pleats of ['count: 4, depth: 1', 'count: 4, to: 10', 'depth: 1, to: 10']) {
      const pattern = skirt(pleats);
      expect(errors(pattern)).toEqual([]);
      expect(pattern.pieces['skirt']!.edgePleats!.folds).toHaveLength(8);
      expect(['takeup', 'pleat depth', 'pleated edge'].map((what) => value(pattern, `skirt ${what}`))).toEqual([
        8, 1, 10,
      ]);
    }
    expect(skirt('count: 4, to: 10').measures['skirt pleat depth']!.formula!.text).toBe('skirt takeup / (2 * 4)');
  });

  it('goes on an upright edge, and on a straight edge of an outline', () => {
    const upright = file('finished: [6, 10], pleats: { on: left, kind: box, count: 2, depth: 1 }');
    expect(errors(upright)).toEqual([]);
    expect(inches(makeUp(upright)[0]!.size.height)).toBe(11);
    const outline = file(
      'outline: [[0, 0], [14, 0], { at: [12, 6], edge: waist }, [2, 6]], allowance: 0 in, pleats: { on: waist, kind: box, count: 1, depth: 1 }',
    );
    expect(errors(outline)).toEqual([]);
    expect([value(outline, 'skirt pleated edge'), value(outline, 'skirt finished width')]).toEqual([6, 10]);
    expect(inches(makeUp(outline)[0]!.size.width)).toBe(10);
  });
});

describe('where folds lie', () => {
  const at = (pleats: string) =>
    file(`finished: [10, 6], allowance: 0 in, pleats: { on: top, ${pleats} }`).pieces['skirt']!.folds.map(
      ({ kind, from, pleat }) => `${pleat} ${kind} ${inches(from.x)}`,
    );
  it('in the middle of even stretches', () => {
    expect(at('kind: box, count: 1, depth: 1')).toEqual(['1 valley 5', '1 mountain 6', '1 mountain 8', '1 valley 9']);
    expect(at('kind: inverted, count: 1, depth: 1')).toEqual([
      '1 mountain 5',
      '1 valley 6',
      '1 valley 8',
      '1 mountain 9',
    ]);
    expect(at('kind: knife, count: 1, depth: 1')).toEqual(['1 mountain 5.5', '1 valley 6.5']);
    expect(at('kind: knife, count: 1, depth: 1, faces: left')).toEqual(['1 valley 5.5', '1 mountain 6.5']);
  });
  it('as one group in the middle, so far apart', () => {
    expect(at('kind: inverted, count: 2, depth: 1/2, every: 2').filter((line) => line.includes('mountain'))).toEqual([
      '1 mountain 4',
      '1 mountain 6',
      '2 mountain 8',
      '2 mountain 10',
    ]);
  });
  it('from end to end where each lies on part of the next', () => {
    // Nine of 3 in on 10: the cloth beneath the first begins at one end, the last fold lies at the other.
    const pattern = file('finished: [10, 6], allowance: 0 in, pleats: { on: top, kind: knife, count: 9, depth: 3 }');
    expect(errors(pattern)).toEqual([]);
    const plan = pattern.pieces['skirt']!.edgePleats!;
    expect(inches(plan.every)).toBe(7 / 8);
    expect(inches(plan.folds[0]!.at)).toBe(3);
    const [step] = makeUp(pattern);
    expect(inches(step!.size.width)).toBe(10);
    // Between 3 and 7 in from the end, four pleats lie on one another: 3 / (7/8) = 3.43.
    expect(step!.layersMost).toBe(9);
  });
});

describe('folded', () => {
  it('lies in three layers over a pleat and in one between, the side that each kind shows on top', () => {
    const layers = (kind: string) => {
      const pattern = file(
        `finished: [10, 6], allowance: 0 in, pleats: { on: top, kind: ${kind}, count: 1, depth: 1 }`,
      );
      const { after } = makeUp(pattern)[0]!;
      return [2, 4.75, 5.25, 8].map((x) =>
        layersAt(after, { x: x * 25.4, y: 70 })
          .map(({ face }) => face[0])
          .join(''),
      );
    };
    expect(layers('knife')).toEqual(['r', 'rwr', 'rwr', 'r']);
    expect(layers('box')).toEqual(['r', 'rwr', 'rwr', 'r']);
    expect(layers('inverted')).toEqual(['r', 'rwr', 'rwr', 'r']);
  });

  it('goes with its hems, and is as long as its band', () => {
    const steps = `- { hem: skirt, at: [left, right], fold: 1/4 in, then: 1/4 in }
- { hem: skirt, at: bottom, fold: 1/4 in, then: 1 in }
- { pleat: skirt }
- { hem: band, at: [left, right], fold: seam }
- { join: [band, skirt], at: [bottom, top] }`;
    const pattern = file('finished: [10, 6], pleats: { on: top, kind: box, count: 2, depth: 1 }', steps);
    expect(errors(pattern)).toEqual([]);
    const made = makeUp(pattern);
    expect(inches(made[2]!.size.width)).toBe(10);
    // At the ends the seam goes through three layers of a side hem and two of the band; over a pleat through one less.
    expect(made[4]!.stitches[0]!.layers).toBe(5);
  });

  it('keeps its cloth and comes to the length that the rule says, however it is pleated', () => {
    const wishes = fc.record({
      kind: fc.constantFrom('knife' as const, 'box' as const, 'inverted' as const),
      faces: fc.constantFrom('right', 'left'),
      count: fc.integer({ min: 1, max: 5 }),
      depth: fc.integer({ min: 5, max: 60 }),
      width: fc.integer({ min: 100, max: 400 }),
    });
    fc.assert(
      fc.property(wishes, ({ kind, faces, count, depth, width }) => {
        const way = kind === 'knife' ? `, faces: ${faces}` : '';
        const pattern = resolved(
          `title: P\nunits: metric\nmeasures: {}\npieces:\n  skirt: { finished: [${width} mm, 50 mm], allowance: 0 mm, pleats: { on: bottom, kind: ${kind}, count: ${count}, depth: ${depth} mm${way} } }\nsteps:\n  - { pleat: skirt }\n`,
          { edition: 'metric' },
        );
        const [step] = makeUp(pattern);
        if (!step) return errors(pattern).some((line) => /pleats-overlap|beyond-the-side/u.test(line));
        expect(errors(pattern)).toEqual([]);
        const cloth = step.after.plies.reduce((sum, { outline }) => sum + areaOf(outline), 0);
        expect(cloth).toBeCloseTo((width + (kind === 'knife' ? 2 : 4) * count * depth) * 50, 3);
        expect(step.size.width).toBeCloseTo(width, 6);
        return true;
      }),
      runs(60),
    );
  });
});

describe('what an author may get wrong', () => {
  const told = (pleats: string, size = 'finished: [10, 6]') =>
    errors(file(`${size}, pleats: { ${pleats} }`, '- { press: band }')).filter((line) => !line.includes('no value'));
  test.each([
    [
      'on: top, kind: box, depth: 1',
      'pieces > skirt > pleats: pleats-incomplete: These pleats need “count” and “depth”. Write “count: 8, depth: 1 in”.',
    ],
    [
      'on: tip, kind: box, count: 2, depth: 1',
      'pieces > skirt > pleats > on: unknown-name: “skirt” has no edge called “tip”. Do you mean “top”?',
    ],
    [
      'kind: box, count: 2, depth: 1',
      'pieces > skirt > pleats: pleats-incomplete: “kind” tells of pleats along an edge, and no edge is named. Name it: “on: top”.',
    ],
    [
      'on: top, count: 2, depth: 1',
      'pieces > skirt > pleats: pleats-incomplete: What pleats these are is not said. Write “kind: knife”, “kind: box” or “kind: inverted”.',
    ],
    [
      'on: top, kind: box, count: 2, depth: 1, pockets: 3',
      'pieces > skirt > pleats > pockets: pleats-twice: “pockets” belongs to pleats across a strip that make pockets, and “on” to pleats along an edge. Keep one way or the other.',
    ],
    [
      'on: top, kind: box, count: 2, to: 8',
      'pieces > skirt > pleats > to: pleats-twice: The finished size says already how long the edge is once it is pleated. Leave “to” out, or give the cut size as “size”.',
    ],
    [
      'on: top, kind: box, count: 2, depth: 1, faces: left',
      'pieces > skirt > pleats > faces: pleats-face-both-ways: The two folds of a box pleat face away from each other: only knife pleats face one way. Leave “faces” out.',
    ],
    [
      'on: top, kind: knife, count: 2, depth: 1, faces: up',
      'pieces > skirt > pleats > faces: pleats-face-elsewhere: Along “top” the folds of knife pleats point left or right. Write “faces: left”.',
    ],
    [
      'on: top, kind: box, count: 6, depth: 1',
      'pieces > skirt > pleats > depth: pleats-overlap: These pleats are 2 in wide and lie ≈ 3/8 in too close: each would hide the next. Make them fewer or less deep, or “every” larger.',
    ],
    [
      'on: top, kind: inverted, count: 3, depth: 1, every: 5',
      'pieces > skirt > pleats > every: beyond-the-side: The cloth beneath these pleats would reach 2 in past the end of the edge. Make “every” smaller.',
    ],
    [
      'on: top, kind: inverted, count: 3, depth: 1 1/2, every: 1',
      'pieces > skirt > pleats > every: pleats-overlap: The cloth beneath each of these pleats would reach 1/2 in past the fold of the next. Make them fewer or less deep, or “every” larger.',
    ],
    [
      'on: top, kind: box, count: 2 1/2, depth: 1',
      'pieces > skirt > pleats > count: not-a-count: A whole number from 1 up belongs here, not 2.5.',
    ],
    [
      'on: top, kind: knife, count: 61, depth: 1/16',
      'pieces > skirt > pleats > count: too-many-pleats: An edge is folded into 60 pleats at the most here.',
    ],
  ])('%s', (pleats, message) => {
    expect(told(pleats)[0]).toBe(`error ${message}`);
  });
  test.each([
    [
      'size: [19, 7]',
      'count: 4, depth: 1, to: 10',
      'pieces > skirt > pleats: pleats-twice: Two of “count”, “depth” and “to” say all of it, and the third would have to agree. Keep two of them; the third is worked out.',
    ],
    [
      'size: [19, 7]',
      'depth: 1 1/2, to: 10',
      'pieces > skirt > pleats > depth: pleats-not-whole: There are 8 in to take up, and pleats of 1 1/2 in take 3 in each: that is no whole number of them. It would be 2 pleats of 2 in, or 3 of ≈ 1 5/16 in. Give “count” in place of “depth”.',
    ],
    [
      'size: [9, 7]',
      'count: 4, depth: 1',
      'pieces > skirt > pleats > depth: no-room: 4 knife pleats take up 8 in at a depth of 1 in, and the edge is 8 in long. Make the pleats fewer or less deep, or the edge longer.',
    ],
    [
      'circle: 8 in',
      'count: 4, depth: 1',
      'pieces > skirt > pleats: pleats-need-size: A circle is not pleated here: it needs a size, a finished size, or an outline with a straight edge.',
    ],
    [
      'outline: [[0, 0], [14, 0], { at: [12, 6], edge: top, rise: 1 }, [2, 6]]',
      'count: 2, depth: 1',
      'pieces > skirt > pleats > on: not-straight: The edge “top” of “skirt” is not one straight line: only a straight edge is folded into pleats. Gather it in a step, or pleat a straight edge.',
    ],
    [
      'outline: [[0, 0], [14, 0], { at: [12, 6], edge: top }, [2, 5]]',
      'count: 2, depth: 1',
      'pieces > skirt > pleats > on: not-straight: The edge “top” of “skirt” slants. Turn the outline so that the edge lies level or upright.',
    ],
    [
      'size: [19, 7], corners: { at: top left, round: 1 }',
      'count: 4, depth: 1',
      'pieces > skirt > pleats > on: not-straight: The edge “top” of “skirt” is shortened by its shaped corners. Shape other corners, or leave the pleats.',
    ],
  ])('%s, %s', (size, pleats, message) => {
    expect(told(`on: ${size.startsWith('circle') ? 'edge' : 'top'}, kind: knife, ${pleats}`, size)[0]).toBe(
      `error ${message}`,
    );
  });
  it('marks that were folded in or cut away are not folded again', () => {
    const steps = '- { trim: skirt, at: left, by: 8 in }\n- { pleat: skirt }';
    const pattern = file('finished: [10, 6], pleats: { on: top, kind: box, count: 2, depth: 1 }', steps);
    expect(errors(pattern)).toEqual([
      'error steps > 1: misses: Fold 1 of “skirt” lies where the cloth is folded in already, or was cut away.',
    ]);
  });
});

describe('planEdgePleats', () => {
  it('refuses what is no number of pleats', () => {
    const wish = { kind: 'box', faces: 'onward', count: 0, depth: 10, flat: 100 } as const;
    expect(planEdgePleats(wish)).toEqual({ ok: false, fault: { code: 'pleats-not-whole', field: 'count' } });
    expect(planEdgePleats({ ...wish, count: 1, depth: 0 })).toMatchObject({ ok: false, fault: { code: 'no-depth' } });
  });
});
