import { areaOf, covers, ON, split, stretches } from './ring.ts';
import { between, distance } from '../geometry/point.ts';
import { fail, ok } from '../measure/index.ts';
import { findEdge, lineInside } from './edge.ts';
import { middleOfWork } from './place.ts';
import { nextNumber, noted } from './work.ts';
import { leftOf, lineThrough, rectangle, straightened } from '../geometry/index.ts';
import { CHORD } from './cut.ts';
import { within } from './carve.ts';
import type { Line, Outline } from '../geometry/index.ts';
import type { Ply, PlyOutline, Run, Sewn, Work } from './work.ts';

/** What to trim to: a size in the middle of the work, an outline, so much off an edge, or what lies left of a line. */
export type Trim =
  | { readonly size: { readonly width: number; readonly height: number } }
  | { readonly outline: Outline }
  | { readonly edge: string; readonly by: number }
  | { readonly line: Line };

/**
 * Cuts through all layers and takes away what lies outside. Stitches end at the cut. New raw edges are called `cut`, or
 * keep the name of the edge that so much is cut off.
 *
 * Faults: those of finding the edge; `not-finite`; `misses` when nothing would be cut off; `no-plies` when nothing
 * would be left.
 *
 * @example
 * size(trim(panel, { size: { width: 120, height: 80 } }).value) // => { width: 120, height: 80, depth: 0 }
 */
export function trim(work: Work, to: Trim): Sewn {
  if ('edge' in to) {
    const edge = findEdge(work, to.edge);
    if (!edge.ok) return edge;
    return cutLeft(work, lineInside(edge.value, to.by), edge.value.name, Number.isFinite(to.by) && to.by > 0);
  }
  if ('line' in to) return cutLeft(work, to.line, 'cut', Number.isFinite(to.line.at.x + to.line.at.y + to.line.angle));
  if ('outline' in to) return cutOutside(work, straightened(to.outline, CHORD));
  const { width, height } = to.size;
  const { x, y } = middleOfWork(work);
  return cutOutside(work, rectangle(width, height, { x: x - width / 2, y: y - height / 2 }));
}

function cutLeft(work: Work, line: Line, name: string, sound: boolean): Sewn {
  if (!sound) return fail({ code: 'not-finite', message: 'How much is trimmed is not a length.' });
  return trimmed(
    work,
    (ply) => split(ply.outline, line, { name, bulge: 0 }).left,
    (run) => runLeftOf(run, line),
    (at) => leftOf(line, at) > -ON,
  );
}

function cutOutside(work: Work, outline: Outline): Sewn {
  if (!(areaOf(outline) > 0) || !outline.every(({ from }) => Number.isFinite(from.x + from.y))) {
    return fail({ code: 'not-finite', message: 'The outline to trim to has no size.' });
  }
  return trimmed(
    work,
    (ply) =>
      ply.outline.every(({ from }) => covers(outline, from)) && convex(outline)
        ? [ply.outline]
        : within(ply.outline, outline, 'cut'),
    (run) => runInside(run, outline),
    (at) => covers(outline, at),
  );
}

function convex(ring: Outline): boolean {
  return ring.every(({ from }, i) =>
    ring.every((other) => leftOf(lineThrough(from, ring[(i + 1) % ring.length]!.from), other.from) > -ON),
  );
}

/** The work with its plies, rows and marks as the scissors leave them. */
function trimmed(
  work: Work,
  keepPly: (ply: Ply) => readonly PlyOutline[],
  keepRun: (run: Run) => readonly Run[],
  keepAt: (at: { x: number; y: number }) => boolean,
): Sewn {
  let number = nextNumber(work);
  const before = work.plies.reduce((sum, ply) => sum + areaOf(ply.outline), 0);
  const plies = work.plies.flatMap((ply) =>
    keepPly(ply).map((outline, i): Ply => ({ ...ply, outline, id: i === 0 ? ply.id : number++ })),
  );
  if (plies.length === 0) return fail({ code: 'no-plies', message: 'Nothing would be left of the work.' });
  const cutAway = before - plies.reduce((sum, ply) => sum + areaOf(ply.outline), 0);
  if (!(cutAway > ON))
    return fail({ code: 'misses', message: 'The scissors miss the cloth: nothing would be cut off.' });
  const left = new Set(plies.map(({ id }) => id));
  const stitches = work.stitches.map((stitch) => ({
    ...stitch,
    runs: stitch.runs
      .flatMap((run) => keepRun(run))
      .map((run) => ({ ...run, plies: run.plies.filter((id) => left.has(id)) }))
      .filter((run) => run.plies.length > 0),
  }));
  return ok(
    noted({ ...work, plies, stitches, marks: work.marks.filter(({ at }) => keepAt(at)) }, { did: 'trim', cutAway }),
  );
}

function runLeftOf(run: Run, line: Line): Run[] {
  const [a, b] = [leftOf(line, run.from), leftOf(line, run.to)];
  if (a >= -ON && b >= -ON) return [run];
  if (a <= ON && b <= ON) return [];
  const at = between(run.from, run.to, a / (a - b));
  return [a > 0 ? { ...run, to: at } : { ...run, from: at }];
}

function runInside(run: Run, outline: Outline): Run[] {
  const length = distance(run.from, run.to);
  return stretches(outline, run.from, run.to).flatMap(([from, to]) => {
    const [start, end] = [Math.max(0, from), Math.min(length, to)];
    if (end - start <= ON) return [];
    return [{ ...run, from: between(run.from, run.to, start / length), to: between(run.from, run.to, end / length) }];
  });
}
