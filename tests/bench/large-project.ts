/** Quilt tops: as large as a class ever sews, and five times as large. */
import { ProjectFile } from '../../src/core/project/index.ts';

/** Rows of patches, how many lie in each, and how many rows of stitches go across. */
type QuiltTop = { rows: number; across: number; quilted: number };

/** 60 steps and some 200 plies in the end. */
export const LARGE: QuiltTop = { rows: 4, across: 11, quilted: 16 };
/** 300 steps and some 900 plies in the end. */
export const HUGE: QuiltTop = { rows: 8, across: 21, quilted: 132 };

const letter = (n: number): string => 'abcdefghijklmnopqrstuvwxyz'[n]!;

/** Rows of patches, joined patch by patch, then row by row, pressed, and stitched across. */
export function largeProject({ rows, across: wide, quilted }: QuiltTop = LARGE): ProjectFile {
  const names = Array.from({ length: rows }, (_, r) =>
    Array.from({ length: wide }, (_, c) => `patch ${letter(r)}${letter(c)}`),
  );
  const pieces = names
    .flat()
    .map((name): [string, object] => [name, { from: 'cloth', size: ['patch cut', 'patch cut'] }]);
  const along = names.flatMap(([first, ...others], r) =>
    others.map((next, c) => ({ join: [c === 0 ? first : `row ${r}`, next], at: ['right', 'left'], makes: `row ${r}` })),
  );
  const down = names.slice(1).map((_, r) => ({
    join: [r === 0 ? 'row 0' : 'top', `row ${r + 1}`],
    at: ['bottom', 'top'],
    press: 'open',
    makes: 'top',
  }));
  const across = Array.from({ length: quilted }, (_, i) => ({
    topstitch: 'top',
    at: 'bottom',
    by: `seam + ${i} / 4 * seam`,
  }));
  return ProjectFile.parse({
    title: 'Quilt top',
    units: 'inch',
    measures: {
      patch: { in: '4', mm: 100, between: { in: ['2', '6'], mm: [50, 150] } },
      seam: { in: '1/4', mm: 6 },
      'patch cut': { is: 'patch + 2 * seam' },
    },
    materials: { cloth: 'quilting cotton' },
    pieces: Object.fromEntries(pieces),
    steps: [...along, ...down, { press: 'top' }, ...across],
  });
}
