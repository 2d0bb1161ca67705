import type { Diagnostic } from '../../../src/core/measure/index.ts';
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ProjectFile, check, resolveProject } from '../../../src/core/project/index.ts';
import { lines, project, resolved } from './files.ts';
import { runs } from '../../random.ts';

/** What is wrong with a project at home in the metric edition, with a seam of 6 mm. */
const faults = (measures: string, pieces = '{}', more = ''): string[] =>
  lines(
    resolved(`title: Wrong\nunits: metric\nmeasures:\n  seam: 6\n${measures}\npieces: ${pieces}\n${more}`).findings,
  );

describe('measures that cannot be', () => {
  it('need a value, and one only', () => {
    expect(faults('  ease: { label: Ease }')).toEqual([
      'error measures > ease: no-value: “ease” has no value. State in or mm or both, a formula under is, a count or a number.',
    ]);
    expect(faults('  ease: { mm: 6, is: 2 * seam }')).toEqual([
      'error measures > ease: value-twice: “ease” gets its value twice: by “in and mm” and “is”. Keep one of them.',
    ]);
  });

  it('name each other in a ring', () => {
    expect(faults('  a: b + seam\n  b: 2 * c\n  c: a - seam\n  d: a + b')).toEqual([
      'error measures > a: cycle: “a” needs “b”, which needs “c”, which needs “a” again. Give one of them a value of its own.',
    ]);
    expect(faults('  a: a + seam')).toEqual([
      'error measures > a: cycle: “a” is worked out from itself. Give one of them a value of its own.',
    ]);
    expect(faults('  wide: bag width', '{ bag: { size: [wide, 100] } }')).toEqual([
      'error measures > wide: cycle: “wide” needs “bag width”, which needs “wide” again. Give one of them a value of its own.',
    ]);
  });

  it('rest on each other without end', () => {
    const chain = Array.from({ length: 3000 }, (_, i) => `  m${i}: m${i + 1} + seam`).join('\n');
    const found = faults(`${chain}\n  m3000: 1`);
    expect(found[0]).toBe(
      'error measures > m200: too-deep: “m200” rests on too many others, one on the next. Give one of them a value of its own.',
    );
  });

  it('use names that nothing has', () => {
    const { findings } = resolved('title: Wrong\nmeasures: { seam: 1/4, width: 3 in + 2 * saem }\npieces: {}\n');
    expect(lines(findings)).toEqual([
      'error measures > width: unknown-name: There is no measure called “saem”. Do you mean “seam”?',
    ]);
    expect([findings[0]!.start, findings[0]!.end]).toEqual([11, 15]);
  });

  it('use units that nobody has', () => {
    expect(faults('  ease: 6 furlongs')).toEqual([
      'error measures > ease: unknown-unit: “furlongs” is not a unit of length. Write in, ft, yd, mm, cm or m.',
    ]);
    expect(faults('  ease: { in: 1/4, mm: 6 cubits }')).toEqual([
      expect.stringMatching(/^error measures > ease > mm: unknown-unit: /u),
    ]);
  });

  it('mix lengths and numbers', () => {
    const { findings } = resolved('title: Wrong\nmeasures: { seam: 1/4, width: seam + 1/4 }\npieces: {}\n');
    expect(lines(findings)).toEqual([
      'error measures > width: kinds-differ: “seam” is a length and “1/4” a plain number. Write “1/4 in” if you mean a length.',
    ]);
    expect([findings[0]!.start, findings[0]!.end]).toEqual([7, 10]);
  });

  it('put a formula where a plain length belongs', () => {
    expect(faults('  ease: { mm: seam }')).toEqual([
      'error measures > ease > mm: no-formula-here: A plain length belongs here, not the name “seam”. Put a formula under “is”, in place of in and mm.',
    ]);
  });

  it('are called the same', () => {
    expect(faults('  "Seam ": 7')).toEqual([
      'error measures > Seam : name-twice: There are two measures called “seam”. The second is left out. Give one of them another name.',
    ]);
    expect(faults('  Bag Width: 90', '{ bag: { size: [90, 90] } }')).toEqual([
      'error measures > Bag Width: name-twice: But for its capitals this is what formulas call a number of the piece “bag”. Call the measure something else.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90] }, "BAG ": { size: [90, 90] } }')).toEqual([
      'error pieces > BAG : name-twice: There are two pieces called “bag”. The second is left out. Give one of them another name.',
    ]);
  });

  it('have names that no formula can hold', () => {
    expect(faults('  seam + ease: 12')).toEqual([
      'error measures > seam + ease: name-unreadable: A formula cannot read the name “seam + ease”. Begin with a letter; use letters, digits and blanks.',
    ]);
    expect(faults('  "": 12')).toEqual(['error measures > : no-name: This measure has no name.']);
  });

  it('are negative or absurd', () => {
    expect(faults('  less: seam - 2 * seam')).toEqual([
      'error measures > less: negative: “less” comes to -6 mm, which is less than nothing.',
    ]);
    expect(faults('  long: 50 m + 60 m')).toEqual([
      'error measures > long: too-large: “long” comes to 110000 mm. That is more than 100 m, longer than a roll of cloth. Check the unit.',
    ]);
    expect(faults('  below: -3')).toEqual([expect.stringMatching(/^error measures > below: negative-length: /u)]);
    expect(faults('  pockets: { count: 2.5 }')).toEqual([
      'error measures > pockets > count: not-a-count: “pockets” counts things, so a whole number belongs here.',
    ]);
  });

  it('lie between the marks', () => {
    expect(faults('  card: { in: 4.13, mm: 104.9 }')).toEqual([
      'note measures > card > in: off-grid: This lies between two marks of the inch ruler. Pages show it as “≈ 4 1/8 in”.',
      'note measures > card > mm: off-grid: This lies between two marks of the metric ruler. Pages show it as “≈ 105 mm”.',
    ]);
  });

  it('have ranges that make no sense', () => {
    expect(faults('  ease: { mm: 6, between: [9, 3] }')).toEqual([
      'error measures > ease > between: range-empty: The range ends where it starts, or before. Write the least first, then the most.',
    ]);
    expect(faults('  ease: { mm: 6, between: [7, 9] }')).toEqual([
      'warning measures > ease > between: lesson-out-of-range: The lesson’s own 6 mm lies outside 7 mm to 9 mm. Widen the range.',
    ]);
    expect(faults('  ease: { mm: 6, between: [2, 10], step: 3 }')).toEqual([
      'note measures > ease > step: step-misses: Steps from 2 mm never come to the lesson’s 6 mm. The slider goes mark by mark instead.',
    ]);
    expect(faults('  ease: { mm: 6, between: [2, 10], step: 0 }')).toEqual([
      'error measures > ease > step: no-step: A step is a plain length above zero, such as 1/8.',
    ]);
    expect(faults('  twice: { is: 2 * seam, between: [2, 10] }')).toEqual([
      'error measures > twice > between: range-of-formula: “twice” follows from its formula, so a learner cannot choose it. Take out between, or state a value in place of the formula.',
    ]);
    expect(faults('  pockets: { count: 5, between: [6, 4] }')).toEqual([
      'error measures > pockets > between: range-empty: A count goes from one whole number to a larger one: [4, 6].',
    ]);
  });

  it('are silent about what only rests on them', () => {
    expect(faults('  a: sem\n  b: 2 * a\n  c: b + seam', '{ bag: { size: [c, b] } }')).toHaveLength(1);
  });
});

describe('pieces that cannot be', () => {
  it('have no size, two sizes, or the size of another that is missing', () => {
    expect(faults('', '{ bag: { cut: 2 } }')).toEqual([
      'error pieces > bag: no-size: The piece “bag” has no size. Give it a size, a finished size, an outline, or another piece it is like.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], finished: [80, 80] } }')).toEqual([
      'error pieces > bag > finished: size-twice: The piece “bag” gets its size twice: by “size” and “finished”. Keep one of them.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90] }, lining: { like: bga } }')).toEqual([
      'error pieces > lining > like: unknown-name: There is no other piece called “bga”. Do you mean “bag”?',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], inset: 3 } }')).toEqual([
      'error pieces > bag > inset: inset-of-nothing: An inset needs a piece to be set into. Name it under like.',
    ]);
  });

  it('come from a material that the project does not have', () => {
    const two = 'materials: { outer: cotton, lining: lawn }';
    expect(faults('', '{ bag: { from: lning, size: [90, 90] } }', two)).toEqual([
      'error pieces > bag > from: unknown-name: There is no material in the role “lning”. Do you mean “lining”?',
    ]);
    expect(faults('', '{ bag: { from: felt, size: [90, 90] } }', two)).toEqual([
      'error pieces > bag > from: unknown-name: There is no material in the role “felt”. Name it under materials: felt: quilting cotton.',
    ]);
  });

  it('are too large, too small or all seam', () => {
    expect(faults('', '{ bag: { size: [90, 60 m + 60 m] } }')).toEqual([
      'error pieces > bag > size: too-large: “bag” is 120000 mm long. That is more than 100 m, longer than a roll of cloth. Check the unit.',
    ]);
    expect(faults('', '{ bag: { finished: [90, 0.4], allowance: 0 } }')).toEqual([
      'error pieces > bag > finished: too-small: “bag” is only ≈ 0 mm wide. Nobody can cut less than 1 mm. Check the unit.',
    ]);
    expect(faults('', '{ bag: { size: [90, 10] } }')).toEqual([
      'error pieces > bag > size: nothing-left: The seam allowances of “bag” use up all of its height.',
    ]);
    expect(faults('', '{ bag: { size: [seam - 3 * seam, 90] } }')).toEqual([
      'error pieces > bag > size: nothing-left: The width of “bag” comes to -12 mm. There is nothing to cut.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], allowance: seam - 8 mm } }')).toEqual([
      'error pieces > bag > allowance: negative: This comes to -2 mm, which is less than nothing.',
    ]);
  });

  it('have numbers where lengths belong, and lengths where numbers belong', () => {
    expect(faults('  pockets: 5', '{ bag: { cut: pockets, size: [2 * 45, 90] } }')).toEqual([
      'error pieces > bag > size > 0: wrong-kind: A length belongs here, but “2 * 45” is a plain number. Give the numbers a unit, such as 6 mm.',
      'error pieces > bag > cut: wrong-kind: A plain number belongs here, but “pockets” is a length. If a measure is meant as a number of things, write it as { count: 5 }.',
    ]);
    expect(faults('', '{ bag: { cut: 1.5, size: [90, 90] } }')).toEqual([
      'error pieces > bag > cut: not-a-count: A whole number from 1 up belongs here, not 1.5.',
    ]);
  });

  it('have corners, notches and folds that miss them', () => {
    expect(faults('', '{ bag: { size: [90, 90], corners: { round: 50 } } }')).toEqual([
      'error pieces > bag > corners: corner-too-large: The corners of the edge bottom need more than its whole length.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], corners: { at: left up, round: 5 } } }')).toEqual([
      expect.stringMatching(/^error pieces > bag > corners: unknown-corner: There is no left-up corner\./u),
    ]);
    expect(faults('', '{ bag: { size: [90, 90], corners: { at: top left } } }')).toEqual([
      'error pieces > bag > corners: corner-unclear: A corner is either rounded or cut off: { at: top left, round: 1/2 }.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], notches: [{ on: tpo, at: middle }, { on: top, at: 95 }] } }')).toEqual([
      'error pieces > bag > notches > 0 > on: unknown-name: “bag” has no edge called “tpo”. Do you mean “top”?',
      'error pieces > bag > notches > 1 > at: off-the-edge: The top edge of “bag” is only 90 mm long.',
    ]);
    expect(faults('', '{ bag: { size: [90, 90], folds: [{ at: 95 }] } }')).toEqual([
      'error pieces > bag > folds > 0 > at: off-the-edge: This fold lies beyond “bag”, which measures only 90 mm that way.',
    ]);
    expect(faults('', '{ bag: { outline: [[0, 0], [90, 90], [90, 0], [0, 90]] } }')).toEqual([
      'error pieces > bag > outline: outline-crosses: The outline of “bag” crosses itself. List the points in order round the edge.',
    ]);
  });

  it('have allowances for edges that they do not have', () => {
    expect(faults('', '{ bag: { size: [90, 90], allowance: { tpo: 20, others: 6 } } }')).toEqual([
      'error pieces > bag > allowance > tpo: unknown-name: “bag” has no edge called “tpo”. Do you mean “top”?',
    ]);
  });

  it('are left out, rather than made other than asked', () => {
    for (const field of [
      'allowance: 6 cubits',
      'cut: two',
      'corners: { round: saem }',
      'pleats: { pockets: 2, depth: saem, step: 9 }',
    ]) {
      const { pieces, findings } = resolved(
        `title: Wrong\nmeasures: { seam: 1/4 }\npieces: { bag: { size: [9, 90], ${field} }, lining: { like: bag } }\n`,
      );
      expect([field, Object.keys(pieces), findings.length]).toEqual([field, [], 1]);
    }
  });

  it('want a nap that cannot stand upright', () => {
    expect(faults('', '{ bag: { size: [90, 90], nap: up, grain: crosswise } }')).toEqual([
      'warning pieces > bag > nap: nap-across: Pile and print run along the selvage, so on “bag”, cut crosswise, they cannot stand upright. Cut it lengthwise, or take a cloth without a direction and leave nap out.',
    ]);
  });
});

describe('pleats that cannot be', () => {
  const strip = (pleats: string, size = '[120, strip length]') =>
    faults('', `{ strip: { label: Strip, size: ${size}, pleats: { ${pleats} } } }`);

  it('are too many, or none', () => {
    expect(strip('pockets: 25, depth: 50, step: 20')).toEqual([
      'error pieces > strip > pleats > pockets: too-many-pockets: A strip is folded into 24 pockets at the most here.',
    ]);
    expect(strip('pockets: 2.5, depth: 50, step: 20')).toEqual([
      'error pieces > strip > pleats > pockets: pockets-not-whole: A whole number of pockets belongs here, one or more.',
    ]);
  });

  it('do not fit the strip, and say by how much', () => {
    expect(strip('pockets: 2, depth: 50, step: 20', '[120, 270]')).toEqual([
      'error pieces > strip > size > 1: strip-too-short: These pleats do not fit: the strip of “Strip” is 12 mm too short. Cut it longer, or make the pockets fewer, less deep or closer.',
    ]);
    expect(strip('pockets: 2, depth: 50, step: 20, height: 80')).toEqual([
      'error pieces > strip > pleats > height: head-too-low: “Strip” ends too low: above the top pocket 2 mm more is needed for the seam. Make the panel taller, or the pockets fewer, less deep or closer.',
    ]);
    expect(strip('folds: [56, 120]', '[120, 300]')).toEqual([
      'error pieces > strip > pleats > folds > 1: below-bottom-edge: Fold 2 would hang 8 mm below the bottom edge of “Strip”. Fold the pocket below it less deep.',
    ]);
  });

  it('say too little or too much', () => {
    expect(strip('pockets: 2, step: 20')).toEqual([
      'error pieces > strip > pleats: pleats-incomplete: These pleats need “depth” too, or the fold lines themselves.',
    ]);
    expect(strip('folds: [56, 106], depth: 50', '[120, 300]')).toEqual([
      'error pieces > strip > pleats > depth: pleats-twice: The fold lines already say “depth”. Keep one way or the other.',
    ]);
    expect(strip('folds: [56, 106, 176]', '[120, 300]')).toEqual([
      'error pieces > strip > pleats > folds: odd-folds: Each pocket needs two folds, so the number of folds is even. Add the fold that is missing, or take one out.',
    ]);
    expect(strip('pockets: 2, depth: 50, step: 0')).toEqual([
      'error pieces > strip > pleats > step: no-step: Without a step between them, each pocket hides the one behind it. Make the step larger than nothing.',
    ]);
  });

  it('are asked for folds that they do not have', () => {
    expect(
      faults(
        '  mark: strip fold 5',
        '{ strip: { label: Strip, size: [120, strip length], pleats: { pockets: 2, depth: 50, step: 20 } } }',
      ),
    ).toEqual(['error measures > mark: no-such-part: “Strip” has only 4 folds, but number 5 is asked for.']);
  });

  it('count their pockets with a measure that is a length', () => {
    expect(
      faults(
        '  pockets: 5',
        '{ strip: { size: [120, strip length], pleats: { pockets: pockets, depth: 50, step: 20 } } }',
      ),
    ).toEqual([
      'error pieces > strip > pleats > pockets: wrong-kind: A plain number belongs here, but “pockets” is a length. If a measure is meant as a number of things, write it as { count: 5 }.',
    ]);
  });
});

describe('options that cannot be', () => {
  it('add, drop and change what the project does not have', () => {
    const option = 'options: { zip: { adds: [zip pocket], drops: [bga], measures: { saem: 7 } } }';
    expect(faults('', '{ bag: { size: [90, 90] } }', option)).toEqual([
      'error options > zip > measures > saem: unknown-name: There is no measure called “saem”. Do you mean “seam”?',
      'error options > zip > adds > 0: unknown-name: There is no piece or material called “zip pocket”. There is only “bag”.',
      'error options > zip > drops > 0: unknown-name: There is no piece or material called “bga”. Do you mean “bag”?',
    ]);
  });
});

describe('resolveProject', () => {
  it('works on the least there can be', () => {
    const pattern = resolved('title: Nothing yet\nmeasures: {}\npieces: {}\n');
    expect(check(pattern)).toEqual([]);
    expect(pattern).toMatchObject({ title: 'Nothing yet', edition: 'inch', measures: {}, pieces: {}, holds: [] });
  });

  it('never throws, whatever the file says, and places each finding in the file', () => {
    const scalar = fc.oneof(
      fc.constantFrom('1/4', '6 mm', 'seam', 'a', 'b + seam', '2 * a', '-3', 'p width', 'p fold 1', 'min(a, b)'),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.integer({ min: -5, max: 500 }),
      fc.string({ minLength: 1 }),
    );
    const length = fc.oneof(scalar, fc.record({ in: scalar, mm: scalar }, { requiredKeys: [] }));
    const size = fc.tuple(length, length);
    const fields = <T>(of: Record<string, fc.Arbitrary<T>>) => fc.record(of, { requiredKeys: [] });
    const measure = fc.oneof(
      scalar,
      fields<unknown>({
        in: scalar,
        mm: scalar,
        is: scalar,
        count: scalar,
        between: fc.tuple(scalar, scalar),
        step: length,
      }),
    );
    const pleats = fields<unknown>({
      pockets: scalar,
      depth: length,
      step: length,
      lift: length,
      head: length,
      height: length,
      bottoms: fc.constantFrom('stepped', 'level'),
      from: fc.constantFrom('bottom', 'top'),
      folds: fc.array(length, { minLength: 2, maxLength: 6 }),
    });
    const edges = fc.oneof(length, fc.dictionary(fc.constantFrom('top', 'left', 'others', 'hem'), length));
    const piece = fields<unknown>({
      from: fc.constantFrom('outer', 'lining'),
      cut: scalar,
      size,
      finished: size,
      like: fc.constantFrom('p', 'q', 'r'),
      outline: fc.array(size, { minLength: 3, maxLength: 5 }),
      inset: edges,
      allowance: edges,
      corners: fields<unknown>({ at: fc.constantFrom('top left', 'nowhere'), round: length }),
      notches: fc.array(fc.record({ on: fc.constantFrom('top', 'hem'), at: length }), { maxLength: 2 }),
      folds: fc.array(fc.record({ at: length }), { maxLength: 2 }),
      pleats,
    });
    const files = fc.record({
      title: fc.constant('Anything'),
      measures: fc.dictionary(fc.constantFrom('seam', 'a', 'b', 'p width', '__proto__'), measure),
      pieces: fc.dictionary(fc.constantFrom('p', 'q', 'r'), piece),
      holds: fc.array(
        fc.record({ what: fc.constantFrom('A7', 'a brick'), in: fc.constantFrom('p', 'top pocket', 'pocket 3 of q') }),
        { maxLength: 2 },
      ),
      options: fc.dictionary(
        fc.constantFrom('zip', 'flap'),
        fields<unknown>({
          adds: fc.constant(['p']),
          drops: fc.constant(['q']),
          measures: fc.dictionary(fc.constantFrom('a', 'b'), length),
        }),
      ),
    });
    let usable = 0;
    fc.assert(
      fc.property(files, fc.constantFrom('inch', 'metric'), (raw, edition) => {
        const read = ProjectFile.safeParse(raw);
        if (!read.success) return;
        usable++;
        const pattern = resolveProject(read.data, { edition, values: { a: 20 }, options: { zip: true } });
        for (const { place, message } of check(pattern)) {
          expect(message).not.toMatch(/undefined|NaN|\[object/u);
          if (place[0] !== 'values' && !(place[0] === 'options' && place.length === 1))
            expect(holds(raw, place)).toBe(true);
        }
        for (const measure of Object.values(pattern.measures)) expect(measure.value).toSatisfy(Number.isFinite);
        for (const { size, sewn } of Object.values(pattern.pieces)) {
          for (const length of [...Object.values(size), ...Object.values(sewn)])
            expect(length).toSatisfy(Number.isFinite);
        }
      }),
      runs(300),
    );
    expect(usable).toBeGreaterThan(150);
  });

  it('places a finding inside the text that it is about', () => {
    const { findings } = resolveProject(project('title: W\nmeasures: { width: 2 * (ease + 3) }\npieces: {}\n'));
    const text = '2 * (ease + 3)';
    expect(findings.map(({ start, end }: Diagnostic) => text.slice(start, end))).toEqual(['ease']);
  });
});

/** Whether a place is in the file: each step but perhaps the last leads on. */
function holds(file: unknown, place: Diagnostic['place']): boolean {
  let here: unknown = file;
  for (const step of place) {
    if (typeof here !== 'object' || here === null || !Object.hasOwn(here, step)) return false;
    here = (here as Record<string | number, unknown>)[step];
  }
  return true;
}
