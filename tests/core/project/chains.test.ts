/**
 * Random chains of steps, made of what the verbs say of themselves, keep all laws in both editions. `npm run fuzz` tries
 * thousands, and shows the chain of a seed: npm run fuzz -- --family chains --seed 5 --cases 1
 */
import { describe, expect, it } from 'vitest';
import { chains, counts } from '../../fuzz/chains/family.ts';
import { drawn, workDrawn } from '../../fuzz/chains/drawn.ts';
import { worksShown } from '../../../src/core/drawing/step.ts';
import { drawStep, makeUp, verbNames } from '../../../src/core/index.ts';
import { resolved } from '../../fuzz/chains/grammar.ts';
import { foldedOver, laidAtSide, rowsAlongSides, setThrough } from '../../fuzz/chains/sentence.ts';
import { stillThere } from '../../fuzz/chains/still.ts';
import * as laws from '../../fuzz/chains/laws.ts';
import type { Step } from '../../../src/core/index.ts';

const MANY = 300;
/** `SEED=7 npm test` tries others. */
const FIRST = 1 + MANY * (Number(process.env['SEED'] ?? 1) - 1);

describe('chains of steps', () => {
  it(`keep the laws, ${MANY} of them`, { timeout: 120_000 }, () => {
    const broken: string[] = [];
    for (let seed = FIRST; seed < FIRST + MANY; seed++)
      broken.push(...chains.tries(seed).map((line) => `seed ${seed}: ${line}`));
    expect(broken).toEqual([]);
  });
  it('sew every verb that there is: what the grammar cannot think of, it must be told', () => {
    const isSewn = (verb: string) => (counts.get(verb)?.sewn ?? 0) > 0;
    // A verb that was unlucky in so few chains is given some more of its own.
    for (const [i, verb] of verbNames.entries()) {
      for (let more = 1; more <= 10 && !isSewn(verb); more++) chains.tries(4 * (i + verbNames.length * (100 + more)));
    }
    expect(verbNames.filter((verb) => !isSewn(verb))).toEqual([]);
  });
});

describe('the laws themselves', () => {
  const pattern = resolved(
    {
      title: 'Panels',
      units: 'metric',
      measures: { seam: { mm: 6 } },
      materials: { outer: 'linen', snap: 'clasp' },
      pieces: {
        front: { size: ['100 mm', '80 mm'], from: 'outer' },
        back: { size: ['60 mm', '40 mm'], from: 'outer' },
      },
      steps: [
        { topstitch: 'front', at: 'left' },
        { fold: 'front', at: '20 mm' },
        { lay: 'back', on: 'front', at: 'left' },
        { attach: 'snap', to: 'front', at: ['30 mm', '30 mm'], through: 2 },
      ],
    },
    'metric',
  );
  const [topstitch, fold, lay, attach] = makeUp(pattern) as [Step, Step, Step, Step];
  const without = (step: Step, id: number): Step => ({
    ...step,
    after: { ...step.after, plies: step.after.plies.filter((ply) => ply.id !== id) },
  });
  const slid = (step: Step, id: number): Step => ({
    ...step,
    after: {
      ...step.after,
      plies: step.after.plies.map((ply) =>
        ply.id === id
          ? {
              ...ply,
              outline: ply.outline.map((edge) => ({ ...edge, from: { x: edge.from.x + 5, y: edge.from.y } })),
              transform: { ...ply.transform, e: ply.transform.e + 5 },
            }
          : ply,
      ),
    },
  });
  const points = [10, 30, 50, 70, 90].map((x) => ({ x, y: 25 }));

  const beyond = points.map(({ x }) => ({ x, y: 70 }));

  it('see nothing in what is right', () => {
    for (const step of [topstitch, fold, lay, attach]) {
      expect([
        ...laws.clothStays(step, false),
        ...laws.partsOfPieces(step, pattern),
        ...laws.untorn(step, pattern),
        ...laws.untangled(step),
        ...laws.rowsStay(step, false),
        ...laws.layersCounted(step, points),
        ...laws.sized(step),
        ...stillThere(step, 6, points),
        ...rowsAlongSides(step, 'metric'),
        ...setThrough(step),
        ...foldedOver(step, beyond),
        ...laidAtSide(step),
        ...drawn(step, pattern, 'front', points),
      ]).toEqual([]);
    }
  });
  it('see cloth that is lost, torn off or moved', () => {
    const last = lay.after.plies.at(-1)!.id;
    expect(laws.clothStays(without(lay, last), false)).toHaveLength(2);
    expect(laws.untorn(slid(fold, fold.after.plies.at(-1)!.id), pattern)[0]).toContain('torn off');
    expect(stillThere(slid(lay, lay.after.plies[0]!.id), 6, points)[0]).toContain('layers moved');
    expect(
      laws.partsOfPieces(slid({ ...fold, after: topstitch.after }, topstitch.after.plies[0]!.id), pattern),
    ).toEqual([]);
  });
  it('see a row that hangs in the air, and one that is lost', () => {
    const [row] = topstitch.after.stitches;
    const aside = {
      ...row!,
      runs: row!.runs.map((run) => ({ ...run, from: { x: 200, y: 0 }, to: { x: 200, y: 50 } })),
    };
    const hung = { ...topstitch, after: { ...topstitch.after, stitches: [aside] } };
    expect(laws.rowsStay(hung, false)[0]).toContain('runs beside ply 1');
    expect(laws.rowsStay({ ...fold, after: { ...fold.after, stitches: [] } }, false)).toEqual([
      '80.00 mm of topstitch rows are lost',
    ]);
  });
  it('see what a drawing does not show', () => {
    const lost = (role: string, step = lay): string[] => {
      const scene = drawStep(step, {
        materials: pattern.materials,
        edition: 'metric',
        grid: pattern.grid,
        side: 'front',
        at: 1,
      });
      const shapes = scene.shapes.filter((shape) => shape.kind === 'text' || shape.role !== role);
      const shown = worksShown(step, { ...pattern, side: 'front' }).find(({ name }) => name === 'after')!;
      return workDrawn({ ...scene, shapes }, 'after', shown.work, 'front', pattern, points, shown.rows);
    };
    expect(lost('raw edge')[0]).toMatch(/^after: the edge \w+ of ply \d+ of \w+ is not drawn$/u);
    expect(lost('wrong side').length + lost('right side').length).toBeGreaterThan(0);
    expect(lost('arrow', topstitch)).toEqual([]);
    expect(lost('stitch', topstitch)).toEqual(['after: row 2 (topstitch) is not drawn where it was sewn']);
    expect(drawn(slid(lay, lay.after.plies[0]!.id), pattern, 'front', points)).toEqual([]);
  });
  it('see what is not done as the sentence says', () => {
    // 1/8 in is another place than 3 mm.
    expect(rowsAlongSides(topstitch, 'inch')[0]).toContain('and not 3.175 mm inside left');
    const [flap] = fold.after.plies.filter(({ face }) => face === 'wrong');
    expect(foldedOver(slid(fold, flap!.id), beyond)[0]).toContain('is not turned over to');
    expect(foldedOver({ ...fold, after: topstitch.after }, beyond)).toHaveLength(1);
    expect(laidAtSide(slid(lay, lay.after.plies.at(-1)!.id))).toEqual(['it lies 5 mm inside the left']);
    const [mark] = attach.after.marks;
    const all = { ...attach, after: { ...attach.after, marks: [{ ...mark!, plies: mark!.plies.slice(1) }] } };
    expect(setThrough(all)[0]).toContain('snap goes through 1 layers');
  });
  it('see a number that is none', () => {
    expect(laws.finite({ ...fold, depth: Number.NaN })).toEqual(['step.depth is NaN']);
    expect(laws.sized({ ...fold, size: { width: 1, height: 2 } })).toHaveLength(1);
  });
});
