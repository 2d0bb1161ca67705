/** A document on paper says which size and which choices it is for. */
import { expect, it } from 'vitest';
import { cuttingList, makeUp, materialsSheet, stepSheet, templates } from '../../../src/core/index.ts';
import { madeAs } from '../../../src/core/handout/handout.ts';
import { cautions, defersTo } from '../../../components/words/caution/cautions.ts';
import { resolved } from '../project/files.ts';

const skirt = (sizes = '', settings = {}) =>
  resolved(
    `
title: Skirt
${sizes}
measures: { waist: 26, seam: 1/4 }
pieces: { panel: { from: outer, size: [waist, 10] } }
`,
    settings,
  );
const SIZES = `sizes: { label: Size, of: { small: { waist: 26 }, large: { waist: 34 } } }
choices: { back: { label: The back, one of: { plain: {}, zip: { label: With a zip } } } }`;

it('names the project as it is made', () => {
  expect(madeAs(skirt())).toBe('Skirt');
  expect(madeAs(skirt(SIZES))).toBe('Skirt, size: small, plain');
  expect(madeAs(skirt(SIZES, { size: 'large', options: { back: 'zip' } }))).toBe('Skirt, size: large, With a zip');
});

it('stands under the title and at the foot of what is printed', () => {
  const pattern = skirt(SIZES, { size: 'large' });
  const setting = { paper: 'A4' } as const;
  for (const { name, pages } of [
    templates(pattern, setting),
    cuttingList(pattern, setting),
    materialsSheet(pattern, setting),
    stepSheet(makeUp(pattern), pattern, { cautions, defersTo }, setting),
  ])
    for (const { scene } of pages) {
      const words = scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
      expect(words.join(' '), name).toContain('Skirt, size: large, plain');
    }
});
