import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { check, ledgerOf, makeUp, resolveProject } from '../../../src/core/project/index.ts';
import { folio, lines, shelf } from './files.ts';
import { plansOf } from '../../../src/core/project/steps/plan.ts';
import { runs } from '../../random.ts';
import { SAME } from '../../../src/core/index.ts';
import type { Adjustable, Edition, Pattern } from '../../../src/core/index.ts';

const [file, materials] = [folio(), shelf()];
const ways = (['inch', 'metric'] as const).flatMap((edition) =>
  [true, false].map((flap): { edition: Edition; flap: boolean } => ({ edition, flap })),
);
const made = (edition: Edition, flap: boolean, values: Record<string, number> = {}): Pattern =>
  resolveProject(file, { edition, options: { flap }, values, materials });

describe.each(ways)('the swatch-card folio, $edition, flap $flap', ({ edition, flap }) => {
  it('has steps that can all be done, and nothing to mend', () => {
    const pattern = made(edition, flap);
    const wanted = plansOf(pattern).steps.filter((step) => step.off === undefined);
    expect(makeUp(pattern).map((step) => step.id)).toEqual(wanted.map((step) => step.id));
    expect(lines(check(pattern))).toEqual([]);
  });

  it('ends with the size it promises, whatever a learner chooses', () => {
    const adjustable = Object.values(made(edition, flap).measures).flatMap(({ name, adjustable: range }) =>
      range ? [{ name, range }] : [],
    );
    const choice = ({ min, max, step, lesson }: Adjustable) =>
      fc.oneof(
        fc.constantFrom(min, max, lesson),
        fc.integer({ min: 0, max: Math.floor((max - min) / step + 1e-9) }).map((k) => min + k * step),
      );
    const choices = fc.record(Object.fromEntries(adjustable.map(({ name, range }) => [name, choice(range)])));
    fc.assert(
      fc.property(choices, (values) => {
        const pattern = made(edition, flap, values);
        const { results, finished } = ledgerOf(pattern);
        expect(finished).toBe('folio');
        const last = makeUp(pattern).at(-1)!;
        expect(last.after).toBe(results['folio']);
        expect(Math.abs(last.size.width - pattern.finished!.width)).toBeLessThan(SAME);
        expect(Math.abs(last.size.height - pattern.finished!.height)).toBeLessThan(SAME);
        // Cards too large for the chosen pockets are the learner's business; the steps must still go.
        const faults = check(pattern).filter(({ severity, code }) => severity === 'error' && code !== 'does-not-fit');
        expect(lines(faults)).toEqual([]);
      }),
      runs(40),
    );
  });
});

describe('the steps of the folio', () => {
  const steps = makeUp(made('metric', true));
  const step = (id: string) => steps.find((one) => one.id === id)!;

  it('read as sentences', () => {
    expect(steps.slice(0, 6).map(({ title }) => title)).toEqual([
      'Fuse the strip interfacing to the pocket strip',
      'Fold the pleats of the pocket strip',
      'Set the snap on the pocket panel',
      'Baste the pocket panel at the left and the right',
      'Lay the pocket panel on the facing at the bottom',
      'Baste the faced panel at the bottom and the top',
    ]);
  });

  it('count layers as the pleats do', () => {
    // Where most pockets overlap, the plan of the pleats counts the same layers of cloth, each with its interfacing.
    const { pleats } = made('metric', true).pieces['pocket strip']!;
    const heights = Array.from({ length: 1830 }, (_, k) => (k + 0.5) / 10);
    const most = Math.max(...heights.map((height) => pleats!.layersAt(height)));
    expect(step('pleat').layersMost).toBe(2 * most);
    expect(step('pleat').thicknessMost.mm).toBeCloseTo(most * (0.3 + 0.2), 6);
  });

  it('tell rows with their length, and thread from it', () => {
    const [left, right] = step('hold-pleats').stitches;
    expect([left!.kind, left!.class, right!.class]).toEqual(['baste', '301', '301']);
    expect(left!.length).toBeCloseTo(183, 6);
    // 2 + 2 T S per length (textilecalculations.com): 301 through at most 7 layers of 0.3 mm at 4 mm a stitch.
    expect(left!.thread).toBeGreaterThan(2 * 183);
    expect(left!.thread).toBeLessThan((2 + (2 * 2.1) / 4) * 183 + 1e-9);
  });

  it('name tools and what can hurt', () => {
    expect(step('stiffen').cautions).toEqual(['iron']);
    expect(step('pocket-snap').cautions).toEqual(['snap']);
    expect(step('sew-round').tools).toEqual(['sewing machine', 'pins']);
    expect(step('sew-round').cautions).toEqual(['needle', 'pins']);
  });
});
