/** What options may change beside pieces and measures: a cloth, and steps that hang on several of them. */
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { check, makeUp, MaterialsFile, ProjectFile, resolveProject } from '../../../src/core/index.ts';
import { found, panels } from './steps.ts';
import { lines, resolved } from './files.ts';

const materials = MaterialsFile.parse({
  canvas: { kind: 'cloth' },
  vinyl: { kind: 'cloth', holes: 'stay', heat: { celsius: 60, source: 'made up' } },
});
const swapped = (vinyl: boolean, by = 'vinyl') =>
  resolveProject(
    ProjectFile.parse(
      parse(`
title: Case
units: metric
measures: { seam: { mm: 6, in: 1/4 } }
materials: { outer: { use: canvas, label: Canvas, repeat: 100 mm } }
options: { vinyl: { materials: { outer: { use: ${by}, label: Vinyl } } } }
cutting: { match: [{ pieces: [front, back] }] }
pieces:
  front: { from: outer, size: [100 mm, 80 mm] }
  back: { from: outer, size: [100 mm, 80 mm] }
steps:
  - { join: [front, back], at: top, press: open }
`),
    ),
    { materials, options: { vinyl } },
  );

describe('an option that swaps a cloth', () => {
  it('has another material play the role, with its own label and its own tools', () => {
    expect(swapped(false).materials['outer']).toMatchObject({ use: 'canvas', label: 'Canvas' });
    expect(swapped(true).materials['outer']).toMatchObject({ use: 'vinyl', label: 'Vinyl' });
    expect(makeUp(swapped(false))[0]!.tools).toContain('pins');
    expect(makeUp(swapped(true))[0]!.tools).toContain('clips');
    expect(makeUp(swapped(true))[0]!.tools).not.toContain('pins');
    expect(lines(check(swapped(false)))).toEqual([]);
    expect(lines(check(swapped(true))).some((line) => line.includes('too-hot'))).toBe(true);
  });

  it('says which holds where two that are chosen swap one role', () => {
    const both = (second: string, options: Record<string, boolean>) =>
      found(
        panels(
          '- { join: [front, back], at: top }',
          `materials: { outer: { use: canvas } }\noptions: { vinyl: { materials: { outer: vinyl } }, waxed: { materials: { outer: ${second} } } }`,
        ),
        { options },
      ).filter((line) => line.includes('swapped-twice'));
    expect(both('oilcloth', { vinyl: true, waxed: true })).toEqual([
      expect.stringMatching(
        /^warning options > waxed > materials > outer.*: swapped-twice: “vinyl” and “waxed” both put another material in the place of “outer”, and both are chosen: “waxed” holds\./u,
      ),
    ]);
    expect(both('oilcloth', { vinyl: true })).toEqual([]);
    expect(both('vinyl', { vinyl: true, waxed: true })).toEqual([]);
  });

  it('names a material and a role that there are', () => {
    expect(lines(check(swapped(true, 'vinil')))).toContain(
      'error options > vinyl > materials > outer > use: unknown-name: There is no material called “vinil”. Do you mean “vinyl”?',
    );
    const yaml = panels('- { join: [front, back], at: top }', 'options: { vinyl: { materials: { outside: vinyl } } }');
    expect(found(yaml)[0]).toMatch(
      /^error options > vinyl > materials > outside: unknown-name: There is no material called “outside”/u,
    );
  });
});

describe('a step with several options', () => {
  const made = (words: string, options: Record<string, boolean>) =>
    makeUp(resolved(panels(`- { press: front, ${words} }`, 'options: { flap: {}, snap: {} }'), { options })).length;

  it('is done with all of them, or without all of them', () => {
    for (const [flap, snap] of [
      [false, false],
      [true, false],
      [false, true],
      [true, true],
    ] as const) {
      expect(made('when: [flap, snap]', { flap, snap })).toBe(flap && snap ? 1 : 0);
      expect(made('unless: [flap, snap]', { flap, snap })).toBe(flap || snap ? 0 : 1);
      expect(made('when: flap, unless: snap', { flap, snap })).toBe(flap && !snap ? 1 : 0);
    }
  });

  it('may share its id with one that is never done beside it', () => {
    const twins = (first: string, second: string) =>
      found(
        panels(
          `- { id: a, press: front, ${first} }\n- { id: a, press: back, ${second} }`,
          'options: { flap: {}, snap: {} }',
        ),
      );
    expect(twins('when: [flap, snap]', 'unless: snap').filter((line) => line.includes('name-twice'))).toEqual([]);
    expect(twins('when: [flap, snap]', 'when: snap').filter((line) => line.includes('name-twice'))).toHaveLength(1);
  });

  it('names options that there are', () => {
    const yaml = panels('- { press: front, when: [flap, snip] }', 'options: { flap: {}, snap: {} }');
    expect(found(yaml)[0]).toBe(
      'error steps > 0 > when > 1: unknown-name: There is no option called “snip”. Do you mean “snap”?',
    );
  });
});
