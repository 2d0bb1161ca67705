/** A project as large as a class ever sews: a quilt top of 44 patches in 60 steps, of some 200 plies in the end. */
import { ProjectFile } from '../../src/core/project/index.ts';

const [ROWS, ACROSS, QUILTED] = [4, 11, 16];

/** Rows of patches, joined patch by patch, then row by row, pressed, and stitched across. */
export function largeProject(): ProjectFile {
  const names = Array.from({ length: ROWS }, (_, r) =>
    Array.from({ length: ACROSS }, (_, c) => `patch ${'abcdefghijkl'[r]!}${'abcdefghijkl'[c]!}`),
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
  const across = Array.from({ length: QUILTED }, (_, i) => ({
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
