/** The lists on paper: how the pieces lie on each cloth, and what to ask for in the shop. */
import { describe, expect, it } from 'vitest';
import { cuttingList, materialsSheet, resolveProject } from '../../../src/core/index.ts';
import { folio, shelf } from '../project/files.ts';
import type { Handout } from '../../../src/core/index.ts';

const pattern = resolveProject(folio(), { materials: shelf() });
const setting = { paper: 'A4' } as const;
const wordsOf = ({ pages }: Handout): string =>
  pages
    .flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])))
    .join(' ')
    .replace(/[\s\u202f\u2009]+/gu, ' ');

describe('the cutting list', () => {
  const list = cuttingList(pattern, setting);

  it('shows each cloth with its pieces, and how much of it they take', () => {
    for (const role of ['outer', 'pockets', 'lining', 'firm interfacing', 'light interfacing']) {
      const shapes = list.pages.flatMap(({ scene }) => scene.shapes);
      expect(
        shapes.some(({ name }) => name.includes(`layout ${role} `)),
        role,
      ).toBe(true);
    }
    // Cover and flap side by side: as long as the cover is high, 7 1/8 in.
    expect(wordsOf(list)).toContain('Laid out on cloth 42 in wide, the pieces take 7⅛ in. No layout is shorter.');
    expect(list.findings).toEqual([]);
  });

  it('has the cuts of each cloth in order, and where a print is matched', () => {
    const told = wordsOf(list);
    expect(told).toContain(
      'The cuts, in order: The cloth: measure 7⅛ in and cut from selvage to selvage. That is strip A.',
    );
    expect(told).toContain('Now cut Flap (2) to shape, by the template.');
    const file = folio();
    file.materials = { ...file.materials, outer: { use: 'quilting cotton', label: 'Print', repeat: 4 } };
    file.cutting = { ...file.cutting, match: [{ pieces: ['cover', 'flap'] }] };
    const printed = cuttingList(resolveProject(file, { materials: shelf() }), setting);
    expect(wordsOf(printed)).toContain('The print begins again every 4 in. Match it on Cover and Flap.');
    expect(printed.pages.some(({ scene }) => scene.shapes.some(({ name }) => name.endsWith(' print')))).toBe(true);
  });

  it('says what does not go on the cloth', () => {
    const narrow = shelf();
    narrow['quilting cotton']!.width = { in: 4, mm: 100, source: 'a ribbon' };
    const told = wordsOf(cuttingList(resolveProject(folio(), { materials: narrow }), setting));
    expect(told).toContain('Cover is 5 1/4 in wide; Print for the cover and the flap has room for 4 in.');
  });
});

describe('the materials list', () => {
  it('asks for lengths as the shop cuts them, with every part of them', () => {
    const told = wordsOf(materialsSheet(pattern, setting));
    expect(told).toContain('¼ yd, 42 in');
    expect(told).toContain('to straighten the end');
    expect(told).toContain('1 pack of 6');
  });

  it('keeps what cannot be reckoned', () => {
    const bare = resolveProject(folio());
    expect(wordsOf(materialsSheet(bare, setting))).toContain('Lining');
  });
});
