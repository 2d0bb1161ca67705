import { describe, expect, it } from 'vitest';
import { makeUp } from '../../../src/core/project/index.ts';
import { resolved } from './files.ts';
import { found, ledger, panels } from './steps.ts';

describe('the ledger of steps', () => {
  it('takes pieces and results by name, and tells the size after each step', () => {
    const yaml = panels(`
- { join: [front, back], at: top, press: open, makes: body }
- { hem: body, at: front bottom, fold: 5 mm, then: 10 mm }
- { press: body }
`);
    expect(ledger(yaml)).toEqual([
      'Join the front and the back at the top -> body 100 x 148',
      'Hem the body at the front bottom -> body 100 x 133',
      'Press the body -> body 100 x 133',
    ]);
    expect(found(yaml)).toEqual([]);
  });

  it('uses the measure called seam where a step names no allowance', () => {
    expect(ledger(panels('- { join: [front, back], at: [right, left] }'))).toEqual([
      'Join the front at the right and the back at the left -> front 188 x 80',
    ]);
    expect(ledger(panels('- { join: [front, back], at: [right, left], seam: 10 mm }'))).toEqual([
      'Join the front at the right and the back at the left -> front 180 x 80',
    ]);
  });

  it('adds up two patches as a quilter’s errata says', () => {
    // Pieces of 1 3/4 x 2 and 1 3/4 x 3 joined on their 1 3/4 edges with 1/4 make 1 3/4 x 4 1/2, not 1 3/4 x 4 1/4
    // (belindastitches weblog, note on errata, 29 May 2014).
    const patches = (height: string) => `
title: Two patches
measures: { seam: 1/4 }
pieces:
  short: { size: [1 3/4, 2] }
  long: { size: [1 3/4, 3] }
steps:
  - { join: [short, long], at: [top, bottom], makes: block }
finished: { of: block, width: 1 3/4, height: ${height} }
`;
    expect(found(patches('4 1/2'))).toEqual([]);
    expect(found(patches('4 1/4'))).toEqual([
      'error finished > height: finished-size: The steps make “block” 4 1/2 in high; the file promises 4 1/4 in. ' +
        'That is 1/4 in more. That is one seam allowance: count the seams across the height again.',
    ]);
  });
});

describe('what the language of steps refuses', () => {
  it.each([
    ['- { note: fold it }', 'error steps > 0: no-verb: This step has no verb, so it says nothing to do. Write one of'],
    [
      '- { join: [front, back], at: top, gap: { edge: top, length: 3 cm } }',
      'error steps > 0 > gap: other-verb: “gap” does not belong to “join”. With “join” go “at”, “between”, “seam”, “press”, “topstitch” and “eased”.',
    ],
    [
      '- { join: [front, back], at: top, baste: front }',
      'error steps > 0 > baste: two-verbs: One step does one thing, but this one has both “join” and “baste”. Write two steps.',
    ],
    ['- { join: [front, back] }', 'error steps > 0: step-incomplete: “join” needs “at” too.'],
    [
      '- { join: [front, back], at: top, press: upp }',
      'error steps > 0 > press: unclear-press: Allowances are pressed open, up, down, left, right or to a work, not “upp”.',
    ],
    [
      '- { join: [front, back], at: top, when: pocket }',
      'error steps > 0 > when: unknown-name: There is no option called “pocket”.',
    ],
    [
      '- { join: [front, back], at: top, seam: ten }',
      'error steps > 0 > seam: unknown-name: There is no measure called “ten”.',
    ],
  ])('%s', (steps, message) => {
    expect(found(panels(steps))[0]).toContain(message);
  });

  it('two steps of one id, unless an option keeps them apart', () => {
    const twice = (first: string, second: string) =>
      panels(
        `
- { id: seam, join: [front, back], at: top${first} }
- { id: seam, join: [front, back], at: left${second} }
`,
        'options: { wide: {} }',
      );
    expect(found(twice(', when: wide', ', unless: wide'))).toEqual([]);
    expect(found(twice('', ', unless: wide'))[0]).toBe(
      'error steps > 1 > id: name-twice: Step 1 has the id “seam” already. Give this one another id.',
    );
  });
});

describe('what a step takes', () => {
  it('must be cut or made', () => {
    expect(found(panels('- { join: [front, bak], at: top, makes: body }'))).toEqual([
      'error steps > 0 > join > 1: unknown-name: There is no piece or work called “bak”. Do you mean “back”?',
    ]);
  });

  it('must be made before', () => {
    const yaml = panels(`
- { hem: body, at: top, fold: 5 mm }
- { join: [front, back], at: [top, bottom], makes: body }
`);
    expect(found(yaml)).toEqual([
      'error steps > 0 > hem: not-made-yet: “body” is not made yet: step 2 makes it. Move this step behind that one.',
    ]);
  });

  it('must not be sewn into something else', () => {
    const yaml = panels(`
- { join: [front, back], at: [top, bottom], makes: body }
- { hem: back, at: top, fold: 5 mm }
`);
    expect(found(yaml)).toEqual([
      'error steps > 1 > hem: used-up: “back” went into “body” in step 1. Take “body”, or cut one more.',
    ]);
  });

  it('must be cut as often as it is taken', () => {
    const straps = (cut: number, steps: string) => panels(steps, `  strap: { size: [20 mm, 80 mm], cut: ${cut} }`);
    const join = '- { join: [front, back], between: [strap, strap], at: top }';
    const two = `
- { join: [front, strap], at: [left, right], makes: body }
- { join: [body, strap], at: [front right, left] }
- { lay: back, on: body }
`;
    expect(found(straps(2, two))).toEqual([]);
    expect(found(straps(3, two))).toEqual([
      'warning pieces > strap > cut: never-used: Of 3 cut, 2 “strap” are used. Cut fewer, or use the others too.',
    ]);
    expect(found(straps(1, join))[0]).toBe(
      'error steps > 0 > between > 1: used-up: Only 1 piece called “strap” is cut. Cut one more.',
    );
  });

  it('must be there with every option', () => {
    const options = 'options: { pocket: { adds: [back] } }';
    expect(found(panels('- { join: [front, back], at: top }', options))).toEqual([
      'error steps > 0 > join > 1: option-breaks-step: Without “pocket” there is no “back” for this step. Add “when: pocket” to this step.',
    ]);
    expect(found(panels('- { join: [front, back], at: top, when: pocket }\n- { press: front }', options))).toEqual([]);
  });

  it('is said once when it is missing, with the steps that wait for it', () => {
    const yaml = panels(`
- { join: [front, back], at: [top, base], makes: body }
- { hem: body, at: front bottom, fold: 5 mm }
- { press: body }
- { turn over: body }
`);
    expect(found(yaml)).toEqual([
      'error steps > 0 > at > 1: unknown-edge: There is no free edge “base”. There are bottom, right, top, left.',
      'note steps > 1 > hem: left-out: This step cannot be done, because “body” is missing since step 1. Nor can 2 more.',
    ]);
  });

  it('is missed when nothing takes it', () => {
    const yaml = panels(`
- { hem: back, at: top, fold: 5 mm, makes: lining }
- { hem: front, at: top, fold: 5 mm }
`);
    expect(found(yaml)).toEqual([
      'warning steps > 0: result-unused: No step uses “lining”, which this one makes. Take it in a later step, or leave this one out.',
    ]);
    expect(found(panels('- { press: front }'))).toEqual([
      'warning pieces > back: never-used: No step uses “back”. Take it in a step, or leave the piece out.',
    ]);
  });
});

describe('what the work must measure', () => {
  it('is compared with what a step says', () => {
    const yaml = panels('- { join: [front, back], at: [top, bottom], now: { height: 150 mm } }');
    expect(found(yaml)).toEqual([
      'error steps > 0 > now > height: now-measures: The steps make “front” 148 mm high; this step says 150 mm. ' +
        'That is 2 mm less. Check the sizes of the pieces, or state what the steps make.',
    ]);
  });

  it('needs a step that makes it', () => {
    const finished = 'finished: { of: pouch, width: 100 mm, height: 148 mm }';
    expect(found(panels('- { join: [front, back], at: [top, bottom], makes: purse }', finished))).toContain(
      'error finished > of: not-made: No step makes “pouch”. Write “makes: pouch” at the last step.',
    );
    const option = `${finished}\noptions: { sewn: {} }`;
    expect(found(panels('- { join: [front, back], at: top, makes: pouch, when: sewn }', option))).toContain(
      'error finished > of: option-breaks-step: No step makes “pouch” now: step 1 is left out with “sewn” as it is.',
    );
  });
});

describe('edges that meet', () => {
  const strap = '  strap: { size: [96 mm, 20 mm] }';

  it('must be of one length', () => {
    const [edges] = found(panels('- { join: [front, strap], at: [top, bottom] }\n- { lay: back, on: front }', strap));
    expect(edges).toBe(
      'error steps > 0 > at: edges-differ: On the stitch line the top of “front” is 100 mm, the bottom of “strap” is 96 mm. ' +
        'They differ by 4 mm. Make both alike, or gather the longer one first. A little can be eased in: “eased: true”.',
    );
  });

  it('can be eased a little', () => {
    const eased = (more: string) =>
      found(panels(`- { join: [front, strap], at: [top, bottom], eased: true }\n- { lay: back, on: front }`, more));
    expect(eased(strap)).toEqual([]);
    expect(eased('  strap: { size: [90 mm, 20 mm] }')).toEqual([
      'warning steps > 0 > at: edges-differ: On the stitch line the top of “front” is 100 mm, the bottom of “strap” is 90 mm. ' +
        'To ease in 10 mm puckers the top. Gather the longer edge, or take it in.',
    ]);
  });
});

describe('a flap with rounded corners', () => {
  const flap = (steps: string) => `
title: Flap
units: metric
measures: { seam: { mm: 6 }, round: { mm: 13 } }
pieces:
  flap: { size: [112 mm, 92 mm], corners: { at: [bottom left, bottom right], round: round } }
  lining: { like: flap }
steps:
  - { sew round: [flap, lining], open: top, makes: flap }
${steps.replace(/^/gmu, '  ')}
finished: { of: flap, width: 100 mm, height: 86 mm }
`;
  const notch = '- { clip corners: flap, by: 1 mm }\n';

  it('is sewn, turned and topstitched like one with square corners', () => {
    const steps = `${notch}- { turn: flap }\n- { topstitch: flap, at: [left, bottom, right], by: 3 mm }`;
    expect(found(flap(steps))).toEqual([]);
    expect(ledger(flap(steps)).at(-1)).toBe(
      'Topstitch the flap at the left, the bottom and the right -> flap 100 x 86',
    );
  });

  it('bunches its allowance where it is not notched', () => {
    const layers = (steps: string) => makeUp(resolved(flap(`${steps}- { turn: flap }`))).at(-1)!.layersMost;
    // The curve of 7 mm has hardly room for an allowance of 6; unnotched, its strips pile up in the middle of it.
    expect(layers(notch)).toBeLessThanOrEqual(6);
    expect(layers('')).toBeGreaterThan(layers(notch));
  });
});
