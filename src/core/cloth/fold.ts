import { barred, holdsBack, linesRound } from './held.ts';
import { carve } from './carve.ts';
import { covers, ON, offsets, split } from './ring.ts';
import { fail, ok } from '../measure/index.ts';
import { lies, turnedOver } from './lie.ts';
import { movedMark, movedPly, movedRun } from './move.ts';
import { nextNumber, noted } from './work.ts';
import type { ClothFault } from './fault.ts';
import type { Lie } from './lie.ts';
import type { Line, Point } from '../geometry/index.ts';
import type { Mark, Ply, Run, Sewn, Undo, Work } from './work.ts';
import type { Result } from '../measure/index.ts';

/** How to fold. What lies left of the line, seen along its way, stays; what lies right of it moves. */
export type Fold = {
  readonly line: Line;
  /** Whether the moving part comes to lie over the work or under it. */
  readonly lands: 'over' | 'under';
  /** The plies that fold, by number; all of them if left out. */
  readonly plies?: ReadonlySet<number>;
  /** Lands next to the plies that fold, inside the stack, instead of over or under the whole work. */
  readonly inside?: boolean;
  /** What the new edges are called; `fold` if left out. */
  readonly name?: string;
  /** Only what also lies left of these lines moves; the cloth is clipped along them, as at an inner corner. */
  readonly within?: readonly Line[];
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
  const { line, lands, inside = false, name = 'fold' } = how;
  if (!Number.isFinite(line.at.x + line.at.y + line.angle)) {
    return fail({ code: 'not-finite', message: 'The fold line has a number that is none.' });
  }
  const parts = cutAtLine(work, how, name);
  if (!parts.some((part) => part.moves)) {
    return fail({ code: 'misses', message: 'The fold line misses the cloth: nothing lies beyond it.' });
  }
  const held = holdsBack(parts, line);
  if (held) return fail(held);

  const over = turnedOver(line);
  const { plies, low, high } = stacked(parts, over, lands, inside);
  // A whole stack folds without getting in its own way.
  for (const one of how.plies ? [line, ...linesRound(plies, low, high)] : []) {
    const bar = barred(plies, one);
    if (bar) return fail(bar);
  }

  const came: Undo['came'] = new Map(parts.map(({ ply, from, moves }) => [ply.id, { from: from.id, moved: moves }]));
  const carried = carry(work, parts, line, over);
  if (!carried.ok) return carried;
  const { stitches, marks } = carried.value;
  const undo: Undo = {
    before: { plies: work.plies, stitches: work.stitches, marks: work.marks },
    after: plies,
    over,
    came,
  };
  return ok(noted({ plies, stitches, marks, done: work.done }, { did: 'fold', undo }));
}

/** A ply, or a part of one, before it moves. */
export type Part = { readonly ply: Ply; readonly from: Ply; readonly moves: boolean; readonly chosen: boolean };

/** Every ply, those that fold cut at the line. A part keeps the number of its ply when it is the first to stay. */
function cutAtLine(work: Work, { line, plies, within = [] }: Fold, name: string): Part[] {
  let number = nextNumber(work);
  const parts = work.plies.flatMap((ply): Part[] => {
    if (plies && !plies.has(ply.id)) return [{ ply, from: ply, moves: false, chosen: false }];
    const fresh = { name, bulge: 0, fold: number };
    const { left, right } =
      within.length > 0 ? carve(ply.outline, line, within, fresh) : split(ply.outline, line, fresh);
    if (left.length === 0) return [{ ply, from: ply, moves: true, chosen: true }];
    if (right.length === 0) return [{ ply, from: ply, moves: false, chosen: true }];
    number++;
    const part = (outline: Ply['outline'], moves: boolean, keeps: boolean): Part => ({
      ply: { ...ply, outline, id: keeps ? ply.id : number++ },
      from: ply,
      moves,
      chosen: true,
    });
    return [
      ...left.map((outline, i) => part(outline, false, i === 0)),
      ...right.map((outline) => part(outline, true, false)),
    ];
  });
  return fusedTogether(parts);
}

/** Parts of interfacing stay fused to the parts of the cloth on their own side of the fold. */
function fusedTogether(parts: Part[]): Part[] {
  return parts.map((part) => {
    const { fusedTo } = part.from;
    if (fusedTo === undefined) return part;
    const to = parts.find((one) => one.from.id === fusedTo && one.moves === part.moves);
    return { ...part, ply: { ...part.ply, fusedTo: to?.ply.id ?? fusedTo } };
  });
}

type Stacked = { plies: Ply[]; low: number; high: number };

/** The stack after the fold; what moved lies at the levels from `low` up to `high`, that one left out. */
function stacked(parts: Part[], over: Lie, lands: 'over' | 'under', inside: boolean): Stacked {
  const stay = parts.filter((part) => !part.moves);
  const turned = parts
    .filter((part) => part.moves)
    .map(({ ply }) => movedPly(ply, over))
    .reverse();
  const plies = stay.map((part) => part.ply);
  const chosen = stay.flatMap((part, i) => (part.chosen ? [i] : []));
  const top = inside && chosen.length > 0 ? chosen.at(-1)! + 1 : plies.length;
  const bottom = inside && chosen.length > 0 ? chosen[0]! : 0;
  const low = lands === 'over' ? top : bottom;
  plies.splice(low, 0, ...turned);
  return { plies, low, high: low + turned.length };
}

/** Stitches and marks go with their plies. */
function carry(work: Work, parts: Part[], line: Line, over: Lie): Result<Pick<Work, 'stitches' | 'marks'>, ClothFault> {
  const parted = new Map<number, Part[]>();
  for (const part of parts) parted.set(part.from.id, [...(parted.get(part.from.id) ?? []), part]);
  const off = (point: Point) => offsets([{ name: '', bulge: 0, from: point }], line)[0]!;
  const moves = (plies: readonly number[], at: Point): boolean | 'torn' => {
    if (off(at) >= -ON) return false;
    const going = plies.map((id) => parted.get(id)?.some((part) => part.moves) ?? false);
    return going.every((goes) => goes === going[0]) ? (going[0] ?? false) : 'torn';
  };
  const now = (plies: readonly number[], at: Point, moved: boolean): number[] =>
    plies.flatMap((id) => {
      const all = parted.get(id) ?? [];
      const here = all.filter((part) => part.moves === moved);
      const part = here.find(({ ply }) => all.length === 1 || covers(ply.outline, at)) ?? here[0] ?? all[0];
      return part ? [part.ply.id] : [];
    });

  const stitches = [];
  for (const stitch of work.stitches) {
    const runs: Run[] = [];
    for (const run of stitch.runs.flatMap((one) => cutRun(one, off))) {
      const middle = { x: (run.from.x + run.to.x) / 2, y: (run.from.y + run.to.y) / 2 };
      const goes = moves(run.plies, middle);
      if (goes === 'torn') {
        const message = `A row of ${stitch.kind} stitches holds the moving part to cloth that stays.`;
        return fail({ code: 'sewn-down', message });
      }
      const turned = goes ? movedRun(run, over) : run;
      runs.push({ ...turned, plies: goes ? now(run.plies, middle, true).reverse() : now(run.plies, middle, false) });
    }
    const whole = stitch.round?.ring.every((edge) => off(edge.from) >= -ON);
    stitches.push({ ...stitch, runs, round: whole ? stitch.round : undefined });
  }
  const marks: Mark[] = work.marks.map((mark) => {
    const goes = moves(mark.plies, mark.at) === true;
    const plies = now(mark.plies, mark.at, goes);
    return goes ? { ...movedMark(mark, over), plies: plies.reverse() } : { ...mark, plies };
  });
  return ok({ stitches, marks });
}

/** A run of stitches cut where it crosses the fold line. */
function cutRun(run: Run, off: (point: Point) => number): Run[] {
  const [a, b] = [off(run.from), off(run.to)];
  if (a * b >= 0 || Math.abs(a) <= ON || Math.abs(b) <= ON) return [run];
  const t = a / (a - b);
  const at = { x: run.from.x + (run.to.x - run.from.x) * t, y: run.from.y + (run.to.y - run.from.y) * t };
  return [
    { ...run, to: at },
    { ...run, from: at },
  ];
}

/** Where a fold turns a point. */
export const foldedPoint = (point: Point, line: Line): Point => lies(turnedOver(line), point);
