import { between } from '../geometry/point.ts';
import { barred, holdsBack, linesRound } from './held.ts';
import { awayFrom, covers, endsAt, ON } from './ring.ts';
import { cutAtHinges } from './hinge.ts';
import { fail, ok } from '../measure/index.ts';
import { leftOf } from '../geometry/index.ts';
import { reflection } from '../geometry/transform.ts';
import { movedMark, movedPly, movedRun } from './move.ts';
import { nextNumber, noted, withoutRound } from './work.ts';
import type { ClothFault } from './fault.ts';
import type { Hinge } from './hinge.ts';
import type { Transform } from '../geometry/transform.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Mark, Ply, PlyOutline, Run, Sewn, Undo, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/** How to fold. */
export type Fold = Hinge & {
  /** Whether the moving part comes to lie over the work or under it. */
  readonly lands: 'over' | 'under';
  /** The plies that fold, by number; all of them if left out. */
  readonly plies?: ReadonlySet<number>;
  /** Lands next to the plies that fold, inside the stack, instead of over or under the whole work. */
  readonly inside?: boolean;
  /** New plies and folds are numbered from here; from the next free number of the work if left out. */
  readonly numberFrom?: number;
};

/**
 * Folds the work, or some of its plies, along a line. Each ply is cut at the line, its moving part mirrored, its other
 * face turned up, the order of the moving parts turned round, and all of them laid over or under. From this one move
 * come pleats, hems, mitred corners, flaps, bindings and opened seams.
 *
 * Faults: `not-finite`; `misses` when nothing lies beyond the line; `blocked` when a ply that stays is in the way;
 * `held` and `sewn-down` when a fold or stitches hold a moving part to one that stays.
 *
 * @example
 * fold(cloth, { line: { at: { x: 0, y: 20 }, angle: 0 }, lands: 'over' }) // => two plies above y = 20
 */
export function fold(work: Work, how: Fold): Sewn {
  const { line } = how;
  if (!Number.isFinite(line.at.x + line.at.y + line.angle)) {
    return fail({ code: 'not-finite', message: 'The fold line has a number that is none.' });
  }
  const parts = partsOf(work, [how], how);
  const held = holdsBack(parts, line);
  if (held) return fail(held);
  const folded = laidOver(work, parts, [how], how);
  if (!folded.ok) return folded;
  const undo: Undo = {
    before: { plies: work.plies, stitches: work.stitches, marks: work.marks },
    after: folded.value.plies,
    over: reflection(line),
    came: new Map(parts.map(({ ply, from, moves }) => [ply.id, { from: from.id, moved: moves }])),
  };
  return ok(noted({ ...folded.value, done: work.done }, { did: 'fold', undo }));
}

/**
 * Folds the whole work about several hinges at once, as the allowance of a curve is turned in: each moving part is cut
 * out by its own line and bounds. The parts must not lie on one another. Faults are those of `fold`.
 */
export function foldAlong(work: Work, hinges: readonly Hinge[], how: Pick<Fold, 'lands' | 'numberFrom'>): Sewn {
  const folded = laidOver(work, partsOf(work, hinges, how), hinges, how);
  return folded.ok ? ok(noted({ ...folded.value, done: work.done }, { did: 'fold' })) : folded;
}

/** A ply, or a part of one, before it moves. */
export type FoldPart = {
  readonly ply: Ply;
  readonly from: Ply;
  readonly moves: boolean;
  /** Which of the hinges it moves about. */
  readonly hinge: number;
  readonly chosen: boolean;
};

type How = Pick<Fold, 'lands' | 'plies' | 'inside' | 'numberFrom'>;

/** What is not cut. */
const WHOLE: ReturnType<typeof cutAtHinges> = { stays: [], moves: [] };

/** Every ply, those that fold cut at the hinges. A part keeps the number of its ply when it is the first to stay. */
function partsOf(work: Work, hinges: readonly Hinge[], { plies, numberFrom }: How): FoldPart[] {
  let number = numberFrom ?? nextNumber(work);
  const parts: FoldPart[] = [];
  for (const ply of work.plies) {
    const chosen = !plies || plies.has(ply.id);
    const { stays, moves } = chosen ? cutAtHinges(ply.outline, hinges, number) : WHOLE;
    if (moves.length === 0) {
      parts.push({ ply, from: ply, moves: false, hinge: 0, chosen });
      continue;
    }
    if (stays.length > 0 || moves.length > 1) number += hinges.length;
    const part = (outline: PlyOutline, i: number, hinge?: number): FoldPart => ({
      ply: { ...ply, outline, id: i === 0 ? ply.id : number++ },
      from: ply,
      moves: hinge !== undefined,
      hinge: hinge ?? 0,
      chosen: true,
    });
    parts.push(
      ...stays.map((outline, i) => part(outline, i)),
      ...moves.map(({ outline, hinge }, i) => part(outline, stays.length + i, hinge)),
    );
  }
  return fusedTogether(parts);
}

/** Parts of interfacing stay fused to the parts of the cloth on their own side of the fold. */
function fusedTogether(parts: FoldPart[]): FoldPart[] {
  return parts.map((part) => {
    const { fusedTo } = part.from;
    if (fusedTo === undefined) return part;
    const to = parts.find((one) => one.from.id === fusedTo && one.moves === part.moves && one.hinge === part.hinge);
    if (!to || to.ply.id === fusedTo) return part;
    return { ...part, ply: { ...part.ply, fusedTo: to.ply.id } };
  });
}

/** The work with its parts where they come to lie, if nothing is in their way. */
function laidOver(
  work: Work,
  parts: readonly FoldPart[],
  hinges: readonly Hinge[],
  { lands, inside = false }: How,
): Result<Omit<Work, 'done'>, ClothFault> {
  if (!parts.some((part) => part.moves)) {
    return fail({ code: 'misses', message: 'The fold line misses the cloth: nothing lies beyond it.' });
  }
  const overs = hinges.map(({ line }) => reflection(line));
  const { plies, low, high } = stacked(parts, overs, lands, inside);
  const lines = hinges
    .map((hinge) => hinge.line)
    .filter((line) => hasBeyond(plies, line) || parts.some((part) => !part.chosen));
  for (const line of lines.length === 0 ? [] : [...lines, ...linesRound(plies, low, high)]) {
    const bar = barred(plies, line);
    if (bar) return fail(bar);
  }
  const carried = carry(work, parts, hinges, overs);
  return carried.ok ? ok({ plies, ...carried.value }) : carried;
}

/** Whether something lies beyond a line. Where nothing does, a whole stack folds without getting in its own way. */
export const hasBeyond = (plies: readonly Ply[], line: Line): boolean =>
  plies.some(({ outline }) => !endsAt(outline, line));

type Stacked = { plies: Ply[]; low: number; high: number };

/** The stack after the fold; what moved lies at the levels from `low` up to `high`, that one left out. */
function stacked(
  parts: readonly FoldPart[],
  overs: readonly Transform[],
  lands: 'over' | 'under',
  inside: boolean,
): Stacked {
  const stay = parts.filter((part) => !part.moves);
  // What moves about one hinge stays together, that of the first next to the layers it came from.
  const turned = overs.flatMap((over, hinge) => {
    const about = parts.filter((part) => part.moves && part.hinge === hinge);
    const plies = about.map(({ ply }) => movedPly(ply, over));
    return lands === 'over' ? plies.reverse() : plies;
  });
  if (lands === 'under') turned.reverse();
  const plies = stay.map((part) => part.ply);
  const chosen = stay.flatMap((part, i) => (part.chosen ? [i] : []));
  const top = inside && chosen.length > 0 ? chosen.at(-1)! + 1 : plies.length;
  const bottom = inside && chosen.length > 0 ? chosen[0]! : 0;
  const low = lands === 'over' ? top : bottom;
  plies.splice(low, 0, ...turned);
  return { plies, low, high: low + turned.length };
}

/** Stitches and marks go with their plies. */
function carry(
  work: Work,
  parts: readonly FoldPart[],
  hinges: readonly Hinge[],
  overs: readonly Transform[],
): Result<Pick<Work, 'stitches' | 'marks'>, ClothFault> {
  if (work.stitches.length + work.marks.length === 0) return ok({ stitches: [], marks: [] });
  const parted = new Map<number, FoldPart[]>();
  for (const part of parts) {
    const known = parted.get(part.from.id);
    if (known) known.push(part);
    else parted.set(part.from.id, [part]);
  }
  /** The hinge that plies move about at a point; undefined where they stay. */
  const goes = (plies: readonly number[], at: Point): number | 'torn' | undefined => {
    const hinge = hinges.findIndex((one) => isBeyond(one, at));
    if (hinge < 0) return undefined;
    const going = plies.map((id) => parted.get(id)?.some((part) => part.moves && part.hinge === hinge) ?? false);
    if (!going.every((one) => one === going[0])) return 'torn';
    return going[0] ? hinge : undefined;
  };
  const now = (plies: readonly number[], at: Point, hinge?: number): readonly number[] => {
    // What is not cut keeps its number.
    if (plies.every((id) => parted.get(id)?.length === 1)) return plies;
    return plies.flatMap((id) => {
      const all = parted.get(id) ?? [];
      if (all.length === 1) return id;
      const here = all.filter((part) => (hinge === undefined ? !part.moves : part.moves && part.hinge === hinge));
      const part = nearest(here, at) ?? nearest(all, at);
      return part ? part.ply.id : [];
    });
  };

  const stitches = [];
  for (const stitch of work.stitches) {
    const runs: Run[] = [];
    for (const run of stitch.runs.flatMap((one) => cutRun(one, hinges))) {
      const middle = { x: (run.from.x + run.to.x) / 2, y: (run.from.y + run.to.y) / 2 };
      const hinge = goes(run.plies, middle);
      if (hinge === 'torn') {
        const message = `A row of ${stitch.kind} stitches holds the moving part to cloth that stays.`;
        return fail({ code: 'sewn-down', message });
      }
      const plies = now(run.plies, middle, hinge);
      if (hinge !== undefined) runs.push({ ...movedRun(run, overs[hinge]!), plies: plies.toReversed() });
      else runs.push(plies === run.plies ? run : { ...run, plies });
    }
    const whole = stitch.round?.ring.every(({ from }) => hinges.every(({ line }) => leftOf(line, from) >= -ON));
    const kept = { ...stitch, runs };
    stitches.push(whole ? kept : withoutRound(kept));
  }
  const marks: Mark[] = [];
  for (const mark of work.marks) {
    const hinge = goes(mark.plies, mark.at);
    if (hinge === 'torn' && mark.kind === 'hardware') {
      return fail({ code: 'sewn-down', message: `${mark.name} holds the moving part to cloth that stays.` });
    }
    marks.push(
      hinge === undefined || hinge === 'torn'
        ? { ...mark, plies: now(mark.plies, mark.at) }
        : { ...movedMark(mark, overs[hinge]!), plies: now(mark.plies, mark.at, hinge).toReversed() },
    );
  }
  return ok({ stitches, marks });
}

/** The part that lies at a point, or nearest to it: a row along a curve may lie a hair outside the chords of its ply. */
function nearest(parts: readonly FoldPart[], at: Point): FoldPart | undefined {
  if (parts.length < 2) return parts[0];
  const there = parts.find(({ ply }) => covers(ply.outline, at));
  if (there) return there;
  const off = parts.map(({ ply }) => awayFrom(ply.outline, at));
  return parts[off.indexOf(Math.min(...off))];
}

const isBeyond = ({ line, within }: Hinge, at: Point): boolean =>
  leftOf(line, at) < -ON && (within?.every((bound) => leftOf(bound, at) >= -ON) ?? true);

/** A run of stitches cut where it crosses a line to fold along, or a bound of what moves there. */
function cutRun(run: Run, hinges: readonly Hinge[]): Run[] {
  let runs = [run];
  for (const { line, within = [] } of hinges) {
    if (leftOf(line, run.from) >= -ON && leftOf(line, run.to) >= -ON) continue;
    for (const one of [line, ...within]) runs = runs.flatMap((part) => cutRunAt(part, one));
  }
  return runs;
}

/** The part of a run of stitches that lies on the left of a line. */
export const runLeftOf = (run: Run, line: Line): Run[] =>
  cutRunAt(run, line).filter(({ from, to }) => leftOf(line, between(from, to, 0.5)) >= 0);

/** A run of stitches in two where it crosses a line. */
export function cutRunAt(run: Run, line: Line): Run[] {
  const [a, b] = [leftOf(line, run.from), leftOf(line, run.to)];
  if (a * b >= 0 || Math.abs(a) <= ON || Math.abs(b) <= ON) return [run];
  const t = a / (a - b);
  const at = { x: run.from.x + (run.to.x - run.from.x) * t, y: run.from.y + (run.to.y - run.from.y) * t };
  return [
    { ...run, to: at },
    { ...run, from: at },
  ];
}
