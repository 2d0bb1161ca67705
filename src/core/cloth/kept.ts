import { awayFrom, covers, ON, stretches } from './ring.ts';
import { distance, dot, minus, plus, times, unit } from '../geometry/point.ts';
import { bounds, leftOf, lineThrough } from '../geometry/index.ts';
import { sameList } from './stitch.ts';
import type { Mark, Ply, PlyOutline, Run, Work } from './work.ts';
import type { Point } from '../geometry/index.ts';

/** Nearer to the edge of a ply than this, in mm, is on the ply: a clipping library rounds its corners. */
const BESIDE = 1e-3;

/**
 * The work with some of its plies cut, each into the parts that are given for its number: rows end where their cloth was
 * cut away and go on in the part they lie on, hardware and interfacing go with theirs. What lay on cloth that is gone is
 * gone too.
 */
export function keptOn(work: Work, parts: ReadonlyMap<number, readonly Ply[]>): Work {
  const stitches = work.stitches.map((stitch) => {
    const runs = stitch.runs.flatMap((run) => runsOn(run, parts));
    // Where nothing of the row is left, nothing is sewn round any more.
    return runs.length === 0 && stitch.round ? { ...stitch, runs, round: undefined } : { ...stitch, runs };
  });
  const marks = work.marks.flatMap((mark): Mark[] => {
    const plies = now(mark.plies, mark.at, parts);
    return mark.plies.length > 0 && plies.length === 0 ? [] : [{ ...mark, plies }];
  });
  const plies = work.plies
    .flatMap((ply) => parts.get(ply.id) ?? [ply])
    .map((ply): Ply => {
      if (ply.fusedTo === undefined || !parts.has(ply.fusedTo)) return ply;
      const [to] = now([ply.fusedTo], middleOf(ply), parts);
      return { ...ply, fusedTo: to ?? parts.get(ply.fusedTo)![0]?.id ?? ply.fusedTo };
    });
  return { ...work, plies, stitches, marks };
}

function middleOf({ outline }: Ply): Point {
  const { x, y, width, height } = bounds(outline);
  return { x: x + width / 2, y: y + height / 2 };
}

const isOn = (ring: PlyOutline, p: Point): boolean => covers(ring, p) || awayFrom(ring, p) < BESIDE;

/** The parts of plies that lie at a point now; a ply that was not cut lies where it did. */
const now = (plies: readonly number[], at: Point, parts: ReadonlyMap<number, readonly Ply[]>): number[] =>
  plies
    .map((id) => {
      const cut = parts.get(id);
      return cut ? cut.find(({ outline }) => isOn(outline, at))?.id : id;
    })
    .filter((id) => id !== undefined);

/** What is left of a run of stitches. */
function runsOn(run: Run, parts: ReadonlyMap<number, readonly Ply[]>): Run[] {
  if (run.plies.every((id) => !parts.has(id))) return [run];
  const cut = run.plies.flatMap((id) => parts.get(id) ?? []);
  const length = distance(run.from, run.to);
  if (length <= ON) return [];
  const way = unit(minus(run.to, run.from));
  const line = lineThrough(run.from, run.to);
  const stops = [0, length];
  const stop = (t: number) => {
    if (t > 0 && t < length && !stops.includes(t)) stops.push(t);
  };
  for (const { outline } of cut) {
    for (const [start, end] of stretches(outline, run.from, run.to)) [start, end].forEach(stop);
    for (const { from } of outline) if (Math.abs(leftOf(line, from)) < BESIDE) stop(dot(way, minus(from, run.from)));
  }
  stops.sort((a, b) => a - b);
  const at = (t: number) => plus(run.from, times(way, t));
  const runs: Run[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [start, end] = [stops[i]!, stops[i + 1]!];
    if (end - start <= ON) continue;
    const plies = now(run.plies, at((start + end) / 2), parts);
    const last = runs.at(-1);
    if (plies.length === 0) continue;
    const goesOn = last && distance(last.to, at(start)) <= 2 * ON && sameList(last.plies, plies);
    if (goesOn) runs[runs.length - 1] = { ...last, to: at(end) };
    else runs.push({ ...run, from: at(start), to: at(end), plies });
  }
  return runs;
}
