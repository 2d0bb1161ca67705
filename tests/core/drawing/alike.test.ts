import { describe, expect, test } from 'vitest';
import { actionOf } from '../../../src/core/drawing/step-action.ts';
import { makeUp } from '../../../src/core/project/index.ts';
import { visibleMarks, turn } from '../../../src/core/cloth/index.ts';
import { resolved } from '../project/files.ts';
import { wrong } from '../steps/wrong.ts';
import type { Step } from '../../../src/core/project/index.ts';

const foldsIn = (step: Step): number => actionOf(step, Object.values(step.before)).folds.length;

describe('what a step folds, when one piece is there twice', () => {
  test('only steps that fold have fold lines', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const steps = makeUp(wrong('arrows-that-fold-nothing', '', edition));
      const folding = steps.filter((step) => foldsIn(step) > 0).map(({ id }) => id);
      expect(folding.filter((id) => id !== 'f')).toEqual([]);
    }
  });
  test('folding one of two alike draws its fold on that one alone', () => {
    const steps = makeUp(
      resolved(`
title: Two
measures: { seam: 1/2 }
pieces: { patch: { cut: 2, size: [6, 4] }, base: { size: [12, 8] } }
steps:
  - { fold: patch, from: left, at: 1, makes: folded }
  - { lay: folded, on: base, at: left }
  - { lay: patch, on: base, at: right }
  - { topstitch: base, at: patch top, by: 1/8 }
`),
    );
    expect(steps.map(foldsIn)).toEqual([1, 0, 0, 0]);
  });
});

describe('hardware shows on the side where it is', () => {
  test('a snap on the back is not drawn on the front', () => {
    const turned = makeUp(wrong('hardware-behind')).at(-1)!.after;
    expect([visibleMarks(turned, 'front').length, visibleMarks(turned, 'back').length]).toEqual([0, 1]);
  });
  test('before it is turned its own side lies between the layers, and its back shows', () => {
    const sewn = makeUp(wrong('hardware-behind'))[1]!.after;
    expect([visibleMarks(sewn, 'front').length, visibleMarks(sewn, 'back').length]).toEqual([1, 0]);
    expect(turn(sewn).ok).toBe(true);
  });
});
