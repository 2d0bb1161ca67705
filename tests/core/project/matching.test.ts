/** Prints that are matched: what a project file says, what lies where in the end, and what cannot be. */
import { describe, expect, test } from 'vitest';
import { boltOf, demandOf, kitFor, kitRows } from '../../../src/core/kit/index.ts';
import { layOut } from '../../../src/core/layout/index.ts';
import { check, matchingOf, matchWords } from '../../../src/core/project/index.ts';
import { faults, mismatches } from '../layout/verify.ts';
import { lines, resolved, shelf } from './files.ts';

/** Two panels of 200 x 300 mm whose print is the same 50 mm and 80 mm above their lower edges, and two cuffs. */
const panels = `
title: Panels
units: metric
measures: { seam: 10, drop: 80 }
materials:
  outer: { use: quilting cotton, label: Print, repeat: { in: 4 3/4, mm: 120 } }
  lining: lining cotton
pieces:
  front: { label: Front, from: outer, size: [200, 300] }
  back: { label: Back, from: outer, size: [200, 330] }
  cuff: { label: Cuff, from: outer, size: [100, 60], cut: 2 }
  stay: { from: lining, size: [50, 50] }
  binding: { from: outer, size: [400, 40], grain: crosswise }
options:
  cuffs: { adds: [cuff] }
cutting:
  match:
    - { pieces: [front, back], at: [50, drop] }
    - { pieces: [cuff] }
`;

const pattern = (yaml = panels, options = { cuffs: true }) => resolved(yaml, { materials: shelf(), options });

test('each edition has its repeat, formulas give heights, and a piece that is cut twice is matched with itself', () => {
  const { repeats, matches, findings } = matchingOf(pattern());
  expect(findings).toEqual([]);
  expect(Object.fromEntries(repeats)).toEqual({ outer: 120 });
  expect(Object.fromEntries(matches)).toEqual({
    front: { group: 'match 1', at: 50 },
    back: { group: 'match 1', at: 80 },
    cuff: { group: 'match 2', at: 0 },
  });
  const inches = resolved(panels, { materials: shelf(), edition: 'inch' });
  expect(matchingOf(inches).repeats.get('outer')).toBeCloseTo(4.75 * 25.4, 9);
  // What an option leaves out is not matched.
  expect([...matchingOf(pattern(panels, { cuffs: false })).matches.keys()]).toEqual(['front', 'back']);
});

test.each(['free', 'straight cuts'] as const)('%s: matched pieces lie at one place of the print', (manner) => {
  const one = pattern();
  const role = one.materials.outer!;
  const demand = demandOf(one, 'outer', 3, 450);
  const cloths = [boltOf(one, role, 450)];
  const layout = layOut(demand, cloths, { manner });
  expect(layout.left).toEqual([]);
  expect(faults(layout, demand, cloths, { manner })).toEqual([]);
  expect(mismatches(layout, demand, cloths)).toEqual([]);
  // Without a match it takes no more.
  const plain = demand.map(({ match: _, ...rest }) => rest);
  expect(layOut(plain, cloths, { manner }).length).toBeLessThanOrEqual(layout.length + 1e-6);
});

test('what a repeat costs, by hand: two panels of 300 mm one behind the other begin 3 x 120 mm apart', () => {
  const narrow = resolved(panels.replace('size: [200, 330]', 'size: [200, 300]').replace('drop: 80', 'drop: 50'), {
    materials: {
      'quilting cotton': { kind: 'cloth', width: { in: 12, mm: 300, source: 'a sample' } },
      'lining cotton': { kind: 'cloth', width: { in: 12, mm: 300, source: 'a sample' } },
    },
  });
  const pieces = demandOf(narrow, 'outer', 1, 300).filter(({ name }) => name === 'front' || name === 'back');
  expect(layOut(pieces, [boltOf(narrow, narrow.materials.outer!, 300)]).length).toBeCloseTo(360 + 300, 6);
});

test('whoever buys and cuts is told', () => {
  const words = 'The print begins again every 120 mm. Match it on Front and Back; and on all 2 of Cuff.';
  expect(matchWords(pattern(), 'outer')).toBe(words);
  expect(matchWords(pattern(), 'lining')).toBeUndefined();
  const { lines: bought } = kitFor(pattern(), { makers: 1, spares: 0 });
  expect(kitRows(bought[0]!, 'metric')[0]!.note).toContain(words);
});

describe('what cannot be matched is named at its place', () => {
  test.each([
    ['a piece that is not there', ['front, back', 'front, bakc'], 'cutting > match > 0 > pieces > 1: unknown-name'],
    ['a height too few', ['[50, drop]', '[50]'], 'cutting > match > 0 > at: heights'],
    ['a height outside the piece', ['[50, drop]', '[50, 400]'], 'cutting > match > 0 > at > 1: outside'],
    ['a height that cannot be read', ['[50, drop]', '[50, drip]'], 'cutting > match > 0 > at > 1: unknown-name'],
    [
      'a piece in two lists',
      ['pieces: [cuff]', 'pieces: [cuff, front]'],
      'cutting > match > 1 > pieces > 1: matched-twice',
    ],
    [
      'a piece of another cloth',
      ['pieces: [cuff]', 'pieces: [cuff, stay]'],
      'cutting > match > 1 > pieces > 1: two-cloths',
    ],
    [
      'a piece cut crosswise',
      ['pieces: [cuff]', 'pieces: [cuff, binding]'],
      'cutting > match > 1 > pieces > 1: match-across',
    ],
    ['no distance at all', ['in: 4 3/4, mm: 120', 'in: 0, mm: 0'], 'materials > outer > repeat: no-repeat'],
    ['a distance of 4 m', ['in: 4 3/4, mm: 120', 'in: 160, mm: 4000'], 'materials > outer > repeat: no-repeat'],
    ['a repeat in words', ['in: 4 3/4, mm: 120', 'mm: two'], 'materials > outer > repeat > mm: not-a-length'],
    ['a print without a repeat', [', repeat: { in: 4 3/4, mm: 120 }', ''], 'cutting > match > 0: nothing-to-match'],
    ['a single piece by itself', ['pieces: [cuff]', 'pieces: [stay]'], 'cutting > match > 1: nothing-to-match'],
  ])('%s', (_, [from, to], expected) => {
    const yaml = panels.replace(from!, to!);
    expect(yaml).not.toBe(panels);
    const found = lines(check(pattern(yaml)));
    expect(found.map((line) => line.replace(/^\w+ /, '').split(': ').slice(0, 2).join(': '))).toContain(expected);
  });

  test('in words', () => {
    const said = (from: string, to: string) => lines(matchingOf(pattern(panels.replace(from, to))).findings);
    expect(said('in: 4 3/4, mm: 120', 'in: 0, mm: 0')).toEqual([
      'error materials > outer > repeat: no-repeat: A print cannot begin again every 0 mm. Measure from one motif to the next alike along the selvage.',
    ]);
    expect(said('[50, drop]', '[50, 400]')).toEqual([
      'error cutting > match > 0 > at > 1: outside: “back” is 330 mm high; 400 mm lies outside it. Measure from its lower cut edge.',
    ]);
    expect(said('pieces: [cuff]', 'pieces: [cuff, stay]')).toEqual([
      'error cutting > match > 1 > pieces > 1: two-cloths: “cuff” and “stay” are not cut from one cloth. Match the pieces of each cloth in a list of their own.',
    ]);
  });
});
