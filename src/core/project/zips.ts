/** Zips as pieces of a project: where their teeth and stops lie in a work, and how far one opens. */
import { bounds, leftOf, lineThrough } from '../geometry/index.ts';
import { distance, minus, plus, times, unit } from '../geometry/point.ts';
import { stretches } from '../cloth/ring.ts';
import { inverse, transformPoint } from '../geometry/transform.ts';
import { SAME } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { Ply, Work } from '../cloth/index.ts';
import type { Point } from '../geometry/index.ts';

/** The teeth of a zip where they lie in a work, and those of its stops that are still there. */
export type Teeth = {
  readonly ply: Ply;
  readonly from: Point;
  readonly to: Point;
  /** The stop at the start and that at the end; undefined where the tape was cut off inside it. */
  readonly stops: readonly [Point | undefined, Point | undefined];
  /** Of metal no needle goes over them. */
  readonly metal: boolean;
};

type Setting = Pick<Pattern, 'materials' | 'pieces'>;

/**
 * The teeth of each zip in a work: along the middle of its longer side, from stop to stop, as far as its tape goes. A piece
 * that is less than both tapes wide is one of them, and has its teeth along an edge; it is left out. So is a zip of
 * which the shelf does not say where its stops are.
 */
export function teethIn({ plies }: Pick<Work, 'plies'>, { materials, pieces }: Setting): Teeth[] {
  return plies.flatMap((ply): Teeth[] => {
    const zip = materials[ply.material]?.material;
    const piece = pieces[ply.piece];
    if (zip?.hardware !== 'zip' || zip.stops === undefined || zip.across === undefined || !piece) return [];
    const box = bounds(piece.cutOutline);
    const level = box.width >= box.height;
    const [long, wide] = level ? [box.width, box.height] : [box.height, box.width];
    if (wide < (zip.across * 3) / 4 || long <= 2 * zip.stops) return [];
    const at = (t: number): Point =>
      transformPoint(
        ply.transform,
        level ? { x: box.x + t, y: box.y + box.height / 2 } : { x: box.x + box.width / 2, y: box.y + t },
      );
    const [first, last] = [at(zip.stops), at(long - zip.stops)];
    const size = distance(first, last);
    const there = stretches(ply.outline, first, last).filter(([a, b]) => b > 0 && a < size);
    if (there.length === 0) return [];
    const [start, end] = [Math.max(0, there[0]![0]), Math.min(size, there.at(-1)![1])];
    const way = unit(minus(last, first));
    const on = (t: number) => plus(first, times(way, t));
    const stops = [start < 0.05 ? first : undefined, end > size - 0.05 ? last : undefined] as const;
    return [{ ply, from: on(start), to: on(end), stops, metal: zip.teeth === 'metal' }];
  });
}

/** Where rows that hold a zip cross its teeth, as distances from their start, in order. */
export function crossedAt({ ply, from, to }: Teeth, { stitches }: Pick<Work, 'stitches'>): number[] {
  const way = unit(minus(to, from));
  const off = (p: Point) => way.x * (p.y - from.y) - way.y * (p.x - from.x);
  const along = (p: Point) => way.x * (p.x - from.x) + way.y * (p.y - from.y);
  const found = stitches.flatMap(({ kind, runs }) =>
    kind === 'baste' || kind === 'gather'
      ? []
      : runs.flatMap((run) => {
          const [a, b] = [off(run.from), off(run.to)];
          if (!run.plies.includes(ply.id) || a * b > 0 || a === b) return [];
          const at = along(run.from) + ((along(run.to) - along(run.from)) * a) / (a - b);
          return at > -NEAR_STOP && at < distance(from, to) + NEAR_STOP ? [at] : [];
        }),
  );
  return found.toSorted((a, b) => a - b);
}

/** A zip of a work as one, however often it is folded. */
export type WholeZip = {
  readonly piece: string;
  /** How many of its ends were cut off inside the stop. */
  readonly cut: number;
  /** How many rows cross its teeth. */
  readonly crossed: number;
};

/** The zips of a work. One that is folded lies in several plies, and a row at the fold crosses each of them. */
export function zipsIn(work: Pick<Work, 'plies' | 'stitches'>, setting: Setting): WholeZip[] {
  const whole = Map.groupBy(teethIn(work, setting), ({ ply }) => `${ply.copy ?? 0} ${ply.piece}`);
  return [...whole.values()].map((parts) => {
    const crossed = parts.flatMap((teeth) => {
      const way = unit(minus(teeth.to, teeth.from));
      const onPiece = inverse(teeth.ply.transform);
      return crossedAt(teeth, work).map((at) => transformPoint(onPiece, plus(teeth.from, times(way, at))));
    });
    const rows = crossed.filter((p, i) => crossed.findIndex((one) => distance(one, p) < SAME) === i);
    const stops = parts.flatMap((teeth) => teeth.stops.filter((stop) => stop !== undefined));
    return { piece: parts[0]!.ply.piece, cut: 2 - stops.length, crossed: rows.length };
  });
}

/** So far from their middle, in mm, the teeth of a zip and its slider reach. Common practice, no source. */
export const TEETH = 3;

/** Whether a row runs along the teeth, so near to them that no slider passes. */
export function isAlongTeeth({ ply, from, to }: Teeth, { stitches }: Pick<Work, 'stitches'>): boolean {
  const line = lineThrough(from, to);
  return stitches.some(({ runs }) =>
    runs.some((run) => {
      const [a, b] = [leftOf(line, run.from), leftOf(line, run.to)];
      const isNear = Math.abs(a) < TEETH && Math.abs(b) < TEETH && distance(run.from, run.to) > 2 * TEETH;
      return isNear && run.plies.includes(ply.id) && stretches(ply.outline, run.from, run.to).length > 0;
    }),
  );
}

/** Nearer than this to a stop, in mm, a row runs over it. Common practice, no source. */
export const NEAR_STOP = 2;

/** How far a zip opens, in mm: the longest stretch of its teeth between stops and rows that cross it. */
export function opensFor(teeth: Teeth, work: Pick<Work, 'stitches'>): number {
  const ends = [0, ...crossedAt(teeth, work), distance(teeth.from, teeth.to)].toSorted((a, b) => a - b);
  return Math.max(...ends.slice(1).map((end, i) => end - ends[i]!));
}
