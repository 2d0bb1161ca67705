import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { check, checkMaterials, cutList, materialsList, resolveProject } from '../../../src/core/project/index.ts';
import { evaluate, isOnGrid, toGrid } from '../../../src/core/index.ts';
import { folio, lines, shelf } from './files.ts';
import { runs } from '../../random.ts';
import type { Edition, Node, Pattern } from '../../../src/core/index.ts';

const file = folio();
const materials = shelf();
const editions: Edition[] = ['inch', 'metric'];
/** Inches, without the last digits that sums of doubles leave. */
const inches = (mm: number | undefined) => Math.round(((mm ?? Number.NaN) / 25.4) * 1e9) / 1e9;

describe('the swatch-card folio', () => {
  it('has nothing to mend, in both editions, with and without its flap', () => {
    for (const edition of editions) {
      for (const flap of [true, false]) {
        const pattern = resolveProject(file, { edition, options: { flap }, materials });
        expect(lines(check(pattern))).toEqual([]);
      }
    }
    expect(checkMaterials(materials)).toEqual([]);
  });

  it('adds up in inches', () => {
    // Worked with pencil and paper from the stated measures.
    const { measures, pieces } = resolveProject(file);
    expect(inches(measures['panel width']?.value)).toBe(5.25);
    expect(inches(measures['head']?.value)).toBe(1.25);
    expect(inches(pieces['pocket strip']?.size.height)).toBe(29.625);
    expect(pieces['pocket strip']?.pleats?.folds.map((fold) => inches(fold.at))).toEqual([
      2.875, 5.125, 8.125, 10.375, 13.375, 15.625, 18.625, 20.875, 23.875, 26.125,
    ]);
    expect(inches(pieces['facing']?.size.height)).toBe(7.125);
    expect(inches(pieces['flap']?.size.height)).toBe(6.375);
  });

  it('adds up in millimetres, by itself', () => {
    const { measures, pieces, finished } = resolveProject(file, { edition: 'metric' });
    expect(measures['panel width']?.value).toBe(131);
    expect(measures['head']?.value).toBe(32);
    expect(pieces['pocket strip']?.size).toEqual({ width: 131, height: 733 });
    expect(pieces['pocket strip']?.pleats?.folds.map((fold) => fold.at)).toEqual([
      71, 126, 201, 256, 331, 386, 461, 516, 591, 646,
    ]);
    expect(pieces['flap']?.size).toEqual({ width: 125, height: 165 });
    expect(finished).toEqual({ of: 'folio', width: 111, height: 163 });
  });

  it('leaves the flap, its lining, interfacing and snap out together', () => {
    const { pieces, materials: roles, measures, options } = resolveProject(file, { options: { flap: false } });
    expect(Object.keys(pieces)).toEqual(['pocket strip', 'strip interfacing', 'facing', 'cover', 'cover interfacing']);
    expect(Object.keys(roles)).not.toContain('snap');
    expect(options['flap']).toMatchObject({ on: false, default: true });
    // Prose about the flap can still name its numbers.
    expect(inches(measures['flap width']?.value)).toBe(5);
  });

  it('lays the interfacing on the stitch line of its piece', () => {
    const { pieces } = resolveProject(file);
    const { outline } = pieces['flap']!;
    const { cutOutline } = pieces['flap interfacing']!;
    expect(cutOutline.map((edge) => edge.name)).toEqual(outline.map((edge) => edge.name));
    for (const [i, edge] of cutOutline.entries()) {
      expect(edge.bulge).toBeCloseTo(outline[i]!.bulge, 9);
      expect(edge.from.x + 9.525).toBeCloseTo(outline[i]!.from.x, 9);
      expect(edge.from.y + 9.525).toBeCloseTo(outline[i]!.from.y, 9);
    }
  });

  it('lists what to cut and what to have', () => {
    const pattern = resolveProject(file, { materials });
    expect(cutList(pattern).map(({ label, count, from, notes }) => ({ label, count, from, notes }))).toEqual([
      {
        label: 'Pocket strip',
        count: 1,
        from: 'Plain or small print for the pockets',
        notes: ['10 fold lines, pleated to 7⅛\u202fin', 'choose a print without a direction'],
      },
      { label: 'Interfacing for the pocket strip', count: 1, from: 'Light interfacing', notes: ['for Pocket strip'] },
      { label: 'Facing behind the pockets', count: 1, from: 'Lining', notes: [] },
      { label: 'Cover', count: 1, from: 'Print for the cover and the flap', notes: ['print or pile upright'] },
      { label: 'Interfacing for the cover', count: 1, from: 'Firm interfacing', notes: ['for Cover'] },
      {
        label: 'Flap',
        count: 1,
        from: 'Print for the cover and the flap',
        notes: ['print or pile upright', 'shaped at the bottom-left and bottom-right corners'],
      },
      {
        label: 'Flap lining',
        count: 1,
        from: 'Lining',
        notes: ['shaped at the bottom-left and bottom-right corners'],
      },
      {
        label: 'Interfacing for the flap',
        count: 1,
        from: 'Firm interfacing',
        notes: ['shaped at the bottom-left and bottom-right corners', 'for Flap'],
      },
    ]);
    expect(materialsList(pattern).map(({ material, pieces, count }) => [material, pieces.length, count])).toEqual([
      ['Quilting cotton', 2, undefined],
      ['Quilting cotton', 1, undefined],
      ['Lining cotton (lawn or poplin)', 2, undefined],
      ['Woven fusible interfacing', 2, undefined],
      ['Light non-woven fusible interfacing', 1, undefined],
      ['All-purpose polyester thread', 0, 1],
      ['Prong snap, about 10 mm (3/8 in), with its setting tool', 0, 1],
    ]);
  });
});

/** A learner's choice for every measure that can be chosen, on the edition's marks and within its range. */
function choices(edition: Edition): fc.Arbitrary<Record<string, number>> {
  const { measures, grid } = resolveProject(file, { edition });
  const free = Object.values(measures).flatMap(({ name, adjustable }) => (adjustable ? [{ name, ...adjustable }] : []));
  return fc.record(
    Object.fromEntries(
      free.map(({ name, kind, min, max }) => {
        const mark = kind === 'count' ? 1 : edition === 'inch' ? 25.4 / grid.inch : grid.metric;
        const steps = Math.round((max - min) / mark);
        const of = (n: number) => (kind === 'count' ? min + n : toGrid(min + n * mark, edition, grid));
        return [name, fc.integer({ min: 0, max: steps }).map(of)];
      }),
    ),
  );
}

/** Works a formula out in whole marks of the ruler: nothing is rounded, so nothing can hide. */
function inMarks(node: Node, marks: (name: string) => bigint): bigint {
  switch (node.kind) {
    case 'number':
      return BigInt(node.value);
    case 'length':
      expect(node.value).toBe(0);
      return 0n;
    case 'name':
      return marks(node.name);
    case 'minus':
      return -inMarks(node.of, marks);
    case 'max':
      return node.of.map((part) => inMarks(part, marks)).reduce((a, b) => (a > b ? a : b));
    case '+':
      return inMarks(node.left, marks) + inMarks(node.right, marks);
    case '-':
      return inMarks(node.left, marks) - inMarks(node.right, marks);
    case '*':
      return inMarks(node.left, marks) * inMarks(node.right, marks);
    default:
      throw new Error(`The folio uses no ${node.kind}.`);
  }
}

/** Whether a number is measured along a line of a piece, and has no sum. */
const isRound = (name: string): boolean => /(?:stitch|cut) line$/u.test(name);

describe.each(editions)('with any choices of a learner, %s', (edition) => {
  const markSize = ({ grid }: Pattern) => (edition === 'inch' ? 25.4 / grid.inch : grid.metric);

  it('takes each choice and has no error to report', () => {
    fc.assert(
      fc.property(choices(edition), fc.boolean(), (values, flap) => {
        const { findings, measures } = resolveProject(file, { edition, values, options: { flap } });
        expect(lines(findings)).toEqual([]);
        for (const [name, value] of Object.entries(values)) expect(measures[name]?.value).toBe(value);
      }),
      runs(200),
    );
  });

  it('puts every number on a mark, exactly where whole marks add up to', () => {
    fc.assert(
      fc.property(choices(edition), (values) => {
        const pattern = resolveProject(file, { edition, values });
        const mark = markSize(pattern);
        const whole = (name: string) => {
          const { value, dimension } = pattern.measures[name]!;
          return BigInt(Math.round(dimension === 0 ? value : value / mark));
        };
        for (const { name, value, dimension, formula } of Object.values(pattern.measures)) {
          // A length round shaped corners lies on no mark.
          if (dimension === 1 && !isRound(name))
            expect([name, isOnGrid(value, edition, pattern.grid)]).toEqual([name, true]);
          if (formula) expect([name, whole(name)]).toEqual([name, inMarks(formula.tree, whole)]);
        }
        for (const { size, sewn, pleats } of Object.values(pattern.pieces)) {
          const lengths = [
            ...Object.values(size),
            ...Object.values(sewn),
            ...(pleats?.folds ?? []).map((fold) => fold.at),
          ];
          for (const length of lengths) expect(isOnGrid(length, edition, pattern.grid)).toBe(true);
        }
      }),
      runs(100),
    );
  });

  it('says the sum behind each number of a piece, and the sum gives the number', () => {
    fc.assert(
      fc.property(choices(edition), (values) => {
        const pattern = resolveProject(file, { edition, values });
        const get = (name: string) => ({ ok: true as const, value: pattern.measures[name]! });
        const fromPieces = Object.values(pattern.measures).filter(
          ({ name, source }) => (source === 'piece' || source === 'pleats') && !isRound(name),
        );
        expect(fromPieces.length).toBeGreaterThan(50);
        for (const { name, value, formula } of fromPieces) {
          const found = formula && evaluate(formula, { get, edition, grid: pattern.grid });
          expect([name, found?.ok]).toEqual([name, true]);
          if (found?.ok) expect(found.value.value).toBeCloseTo(value, 6);
        }
      }),
      runs(30),
    );
  });
});
