import { across, heights, lanes, roomOf } from './dimension.ts';
import { alike, progress, stageOf, stillFlat } from './folding.ts';
import { seenFromFront } from './front-shapes.ts';
import { lengthWriter } from './lengths.ts';
import { LEAST, layOutSheet, roomBeside } from './sheet.ts';
import { surfaceOf, wrongSideOf } from './surface.ts';
import type { HoldCheck } from '../project/pattern.ts';
import type { PleatPlan, Pocket } from '../project/pleats.ts';
import type { Chain, Lane } from './dimension.ts';
import type { Pleated, Stage } from './folding.ts';
import type { Scene, ShapeRole } from './scene.ts';
import type { PieceSetting } from './surface.ts';

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
  const { set } = lengthWriter(setting);
  const stage = stageOf(plan, setting.folds, setting.held);
  const { made, watched, complete, pockets } = stage;
  const width = piece.size.width;
  const surface = surfaceOf(piece, setting.materials);
  const held = complete ? setting.held : undefined;

  const left = heights(stepsOf(plan, plan.folds.length, set));
  const labelled = lanes('depths', depthsOf(plan.pockets, set));
  const equal = alike(plan.pockets.map(({ depth }) => depth));
  // Depths that are all one are told in a sentence, and so are those that have no room beside the panel.
  const isInline = equal || roomBeside([left, labelled], setting) < LEAST;
  const depths = (pockets: readonly Pocket[]) => lanes('depths', depthsOf(pockets, isInline ? () => '' : set));
  const notes = watched ? progress(plan, made, set) : [];
  if (equal) notes.push(`Numbered: the pockets, each ${set(plan.pockets[0]!.depth)} deep.`);
  else if (!isInline) notes.push('Numbered: the pockets and their depths.');
  else notes.push(`Depths of the pockets: ${plan.pockets.map(({ n, depth }) => `${n} ${set(depth)}`).join(', ')}.`);
  return layOutSheet(
    {
      title: `${piece.label}, ${watched ? 'being folded' : 'folded'}`,
      lines: [watched ? 'Seen from the front.' : `Seen from the front: ${set(width)} × ${set(plan.panelHeight)}`],
      cloth: { x: 0, y: stage.bottom, width, height: stage.top - stage.bottom },
      left: [roomOf(left, heights(stepsOf(plan, made, set)))],
      right: [roomOf(depths(plan.pockets), depths(pockets))],
      below: [across({ name: 'width', marks: [0, width], labels: [set(width)] }, 0)],
      draw: (frame) => seenFromFront(piece, stage, held, surface, frame),
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
  const lines: ShapeRole[] = ['cut', 'valley', 'mountain', 'fold edge', 'hidden', 'break'];
  const always = [surface, wrongSideOf(surface), ...lines];
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

function describe(piece: Pleated, stage: Stage, held: HoldCheck | undefined, setting: PleatSetting): string[] {
  const plan = piece.pleats;
  const { say } = lengthWriter(setting);
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
