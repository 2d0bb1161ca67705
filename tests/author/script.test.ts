import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { makeUp } from '../../src/core/index.ts';
import { inEditions } from '../../components/words/recording/view.ts';
import { scriptFor } from '../../src/author/script.ts';
import { classMaterials, classProject } from '../core/project/files.ts';
import { readContent } from '../../src/site/content/read-content.ts';

const { projects, materials } = readContent(fileURLToPath(new URL('../..', import.meta.url)));
const folio = projects.find(({ id }) => id === 'swatch-folio')!.value!;

test('a script tells every step with what to say and what lies ready; long ones are marked', () => {
  const text = scriptFor(folio, materials.value!, 'inch');
  const steps = makeUp(inEditions(folio, materials.value!).inch);
  for (const [i, step] of steps.entries()) {
    const part = text.slice(
      text.indexOf(`\n${i + 1} of ${steps.length}  `),
      text.indexOf(`\n${i + 2} of ${steps.length}  `) >>> 0,
    );
    expect(part).toContain(`Say: ${step.title}.`);
    expect(part.includes('LONG')).toBe(step.minutes.value > 6);
  }
  // By hand from the project file: the panel is cut 4 1/4 + 2 * 1/8 + 2 * 3/8 = 5 1/4 in wide, in metric 105 + 6 + 20 = 131 mm.
  expect(text).toContain('Now it measures 5 and a quarter inches by');
  expect(text).toContain('in metric 131 millimetres by');
  expect(text).toContain('Close-up: the first pair of folds');
});

test('the close-ups are what the drawings show as done, at their sides and corners, with the distances to measure', () => {
  const script = scriptFor(classProject('half-apron')(), classMaterials(), 'inch');
  const shots = (step: number): string[] =>
    (
      script
        .split(new RegExp(`\\n(?=${step} of 21 )`))[1]!
        .split('\n\n')[0]!
        .match(/Close-up: .*/g) ?? []
    ).map((one) => one.slice('Close-up: '.length));
  // By hand from the project file: hemmed at the left and the right; a fold at the left; drop / 4 and skirt width / 8.
  expect(shots(1)[0]).toBe('the fold at the right and the left, as it is turned, from the back');
  expect(shots(4)).toEqual(['the fold at the left, as it is turned']);
  expect(shots(7)).toEqual([
    'the ruler, its top lies 4 and a half inches from the top',
    'the ruler, its right lies 3 and 3 eighths inches from the right',
  ]);
  // Gathers are a row at the top; a flap is sewn down, across and up, round two corners.
  expect(shots(9)).toContain('the row of stitches at the top, where it begins and where it ends');
  const flap = scriptFor(folio, materials.value!, 'inch')
    .split(/\n(?=\d+ of)/)
    .find((part) => part.includes('(flap)'));
  expect(flap).toMatch(/Close-up: the corners at the bottom left and the bottom right, as the row turns\n/);
});
