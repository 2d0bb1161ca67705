import { across, heights, LINE, lettering, TYPE } from './dimension.ts';
import { letteringWidth, MIDDLE } from './lettering.ts';
import { lengthWriter } from './lengths.ts';
import { grainArrow } from './marks.ts';
import { box, closed, polyline } from './path.ts';
import { layOutSheet } from './sheet.ts';
import { wrongSideOf } from './surface.ts';
import type { LaidCloth, Placement } from '../layout/index.ts';
import type { DimensionColumn } from './dimension.ts';
import type { Frame } from './frame.ts';
import type { Command } from './path.ts';
import type { Scene, Shape, ShapeRole, TextShape } from './scene.ts';
import type { DrawingSetting } from './sheet.ts';

export type LayoutSetting = DrawingSetting & {
  /** What learners call a piece, by its name. */
  labels?: Readonly<Record<string, string>>;
  /** What the cloth is called. */
  title?: string;
  /** What shows of the pieces: right side if left out. */
  surface?: ShapeRole;
  /** Of a print that is matched how far it is until it begins again, and at what height on which piece; all in mm. */
  print?: { repeat: number; at: Readonly<Record<string, number>> };
};

/** A piece where it lies, with its number in the list: from the cut end up, and in a row from the left. */
export type NumberedPlacement = Placement & { n: number };

/** More pieces than this are told as so many, and carry no numbers. */
const MOST_LISTED = 120;

/** Within so many mm of each other, pieces lie in one row. */
const ROW = 1;

/** The placements in the order in which one finds them on the cloth. */
export function numbered(placements: readonly Placement[]): NumberedPlacement[] {
  const inOrder = [...placements].sort((a, b) => {
    const [below, beside] = [a.at.y - b.at.y, a.at.x - b.at.x];
    return Math.abs(below) > ROW ? below : beside;
  });
  return inOrder.map((placement, i) => ({ ...placement, n: i + 1 }));
}

/**
 * A cloth with its pieces, to scale: the selvages at the sides, the cut end below. Every piece has the number that it
 * has in the text; its name stands in it where there is room.
 */
export function drawLayout(laid: LaidCloth, setting: LayoutSetting): Scene {
  const { set, say } = lengthWriter(setting);
  const { width, folded, kind } = laid;
  const { surface = 'right side' } = setting;
  const wrong = wrongSideOf(surface);
  const pieces = numbered(laid.placements);
  const many = pieces.length > MOST_LISTED;
  const nameOf = ({ piece }: Placement): string => setting.labels?.[piece] ?? piece;
  const title = setting.title ?? laid.cloth;
  const goesOn = kind === 'bolt';
  const length = Math.max(laid.length, 1);
  // A bolt goes on: a little of it is drawn, so that nobody takes the last cut for its end.
  const shown = goesOn ? length + Math.min(0.12 * width, 0.25 * length + 0.04 * width) : length;

  return layOutSheet(
    {
      title,
      cloth: { x: 0, y: 0, width, height: shown },
      left: [heights({ name: 'length', marks: [0, length], labels: [set(length)] })],
      right: [grain],
      below: [across({ name: 'width', marks: [0, width], labels: [set(width)] })],
      draw: (frame): Shape[] => [
        {
          kind: 'path',
          name: 'cloth',
          role: 'held',
          path: box(frame.left, frame.top, frame.right - frame.left, frame.bottom - frame.top),
        },
        ...selvages(laid, frame),
        ...pieces.flatMap((piece): Shape[] => [
          {
            kind: 'path',
            name: `piece ${piece.n}`,
            role: piece.mirrored ? wrong : surface,
            path: closed(piece.outline, frame.onto),
          },
        ]),
        {
          kind: 'path',
          name: 'cut lines',
          role: 'cut',
          path: pieces.flatMap(({ outline }) => closed(outline, frame.onto)),
        },
        ...prints(pieces, shown, setting.print, frame),
        ...(many ? [] : pieces.flatMap((piece) => names(piece, nameOf(piece), frame))),
        ...(goesOn ? [endLine(frame, length)] : []),
      ],
      words: {
        held: folded ? 'cloth, folded: the fold lies at the left' : 'cloth',
        [wrong]: 'mirrored pieces',
        [surface]: 'pieces',
        allowance: 'selvage, left off',
        hidden: 'the same place of the print',
      },
      ...(goesOn && { now: { role: 'raw edge' as const, words: 'as far as you need' } }),
      text: [
        `${title}, ${say(width)} wide${folded ? ' as it lies folded' : ''}. ${pieces.length} ${pieces.length === 1 ? 'piece takes' : 'pieces take'} ${say(length)}.`,
        ...(many ? [] : pieces.map((piece) => sentence(piece, nameOf(piece), say))),
      ],
    },
    setting,
  );
}

function sentence(
  { n, at, size, angle, mirrored }: NumberedPlacement,
  name: string,
  say: (mm: number) => string,
): string {
  const where = `${say(at.x)} from the left, ${say(at.y)} from the cut end`;
  const how = `${turnedWords(angle)}${mirrored ? ', mirrored' : ''}`;
  return `${n}. ${name}: ${where}, ${say(size.width)} across, ${say(size.height)} along the selvage${how}.`;
}

/** How a piece is turned against how it is drawn by itself, as the end of a sentence; nothing where it is not. */
export function turnedWords(angle: number): string {
  const turn = ((Math.round(angle) % 360) + 360) % 360;
  if (turn === 0) return '';
  if (turn === 180) return ', upside down';
  return turn === 90 || turn === 270 ? ', turned by a quarter' : ', on the bias';
}

function selvages({ width, from, to }: LaidCloth, { x, top, bottom }: Frame): Shape[] {
  const strips = [
    [0, from],
    [to, width],
  ] as const;
  const path = strips.flatMap(([a, b]) => (b - a > 0.5 ? box(x(a), top, x(b) - x(a), bottom - top) : []));
  return path.length > 0 ? [{ kind: 'path', name: 'selvages', role: 'allowance', path }] : [];
}

const endLine = ({ left, right, y }: Frame, length: number): Shape => ({
  kind: 'path',
  name: 'end',
  role: 'raw edge',
  path: polyline({ x: left, y: y(length) }, { x: right, y: y(length) }),
  now: true,
});

/** Lines across the cloth at the heights where the print is as it is on the pieces that match. */
function prints(
  pieces: readonly NumberedPlacement[],
  shown: number,
  print: LayoutSetting['print'],
  frame: Frame,
): Shape[] {
  if (!print) return [];
  const { repeat, at } = print;
  const starts = new Set<number>();
  for (const piece of pieces) {
    const height = at[piece.piece];
    if (height === undefined) continue;
    const start = (piece.at.y + height) % repeat;
    const isNew = [...starts].every((one) => Math.min(Math.abs(one - start), repeat - Math.abs(one - start)) > ROW);
    if (isNew) starts.add(start);
  }
  const path = [...starts].flatMap((start) => {
    const many = Math.max(0, Math.ceil((shown - start) / repeat));
    return Array.from({ length: many }, (_, k) => frame.y(start + k * repeat)).flatMap((y) =>
      polyline({ x: frame.left, y }, { x: frame.right, y }),
    );
  });
  return path.length > 0 ? [{ kind: 'path', name: 'print', role: 'hidden', path }] : [];
}

/** The grain runs along the selvage: its arrow stands beside the cloth, where no piece is in its way. */
const grain: DimensionColumn = {
  width: 3.4,
  wants: () => [],
  draw({ right, top, bottom }) {
    const [x, middle, reach] = [right + 2, (top + bottom) / 2, Math.min(8, (bottom - top) / 3)];
    const path = grainArrow({ x, y: middle - reach }, { x, y: middle + reach });
    return [{ kind: 'path', name: 'grain', role: 'grain', path }];
  },
};

/** Its number, and its name under it where both fit; nothing where not even the number does. */
function names({ n, at, size }: NumberedPlacement, label: string, frame: Frame): Shape[] {
  const [w, h] = [size.width * frame.scale, size.height * frame.scale];
  const middle = { x: frame.x(at.x + size.width / 2), y: frame.y(at.y + size.height / 2) };
  const number = String(n);
  const room = (text: string): number => letteringWidth(text, TYPE) + 1.2;
  if (room(number) > w || TYPE + 0.6 > h) return [];
  const withName = room(label) <= w && 2 * LINE <= h;
  const texts: TextShape[] = [];
  const high = withName ? middle.y - LINE / 2 : middle.y;
  texts.push({ ...lettering(`number ${n}`, number, middle.x, high, 1), anchor: 'middle', strong: true });
  if (withName) texts.push({ ...lettering(`name ${n}`, label, middle.x, middle.y + LINE / 2, 1), anchor: 'middle' });
  return [
    { kind: 'path', name: `plate ${n}`, role: 'plate', path: plate(middle, withName ? label : number, withName) },
    ...texts,
  ];
}

/** Motifs would run through the letters. */
function plate({ x, y }: { x: number; y: number }, widest: string, two: boolean): Command[] {
  const half = letteringWidth(widest, TYPE) / 2 + 0.5;
  const high = (two ? LINE : 0) + TYPE * (2 * MIDDLE) + 1.2;
  return box(x - half, y - high / 2, 2 * half, high);
}
