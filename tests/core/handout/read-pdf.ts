/** Reads PDF with a second library, in mm from the upper left corner of the page. */
import { readFileSync } from 'node:fs';
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Point } from '../../../src/core/index.ts';

const MM = 25.4 / 72;

/** A stroke as it was drawn: its points (ends of curves only), whether it is closed, and how wide its line is. */
export type Drawn = { points: Point[]; closed: boolean; width: number; dashed: boolean };
export type Word = { text: string; x: number; y: number; size: number };
export type ReadPage = { width: number; height: number; strokes: Drawn[]; words: Word[] };
export type ReadPdf = {
  title: unknown;
  language: string | null;
  preferences: unknown;
  bookmarks: string[];
  pages: ReadPage[];
};

type Matrix = [number, number, number, number, number, number];

const times = (m: Matrix, [a, b, c, d, e, f]: Matrix): Matrix => [
  m[0] * a + m[2] * b,
  m[1] * a + m[3] * b,
  m[0] * c + m[2] * d,
  m[1] * c + m[3] * d,
  m[0] * e + m[2] * f + m[4],
  m[1] * e + m[3] * f + m[5],
];

export async function readPdf(file: string): Promise<ReadPdf> {
  const task = getDocument({ data: new Uint8Array(readFileSync(file)), verbosity: 0 });
  const doc = await task.promise;
  const { info } = await doc.getMetadata();
  const outline = (await doc.getOutline()) as { title: string }[] | null;
  const language = ((await doc.getMetadata()).info as { Language?: string }).Language ?? null;
  const preferences: unknown = await doc.getViewerPreferences();
  const pages: ReadPage[] = [];
  for (let n = 1; n <= doc.numPages; n++) {
    const page = await doc.getPage(n);
    const [, , width, height] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    const words = items.flatMap((item): Word[] =>
      'str' in item && item.str.trim() !== ''
        ? [
            {
              text: item.str,
              x: (item.transform[4] as number) * MM,
              y: (height - (item.transform[5] as number)) * MM,
              size: Math.hypot(item.transform[2] as number, item.transform[3] as number) * MM,
            },
          ]
        : [],
    );
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({ width: width * MM, height: height * MM, words, strokes: strokesIn(fnArray, argsArray, height) });
  }
  await task.destroy();
  return {
    title: (info as { Title?: unknown }).Title,
    language,
    preferences,
    bookmarks: (outline ?? []).map(({ title }) => title),
    pages,
  };
}

function strokesIn(operators: readonly number[], args: readonly unknown[], height: number): Drawn[] {
  const found: Drawn[] = [];
  let state: { matrix: Matrix; width: number; dashed: boolean } = {
    matrix: [1, 0, 0, 1, 0, 0],
    width: 1,
    dashed: false,
  };
  const saved: (typeof state)[] = [];
  const place = (x: number, y: number): Point => {
    const [a, b, c, d, e, f] = state.matrix;
    return { x: (a * x + c * y + e) * MM, y: (height - (b * x + d * y + f)) * MM };
  };
  operators.forEach((operator, i) => {
    const given = args[i] as unknown[];
    if (operator === OPS.save) saved.push(state);
    else if (operator === OPS.restore) state = saved.pop() ?? state;
    else if (operator === OPS.transform) state = { ...state, matrix: times(state.matrix, given as unknown as Matrix) };
    else if (operator === OPS.setLineWidth) state = { ...state, width: given[0] as number };
    else if (operator === OPS.setDash) state = { ...state, dashed: (given[0] as number[]).length > 0 };
    else if (operator === OPS.constructPath) {
      const [paint, [steps]] = given as [number, [Float32Array | null]];
      if (paint !== OPS.stroke && paint !== OPS.closeStroke) return;
      const scale = Math.hypot(state.matrix[0], state.matrix[1]) * MM;
      for (const path of subpaths(steps ?? new Float32Array())) {
        const points = path.points.map(({ x, y }) => place(x, y));
        found.push({
          points,
          closed: path.closed || paint === OPS.closeStroke,
          width: state.width * scale,
          dashed: state.dashed,
        });
      }
    }
  });
  return found;
}

/** The library keeps a path as one row of numbers: 0 move, 1 line, 2 curve, 3 curve of the second degree, 4 close. */
function subpaths(steps: Float32Array): { points: Point[]; closed: boolean }[] {
  const all: { points: Point[]; closed: boolean }[] = [];
  for (let i = 0; i < steps.length;) {
    const kind = steps[i]!;
    const numbers = [2, 2, 6, 4, 0][kind]!;
    const end = { x: steps[i + numbers - 1]!, y: steps[i + numbers]! };
    if (kind === 0) all.push({ points: [end], closed: false });
    else if (kind === 4) all.at(-1)!.closed = true;
    else if (kind === 2) {
      // Curves as chords fine enough for a hundredth of a millimetre.
      const from = all.at(-1)!.points.at(-1)!;
      const [a, b] = [
        { x: steps[i + 1]!, y: steps[i + 2]! },
        { x: steps[i + 3]!, y: steps[i + 4]! },
      ];
      for (let k = 1; k <= 32; k++) all.at(-1)!.points.push(bezier(from, a, b, end, k / 32));
    } else all.at(-1)!.points.push(end);
    i += numbers + 1;
  }
  return all;
}

function bezier(p: Point, q: Point, r: Point, s: Point, t: number): Point {
  const [a, b, c, d] = [(1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t ** 3];
  return { x: a * p.x + b * q.x + c * r.x + d * s.x, y: a * p.y + b * q.y + c * r.y + d * s.y };
}
