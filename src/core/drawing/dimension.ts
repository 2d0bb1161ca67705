import { letteringWidth, MIDDLE } from './lettering.ts';
import { polyline } from './path.ts';
import { spread } from './spread.ts';
import type { Frame } from './frame.ts';
import type { Command } from './path.ts';
import type { Shape, TextShape } from './scene.ts';

/** The type size of all but titles, in mm: 12.1 px on a screen, 9.1 pt on paper, never less. */
export const TYPE = 3.2;
/** From one line of lettering to the next. */
export const LINE = 4.3;

/** From the cloth to the first dimension line, and from there to its labels. */
const STAND_OFF = 2.4;
const GUTTER = 1.6;
/** Half the width and height of the slash at the end of a dimension line. */
const SLASH = 0.7;
/** The blank between lettering and a line that points at it. */
const CLEAR = 0.7;

/** A chain of dimensions: between each mark and the next stands a label; an empty label leaves its stretch out. */
export type Chain = {
  readonly name: string;
  readonly marks: readonly number[];
  readonly labels: readonly string[];
};

/**
 * Labels beside what is drawn to scale. They stand upright, none touches another, and one that had to move from its
 * place gets a leader. Labels are numbered from the top.
 */
export type DimensionColumn = {
  /** The room it takes across, in mm of the sheet. */
  readonly width: number;
  /** The column when all its labels are there. */
  readonly full?: DimensionColumn;
  /** Where the middle of each label would like to be, from the top down. */
  wants: (frame: Frame) => number[];
  /** Draws it from the side `inner` outward, to the right (1) or to the left (-1). */
  draw: (frame: Frame, inner: number, outward: 1 | -1, places: readonly number[]) => Shape[];
};

/** The column with the room that it needs when it is full, so that what stands beside it holds still while it fills. */
export const roomOf = (full: DimensionColumn, column: DimensionColumn): DimensionColumn => ({
  ...column,
  width: full.width,
  full,
});

/** A little room beside the cloth, for the slashes at the ends of a row. */
export const margin: DimensionColumn = { width: 0.4, wants: () => [], draw: () => [] };

/** The places of a column's labels. */
export function settle(column: DimensionColumn, frame: Frame): number[] {
  return spread(
    column.wants(frame).map((at) => ({ at, size: LINE })),
    0,
  );
}

const widest = (labels: readonly string[]): number =>
  labels.reduce((most, label) => Math.max(most, letteringWidth(label, TYPE)), 0);

const slash = (x: number, y: number): Command[] =>
  polyline({ x: x - SLASH, y: y + SLASH }, { x: x + SLASH, y: y - SLASH });

/** The stretches of a chain that have a label. */
function stretches({ marks, labels }: Chain): { from: number; to: number; label: string }[] {
  return labels.flatMap((label, i) => (label === '' ? [] : [{ from: marks[i]!, to: marks[i + 1]!, label }]));
}

/** A chain of heights as a column: marks in mm of cloth, from the bottom up. */
export function heights(chain: Chain): DimensionColumn {
  const parts = stretches(chain).reverse();
  return {
    width: STAND_OFF + GUTTER + widest(chain.labels) + SLASH,
    wants: (frame) => parts.map(({ from, to }) => frame.y((from + to) / 2)),
    draw(frame, inner, outward, places) {
      const line = inner + outward * STAND_OFF;
      const text = line + outward * GUTTER;
      const lines: Command[] = [];
      const leaders: Command[] = [];
      const labels: TextShape[] = [];
      for (const height of new Set(parts.flatMap(({ from, to }) => [from, to]))) {
        const y = frame.y(height);
        lines.push(...polyline({ x: inner + outward * 0.8, y }, { x: line + outward * SLASH, y }), ...slash(line, y));
      }
      parts.forEach(({ from, to, label }, i) => {
        lines.push(...polyline({ x: line, y: frame.y(from) }, { x: line, y: frame.y(to) }));
        const [middle, place] = [frame.y((from + to) / 2), places[i]!];
        if (place < frame.y(to) || place > frame.y(from)) {
          leaders.push(...polyline({ x: line, y: middle }, { x: text - outward * CLEAR, y: place }));
        }
        labels.push(lettering(`${chain.name} ${parts.length - i}`, label, text, place, outward));
      });
      return [...strokes(chain.name, lines, leaders), ...labels];
    },
  };
}

/** What a label says: a number in strong type, then a few words; either may be missing. */
export type LabelWords = {
  readonly name: string;
  readonly number?: string;
  readonly label?: string;
  readonly now?: boolean;
};

/** Labels under each other, their numbers in one column and their words in the next. */
function block(all: readonly LabelWords[]) {
  const numbers = widest(all.map(({ number = '' }) => number));
  const labels = widest(all.map(({ label = '' }) => label));
  const indent = numbers > 0 && labels > 0 ? numbers + 1.3 : numbers;
  return {
    width: indent + labels,
    /** From `near` outward; numbers stand before their words on either side, since both are read from left to right. */
    draw(near: number, outward: 1 | -1, places: readonly number[]): TextShape[] {
      const left = outward === 1 ? near : near - indent - labels;
      return all.flatMap(({ name, number = '', label = '', now }, i) => {
        const mark = now ? { now } : {};
        const shapes: TextShape[] = [];
        if (number !== '') {
          const text = lettering(`${name} number`, number, left + numbers, places[i]!, -1);
          shapes.push({ ...text, strong: true, ...mark });
        }
        if (label !== '') {
          const x = outward === 1 ? left + indent : near;
          shapes.push({ ...lettering(name, label, x, places[i]!, outward), ...mark });
        }
        return shapes;
      });
    },
  };
}

/** A stretch of height, to be measured beside others that it overlaps. */
export type Lane = LabelWords & { readonly from: number; readonly to: number };

/**
 * Stretches of height that overlap, each in a lane of its own, from the highest, next to the cloth, to the lowest. A
 * leader from the top of each to its label then crosses none of the others.
 */
export function lanes(name: string, wanted: readonly Lane[]): DimensionColumn {
  const sorted = [...wanted].sort((a, b) => b.to - a.to);
  const words = block(sorted);
  const apart = Math.max(1.1, Math.min(2.4, 12 / sorted.length));
  const reach = STAND_OFF + apart * Math.max(0, sorted.length - 1) + GUTTER + CLEAR;
  return {
    width: reach + words.width,
    wants: (frame) => sorted.map(({ to }) => frame.y(to)),
    draw(frame, inner, outward, places) {
      const lines: Command[] = [];
      const leaders: Command[] = [];
      const near = inner + outward * reach;
      sorted.forEach(({ from, to }, i) => {
        const x = inner + outward * (STAND_OFF + apart * i);
        const [top, low, place] = [frame.y(to), frame.y(from), places[i]!];
        lines.push(...polyline({ x, y: top }, { x, y: low }), ...slash(x, top), ...slash(x, low));
        const turn = { x: near - outward * (GUTTER + CLEAR - 0.4), y: top };
        leaders.push(...polyline({ x, y: top }, turn, { x: near - outward * CLEAR, y: place }));
      });
      return [...strokes(name, lines, leaders), ...words.draw(near, outward, places)];
    },
  };
}

/** A label that points at a height. */
export type DimensionTag = LabelWords & { readonly at: number };

/** Labels that point at heights, given in any order. */
export function tags(name: string, wanted: readonly DimensionTag[]): DimensionColumn {
  const sorted = [...wanted].sort((a, b) => b.at - a.at);
  const words = block(sorted);
  const reach = 3.6;
  return {
    width: reach + words.width,
    wants: (frame) => sorted.map(({ at }) => frame.y(at)),
    draw(frame, inner, outward, places) {
      const near = inner + outward * reach;
      const leaders = sorted.flatMap(({ at }, i) => {
        const y = frame.y(at);
        const foot = { x: inner + outward * 0.4, y };
        return polyline(foot, { x: inner + outward * 1.2, y }, { x: near - outward * CLEAR, y: places[i]! });
      });
      return [...strokes(name, [], leaders), ...words.draw(near, outward, places)];
    },
  };
}

/** A chain of widths as a row above (-1) or below (1) what is drawn. */
export type DimensionLine = {
  readonly height: number;
  /** The height of the cloth's edge, where that is not the edge of what is drawn. */
  readonly edge?: number;
  /** `inner` is where it begins; `edge` where the lines that lead to it do. */
  draw: (frame: Frame, inner: number, edge: number, outward: 1 | -1, room: { from: number; to: number }) => Shape[];
};

/** A chain of widths: marks in mm of cloth from the left. */
export function across(chain: Chain, edge?: number): DimensionLine {
  const parts = stretches(chain);
  const gutter = parts.length > 1 ? GUTTER + 0.6 : 0.6;
  return {
    height: STAND_OFF + gutter + LINE,
    ...(edge !== undefined && { edge }),
    draw(frame, inner, edge, outward, room) {
      const line = inner + outward * STAND_OFF;
      const middle = line + outward * (gutter + LINE / 2);
      const lines: Command[] = [];
      const leaders: Command[] = [];
      for (const mark of new Set(parts.flatMap(({ from, to }) => [from, to]))) {
        const x = frame.x(mark);
        lines.push(...polyline({ x, y: edge + outward * 0.8 }, { x, y: line + outward * SLASH }), ...slash(x, line));
      }
      const places = spread(
        parts.map(({ from, to, label }) => ({ at: frame.x((from + to) / 2), size: letteringWidth(label, TYPE) })),
        1.6,
        room,
      );
      const labels = parts.map(({ from, to, label }, i): TextShape => {
        const [at, place] = [frame.x((from + to) / 2), places[i]!];
        lines.push(...polyline({ x: frame.x(from), y: line }, { x: frame.x(to), y: line }));
        if (place < frame.x(from) || place > frame.x(to)) {
          leaders.push(...polyline({ x: at, y: line }, { x: place, y: middle - outward * (TYPE * MIDDLE + 0.5) }));
        }
        const text = lettering(`${chain.name} ${i + 1}`, label, place, middle, 1);
        return { ...text, anchor: 'middle' };
      });
      return [...strokes(chain.name, lines, leaders), ...labels];
    },
  };
}

/** One line of lettering whose figures stand in the middle of `y`, running away from `x` to the right (1) or left. */
export function lettering(name: string, text: string, x: number, y: number, outward: 1 | -1): TextShape {
  return {
    kind: 'text',
    name,
    text,
    x,
    y: y + TYPE * MIDDLE,
    size: TYPE,
    anchor: outward === 1 ? 'start' : 'end',
  };
}

function strokes(name: string, lines: Command[], leaders: Command[]): Shape[] {
  const shapes: Shape[] = [];
  if (lines.length > 0) shapes.push({ kind: 'path', name: `${name} lines`, role: 'dimension', path: lines });
  if (leaders.length > 0) shapes.push({ kind: 'path', name: `${name} leaders`, role: 'leader', path: leaders });
  return shapes;
}
