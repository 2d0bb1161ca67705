import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { ProjectFile, resolveProject } from '../../../src/core/project/index.ts';
import { explainMeasured, workTolerance, type Measured, type Subject } from '../../../src/core/questions/index.ts';
import { editions, narrowFolio as folio } from './demo.ts';
import type { Edition } from '../../../src/core/measure/index.ts';

const inch = (value: number) => value * 25.4;
const finished: Subject = { finished: true };

function read(measured: Measured, subject: Subject, edition: Edition = 'inch', file = folio) {
  const reading = explainMeasured(measured, subject, { file, settings: { edition } });
  if (!reading) throw new Error('There is nothing to measure.');
  return reading;
}

const kinds = (reading: ReturnType<typeof read>) => reading.explanations.map(({ kind }) => kind);

describe('the finished folio, inch edition: 4 1/2 × 6 3/8 in, seams of 1/4 in', () => {
  test('exactly right, and right within what sewing allows', () => {
    expect(read({ width: inch(4.5), height: inch(6.375) }, finished).sentence).toBe(
      'All is well: it measures exactly what it should.',
    );
    expect(read({ width: inch(4.4375), height: inch(6.5) }, finished)).toMatchObject({
      verdict: 'well',
      sentence: 'All is well: that is within what sewing allows.',
      remedies: [],
    });
  });

  test('sewn at 3/8 in: both ways are 1/4 in short', () => {
    const reading = read({ width: inch(4.25), height: inch(6.125) }, finished);
    expect(reading.verdict).toBe('explained');
    expect(reading.sentence).toBe(
      'It looks sewn with seams of ⅜\u202fin. The pattern has ¼\u202fin. That explains both width and height.',
    );
    expect(reading.remedies.map(({ kind }) => kind)).toEqual(['mend', 'carry-on', 'recut']);
    expect(reading.remedies[0]).toMatchObject({ how: 'unpick' });
  });

  test('one side seam forgotten', () => {
    const reading = read({ width: inch(4.75), height: inch(6.375) }, finished);
    expect(reading).toMatchObject({ verdict: 'explained', sentence: 'The seam at one side seems to be missing.' });
    expect(reading.remedies[0]).toMatchObject({ kind: 'mend', how: 'sew-again' });
  });

  test('a seam taken twice, or an allowance not cut: both are said', () => {
    const reading = read({ width: inch(4.25), height: inch(6.375) }, finished);
    expect(reading.verdict).toBe('ambiguous');
    expect(kinds(reading)).toEqual(['seam-doubled', 'cut-one-side']);
    expect(reading.sentence).toBe('More than one mistake would give this size. Look at the work to tell which.');
  });

  test('one way measured says less than both', () => {
    expect(kinds(read({ width: inch(4.25) }, finished))).toContain('other-allowance');
    expect(kinds(read({ width: inch(4.25) }, finished))).toContain('seam-doubled');
  });

  test('centimetres typed as inches', () => {
    const reading = read({ width: inch(11.4), height: inch(16.2) }, finished);
    expect(reading.sentence).toBe(
      'Your numbers fit in centimetres, but were read as inches. Check the ruler and the unit. That explains both width and height.',
    );
    expect(reading.remedies).toEqual([
      { kind: 'mend', how: 'measure-again', sentence: 'Measure once more before you change anything.' },
    ]);
  });

  test('nothing single explains it', () => {
    const reading = read({ width: inch(3.5), height: inch(7) }, finished);
    expect(reading.verdict).toBe('unexplained');
    expect(reading.sentence).toBe(
      'It is 1\u202fin too small in width and ⅝\u202fin too large in height. No single mistake explains that; measure once more.',
    );
  });
});

describe('a piece as it was cut', () => {
  const cover: Subject = { piece: 'cover', stage: 'cut' };
  test('at its finished size', () => {
    const reading = read({ width: 111, height: 163 }, cover, 'metric');
    expect(reading.verdict).toBe('explained');
    expect(kinds(reading)).toEqual(['cut-at-finished']);
    // Too small to mend with scissors.
    expect(reading.remedies.map(({ kind }) => kind)).toEqual(['carry-on', 'recut']);
    expect(reading.remedies.at(-1)).toMatchObject({ sentence: 'Cut it again, 123\u202fmm by 175\u202fmm.' });
  });
  test('too large is trimmed', () => {
    const reading = read({ width: 127, height: 175 }, cover, 'metric');
    expect(reading.remedies[0]).toMatchObject({ kind: 'mend', how: 'trim', sentence: 'Trim 4\u202fmm off the width.' });
  });
  test('lying crosswise on the ruler', () => {
    const reading = read({ width: 175, height: 123 }, cover, 'metric');
    expect(reading).toMatchObject({ verdict: 'explained', explanations: [{ kind: 'exchanged' }] });
  });
  test('a measure left out on the way to it', () => {
    // Without the clearance the flap is 6 mm wider and no higher; so it is with one allowance more.
    expect(kinds(read({ width: 123, height: 157 }, { piece: 'flap', stage: 'cut' }, 'metric'))).toContain(
      'measure-left-out',
    );
  });
});

describe('folded', () => {
  const strip: Subject = { piece: 'pocket strip', stage: 'sewn' };
  test('a fold off its line moves the edge by twice as much', () => {
    const reading = read({ width: 111, height: 163 + 18 }, strip, 'metric');
    expect(reading).toMatchObject({ verdict: 'explained', sentence: 'One fold seems to lie 9\u202fmm off its line.' });
    expect(reading.remedies[0]).toMatchObject({ how: 'fold-again' });
  });
  test('a pocket left unfolded', () => {
    // Two layers of 55 mm that are not taken up.
    expect(kinds(read({ width: 111, height: 163 + 110 }, strip, 'metric'))).toEqual(['pocket-forgotten']);
  });
});

test('there is nothing to measure of what is left out, or without a measurement', () => {
  const without = { file: folio, settings: { options: { flap: false } } };
  expect(explainMeasured({ width: 100 }, { piece: 'flap', stage: 'cut' }, without)).toBeUndefined();
  expect(explainMeasured({}, finished, { file: folio })).toBeUndefined();
});

describe.each(editions)('carrying on, %s edition', (edition) => {
  const settings = { edition };
  const { finished: size, pieces } = resolveProject(folio, settings);

  test('the project is worked out so that it has the real size', () => {
    const measured = { width: size!.width - 6, height: size!.height + 9 };
    // The folio's own hold follows the card; this one is a card that is there already.
    const card = { what: 'an A7 card', turned: true, in: 'every pocket of pocket strip', ease: 'ease', cover: '1/2' };
    const carry = read(measured, finished, edition, { ...folio, holds: [card] }).remedies.find(
      ({ kind }) => kind === 'carry-on',
    );
    if (carry?.kind !== 'carry-on') throw new Error('There is no way to carry on.');
    expect(carry.pattern.finished!.width).toBeCloseTo(measured.width, 6);
    expect(carry.pattern.finished!.height).toBeCloseTo(measured.height, 6);
    // The folio is made; what is still to be cut follows it.
    expect(carry.changes.map(({ piece }) => piece)).toEqual(['flap', 'flap lining', 'flap interfacing']);
    for (const { from, to } of carry.changes) {
      expect(to.width - from.width).toBeCloseTo(-6, 6);
      expect(to.height - from.height).toBeCloseTo(9, 6);
    }
    // An A7 card needs the 6 mm: that is said.
    expect(carry.misfits.length).toBeGreaterThan(0);
    expect(carry.sentence).toMatch(/^Carry on as if .+\. But an A7 card would no longer go in\.$/u);
  });

  test('what is cut already does not change', () => {
    const measured = { width: pieces.cover!.size.width + 8, height: pieces.cover!.size.height };
    const subject: Subject = { piece: 'cover', stage: 'cut' };
    const reading = explainMeasured(measured, subject, { file: folio, settings, made: ['facing', 'pocket strip'] });
    const carry = reading!.remedies.find(({ kind }) => kind === 'carry-on');
    const changed = carry?.kind === 'carry-on' ? carry.changes.map(({ piece }) => piece) : [];
    expect(changed).toContain('flap');
    for (const piece of ['cover', 'facing', 'pocket strip']) expect(changed).not.toContain(piece);
  });
});

/** A project with other words, other numbers and a panel that is trimmed. */
const caddy = ProjectFile.parse(
  parse(`
title: Bedside caddy
units: metric
measures:
  book: { mm: 210, between: { mm: [150, 260] } }
  room: { mm: 9, between: { mm: [2, 20] } }
  seam: { mm: 11 }
  depth: { mm: 90 }
pieces:
  back: { finished: [book + 2 * room, 330] }
  front: { size: [back width, 700], pleats: { pockets: 2, depth: depth, step: 40, height: 300 } }
finished: { of: caddy, width: back finished width, height: back finished height }
`),
);

test('a panel that was not trimmed, or trimmed twice', () => {
  const { sewn, pleats } = resolveProject(caddy).pieces.front!;
  // 300 mm of panel and two pockets that take 2 × 90 mm each: of 700 mm there are 40 mm left.
  expect(pleats!.trim).toBe(40);
  const at = (height: number) =>
    kinds(read({ width: sewn.width, height }, { piece: 'front', stage: 'sewn' }, 'metric', caddy));
  expect(at(sewn.height + 40)).toContain('not-trimmed');
  expect(at(sewn.height - 40)).toContain('trimmed-twice');
});

describe('whatever single mistake was made, it is among the explanations', () => {
  // The sizes are worked out here by the trade's own rules, from the cut size and the seams.
  const made: [string, string, (cut: number[], seam: number, habit: number) => [number, number]][] = [
    ['sewn at another allowance', 'other-allowance', ([w, h], _, habit) => [w! - 2 * habit, h! - 2 * habit]],
    ['a side seam forgotten', 'seam-forgotten', ([w, h], s) => [w! - s, h! - 2 * s]],
    ['a side seam taken twice', 'seam-doubled', ([w, h], s) => [w! - 3 * s, h! - 2 * s]],
    ['the top seam forgotten', 'seam-forgotten', ([w, h], s) => [w! - 2 * s, h! - s]],
    ['cut at its finished size', 'cut-at-finished', ([w, h], s) => [w! - 4 * s, h! - 4 * s]],
    ['not sewn yet', 'not-sewn', ([w, h]) => [w!, h!]],
  ];
  const projects = [
    { file: folio, edition: 'inch', habits: [3 / 8, 1 / 2, 5 / 8].map(inch) },
    { file: folio, edition: 'metric', habits: [10, 12, 15] },
    { file: caddy, edition: 'metric', habits: [5, 15, 20] },
  ] as const;

  test.each(made)('%s', (_, kind, size) => {
    fc.assert(
      fc.property(
        fc.constantFrom(...projects),
        fc.nat({ max: 2 }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        fc.double({ min: -0.4, max: 0.4, noNaN: true }),
        ({ file, edition, habits }, pick, noiseAcross, noiseUp) => {
          const pattern = resolveProject(file, { edition });
          const { finished: done, measures } = pattern;
          const seam = measures.seam!.value;
          const mark = edition === 'inch' ? 25.4 / 16 : 1;
          const [width, height] = size([done!.width + 2 * seam, done!.height + 2 * seam], seam, habits[pick]!);
          const measured = { width: width + noiseAcross * mark, height: height + noiseUp * mark };
          const reading = read(measured, finished, edition, file);
          expect(kinds(reading)).toContain(kind);
          for (const { miss } of reading.explanations) {
            expect(Math.max(Math.abs(miss.width!), Math.abs(miss.height!))).toBeLessThanOrEqual(mark + 0.051);
          }
        },
      ),
      { numRuns: 20 },
    );
  });

  test('within the tolerance there is no mistake to look for', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...projects),
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        ({ file, edition }, a, b) => {
          const { width, height } = resolveProject(file, { edition }).finished!;
          const most = workTolerance.sewn[edition];
          expect(read({ width: width + a * most, height: height + b * most }, finished, edition, file).verdict).toBe(
            'well',
          );
        },
      ),
      { numRuns: 40 },
    );
  });
});
