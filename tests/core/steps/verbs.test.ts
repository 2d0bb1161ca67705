import { describe, expect, it } from 'vitest';
import { makeUp } from '../../../src/core/project/index.ts';
import { always, keptBy, stepFields, takesWork, verbIn, verbNamed, verbNames } from '../../../src/core/steps/index.ts';
import { resolved } from '../project/files.ts';
import { found, panels } from '../project/steps.ts';
import type { Materials } from '../../../src/core/project/index.ts';

describe('the file of each verb', () => {
  it.each(verbNames)('%s has its own field first, takes works, and says what each field means', (name) => {
    const { fields, ...file } = verbNamed(name);
    expect(file.name).toBe(name);
    expect(Object.keys(fields)[0]).toBe(name);
    expect(fields[name]!.optional).toBeUndefined();
    expect(takesWork(fields[keptBy(verbNamed(name))]!)).toBe(true);
    for (const { about } of Object.values(fields)) expect(about).toMatch(/\S\.?$/u);
    // A field that every step may have means the same everywhere.
    expect(Object.keys(fields).filter((field) => field in always)).toEqual([]);
  });

  it('is told once in the fields of a step', () => {
    expect(stepFields.slice(0, verbNames.length).map(({ name }) => name)).toEqual(verbNames);
    expect(new Set(stepFields.map(({ name }) => name)).size).toBe(stepFields.length);
    const told = (name: string) => stepFields.find((field) => field.name === name)!.about;
    expect(told('to')).toBe(
      'fuse, attach: the work it goes to. gather: the length that it is drawn up to; of an opening, how long it is round then. draw: of elastic: how long the opening is round then. The elastic is cut as long as that, and its overlap.',
    );
    expect(told('topstitch')).toBe(
      'Sews a visible row along edges, straight or curved, { topstitch: pocket, at: [left, curve, right] }, or all round an ' +
        'outline: { topstitch: panel, at: pocket outline }. join: a row on the pressed seam, that far from it. ' +
        'pleat: a row on each pleat’s own edge, that far from it, sewn through the pleat alone before the next is folded.',
    );
  });
});

describe('the verb of a step', () => {
  it('is the one that the others belong to', () => {
    expect(verbIn({ press: 'open', topstitch: '1/8', join: ['a', 'b'], at: 'top' })).toBe('join');
    expect(verbIn({ fold: '1/2', hem: 'a' })).toBe('hem');
    expect(verbIn({ fold: 'a', at: '1' })).toBe('fold');
    expect(verbIn({ note: 'fold it' })).toBeUndefined();
  });
});

describe('a value of another kind', () => {
  it.each([
    ['- { fuse: back, to: { mm: 5 } }', '“to” is the name of a work here, not a group of named values.'],
    ['- { topstitch: front, at: [{ mm: 5 }] }', '“at” is an edge or a list of edges here, not a list.'],
    ['- { fold: front, at: 2 cm, from: tpo }', '“from” is top, right, bottom or left here, not “tpo”.'],
    [
      '- { box corner: front, at: bottom left, square: 2 cm, from: edge }',
      '“from” is seam or raw edge here, not “edge”.',
    ],
    ['- { fold: front, at: [2 cm, 3 cm] }', '“at” is a length here, not a list.'],
  ])('is refused at its place: %s', (step, message) => {
    expect(found(panels(step))[0]).toContain(`other-kind: ${message}`);
  });
});

describe('hardware', () => {
  const cautions = (hardware: string, label: string) => {
    const yaml = panels(
      '- { attach: clasp, to: front, at: [5 cm, 4 cm] }',
      `materials: { clasp: { use: it, label: ${label} } }`,
    );
    const materials: Materials = {
      it: { kind: 'hardware', ...(hardware !== '' && { hardware: hardware as 'snap' | 'magnet' }) },
    };
    return makeUp(resolved(yaml, { materials }))[0]!.cautions;
  };

  it('has the caution of what it is, whatever it is called', () => {
    // Slits for its prongs are cut.
    expect(cautions('magnet', 'Clasp')).toEqual(['scissors', 'magnet']);
    expect(cautions('snap', 'Not a magnet')).toEqual(['snap']);
    expect(cautions('', 'Clasp')).toEqual(['snap', 'magnet']);
  });
});

describe('tools of the author’s own', () => {
  it('are the kit’s where they have its name', () => {
    const [step] = makeUp(resolved(panels('- { fold: front, at: 2 cm, tools: [Iron, bone folder, ironing board] }')));
    expect(step!.tools).toEqual(['Iron', 'bone folder', 'ironing board']);
    expect(step!.uses).toEqual(['iron']);
    expect(step!.cautions).toEqual(['iron']);
  });
});
