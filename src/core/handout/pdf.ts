import { motifs } from '../drawing/motifs.ts';
import { NOW_HEAVIER, pens } from '../drawing/pens.ts';
import { missingCharacters, type MissingCharacter } from './missing-characters.ts';
import { printedAtActualSize } from './actual-size.ts';
import type { Font } from 'fontkit';
import type PDFDocument from 'pdfkit';
import type { Motif } from '../drawing/motifs.ts';
import type { Path } from '../drawing/path.ts';
import type { Ink } from '../drawing/pens.ts';
import type { PathShape, Scene, TextShape } from '../drawing/scene.ts';
import type { Handout } from './handout.ts';

/** The family of page and print as TrueType files. */
export type Fonts = { readonly regular: Uint8Array; readonly strong: Uint8Array };

export type Printed = {
  readonly bytes: Uint8Array;
  /** Characters the fonts lack; each stands as a question mark in the document. */
  readonly unshown: readonly MissingCharacter[];
};

/** Black first: what a printer makes of the few colours. The same greys as the print style of the pages. */
const inks: Readonly<Record<Ink, string>> = {
  ink: '#000000',
  'ink-quiet': '#333333',
  thread: '#000000',
  tint: '#e9e9e9',
  'tint-quiet': '#f8f8f8',
  clay: '#dedede',
  'clay-quiet': '#f4f4f4',
  slate: '#e4e4e4',
  'slate-quiet': '#f6f6f6',
  sand: '#f1f1f1',
  'sand-quiet': '#fbfbfb',
  paper: '#ffffff',
};

/** The fonts that every document carries, as a reader of PDF shows it beside the title. */
const NOTICE = 'Set in Inter (The Inter Project Authors, SIL Open Font License 1.1), which is embedded.';

/** Printer's points in one mm. */
const K = 72 / 25.4;

/**
 * Writes a document as PDF: vectors at true size, text as text, fonts embedded with only the letters that are used.
 * The same document gives the same bytes. The writer is loaded when it is first asked for.
 *
 * @param progress told after each page how many of how many are drawn
 */
export async function writePdf(
  handout: Handout,
  fonts: Fonts,
  progress?: (done: number, all: number) => void | Promise<void>,
): Promise<Printed> {
  const [{ default: Document }, { create }] = await Promise.all([import('pdfkit'), import('fontkit')]);
  const doc = new Document({
    autoFirstPage: false,
    margin: 0,
    font: '', // no standard font is loaded
    lang: handout.language,
    displayTitle: true,
    pdfVersion: '1.7',
    // A fixed date: the same document is the same file.
    info: {
      Title: handout.title,
      Creator: 'Sewing course kit',
      Subject: NOTICE,
      CreationDate: new Date(Date.UTC(2000, 0, 1)),
    },
  });
  const parts: Uint8Array[] = [];
  doc.on('data', (part: Uint8Array) => parts.push(part));
  const ended = new Promise<void>((resolve, reject) => {
    doc.on('end', () => resolve());
    doc.on('error', reject);
  });
  doc.registerFont('regular', fonts.regular);
  doc.registerFont('strong', fonts.strong);
  const faces = [fonts.regular, fonts.strong].map((bytes) => create(bytes as Buffer) as Font);
  const lacking = missingCharacters(handout, (codePoint) =>
    faces.every((face) => face.hasGlyphForCodePoint(codePoint)),
  );
  const missing = new Set(lacking.map(({ character }) => character));

  for (const [i, { scene, bookmark }] of handout.pages.entries()) {
    doc.addPage({ size: [scene.width * K, scene.height * K], margin: 0 });
    if (bookmark !== undefined) doc.outline.addItem(shown(bookmark, missing));
    draw(doc, scene, missing);
    await progress?.(i + 1, handout.pages.length);
  }
  doc.end();
  await ended;
  return { bytes: printedAtActualSize(joined(parts)), unshown: lacking };
}

type Doc = InstanceType<typeof PDFDocument>;
type Features = PDFKit.Mixins.OpenTypeFeatures[] | undefined;

function joined(parts: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}

/** A text with a question mark for each character that the fonts lack. */
const shown = (text: string, missing: ReadonlySet<string>): string =>
  missing.size === 0 ? text : [...text].map((character) => (missing.has(character) ? '?' : character)).join('');

function draw(doc: Doc, scene: Scene, missing: ReadonlySet<string>): void {
  doc.save();
  doc.scale(K);
  const tiles = new Map<string, ReturnType<Doc['pattern']>>();
  for (const shape of scene.shapes) {
    if (shape.kind === 'text') write(doc, { ...shape, text: shown(shape.text, missing) });
    else
      stroke(doc, shape, (motif, turn) => {
        const key = `${motif} ${turn}`;
        const made = tiles.get(key) ?? pattern(doc, motif, turn);
        tiles.set(key, made);
        return made;
      });
  }
  doc.restore();
}

function stroke(doc: Doc, shape: PathShape, motif: (name: Motif, turn: number) => ReturnType<Doc['pattern']>): void {
  const { fill, line } = pens[shape.role];
  if (fill) {
    trace(doc, shape.path);
    doc.fill(inks[fill.tone]);
    if (fill.motif) {
      trace(doc, shape.path);
      doc.fill([motif(fill.motif, shape.turn ?? 0), inks['ink-quiet']] as unknown as string);
    }
  }
  if (line) {
    trace(doc, shape.path);
    doc.lineWidth(line.width * (shape.now ? NOW_HEAVIER : 1)).lineJoin('round');
    // The library takes a list of lengths, too; its types know one length alone.
    if (line.dash) doc.dash(line.dash as unknown as number, {});
    doc.stroke(inks[shape.now ? 'thread' : line.ink]);
    if (line.dash) doc.undash();
  }
}

function trace(doc: Doc, path: Path): void {
  for (const command of path) {
    if (command[0] === 'M') doc.moveTo(command[1], command[2]);
    else if (command[0] === 'L') doc.lineTo(command[1], command[2]);
    else if (command[0] === 'C')
      doc.bezierCurveTo(command[1], command[2], command[3], command[4], command[5], command[6]);
    else doc.closePath();
  }
}

/**
 * A motif as a pattern that repeats by itself, turned clockwise by degrees; its marks take the colour that it is used
 * with.
 */
function pattern(doc: Doc, name: Motif, turn: number): ReturnType<Doc['pattern']> {
  const { width, height, path, line } = motifs[name];
  const marks = path.map(([letter, ...numbers]) =>
    letter === 'Z' ? 'h' : `${numbers.map((n) => n.toFixed(3)).join(' ')} ${letter.toLowerCase()}`,
  );
  const marked = line === undefined ? [...marks, 'f'] : [`${line} w`, ...marks, 'S'];
  const made = doc.pattern([0, 0, width, height], width, height, marked.join('\n'));
  // A pattern lies as the page lay when it was put into the document.
  doc.save();
  doc.rotate(turn);
  made.embed();
  doc.restore();
  return made;
}

/**
 * One line of lettering. Figures are tabular, as on the page; a fraction that has no sign of its own is drawn by the
 * font's `frac` feature, which must not see the whole number before it.
 */
function write(doc: Doc, { text, x, y, size, anchor, strong }: TextShape): void {
  doc
    .font(strong ? 'strong' : 'regular')
    .fontSize(size)
    .fillColor(inks.ink);
  const runs = text.split(/(\d+⁄\d+)/u).flatMap((run, i) => {
    if (run === '') return [];
    const features: Features = i % 2 === 1 ? ['frac'] : /\d/u.test(run) ? ['tnum'] : undefined;
    return [{ run, options: { features, lineBreak: false, baseline: 'alphabetic' } as const }];
  });
  const widths =
    runs.length > 1 || anchor !== 'start' ? runs.map(({ run, options }) => doc.widthOfString(run, options)) : [0];
  const width = widths.reduce((sum, width) => sum + width, 0);
  let left = x - { start: 0, middle: 0.5, end: 1 }[anchor] * width;
  runs.forEach(({ run, options }, i) => {
    doc.text(run, left, y, options);
    left += widths[i]!;
  });
}
