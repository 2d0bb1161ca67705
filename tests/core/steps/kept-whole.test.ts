/** No step cuts away, sews down or goes through what is not there without a word. */
import { describe, expect, it } from 'vitest';
import { makeUp } from '../../../src/core/project/index.ts';
import { found, panels } from '../project/steps.ts';
import { resolved } from '../project/files.ts';

const errors = (steps: string, more = '') =>
  found(
    panels(
      steps,
      `${more}
materials: { snap: snap }`,
    ),
  ).filter((line) => line.startsWith('error'));

describe('trimming', () => {
  const snap = '- { attach: snap, to: front, from top: 10 mm }\n';
  it('does not cut hardware away', () => {
    expect(errors(`${snap}- { trim: front, at: top, height: 75 mm }`)).toEqual([]);
    for (const trim of ['at: top, height: 60 mm', 'size: [90 mm, 40 mm]'])
      expect(errors(`${snap}- { trim: front, ${trim} }`)).toEqual([
        'error steps > 1: sewn-down: That cuts away the snap. Trim less, or set it after trimming.',
      ]);
  });
  it('leaves an allowance beyond a seam that is still outside, and none beyond one inside the work', () => {
    const joined = (press: string) =>
      errors(`- { join: [front, back], at: top, ${press}makes: s }\n- { trim: s, at: top, leaving: 3 mm }`);
    expect(joined('press: unopened, ')).toEqual([]);
    for (const press of ['', 'press: open, '])
      expect(joined(press)).toEqual([
        'error steps > 1 > leaving: misses: The seam next to the top lies inside the work: what lies beyond it is no allowance. Say how much is trimmed off, “by”, or how large it is then.',
      ]);
  });
});

describe('what goes through layers', () => {
  it.each([
    ['attach: snap, to: front', 'Only one layer lies there.'],
    ['buttonhole: front, length: 20 mm', 'Only one layer lies there.'],
  ])('goes through those that are there: %s', (step, message) => {
    expect(errors(`- { ${step}, from top: 40 mm, through: 1 }`)).toEqual([]);
    expect(errors(`- { ${step}, from top: 40 mm, through: 9 }`)).toEqual([
      `error steps > 0 > through: too-many: ${message} Leave “through” out, and it goes through all.`,
    ]);
  });
});

describe('both ends of a strap', () => {
  it.each(['overlap: 10 mm', 'turned: left'])('lie at the edge, and nowhere else: %s', (said) => {
    const field = said.split(':')[0]!;
    expect(
      errors(
        `- { lay: strap, on: front, at: top, both ends: 20 mm, ${said} }`,
        '  strap: { size: [200 mm, 10 mm], allowance: 0 }',
      ),
    ).toEqual([
      `error steps > 0 > ${field}: two-places: “both ends” lays the ends at the edge, and “${field}” would lay them elsewhere. Leave one of the two out.`,
    ]);
  });
});

describe('hardware that is set already', () => {
  const codes = (steps: string) => errors(steps).map((line) => line.replace(/^error (.*?): (.*?): (.*)$/u, '$1 $2'));
  const snap = (place: string) => `- { attach: snap, to: front, ${place} }\n`;

  it('does not end in the allowance of a seam, which is 6 mm wide', () => {
    const round = '- { sew round: [front, back], gap: { edge: bottom, length: 40 mm }, makes: bag }';
    expect(codes(snap('from left: 12 mm') + round)).toEqual([]);
    for (const by of [0, 3]) expect(codes(snap(`from left: ${by} mm`) + round)).toEqual(['steps > 1 hardware-in-seam']);
    for (const press of ['', 'press: open, ', 'press: unopened, ']) {
      const seam = `- { join: [front, back], at: top, ${press}makes: bag }`;
      expect(codes(snap('from top: 12 mm') + seam)).toEqual([]);
      expect(codes(snap('from top: 2 mm') + seam)).toEqual(['steps > 1 hardware-in-seam']);
    }
  });
  it('is not sewn over', () => {
    const row = '- { topstitch: front, at: top, by: 40 mm }';
    expect(codes(snap('from top: 50 mm') + row)).toEqual([]);
    expect(errors(snap('from top: 40 mm') + row)).toEqual([
      'error steps > 1: hardware-on-seam: This row runs over “snap”, or so near to it that the presser foot does not pass. Sew the row first, or farther away.',
    ]);
    expect(codes(`- { buttonhole: front, length: 20 mm, from top: 40 mm }\n${row}`)).toEqual([
      'steps > 1 hardware-on-seam',
    ]);
  });
});

describe('pleats under pieces', () => {
  const skirt = '  skirt: { finished: [100 mm, 60 mm], pleats: { on: top, kind: knife, count: 2, depth: 10 mm } }';
  const warned = (steps: string) => found(panels(steps, skirt)).filter((line) => line.includes('never-pleated'));
  it('are folded in a step, or a finding says so', () => {
    expect(warned('- { pleat: skirt }')).toEqual([]);
    expect(warned('- { topstitch: skirt, at: left }')).toEqual([
      'warning pieces > skirt: never-pleated: No step folds the pleats of “skirt”, and its finished size counts on them. Fold them in a step, “pleat: skirt”, or leave them out.',
    ]);
  });
});

describe('turning', () => {
  it('turns in all of an allowance beside a curve that bends in', () => {
    const cut =
      'outline: [[0 mm, 0 mm], [200 mm, 0 mm], { at: [200 mm, 150 mm], edge: top, rise: 30 mm, bends: in }, [0 mm, 150 mm]]';
    const steps = '- { sew round: [one, other], seam: 15 mm, open: [left, right], makes: pair }\n- { turn: pair }';
    const turned = makeUp(
      resolved(panels(steps, `  one: { ${cut}, allowance: 0 }\n  other: { like: one, mirrored: true }`)),
    ).at(-1)!;
    // An arc over 200 mm that dips 30 has a radius of 181.7 mm; its stitches, 15 mm below it, leave the sides at 132.3 mm.
    expect(turned.verb).toBe('turn');
    expect(turned.size.height).toBeCloseTo(132.3 - 15, 0);
  });
});

describe('a strip of nothing but allowance, cut off a pair that was sewn round', () => {
  const strip = (step: string) =>
    errors(
      `- { sew round: [front, back], seam: 30 mm }\n- { cut apart: front, every: 10 mm, into: 2 }\n- { ${step}: front }`,
    );
  it('is no pair any more, and is not cut away', () => {
    const told = (what: string) => [`error steps > 2: not-sewn-round: ${what} Sew round before you turn.`];
    expect(strip('clip corners')).toEqual(told('Nothing is sewn round yet.'));
    expect(strip('turn')).toEqual(told('Only a pair that is sewn round can be turned.'));
  });
});
