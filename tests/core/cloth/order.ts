import type { Ply, PlyEdge, Work } from '../../../src/core/cloth/index.ts';
import type { Point } from '../../../src/core/geometry/index.ts';

/*
 * Whether a stack can lie so at all, told from where the plies are and not from how they got there. The conditions are
 * those of flat folding (J. Justin; taco-tortilla and taco-taco in later words): where cloth turns at a fold, nothing
 * between its two sides may go on beyond the fold, and two folds at one place are side by side or one in the other.
 */

type Turn = { at: Point; out: Point; low: number; high: number; open: boolean };

/** Two of the plies that pass through one another, or undefined. */
export function tangle(work: Work): string | undefined {
  const turns = turnsOf(work.plies);
  for (const turn of turns) {
    const there = step(turn.at, turn.out, 0.01);
    const here = step(turn.at, turn.out, -0.01);
    for (let level = turn.low + 1; level < turn.high; level++) {
      const ply = work.plies[level]!;
      if (inside(ply.outline, there) && inside(ply.outline, here)) {
        return `ply ${ply.id} passes through the fold between ${work.plies[turn.low]!.id} and ${work.plies[turn.high]!.id}`;
      }
    }
    if (turn.open) continue;
    for (const other of turns) {
      if (other === turn || other.open) continue;
      const same =
        Math.hypot(other.at.x - turn.at.x, other.at.y - turn.at.y) < 1e-6 && dot(other.out, turn.out) > 0.999;
      const within = (level: number) => level > turn.low && level < turn.high;
      if (same && within(other.low) !== within(other.high) && other.low !== turn.low && other.high !== turn.high) {
        return `the folds at ${turn.low}-${turn.high} and ${other.low}-${other.high} are caught in one another`;
      }
    }
  }
  return undefined;
}

type Side = { level: number; from: Point; to: Point; transform: Ply['transform'] };

/** Every place where cloth turns, looked at in the middle of each stretch on which the same folds lie. */
function turnsOf(plies: readonly Ply[]): Turn[] {
  const folds = new Map<number, Side[]>();
  for (const [level, { outline, transform }] of plies.entries()) {
    outline.forEach((edge: PlyEdge, i) => {
      if (edge.fold === undefined) return;
      const to = outline[(i + 1) % outline.length]!.from;
      folds.set(edge.fold, [...(folds.get(edge.fold) ?? []), { level, from: edge.from, to, transform }]);
    });
  }
  const sides = [...folds.values()].flat();
  const turns: Turn[] = [];
  for (const ends of folds.values()) {
    for (let i = 0; i < ends.length; i++) {
      for (let k = i + 1; k < ends.length; k++) turns.push(...turnsBetween(ends[i]!, ends[k]!, sides));
    }
  }
  return turns;
}

function turnsBetween(a: Side, b: Side, sides: readonly Side[]): Turn[] {
  const size = Math.hypot(a.to.x - a.from.x, a.to.y - a.from.y);
  if (size < 0.01) return [];
  const way = { x: (a.to.x - a.from.x) / size, y: (a.to.y - a.from.y) / size };
  const along = (p: Point) => dot(way, { x: p.x - a.from.x, y: p.y - a.from.y });
  const off = (p: Point) => Math.abs(way.x * (p.y - a.from.y) - way.y * (p.x - a.from.x));
  if (off(b.from) > 0.01 || off(b.to) > 0.01) return [];
  const [start, end] = [
    Math.max(0, Math.min(along(b.from), along(b.to))),
    Math.min(size, Math.max(along(b.from), along(b.to))),
  ];
  const stops = sides
    .filter((side) => off(side.from) < 0.01 && off(side.to) < 0.01)
    .flatMap((side) => [along(side.from), along(side.to)])
    .filter((t) => t > start && t < end);
  const cuts = [start, ...stops.sort((p, q) => p - q), end];
  const open = along(b.from) < along(b.to) !== true;
  return cuts.slice(1).flatMap((stop, i) => {
    if (stop - cuts[i]! < 0.02) return [];
    const t = (stop + cuts[i]!) / 2;
    const at = { x: a.from.x + way.x * t, y: a.from.y + way.y * t };
    // A fold that was folded again can lie on itself; only what is one place of the cloth is one turn.
    if (!samePlace(uncut(a.transform, at), uncut(b.transform, at))) return [];
    // Out of the cloth of the first side: to the right of its way.
    const out = { x: way.y, y: -way.x };
    return [{ at, out, low: Math.min(a.level, b.level), high: Math.max(a.level, b.level), open }];
  });
}

/** The point of the piece, as it was cut, that lies at a point now. */
function uncut({ a, b, c, d, e, f }: Ply['transform'], { x, y }: Point): Point {
  const size = a * d - b * c;
  return { x: (d * (x - e) - c * (y - f)) / size, y: (a * (y - f) - b * (x - e)) / size };
}

const samePlace = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) < 0.01;
const step = (p: Point, way: Point, by: number): Point => ({ x: p.x + way.x * by, y: p.y + way.y * by });
const dot = (a: Point, b: Point): number => a.x * b.x + a.y * b.y;

/** Whether a point lies inside a ring, by crossings of a line to the right. */
export function inside(ring: readonly { from: Point }[], { x, y }: Point): boolean {
  let within = false;
  ring.forEach(({ from: a }, i) => {
    const b = ring[(i + 1) % ring.length]!.from;
    if (a.y > y !== b.y > y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) within = !within;
  });
  return within;
}
