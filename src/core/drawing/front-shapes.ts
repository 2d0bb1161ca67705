import { pocketOf, rangeOf, uncovered } from './folding.ts';
import { breakLine } from './marks.ts';
import { box, polyline } from './path.ts';
import { wrongSideOf } from './surface.ts';
import type { HoldCheck } from '../project/pattern.ts';
import type { Pleated, HeightRange, Stage } from './folding.ts';
import type { Frame } from './frame.ts';
import type { Command, Path } from './path.ts';
import type { Shape, ShapeRole } from './scene.ts';

/** Something in a pocket: how many runs of the strip lie before it, what of it they leave to be seen, and its sides. */
type Inside = {
  readonly before: number;
  readonly seen: readonly HeightRange[];
  readonly left: number;
  readonly right: number;
};

/**
 * What is seen of a folded strip from the front, in painting order. Each run of the strip covers what lies behind it;
 * only what is left is drawn, so that motifs never lie over each other.
 */
export function seenFromFront(
  piece: Pleated,
  stage: Stage,
  held: HoldCheck | undefined,
  right: ShapeRole,
  frame: Frame,
): Shape[] {
  const { folds } = piece.pleats;
  const made = Math.floor(stage.made);
  const ranges = stage.runs.map(rangeOf);
  const seen = ranges.map((range, i) => uncovered(range, ranges.slice(0, i)));
  const inside = held && insideOf(piece, held, ranges, frame);

  const covered = (height: number, run: number): boolean =>
    ranges.slice(0, run).some(({ from, to }) => height > from + 1e-9 && height < to - 1e-9);
  const level = (height: number, from = frame.left, to = frame.right): Command[] =>
    polyline({ x: from, y: frame.y(height) }, { x: to, y: frame.y(height) });
  /** A line across a run; what lies in a pocket before it hides its middle. */
  const edge = (run: number, height: number): Command[] =>
    inside && run >= inside.before && inside.seen.some(({ from, to }) => height > from && height < to)
      ? [...level(height, frame.left, inside.left), ...level(height, inside.right, frame.right)]
      : level(height);

  const shapes: Shape[] = [];
  const add = (name: string, role: ShapeRole, path: Path, now = false) => {
    if (path.length > 0) shapes.push({ kind: 'path', name, role, path, ...(now && { now }) });
  };
  for (const face of ['right side', 'wrong side', 'trimmed'] as const) {
    const parts = seen.flatMap((parts, i) => (stage.runs[i]!.face === face ? parts : []));
    const blocks = parts.map(({ from, to }) =>
      box(frame.left, frame.y(to), frame.right - frame.left, (to - from) * frame.scale),
    );
    const role = face === 'right side' ? right : face === 'wrong side' ? wrongSideOf(right) : face;
    add(face, role, blocks.flat());
  }

  // The fold that was made last is drawn at the end, over all others.
  const last = stage.watched ? made - 1 : -1;
  const lines: Record<'hidden' | 'fold edge', Command[]> = { hidden: [], 'fold edge': [] };
  folds.slice(0, made).forEach(({ height }, i) => {
    if (i === last) return;
    if (covered(height, i)) lines.hidden.push(...edge(i + 1, height));
    else lines['fold edge'].push(...edge(i, height));
  });
  const next = stage.watched && stage.made === made ? folds[made] : undefined;
  if (next && !covered(next.height, made)) add('next fold', next.kind, level(next.height));
  add('pocket bottoms', 'hidden', lines.hidden);
  add('folded edges', 'fold edge', lines['fold edge']);

  const cuts = seen.flat().flatMap(({ from, to }) => sides(frame, from, to));
  cuts.push(...level(0));
  const breaks: Command[] = [];
  stage.runs.forEach(({ end, to }, i) => {
    if (end === 'fold' || covered(to, i)) return;
    if (end === 'raw') cuts.push(...edge(i, to));
    else breaks.push(...breakLine(frame.left, frame.right, frame.y(to)));
  });
  add('raw edges', 'cut', cuts);
  add('break', 'break', breaks);
  if (!stage.watched) add('stitch line', 'stitch', stitchLine(piece, frame));

  const top = inside?.seen.at(-1);
  if (inside && top) {
    const [low, high] = [frame.y(top.from), frame.y(top.to)];
    const [a, b] = [inside.left, inside.right];
    add('held', 'held', polyline({ x: a, y: low }, { x: a, y: high }, { x: b, y: high }, { x: b, y: low }));
  }
  const fold = folds[last];
  if (fold) add('fold now', covered(fold.height, last) ? 'hidden' : 'fold edge', level(fold.height), true);
  return shapes;
}

/** Something lies in a pocket behind the pocket's own front and before all that follows. */
function insideOf(piece: Pleated, held: HoldCheck, ranges: readonly HeightRange[], frame: Frame): Inside {
  const pocket = pocketOf(piece.pleats, held);
  const before = 2 * pocket.n;
  const stands = { from: pocket.bottom, to: pocket.bottom + held.size.height };
  // What is wider than the panel is cut short beside it, so that it stays clear of the dimensions.
  const spill = Math.min((held.size.width - piece.size.width) / 2, 1.6 / frame.scale);
  return {
    before,
    seen: uncovered(stands, ranges.slice(0, before)),
    left: frame.x(-spill),
    right: frame.x(piece.size.width + spill),
  };
}

const sides = (frame: Frame, from: number, to: number): Command[] =>
  [frame.left, frame.right].flatMap((x) => polyline({ x, y: frame.y(from) }, { x, y: frame.y(to) }));

/** The stitch line round the finished panel, inside its seam allowances. */
function stitchLine({ allowance, pleats, size }: Pleated, frame: Frame): Command[] {
  const { left = 0, right = 0, top = 0, bottom = 0 } = allowance;
  if (Math.max(left, right, top, bottom) <= 0) return [];
  const corner = frame.onto({ x: left, y: pleats.panelHeight - top });
  return box(
    corner.x,
    corner.y,
    (size.width - left - right) * frame.scale,
    (pleats.panelHeight - top - bottom) * frame.scale,
  );
}
