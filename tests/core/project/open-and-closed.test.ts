/** A finished size open and closed, about right, and how thick; what is held behind a panel. Worked out by hand. */
import { describe, expect, it } from 'vitest';
import { check, makeUp, MaterialsFile, resolveProject } from '../../../src/core/project/index.ts';
import { lines, project } from './files.ts';

const materials = MaterialsFile.parse({ canvas: { kind: 'cloth', thickness: { mm: 0.6, source: 'made up' } } });

/** Two layers of 12 × 8 and their seams of 1/2, turned, and folded in half: 4 layers of 0.6 mm, 8 where the seams lie. */
const folder = (finished: string, last = '- { fold: folder, from: left, at: 6 }', holds = '[]') => `
title: Folder
measures: { seam: { in: 1/2, mm: 12 } }
materials: { outer: canvas }
pieces:
  outside: { from: outer, size: [13, 9] }
  inside: { from: outer, size: [13, 9] }
  panel: { from: outer, size: [13, 6] }
holds: ${holds}
steps:
  - { hem: panel, at: top, fold: 1/2, then: 1/2 }
  - { lay: panel, on: inside, at: bottom }
  - { baste: inside, at: [panel left, bottom, panel right] }
  - { sew round: [outside, inside], gap: { edge: top, length: 3 }, makes: folder }
  - { turn: folder }
  ${last}
finished: ${finished}
`;
const pattern = (yaml: string) => resolveProject(project(yaml), { edition: 'inch', materials });
const found = (...written: Parameters<typeof folder>) =>
  lines(check(pattern(folder(...written))).filter(({ severity }) => severity === 'error'));

describe('a finished size', () => {
  it('is promised open and closed, and closed is what the last step leaves', () => {
    const both = '{ open: { width: 12, height: 8 }, closed: { width: 6, height: 8 } }';
    expect(found(both)).toEqual([]);
    expect(pattern(folder(both)).finished).toEqual({
      width: 152.4,
      height: 203.2,
      open: { width: 304.8, height: 203.2 },
    });
    expect(found('{ of: folder, width: 6, height: 8, open: { width: 12, height: 8 } }')).toEqual([]);
    expect(found('{ of: folder, width: 6, height: 8 }')).toEqual([]);
    expect(found('{ open: { width: 12, height: 8 } }')).toEqual([]);
  });

  it('that differs is told at its place', () => {
    expect(found('{ open: { width: 11, height: 8 }, closed: { width: 6, height: 8 1/4 } }')).toEqual([
      'error finished > closed > height: finished-size: The steps make “folder” 8 in high; the file promises 8 1/4 in. That is 1/4 in less. Check the sizes of the pieces, or state what the steps make.',
      'error finished > open > width: finished-size: The steps make “folder, open,” 12 in wide; the file promises 11 in. That is 1 in more. That is two seam allowances: count the seams across the width again.',
    ]);
  });

  it('may be about right, within what is said', () => {
    expect(found('{ width: 6, height: 8 1/4, within: 1/4 }')).toEqual([]);
    expect(found('{ width: 6, height: 8 3/8, within: 1/4 }')).toEqual([
      'error finished > height: finished-size: The steps make “folder” 8 in high; the file promises about 8 3/8 in. That is 3/8 in less, and it may be 1/4 in off. Check the sizes of the pieces, or state what the steps make.',
    ]);
  });

  it('says how thick it is when it is closed, where it folds and in the check', () => {
    // At a corner each of the three is turned in at both edges and lies there four times; folded in half, twice that.
    const of = (thickness: string) =>
      `{ open: { width: 12, height: 8 }, closed: { width: 6, height: 8, thickness: ${thickness} } }`;
    const thick = 0.6 * 2 * 12;
    expect(makeUp(pattern(folder(of('4 mm')))).at(-1)!.advice).toContain(
      `Closed, it is about ${thick.toFixed(1)} mm thick where it is thickest.`,
    );
    expect(found(of(`${thick.toFixed(1)} mm`))).toEqual([]);
    expect(found(of('1/8'))[0]).toMatch(
      /^error finished > closed > thickness: finished-thickness: Closed, “folder” is about [\d.]+ mm thick where it has \d+ layers; the file promises 3\.2 mm\. /u,
    );
  });
});

describe('what goes behind a panel', () => {
  // The panel is sewn in at three sides, half an inch inside: 12 wide, and 6 - 1 of hem - 1/2 deep.
  const both = '{ open: { width: 12, height: 8 }, closed: { width: 6, height: 8 } }';
  const hold = (size: string, state = 'open') => `[{ what: a pad, size: ${size}, in: behind panel, state: ${state} }]`;
  it('is held by the rows that sew the panel on', () => {
    expect(found(both, undefined, hold('[11 3/4, 4 1/4]'))).toEqual([]);
    expect(found(both, undefined, hold('[11 3/4, 4 3/4]'))).toEqual([
      'error holds > 0 > in: pocket-shallow: Once sewn, the room behind the panel is 4 1/2 in deep. That is 1/4 in too shallow for a pad. Make it deeper, or move the row of stitches across it lower.',
    ]);
    expect(found(both, undefined, hold('[12 1/4, 4]'))[0]).toMatch(/^error holds > 0 > in: .*1\/4 in too/u);
    expect(found(both, undefined, hold('[8, 4]', 'closed'))[0]).toMatch(
      /pocket-narrow: Folded shut, the room behind the panel is 6 in wide/u,
    );
  });

  it('has no place where nothing sews the panel on', () => {
    const loose = folder(both, undefined, hold('[4, 2]'))
      .replace('panel: { from: outer, size: [13, 6] }', 'panel: { from: outer, size: [8, 5] }')
      .replace('on: inside, at: bottom', 'on: inside')
      .replace(/ {2}- \{ baste.*\n/u, '');
    expect(lines(check(pattern(loose)).filter(({ code }) => code === 'nothing-behind'))).toEqual([
      'error holds > 0 > in: nothing-behind: Nothing sews “panel” to other cloth, so that a pad has no place behind it. Sew it on along its sides and its bottom, or write “in: panel”.',
    ]);
    expect(found(both, undefined, '[{ what: a pad, size: [8, 4], in: behind the pannel }]')[0]).toMatch(
      /There is no piece called “pannel”\. Do you mean “panel”\?$/u,
    );
  });
});
