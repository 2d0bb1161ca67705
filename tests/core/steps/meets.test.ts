import { describe, expect, test } from 'vitest';
import { check, makeUp, resolveProject } from '../../../src/core/project/index.ts';
import { folio, lines, project, shelf } from '../project/files.ts';
import type { Edition } from '../../../src/core/measure/index.ts';

/** A case of 4 1/2 x 10 1/2 in that is folded 2 in from its top; the second half of its snap as a test wants it. */
const snapped = (second: string, edition: Edition = 'inch') =>
  resolveProject(
    project(`
title: Case
measures: { seam: { in: 1/4, mm: 6 } }
materials: { cloth: quilting cotton, snap: { use: prong snap, count: 1 } }
pieces:
  outside: { from: cloth, size: [{ in: 5, mm: 130 }, { in: 11, mm: 280 }] }
  inside: { from: cloth, like: outside }
steps:
  - { sew round: [inside, outside], gap: { edge: left, length: { in: 3, mm: 80 } }, makes: case }
  - { turn: case }
  - { id: first, attach: snap, to: case, at: [{ in: 2 1/4, mm: 59 }, { in: 7, mm: 180 }] }
  - { id: second, attach: snap, to: case, ${second} }
  - { fold: case, from: top, at: { in: 2, mm: 50 } }
`),
    { edition, materials: shelf() },
  );

const found = (second: string, edition?: Edition) => lines(check(snapped(second, edition)));

describe('the halves of a snap', () => {
  test('the second is placed by the first, in both editions', () => {
    for (const edition of ['inch', 'metric'] as const) {
      expect(found('meets: first', edition)).toEqual([]);
      const { marks } = makeUp(snapped('meets: first', edition)).at(-1)!.after;
      const [a, b] = marks.map(({ at }) => at);
      expect(Math.hypot(a!.x - b!.x, a!.y - b!.y)).toBeCloseTo(0, 6);
    }
    // 10 1/2 in high, folded 2 in from the top: 7 in from the bottom meets 10 in from the bottom.
    const second = makeUp(snapped('meets: first'))[3]!;
    expect(second.instruction).toMatchObject({
      verb: 'attach',
      at: { x: expect.closeTo(2.25 * 25.4, 6), y: expect.closeTo(10 * 25.4, 6) },
    });
  });
  test('a place of its own must meet the other half', () => {
    expect(found('meets: first, at: [2 1/4 in, 10 in]')).toEqual([]);
    expect(found('meets: first, at: [2 1/4 in, 9 5/8 in]')).toEqual([
      'error steps > 3 > meets: halves-apart: The halves of “snap” lie 3/8 in apart on the finished work. ' +
        'Leave out “at”, and it is set where it meets the other half.',
    ]);
  });
  test('snaps that are set twice are taken for two halves', () => {
    expect(found('at: [2 1/4 in, 9 5/8 in]').join()).toContain('warning steps > 3: halves-apart');
    expect(found('at: [2 1/4 in, 10 in]')).toEqual([]);
  });
  test('a half that nothing sets is named at its place', () => {
    expect(found('meets: frist').join()).toContain('error steps > 3 > meets: halves-apart: No step “frist” has set');
  });
  test('those of the folio meet', () => {
    for (const edition of ['inch', 'metric'] as const) {
      const pattern = resolveProject(folio(), { edition, options: { flap: true }, materials: shelf() });
      expect(lines(check(pattern)).filter((line) => line.includes('halves-apart'))).toEqual([]);
    }
  });
});
