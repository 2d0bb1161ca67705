/** What can be pointed at, as SVG has it: y downwards, in mm. */
import { clearMarks, type Point, type Pointing } from '../../../../src/core/index.ts';

export type DrawnSpot = { key: string; tag?: string; path: string; isArea: boolean; at: Point };

export type DrawnPointing = {
  cloth: string;
  spots: DrawnSpot[];
  box: string;
  /** A hundredth of the longer side, in mm: lines are as strong in every drawing. */
  unit: number;
  /** How wide a line is to the hand, in mm; narrower where lines lie close. */
  reach: number;
  /** Height of its letters, in mm. */
  letter: number;
  /** More than twice as high as wide. */
  isTall: boolean;
};

const place = ({ x, y }: Point) => `${x.toFixed(1)} ${(-y).toFixed(1)}`;
const through = (points: readonly Point[]) => `M${points.map(place).join('L')}`;
const rings = (all: readonly (readonly Point[])[]) => all.map((ring) => `${through(ring)}Z`).join('');

export function drawPointing(pointing: Pointing): DrawnPointing {
  const { cloth, spots } = pointing;
  const points = cloth.flat();
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, low] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - left, Math.max(...ys) - low];
  const unit = Math.max(width, height) / 100;
  const isTall = height > 2 * width;
  const letter = (isTall ? 3.6 : 6.5) * unit;
  const margin = (isTall ? 2.5 : 7) * unit;
  // Lines carry their letters at their right ends.
  const beside = spots.some((spot) => spot.tag !== undefined && 'line' in spot) ? 1.4 * letter : 0;
  const box = [left - margin, -(low + height) - margin, width + 2 * margin + beside, height + 2 * margin];
  const levels = spots
    .flatMap((spot) => ('line' in spot && spot.tag !== undefined ? [spot.at.y] : []))
    .toSorted((a, b) => a - b);
  const apart = Math.min(...levels.slice(1).map((level, i) => level - levels[i]!));
  const marks = clearMarks(pointing, 1.05 * letter);
  return {
    cloth: rings(cloth),
    spots: spots.map((spot) => ({
      key: spot.key,
      ...(spot.tag !== undefined && { tag: spot.tag }),
      path: 'line' in spot ? through(spot.line) : rings(spot.rings),
      isArea: 'rings' in spot,
      at: { x: spot.at.x, y: -(marks.get(spot.key) ?? spot.at.y) },
    })),
    box: box.map((one) => one.toFixed(1)).join(' '),
    unit,
    reach: Math.min(16 * unit, apart),
    letter,
    isTall,
  };
}
