/** A pennant turned right side out: its slanting allowances stick up beyond its open top, and are trimmed level with it. */
import { describe, expect, test } from 'vitest';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from '../project/files.ts';

/** Twice as wide as high on the stitch line, so that its sides slant by 45 degrees, or another shape. */
const pennant = (
  steps: string,
  edition: 'inch' | 'metric',
  outline = '[[0 in, half], [half, 0 in], [2 * half, half]]',
) =>
  resolved(
    `
title: Pennant
measures: { seam: { in: 1/4, mm: 6 }, half: { in: 6, mm: 150 }, bound: { in: 1/2, mm: 12 } }
pieces:
  pennant: { outline: ${outline}, allowance: seam }
  back: { like: pennant }
  strip: { size: [2 * half + 2 * seam - 2 * bound, 4 * bound] }
steps:
  - { sew round: [pennant, back], open: top, makes: flag }
  - { turn: flag }
${steps.replace(/^/gmu, '  ')}
`,
    { edition },
  );

const errors = (...of: Parameters<typeof pennant>): string[] =>
  lines(check(pennant(...of))).filter((line) => line.startsWith('error'));

const binding = '- { bind: flag, with: strip, at: top, width: bound, sew shut: true }';
const SLIM = '[[0 in, 2 * half], [half / 2, 0 in], [half, 2 * half]]';

describe.each(['inch', 'metric'] as const)('in the %s edition', (edition) => {
  test.each([
    ['a binding', binding],
    ['a row', '- { topstitch: flag, at: top, sew shut: true }'],
    ['a trim by a length', '- { trim: flag, at: top, by: 1/8 in }'],
  ])('%s at the top is told to trim the points', (_, step) => {
    for (const outline of [undefined, SLIM])
      expect
        .soft(errors(step, edition, outline))
        .toEqual([
          'error steps > 2 > at: points: The top is not one straight side: the points of turned-in allowances stick up ' +
            'beyond it. Trim them level with it first: a step “trim” with “at” and without “by”.',
        ]);
  });
  test('trimmed level, the top is bound', () => {
    const steps = `- { trim: flag, at: top }\n${binding}`;
    expect(errors(steps, edition)).toEqual([]);
    // At 45 degrees the raw edge, one allowance above the stitch line, is one allowance longer at each end.
    const [seam, half] = edition === 'inch' ? [25.4 / 4, 6 * 25.4] : [6, 150];
    for (const { size } of makeUp(pennant(steps, edition)).slice(2)) {
      expect(size.width).toBeCloseTo(2 * half + 2 * seam, 6);
      expect(size.height).toBeCloseTo(half + seam, 6);
    }
  });
  test('what is meant to sew the opening shut says so', () => {
    const [found, ...more] = errors(`- { trim: flag, at: top }\n${binding.replace(', sew shut: true', '')}`, edition);
    expect(more).toEqual([]);
    expect(found).toContain('steps > 3 > at: opening: ');
  });
  test('where nothing sticks up, a trim says how much', () => {
    expect(errors('- { trim: flag, at: top }\n- { trim: flag, at: top }', edition).join()).toContain(
      'steps > 3: misses: How much is trimmed is not said. Write “by: 1/4 in” for what comes off, “height” for what is left, or “leaving” for an allowance.',
    );
  });
});
