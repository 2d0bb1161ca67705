import { boxOf } from '../cloth/size.ts';
import { closesByZip, insideOf } from './standing.ts';
import { curves } from './path.ts';
import { distance, between } from '../geometry/point.ts';
import { leftOf } from '../geometry/index.ts';
import { openingsOf } from '../cloth/openings.ts';
import { rowRole } from './work-shapes.ts';
import { viewed } from './view.ts';
import { wallsOf } from '../cloth/walls.ts';
import type { Command, Onto } from './path.ts';
import type { Opening } from '../cloth/openings.ts';
import type { PieceSetting } from './surface.ts';
import type { Point } from '../geometry/index.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { Shape } from './scene.ts';
import type { View } from './view.ts';
import type { Work } from '../cloth/work.ts';

/** How far the lip behind is lifted, as a share of how wide the opening lies. */
const LIFT = 0.09;

/** A row further from the opening than this, in mm, does not go round it. Common practice, no source. */
const ROUND = 60;

/** The opening at the top of a work that lies flat, if it has one that gapes. */
function topOpening(work: Work, setting: PieceSetting): Opening | undefined {
  const [opening, ...others] = openingsOf(work).filter(({ name }) => name === 'top opening');
  return opening && others.length === 0 && !closesByZip(work, opening, setting) ? opening : undefined;
}

/** Whether a work is open at its top, so that its lips are drawn. */
export const gapes = (work: Work, setting: PieceSetting): boolean => topOpening(work, setting) !== undefined;

/** How high a work is drawn whose opening at the top gapes a little, so that its two lips are seen, in mm of cloth. */
export function heightWithMouth(work: Work, side: SeenFrom, setting: PieceSetting): number {
  const { y, height } = boxOf(work.plies);
  const opening = side === 'front' ? topOpening(work, setting) : undefined;
  if (!opening) return height;
  const top = Math.max(opening.from.y, opening.to.y) + LIFT * distance(opening.from, opening.to);
  return Math.max(height, top - y);
}

/**
 * The lip behind of a work that is open at its top, with what is seen inside; drawn before the work itself. A row that
 * goes round the opening is seen on it as well.
 *
 * @param now the rows to look at, by number, of the work; or of `sewn`, which it became when they were sewn
 */
export function mouthShapes(
  name: string,
  view: View,
  onto: Onto,
  { now, sewn = view.work, ...setting }: PieceSetting & { now: ReadonlySet<number>; sewn?: Work },
): Shape[] {
  const { work, side } = view;
  const opening = side === 'front' ? topOpening(work, setting) : undefined;
  if (!opening) return [];
  const there = viewed(view, onto);
  const lip = lipOf(opening, 0, there);
  const rows = sewn.stitches.flatMap((row) => {
    const off = now.has(row.id) ? goesRound(work, row, opening) : undefined;
    return off === undefined ? [] : [{ role: rowRole(row.kind), path: lipOf(opening, off, there) }];
  });
  const shape = (what: string, one: Pick<Extract<Shape, { kind: 'path' }>, 'role' | 'path' | 'now'>): Shape => ({
    kind: 'path',
    name: `${name} ${what}`,
    ...one,
  });
  return [
    shape('inside', { role: insideOf(work, opening, setting), path: [...lip, ['Z']] }),
    shape('lip', { role: 'raw edge', path: lip }),
    ...rows.map((row, i) => shape(`row ${i + 1}`, { ...row, now: true })),
  ];
}

/** The lip behind as half an ellipse, or a line so far below it. */
function lipOf({ from, to }: Opening, off: number, there: Onto): Command[] {
  const [centre, half] = [between(from, to, 0.5), distance(from, to) / 2];
  const way = { x: (to.x - from.x) / (2 * half), y: (to.y - from.y) / (2 * half) };
  const lift = 2 * LIFT * half * Math.max(0.15, 1 - off / (4 * LIFT * half));
  const place = ({ x, y }: Point): Point => {
    const p = { x: centre.x + way.x * x, y: centre.y + way.y * x + (y / half) * lift };
    return there(p);
  };
  const start = place({ x: half, y: 0 });
  return [['M', start.x, start.y], ...curves({ x: 0, y: 0 }, half, 0, Math.PI, place)];
}

/** How far below an opening a row runs that goes round it, on both walls; undefined where it does not. */
function goesRound(work: Work, { runs, joins, round }: Work['stitches'][number], opening: Opening): number | undefined {
  if (round) return undefined;
  const offs = runs.map(({ from, to }) => [leftOf(opening.line, from), leftOf(opening.line, to)] as const);
  const beside = offs.map(([a, b]) => Math.abs(a - b) < 0.1 && Math.abs(a) < ROUND);
  const first = offs[beside.indexOf(true)];
  if (joins) return first && Math.abs(first[0]);
  const { lower, upper } = wallsOf(work, opening.row);
  const onBoth = [lower, upper].every((wall) =>
    runs.some(({ plies }, i) => beside[i] && wall.some(({ id }) => plies.includes(id))),
  );
  return first && onBoth ? Math.abs(first[0]) : undefined;
}
