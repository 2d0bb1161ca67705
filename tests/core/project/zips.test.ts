/** Zips and other hardware as what they are: how each is set, and what a needle must not meet. */
import { describe, expect, it } from 'vitest';
import { check, drawStep, kitFor, makeUp, MaterialsFile, ONE, type Pattern } from '../../../src/core/index.ts';
import { lines, resolved } from './files.ts';
import { panels } from './steps.ts';

const source = 'made up';
const materials = MaterialsFile.parse({
  cloth: { kind: 'cloth' },
  zip: {
    kind: 'hardware',
    hardware: 'zip',
    teeth: 'plastic',
    across: { in: '1 1/4', mm: 32, source },
    stops: { in: '3/4', mm: 20, source },
  },
  ...Object.fromEntries(
    ['snap', 'eyelet', 'magnet', 'button', 'ring', 'slider', 'hook'].map((kind) => [
      kind,
      { kind: 'hardware', hardware: kind, across: { in: '1', mm: 25, source } },
    ]),
  ),
});
const roles =
  'materials: { outer: cloth, zip: zip, snap: snap, eyelet: eyelet, magnet: magnet, button: button, ring: ring, slider: slider, hook: hook }';
const pattern = (steps: string, teeth: 'plastic' | 'metal' = 'plastic') =>
  resolved(
    panels(
      steps,
      `  zip: { size: [120 mm, 32 mm], from: zip, allowance: 0 }
  low: { size: [90 mm, 80 mm] }
  high: { size: [90 mm, 100 mm] }
  tab: { size: [60 mm, 20 mm], allowance: 0 }
  patch: { size: [20 mm, 20 mm], from: outer, allowance: 0 }
${roles}`,
    ),
    { materials: { ...materials, zip: { ...materials['zip']!, teeth } } },
  );
const told = (steps: string, teeth?: 'metal') =>
  lines(check(pattern(steps, teeth))).filter((line) => /zip-|too-wide|error/u.test(line));

describe('a row over a zip', () => {
  const across = (at: number, teeth?: 'metal') =>
    told(`- { lay: zip, on: front, from left: 0 }\n- { topstitch: front, at: zip left, by: ${at} mm }`, teeth);
  // The front is 100 mm wide: a zip of 120 mm reaches beyond it.
  const cut = '- { trim: zip, at: right, width: 90 mm }\n- { lay: zip, on: front, from left: 0, makes: panel }\n';

  it('must miss its stops, and metal teeth', () => {
    const over = (by: number, teeth?: 'metal') =>
      told(`${cut}- { topstitch: panel, at: zip left, by: ${by} mm }`, teeth);
    expect(over(20)[0]).toBe(
      'error steps > 2: zip-stop: This row runs over a stop of “zip”: the needle would break. Move the zip, or sew beside the stop.',
    );
    expect(over(23).some((line) => line.startsWith('error'))).toBe(false);
    expect(over(17).some((line) => line.startsWith('error'))).toBe(false);
    expect(over(40, 'metal')[0]).toBe(
      'error steps > 2: zip-teeth: This row crosses the metal teeth of “zip”: the needle would break. End the zip before the seam, with tabs at its ends, or take one of plastic.',
    );
    expect(across(10)[0]).toContain('off-the-work');
  });

  it('keeps the slider on where the zip was cut', () => {
    expect(told(cut)).toEqual([
      'warning steps > 1: zip-open-end: The slider comes off “zip”: at an end that was cut no row crosses its teeth. Sew across the teeth there, by hand or in a seam, or keep the stop.',
    ]);
    expect(told(`${cut}- { topstitch: panel, at: zip right, by: 5 mm }`)).toEqual([]);
  });

  it('is one zip, however often it is folded', () => {
    // The slider is kept on by the seam at the cut end, where the tape is turned in and lies in several layers.
    expect(
      told(`- { trim: zip, at: right, width: 90 mm }
- { join: [low, zip], at: [top, bottom], press: to low, makes: panel }
- { sew round: [panel, high], makes: pouch }
- { turn: pouch, by way of: zip }`),
    ).toEqual([]);
    expect(told('- { fold: zip, from: left, at: 50 mm }')).toEqual([]);
    expect(told('- { trim: zip, at: right, width: 90 mm }\n- { fold: zip, from: left, at: 50 mm }')).toHaveLength(1);
  });

  it('does not run along its teeth, which lie 16 mm from the edge of the tape', () => {
    const narrow = '- { trim: zip, at: right, width: 90 mm }\n';
    const joined = (seam: number) =>
      told(`${narrow}- { join: [low, zip], at: [top, bottom], seam: ${seam} mm, press: to low }`);
    const takenIn = (line: string) => line.startsWith('error');
    expect(joined(8).filter(takenIn)).toEqual([]);
    for (const seam of [14, 25]) {
      expect(joined(seam).filter(takenIn)).toEqual([
        `error steps > 1 > seam: zip-teeth: A seam of ${seam} mm takes in the teeth of “zip”, which lie 16 mm from the edge of its tape. Give this seam an allowance of its own: “seam”, less than the tape is wide.`,
      ]);
    }
    const along = (by: number) => told(`${cut}- { topstitch: panel, at: zip top, by: ${by} mm }`).filter(takenIn);
    expect(along(8)).toEqual([]);
    expect(along(15)).toEqual([
      'error steps > 2: zip-teeth: This row runs along the teeth of “zip”, and the slider would not pass. Sew beside the teeth, nearer to the edge of the tape.',
    ]);
  });

  it('on uncut cloth opens nothing to turn a work through', () => {
    const laid = `${cut}- { topstitch: panel, at: zip top, by: 3 mm }\n- { topstitch: panel, at: zip bottom, by: 3 mm }`;
    expect(told(`${laid}\n- { sew round: [panel, back], makes: bag }\n- { turn: bag, by way of: zip }`)).toContain(
      'error steps > 5 > by way of: no-gap: “front” lies uncut along the teeth of “zip”: the zip opens, and the work does not. Join the zip between two works, or leave a gap when you sew round.',
    );
  });

  it('tells how far it opens', () => {
    // Stops 20 mm from the ends of the tape: of 90 mm it opens from 20 to a row 5 mm before its cut end.
    const steps = `${cut}- { topstitch: panel, at: zip right, by: 5 mm }`;
    const step = makeUp(pattern(steps)).at(-1)!;
    expect(drawStep(step, pattern(steps)).text.join(' ')).toContain('The zip opens over 65 millimetres.');
  });
});

describe('hardware', () => {
  it.each([
    ['snap', 'Set the snap on the front', ['setting tool', 'ruler', 'awl'], ['snap']],
    ['eyelet', 'Set the eyelet in the front', ['setting tool', 'ruler', 'awl'], ['snap']],
    ['magnet', 'Set the magnet in the front', ['ruler', 'marking pen', 'scissors'], ['scissors', 'magnet']],
    ['button', 'Sew the button to the front', ['hand needle', 'ruler', 'marking pen'], ['parts']],
  ])('is set as it is: %s', (kind, title, tools, cautions) => {
    const [step] = makeUp(pattern(`- { attach: ${kind}, to: front, at: [50 mm, 40 mm] }`));
    expect(step).toMatchObject({ title, tools, cautions });
  });

  it.each(['ring', 'slider', 'hook'])('is slipped onto a strap that goes through: %s', (kind) => {
    const [step] = makeUp(pattern(`- { attach: ${kind}, to: tab }`));
    expect(step).toMatchObject({ title: `Slip the ${kind} onto the tab`, tools: [], cautions: ['parts'] });
    expect(step!.after.marks[0]!.at).toEqual({ x: 30, y: 10 });
    expect(told(`- { attach: ${kind}, to: tab }`)).toEqual([]);
    expect(told(`- { attach: ${kind}, to: front }`)).toEqual([
      `error steps > 0: too-wide: “${kind}” takes a strap of 25 mm, and this one is 80 mm wide. Make the strap narrower, or take a wider one.`,
    ]);
  });

  it('has a drawing of its own for each kind', () => {
    const drawn = ['snap', 'eyelet', 'magnet', 'button', 'ring', 'slider', 'hook'].map((kind) => {
      const made = pattern(`- { attach: ${kind}, to: tab, at: [30 mm, 10 mm] }`);
      const shape = drawStep(makeUp(made)[0]!, made).shapes.find(({ name }) => name === 'hardware set');
      return shape?.kind === 'path' ? JSON.stringify(shape.path) : '';
    });
    expect(new Set(drawn).size).toBe(7);
    expect(drawn.every((path) => path.length > 0)).toBe(true);
  });

  it('is seen where a strap is folded over it', () => {
    const made = pattern('- { attach: ring, to: tab }\n- { fold: tab, from: left, at: 30 mm }');
    expect(drawStep(makeUp(made)[1]!, made).shapes.some(({ name }) => name === 'after hardware')).toBe(true);
  });

  it('of two halves is set face to face on two works, and meets when they are sewn together', () => {
    const halves = (second: string) =>
      pattern(
        `- { id: first, attach: magnet, to: front, from left: 30 mm, from top: 20 mm }
- { attach: magnet, to: back, ${second} }
- { sew round: [front, back], gap: { edge: bottom, length: 50 mm }, makes: case }
- { turn: case }`,
      );
    const made = makeUp(halves('meets: first'));
    // Face to face, 30 mm from the left is 30 mm from the right.
    expect(made[1]!.after.marks[0]!.at).toEqual({ x: 70, y: 60 });
    expect(lines(check(halves('meets: first'))).filter((line) => line.startsWith('error'))).toEqual([]);
    expect(lines(check(halves('meets: first, from left: 30 mm, from top: 20 mm'))).join()).toContain('halves-apart');
  });

  it('is counted where it is used, and what is bought is held against it', () => {
    const steps = [20, 40, 60].map((x) => `- { attach: button, to: front, at: [${x} mm, 40 mm] }`).join('\n');
    const few = (one: Pattern) => lines(check(one)).filter((line) => line.includes('too-few:'));
    const made = (count = '', shelf = materials) =>
      resolved(
        panels(
          steps,
          `  zip: { size: [120 mm, 32 mm], cut: 2, from: zip, allowance: 0 }\nmaterials: { outer: cloth, button: { use: button${count} }, zip: { use: zip${count} } }`,
        ),
        { materials: shelf },
      );
    expect(few(made(', count: 1'))).toEqual([
      'warning materials > button > count: too-few: 3 “button” are used, and the shopping list has 1. Write “count: 3”, or leave “count” out: what is used is counted.',
      'warning materials > zip > count: too-few: 2 “zip” are used, and the shopping list has 1. Write “count: 2”, or leave “count” out: what is used is counted.',
    ]);
    expect(few(made(', count: 3'))).toEqual([]);
    expect(few(made())).toEqual([]);
    const bought = (one: Pattern) =>
      kitFor(one, ONE).lines.flatMap((line) => (line.kind === 'counted' ? [[line.key, line.needed]] : []));
    const all = [
      ['button', 3],
      ['zip', 2],
    ];
    expect(bought(made())).toEqual(all);
    // Of a zip whose width nobody told, two pieces are two zips, unless the file says otherwise.
    const { across: _, ...zip } = materials['zip']!;
    expect(bought(made('', { ...materials, zip }))).toEqual(all);
    expect(few(made(', count: 1', { ...materials, zip })).join()).not.toContain('“zip”');
  });

  it('that is a zip is sewn in', () => {
    expect(told('- { attach: zip, to: front, from top: 10 mm }')).toEqual([
      'error steps > 0: other-material: “zip” is a zip, which is sewn in. Make a piece of it under pieces, and join it, or lay it and sew along it.',
    ]);
    expect(
      told(
        '- { lay: patch, on: front }\n- { sew round: [front, back], makes: bag }\n- { turn: bag, by way of: patch }',
      )[0],
    ).toContain('“patch” is no zip');
    expect(told('- { sew round: [front, back], makes: bag }\n- { turn: bag, by way of: zip }')[0]).toContain(
      'no piece “zip” here',
    );
  });
});
