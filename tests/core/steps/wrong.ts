import { readFileSync } from 'node:fs';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from '../project/files.ts';
import type { Point } from '../../../src/core/geometry/index.ts';
import type { Pattern, Step } from '../../../src/core/project/index.ts';
import type { Work } from '../../../src/core/cloth/index.ts';

const INCH = 25.4;

/** A whole project file that came out wrong once, with steps added at its end. */
export const wrong = (name: string, more = '', edition: 'inch' | 'metric' = 'inch'): Pattern =>
  resolved(readFileSync(new URL(`../../fixtures/wrong/${name}.yaml`, import.meta.url), 'utf8') + more, { edition });

export const errors = (pattern: Pattern): string[] => lines(check(pattern)).filter((line) => line.startsWith('error'));

const rounded = (mm: number, unit: number): number => Math.round((mm / unit) * 1000) / 1000;

/** The last step of a project. */
export const lastOf = (pattern: Pattern): Step => makeUp(pattern).at(-1)!;

/** What can be read off a step or a work, in a unit of so many mm. */
export function readingsIn(unit: number) {
  const at = ({ x, y }: Point): string => `${rounded(x, unit)},${rounded(y, unit)}`;
  return {
    /** Width and height. */
    sizeOf: ({ size: { width, height } }: Step): [number, number] => [rounded(width, unit), rounded(height, unit)],
    /** The rows that a step adds, from where to where, and through how many layers at most. */
    rowsOf: ({ stitches, after }: Step): string[] =>
      stitches.map(({ id, layers }) => {
        const { runs } = after.stitches.find((one) => one.id === id)!;
        return `${at(runs[0]!.from)} to ${at(runs.at(-1)!.to)}, ${layers} layers`;
      }),
    /** How long the rows of a step are. */
    lengthsOf: ({ stitches }: Step): number[] => stitches.map(({ length }) => rounded(length, unit)),
    /** The boxes round the plies of a piece, from the lowest up: left, bottom, right, top, and the face that is up. */
    boxesOf: ({ plies }: Work, piece: string): string[] =>
      plies
        .filter((ply) => ply.piece === piece)
        .map(({ outline, face }) => {
          const [xs, ys] = [outline.map(({ from }) => from.x), outline.map(({ from }) => from.y)];
          const ends = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
          return `${ends.map((mm) => rounded(mm, unit)).join(' ')} ${face}`;
        }),
  };
}

export const { sizeOf, rowsOf, lengthsOf, boxesOf } = readingsIn(INCH);
