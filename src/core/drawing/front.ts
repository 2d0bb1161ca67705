import { across, heights, lanes, roomOf } from './dimension.ts';
import { alike, progress, rangeOf, stageOf, stillFlat, uncovered } from './folding.ts';
import { breakLine } from './marks.ts';
import { box, polyline } from './path.ts';
import { surfaceOf, writer } from './piece.ts';
import { LEAST, layOutSheet, roomBeside } from './sheet.ts';
import type { HoldCheck } from '../project/pattern.ts';
import type { PleatPlan, Pocket } from '../project/pleats.ts';
import type { Chain, Lane } from './dimension.ts';
import type { Pleated, Range, Stage } from './folding.ts';
import type { Frame } from './frame.ts';
import type { Command, Path } from './path.ts';
import type { PieceSetting } from './piece.ts';
import type { ShapeRole, Scene, Shape } from './scene.ts';

export type PleatSetting = PieceSetting & {
  /** How many folds are made, to watch the folding; left out, the finished panel. A part of a fold is one being made. */
  folds?: number;
  /** Something to show in its pocket. */
  held?: HoldCheck;
};

/**
 * A pleated piece seen from the front, at true heights: the finished panel with its pockets, or the strip with its
 * first folds made.
 */
export function drawPleatedFront(piece: Pleated, setting: PleatSetting): Scene {
  const plan = piece.pleats;
  const { set } = writer(setting);
  const stage = stageOf(plan, setting.folds);
  const { made, watched, complete, pockets } = stage;
  const width = piece.size.width;
  const surface = surfaceOf(piece, setting.materials);
  const held = complete ? setting.held : undefined;

  const left = heights(stepsOf(plan, plan.folds.length, set));
  const labelled = lanes('depths', depthsOf(plan.pockets, set));
  const equal = alike(plan.pockets.map(({ depth }) => depth));
  // Depths that are all one are told in a sentence, and so are those that have no room beside the panel.
  const told = equal || roomBeside([left, labelled], setting) < LEAST;
  const depths = (pockets: readonly Pocket[]) => lanes('depths', depthsOf(pockets, told ? () => '' : set));
  const notes = watched ? progress(plan, made, set) : [];
  if (equal) notes.push(`Numbered: the pockets, each ${set(plan.pockets[0]!.depth)} deep.`);
  else if (!told) notes.push('Numbered: the pockets and their depths.');
  else
    notes.push(
      `Numbered: the pockets. Depths: ${plan.pockets.map(({ n, depth }) => `${n} ${set(depth)}`).join(', ')}.`,
    );
  return layOutSheet(
    {
      title: `${piece.label}, ${watched ? 'being folded' : 'folded'}`,
      lines: [watched ? 'Seen from the front.' : `Seen from the front: ${set(width)} × ${set(plan.panelHeight)}`],
      cloth: { x: 0, y: stage.bottom, width, height: stage.top - stage.bottom },
      left: [roomOf(left, heights(stepsOf(plan, made, set)))],
      right: [roomOf(depths(plan.pockets), depths(pockets))],
      below: [across({ name: 'width', marks: [0, width], labels: [set(width)] }, 0)],
      draw: (frame) => draw(piece, stage, held, surface, frame),
      ...(watched && {
        now: { role: 'fold edge', words: 'fold made last' },
        legend: seenFolding(plan, surface, setting),
      }),
      notes,
      words: setting.held ? { held: setting.held.thing } : {},
      text: describe(piece, stage, held, setting),
    },
    setting,
  );
}

/** What can be seen at one time or another while a strip is folded. */
function seenFolding({ trim }: PleatPlan, surface: ShapeRole, { held }: PleatSetting): ShapeRole[] {
  const always: ShapeRole[] = ['wrong side', 'cut', 'valley', 'mountain', 'fold edge', 'hidden', 'break', surface];
  return [...always, ...(trim > 0 ? (['trimmed'] as const) : []), ...(held ? (['held'] as const) : [])];
}

/** The chain of what shows: from the raw edge over each pocket's top to the panel's, as far as it is folded. */
function stepsOf(plan: PleatPlan, made: number, set: (mm: number) => string): Chain {
  const tops = plan.pockets.filter(({ n }) => made >= 2 * n - 1);
  const marks = [0, ...tops.slice(0, 1).map(({ top, reveal }) => top - reveal), ...tops.map(({ top }) => top)];
  if (made === plan.folds.length) marks.push(plan.panelHeight);
  const labels = marks.slice(1).map((mark, i) => (mark - marks[i]! < 1e-6 ? '' : set(mark - marks[i]!)));
  return { name: 'step', marks, labels };
}

/** The pockets from top to bottom, each with its depth. */
const depthsOf = (pockets: readonly Pocket[], set: (mm: number) => string): Lane[] =>
  pockets.map(({ n, top, bottom, depth }) => ({
    name: `pocket ${n}`,
    number: String(n),
    label: set(depth),
    from: bottom,
    to: top,
  }));

function draw(piece: Pleated, stage: Stage, held: HoldCheck | undefined, right: ShapeRole, frame: Frame): Shape[] {
  const plan = piece.pleats;
  const ranges = stage.runs.map(rangeOf);
  const seen = ranges.map((range, i) => uncovered(range, ranges.slice(0, i)));
  const shapes: Shape[] = [];
  const add = (name: string, role: ShapeRole, path: Path, now = false) => {
    if (path.length > 0) shapes.push({ kind: 'path', name, role, path, ...(now && { now }) });
  };
  const block = ({ from, to }: Range): Command[] =>
    box(frame.left, frame.y(to), frame.right - frame.left, (to - from) * frame.scale);
  const level = (height: number, [from, to] = [frame.left, frame.right]): Command[] =>
    polyline({ x: from, y: frame.y(height) }, { x: to, y: frame.y(height) });

  for (const face of ['right side', 'wrong side', 'trimmed'] as const) {
    const parts = seen.flatMap((parts, i) => (stage.runs[i]!.face === face ? parts : []));
    add(face, face === 'right side' ? right : face, parts.flatMap(block));
  }

  // Something in a pocket lies behind the pocket's own front and before all that follows.
  const pocket = held && (plan.pockets[(held.pocket ?? plan.pockets.length) - 1] ?? plan.pockets.at(-1));
  const behind = pocket ? 2 * pocket.n : Infinity;
  const stands =
    held && pocket
      ? uncovered({ from: pocket.bottom, to: pocket.bottom + held.size.height }, ranges.slice(0, behind))
      : [];
  const sides = held && [
    frame.x((piece.size.width - held.size.width) / 2),
    frame.x((piece.size.width + held.size.width) / 2),
  ];
  const besides = (run: number, height: number): Command[] => {
    const hidden = run >= behind && stands.some(({ from, to }) => height > from && height < to);
    return hidden && sides
      ? [...level(height, [frame.left, sides[0]!]), ...level(height, [sides[1]!, frame.right])]
      : level(height);
  };

  const made = Math.floor(stage.made);
  const isCovered = (height: number, run: number) =>
    ranges.slice(0, run).some(({ from, to }) => height > from + 1e-9 && height < to - 1e-9);
  const edges: Command[] = [];
  const hiddenEdges: Command[] = [];
  plan.folds.slice(0, made).forEach(({ height }, i) => {
    if (stage.watched && i === made - 1) return;
    if (isCovered(height, i)) hiddenEdges.push(...besides(i + 1, height));
    else edges.push(...besides(i, height));
  });
  const cuts: Command[] = seen.flatMap((parts) =>
    parts.flatMap(({ from, to }) =>
      [frame.left, frame.right].flatMap((x) => polyline({ x, y: frame.y(from) }, { x, y: frame.y(to) })),
    ),
  );
  cuts.push(...level(0));
  const breaks: Command[] = [];
  stage.runs.forEach((run, i) => {
    if (run.end === 'fold' || isCovered(run.to, i)) return;
    if (run.end === 'raw') cuts.push(...besides(i, run.to));
    else breaks.push(...breakLine(frame.left, frame.right, frame.y(run.to)));
  });

  const next = stage.watched ? plan.folds[made] : undefined;
  if (next && stage.made === made && !isCovered(next.height, made)) add('next fold', next.kind, level(next.height));
  add('pocket bottoms', 'hidden', hiddenEdges);
  add('folded edges', 'fold edge', edges);
  add('raw edges', 'cut', cuts);
  add('break', 'break', breaks);
  if (!stage.watched) add('stitch line', 'stitch', stitchLine(piece, frame));
  const [a, b] = sides ?? [];
  const last = stands.at(-1);
  if (a !== undefined && b !== undefined && last) {
    const [low, high] = [frame.y(last.from), frame.y(last.to)];
    add('held', 'held', polyline({ x: a, y: low }, { x: a, y: high }, { x: b, y: high }, { x: b, y: low }));
  }
  const latest = stage.watched ? plan.folds[made - 1] : undefined;
  if (latest) add('fold now', isCovered(latest.height, made - 1) ? 'hidden' : 'fold edge', level(latest.height), true);
  return shapes;
}

/** The stitch line round the finished panel, inside its seam allowances. */
function stitchLine(piece: Pleated, frame: Frame): Command[] {
  const { left = 0, right = 0, top = 0, bottom = 0 } = piece.allowance;
  if (Math.max(left, right, top, bottom) <= 0) return [];
  const { scale } = frame;
  const [width, height] = [frame.right - frame.left, frame.bottom - frame.top];
  return box(
    frame.left + left * scale,
    frame.top + top * scale,
    width - (left + right) * scale,
    height - (top + bottom) * scale,
  );
}

function describe(piece: Pleated, stage: Stage, held: HoldCheck | undefined, setting: PleatSetting): string[] {
  const plan = piece.pleats;
  const { say } = writer(setting);
  const text: string[] = [];
  const made = Math.floor(stage.made);
  if (stage.watched) {
    text.push(`${piece.label}, ${say(piece.size.width)} wide, seen from the front while it is folded.`);
    text.push(`Folds made: ${made} of ${plan.folds.length}.`);
    const fold = plan.folds[made - 1];
    if (fold) text.push(`The last is fold ${made}, a ${fold.kind} fold ${say(fold.height)} above the bottom edge.`);
  } else {
    const size = `${say(piece.size.width)} wide and ${say(plan.panelHeight)} high`;
    text.push(`${piece.label}, folded and trimmed, seen from the front: ${size}, seam allowances included.`);
  }
  if (made < plan.folds.length) {
    const way = made % 2 === 0 ? 'goes up, right side in front' : 'hangs down behind, wrong side in front';
    text.push(`The rest of the strip, ${say(stillFlat(plan, made))}, ${way}.`);
  } else if (stage.watched && plan.trim > 0) {
    text.push(`At the top ${say(plan.trim)} are trimmed off.`);
  }
  const first = plan.pockets[0]!;
  if (made > 0 && first.top - first.reveal > 1e-6) {
    text.push(`The seam allowance at the bottom is ${say(first.top - first.reveal)}.`);
  }
  for (const { n, top, depth, reveal } of plan.pockets.filter(({ n }) => made >= 2 * n - 1)) {
    text.push(
      `Pocket ${n}: its top is ${say(top)} above the bottom edge; it is ${say(depth)} deep and shows ${say(reveal)}.`,
    );
  }
  const head = plan.panelHeight - plan.pockets.at(-1)!.top;
  if (stage.complete && head > 1e-6) text.push(`Above the last pocket: ${say(head)}.`);
  if (held) text.push(held.sentence);
  return text;
}
