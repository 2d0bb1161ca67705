import { alongLine } from '../geometry/index.ts';
import { inverse, transformPoint } from '../geometry/transform.ts';
import { direction, distance } from '../geometry/point.ts';
import { ON, offsets } from './ring.ts';
import { SAME } from '../measure/index.ts';
import type { Line } from '../geometry/index.ts';
import type { Ply, PlyEdge, Work } from './work.ts';
import type { ThicknessOf } from './layers.ts';

/** Where a line comes to the edge of a ply. */
export type SectionEnd = {
  /** In mm along the line, from its own point. */
  readonly at: number;
  readonly edge: PlyEdge;
};

/** A stretch of the line on which a ply lies. */
export type SectionLayer = {
  readonly ply: Ply;
  /** Its place in the whole stack, 0 for the lowest. */
  readonly level: number;
  readonly from: SectionEnd;
  readonly to: SectionEnd;
  /** In mm, with its gathers. */
  readonly thickness: number;
};

/** Where cloth turns from one layer into another, both by their place in `layers`. */
export type SectionTurn = {
  readonly at: number;
  readonly lower: number;
  readonly upper: number;
  /** The way the cloth turns at the fold: it ends there, it begins there, or it goes on straight across a crease. */
  readonly turns: 'ends' | 'begins' | 'goes on';
};

/** A stretch of the line where the same layers lie on each other. Heights in mm above the table. */
export type SectionColumn = {
  readonly from: number;
  readonly to: number;
  readonly layers: readonly { readonly layer: number; readonly bottom: number; readonly top: number }[];
  readonly thickness: number;
};

export type Section = {
  readonly line: Line;
  /** By level from the lowest, then along the line. */
  readonly layers: readonly SectionLayer[];
  readonly turns: readonly SectionTurn[];
  /** Along the line, without the stretches where nothing lies. */
  readonly columns: readonly SectionColumn[];
};

/**
 * The work cut through along a line and seen from the side: which ply lies where, on what, and where cloth turns from
 * one layer into another. Layers lie close, each on what is below it in its column. Along an edge, the line reads the
 * cloth just right of it.
 *
 * @param thicknessOf thickness of one layer of a material in mm
 * @example
 * section(folded, { at: { x: 50, y: 0 }, angle: 90 }, () => 0.3).columns.map((one) => one.layers.length) // => [2, 1]
 */
export function section(work: Work, line: Line, thicknessOf: ThicknessOf): Section {
  const layers = work.plies.flatMap((ply, level): SectionLayer[] => {
    const thickness = thicknessOf(ply.material) * ply.fullness;
    return stretchesOf(ply, line).map(([from, to]) => ({ ply, level, from, to, thickness }));
  });
  return { line, layers, turns: turnsOf(layers, line), columns: columnsOf(layers) };
}

function stretchesOf({ outline }: Ply, line: Line): [SectionEnd, SectionEnd][] {
  const off = offsets(outline, line);
  const right = off.map((o) => o < -ON);
  const ends: SectionEnd[] = [];
  for (let i = 0, n = outline.length; i < n; i++) {
    const k = (i + 1) % n;
    if (right[i] === right[k]) continue;
    const [a, b] = [alongLine(line, outline[i]!.from), alongLine(line, outline[k]!.from)];
    const [p, q] = [off[i]!, off[k]!];
    const t = Math.min(1, Math.max(0, p / (p - q)));
    ends.push({ at: a + (b - a) * t, edge: outline[i]! });
  }
  ends.sort((a, b) => a.at - b.at);
  const stretches: [SectionEnd, SectionEnd][] = [];
  for (let i = 0; i + 1 < ends.length; i += 2) {
    if (ends[i + 1]!.at - ends[i]!.at > ON) stretches.push([ends[i]!, ends[i + 1]!]);
  }
  return stretches;
}

/** The two sides of a fold are the same place of the piece. A fold that was folded again has several pairs of sides. */
function turnsOf(layers: readonly SectionLayer[], line: Line): SectionTurn[] {
  const way = direction(line.angle);
  const sides = layers.flatMap(({ ply, from, to }, layer) =>
    [from, to].flatMap(({ at, edge }, i) => {
      if (edge.fold === undefined) return [];
      const there = { x: line.at.x + way.x * at, y: line.at.y + way.y * at };
      return [
        {
          layer,
          at,
          fold: edge.fold,
          ends: i === 1,
          place: transformPoint(inverse(ply.transform), there),
          piece: ply.piece,
        },
      ];
    }),
  );
  const turns: SectionTurn[] = [];
  for (const [i, a] of sides.entries()) {
    const b = sides.find(
      (one, k) => k > i && one.fold === a.fold && one.piece === a.piece && distance(one.place, a.place) <= SAME,
    );
    if (!b) continue;
    const turn = a.ends === b.ends ? (a.ends ? 'ends' : 'begins') : 'goes on';
    turns.push({ at: a.at, lower: a.layer, upper: b.layer, turns: turn });
  }
  return turns;
}

function columnsOf(layers: readonly SectionLayer[]): SectionColumn[] {
  const cuts = layers.flatMap(({ from, to }) => [from.at, to.at]).sort((a, b) => a - b);
  const columns: SectionColumn[] = [];
  let from = cuts[0] ?? 0;
  for (const to of cuts) {
    if (to - from <= ON) continue;
    const middle = (from + to) / 2;
    let top = 0;
    const here = layers.flatMap((one, layer) => {
      if (one.from.at > middle || one.to.at < middle) return [];
      const bottom = top;
      top += one.thickness;
      return [{ layer, bottom, top }];
    });
    if (here.length > 0) columns.push({ from, to, layers: here, thickness: top });
    from = to;
  }
  return columns;
}
