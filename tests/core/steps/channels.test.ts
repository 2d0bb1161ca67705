/** A casing stays open for what is drawn through it. That a seam across closes it follows from the cloth: no source. */
import { describe, expect, test } from 'vitest';
import { check, makeUp } from '../../../src/core/project/index.ts';
import { lines, resolved } from '../project/files.ts';
import type { Edition } from '../../../src/core/index.ts';

const EDITIONS = ['inch', 'metric'] as const;

/** Two panels of a drawstring bag, strips, and steps. */
const project = (steps: string, edition: Edition = 'inch') =>
  resolved(
    `
title: Drawstring bag
measures:
  seam: { in: 1/2, mm: 12 }
  cord room: { in: 3/4, mm: 20 }
pieces:
  front: { size: [{ in: 12, mm: 300 }, { in: 16, mm: 400 }] }
  back: { like: front }
  strip: { size: [{ in: 10, mm: 250 }, { in: 2, mm: 50 }] }
  other strip: { like: strip }
  long strip: { size: [{ in: 12, mm: 300 }, { in: 2, mm: 50 }] }
steps:
${steps.trim().replace(/^/gmu, '  ')}
`,
    { edition },
  );

const bag = (steps: string, edition?: Edition): string[] =>
  lines(check(project(steps, edition))).filter((line) => line.startsWith('error'));

const casings = `
- { casing: front, at: top, width: cord room, then: { in: 1/4, mm: 6 } }
- { casing: back, at: top, width: cord room, then: { in: 1/4, mm: 6 } }
`;
const cased = (steps: string, edition?: Edition) => bag(`${casings.trim()}\n${steps.trim()}`, edition);

describe.each(EDITIONS)('what closes a casing, in the %s edition', (edition) => {
  test('the side seams of a bag', () => {
    for (const seam of [
      '- { sew round: [front, back], open: top, makes: bag }',
      '- { sew round: [front, back], open: top, makes: bag }\n- { turn: bag }',
      '- { join: [front, back], at: [right, left], makes: bag }',
      '- { join: [front, back], at: [right, left], press: open, makes: bag }',
      '- { french seam: [front, back], at: [right, left], makes: bag }',
      '- { flat-felled seam: [front, back], at: [right, left], makes: bag }',
    ])
      expect
        .soft(cased(seam, edition), seam)
        .toEqual([
          'error steps > 2: casing-closed: This seam crosses the casings of the front and the back and closes them: nothing can be ' +
            'drawn through. Make the casing after this step. Sewn after its side seams it goes all round: “at: opening”.',
        ]);
  });
  test('a row across it', () => {
    for (const row of [
      'topstitch: front, at: left',
      'edgestitch: front, at: right',
      'hem: front, at: left, fold: 1/4 in, then: 1/4 in',
    ])
      expect
        .soft(cased(`- { ${row} }`, edition), row)
        .toEqual([
          'error steps > 2: casing-closed: This row crosses the casing of the front and closes it: nothing can be drawn through. ' +
            'Make the casing after this step.',
        ]);
  });
});
describe.each(EDITIONS)('what leaves a casing open, in the %s edition', (edition) => {
  test.each([
    ['nothing more', casings],
    [
      'ends that were hemmed first',
      `- { hem: front, at: [left, right], fold: 1/4 in, then: 1/4 in }\n${casings.trim()}`,
    ],
    ['rows that were sewn first', `- { topstitch: front, at: left }\n${casings.trim()}`],
    [
      'a seam that was sewn first',
      '- { join: [front, back], at: [right, left], makes: bag }\n- { casing: bag, at: top, width: cord room }',
    ],
  ])('%s', (_, steps) => expect(bag(steps, edition)).toEqual([]));
  test.each([
    ['a row beside it', '- { topstitch: front, at: top, by: 2 in }'],
    ['a row along in it, a heading', '- { topstitch: front, at: top, by: 1/4 in }'],
    ['a row at the other end', '- { hem: front, at: bottom, fold: 1/4 in, then: 1/2 in }'],
    ['a row that comes out again', '- { baste: front, at: left }'],
    [
      'a buttonhole for the cord',
      '- { buttonhole: front, at: [6 in, { in: 14 1/2, mm: 362 }], length: 1/2 in, runs: up, through: 1 }',
    ],
    ['a seam below it', '- { join: [front, back], at: bottom, makes: bag }'],
    ['a fold across it', '- { fold: front, from: left, at: 5 in }'],
  ])('%s', (_, steps) => expect(cased(steps, edition)).toEqual([]));
});

/** A strip that is laid on a hemmed panel and sewn down along both its long edges. */
const striped = (strip: string, panel: string) => `
- { hem: ${panel}, at: top, fold: 1/4 in, then: 1/2 in }
- { hem: ${strip}, at: all, fold: 1/4 in }
- { lay: ${strip}, on: ${panel}, at: top }
- { casing: ${panel}, at: [${strip} top, ${strip} bottom] }`;
const onFront = striped('strip', 'front');

describe.each(EDITIONS)('a strip that is sewn down as a casing, in the %s edition', (edition) => {
  test('stays open between the side seams', () => {
    const steps = `${onFront}${striped('other strip', 'back')}\n- { sew round: [front, back], open: top, makes: bag }\n- { turn: bag }`;
    expect(bag(steps, edition)).toEqual([]);
  });
  test('is sewn by two rows, with the room for the cord between them', () => {
    const steps = makeUp(project(onFront, edition));
    const [, , , casing] = steps;
    // The hemmed strip is 1 1/2 in or 38 mm wide once it is hemmed, and each row lies 1/16 in or 2 mm inside its edge.
    const wide = edition === 'inch' ? 25.4 * 1.5 : 38;
    const room = wide - 2 * (edition === 'inch' ? 25.4 / 16 : 2);
    const rows = casing!.after.stitches.slice(-2);
    expect(rows.map(({ kind }) => kind)).toEqual(['topstitch', 'topstitch']);
    expect(Math.abs(rows[0]!.runs[0]!.from.y - rows[1]!.runs[0]!.from.y)).toBeCloseTo(room, 6);
    for (const { channel } of rows) expect(channel!.width).toBeCloseTo(room, 6);
  });
  test.each([
    ['a row across it', '- { topstitch: front, at: [strip left] }', 'row'],
    ['a row across the work', '- { fold: front, from: left, at: 6 in }\n- { topstitch: front, at: left }', 'row'],
  ])('is closed by %s', (_, step, by) =>
    expect(bag(`${onFront}\n${step}`, edition)).toEqual([
      `error steps > ${3 + step.split('\n').length}: casing-closed: This ${by} crosses the casing of the front and closes it: nothing can be drawn ` +
        'through. Make the casing after this step.',
    ]),
  );
  test('is closed by a seam over its ends', () => {
    const steps = `
- { lay: long strip, on: front, at: top }
- { casing: front, at: [long strip top, long strip bottom], by: 1/4 in }
- { join: [front, back], at: [right, left], makes: bag }`;
    expect(bag(steps, edition)).toEqual([
      'error steps > 2: casing-closed: This seam crosses the casing of the front and closes it: nothing can be drawn through. ' +
        'Make the casing after this step. Or end the strip beside the seam.',
    ]);
  });
  test('is closed where its ends were sewn down before', () => {
    const steps = onFront.replace('- { casing', '- { topstitch: front, at: strip left }\n- { casing');
    expect(bag(steps, edition)).toEqual([
      'error steps > 4: casing-closed: A row or seam of an earlier step crosses this casing of the front: nothing can be drawn ' +
        'through. Leave the ends of the strip open, or end the strip beside that row.',
    ]);
  });
  test.each([
    ['a row beside it', '- { topstitch: front, at: top, by: 4 in }'],
    ['a row along in it', '- { topstitch: front, at: strip top, by: 1/2 in }'],
    ['a row that comes out again', '- { baste: front, at: strip left }'],
    ['a hem of the panel beside it', '- { hem: front, at: left, fold: 1/4 in, then: 1/4 in }'],
    [
      'a buttonhole for the cord',
      '- { buttonhole: front, at: [6 in, { in: 14 1/2, mm: 362 }], length: 1/2 in, runs: up, through: 1 }',
    ],
    ['a fold across it', '- { fold: front, from: left, at: 5 in }'],
    ['a trim at the other end', '- { trim: front, at: bottom, by: 4 in }'],
  ])('stays open after %s', (_, step) => expect(bag(`${onFront}\n${step}`, edition)).toEqual([]));
  test('a ribbon that is only topstitched is none', () => {
    const steps = onFront.replace('casing: front', 'topstitch: front');
    expect(bag(`${steps}\n- { topstitch: front, at: strip left }`, edition)).toEqual([]);
  });
  test.each([
    [
      'a width, though it has its own',
      'casing: front, at: [strip top, strip bottom], width: 1 in',
      '“strip” is sewn down as it lies: the room for the cord is what lies between its rows.',
    ],
    ['one edge', 'casing: front, at: strip top', 'How much room is there for the cord?'],
    ['edges that meet', 'casing: front, at: [strip top, strip left]', 'How much room is there for the cord?'],
    ['the panel’s own edges', 'casing: front, at: [top, bottom]', 'How much room is there for the cord?'],
    ['a row of its own at an edge that is turned', 'casing: front, at: top, by: 1/8 in', 'No strip is sewn down here.'],
  ])('is not said by %s', (_, step, message) =>
    expect(bag(onFront.replace(/casing: .*\]/u, step), edition)).toEqual([
      `error steps > 3: unclear-casing: ${message} An edge that is turned needs “width”, and takes “then”; a strip that was ` +
        'laid on takes “by”, and two edges that face away from one another: “at: [strip top, strip bottom]”.',
    ]),
  );
  test.each([['no room', '1 in', 'too-deep: The two rows leave no room for a cord in “strip”.']])(
    'is refused where there is %s',
    (_, by, message) =>
      expect(bag(onFront.replace('bottom] }', `bottom], by: ${by} }`), edition)[0]).toContain(message),
  );
  test('is refused where it lies beside the cloth', () => {
    const steps =
      '- { lay: long strip, on: other strip, at: top }\n- { casing: other strip, at: [long strip top, long strip bottom] }';
    expect(bag(steps, edition)[0]).toContain(
      'misses: The row inside the long strip top does not lie on other cloth all along: nothing holds the strip there.',
    );
  });
});
