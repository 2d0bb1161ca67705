/**
 * How long the drawings of work in progress take: of a stack of 30 plies and of the folds that made it, with the
 * readings of the cloth made anew each time, as when a slider moves.
 *
 *     node tests/bench/drawing-works.ts
 */
import { drawExploded, drawLayerMap, drawStep, drawWorkSection, NARROWEST, rectangle } from '../../src/core/index.ts';
import { cut, fold, pleat, topstitch } from '../../src/core/cloth/index.ts';
import type { Scene, StepDrawn } from '../../src/core/index.ts';
import type { Sewn, Work } from '../../src/core/cloth/index.ts';

const [WARM, RUNS] = [100, 300];

const value = (sewn: Sewn): Work => {
  if (!sewn.ok) throw new Error(sewn.fault.message);
  return sewn.value;
};

/** A strip with seven pleats, 15 plies, folded in half: 30 plies. */
function stack(depth: number): { before: Work; after: Work } {
  const strip = value(cut({ piece: 'strip', material: 'linen', outline: rectangle(160, 900) }));
  const folds = Array.from({ length: 14 }, (_, i) => ({
    at: 70 + 20 * i + Math.floor((i + 1) / 2) * depth,
    kind: i % 2 === 0 ? ('mountain' as const) : ('valley' as const),
  }));
  const pleated = value(pleat(strip, { from: 'bottom', folds }));
  const before = value(topstitch(pleated, { line: { at: { x: 10, y: 0 }, angle: 90 } }));
  return { before, after: value(fold(before, { line: { at: { x: 80, y: 0 }, angle: 90 }, lands: 'over' })) };
}

const fit = { width: NARROWEST };
const step = (before: Work, after: Work): StepDrawn => ({
  title: 'Fold the strip',
  verb: 'fold',
  before: { strip: before },
  after,
  makes: 'strip',
  stitches: [],
});
const line = { at: { x: 40, y: 0 }, angle: 90 };
const drawings: Record<string, (before: Work, after: Work) => Scene> = {
  drawStep: (before, after) => drawStep(step(before, after), { edition: 'metric', fit }),
  'drawStep, on the way': (before, after) => drawStep(step(before, after), { edition: 'metric', fit, at: 0.3 }),
  drawExploded: (_, after) => drawExploded(after, { edition: 'metric', fit }),
  drawWorkSection: (_, after) => drawWorkSection(after, line, { edition: 'metric', fit }),
  drawLayerMap: (_, after) => drawLayerMap(after, { edition: 'metric', fit }),
};

const at = (times: number[], share: number): string =>
  times.toSorted((a, b) => a - b)[Math.floor(share * (times.length - 1))]!.toFixed(2);
for (const [name, draw] of Object.entries(drawings)) {
  const times: number[] = [];
  let [plies, nodes] = [0, 0];
  // The first runs, in which the engine learns the code, are left out.
  for (let run = -WARM; run < RUNS; run++) {
    const { before, after } = stack(30 + (Math.abs(run) % 7));
    const start = performance.now();
    const scene = draw(before, after);
    if (run >= 0) times.push(performance.now() - start);
    [plies, nodes] = [after.plies.length, scene.shapes.length];
  }
  console.log(
    `${name}: median ${at(times, 0.5)} ms, 95 % under ${at(times, 0.95)} ms (${plies} plies, ${nodes} shapes)`,
  );
}
