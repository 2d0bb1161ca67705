/**
 * How long the folio takes to make up and to check: one edition, one set of options, another learner's value each time,
 * as when a slider moves. What it takes to resolve the numbers is not counted; tests/bench/resolve.ts tells that.
 *
 *     node tests/bench/make-up.ts
 */
import { check, makeUp, resolveProject } from '../../src/core/index.ts';
import { folio, shelf } from '../core/project/files.ts';

const RUNS = 400;
const [file, materials] = [folio(), shelf()];

const times: number[] = [];
for (let run = 0; run < RUNS; run++) {
  const values = { depth: 50 + (run % 7) };
  const pattern = resolveProject(file, { edition: 'metric', values, materials });
  const start = performance.now();
  const steps = makeUp(pattern);
  const findings = check(pattern);
  times.push(performance.now() - start);
  if (steps.length === 0 || findings.some(({ severity }) => severity === 'error')) {
    throw new Error('The folio could not be made up.');
  }
}
const first = times[0]!;
times.sort((a, b) => a - b);
const at = (share: number) => times[Math.floor(share * (RUNS - 1))]!.toFixed(2);
console.log(
  `makeUp and check, swatch folio: first ${first.toFixed(1)} ms, then median ${at(0.5)} ms (at most 5), 95 % under ${at(0.95)} ms`,
);
