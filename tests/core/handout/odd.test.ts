/** What nobody means to print, and what is said of it. */
import { describe, expect, it } from 'vitest';
import {
  cuttingList,
  exercisesFor,
  materialsSheet,
  rectangle,
  missingCharacterText,
  stepSheet,
  templates,
  worksheet,
  writePdf,
} from '../../../src/core/index.ts';
import type { Handout, Pattern, Piece, Shape, TextShape } from '../../../src/core/index.ts';
import { papers } from '../../../src/core/index.ts';
import { cutPiece, fonts, outlined, patternOf } from './documents.ts';
import { letteringBox } from '../../../src/core/drawing/index.ts';

const setting = { paper: 'A4' } as const;
const texts = (handout: Handout): TextShape[] =>
  handout.pages.flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : [])));
const bytes = async (handout: Handout) => (await writePdf(handout, fonts)).bytes.length;

/** No lettering runs off the paper. */
function expectOnPaper(handout: Handout): void {
  const { width, height } = papers[handout.paper];
  for (const shape of texts(handout)) {
    const box = letteringBox(shape);
    expect(box.x, shape.text).toBeGreaterThan(9);
    expect(box.x + box.width, shape.text).toBeLessThan(width - 9);
    expect(box.y, shape.text).toBeGreaterThan(9);
    expect(box.y + box.height, shape.text).toBeLessThan(height - 9);
  }
}

describe('pieces of odd sizes', () => {
  it('a piece larger than 3 m has no template, and the document says so', async () => {
    const sail = outlined(rectangle(3100, 400), { name: 'sail', label: 'Sail' });
    const handout = templates(patternOf([sail]), setting);
    expect(handout.findings).toEqual([
      'Sail is 3100\u202fmm × 400\u202fmm: too large for a template. Cut it by its measures.',
    ]);
    expect(handout.pages).toHaveLength(1);
    expect(
      texts(handout)
        .map(({ text }) => text)
        .join(' '),
    ).toContain('too large for a template');
    expect(await bytes(handout)).toBeGreaterThan(1000);
  });

  it('a piece smaller than 1 mm has none either', () => {
    const crumb = outlined(rectangle(0.5, 30), { name: 'crumb', label: 'Crumb' });
    const { findings } = templates(patternOf([crumb]), setting);
    expect(findings).toEqual(['Crumb is ≈\u202f1\u202fmm × 30\u202fmm: too small for a template.']);
  });

  it('a piece of 3 m by 3 m is joined from all its sheets', () => {
    const handout = templates(patternOf([outlined(rectangle(3000, 3000), { name: 'sheet', label: 'Sheet' })]), setting);
    // 190 mm, then 180 more each: 17 in a row; 14 rows of 225 mm and less, after head and test marks.
    expect(handout.findings).toEqual([]);
    expect(handout.pages.length).toBeGreaterThan(17 * 13);
    expectOnPaper(handout);
  });

  it('a scallop of 200 corners keeps them all', () => {
    const points = Array.from({ length: 200 }, (_, i) => {
      const [angle, radius] = [(2 * Math.PI * i) / 200, i % 2 === 0 ? 60 : 55];
      return { x: 70 + radius * Math.cos(angle), y: 70 + radius * Math.sin(angle) };
    });
    const { pages } = templates(patternOf([cutPiece(points, { name: 'scallop', label: 'Scallop' })]), setting);
    const cut = pages[1]!.scene.shapes.find(
      (shape): shape is Shape & { kind: 'path' } => shape.name === 'scallop cut line',
    );
    expect(cut?.path.filter(([letter]) => letter !== 'Z')).toHaveLength(201);
  });

  it('words that have no place in a small piece stand below it', () => {
    const tab = outlined(rectangle(12, 12), { name: 'tab', label: 'Tab' });
    const loop = outlined(rectangle(12, 13), { name: 'loop', label: 'Loop' });
    const handout = templates(patternOf([tab, loop]), setting);
    expect(handout.pages).toHaveLength(2);
    expect(texts(handout).filter(({ text }) => text === 'Cut 1 of print for the cover and the flap.')).toHaveLength(2);
    expectOnPaper(handout);
  });

  it('nothing to print is said, on paper too', () => {
    const empty = patternOf([]);
    const none = exercisesFor([], () => empty, 'A');
    const lesson = { name: 'sewing', title: 'Sewing' };
    const all = [
      templates(empty, setting),
      cuttingList(empty, setting),
      materialsSheet({ ...empty, materials: {} }, setting),
      worksheet(lesson, none, [{ series: 'A', sheet: 1 }], empty, setting),
      stepSheet([], empty, { cautions: {}, defersTo: '' }, setting),
    ];
    for (const handout of all) {
      expect(handout.pages).toHaveLength(1);
      expect(handout.findings).toHaveLength(1);
      expect(
        texts(handout)
          .map(({ text }) => text)
          .join(' '),
      ).toContain('nothing to print');
    }
  });
});

describe('odd titles', () => {
  const piece: Piece = outlined(rectangle(80, 60), { name: 'card', label: 'Card' });
  const titled = (title: string): Pattern => patternOf([piece], 'metric', title);

  it('one of 300 letters stays on the paper', () => {
    const long = 'A folio with pockets for every card there is '.repeat(7).slice(0, 300);
    for (const paper of ['A4', 'Letter'] as const) {
      for (const largePrint of [false, true]) {
        expectOnPaper(templates(titled(long), { paper, largePrint }));
        expectOnPaper(cuttingList(titled(long), { paper, largePrint }));
      }
    }
    expectOnPaper(templates(titled('Ö'.repeat(300)), setting));
    expectOnPaper(cuttingList(patternOf([{ ...piece, label: 'W'.repeat(300) }]), setting));
  });

  it.each([
    ['Chinese', '布袋 folio', ['布', '袋']],
    ['Arabic', 'حقيبة', ['ح', 'ق', 'ي', 'ب', 'ة']],
    ['Hebrew', 'תיק', ['ת', 'י', 'ק']],
  ])('in %s, the letters that the font lacks are named and shown as a question mark', async (_, title, lacking) => {
    const { unshown, bytes } = await writePdf(templates(titled(title), setting), fonts);
    expect(unshown.map(({ character }) => character)).toEqual(lacking);
    expect(bytes.length).toBeGreaterThan(1000);
    const said = missingCharacterText(unshown);
    for (const character of lacking) {
      expect(said).toContain(
        `${character} (U+${character.codePointAt(0)!.toString(16).toUpperCase().padStart(4, '0')})`,
      );
    }
    expect(said).toContain('A question mark stands for each.');
  });

  it('accents, fractions and quotation marks are all there', async () => {
    const { unshown } = await writePdf(
      templates(titled('Étui à 3⅝ et 3⁄16: “Größe”, ≈ 4½″ × 5′, žluťoučký'), setting),
      fonts,
    );
    expect(unshown).toEqual([]);
  });
});
