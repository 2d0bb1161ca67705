import type { Point } from '../geometry/index.ts';

/** across: from selvage to selvage. lengthwise: along the selvage. */
export type CutDirection = 'across' | 'lengthwise';

/** A straight cut from edge to edge of what lies on the mat. */
export type StraightCut = {
  /** Counted from 1, in the order a person cuts. */
  number: number;
  /** What is cut: the cloth, or a part that an earlier cut made. */
  of: string;
  way: CutDirection;
  /** How far from the edge that was cut or straightened last, the lower or the left one, in mm. */
  measure: number;
  /** From where to where, on the cloth. */
  from: Point;
  to: Point;
  /** What comes off below or to the left: a part that is cut on, a piece, or waste. */
  makes: string;
  /** What remains above or to the right of it, likewise. */
  leaves: string;
};

/** A rectangle with a name. */
export type NamedRectangle = { name: string; x: number; y: number; width: number; height: number };

/** What lies apart by less than this was parted by rounding, in mm. */
const NEAR = 1e-3;

/**
 * The cuts that part some rectangles, first across the cloth into strips, then each strip, each measured from the edge
 * cut before. Undefined where straight cuts from edge to edge cannot part them.
 *
 * @param region the cloth with its name; its height is Infinity on a bolt, where the last strip is cut off too
 */
export function cutsFor(region: NamedRectangle, pieces: readonly NamedRectangle[]): StraightCut[] | undefined {
  const cuts: StraightCut[] = [];
  let strips = 0;

  function part(field: NamedRectangle, inside: readonly NamedRectangle[], preferred: CutDirection): boolean {
    const way = wayThrough(field, inside, preferred);
    if (!way) return false;
    const [low, high] = span(field, way);
    let edge = low;
    const cut = (at: number, makes: string): void => {
      const [from, to] =
        way === 'across'
          ? [
              { x: field.x, y: at },
              { x: field.x + field.width, y: at },
            ]
          : [
              { x: at, y: field.y },
              { x: at, y: field.y + field.height },
            ];
      const number = cuts.length + 1;
      cuts.push({ number, of: field.name, way, measure: at - edge, from: from, to: to, makes, leaves: field.name });
      edge = at;
    };
    const before = cuts.length;
    const later: { strip: NamedRectangle; row: readonly NamedRectangle[] }[] = [];
    for (const row of rowsOf(inside, way)) {
      const [start, end] = span(boxRound(row), way);
      if (start - edge > NEAR) cut(start, 'waste');
      const strip: NamedRectangle =
        way === 'across' ? { ...field, y: edge, height: end - edge } : { ...field, x: edge, width: end - edge };
      const alone = row.length === 1 && same(row[0]!, strip);
      // The last part of a cloth or a strip needs no cut of its own, and keeps its name.
      const last = near(end, high);
      if (alone) strip.name = row[0]!.name;
      else if (!last) strip.name = `strip ${letters(strips++)}`;
      if (!last) cut(end, strip.name);
      else if (cuts.length > before) cuts.at(-1)!.leaves = strip.name;
      if (!alone) later.push({ strip, row });
    }
    if (high - edge > NEAR && high < Infinity && cuts.length > before && !reaches(inside, way, high))
      cuts.at(-1)!.leaves = 'waste';
    const next = way === 'across' ? 'lengthwise' : 'across';
    return later.every(({ strip, row }) => part(strip, row, next));
  }

  if (pieces.length === 0) return [];
  return part(region, pieces, 'across') ? cuts : undefined;
}

/** The preferred way to cut, unless only the other one parts the pieces or takes waste off; undefined if none does. */
function wayThrough(
  field: NamedRectangle,
  inside: readonly NamedRectangle[],
  preferred: CutDirection,
): CutDirection | undefined {
  const other = preferred === 'across' ? 'lengthwise' : 'across';
  const box = boxRound(inside);
  const serves = (way: CutDirection): boolean => {
    const [a, b] = [span(box, way), span(field, way)];
    return rowsOf(inside, way).length > 1 || !near(a[0], b[0]) || !near(a[1], b[1]);
  };
  return ([preferred, other] as const).find(serves) ?? (inside.length === 1 ? preferred : undefined);
}

const span = (field: NamedRectangle, way: CutDirection): [number, number] =>
  way === 'across' ? [field.y, field.y + field.height] : [field.x, field.x + field.width];

const reaches = (pieces: readonly NamedRectangle[], way: CutDirection, high: number): boolean =>
  near(span(boxRound(pieces), way)[1], high);

/** A, B … Z, AA, AB: a piece is numbered, so that no strip is taken for one. */
function letters(n: number): string {
  const letter = String.fromCharCode(65 + (n % 26));
  return n < 26 ? letter : letters(Math.floor(n / 26) - 1) + letter;
}

/** The pieces in rows that a straight line parts, from the lower or left edge on. */
function rowsOf(pieces: readonly NamedRectangle[], way: CutDirection): NamedRectangle[][] {
  const start = (piece: NamedRectangle): number => (way === 'across' ? piece.y : piece.x);
  const size = (piece: NamedRectangle): number => (way === 'across' ? piece.height : piece.width);
  const rows: NamedRectangle[][] = [];
  let end = -Infinity;
  for (const piece of [...pieces].sort((a, b) => start(a) - start(b))) {
    if (start(piece) >= end - NEAR) rows.push([]);
    rows.at(-1)!.push(piece);
    end = Math.max(end, start(piece) + size(piece));
  }
  return rows;
}

function boxRound(pieces: readonly NamedRectangle[]): NamedRectangle {
  const x = Math.min(...pieces.map((piece) => piece.x));
  const y = Math.min(...pieces.map((piece) => piece.y));
  const right = Math.max(...pieces.map((piece) => piece.x + piece.width));
  const top = Math.max(...pieces.map((piece) => piece.y + piece.height));
  return { name: '', x, y, width: right - x, height: top - y };
}

const near = (a: number, b: number): boolean => a === b || Math.abs(a - b) < NEAR;

const same = (a: NamedRectangle, b: NamedRectangle): boolean =>
  near(a.x, b.x) && near(a.y, b.y) && near(a.width, b.width) && near(a.height, b.height);
