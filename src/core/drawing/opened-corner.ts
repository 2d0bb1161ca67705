import { faceOf } from './work-shapes.ts';
import { LINE, TYPE } from './dimension.ts';
import { letteringWidth } from './lettering.ts';
import { plateAt, plateLabel } from './plate.ts';
import { polyline } from './path.ts';
import { lengthWriter } from './lengths.ts';
import { visibleFrom } from '../cloth/visible.ts';
import { distance } from '../geometry/point.ts';
import { awayFrom, covers } from '../cloth/ring.ts';
import type { Mark, Work } from '../cloth/work.ts';
import type { PieceSetting } from './surface.ts';
import type { Inset } from './view.ts';

/** So much of the bag is seen below the row, as a share of the way from the row to the tip. */
const BEYOND = 0.7;

/** The first corner that a step boxes, as a mark of the work after it; undefined where it boxes none. */
export function boxedIn(before: readonly Work[], after: Work): Mark | undefined {
  const there = before.reduce((sum, { marks }) => sum + marks.filter(({ kind }) => kind === 'box').length, 0);
  return after.marks.filter(({ kind }) => kind === 'box')[there];
}

/**
 * A corner opened to be boxed: side seam lies on bottom seam, so that it comes to a right-angled tip, and the row runs
 * across at right angles to the seam, as far from the tip as the square is wide and twice as long.
 */
export function openedCorner(work: Work, { at, square = 0 }: Mark, setting: PieceSetting): Inset {
  const deep = square * (1 + BEYOND);
  const { parts } = visibleFrom(work);
  const near = parts.find(({ ply: { outline } }) => covers(outline, at) || awayFrom(outline, at) < 0.1) ?? parts[0]!;
  const role = faceOf(near.ply, near.face, setting.materials);
  const { set } = lengthWriter(setting);
  return {
    width: 2 * deep,
    height: deep,
    shapes: (name, onto) => {
      const p = (across: number, down: number) => onto({ x: deep + across, y: deep - down });
      const [tip, left, right] = [p(0, 0), p(-deep, deep), p(deep, deep)];
      const row = polyline(p(-square, square), p(square, square));
      const text = set(2 * square);
      const [wide, middle] = [letteringWidth(text, TYPE) + 1, p(0, square * (1 + BEYOND / 2))];
      const room =
        distance(p(-square, square), p(square, square)) > wide &&
        BEYOND * square * distance(p(0, 0), p(0, 1)) > LINE + 1;
      const label = room ? plateLabel(`${name} row length`, `${name} plate`, text, plateAt(middle, wide)) : [];
      // The seam is left out where the label stands on it.
      const ends = room ? [p(0, square * 0.98), tip] : [p(0, deep), tip];
      return [
        { kind: 'path', name: `${name} cloth`, role, path: [...polyline(left, right, tip), ['Z']] },
        { kind: 'path', name: `${name} edges`, role: 'fold edge', path: polyline(left, tip, right) },
        { kind: 'path', name: `${name} seam`, role: 'seam', path: polyline(...ends) },
        { kind: 'path', name: `${name} row`, role: 'stitch', path: row, now: true },
        ...label,
      ];
    },
  };
}
