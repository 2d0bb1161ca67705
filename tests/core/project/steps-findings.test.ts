import { describe, expect, it } from 'vitest';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';
import type { Materials } from '../../../src/core/project/index.ts';

const source = 'made up for this test';
const shelf: Materials = {
  cotton: { kind: 'cloth', thickness: { mm: 0.3, source }, heat: { celsius: 200, source } },
  canvas: { kind: 'cloth', thickness: { mm: 0.9, source }, heat: { celsius: 200, source } },
  velvet: { kind: 'cloth', thickness: { mm: 0.8, source }, nap: 'one way' },
  nylon: { kind: 'cloth', thickness: { mm: 0.2, source }, heat: { celsius: 110, source } },
  vinyl: { kind: 'cloth', thickness: { mm: 0.6, source }, heat: { celsius: 60, source }, holes: 'stay' },
  stay: {
    kind: 'interfacing',
    thickness: { mm: 0.3, source },
    heat: { celsius: 150, source },
    fuses: { celsius: 130, source },
  },
  firm: { kind: 'interfacing', thickness: { mm: 0.9, source } },
  snap: { kind: 'hardware' },
};

/** Two panels of a material, and steps. */
const panelsOf = (material: string, steps: string, more = ''): string => `
title: Panels
units: metric
measures: { seam: { mm: 6 } }
materials: { outer: ${material}, thin: nylon, stay: stay, firm: firm, snap: snap }
pieces:
  front: { size: [112 mm, 92 mm], from: outer }
  back: { size: [112 mm, 92 mm], from: outer }
${more}
steps:
${steps.trim().replace(/^/gmu, '  ')}
`;

/** What is found wrong with the steps. */
const found = (material: string, steps: string, more = ''): string[] =>
  lines(check(resolved(panelsOf(material, steps, more), { materials: shelf })));

const bag = `
- { sew round: [front, back], gap: { edge: bottom, length: 60 mm }, makes: bag }
- { turn: bag }
`;

describe('thickness', () => {
  const hem = '- { hem: front, at: [bottom], fold: 10 mm, then: 10 mm }\n- { lay: back, on: front }';

  it('is told where a row goes through more than the machine takes', () => {
    expect(found('cotton', hem)).toEqual([]);
    expect(found('canvas', hem, 'machine: { lifts: 2.5 mm, source: our class machines }')).toEqual([
      'warning steps > 0: too-thick: This row goes through 3 layers, 2.7 mm thick, 56 mm from the left and 8 mm from the bottom. ' +
        'The machine takes 2.5 mm (our class machines). ' +
        'Grade or clip the allowances, or leave this stretch out. A longer stitch and a larger needle help.',
    ]);
  });

  it('is held against 5 mm where the file names no machine', () => {
    const six = `
- { fuse: one, to: front }
- { hem: front, at: [bottom], fold: 10 mm, then: 10 mm }
- { lay: back, on: front }
`;
    const felt = found(
      'canvas',
      six.replaceAll('one', 'felt'),
      '  felt: { size: [112 mm, 92 mm], from: firm, grain: any }',
    );
    expect(felt).toEqual([
      'warning steps > 1: too-thick: This row goes through 6 layers, 3 of them interfacing, 5.4 mm thick, 56 mm from the left and 8 mm from the bottom. ' +
        'The machine takes 5.0 mm (common practice, no source). ' +
        'Grade or clip the allowances, or leave this stretch out. A longer stitch and a larger needle help.',
    ]);
  });
});

describe('heat and pins', () => {
  const piece = '  interfacing: { like: front, inset: seam, from: stay, grain: any }';
  const fuse = '- { fuse: interfacing, to: front }\n- { lay: back, on: front }';

  it('fusing must not be hotter than the cloth takes', () => {
    expect(found('cotton', fuse, piece)).toEqual([]);
    expect(found('nylon', fuse, piece)).toEqual([
      'warning steps > 0: too-hot: Fusing needs 130 °C (266 °F) here, but “nylon” takes only 110 °C (230 °F). ' +
        'Choose an interfacing that fuses cooler, or one to sew in.',
    ]);
  });

  it('an iron must have a setting cool enough, which is said once', () => {
    const press = '- { lay: back, on: front }\n- { press: front }\n- { press: front }';
    expect(found('nylon', press)).toEqual([]);
    expect(found('vinyl', press)).toEqual([
      'note steps > 0: holes-stay: Holes stay in “vinyl”, so this step cannot be pinned. Hold it with clips, and unpick nothing.',
      'warning steps > 1: too-hot: This step needs an iron, whose coolest setting, one dot, is 110 °C (230 °F). “vinyl” takes only 60 °C (140 °F). ' +
        'Crease it with a bone folder, or topstitch it flat.',
    ]);
  });
});

describe('the iron', () => {
  const flap = (material: string) => `  flap: { size: [112 mm, 40 mm], from: ${material} }`;
  const steps = '- { join: [front, flap], at: top, press: open }\n- { lay: back, on: front }\n- { press: front }';
  const cool = (material: string) => found('cotton', steps, flap(material)).filter((line) => line.includes('iron'));

  it('is set for the coolest material in the heap, which is said once', () => {
    expect(cool('outer')).toEqual([]);
    expect(cool('thin')).toEqual([
      'note steps > 0: cool-iron: Iron no hotter than 110 °C (230 °F) here: “nylon” takes no more, though the rest does. ' +
        'Set the iron for “nylon”, and lay a press cloth between.',
    ]);
  });

  it('is told at every step that uses one, and at no other', () => {
    const limits = (material: string) =>
      makeUp(resolved(panelsOf('cotton', steps, flap(material)), { materials: shelf })).map(({ iron }) => iron);
    // What is fused is bonded by heat; its own limit is told at the step, and is no finding.
    const fused = '  interfacing: { like: front, inset: seam, from: stay, grain: any }';
    expect(found('cotton', '- { fuse: interfacing, to: front }\n- { lay: back, on: front }', fused)).toEqual([]);
    expect(limits('outer').map((limit) => limit?.celsius)).toEqual([200, undefined, 200]);
    expect(limits('thin')).toEqual([
      { celsius: 110, material: 'nylon' },
      undefined,
      { celsius: 110, material: 'nylon' },
    ]);
    // Nothing is known of how much heat velvet takes.
    expect(makeUp(resolved(panelsOf('velvet', '- { press: front }'), { materials: shelf }))[0]!.iron).toBeUndefined();
  });
});

describe('pins', () => {
  it('are clips where holes stay, and pins where they close', () => {
    const tools = (material: string) =>
      makeUp(resolved(panelsOf(material, '- { join: [front, back], at: top }'), { materials: shelf }))[0]!.tools;
    expect(tools('cotton')).toEqual(['sewing machine', 'pins']);
    expect(tools('vinyl')).toEqual(['sewing machine', 'clips']);
  });
});

describe('the gap', () => {
  it('must let the work through', () => {
    expect(found('cotton', bag)).toEqual([]);
    expect(found('canvas', bag.replace('60 mm', '20 mm'))).toEqual([
      'warning steps > 1: gap-too-small: The gap of 20 mm is too small to turn “bag” through. Leave 35 mm or more.',
    ]);
  });

  it('can be a whole open edge', () => {
    const open = `
- { sew round: [front, back], open: top, makes: bag }
- { turn: bag, now: { width: 100 mm, height: 86 mm } }
`;
    expect(found('canvas', open)).toEqual([]);
  });
});

describe('nap', () => {
  const flap = '  flap: { size: [60 mm, 40 mm], from: outer, nap: up }';
  const steps = (more: string) => `
- { join: [front, flap], at: [top, ${more}], makes: front }
- { lay: back, on: front, face: down }
`;

  it('must not be upside down on the finished work', () => {
    // The flap is shorter than the front; that is not asked for here.
    const naps = (more: string) => found('velvet', steps(more), flap).filter((line) => line.includes('upside-down'));
    expect(naps('bottom')).toEqual([]);
    expect(naps('top')).toEqual([
      'warning pieces > flap > nap: upside-down: “flap” ends up upside down on the finished work: its pile or print points to the bottom. ' +
        'Turn the piece round when you lay it, or cut it the other way up.',
    ]);
  });
});

describe('what goes in', () => {
  const holds = (size: string, ease: string) => `
holds:
  - { what: a card, size: ${size}, in: front, ease: ${ease} }
`;

  it('fits the bag as it is sewn', () => {
    expect(found('cotton', bag, holds('[96 mm, 70 mm]', '2 mm'))).toEqual([]);
  });

  it('is told when rows of stitches take too much of its room', () => {
    const stitched = `${bag}- { topstitch: bag, at: [front left, front right], by: 3 mm }\n`;
    expect(found('cotton', stitched, holds('[96 mm, 70 mm]', '0 mm'))).toEqual([
      'error holds > 0 > in: pocket-narrow: Once sewn, the front is 94 mm wide. That is 2 mm too narrow for a card. ' +
        'Make the front wider, or sew nearer to its edge.',
    ]);
    expect(found('cotton', stitched, holds('[92 mm, 70 mm]', '2 mm'))).toEqual([
      'warning holds > 0 > in: pocket-tight: Once sewn, the front leaves a card 2 mm to spare, not 4 mm. ' +
        'Make the front wider, or sew nearer to its edge.',
    ]);
    const across = `${bag}- { topstitch: bag, at: front bottom, by: 15 mm }\n`;
    expect(found('cotton', across, holds('[92 mm, 70 mm]', '0 mm'))).toEqual([
      'error holds > 0 > in: pocket-shallow: Once sewn, the front is 65 mm deep. That is 5 mm too shallow for a card. ' +
        'Make it deeper, or move the row of stitches across it lower.',
    ]);
  });
});

describe('hardware', () => {
  const piece = '  interfacing: { like: front, inset: seam, from: stay, grain: any }';
  const set = (at: string, more = '') => `- { attach: snap, to: front, at: ${at}${more} }\n- { lay: back, on: front }`;

  it('needs two layers, interfacing counted', () => {
    expect(found('cotton', set('[50 mm, 50 mm]'))).toEqual([
      'warning steps > 0: too-few-layers: “snap” goes through one layer only, and tears out of it. ' +
        'Fuse interfacing behind it, or set it through one layer more.',
    ]);
    expect(found('cotton', `- { fuse: interfacing, to: front }\n${set('[50 mm, 50 mm]')}`, piece)).toEqual([]);
    expect(
      found('cotton', `- { lay: back, on: front }\n- { attach: snap, to: front, at: [50 mm, 50 mm], through: 1 }`),
    ).toEqual([
      'warning steps > 1: too-few-layers: “snap” goes through one layer only, and tears out of it. ' +
        'Fuse interfacing behind it, or set it through one layer more.',
    ]);
  });

  it('stays clear of seams', () => {
    const near = (y: number) =>
      `${bag}- { topstitch: bag, at: front top, by: 10 mm }\n- { attach: snap, to: bag, at: [50 mm, ${y} mm] }`;
    expect(found('cotton', near(60))).toEqual([]);
    expect(found('cotton', near(72))).toEqual([
      'warning steps > 3 > at: hardware-on-seam: “snap” sits 2 mm from a row of stitches. It needs 4 mm of flat cloth around it. ' +
        'Move it off the seam.',
    ]);
  });

  it('lies on the cloth and is named under materials', () => {
    expect(found('cotton', set('[150 mm, 50 mm]'))[0]).toBe(
      'error steps > 0: off-the-work: There is no cloth where the snap is set: the work is 112 mm wide and 92 mm high. Check from which edge it is measured.',
    );
    expect(found('cotton', set('[50 mm, 50 mm]').replace('snap', 'snapp'))[0]).toBe(
      'error steps > 0 > attach: unknown-name: There is no material called “snapp”. Do you mean “snap”?',
    );
  });
});
