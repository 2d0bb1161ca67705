import { THIN } from '../measure/index.ts';
import { heights, roomOf, tags } from './dimension.ts';
import { progress, stageOf, stillFlat } from './folding.ts';
import { breakLine } from './marks.ts';
import { box, curves, polyline } from './path.ts';
import { writer } from './piece.ts';
import { fitOf, layOutSheet } from './sheet.ts';
import type { Point } from '../geometry/point.ts';
import type { HoldCheck } from '../project/pattern.ts';
import type { PleatPlan, Pocket } from '../project/pleats.ts';
import type { Lying, Pleated, Stage } from './folding.ts';
import type { Frame } from './frame.ts';
import type { PleatSetting } from './front.ts';
import type { Command, Onto, Path } from './path.ts';
import type { ShapeRole, Scene, Shape } from './scene.ts';

export type SectionSetting = PleatSetting & {
  /** Thickness of one layer in mm; left out, the material's, or else that of a quilting cotton. */
  thickness?: number;
  /** How many times thicker than they are layers are drawn; left out, as much as it takes to tell them apart. */
  exaggeration?: number;
};

/** A woven quilting cotton, about (from memory). */
const COTTON = 0.3;
/** As thick as a layer is drawn where there is room, mm of the sheet. */
const THICK = 2.4;
/** The blanks between layers in shares of a drawn layer: inside a pocket's front, and where a pocket opens. */
const CLOSED = 0.45;
const OPEN = 1.1;

/**
 * A cut through a pleated piece, seen from its side with the front on the left. Heights are to scale; layers are drawn
 * thicker than they are, and the drawing says by how much.
 */
export function drawPleatSection(piece: Pleated, setting: SectionSetting): Scene {
  const plan = piece.pleats;
  const { set } = writer(setting);
  // A fold being made is drawn when it is made: half turned, the strip would need all the room there is.
  const stage = stageOf(plan, setting.folds === undefined ? undefined : Math.floor(setting.folds));
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

/** Thickness is told in hundredths of a millimetre in every edition: no ruler has marks so fine. */
const thin = (mm: number, unit = `${THIN}mm`): string => `${Math.round(mm * 100) / 100}${unit}`;

/** Where the layers lie across the cut, in mm of cloth, and how thick they are drawn. */
type Layers = {
  readonly thickness: number;
  readonly factor: number;
  /** Thickness as drawn. */
  readonly drawn: number;
  /** The middle of each run of the strip, from the front to the back. */
  readonly places: readonly number[];
  readonly width: number;
};

function layersOf(piece: Pleated, stage: Stage, setting: SectionSetting): Layers {
  const plan = piece.pleats;
  const thickness = setting.thickness ?? setting.materials?.[piece.material]?.material?.thickness ?? COTTON;
  const fit = fitOf(setting);
  // What the labels at both sides leave, and the scale that the height allows.
  const room = Math.max(20, Math.min(fit.width - 42, 90));
  const scale = fit.height / (stage.top - stage.bottom);
  const count = plan.runs.length;
  const thick = Math.min(THICK, room / (count + (count - 1) * ((CLOSED + OPEN) / 2)));
  // A turn must fit into the shallowest pocket.
  const shallowest = Math.min(...plan.pockets.map(({ depth }) => depth));
  const most = Math.min(thick / scale, shallowest / 4) / thickness;
  const factor = setting.exaggeration ?? Math.max(1, Math.floor(most));
  const drawn = thickness * factor;
  const places = [drawn / 2];
  for (let i = 1; i < count; i++) places.push(places[i - 1]! + drawn * (1 + (i % 2 === 1 ? CLOSED : OPEN)));
  return { thickness, factor, drawn, places, width: places.at(-1)! + drawn / 2 };
}

/** The most layers that lie on each other anywhere. */
function mostLayers(plan: PleatPlan): number {
  const heights = plan.runs.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  return Math.max(...heights.slice(1).map((height, i) => plan.layersAt((height + heights[i]!) / 2)));
}

/** The turn at a fold: an ellipse about `x`, `y`, opening away from the fold, for the middle of the cloth. */
type Turn = {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly high: number;
  readonly up: boolean;
};

function turnsOf(plan: PleatPlan, count: number, { drawn, places }: Layers): Turn[] {
  return plan.folds.slice(0, count).map(({ height, kind, pocket }, i) => {
    const across = (places[i + 1]! - places[i]!) / 2;
    const { depth } = plan.pockets[pocket - 1]!;
    const high = Math.max(0.1 * drawn, Math.min(across, 0.45 * depth - drawn / 2));
    const up = kind === 'mountain';
    // The outer face of the turn touches the height of the fold.
    const y = up ? height - high - drawn / 2 : height + high + drawn / 2;
    return { x: (places[i]! + places[i + 1]!) / 2, y, across, high, up };
  });
}

/** Half of the ellipse that the face `side` of the cloth makes at a turn, from the run before it to the run after. */
function turnPath(turn: Turn, side: 1 | -1, { drawn }: Layers, back: boolean, onto: Onto): Command[] {
  const outer = (side === 1) === turn.up ? drawn / 2 : -drawn / 2;
  const [across, high] = [turn.across + outer, Math.max(0, turn.high + outer)];
  const about = (p: Point) => onto({ x: turn.x + across * p.x, y: turn.y + high * p.y });
  const sweep = turn.up ? -Math.PI : Math.PI;
  return back ? curves({ x: 0, y: 0 }, 1, 0, -sweep, about) : curves({ x: 0, y: 0 }, 1, Math.PI, sweep, about);
}

/** One face of the strip from its first edge to its end, or back: 1 is the right side, -1 the wrong side. */
function face(
  side: 1 | -1,
  runs: readonly Lying[],
  turns: readonly Turn[],
  layers: Layers,
  back: boolean,
  onto: Onto,
): Command[] {
  const order = runs.map((_, i) => (back ? runs.length - 1 - i : i));
  return order.flatMap((i): Command[] => {
    const x = layers.places[i]! + ((i % 2 === 0 ? -1 : 1) * side * layers.drawn) / 2;
    const start = onto({ x, y: turns[i - 1]?.y ?? runs[i]!.from });
    const end = onto({ x, y: turns[i]?.y ?? runs[i]!.to });
    const [a, b] = back ? [end, start] : [start, end];
    const turn = turns[back ? i - 1 : i];
    return [['L', a.x, a.y], ['L', b.x, b.y], ...(turn ? turnPath(turn, side, layers, back, onto) : [])];
  });
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
  const pocket = held && (plan.pockets[(held.pocket ?? plan.pockets.length) - 1] ?? plan.pockets.at(-1));
  if (held && pocket) {
    const middle = frame.x((layers.places[2 * pocket.n - 1]! + layers.places[2 * pocket.n]!) / 2);
    const thick = Math.min(1, OPEN * layers.drawn * frame.scale * 0.5);
    const [top, low] = [frame.y(pocket.bottom + held.size.height), frame.y(pocket.bottom + layers.drawn)];
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
  setting: PleatSetting,
): string[] {
  const plan = piece.pleats;
  const { say } = writer(setting);
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
