/** Published tables of body sizes as the size table of a project, and published rules for elastic and its casing. */
import { describe, expect, it } from 'vitest';
import { ProjectFile, checkAll, resolveProject } from '../../src/core/index.ts';

type Table = { source: string; sizes: string[]; measures: Record<string, number[]> };

const tables: Table[] = [
  {
    // Marks & Spencer, school uniform guide, in cm: marksandspencer.com.ph/pages/size-kids-boys-uniform
    source: 'children by age',
    sizes: ['2-3', '3-4', '4-5', '5-6', '6-7', '7-8', '8-9', '9-10', '10-11', '11-12', '12-13', '13-14'],
    measures: {
      height: [98, 104, 110, 116, 122, 128, 134, 140, 146, 152, 158, 164],
      chest: [54, 56, 58, 61, 63, 66, 69, 72, 75, 78, 83, 87],
      waist: [52, 53.5, 55, 56, 57, 58, 60, 62, 63, 64, 65.5, 67],
    },
  },
  {
    // A boys' size guide, in cm (read on a page without an address).
    source: 'boys by size',
    sizes: ['4', '6', '8', '10', '12', '14', '16'],
    measures: {
      height: [102, 114, 126, 138, 150, 162, 174],
      chest: [55, 58, 63, 69, 76, 84, 90],
      waist: [51, 53, 57, 61, 66, 71, 76],
      hip: [58, 62, 68, 74, 81, 88, 94],
    },
  },
];

/** Shorts with elastic in their waist: what follows is worked out anew in each size. */
function shorts({ sizes, measures }: Table): ProjectFile {
  const names = Object.keys(measures);
  const of = sizes.map((size, i) => {
    const row = names.map((name) => [name, { in: measures[name]![i]! / 2.54, mm: 10 * measures[name]![i]! }] as const);
    return [size, Object.fromEntries(row)] as const;
  });
  return ProjectFile.parse({
    title: 'Shorts',
    units: 'metric',
    grid: { mm: 0.1, in: '1/32' },
    sizes: { of: Object.fromEntries(of) },
    measures: {
      ...Object.fromEntries(names.map((name) => [name, {}])),
      'elastic width': { mm: 25, in: 1 },
      // Singer NZ, How to insert elastic in a casing: the casing is 1/4 in (6 mm) wider than the elastic, and the elastic is
      // as long as the body and 1 in (2.5 cm) for joining its ends.
      casing: { is: 'elastic width + 6 mm' },
      'elastic length': { is: 'waist + 25 mm' },
    },
    pieces: { elastic: { size: ['elastic length', 'elastic width'] } },
  });
}

describe.each(tables)('the table of $source', (table) => {
  it('is read as it is printed, each size with all its measures and what follows from them', () => {
    const file = shorts(table);
    for (const [i, size] of table.sizes.entries()) {
      const { measures, findings } = resolveProject(file, { edition: 'metric', size });
      expect(findings.filter(({ severity }) => severity === 'error')).toEqual([]);
      for (const [name, row] of Object.entries(table.measures))
        expect(measures[name]!.value).toBeCloseTo(10 * row[i]!, 6);
      expect(measures['elastic length']!.value).toBeCloseTo(10 * table.measures['waist']![i]! + 25, 6);
      expect(measures['casing']!.value).toBeCloseTo(31, 6);
    }
  });

  it('goes up from size to size, so that no size is noted as out of order or like another', () => {
    const codes = checkAll(shorts(table), undefined, undefined, { ends: false }).map(({ code }) => code);
    expect(codes).not.toContain('sizes-out-of-order');
    expect(codes).not.toContain('sizes-alike');
  });
});

it('elastic by waist, in three published rules', () => {
  const rules = [
    // We Are Sew Happy (2012): a waist of 20 in, elastic of 19.
    { waist: '20 in', rule: 'waist - 1 in', inches: 19 },
    // Oliver + S forum, size 2T: a waist of 21 in, elastic of 20.
    { waist: '21 in', rule: 'waist - 1 in', inches: 20 },
    // True Bias: the waist and 1/2 in of lap; Sallifer: the waist and 1 in of lap.
    { waist: '20 in', rule: 'waist + 1/2 in', inches: 20.5 },
    { waist: '20 in', rule: 'waist + 1 in', inches: 21 },
  ];
  for (const { waist, rule, inches } of rules) {
    const sizes = { of: { one: { waist }, other: { waist: '30 in' } } };
    const measures = { waist: {}, elastic: { is: rule } };
    const file = ProjectFile.parse({ title: 'Waist', sizes, measures, pieces: {} });
    expect(resolveProject(file, { size: 'one' }).measures['elastic']!.value).toBeCloseTo(inches * 25.4, 6);
  }
});
