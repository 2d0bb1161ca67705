/**
 * How long it takes to read the layers of a large work: a pleated panel and a sheet folded six times askew, both of
 * 60 plies and more. Each reading begins from a stack that nothing was read of before, as when a slider moves.
 *
 *     node tests/bench/cloth-readings.ts
 */
import { cut, fold, layerMap, outlineNow, section, visibleFrom } from '../../src/core/cloth/index.ts';
import { rectangle } from '../../src/core/geometry/index.ts';
import type { Sewn, Work } from '../../src/core/cloth/index.ts';

const RUNS = 300;

const value = (sewn: Sewn): Work => {
  if (!sewn.ok) throw new Error(sewn.fault.message);
  return sewn.value;
};

/** A strip folded into pleats: down again 30 mm under each top, the tops 30 mm apart. */
function pleated(folds: number): Work {
  let work = value(cut({ piece: 'strip', material: 'linen', outline: rectangle(200, folds * 45 + 60) }));
  for (let i = 0; i < folds; i++) {
    const down = i % 2 === 0;
    const y = 15 * (down ? i : i - 1) + (down ? 60 : 30);
    const line = { at: { x: 0, y }, angle: down ? 180 : 0 };
    work = value(fold(work, { line, lands: 'over', plies: new Set([work.plies.at(-1)!.id]) }));
  }
  return work;
}

/** A sheet folded in half again and again, each time a little askew: many crossings. */
function askew(folds: number): Work {
  let work = value(cut({ piece: 'sheet', material: 'linen', outline: rectangle(300, 210) }));
  for (let i = 0; i < folds; i++) {
    const xs = work.plies.flatMap(({ outline }) => outline.map(({ from }) => from.x));
    const ys = work.plies.flatMap(({ outline }) => outline.map(({ from }) => from.y));
    const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
    const folded = fold(work, { line: { at: middle, angle: (i % 2) * 90 + 3 + 2 * i }, lands: 'over' });
    work = value(folded);
  }
  return work;
}

const thicknessOf = () => 0.3;
const readings: Record<string, (work: Work) => unknown> = {
  'layer map': layerMap,
  'shown, front and back': (work) => [visibleFrom(work, 'front'), visibleFrom(work, 'back')],
  outline: outlineNow,
  section: (work) => section(work, { at: { x: 100, y: 50 }, angle: 80 }, thicknessOf),
  'all of them': (work) => [
    layerMap(work),
    visibleFrom(work, 'front'),
    visibleFrom(work, 'back'),
    outlineNow(work),
    section(work, { at: { x: 100, y: 50 }, angle: 80 }, thicknessOf),
  ],
};

for (const [name, work] of Object.entries({ pleated: pleated(59), 'folded askew': askew(6) })) {
  console.log(`${name}: ${work.plies.length} plies, ${layerMap(work).length} regions`);
  for (const [reading, read] of Object.entries(readings)) {
    const times: number[] = [];
    for (let run = 0; run < RUNS; run++) {
      const fresh = { ...work, plies: [...work.plies] };
      const start = performance.now();
      read(fresh);
      times.push(performance.now() - start);
    }
    const first = times[0]!;
    times.sort((a, b) => a - b);
    const at = (share: number) => times[Math.floor(share * (RUNS - 1))]!.toFixed(2);
    console.log(`  ${reading}: first ${first.toFixed(1)} ms, then median ${at(0.5)} ms, 95 % under ${at(0.95)} ms`);
  }
}
