/**
 * Paper, measured by others: poppler draws every page at 300 dots per inch and reads its text, pdf.js reads its lines.
 * At true scale nothing may be off by a tenth of a millimetre, and what is joined by not more than two.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { bounds, foldGauge, formatLength, isPleated, sample, templates } from '../../src/core/index.ts';
import type { Edition, Handout, PaperName, Pattern, Piece, Point } from '../../src/core/index.ts';
import { demoHandouts, demoPattern, folder, outlined, patternOf, printed } from '../core/handout/documents.ts';
import { readPdf, type Drawn, type ReadPage } from '../core/handout/read-pdf.ts';
import { lShape, rounded, slanting } from '../core/handout/shapes.ts';
import { poppler, render, type Picture } from '../poppler.ts';

const at = folder();
afterAll(at.remove);

/** In mm. */
const [TENTH, FIFTH] = [0.1, 0.2];

/**
 * ISO 216:2007, trimmed size A4: 210 × 297 mm. ANSI/ASME Y14.1, size A, known as Letter: 8.5 × 11 in. Both from memory
 * of the standards.
 */
const published = { A4: [210, 297], Letter: [8.5 * 25.4, 11 * 25.4] } as const;

const combinations = (['A4', 'Letter'] as PaperName[]).flatMap((paper) =>
  (['inch', 'metric'] as Edition[]).map((edition) => [paper, edition] as const),
);

/** Middles of the strokes that a level row of pixels crosses, in mm from the left. */
function crossed({ ink, dpi }: Picture, from: number, to: number, y: number): number[] {
  const mm = dpi / 25.4;
  const found: number[] = [];
  let [weight, sum] = [0, 0];
  for (let x = Math.round(from * mm); x <= Math.round(to * mm); x++) {
    const value = ink(x, Math.round(y * mm));
    if (value > 8) {
      weight += value;
      sum += value * (x + 0.5);
    } else if (weight > 0) {
      found.push(sum / weight / mm);
      [weight, sum] = [0, 0];
    }
  }
  return found;
}

type Box = { x: number; y: number; width: number; height: number };

/** The box of all ink within a part of a page, in mm. */
function inkIn({ ink, dpi }: Picture, { x, y, width, height }: Box): Box {
  const mm = dpi / 25.4;
  let [left, top, right, low] = [Infinity, Infinity, -Infinity, -Infinity];
  for (let row = Math.round(y * mm); row < Math.round((y + height) * mm); row++) {
    for (let column = Math.round(x * mm); column < Math.round((x + width) * mm); column++) {
      if (ink(column, row) <= 128) continue;
      [left, right] = [Math.min(left, column), Math.max(right, column + 1)];
      [top, low] = [Math.min(top, row), Math.max(low, row + 1)];
    }
  }
  return { x: left / mm, y: top / mm, width: (right - left) / mm, height: (low - top) / mm };
}

const boxOf = (points: readonly Point[]): Box => {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [x, y] = [Math.min(...xs), Math.min(...ys)];
  return { x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y };
};

/** The cut line is the one that is 0.5 mm wide. */
const isCut = ({ width, dashed }: Drawn): boolean => Math.abs(width - 0.5) < 0.01 && !dashed;

/** On every sheet at true scale; the front page has none. */
const sheets = (handout: Handout) =>
  handout.pages.flatMap(({ scene }, i) =>
    scene.shapes.some(({ name }) => name === 'test line metric') ? [i + 1] : [],
  );

describe.each(combinations)('on %s, %s edition', (paper, edition) => {
  const pattern = demoPattern(edition);
  const handout = templates(pattern, { paper });
  const file = printed(handout, at.path);
  const set = (mm: number) => formatLength(mm, edition, { grid: pattern.grid, style: 'set' });

  test('every page of every document is of the published size', async () => {
    for (const document of demoHandouts(paper, edition)) {
      const { pages } = await readPdf(await printed(document, at.path));
      expect(pages).toHaveLength(document.pages.length);
      for (const { width, height } of pages) {
        expect(width).toBeCloseTo(published[paper][0], 2);
        expect(height).toBeCloseTo(published[paper][1], 2);
      }
    }
  });

  test('the lines of 100 mm and 4 in are right on every sheet, and so are the squares', async () => {
    const low = published[paper][1] - 12;
    expect(sheets(handout).length).toBe(handout.pages.length - 1);
    for (const page of sheets(handout)) {
      const picture = render(await file, page);
      // 2 mm above a line a row crosses nothing but its two end ticks.
      const metric = crossed(picture, 40, 143, low - 0.2 - 2);
      expect(metric).toHaveLength(2);
      expect(Math.abs(metric[1]! - metric[0]! - 100)).toBeLessThan(TENTH);
      const inch = crossed(picture, 40, 145, low - 9 - 2);
      expect(inch).toHaveLength(2);
      expect(Math.abs(inch[1]! - inch[0]! - 4 * 25.4)).toBeLessThan(TENTH);
      // Half way up, a row crosses the side that both squares share, and the right side of each.
      const squares = crossed(picture, 11, 40, low - 10);
      expect(squares).toHaveLength(3);
      expect(Math.abs(squares[1]! - squares[0]! - 20)).toBeLessThan(TENTH);
      expect(Math.abs(squares[2]! - squares[0]! - 25.4)).toBeLessThan(TENTH);
    }
  });

  test('the box of every cut line is that of its piece', async () => {
    const { pages } = await readPdf(await file);
    const found = new Map<string, Box>();
    for (const page of sheets(handout)) {
      const { strokes, words } = pages[page - 1]!;
      if (words.some(({ text }) => /^[A-Z]\d+–/u.test(text))) continue; // joined from several sheets: see below
      const picture = render(await file, page);
      // Of the closed lines that wide, the legend has none.
      for (const { points } of strokes.filter((stroke) => isCut(stroke) && stroke.closed)) {
        const near = boxOf(points);
        const ink = inkIn(picture, { x: near.x - 2, y: near.y - 2, width: near.width + 4, height: near.height + 4 });
        const named = words.find(
          ({ text, x, y, size }) =>
            Object.values(pattern.pieces).some(({ label }) => label === text) &&
            size > 3.5 &&
            x > near.x &&
            x < near.x + near.width &&
            y > near.y &&
            y < near.y + near.height,
        );
        found.set(named?.text ?? '', { ...ink, width: ink.width - 0.5, height: ink.height - 0.5 });
      }
    }
    expect(found.size).toBeGreaterThan(4);
    for (const [label, { width, height }] of found) {
      const piece = Object.values(pattern.pieces).find((one) => one.label === label);
      const model = bounds(piece?.cutOutline ?? []);
      const turned = Math.abs(width - model.height) < Math.abs(width - model.width);
      expect(Math.abs(width - (turned ? model.height : model.width)), `${label}, width`).toBeLessThan(TENTH);
      expect(Math.abs(height - (turned ? model.width : model.height)), `${label}, height`).toBeLessThan(TENTH);
    }
  });

  test('text says the numbers of the model', async () => {
    const text = spaced(poppler('pdftotext', '-layout', await file, '-').toString());
    for (const { label, size, folds } of Object.values(pattern.pieces)) {
      expect(text).toContain(label.split(' ')[0]);
      expect(text).toContain(spaced(`${set(size.width)} × ${set(size.height)}`));
      for (const { at } of folds) expect(text).toContain(spaced(set(at)));
    }
  });

  test('fold lines of the gauge lie where the plan has them', async () => {
    const strip = Object.values(pattern.pieces).find(isPleated)!;
    const { pages } = await readPdf(await printed(foldGauge(strip, pattern, { paper }), at.path));
    // Folds are the dashed strokes as wide as the strip; those of one length lie as far apart as in the plan.
    const folds = pages.flatMap(({ strokes }) =>
      strokes.filter(({ dashed, points }) => dashed && Math.abs(points[0]!.x - points[1]!.x) > 20),
    );
    expect(folds).toHaveLength(strip.pleats.folds.length);
    const columns = Map.groupBy(folds, ({ points }) => Math.round(points[0]!.x));
    const plan = strip.pleats.folds.map(({ at }) => at);
    for (const column of columns.values()) {
      const heights = column.map(({ points }) => points[0]!.y).sort((a, b) => b - a);
      const steps = heights.slice(1).map((height, i) => heights[i]! - height);
      const first = plan.findIndex((_, k) =>
        steps.every((step, i) => Math.abs(plan[k + i + 1]! - plan[k + i]! - step) < TENTH),
      );
      expect(first, `folds ${steps.join(', ')} mm apart`).toBeGreaterThanOrEqual(0);
    }
  });
});

/** Blanks of any width as one plain blank: how they are told differs from reader to reader. */
const spaced = (text: string): string =>
  text.replace(/[\s\u202f\u2009]+/gu, ' ').replace(/(\d) (?=[⁄½¼¾⅛⅜⅝⅞])/gu, '$1');

test('fonts are embedded, and only the letters that are used', async () => {
  for (const document of demoHandouts('A4', 'inch')) {
    const file = await printed(document, at.path);
    const rows = poppler('pdffonts', file).toString().trim().split('\n').slice(2);
    expect(rows.length).toBeGreaterThan(0);
    // Columns: name, type, encoding, embedded, subset, unicode.
    for (const row of rows) expect(row).toMatch(/CID TrueType\s+Identity-H\s+yes\s+yes\s+yes/);
  }
});

test('nothing is printed outside 10 mm, and nothing in colour', async () => {
  for (const paper of ['A4', 'Letter'] as const) {
    for (const document of demoHandouts(paper, 'metric')) {
      const file = await printed(document, at.path);
      const [width, height] = published[paper];
      for (let page = 1; page <= document.pages.length; page += 3) {
        const all = inkIn(render(file, page, 100), { x: 0, y: 0, width, height });
        expect(all.x).toBeGreaterThan(9.6);
        expect(all.y).toBeGreaterThan(9.6);
        expect(all.x + all.width).toBeLessThan(width - 9.6);
        expect(all.y + all.height).toBeLessThan(height - 9.6);
      }
      const ppm = poppler('pdftoppm', '-r', '40', '-f', '1', '-l', '2', file);
      const head = /^P6\s+\d+\s+\d+\s+255\s/.exec(ppm.subarray(0, 40).toString('latin1'))![0].length;
      const coloured = ppm
        .subarray(head)
        .some((value, i, all) => i % 3 !== 0 && Math.abs(value - all[i - 1]!) > 2 && i < 3e5);
      expect(coloured).toBe(false);
    }
  }
});

describe('sheets that are joined', () => {
  const strip = demoPattern('metric');
  const odd = patternOf([
    outlined(lShape, { name: 'corner', label: 'Corner' }),
    outlined(slanting, { name: 'gore', label: 'Gore' }),
    outlined(rounded, { name: 'mat', label: 'Mat' }),
  ]);
  const cases = (['A4', 'Letter'] as const).flatMap((paper) =>
    [...Object.values(odd.pieces), strip.pieces['pocket strip']!].map((piece) => [piece.label, paper, piece] as const),
  );

  test.each(cases)('%s on %s: pasted by the diamonds, it is the piece', async (_, paper, piece) => {
    const pattern: Pattern = { ...odd, pieces: { [piece.name]: piece } };
    const handout = templates(pattern, { paper });
    const file = await printed(handout, at.path);
    const { pages } = await readPdf(file);
    const pasted = paste(pages);
    expect(pasted.length).toBe(sheets(handout).length);

    // The pasted sheets may lie turned and anywhere: the boxes of both are brought together.
    const all = pasted.flatMap(({ page, by }) =>
      page.strokes
        .filter((one) => isCut(one) && !isLegend(one))
        .map((one) => one.points.map((point) => plus(point, by))),
    );
    const box = boxOf(all.flat());
    const model = outlinePoints(piece, box);
    expect(farthest(model, all)).toBeLessThan(FIFTH);
    const ring = [[...model, model[0]!]];
    expect(farthest(all.flatMap(dense), ring)).toBeLessThan(FIFTH);

    // And the same in ink: wherever the piece's edge runs, one of the sheets is black.
    const pictures = pasted.map(({ number, by }) => ({ picture: render(file, number), by }));
    const white = model.filter((point) => {
      return !pictures.some(({ picture, by }) => isBlack(picture, { x: point.x - by.x, y: point.y - by.y }));
    });
    expect(white).toEqual([]);
  });
});

const plus = (a: Point, b: Point): Point => ({ x: a.x + b.x, y: a.y + b.y });

/** A short level stroke: the sample of a cut line in the legend. */
const isLegend = ({ points }: Drawn): boolean =>
  points.length === 2 && points[0]!.y === points[1]!.y && Math.abs(points[0]!.x - points[1]!.x) < 12;

/**
 * Lays the sheets together as their reader would: the first lies still, and each other is moved until the diamonds with
 * one name close.
 */
function paste(pages: readonly ReadPage[]): { page: ReadPage; number: number; by: Point }[] {
  const marked = pages.flatMap((page, i) => {
    const marks = diamondsOn(page);
    return marks.size > 0 ? [{ page, number: i + 1, marks }] : [];
  });
  const [first, ...rest] = marked;
  if (!first) return [];
  const laid = [{ ...first, by: { x: 0, y: 0 } }];
  for (let left = rest; left.length > 0;) {
    const next = left.find(({ marks }) =>
      laid.some((other) => [...marks.keys()].some((name) => other.marks.has(name))),
    );
    if (!next) throw new Error('A sheet has no diamond in common with the others.');
    const shared = laid.flatMap((other) =>
      [...next.marks].flatMap(([name, place]) => {
        const there = other.marks.get(name);
        return there ? [{ x: there.x + other.by.x - place.x, y: there.y + other.by.y - place.y }] : [];
      }),
    );
    // All diamonds that two sheets share close at once.
    for (const one of shared) expect(Math.hypot(one.x - shared[0]!.x, one.y - shared[0]!.y)).toBeLessThan(FIFTH);
    laid.push({ ...next, by: shared[0]! });
    left = left.filter((other) => other !== next);
  }
  return laid;
}

/** The middles of a sheet's diamonds by their names: A1–A2, and which of the two, from the left or from the top. */
function diamondsOn({ strokes, words }: ReadPage): Map<string, Point> {
  const found = new Map<string, Point[]>();
  for (const { points } of strokes) {
    if (points.length !== 3 && points.length !== 4) continue;
    const slanted = points
      .slice(1)
      .every(
        (point, i) =>
          Math.abs(Math.abs(point.x - points[i]!.x) - 3) < 0.05 &&
          Math.abs(Math.abs(point.y - points[i]!.y) - 3) < 0.05,
      );
    if (!slanted) continue;
    // A whole diamond's first and third corner, and a half one's first and last, lie on either side of its middle.
    const middle = { x: (points[0]!.x + points[2]!.x) / 2, y: (points[0]!.y + points[2]!.y) / 2 };
    const names = words.filter(({ text }) => /^[A-Z]+\d+–[A-Z]+\d+$/u.test(text));
    const far = (word: (typeof names)[number]) => Math.hypot(word.x - middle.x, word.y - middle.y);
    const name = names.sort((a, b) => far(a) - far(b))[0]!.text;
    found.set(name, [...(found.get(name) ?? []), middle]);
  }
  return new Map(
    [...found].flatMap(([name, middles]) =>
      middles.sort((a, b) => a.x - b.x || a.y - b.y).map((middle, i) => [`${name} ${i}`, middle] as const),
    ),
  );
}

/** The model's cut line at the place where the pasted one lies, y down, every 2 mm or closer. */
function outlinePoints(piece: Piece, box: Box): Point[] {
  const { x, y, width, height } = bounds(piece.cutOutline);
  const turned = Math.abs(box.width - width) > 1;
  const points = sample(piece.cutOutline, 0.01).map((point) => {
    const [across, up] = [point.x - x, point.y - y];
    return turned
      ? { x: box.x + (height - up), y: box.y + width - across }
      : { x: box.x + across, y: box.y + height - up };
  });
  return dense([...points, points[0]!]);
}

/** Points along a line, 2 mm apart or less. */
function dense(points: readonly Point[]): Point[] {
  return points.slice(1).flatMap((to, i) => {
    const from = points[i]!;
    const count = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 2));
    return Array.from({ length: count }, (_, k) => ({
      x: from.x + ((to.x - from.x) * k) / count,
      y: from.y + ((to.y - from.y) * k) / count,
    }));
  });
}

/** The most that any of the points lies away from the lines. */
function farthest(points: readonly Point[], lines: readonly (readonly Point[])[]): number {
  const pieces = lines.flatMap((line) => line.slice(1).map((to, i) => [line[i]!, to] as const));
  return Math.max(...points.map((point) => Math.min(...pieces.map(([a, b]) => fromLine(point, a, b)))));
}

function fromLine(point: Point, a: Point, b: Point): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const size = dx * dx + dy * dy;
  const t = size === 0 ? 0 : Math.max(0, Math.min(1, ((point.x - a.x) * dx + (point.y - a.y) * dy) / size));
  return Math.hypot(point.x - a.x - t * dx, point.y - a.y - t * dy);
}

/** Whether a page is black at a place or within a fifth of a millimetre of it. */
function isBlack({ ink, dpi, width, height }: Picture, { x, y }: Point): boolean {
  const mm = dpi / 25.4;
  const reach = Math.floor(FIFTH * mm);
  const [column, row] = [Math.floor(x * mm), Math.floor(y * mm)];
  for (let dx = -reach; dx <= reach; dx++) {
    for (let dy = -reach; dy <= reach; dy++) {
      const [c, r] = [column + dx, row + dy];
      if (c >= 0 && r >= 0 && c < width && r < height && ink(c, r) > 128) return true;
    }
  }
  return false;
}
