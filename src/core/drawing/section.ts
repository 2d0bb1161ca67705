import { heights, roomOf, tags } from './dimension.ts';
import { pocketOf, progress, stageOf, stillFlat } from './folding.ts';
import { face, layersOf, mostLayers, OPEN, turnPath, turnsOf } from './layers.ts';
import { lengthWriter } from './lengths.ts';
import { breakLine } from './marks.ts';
import { thin } from './thickness.ts';
import { box, polyline } from './path.ts';
import { layOutSheet } from './sheet.ts';
import type { HoldCheck } from '../project/pattern.ts';
import type { PleatPlan, Pocket } from '../project/pleats.ts';
import type { Pleated, Stage } from './folding.ts';
import type { Frame } from './frame.ts';
import type { Layers, SectionSetting } from './layers.ts';
import type { Command, Path } from './path.ts';
import type { ShapeRole, Scene, Shape } from './scene.ts';

/**
 * A cut through a pleated piece, seen from its side with the front on the left. Heights are to scale; layers are drawn
 * thicker than they are, and the drawing says by how much.
 */
export function drawPleatSection(piece: Pleated, setting: SectionSetting): Scene {
  const plan = piece.pleats;
  const { set } = lengthWriter(setting);
  // A fold being made is drawn when it is made: half turned, the strip would need all the room there is.
  const stage = stageOf(plan, setting.folds === undefined ? undefined : Math.floor(setting.folds), setting.held);
  const { made, watched, complete } = stage;
  const held = complete ? setting.held : undefined;
  const layers = layersOf(piece, stage, setting);

  const notes = [`Thickness × ${layers.factor}: one layer is ${thin(layers.thickness)}.`];
  if (watched) notes.push(...progress(plan, made, set));
  const most = mostLayers(plan);
  notes.push(`At most ${most} layers: ${thin(most * layers.thickness)}, pressed flat.`);
  const tops = plan.pockets.filter(({ n }) => made >= 2 * n - 1);
  const labels = (pockets: readonly Pocket[]) =>
    pockets.map(({ n, top }) => ({ name: `pocket ${n}`, at: top, number: String(n), label: set(top) }));
  const height = { name: 'height', marks: [0, plan.panelHeight], labels: [set(plan.panelHeight)] };
  return layOutSheet(
    {
      title: `${piece.label}, cut through`,
      lines: ['Seen from the side, the front on the left.'],
      cloth: { x: 0, y: stage.bottom, width: layers.width, height: stage.top - stage.bottom },
      left: [roomOf(tags('pockets', labels(plan.pockets)), tags('pockets', labels(tops)))],
      right: [roomOf(heights(height), heights(complete ? height : { ...height, labels: [] }))],
      draw: (frame) => draw(plan, stage, held, layers, frame),
      ...(watched && {
        now: { role: 'face', words: 'fold made last' },
        legend: setting.held ? (['break', 'held'] as const) : (['break'] as const),
      }),
      notes,
      words: setting.held ? { held: setting.held.thing } : {},
      text: describe(piece, stage, held, layers, setting),
    },
    setting,
  );
}

/** The commands of a line that begins with a move. */
const begun = ([first, ...rest]: readonly Command[]): Command[] =>
  first && first[0] === 'L' ? [['M', first[1], first[2]], ...rest] : [];

function draw(plan: PleatPlan, stage: Stage, held: HoldCheck | undefined, layers: Layers, frame: Frame): Shape[] {
  const shapes: Shape[] = [];
  const add = (name: string, role: ShapeRole, path: Path, now = false) => {
    if (path.length > 0) shapes.push({ kind: 'path', name, role, path, ...(now && { now }) });
  };
  const { made } = stage;
  // What will be trimmed is drawn as the end of the last run, with the line to trim along.
  const trimmed = stage.runs.find((run) => run.face === 'trimmed');
  const runs = stage.runs
    .filter((run) => run !== trimmed)
    .map((run, i, all) => (trimmed && i === all.length - 1 ? { ...run, to: trimmed.to } : run));
  const turns = turnsOf(plan, made, layers);
  const onto = frame.onto;

  const pointers = turns.flatMap((turn, i) =>
    turn.up
      ? polyline(
          { x: frame.left - 0.4, y: frame.y(plan.folds[i]!.height) },
          { x: frame.x(turn.x), y: frame.y(plan.folds[i]!.height) },
        )
      : [],
  );
  add('pointers', 'leader', pointers);
  const right = face(1, runs, turns, layers, false, onto);
  add('cloth', 'layer', [...begun(right), ...face(-1, runs, turns, layers, true, onto), ['Z']]);
  add('face', 'face', begun(right));

  const last = runs.at(-1)!;
  const x = layers.places[runs.length - 1]!;
  if (last.end === 'on') {
    const half = (layers.drawn / 2) * frame.scale;
    add('break', 'break', breakLine(frame.x(x) - half - 0.6, frame.x(x) + half + 0.6, frame.y(last.to)));
  }
  if (trimmed) {
    const y = frame.y(trimmed.from);
    add('trim line', 'cut', polyline({ x: frame.x(x - layers.drawn) - 1, y }, { x: frame.x(x + layers.drawn) + 1, y }));
  }
  if (held) {
    const { n, bottom } = pocketOf(plan, held);
    const middle = frame.x((layers.places[2 * n - 1]! + layers.places[2 * n]!) / 2);
    const thick = Math.min(1, OPEN * layers.drawn * frame.scale * 0.5);
    // It stands on the turn of the cloth; its top is where it belongs.
    const top = frame.y(bottom + held.size.height);
    const low = Math.max(top, frame.y(bottom + layers.drawn));
    add('held', 'held', box(middle - thick / 2, top, thick, low - top));
  }
  const turn = stage.watched ? turns[made - 1] : undefined;
  if (turn) {
    const at = onto({ x: turn.x - turn.across - ((turn.up ? 1 : -1) * layers.drawn) / 2, y: turn.y });
    add('fold now', 'face', [['M', at.x, at.y], ...turnPath(turn, 1, layers, false, onto)], true);
  }
  return shapes;
}

function describe(
  piece: Pleated,
  stage: Stage,
  held: HoldCheck | undefined,
  layers: Layers,
  setting: SectionSetting,
): string[] {
  const plan = piece.pleats;
  const { say } = lengthWriter(setting);
  const { made } = stage;
  const text = [`${piece.label}, cut through and seen from the side, with the front on the left.`];
  const { factor, thickness } = layers;
  const times = factor === 1 ? 'as thick as they are' : `${factor} times as thick as they are`;
  text.push(`Layers are drawn ${times}: one layer is ${thin(thickness, ' millimetres')}.`);
  if (stage.watched) text.push(`Folds made: ${made} of ${plan.folds.length}.`);
  if (!stage.complete) text.push(`Still flat: ${say(stillFlat(plan, made))} of the strip.`);
  for (const { n, top, bottom } of plan.pockets) {
    if (made >= 2 * n) text.push(`Pocket ${n} reaches from ${say(bottom)} to ${say(top)} above the bottom edge.`);
    else if (made === 2 * n - 1) text.push(`The top of pocket ${n} is ${say(top)} above the bottom edge.`);
  }
  if (made === plan.folds.length) {
    const most = mostLayers(plan);
    text.push(`The panel is ${say(plan.panelHeight)} high.`);
    text.push(
      `At its thickest ${most} layers lie on each other: pressed flat, ${thin(most * layers.thickness, ' millimetres')}.`,
    );
  }
  if (held) text.push(held.sentence);
  return text;
}
