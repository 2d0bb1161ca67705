import { letteringBox, letteringWidth, wrap } from '../drawing/lettering.ts';
import { box, polyline } from '../drawing/path.ts';
import { line, placedShapes } from './place.ts';
import { LEADING } from './type.ts';
import type { Scene, Shape } from '../drawing/scene.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';

/** A blank of some mm, which no page begins with. */
export const blank = (height: number): Block => ({ height, blank: true, draw: () => [] });

/** Blocks that stand on one page, with what follows them. */
export const together = (blocks: readonly Block[]): Block[] => blocks.map((block) => ({ ...block, keep: true }));

/** A heading, which stays with what follows. */
export function heading(text: string, type: Type): Block[] {
  const size = type.heading;
  return [blank(size * 0.7), ...together([...lines(text, size, type, { strong: true }), blank(size * 0.25)])];
}

export type Looks = { strong?: boolean; keep?: boolean; indent?: number; size?: number; after?: number };

/** Sentences, and the blank after them. */
export function paragraph(text: string, type: Type, looks: Looks = {}): Block[] {
  const size = looks.size ?? type.text;
  const blocks = [...lines(text, size, type, looks), blank(looks.after ?? size * 0.55)];
  return looks.keep ? together(blocks) : blocks;
}

/** A sentence for each thing to do or to have, with a box to tick. */
export function toTick(text: string, type: Type, looks: Looks = {}): Block[] {
  const size = looks.size ?? type.text;
  const side = 0.95 * size;
  const indent = (looks.indent ?? 0) + 1.9 * size;
  const [first, ...rest] = lines(text, size, type, { ...looks, indent });
  if (!first) return [];
  const ticked: Block = {
    ...first,
    draw: (x, y) => [tickBox(x + (looks.indent ?? 0), y + (size * LEADING - side) / 2, side), ...first.draw(x, y)],
  };
  return [ticked, ...rest, blank(looks.after ?? size * 0.35)];
}

const tickBox = (x: number, y: number, side: number): Shape => ({
  kind: 'path',
  name: 'tick',
  role: 'held',
  path: box(x, y, side, side),
});

/** A text, a block to each line. */
function lines(text: string, size: number, { width }: Type, looks: Looks): Block[] {
  const { indent = 0, strong } = looks;
  const broken = wrap(text, size, width - indent);
  return broken.map((part, i): Block => {
    // No first line alone at the foot of a page.
    const together = i === 0 && broken.length > 1;
    return {
      height: size * LEADING,
      ...(together && { keep: true }),
      draw: (x, y) => [line(`text ${i + 1}`, part, x + indent, y + size, size, strong ? { strong } : {})],
    };
  });
}

export type TableColumn = { readonly title: string; /** Of the width, against the others. */ readonly share: number };

/** A row of a table: its texts, and whether there is a box to tick before the first. */
export type TableRow = { readonly cells: readonly string[]; readonly tick: boolean };

export const row = (cells: readonly string[], tick = false): TableRow => ({ cells, tick });

/** Between the columns of a table, in mm. */
const GUTTER = 3;
/** Most lines of one row: longer cells go on in the next, so that no row is higher than a page. */
const MOST_LINES = 18;

/** Columns by their shares, but none so narrow that a word of it must be broken while others have room. */
function columnWidths(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  room: number,
  size: number,
): number[] {
  const needs = columns.map(({ title }, i) => {
    const words = [title, ...rows.map(({ cells }) => cells[i] ?? '')].flatMap((text) => text.split(' '));
    return Math.max(...words.map((word) => letteringWidth(word, size)));
  });
  const wide = needs.reduce((sum, need) => sum + need, 0) > room;
  const narrow = new Set<number>();
  for (;;) {
    const left = room - [...narrow].reduce((sum, i) => sum + needs[i]!, 0);
    const shares = columns.reduce((sum, { share }, i) => sum + (narrow.has(i) ? 0 : share), 0);
    const widths = columns.map(({ share }, i) => (narrow.has(i) ? needs[i]! : (left * share) / shares));
    const next = wide ? -1 : widths.findIndex((width, i) => width < needs[i]! - 1e-9);
    if (next < 0) return widths;
    narrow.add(next);
  }
}

/** A table; its head stands again on every page. Headings and cells are broken into lines of their columns. */
export function table(
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  type: Type,
  size = type.text,
): Block[] {
  const ticks = rows.some(({ tick }) => tick) ? 1.9 * size : 0;
  const room = type.width - ticks - GUTTER * (columns.length - 1);
  const widths = columnWidths(columns, rows, room, size);
  const lefts = widths.map((_, i) => ticks + widths.slice(0, i).reduce((sum, width) => sum + width + GUTTER, 0));

  const rowBlock = (
    cells: readonly string[][],
    strong: boolean,
    tick: boolean,
    weight: 'leader' | 'dimension',
  ): Block => {
    const most = Math.max(1, ...cells.map((lines) => lines.length));
    const height = most * size * LEADING + 0.55 * size;
    const side = 0.95 * size;
    return {
      height,
      draw: (x, y) => [
        ...(tick ? [tickBox(x, y + 0.25 * size + (size * LEADING - side) / 2, side)] : []),
        ...cells.flatMap((lines, c) =>
          lines.map((text, i) => {
            const at = y + 0.25 * size + size * (1 + i * LEADING);
            return line(`cell ${c + 1}.${i + 1}`, text, x + lefts[c]!, at, size, strong ? { strong } : {});
          }),
        ),
        {
          kind: 'path',
          name: 'rule',
          role: weight,
          path: polyline({ x, y: y + height }, { x: x + type.width, y: y + height }),
        },
      ],
    };
  };
  const broken = (cells: readonly string[]) => cells.map((text, i) => wrap(text, size, widths[i]!));
  const head = { ...rowBlock(broken(columns.map(({ title }) => title)), true, false, 'dimension'), keep: true };
  const body = rows.flatMap(({ cells, tick }) => {
    const all = broken(cells);
    const parts = Math.max(1, Math.ceil(Math.max(...all.map((lines) => lines.length)) / MOST_LINES));
    return Array.from({ length: parts }, (_, part): Block => {
      const some = all.map((lines) => lines.slice(part * MOST_LINES, (part + 1) * MOST_LINES));
      return { ...rowBlock(some, false, tick && part === 0, 'leader'), head };
    });
  });
  return rows.length === 0 ? [] : [head, ...body, blank(size * 0.9)];
}

/**
 * A drawing at the size of the document's small type. Its own title is left out: the text before it says the same.
 *
 * @param scene laid out for the width there is, divided by `type.drawing`
 */
export function figure(scene: Scene, indent: number, type: Type, name: string): Block {
  const rest = scene.shapes.filter((shape) => !/^title \d+$/.test(shape.name));
  const titles = scene.shapes.filter((shape) => shape.kind === 'text' && !rest.includes(shape)).map(letteringBottom);
  const top = Math.max(0, ...titles);
  return {
    height: (scene.height - top) * type.drawing + 2,
    draw: (x, y) => placedShapes(rest, { x: x + indent, y: y - top * type.drawing }, type.drawing, name),
  };
}

/** Two columns beside each other, as one block. The second begins so far from the left, in mm. */
export function beside(first: readonly Block[], second: readonly Block[], at: number): Block {
  const columns = [
    { blocks: first, left: 0 },
    { blocks: second, left: at },
  ];
  const high = (blocks: readonly Block[]) => blocks.reduce((sum, { height }) => sum + height, 0);
  return {
    height: Math.max(high(first), high(second)),
    draw: (x, y) =>
      columns.flatMap(({ blocks, left }, c) => {
        let top = y;
        return blocks.flatMap((block, i) => {
          const shapes = block.draw(x + left, top);
          top += block.height;
          return shapes.map((shape) => ({ ...shape, name: c === 0 ? shape.name : `beside ${i + 1} ${shape.name}` }));
        });
      }),
  };
}

/** Where a line of lettering and its tails end. */
const letteringBottom = (shape: Shape): number => {
  if (shape.kind !== 'text') return 0;
  const { y, height } = letteringBox(shape);
  return y + height;
};

/** Room to write in: a box for the sum, and a line for the answer with its unit. */
export function answerRoom(unit: string, type: Type): Block[] {
  const high = 18;
  const sum: Block = {
    height: high + 2,
    keep: true,
    draw: (x, y) => [
      { kind: 'path', name: 'sum box', role: 'leader', path: box(x, y, type.width, high) },
      line('sum', 'Sum', x + 1.5, y + 1.2 * type.small, type.small),
    ],
  };
  const answer: Block = {
    height: 11,
    draw(x, y) {
      const from = x + letteringWidth('Answer', type.text) + 3;
      const to = from + 60;
      const low = y + 7.5;
      return [
        line('answer', 'Answer', x, low - 0.5, type.text),
        {
          kind: 'path',
          name: 'answer line',
          role: 'dimension',
          path: polyline({ x: from, y: low }, { x: to, y: low }),
        },
        line('unit', unit, to + 2, low - 0.5, type.text),
      ];
    },
  };
  return [sum, answer, blank(4)];
}
