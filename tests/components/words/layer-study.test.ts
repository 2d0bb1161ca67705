/** The places of the layer study, and what to do about them. */
import { describe, expect, it } from 'vitest';
import { drawLayers, placesOf } from '../../../components/words/layer-study/layers.ts';
import { placeUnder, roundOf } from '../../../components/words/layer-study/layers-on-sheet.ts';
import { adviceOn } from '../../../components/words/layer-study/advice.ts';
import { makeUp, resolveProject } from '../../../src/core/index.ts';
import { folio, resolved, shelf } from '../../core/project/files.ts';

const pattern = resolveProject(folio(), { edition: 'metric', materials: shelf() });
const step = makeUp(pattern).find(({ id }) => id === 'sew-round')!;
const places = placesOf(step);

const twoPanels = `
title: Two panels
units: metric
measures: {}
materials: { outer: cotton }
pieces:
  front: { size: [100 mm, 50 mm], from: outer }
  back: { size: [100 mm, 50 mm], from: outer }
steps:
`;

describe('the places of a work', () => {
  it('are the whole work, once', () => {
    expect(places.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    const area = places.flatMap(({ regions }) => regions).reduce((sum, one) => sum + one.area, 0);
    // The folio before it is turned: panel width times panel height, 131 x 183 mm in this edition.
    expect(area).toBeCloseTo(131 * 183, 3);
  });

  it('begin with those that are sewn, and of these with the thickest', () => {
    const sewn = places.filter((place) => place.sewn);
    expect(places.slice(0, sewn.length)).toEqual(sewn);
    const counts = sewn.map(({ stack }) => stack.length);
    expect(counts).toEqual([...counts].sort((a, b) => b - a));
    // Where pockets overlap most at the side: seven layers of the strip, the facing and the cover. The interfacings end
    // at the stitch line and are not sewn through.
    expect(counts[0]).toBe(Math.max(...step.stitches.map(({ layers }) => layers)));
    expect(places[0]!.stack.map(({ material }) => material).sort()).toEqual(
      ['lining', 'outer', ...Array.from({ length: 7 }, () => 'pockets')].sort(),
    );
  });

  it('are sewn by the step itself and not by the one before, of which it changes nothing', () => {
    const steps = '- { lay: front, on: back }\n- { topstitch: back, at: top }\n- { press: back }';
    const [, sewn, pressed] = makeUp(resolved(twoPanels + steps.replace(/^/gmu, '  ')));
    expect(pressed!.after).toBe(sewn!.after);
    expect(placesOf(sewn!).map((place) => place.sewn)).toContain(true);
    expect(placesOf(pressed!).map((place) => place.sewn)).not.toContain(true);
    expect(placesOf({ ...sewn! })).toEqual(placesOf(sewn!));
  });

  it('differ in their layers', () => {
    const keys = places.map(({ stack }) =>
      stack
        .map(({ piece, material }) => piece + material)
        .sort()
        .join(),
    );
    expect(new Set(keys).size).toBe(places.length);
  });

  it('are found again by pointing at them', () => {
    const drawn = drawLayers(step, pattern, () => 0.3);
    const { scene } = drawn;
    const under = (at: { x: number; y: number }) => placeUnder(drawn, at);
    const tone = scene.shapes.filter((shape) => shape.kind === 'path' && shape.name.startsWith('layers '));
    const points = tone.flatMap((shape) =>
      shape.kind === 'path' ? shape.path.flatMap((command) => (command.length === 3 ? [command] : [])) : [],
    );
    const [left, top] = [Math.min(...points.map(([, x]) => x)), Math.min(...points.map(([, , y]) => y))];
    for (const { n, at } of places) {
      expect(under({ x: left + at.x * scene.scale, y: top + (183 - at.y) * scene.scale })).toBe(n);
    }
    expect(under({ x: left - 1, y: top })).toBeUndefined();
  });

  it('are marked on the drawing where they lie', () => {
    const drawn = drawLayers(step, pattern, () => 0.3);
    const { scene } = drawn;
    const inside = (path: readonly (readonly [string, ...number[]])[]) =>
      path.every(([, x = 0, y = 0]) => x >= 0 && x <= scene.width && y >= 0 && y <= scene.height);
    for (const { n } of places) {
      expect(roundOf(drawn, n).path.length).toBeGreaterThan(3);
      expect(inside(roundOf(drawn, n).path)).toBe(true);
    }
  });
});

describe('what to do', () => {
  const seam = { thickness: 0.6, fused: 0, isSewn: true, lifts: 5 };

  it.each([
    [{ ...seam }, ['An ordinary seam: nothing needs doing.']],
    [{ ...seam, thickness: 0.4 }, ['Thin cloth puckers. Use a fine needle, and hold both threads as you begin.']],
    [{ ...seam, isSewn: false }, ['No row of this step goes through here: nothing needs doing.']],
  ])('for %o', (stack, sentences) => {
    expect(adviceOn(stack)).toEqual(sentences);
  });

  it('says first what does not go under the foot', () => {
    expect(adviceOn({ ...seam, thickness: 5.5 })[0]).toMatch(/^It does not go under the presser foot\./);
    expect(adviceOn({ ...seam, thickness: 5 })[0]).toMatch(/^It only just goes under the presser foot\./);
    expect(adviceOn({ ...seam, thickness: 5.5, isSewn: false })[0]).toMatch(/^No row of this step goes through here\./);
  });

  it('takes interfacing out of seams', () => {
    expect(adviceOn({ ...seam, thickness: 1, fused: 2 })).toEqual([
      'Keep interfacing out of the allowances: cut it back to the stitch line before you fuse it.',
    ]);
  });
});
