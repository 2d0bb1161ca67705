import { curves } from './path.ts';
import { thicknessIn } from './thickness.ts';
import { fitOf } from './sheet.ts';
import type { Point } from '../geometry/point.ts';
import type { PleatPlan } from '../project/pleats.ts';
import type { FlatLayer, Pleated, Stage } from './folding.ts';
import type { PleatSetting } from './front.ts';
import type { Command, Onto } from './path.ts';

export type SectionSetting = PleatSetting & {
  /** Thickness of one layer in mm; left out, the material's, or else that of a quilting cotton. */
  thickness?: number;
  /** How many times thicker than they are layers are drawn; left out, as much as it takes to tell them apart. */
  exaggeration?: number;
};

/** As thick as a layer is drawn where there is room, mm of the sheet. */
const THICK = 2.4;
/** The blanks between layers in shares of a drawn layer: inside a pocket's front, and where a pocket opens. */
const CLOSED = 0.45;
export const OPEN = 1.1;

/** Where the layers lie across the cut, in mm of cloth, and how thick they are drawn. */
export type Layers = {
  readonly thickness: number;
  readonly factor: number;
  /** Thickness as drawn. */
  readonly drawn: number;
  /** The middle of each run of the strip, from the front to the back. */
  readonly places: readonly number[];
  readonly width: number;
};

export function layersOf(piece: Pleated, stage: Stage, setting: SectionSetting): Layers {
  const plan = piece.pleats;
  const thickness = setting.thickness ?? thicknessIn(setting)(piece.material);
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
export function mostLayers(plan: PleatPlan): number {
  const heights = plan.runs.flatMap(({ from, to }) => [from, to]).sort((a, b) => a - b);
  return Math.max(...heights.slice(1).map((height, i) => plan.layersAt((height + heights[i]!) / 2)));
}

/** The turn at a fold: an ellipse about `x`, `y`, opening away from the fold, for the middle of the cloth. */
export type Turn = {
  readonly x: number;
  readonly y: number;
  readonly across: number;
  readonly high: number;
  readonly up: boolean;
};

export function turnsOf(plan: PleatPlan, count: number, { drawn, places }: Layers): Turn[] {
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
export function turnPath(turn: Turn, side: 1 | -1, { drawn }: Layers, back: boolean, onto: Onto): Command[] {
  const outer = (side === 1) === turn.up ? drawn / 2 : -drawn / 2;
  const [across, high] = [turn.across + outer, Math.max(0, turn.high + outer)];
  const about = (p: Point) => onto({ x: turn.x + across * p.x, y: turn.y + high * p.y });
  const sweep = turn.up ? -Math.PI : Math.PI;
  return back ? curves({ x: 0, y: 0 }, 1, 0, -sweep, about) : curves({ x: 0, y: 0 }, 1, Math.PI, sweep, about);
}

/** One face of the strip from its first edge to its end, or back: 1 is the right side, -1 the wrong side. */
export function face(
  side: 1 | -1,
  runs: readonly FlatLayer[],
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
