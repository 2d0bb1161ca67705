/**
 * What can be pointed at. Folds by hand, inch edition of the swatch-card folio: seam 3/8 in, lift 1/4 in, depth 2 1/4 in,
 * step 3/4 in, so that the first fold lies at 2 3/4 in, and then in turns a depth further, and a depth and a step.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cut, fold } from '../../../src/core/cloth/index.ts';
import { rectangle } from '../../../src/core/geometry/index.ts';
import { makeUp, resolveProject } from '../../../src/core/project/index.ts';
import { pointAtEdges, pointAtFolds, pointAtVisible } from '../../../src/core/questions/index.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import { fileURLToPath } from 'node:url';
import type { Pointing } from '../../../src/core/questions/index.ts';
import { editions, folio, folioIn } from './demo.ts';

const right = (pointing: Pointing | undefined) =>
  pointing?.spots.flatMap(({ label, right }) => (right ? [label.replace('\u202f', ' ')] : []));
const stripIn = (edition: 'inch' | 'metric') => {
  const pattern = folioIn(edition);
  return { pattern, strip: pattern.pieces['pocket strip']! };
};

describe('folds of a pleated strip', () => {
  test.each([
    [1, 'A, 2⅞ in'],
    [2, 'B, 5⅛ in'],
    [3, /^\w, 8⅛ in/],
    [4, /^\w, 10⅜ in/],
  ])('fold %d lies where the sum by hand says', (fold, label) => {
    const { pattern, strip } = stripIn('inch');
    const pointing = pointAtFolds(strip, { fold }, pattern);
    expect(right(pointing)).toEqual([expect.stringMatching(label)]);
    expect(pointing!.spots.length).toBeGreaterThan(2);
    for (const { right, say } of pointing!.spots) expect(say === '').toBe(right);
  });

  test('wrong places are those where people put it', () => {
    const { pattern, strip } = stripIn('inch');
    const at = (key: string) => pointAtFolds(strip, { fold: 4 }, pattern)!.spots.find((spot) => spot.key === key);
    // 5/8 in to the first pocket, and four depths of 2 1/4 in: the step between is forgotten.
    expect(at('without the step')?.label).toMatch(/9⅝/);
    // And three steps of 3/4 in, though the strip climbs but once.
    expect(at('a step each way')?.label).toMatch(/11⅞/);
    expect(at('the fold before it')?.label).toMatch(/8⅛/);
  });

  test.each(editions)('mountain and valley folds go in turns, %s', (edition) => {
    const { pattern, strip } = stripIn(edition);
    const mountains = pointAtFolds(strip, { kind: 'mountain' }, pattern)!.spots;
    const valleys = pointAtFolds(strip, { kind: 'valley' }, pattern)!.spots;
    expect(mountains.map(({ right }) => right)).toEqual(mountains.map((_, i) => i % 2 === 0));
    expect(valleys.map(({ right }) => right)).toEqual(mountains.map(({ right }) => !right));
  });

  test('at any size there is one right line, and lines can be told apart', () => {
    const file = folio;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 12 }),
        fc.integer({ min: 40, max: 70 }),
        fc.integer({ min: 12, max: 30 }),
        (fold, depth, step) => {
          const pattern = resolveProject(file, { edition: 'metric', values: { depth, step, pockets: 6 } });
          const strip = pattern.pieces['pocket strip']!;
          const { spots } = pointAtFolds(strip, { fold }, pattern)!;
          expect(spots.filter((spot) => spot.right).map(({ at }) => at.y)).toEqual([strip.pleats!.folds[fold - 1]!.at]);
          const levels = spots.map(({ at }) => at.y);
          for (const [i, level] of levels.entries())
            if (i > 0) expect(level - levels[i - 1]!).toBeGreaterThanOrEqual(0.025 * strip.pleats!.stripLength - 1e-9);
          expect(new Set(spots.map(({ key }) => key)).size).toBe(spots.length);
        },
      ),
    );
  });

  test('a fold that the strip has not, and a piece without pleats', () => {
    const { pattern, strip } = stripIn('inch');
    expect(pointAtFolds(strip, { fold: 11 }, pattern)).toBeUndefined();
    expect(pointAtFolds(pattern.pieces.facing!, { fold: 1 }, pattern)).toBeUndefined();
  });
});

test('edges: those with an allowance are right, unless others are named; corners are none', () => {
  const { flap } = folioIn('inch').pieces;
  expect(right(pointAtEdges(flap!))).toEqual(['Bottom', 'Right', 'Top', 'Left']);
  expect(right(pointAtEdges(flap!, ['left']))).toEqual(['Left']);
  expect(pointAtEdges(flap!).spots.find(({ key }) => key === 'top')?.say).toBe('Not the top edge.');
});

describe('what shows', () => {
  const content = readContent(fileURLToPath(new URL('../../..', import.meta.url)));
  const after = (project: string, id: string, edition: 'inch' | 'metric') => {
    const file = content.projects.find((one) => one.id === project)!.value!;
    const pattern = resolveProject(file, { edition, materials: content.materials.value! });
    return { pattern, work: makeUp(pattern).find((step) => step.id === id)!.after };
  };

  // A hem is folded over to the back: its right side is seen there, all round the wrong side of the middle.
  test.each(editions)('a hem shows its right side at the back, %s', (edition) => {
    const { work, pattern } = after('table-set', 'napkin', edition);
    const pointing = pointAtVisible(work, 'back', 'right side', pattern);
    expect(right(pointing)).toEqual([expect.stringContaining('round the middle')]);
    expect(pointing!.spots.map(({ right }) => right).toSorted()).toEqual([false, true]);
    expect(pointing!.spots.find(({ right }) => !right)?.say).toContain('the wrong side');
    expect(pointAtVisible(work, 'front', 'wrong side', pattern)).toBeUndefined();
  });

  test('a flap that stands up shows its lining at the front, and itself at the back', () => {
    const { work, pattern } = after('swatch-folio', 'turn-folio', 'inch');
    expect(right(pointAtVisible(work, 'front', 'flap lining', pattern))).toEqual(['1, across the top']);
    expect(right(pointAtVisible(work, 'back', 'flap', pattern))).toEqual(['1, across the top']);
    expect(pointAtVisible(work, 'front', 'flap', pattern)).toBeUndefined();
  });

  test('interfacing has no side to tell', () => {
    const { work, pattern } = after('swatch-folio', 'stiffen-cover', 'inch');
    const { spots } = pointAtVisible(work, 'back', 'wrong side', pattern)!;
    expect(spots.map(({ key, right }) => [key, right])).toEqual(
      expect.arrayContaining([
        ['Cover, wrong side', true],
        ['Interfacing for the cover', false],
      ]),
    );
  });

  test('seen from the back, left and right change', () => {
    // A strip of 100 x 20, right side up. 30 of its right end folded over show their wrong side at the right of the
    // front; folded under, they show their right side at the back, and there at the left.
    const strip = cut({ piece: 'strip', material: 'linen', outline: rectangle(100, 20) });
    const shows = (lands: 'over' | 'under', side: 'front' | 'back', what: string) => {
      const folded = strip.ok && fold(strip.value, { line: { at: { x: 70, y: 0 }, angle: 90 }, lands });
      return folded && folded.ok ? right(pointAtVisible(folded.value, side, what, folioIn('inch'))) : undefined;
    };
    expect(shows('over', 'front', 'wrong side')).toEqual(['2, down the right']);
    expect(shows('under', 'back', 'right side')).toEqual(['1, down the left']);
  });
});
