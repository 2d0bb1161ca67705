import { describe, expect, it } from 'vitest';
import { letteringBox } from '../../../src/core/drawing/index.ts';
import { writePdf, type Handout, type TextShape } from '../../../src/core/index.ts';
import { meet } from '../../../src/core/handout/place.ts';
import { content, courseHandouts, courses, demoHandouts, fonts, makeHandouts } from './documents.ts';

const POINT = 25.4 / 72;
const lettering = ({ scene }: Handout['pages'][number]): TextShape[] =>
  scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape] : []));

const sets = [
  ['A4', 'inch', false],
  ['A4', 'metric', true],
  ['Letter', 'inch', true],
  ['Letter', 'metric', false],
] as const;

describe.each(sets)('the documents of the demo course: %s, %s, large print %s', (paper, edition, largePrint) => {
  const all = demoHandouts(paper, edition, largePrint);

  it.each(courses)('are there for %s, each with a name of its own', (course) => {
    const names = courseHandouts(course, paper, edition, largePrint).map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
    for (const name of ['templates', 'step-sheet', 'cutting-list', 'materials-list', 'class-plan']) {
      expect(names).toContain(name);
    }
    const lessons = content.lessons.filter((lesson) => lesson.course === course).map(({ slug }) => slug);
    expect(names.filter((name) => name.startsWith('worksheet-'))).toEqual(lessons.map((slug) => `worksheet-${slug}`));
    expect(names.filter((name) => name.startsWith('answer-key-'))).toEqual(lessons.map((slug) => `answer-key-${slug}`));
  });

  it('are joined by a gauge for each piece that is pleated, and for no other', () => {
    expect(all.map(({ name }) => name).filter((name) => name.startsWith('fold-gauge-'))).toEqual([
      'fold-gauge-pocket-strip',
    ]);
  });

  it('keep what is the teacher’s from the makers', () => {
    for (const { name, reader } of all) expect(reader === 'teacher').toBe(/^answer-key|^class-plan/.test(name));
  });

  it('have no lettering over lettering, and none off the paper', () => {
    for (const handout of all) {
      for (const [n, page] of handout.pages.entries()) {
        const boxes = lettering(page).map((shape) => ({ shape, box: letteringBox(shape) }));
        for (const [i, { shape, box }] of boxes.entries()) {
          expect(box.x, `${handout.name}, page ${n + 1}: ${shape.text}`).toBeGreaterThan(9.9);
          expect(box.x + box.width, `${handout.name}, page ${n + 1}: ${shape.text}`).toBeLessThan(
            page.scene.width - 9.9,
          );
          // Ascenders and tails of neighbouring lines may share a hair; letters may not.
          const core = { ...box, y: box.y + 0.2, height: box.height - 0.4 };
          const over = boxes.slice(i + 1).find((other) => meet(core, other.box));
          expect(over?.shape.text, `${handout.name}, page ${n + 1}: over ${shape.text}`).toBeUndefined();
        }
      }
    }
  });

  it('set no letter smaller than 9 pt, or 14 pt in large print', () => {
    const least = (largePrint ? 14 : 9) * POINT;
    for (const handout of all) {
      for (const page of handout.pages) {
        for (const { size, text } of lettering(page)) expect(size, text).toBeGreaterThanOrEqual(least - 1e-9);
      }
    }
  });

  it('count their pages', () => {
    for (const { name, pages } of all) {
      const counted = pages.map((page) => lettering(page).find((shape) => shape.name === 'page')?.text);
      for (const text of counted) expect(text, name).toMatch(/^page \d+ of \d+$/);
      if (!name.startsWith('worksheet-')) {
        expect(counted).toEqual(pages.map((_, i) => `page ${i + 1} of ${pages.length}`));
      }
    }
  });

  it('give every shape of a page a name of its own', () => {
    for (const { name, pages } of all) {
      for (const { scene } of pages) {
        const names = scene.shapes.map((shape) => shape.name);
        expect(
          names.filter((one, i) => names.indexOf(one) !== i),
          name,
        ).toEqual([]);
      }
    }
  });
});

it('the same document is the same file, and twenty pages are less than 1 MB', async () => {
  const [first, again] = [demoHandouts('A4', 'inch'), courses.flatMap((course) => makeHandouts(course, 'A4', 'inch'))];
  for (const [i, handout] of first.entries()) {
    const { bytes, unshown } = await writePdf(handout, fonts);
    expect(unshown).toEqual([]);
    // Fonts are in every file once; pages weigh the same in a long one as in a short one.
    expect((bytes.length * 20) / handout.pages.length).toBeLessThan(1_000_000);
    if (i % 3 === 0) expect(Buffer.compare(bytes, (await writePdf(again[i]!, fonts)).bytes)).toBe(0);
  }
}, 120_000);

it('the writer tells how far it is', async () => {
  const handout = demoHandouts('A4', 'inch')[0]!;
  const told: number[] = [];
  await writePdf(handout, fonts, (done, all) => {
    expect(all).toBe(handout.pages.length);
    told.push(done);
  });
  expect(told).toEqual(handout.pages.map((_, i) => i + 1));
});
