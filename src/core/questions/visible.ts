/** What shows of a work, to be pointed at: one side of the cloth, or one piece. */
import { outlineNow } from '../cloth/outline-now.ts';
import { middleOf } from '../cloth/layer-map.ts';
import { overlayOf, patchesBy, type Patch } from '../cloth/faces.ts';
import { boxOf } from '../cloth/size.ts';
import type { SeenFrom } from '../cloth/visible.ts';
import type { Work } from '../cloth/work.ts';
import type { Point } from '../geometry/index.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Pointing, PointingTarget } from './pointing.ts';

/** As a share of the work: what shows of less is too small to be pointed at. */
const LEAST = 0.004;

/**
 * The parts of a work that can be told apart by looking at it: of one piece, one side up, and hanging together.
 * `shows` is what is asked for: `right side`, `wrong side`, or the name of a piece. Interfacing has no sides to tell.
 * Undefined where nothing that is asked for shows.
 *
 * @param side seen from the back, left and right change
 * @example pointAtShowing(hemmed, 'back', 'right side', pattern).spots.map(({ label }) => label) // => ['1, over the middle', '2, round the middle']
 */
export function pointAtVisible(work: Work, side: SeenFrom, shows: string, pattern: Pattern): Pointing | undefined {
  const { x: left, y: low, width, height } = boxOf(work.plies);
  const seen = ({ x, y }: Point): Point => ({ x: side === 'front' ? x - left : left + width - x, y: y - low });
  const ringsOf = ({ rings }: Patch) => rings.map((ring) => ring.map(seen));
  const parts = partsOf(work, side).map(({ piece, face, patch }) => {
    const rings = ringsOf(patch);
    return { piece, face, rings, where: whereIn(rings, { width, height }), at: seen(middleOf(patch).at) };
  });
  const known: string[] = [];
  const spots = parts
    .toSorted((a, b) => b.at.y - a.at.y || a.at.x - b.at.x)
    .map(({ piece, face, rings, where, at }, i): PointingTarget => {
      const { label = piece, material = '' } = pattern.pieces[piece] ?? {};
      const hasSides = pattern.materials[material]?.material?.kind !== 'interfacing';
      const right = shows === piece || (hasSides && shows === `${face} side`);
      const say = `There you see ${hasSides ? `the ${face} side of ` : ''}this piece: ${label}.`;
      const name = hasSides ? `${label}, ${face} side` : label;
      known.push(name);
      const count = known.filter((one) => one === name).length;
      return {
        key: count > 1 ? `${name} ${count}` : name,
        tag: `${i + 1}`,
        label: `${i + 1}, ${where}`,
        right,
        say,
        at,
        rings,
      };
    });
  if (!spots.some(({ right }) => right)) return undefined;
  return {
    cloth: outlineNow(work).flatMap(ringsOf),
    spots,
    todo: `Choose all such parts. The work is seen from the ${side}.`,
  };
}

/** Parts of one piece, one side up. */
function partsOf({ plies }: Work, side: SeenFrom): { piece: string; face: 'right' | 'wrong'; patch: Patch }[] {
  const nearest = (covers: readonly number[]) => plies[(side === 'front' ? covers.at(-1) : covers[0]) ?? -1];
  const faceOf = (face: 'right' | 'wrong') => (side === 'front' ? face : face === 'right' ? 'wrong' : 'right');
  const kinds = plies.map(({ piece, face }) => ({ piece, face: faceOf(face) }));
  const first = new Map<string, (typeof kinds)[number]>();
  for (const kind of kinds) first.set(`${kind.piece} ${kind.face}`, first.get(`${kind.piece} ${kind.face}`) ?? kind);
  const patches = patchesBy(overlayOf(plies), (covers) => {
    const ply = nearest(covers);
    return ply && first.get(`${ply.piece} ${faceOf(ply.face)}`);
  });
  const all = patches.reduce((sum, { patch }) => sum + patch.area, 0);
  return patches.flatMap(({ kind, patch }) => (patch.area < LEAST * all ? [] : [{ ...kind, patch }]));
}

/** Where a part lies, for whoever cannot see it. */
function whereIn(rings: readonly (readonly Point[])[], { width, height }: { width: number; height: number }): string {
  const [xs, ys] = [rings.flat().map(({ x }) => x / width), rings.flat().map(({ y }) => y / height)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const third = (share: number, names: readonly [string, string, string]) =>
    names[share < 1 / 3 ? 0 : share > 2 / 3 ? 2 : 1];
  const across = third((left + right) / 2, ['left', 'middle', 'right']);
  const up = third((low + high) / 2, ['bottom', 'middle', 'top']);
  const [wide, tall] = [right - left > 0.7, high - low > 0.7];
  if (wide && tall) return isIn(rings, { x: width / 2, y: height / 2 }) ? 'over the middle' : 'round the middle';
  if (wide) return `across the ${up}`;
  if (tall) return `down the ${across}`;
  return across === 'middle' && up === 'middle' ? 'in the middle' : `at the ${up} ${across}`;
}

/** Whether a point lies in a part; its rings may have holes. */
function isIn(rings: readonly (readonly Point[])[], { x, y }: Point): boolean {
  const meets = rings.flatMap((ring) =>
    ring.filter((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      return a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y);
    }),
  );
  return meets.length % 2 === 1;
}
