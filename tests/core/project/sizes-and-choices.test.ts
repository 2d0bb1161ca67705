/** A size table over several measures, and one of several things. The numbers were worked out by hand. */
import { describe, expect, it } from 'vitest';
import { check, checkAll, cutList, makeUp, metIn, wayOf } from '../../../src/core/project/index.ts';
import { formatLength } from '../../../src/core/measure/index.ts';
import { lines, project, resolved } from './files.ts';
import type { Settings } from '../../../src/core/project/index.ts';

const skirt = `
title: Skirt
sizes:
  label: Your size
  default: medium
  of:
    small: { waist: { in: 26, mm: 660 }, length: 20, buttons: 4 }
    medium: { waist: { in: 30, mm: 760 }, length: 22, buttons: 5 }
    large: { waist: { in: 34, mm: 860 }, length: 24, buttons: 6 }
measures:
  waist: { label: Waist, between: { in: [24, 40], mm: [600, 1020] }, step: { in: 1/2, mm: 10 } }
  length: { between: { in: [14, 30], mm: [350, 760] }, step: { in: 1/2, mm: 1 } }
  buttons: { count: 5 }
  fullness: { number: 1.5, between: [1.2, 2], step: 0.1 }
  round: { is: waist * fullness }
pieces:
  panel: { size: [round, length] }
`;
const at = (settings: Settings) => {
  const { measures, pieces, findings, sizes } = resolved(skirt, settings);
  expect(lines(findings)).toEqual([]);
  const { width, height } = pieces['panel']!.size;
  const edition = settings.edition ?? 'inch';
  return [sizes!.chosen, formatLength(width, edition), formatLength(height, edition), measures['buttons']!.value];
};

describe('a size', () => {
  it('gives all of its measures in both editions, and what follows from them', () => {
    expect(at({})).toEqual(['medium', '45 in', '22 in', 5]);
    expect(at({ size: 'small' })).toEqual(['small', '39 in', '20 in', 4]);
    expect(at({ size: 'Large' })).toEqual(['large', '51 in', '24 in', 6]);
    // 860 * 1.5; 24 in are 609.6 mm, on the ruler 610.
    expect(at({ size: 'large', edition: 'metric' })).toEqual(['large', '1290 mm', '610 mm', 6]);
  });

  it('lets sliders go on from it, and says what their own value is there', () => {
    expect(at({ size: 'small', values: { length: 21 * 25.4 } })).toEqual(['small', '39 in', '21 in', 4]);
    expect(resolved(skirt, { size: 'small' }).measures['length']!.adjustable!.lesson).toBeCloseTo(20 * 25.4, 6);
  });

  it('is refused kindly where there is none of its name, and the default stays', () => {
    const { findings, sizes } = resolved(skirt, { size: 'midium' });
    expect(sizes!.chosen).toBe('medium');
    expect(lines(findings)).toEqual([
      'warning sizes: unknown-name: There is no size called “midium”. Do you mean “medium”?',
    ]);
  });

  it('of a project is checked in each, and the one is named in which something goes wrong', () => {
    const tight = skirt.replace('pieces:', 'holds: [{ what: a hip, size: [44, 10], in: panel }]\npieces:');
    expect(
      checkAll(project(tight), undefined, undefined, { ends: false }).map((one) => `${metIn(one)}: ${one.code}`),
    ).toEqual(['size “small”: does-not-fit']);
  });
});

describe('the ends of the sliders', () => {
  const band = (more: string) => `
title: Band
sizes: { of: { small: { head: { in: 20, mm: 500 } }, large: { head: { in: 24, mm: 600 } } } }
measures:
  head: { in: 20, mm: 500 }
  ease: { in: 1, mm: 25, between: { in: [0, 4], mm: [0, 100] } }
${more}
pieces: { band: { size: [head + ease, 4] } }
holds: [{ what: a head, size: [23, 2], in: band }]
`;
  const found = (yaml: string) =>
    checkAll(project(yaml)).flatMap((one) =>
      one.code === 'does-not-fit' || one.code === 'ends-in-one-size' ? [`${metIn(one)}: ${one.message}`] : [],
    );

  it('are tried in each size', () => {
    // Small, it is too tight as the lesson has it; large, with 24 in for 23, it is not, at whichever end.
    expect(found(band(''))).toHaveLength(1);
    const tight = band('').replace('size: [23, 2]', 'size: [19, 2]').replace('head + ease', '44 in - head - ease');
    expect(found(tight).map((one) => one.split(':')[0])).toEqual(['inch edition, size “large”, with “ease” at 4 in']);
  });

  it('are tried in the lesson’s size alone where there are many, which is said', () => {
    const sliders = ['one', 'two', 'three', 'four'].map(
      (name) => `  ${name}: { in: 1, mm: 25, between: { in: [0, 4], mm: [0, 100] } }`,
    );
    expect(found(band(sliders.join('\n')).replace('[23, 2]', '[2, 2]'))).toEqual([
      ': The sliders were tried at their ends in the size “small” alone.',
    ]);
  });
});

const pouch = `
title: Pouch
units: metric
measures: { side: 200, seam: 10, flap: 60 }
materials:
  outer: cotton
  zip: { use: zip, count: 1, when: zip pocket }
choices:
  outside:
    label: The outside
    default: plain
    one of:
      zip pocket: { adds: [pocket] }
      plain:
      faux leather: { materials: { outer: faux leather }, measures: { flap: 80 } }
  back: { one of: { plain: {}, quilted: { drops: [back panel] } } }
options:
  loop: {}
pieces:
  front: { from: outer, size: [side, side] }
  back panel: { from: outer, size: [side, side] }
  pocket: { from: outer, size: [side, 150] }
  flap piece: { from: outer, size: [side, flap] }
  tab: { from: outer, size: [60, 60], when: [zip pocket, faux leather], unless: loop }
steps:
  - { press: front, when: [zip pocket, faux leather] }
  - { press: flap piece, unless: back quilted }
  - { press: front, when: [outside plain, back plain] }
`;

describe('a choice', () => {
  const way = (settings: Settings) => {
    const pattern = resolved(pouch, settings);
    expect(lines(pattern.findings)).toEqual([]);
    return {
      cut: cutList(pattern).map(({ label }) => label),
      roles: Object.values(pattern.materials).map(({ use }) => use),
      steps: makeUp(pattern).map(({ id }) => id),
      way: wayOf(pattern),
    };
  };

  it('is its default until another one is chosen, and changes pieces, materials, measures and steps', () => {
    expect(way({})).toEqual({
      cut: ['front', 'back panel', 'flap piece'],
      roles: ['cotton'],
      steps: ['step 2', 'step 3'],
      way: { options: { loop: false, outside: 'plain', back: 'plain' } },
    });
    expect(way({ options: { outside: 'zip pocket' } })).toMatchObject({
      cut: ['front', 'back panel', 'pocket', 'flap piece', 'tab'],
      roles: ['cotton', 'zip'],
      steps: ['step 1', 'step 2'],
    });
    const leather = { options: { Outside: 'Faux  leather', back: 'quilted', loop: true } };
    expect(way(leather)).toEqual({
      cut: ['front', 'flap piece'],
      roles: ['faux leather'],
      steps: ['step 1'],
      way: { options: { loop: true, outside: 'faux leather', back: 'quilted' } },
    });
    expect(resolved(pouch, leather).measures['flap']!.value).toBe(80);
  });

  it('that is not there is refused, and so is a yes or no', () => {
    expect(
      lines(resolved(pouch, { options: { outside: 'plane', back: true, loop: 'plain', bag: true } }).findings),
    ).toEqual([
      'warning choices > outside: unknown-name: “outside” has no “plane”. There are “zip pocket”, “plain” and “faux leather”.',
      'warning options: option-unknown: “back” is one of several, and no yes or no. Name one: “plain” and “quilted”.',
      'warning options: option-unknown: “loop” is a yes or no, not “plain”. Write true or false.',
      'warning options: unknown-name: There is no option or choice called “bag”. There are “loop”, “outside” and “back”.',
    ]);
  });

  it('is named where a step lacks what only another one brings', () => {
    const yaml = pouch.replace('press: flap piece', 'press: pocket');
    const breaks = check(resolved(yaml)).filter(({ code }) => code === 'option-breaks-step');
    expect(breaks.map(({ message, fix }) => `${message} ${fix}`)).toEqual([
      'Without “zip pocket” there is no “pocket” for this step. Add “when: zip pocket” to this step.',
    ]);
    const found = checkAll(project(yaml)).filter(({ code }) => code === 'option-breaks-step');
    expect(found.map(metIn)).toEqual(['']);
  });

  it('of five sizes, three and two is tried in pairs, and it is said how many were', () => {
    const sizes = [1, 2, 3, 4, 5].map((n) => `s${n}: { side: ${190 + 10 * n} }`).join(', ');
    const many = pouch
      .replace('choices:', `sizes: { of: { ${sizes} } }\nchoices:`)
      .replace('loop: {}', 'loop: {}\n  lace: {}')
      .replace('side: 200, ', 'side: {}, ');
    const met = new Set<string>();
    const found = checkAll(project(many), undefined, (edition, given) => {
      const pattern = resolved(many, { edition, ...given });
      const { options, size } = wayOf(pattern);
      const all = [...Object.entries(options), ['size', size!] as const].map(
        ([name, one]) => `${name}: ${String(one)}`,
      );
      for (const one of all) for (const other of all) met.add(`${one} ${other}`);
      return pattern;
    });
    expect(lines(found).at(-1)).toBe(
      'note sizes: sampled: 5 sizes, 2 choices and 2 options make 120 combinations. 32 of them were tried.',
    );
    for (let n = 1; n <= 5; n++)
      for (const one of [
        'outside: zip pocket',
        'outside: plain',
        'outside: faux leather',
        'back: quilted',
        'loop: true',
      ])
        expect(met).toContain(`size: s${n} ${one}`);
    expect(met).toContain('outside: faux leather back: quilted');
  });
});
