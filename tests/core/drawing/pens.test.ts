import { describe, expect, it } from 'vitest';
import { motifs, NOW_HEAVIER, pens } from '../../../src/core/index.ts';
import type { ShapeRole } from '../../../src/core/index.ts';

const roles = Object.keys(pens) as ShapeRole[];

describe('the look', () => {
  it('draws the cut line solid, 0.5 mm, and the stitch line in short dashes, 0.35 mm', () => {
    expect(pens.cut.line).toEqual({ width: 0.5, ink: 'ink' });
    expect(pens.stitch.line?.width).toBe(0.35);
    expect(Math.max(...(pens.stitch.line?.dash ?? []))).toBeLessThan(2);
  });

  it('draws valley folds dashed and mountain folds with dash and dot, as is usual for paper', () => {
    // The Yoshizawa-Randlett system, as origami diagrams use it: valley dashed, mountain dash-dot (from memory).
    expect(pens.valley.line?.dash).toHaveLength(2);
    const [dash = 0, , dot = 0] = pens.mountain.line?.dash ?? [];
    expect(pens.mountain.line?.dash).toHaveLength(4);
    expect(dash).toBeGreaterThan(4 * dot);
  });

  it('tells surfaces apart without colour', () => {
    const marks = roles.filter((role) => pens[role].fill && !pens[role].line).map((role) => pens[role].fill?.motif);
    expect(new Set(marks).size).toBe(marks.length);
  });

  it('tells lines of the cloth apart without colour, by width or dashes', () => {
    const lines = (
      [
        ...(['cut', 'stitch', 'basting', 'hand stitch', 'valley', 'mountain', 'hidden', 'grain'] as const),
        ...(['raw edge', 'fold edge', 'seam'] as const),
      ] as const
    ).map((role) => {
      const { width, dash } = pens[role].line!;
      return JSON.stringify([width, dash]);
    });
    expect(new Set(lines).size).toBe(lines.length);
  });

  it('makes what is looked at now heavier, not only red', () => {
    expect(NOW_HEAVIER).toBeGreaterThan(1.5);
  });

  it('explains every surface and line of the cloth in the legend, but what has a name of its own', () => {
    // Nested sizes are called on the sheet by their own names.
    const unexplained = roles.filter((role) => pens[role].legend === undefined && !/^size \d$/u.test(role));
    expect(unexplained).toEqual(['held', 'layer', 'arrow', 'plate', 'dimension', 'leader', 'scale bar']);
  });

  it('repeats its motifs without a seam: each mark lies in its tile or is drawn on both sides', () => {
    for (const [name, { width, height, path }] of Object.entries(motifs)) {
      const inside = path.every((command) =>
        command.slice(1).every((n, i) => Number(n) >= 0 && Number(n) <= (i % 2 === 0 ? width : height)),
      );
      expect([name, inside || name.includes('hatch')]).toEqual([name, true]);
    }
  });
});
