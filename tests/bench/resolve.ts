/**
 * How long a project takes to work out: the folio, in turn in both editions and with another learner's value each time,
 * as when a slider moves. The first time includes reading its formulas.
 *
 *     node tests/bench/resolve.ts
 */
import { readFile } from 'node:fs/promises';
import { parse } from 'yaml';
import { MaterialsFile, ProjectFile, resolveProject } from '../../src/core/index.ts';

const RUNS = 5000;

const read = async (path: string): Promise<unknown> =>
  parse(await readFile(new URL(`../../content/${path}`, import.meta.url), 'utf8'));
const file = ProjectFile.parse(await read('projects/swatch-folio/project.yaml'));
const materials = MaterialsFile.parse(await read('materials.yaml'));

const times: number[] = [];
for (let run = 0; run < RUNS; run++) {
  const inch = run % 2 === 0;
  const depth = inch ? 25.4 * (2 + (run % 4) / 8) : 50 + (run % 7);
  const start = performance.now();
  const pattern = resolveProject(file, { edition: inch ? 'inch' : 'metric', values: { depth }, materials });
  times.push(performance.now() - start);
  if (pattern.measures.depth?.value !== depth) throw new Error('The learner’s depth was not taken.');
}
const first = times[0]!;
times.sort((a, b) => a - b);
const at = (share: number) => times[Math.floor(share * (RUNS - 1))]!.toFixed(3);
console.log(
  `resolveProject, swatch folio: first ${first.toFixed(1)} ms, then median ${at(0.5)} ms (at most 0.5), 95 % under ${at(0.95)} ms`,
);
