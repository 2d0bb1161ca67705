/**
 * How long a project takes to resolve, make up and check: one edition, one set of options, another learner's value each
 * time, as when a slider moves. The swatch folio, and a quilt top of 60 steps and 200 plies. And how long the check of a
 * project takes that is five times as large, in both editions, the first time.
 *
 *     node tests/bench/make-up.ts
 */
import { check, checkAll, makeUp, resolveProject } from '../../src/core/index.ts';
import { folio, shelf } from '../core/project/files.ts';
import { HUGE, largeProject } from './large-project.ts';
import type { ProjectFile } from '../../src/core/index.ts';

const materials = shelf();

/** @param most what the median must not exceed on a quiet machine, in ms */
function measure(
  name: string,
  file: ProjectFile,
  of: (run: number) => Record<string, number>,
  runs: number,
  most: number,
) {
  const times: number[] = [];
  // What the processor worked, also where other programs take turns with this one.
  const worked: number[] = [];
  let size = '';
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    const before = process.threadCpuUsage();
    const pattern = resolveProject(file, { edition: 'metric', values: of(run), materials });
    const steps = makeUp(pattern);
    const findings = check(pattern);
    times.push(performance.now() - start);
    const { user, system } = process.threadCpuUsage(before);
    worked.push((user + system) / 1000);
    if (steps.length === 0 || findings.some(({ severity }) => severity === 'error')) {
      throw new Error(`The ${name} could not be made up.`);
    }
    size = `${steps.length} steps, ${steps.at(-1)!.after.plies.length} plies`;
  }
  const first = times[0]!;
  times.sort((a, b) => a - b);
  worked.sort((a, b) => a - b);
  const at = (share: number, of = times) => of[Math.floor(share * (runs - 1))]!.toFixed(2);
  console.log(
    `resolve, makeUp and check, ${name} (${size}): first ${first.toFixed(1)} ms, then median ${at(0.5)} ms ` +
      `(at most ${most}), 95 % under ${at(0.95)} ms; on the processor ${at(0.5, worked)} ms`,
  );
}

const huge = largeProject(HUGE);
const [start, before] = [performance.now(), process.threadCpuUsage()];
if (checkAll(huge, materials).length > 0) throw new Error('The huge quilt top has a mistake.');
const took = performance.now() - start;
const { user, system } = process.threadCpuUsage(before);
const plies = makeUp(resolveProject(huge, { edition: 'metric', materials })).at(-1)!.after.plies.length;
console.log(
  `check, quilt top of ${huge.steps!.length} steps and ${plies} plies, both editions: ${(took / 1000).toFixed(2)} s ` +
    `(at most 2); on the processor ${((user + system) / 1e6).toFixed(2)} s`,
);

measure('swatch folio', folio(), (run) => ({ depth: 50 + (run % 7) }), 400, 5);
measure('quilt top', largeProject(), (run) => ({ patch: 95 + (run % 7) }), 60, 30);
