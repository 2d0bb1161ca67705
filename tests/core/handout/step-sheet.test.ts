import { describe, expect, it } from 'vitest';
import { formatLength, makeUp, stepSheet } from '../../../src/core/index.ts';
import type { TextShape } from '../../../src/core/index.ts';
import { cautions, defersTo } from '../../../components/words/caution/cautions.ts';
import { resolved } from '../project/files.ts';
import { panels } from '../project/steps.ts';
import { demoPattern } from './documents.ts';

const pattern = resolved(
  panels(`
- { join: [front, back], at: top, press: open, makes: body, note: Match the raw edges., should look: 'The seam shows [seam] of cloth at each side.' }
- { hem: body, at: front bottom, fold: 5 mm, then: 10 mm }
- { press: body, if wrong: Damp it and press anew. }
- { fold: body, from: top, at: 40 mm }
`),
);
const steps = makeUp(pattern);

describe.each([
  ['A4', false],
  ['Letter', true],
] as const)('the step sheet on %s, large print %s', (paper, largePrint) => {
  const { pages } = stepSheet(steps, pattern, { cautions, defersTo }, { paper, largePrint });
  const onPage = pages.map(({ scene }) => scene.shapes.filter((shape): shape is TextShape => shape.kind === 'text'));
  const words = onPage.map((texts) => texts.map(({ text }) => text).join(' '));

  it('has every step, numbered, with a box to tick', () => {
    expect(steps).toHaveLength(4);
    steps.forEach(({ title }, i) => expect(words.join(' ')).toContain(`${i + 1}. ${title}.`));
    const ticks = pages.flatMap(({ scene }) => scene.shapes.filter(({ name }) => / tick$/.test(name)));
    expect(ticks).toHaveLength(4);
  });

  it('says what the work measures after each step, on the page of the step', () => {
    const set = (mm: number) => formatLength(mm, 'metric', { grid: pattern.grid, style: 'set' });
    steps.forEach(({ title, size }, i) => {
      const page = words.find((text) => text.includes(`${i + 1}. ${title}.`));
      expect(page).toContain(`Now measures ${set(size.width)} × ${set(size.height)}.`);
    });
  });

  it('has a drawing, the note and the cautions of a step', () => {
    const all = words.join(' ');
    expect(all).toContain('Match the raw edges.');
    expect(all).toContain('Hot iron: Iron and steam burn.');
    expect(all).toContain('Machine needle: Keep your fingers out of the needle’s way.');
    expect(all.indexOf(defersTo.slice(0, 20))).toBeLessThan(all.indexOf('1. '));
    const drawn = pages.flatMap(({ scene }) => scene.shapes.filter(({ name }) => /^\d+ step \d+ /.test(name)));
    expect(new Set(drawn.map(({ name }) => name.split(' ')[2])).size).toBe(4);
  });

  it('tells how the machine is set, how it should look and what to do if it went wrong', () => {
    const all = words.join(' ').replace(/[\u202f\u00a0]/gu, ' ');
    expect(all).toContain('Machine: straight stitch, 2 to 3 mm · needle NM 80 (US 12), universal · standard foot.');
    expect(all).toContain('How it should look: The seam shows 6 mm of cloth at each side.');
    expect(all).toContain('If it went wrong: Damp it and press anew.');
    // Nothing is sewn in the last two steps.
    expect(all.match(/Machine: /g)).toHaveLength(2);
  });

  it('is read from 60 cm', () => {
    // 13 pt is 4.6 mm of type; a capital is then 3.3 mm high: 19 minutes of arc at 60 cm. Letters of 20/20 sight are 5
    // minutes high (ISO 8596), and print is read with ease at some three times that (common practice, no source).
    const titles = onPage.flat().filter(({ text }) => /^\d\. /.test(text));
    for (const { size } of titles) expect(size).toBeGreaterThanOrEqual((13 * 25.4) / 72 - 1e-9);
  });
});

it.each(['A4', 'Letter'] as const)('no step is divided in large print on %s, tall drawings among them', (paper) => {
  const folio = demoPattern('metric');
  const all = makeUp(folio);
  const { pages } = stepSheet(all, folio, { cautions, defersTo }, { paper, largePrint: true });
  const words = pages.map(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));
  for (const texts of words) {
    const steps = texts.filter((text) => /^\d+\. {1,2}\w/.test(text));
    expect(steps.length).toBeGreaterThan(0);
    expect(texts.filter((text) => text.startsWith('Now measures'))).toHaveLength(steps.length);
  }
});

it.each(['A4', 'Letter'] as const)('the folio takes at most nine pages of %s, with one legend', (paper) => {
  const folio = demoPattern('metric');
  const { pages } = stepSheet(makeUp(folio), folio, { cautions, defersTo }, { paper });
  expect(pages.length).toBeLessThanOrEqual(9);
  const names = pages.map(({ scene }) => scene.shapes.map(({ name }) => name).join('\n'));
  expect(names.filter((all) => all.includes('legend legend'))).toHaveLength(1);
  // What is red in any drawing is told in it, once.
  const words = pages[0]!.scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
  for (const text of ['folded in this step', 'sewn in this step', 'cut in this step', 'set in this step'])
    expect(words.filter((one) => one === text)).toHaveLength(1);
});
