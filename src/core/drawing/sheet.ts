import { LINE, TYPE, lettering, settle } from './dimension.ts';
import { frameOf } from './frame.ts';
import { legendOf } from './legend.ts';
import { ABOVE, wrap } from './lettering.ts';
import { scaleBar } from './scale-bar.ts';
import { NARROWEST } from './scene.ts';
import type { Box } from '../geometry/readings.ts';
import type { Edition, Grid } from '../measure/index.ts';
import type { DimensionColumn, DimensionLine } from './dimension.ts';
import type { Frame } from './frame.ts';
import type { LegendWords } from './legend.ts';
import type { Fit, Scene, Shape, TextShape } from './scene.ts';

/** The edition that measures are written in, its grid, and the room there is. */
export type DrawingSetting = { edition: Edition; grid?: Grid; fit?: Fit };

/** What a sheet shows, before it is laid out: something to scale in the middle, and what stands round it. */
export type SheetContent = LegendWords & {
  readonly title: string;
  /** Under the title. */
  readonly lines?: readonly string[];
  /** The box of what is drawn to scale, in mm of cloth. */
  readonly cloth: Box;
  /** Columns of labels, from the cloth outward. */
  readonly left?: readonly DimensionColumn[];
  readonly right?: readonly DimensionColumn[];
  /** Rows of dimensions, from the cloth outward. */
  readonly above?: readonly DimensionLine[];
  readonly below?: readonly DimensionLine[];
  draw: (frame: Frame) => Shape[];
  /** Whether its lines and surfaces are explained somewhere else. */
  readonly explained?: boolean;
  /** Sentences under the drawing. */
  readonly notes?: readonly string[];
  readonly text: readonly string[];
};

const TITLE = 4;
/** Between the parts of a sheet. */
const BREATH = 2;
/** Lines at the sheet's rim must not be cut in half. */
const RIM = 0.6;
/** A sheet is never laid out narrower than this, whatever room is said to be there. */
const LEAST_ROOM = 60;
/** However narrow the room, what is drawn keeps this width. */
export const LEAST = 10;

/**
 * The room that a setting gives, or the narrowest there is. Without a height, what is drawn to scale stays low enough
 * to be seen at one glance.
 */
export function fitOf({ fit = { width: NARROWEST } }: DrawingSetting): Required<Fit> {
  const width = Math.max(LEAST_ROOM, fit.width);
  return { width, height: fit.height ?? Math.min(1.35 * width, 140) };
}

/** How wide what is drawn to scale may become beside columns of labels, in mm; less than `LEAST` is too little. */
export const roomBeside = (columns: readonly DimensionColumn[], setting: DrawingSetting): number =>
  columns.reduce((rest, column) => rest - column.width, fitOf(setting).width - 2 * RIM);

/**
 * Lays out a sheet: the title, what is drawn to scale as large as the room allows between its dimensions, notes,
 * legend and scale bar.
 */
export function layOutSheet(content: SheetContent, setting: DrawingSetting): Scene {
  const { width, height: tallest } = fitOf(setting);
  const { cloth, left = [], right = [], above = [], below = [] } = content;
  const across = (columns: readonly DimensionColumn[]) => columns.reduce((sum, column) => sum + column.width, RIM);
  const [leftWidth, rightWidth] = [across(left), across(right)];
  const scale = Math.min(
    Math.max(LEAST, width - leftWidth - rightWidth) / Math.max(cloth.width, 1e-9),
    tallest / Math.max(cloth.height, 1e-9),
  );

  const shapes: Shape[] = [];
  let y = header(content, width, shapes);

  // The labels beside the cloth may need more height than the cloth itself.
  const spare = width - leftWidth - rightWidth - cloth.width * scale;
  const trial = frameOf(cloth, scale, leftWidth + Math.max(0, spare / 2), 0);
  const columns = [
    ...left.map((column) => ({ column, outward: -1 as const, places: settle(column, trial) })),
    ...right.map((column) => ({ column, outward: 1 as const, places: settle(column, trial) })),
  ];
  const places = columns.flatMap(({ column, places }) => (column.full ? settle(column.full, trial) : places));
  const over = Math.max(RIM, ...places.map((place) => LINE / 2 - place));
  const under = Math.max(RIM, ...places.map((place) => place + LINE / 2 - trial.bottom));
  const tall = (rows: readonly DimensionLine[]) => rows.reduce((sum, row) => sum + row.height, 0);
  const top = y + tall(above) + over;
  const frame = frameOf(cloth, scale, trial.left, top);
  shapes.push(...content.draw(frame));

  const inner = { [-1]: frame.left, [1]: frame.right };
  for (const { column, outward, places } of columns) {
    const settled = places.map((place) => place + top);
    shapes.push(...column.draw(frame, inner[outward], outward, settled));
    inner[outward] += outward * column.width;
  }
  const room = { from: RIM, to: width - RIM };
  let rim = frame.top - over + RIM;
  above.forEach((row, i) => {
    shapes.push(...row.draw(frame, rim, i === 0 ? frame.y(row.edge ?? highest(cloth)) : rim, -1, room));
    rim -= row.height;
  });
  rim = frame.bottom + under - RIM;
  below.forEach((row, i) => {
    shapes.push(...row.draw(frame, rim, i === 0 ? frame.y(row.edge ?? cloth.y) : rim, 1, room));
    rim += row.height;
  });
  y = rim + RIM + BREATH;

  y = notes(content.notes ?? [], width, y, shapes);
  const legend = content.explained ? { shapes: [], bottom: y } : legendOf(shapes, content, width, y);
  const bar = scaleBar(setting, scale, { x: RIM, y: legend.bottom + BREATH, width: 0.36 * width });
  shapes.push(...legend.shapes, ...bar);
  const height = legend.bottom + BREATH + LINE + RIM;
  return { title: content.title, width, height, scale, shapes, text: content.text };
}

const highest = (cloth: Box): number => cloth.y + cloth.height;

const line = (name: string, text: string, x: number, y: number): TextShape => lettering(name, text, x, y, 1);

/** The title and the lines under it, from the top of the sheet. Returns where the next part may start. */
function header({ title, lines = [] }: SheetContent, width: number, shapes: Shape[]): number {
  let y = 0;
  wrap(title, TITLE, width).forEach((text, i) => {
    const baseline = y + ABOVE * TITLE + 0.2;
    const shape = { kind: 'text', name: `title ${i + 1}`, text, x: 0, y: baseline, size: TITLE } as const;
    shapes.push({ ...shape, anchor: 'start', strong: true });
    y += TITLE * 1.3;
  });
  return notes(lines, width, y + 0.4, shapes, 'line');
}

/** Sentences, broken into lines of the sheet's width. */
function notes(sentences: readonly string[], width: number, from: number, shapes: Shape[], name = 'note'): number {
  let y = from;
  sentences.forEach((sentence, n) => {
    wrap(sentence, TYPE, width).forEach((text, i) => {
      shapes.push(line(`${name} ${n + 1}.${i + 1}`, text, 0, y + LINE / 2));
      y += LINE;
    });
  });
  return sentences.length === 0 ? y : y + BREATH;
}
