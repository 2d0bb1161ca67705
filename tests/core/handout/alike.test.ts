import { describe, expect, it } from 'vitest';
import { rectangle, resolveProject, templates } from '../../../src/core/index.ts';
import { groupAlike, orderOf, takesTemplate } from '../../../src/core/handout/alike.ts';
import { content, demoPattern, outlined, patternOf, projectNamed } from './documents.ts';
import type { Handout, Piece } from '../../../src/core/index.ts';

const { materials } = demoPattern('metric');
const square = (name: string, more: Partial<Piece> = {}) => outlined(rectangle(60, 60), { name, label: name, ...more });
const texts = ({ pages }: Handout): string[] =>
  pages.flatMap(({ scene }) => scene.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : [])));
const names = (pieces: readonly Piece[]) => groupAlike(pieces, materials).map((all) => all.map(({ name }) => name));

describe('pieces that are alike share a template', () => {
  it('whatever they are cut from, and their counts add up by material', () => {
    const [front, back, lining] = [
      square('front'),
      square('back', { count: 2 }),
      square('lining', { material: 'lining' }),
    ];
    expect(names([front, back, lining])).toEqual([['front', 'back', 'lining']]);
    expect(orderOf([front, back, lining], materials)).toBe('Cut 3 of print for the cover and the flap, 1 of lining');
  });

  it('not where size, allowance, grain, a fold or a notch differs', () => {
    const plain = square('plain');
    const seamed = square('seamed', { outline: rectangle(40, 40, { x: 10, y: 10 }) });
    const folded = square('folded', {
      folds: [{ kind: 'valley', edge: 'bottom', at: 20, from: { x: 0, y: 20 }, to: { x: 60, y: 20 } }],
    });
    const others = [
      seamed,
      folded,
      square('grained', { grain: 'crosswise' }),
      square('notched', { notches: [{ edge: 'bottom', at: { x: 30, y: 0 } }] }),
      outlined(rectangle(60, 60.5), { name: 'higher' }),
    ];
    expect(names([plain, ...others])).toEqual([plain, ...others].map(({ name }) => [name]));
  });

  it('nor do cloth and what stiffens it: interfacing has no right side', () => {
    const stiff = Object.values(materials).find(({ material }) => material?.kind === 'interfacing');
    expect(names([square('front'), square('stiffening', { material: stiff!.role })])).toEqual([
      ['front'],
      ['stiffening'],
    ]);
  });

  it('and the sheet names each of them, with one order for all', () => {
    const all = texts(
      templates(patternOf([square('front'), square('lining', { material: 'lining' })]), { paper: 'A4' }),
    );
    for (const text of ['front', 'lining', 'Cut 1 of print for the cover and the flap, 1 of lining.'])
      expect(all).toContain(text);
    expect(all.filter((text) => text === '2')).toHaveLength(2); // the page, in the row of each
  });
});

it('a lined pouch takes two templates, and none for what is bought by its measure', () => {
  const file = projectNamed('notions-pouch');
  const pattern = resolveProject(file, { edition: 'metric', materials: content.materials.value ?? {} });
  const { pages } = templates(pattern, { paper: 'A4' });
  // The front page, then two sheets for panels of 260 × 140 mm and two for their interfacings.
  expect(pages).toHaveLength(5);
  const bought = Object.values(pattern.pieces).filter((piece) => !takesTemplate(piece, pattern.materials));
  expect(bought.map(({ name }) => name)).toEqual(['front tape', 'back tape']);
  expect(texts(templates(pattern, { paper: 'A4' })).join(' ')).toContain('none: by its measure');
});

it('what is cut like another stands on its wrong side only where it stiffens it', () => {
  const file = projectNamed('notions-pouch');
  const pattern = resolveProject(file, { edition: 'metric', materials: content.materials.value ?? {} });
  const said = texts(templates(pattern, { paper: 'A4' })).filter((text) => text.startsWith('For the wrong side'));
  expect(new Set(said)).toEqual(new Set(['For the wrong side of: Front, Back']));
});
