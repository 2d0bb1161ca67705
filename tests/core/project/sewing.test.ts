/** How a machine is set for a step, what is waited for at the iron, and the author's words on how it should look. */
import { describe, expect, test } from 'vitest';
import { check, makeUp, resolveProject, saySewing } from '../../../src/core/index.ts';
import type { Edition, Pattern } from '../../../src/core/index.ts';
import { folio, lines, notionsPouch, project, resolved, shelf, tableSet } from './files.ts';
import { panels } from './steps.ts';

const stepOf = (pattern: Pattern, id: string) => makeUp(pattern).find((step) => step.id === id)!;
const demo = (file = folio(), edition: Edition = 'metric') => resolveProject(file, { edition, materials: shelf() });
const said = (pattern: Pattern, id: string, edition: Edition = 'metric') => {
  const { sewing } = stepOf(pattern, id);
  return sewing && saySewing(sewing, edition);
};

describe('the machine', () => {
  test('is set for the layers that a step sews', () => {
    // Seams of ordinary cloth 2 to 3 mm, basting 4 to 5 (course notes on stitch lengths); NM 80 for light cloth (Treadle
    // Yard Goods, 2021). Two layers of 0.3 mm: no stack that raises the needle.
    const pattern = resolved(
      panels(`
- { join: [front, back], at: top, makes: body }
- { baste: body, at: front bottom }
`),
    );
    const [join, baste] = makeUp(pattern);
    expect(saySewing(join!.sewing!, 'metric')).toEqual({
      stitch: 'straight stitch, 2 to 3 mm',
      needle: 'NM 80 (US 12), universal',
      foot: 'standard foot',
    });
    expect(saySewing(baste!.sewing!, 'metric').stitch).toBe('long straight stitch, 4 to 5 mm');
  });

  test('is set in stitches to the inch as well, in the inch edition', () => {
    // 25.4 / 3 = 8.5 and 25.4 / 2 = 12.7 stitches; dials show whole ones.
    const { sewing } = makeUp(resolved(panels('- { join: [front, back], at: top }')))[0]!;
    expect(saySewing(sewing!, 'inch').stitch).toBe('straight stitch, 2 to 3 mm (8 to 13 to the inch)');
  });

  test('takes a thicker needle for the stepped sides of the folio than for its flap', () => {
    const pattern = demo();
    const nm = (id: string) => stepOf(pattern, id).sewing!.needle!.nm;
    expect(nm('sew-round')).toBeGreaterThan(nm('flap'));
  });

  test('takes the zip foot where a tape of the zip is sewn in, and not where the zip only lies along', () => {
    const pattern = demo(notionsPouch());
    expect(said(pattern, 'front-zip')?.foot).toBe('zip foot');
    expect(said(pattern, 'back-zip')?.foot).toBe('zip foot');
    expect(said(pattern, 'round')?.foot).toBe('standard foot');
  });

  test('takes the buttonhole foot for a buttonhole, whose stitch the machine sets', () => {
    const pattern = resolved(panels('- { buttonhole: front, at: [50 mm, 40 mm], length: 18 mm }'));
    expect(saySewing(makeUp(pattern)[0]!.sewing!, 'metric')).toMatchObject({
      stitch: 'buttonhole stitch',
      foot: 'buttonhole foot',
    });
  });

  test('takes a gliding foot for cloth whose holes stay, and a walking foot with batting', () => {
    // Common practice, no source.
    const foot = (material: string) => {
      const file = project(`
title: Mat
units: metric
measures: { seam: 6 mm }
materials: { outer: stuff }
pieces: { front: { from: outer, size: [100 mm, 80 mm] }, back: { from: outer, size: [100 mm, 80 mm] } }
steps: [{ join: [front, back], at: top }]
`);
      const materials = { stuff: { kind: material === 'batting' ? 'batting' : 'cloth', holes: 'stay' } } as const;
      return makeUp(resolveProject(file, { materials }))[0]!.sewing!.foot;
    };
    expect(foot('vinyl')).toBe('gliding (non-stick) foot');
    expect(foot('batting')).toBe('walking foot');
  });

  test('is not asked for where nothing is sewn, nor a needle and a foot where it is sewn by hand', () => {
    const pattern = demo();
    expect(stepOf(pattern, 'stiffen').sewing).toBeUndefined();
    expect(said(pattern, 'close')).toEqual({ stitch: 'slip stitch, by hand' });
  });

  test('is set as the author says', () => {
    const pattern = resolved(panels('- { join: [front, back], at: top, foot: edge foot, stitch length: 3.5 }'));
    expect(saySewing(makeUp(pattern)[0]!.sewing!, 'metric')).toMatchObject({
      stitch: 'straight stitch, 3.5 mm',
      foot: 'edge foot',
    });
  });

  test('sews no stitch of 10 mm: they were counted to the inch', () => {
    const pattern = resolved(panels('- { join: [front, back], at: top, stitch length: 10 }'));
    // 25.4 / 10 = 2.54.
    expect(lines(check(pattern))).toEqual([
      'error steps > 0 > stitch length: long-stitch: No home machine sews stitches of 10 mm. Stitch length is in mm. 10 stitches to the inch are “stitch length: 2.5”.',
    ]);
  });
});

describe('what is waited for', () => {
  test('comes from the material, and where it says nothing from its maker', () => {
    const pattern = demo();
    // The light fusible says 15 s and not how long it cools; the woven one says neither.
    expect(stepOf(pattern, 'stiffen').timers).toEqual([
      { what: 'press', seconds: 15, from: 'material' },
      { what: 'cool', from: 'maker' },
    ]);
    expect(stepOf(pattern, 'stiffen-cover').timers).toEqual([
      { what: 'press', from: 'maker' },
      { what: 'cool', from: 'maker' },
    ]);
    expect(stepOf(pattern, 'pleat').timers).toEqual([]);
  });

  test('is what the author says, before all', () => {
    const file = folio();
    file.steps![0]!.timer = { press: 12, cool: 90 };
    file.steps![1]!.timer = { cool: 60 };
    const pattern = demo(file);
    expect(stepOf(pattern, 'stiffen').timers).toEqual([
      { what: 'press', seconds: 12, from: 'author' },
      { what: 'cool', seconds: 90, from: 'author' },
    ]);
    expect(stepOf(pattern, 'pleat').timers).toEqual([{ what: 'cool', seconds: 60, from: 'author' }]);
  });
});

test('how it should look and what to do if it went wrong follow the learner', () => {
  const plain = (text: string | undefined) => text?.replace(/\u202f/gu, ' ');
  expect(plain(stepOf(demo(), 'pleat').shouldLook)).toContain('level, 20 mm apart');
  expect(plain(stepOf(demo(folio(), 'inch'), 'pleat').shouldLook)).toContain('level, ¾ in apart');
  expect(stepOf(demo(tableSet()), 'napkin').ifWrong).toContain('gape');
});
