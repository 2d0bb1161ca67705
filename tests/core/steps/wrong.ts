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

const inches = (mm: number): number => Math.round((mm / INCH) * 1000) / 1000;
const at = ({ x, y }: Point): string => `${inches(x)},${inches(y)}`;

/** The last step of a project. */
export const lastOf = (pattern: Pattern): Step => makeUp(pattern).at(-1)!;

/** Width and height in inches. */
export const sizeOf = ({ size: { width, height } }: Step): [number, number] => [inches(width), inches(height)];

/** The rows that a step adds, from where to where in inches, and through how many layers at most. */
export const rowsOf = ({ stitches, after }: Step): string[] =>
  stitches.map(({ id, layers }) => {
    const { runs } = after.stitches.find((one) => one.id === id)!;
    return `${at(runs[0]!.from)} to ${at(runs.at(-1)!.to)}, ${layers} layers`;
  });

/** How long the rows of a step are, in inches. */
export const lengthsOf = ({ stitches }: Step): number[] => stitches.map(({ length }) => inches(length));

/** The boxes round the plies of a piece, from the lowest up: left, bottom, right, top in inches, and the face that is up. */
export const boxesOf = ({ plies }: Work, piece: string): string[] =>
  plies
    .filter((ply) => ply.piece === piece)
    .map(({ outline, face }) => {
      const [xs, ys] = [outline.map(({ from }) => from.x), outline.map(({ from }) => from.y)];
      const ends = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
      return `${ends.map(inches).join(' ')} ${face}`;
    });
