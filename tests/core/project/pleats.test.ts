import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { MOST_POCKETS, planFolds, planPleats } from '../../../src/core/project/index.ts';
import { runs } from '../../random.ts';
import type { PleatPlan, PleatResult, PleatSettings } from '../../../src/core/project/index.ts';

const plan = (result: PleatResult): PleatPlan => {
  if (!result.ok) throw new Error(JSON.stringify(result.fault));
  return result.value;
};
const fault = (result: PleatResult) => (result.ok ? undefined : result.fault);

const allowance = { bottom: 6, top: 6 };

describe('pleats from a wish', () => {
  it('adds up the ways of the strip, stepped', () => {
    // Worked by hand: up to 56, down 50 to 6, up 70 to 76, down 50 to 26, up 56 to the raw edge at 82.
    const two = plan(planPleats({ pockets: 2, depth: 50, step: 20, allowance }));
    expect(two.folds.map((fold) => fold.at)).toEqual([56, 106, 176, 226]);
    expect(two.folds.map((fold) => fold.height)).toEqual([56, 6, 76, 26]);
    expect(two.folds.map((fold) => fold.kind)).toEqual(['mountain', 'valley', 'mountain', 'valley']);
    expect(two.stripLength).toBe(282);
    expect(two.panelHeight).toBe(82);
    expect(two.trim).toBe(0);
    expect(two.pockets).toEqual([
      { n: 1, top: 56, bottom: 6, depth: 50, reveal: 50 },
      { n: 2, top: 76, bottom: 26, depth: 50, reveal: 20 },
    ]);
  });

  it('makes each pocket deeper when all bottoms are level', () => {
    // Up to 56, down 50 to 6, up 70 to 76, down 70 to 6, up 76 to 82.
    const two = plan(planPleats({ pockets: 2, depth: 50, step: 20, allowance, bottoms: 'level' }));
    expect(two.folds.map((fold) => fold.at)).toEqual([56, 106, 176, 246]);
    expect(two.pockets.map((pocket) => pocket.depth)).toEqual([50, 70]);
    expect(two.stripLength).toBe(322);
    expect(two.panelHeight).toBe(82);
  });

  it('lifts the lowest pocket off the seam and leaves a head above the highest', () => {
    const one = plan(planPleats({ pockets: 1, depth: 40, step: 0, lift: 5, head: 30, allowance }));
    expect(one.pockets[0]).toMatchObject({ top: 51, bottom: 11 });
    expect(one.panelHeight).toBe(81);
    expect(one.stripLength).toBe(81 + 2 * 40);
  });

  it('counts the layers at a height', () => {
    const two = plan(planPleats({ pockets: 2, depth: 50, step: 20, head: 30, allowance }));
    expect([1, 10, 40, 60, 90].map((height) => two.layersAt(height))).toEqual([1, 3, 5, 3, 1]);
  });

  it('trims what the strip has more than the panel is tall', () => {
    const two = plan(planPleats({ pockets: 2, depth: 50, step: 20, allowance, head: 30, height: 90 }));
    expect(two.trim).toBe(16);
    expect(two.panelHeight).toBe(90);
    expect(two.stripLength).toBe(306);
  });

  it('lets a given length end where it ends, and trims it to a wished head', () => {
    const free = plan(planPleats({ pockets: 2, depth: 50, step: 20, allowance, length: 300 }));
    expect([free.panelHeight, free.trim]).toEqual([100, 0]);
    const cut = plan(planPleats({ pockets: 2, depth: 50, step: 20, allowance, length: 300, head: 10 }));
    expect([cut.panelHeight, cut.trim]).toEqual([86, 14]);
  });

  it('says by how much a strip is too short', () => {
    const wish = { pockets: 2, depth: 50, step: 20, allowance };
    expect(fault(planPleats({ ...wish, length: 270 }))).toEqual({
      code: 'strip-too-short',
      field: 'length',
      amount: 12,
    });
    expect(fault(planPleats({ ...wish, length: 282, head: 10 }))).toEqual({
      code: 'strip-too-short',
      field: 'length',
      amount: 4,
    });
    expect(fault(planPleats({ ...wish, height: 80 }))).toEqual({ code: 'head-too-low', field: 'height', amount: 2 });
    expect(fault(planPleats({ ...wish, head: 10, height: 90 }))).toEqual({
      code: 'head-too-low',
      field: 'head',
      amount: 4,
    });
    expect(fault(planPleats({ ...wish, head: 2 }))).toEqual({ code: 'head-too-low', field: 'head', amount: 4 });
  });

  it('refuses what no strip can be folded into', () => {
    const wish = { pockets: 2, depth: 50, step: 20, allowance };
    expect(fault(planPleats({ ...wish, pockets: 2.5 }))?.code).toBe('pockets-not-whole');
    expect(fault(planPleats({ ...wish, pockets: 0 }))?.code).toBe('pockets-not-whole');
    expect(fault(planPleats({ ...wish, pockets: Number.NaN }))?.code).toBe('pockets-not-whole');
    expect(fault(planPleats({ ...wish, pockets: MOST_POCKETS + 1 }))?.code).toBe('too-many-pockets');
    expect(fault(planPleats({ ...wish, depth: 0 }))?.code).toBe('no-depth');
    expect(fault(planPleats({ ...wish, step: 0 }))?.code).toBe('no-step');
    expect(fault(planPleats({ ...wish, lift: -7 }))).toEqual({ code: 'below-bottom-edge', field: 'lift', amount: 1 });
  });
});

describe('pleats from fold lines', () => {
  it('gives pockets, depths, steps and height back', () => {
    const two = plan(planFolds({ folds: [56, 106, 176, 246], length: 340, allowance }));
    expect(two.bottoms).toBe('level');
    expect(two.pockets).toEqual([
      { n: 1, top: 56, bottom: 6, depth: 50, reveal: 50 },
      { n: 2, top: 76, bottom: 6, depth: 70, reveal: 20 },
    ]);
    expect(two.panelHeight).toBe(100);
  });

  it('knows pockets that are neither of one depth nor level', () => {
    expect(plan(planFolds({ folds: [60, 100, 160, 230], length: 320, allowance })).bottoms).toBe('free');
  });

  it('reads fold lines from the top edge', () => {
    const folds = [56, 106, 176, 226].map((fold) => 282 - fold);
    const two = plan(planFolds({ folds, length: 282, from: 'top', allowance }));
    expect(two.folds.map((fold) => fold.at)).toEqual([56, 106, 176, 226]);
  });

  it('says which fold is wrong and by how much', () => {
    const of = (folds: number[], length = 400) => fault(planFolds({ folds, length, allowance }));
    expect(of([56, 106, 176])).toEqual({ code: 'odd-folds', field: 'folds' });
    expect(of([56, 50])).toEqual({ code: 'folds-out-of-order', field: 'folds', index: 1, amount: 6 });
    expect(of([56, 120])).toEqual({ code: 'below-bottom-edge', field: 'folds', index: 1, amount: 8 });
    expect(of([56, 106, 150, 200])).toEqual({ code: 'pocket-hidden', field: 'folds', index: 2, amount: 6 });
    expect(of([56, 106], 100)).toEqual({ code: 'strip-too-short', field: 'length', amount: 6 });
    expect(of([56, 106], 160)).toEqual({ code: 'strip-too-short', field: 'length', amount: 2 });
    expect(fault(planFolds({ folds: [56, 106], allowance }))).toEqual({ code: 'no-length', field: 'length' });
    expect(fault(planFolds({ folds: [56, 106], from: 'top', height: 100, allowance }))?.code).toBe('no-length');
  });
});

/** Wishes in whole sixteenths of a millimetre, which sums of doubles hold exactly. */
const sixteenths = (min: number, max: number) => fc.integer({ min: min * 16, max: max * 16 }).map((n) => n / 16);
const wishes: fc.Arbitrary<PleatSettings> = fc.record({
  pockets: fc.integer({ min: 1, max: MOST_POCKETS }),
  depth: sixteenths(1, 120),
  step: sixteenths(1, 80),
  lift: sixteenths(0, 20),
  allowance: fc.record({ bottom: sixteenths(0, 20), top: sixteenths(0, 20) }),
  bottoms: fc.constantFrom('stepped', 'level'),
  from: fc.constantFrom('bottom', 'top'),
});

describe('for any pleats', () => {
  it('goes from wish to folds to the same pockets', () => {
    fc.assert(
      fc.property(wishes, sixteenths(0, 60), (wish, more) => {
        const wished = plan(planPleats({ ...wish, head: wish.allowance.top + more }));
        const at = wished.folds.map((fold) => (wish.from === 'top' ? wished.stripLength - fold.at : fold.at));
        const found = plan(
          planFolds({ folds: at, length: wished.stripLength, allowance: wish.allowance, from: wish.from! }),
        );
        expect(found.pockets).toEqual(wished.pockets);
        expect(found.folds).toEqual(wished.folds);
        expect(found.runs).toEqual(wished.runs);
        expect([found.panelHeight, found.stripLength, found.trim]).toEqual([
          wished.panelHeight,
          wished.stripLength,
          wished.trim,
        ]);
      }),
      runs(500),
    );
  });

  it('takes twice the depth of each pocket more than the panel is tall', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const { stripLength, panelHeight, trim, pockets } = plan(planPleats(wish));
        const depths = pockets.reduce((sum, pocket) => sum + pocket.depth, 0);
        expect(stripLength - trim).toBe(panelHeight + 2 * depths);
      }),
      runs(500),
    );
  });

  it('keeps all of the cloth: layers times height is the length of the strip', () => {
    fc.assert(
      fc.property(wishes, (wish) => {
        const { stripLength, panelHeight, runs: stretches, layersAt } = plan(planPleats(wish));
        const heights = [...new Set(stretches.flatMap((run) => [run.from, run.to]))].sort((a, b) => a - b);
        let cloth = heights[0]! > 0 ? heights[0]! : 0;
        for (let i = 0; i + 1 < heights.length; i++) {
          const [low, high] = [heights[i]!, heights[i + 1]!];
          cloth += layersAt((low + high) / 2) * (high - low);
        }
        expect(cloth).toBeCloseTo(stripLength, 6);
        expect(layersAt(panelHeight + 1)).toBe(0);
      }),
      runs(300),
    );
  });
});
