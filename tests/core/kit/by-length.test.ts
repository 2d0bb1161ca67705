/** Cord, elastic, webbing: bought by the length of its pieces, one after the other, with what their ends lose. */
import { expect, it } from 'vitest';
import { check, MaterialsFile } from '../../../src/core/project/index.ts';
import { kitFor, kitRows } from '../../../src/core/kit/index.ts';
import { lines, resolved } from '../project/files.ts';

const materials = MaterialsFile.parse({
  linen: { kind: 'cloth', width: { in: 50, mm: 1300, source: 'made up' } },
  rope: {
    kind: 'by length',
    width: { in: 0.25, mm: 6, source: 'made up' },
    ends: { in: 1, mm: 25 },
    sold: { by: 'length', each: { mm: 100 } },
    price: { amount: 2, per: '1 m' },
  },
});

const bag = (size: string, more = '') =>
  resolved(
    `title: Bag
units: metric
measures: { seam: { mm: 10, in: 3/8 } }
materials: { outer: linen, cord: rope }
cutting: { gap: 5 mm, edge: 5 mm }
pieces:
  front: { from: outer, size: [200 mm, 200 mm] }
  back: { like: front, from: outer }
  cord: { from: cord, cut: 2, ${size} }
${more}steps:
  - { sew round: [front, back], open: top }
`,
    { edition: 'metric', materials },
  );

it('comes to the sum of its lengths and their ends, for a class end to end', () => {
  const pattern = bag('size: [700 mm, 6 mm], allowance: 0 mm');
  // That no step takes a cord is nothing to warn of.
  expect(lines(check(pattern))).toEqual([]);
  const line = kitFor(pattern, { makers: 1, spares: 0 }).lines.find(({ key }) => key === 'cord')!;
  // Twice 700 mm and four ends of 25 mm.
  expect(line).toMatchObject({ kind: 'cloth', buy: { laid: 1500, straightening: 0, total: 1500 } });
  expect(kitRows(line, 'metric')[0]!.buy).toMatch(/^1.5\sm, 6\smm wide$/u);
  expect(line.price).toMatchObject({ cost: 3 });
  const many = kitFor(pattern, { makers: 10, spares: 1 }).lines.find(({ key }) => key === 'cord')!;
  expect(many).toMatchObject({ buy: { total: 16500 } });
});

it('also as a piece that lies upright', () => {
  const line = kitFor(bag('size: [6 mm, 700 mm], allowance: 0 mm'), { makers: 1, spares: 0 }).lines.at(1)!;
  expect(line).toMatchObject({ key: 'cord', buy: { laid: 1500 } });
});

it('a piece of another width than the goods is a mistake', () => {
  expect(
    lines(check(bag('size: [700 mm, 20 mm], allowance: 0 mm'))).filter((line) => line.startsWith('error')),
  ).toEqual([
    'error pieces > cord: other-width: “cord” is 20 mm wide, and “rope” is 6 mm wide: a length of it is as wide as it is bought. Write its size with 6 mm, and no allowance along its sides, or take goods of another width.',
  ]);
});
