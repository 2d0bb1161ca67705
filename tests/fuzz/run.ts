/**
 * Attacks with random cases, a line each family. `npm run fuzz -- --cases 20000` tries so many of each; `--family chains`
 * one family alone; `--seed 5` begins there, and with `--cases 1` shows that one case. `--family chains --again chain.yaml`
 * tries a case that was shown before and kept in a file.
 */
import { readFileSync } from 'node:fs';
import os from 'node:os';
import { readArguments, tell } from '../../src/author/arguments.ts';
import { families } from './families.ts';
import type { Family } from './family.ts';
import { onDisk } from './on-disk.ts';

const asked = readArguments({
  name: 'npm run fuzz',
  about: 'Attacks the kit with random cases, a line each family.',
  choices: {
    cases: { takes: '1000', normally: '1000', about: 'how many of each family' },
    seed: { takes: '1', normally: '1', about: 'where to begin; with --cases 1, that one case is shown' },
    family: { takes: 'NAME', about: `one alone: ${families.map(({ name }) => name).join(', ')}` },
    again: { takes: 'FILE', about: 'tries a case of one family that was shown before and kept in a file' },
  },
});
if (!asked.ok) {
  tell(asked);
  process.exit();
}
const { values } = asked;
const [cases, first] = [Number(values.cases), Number(values.seed)];
const wanted = families.filter(({ name }) => values.family === undefined || name === values.family);
if (!Number.isInteger(cases) || cases < 1 || !Number.isInteger(first) || wanted.length === 0) {
  console.error(
    'Whole numbers belong behind --cases and --seed, and the name of a family behind --family. See --help.',
  );
  process.exit(2);
}
const [only] = wanted;
if (values.again !== undefined) {
  if (wanted.length !== 1 || !only?.again) throw new Error('A case is tried again with “--family chains”.');
  const broken = only.again(readFileSync(values.again, 'utf8'));
  console.log(broken.join('\n') || 'Nothing is broken.');
  process.exit(broken.length === 0 ? 0 : 1);
}
console.log(`${os.cpus()[0]?.model ?? 'unknown processor'}, ${os.cpus().length} cores, Node ${process.version}`);
let failures = 0;
for (const family of wanted) failures += await run(family);
if (cases > 1 && wanted.some(({ name }) => name === 'writes')) {
  const broken = onDisk();
  for (const line of broken) console.log(`on the disk: ${line}`);
  failures += broken.length;
}
process.exitCode = failures === 0 ? 0 : 1;

/** Tries the cases of one family and prints what came of them; gives how many failed. */
async function run(family: Family): Promise<number> {
  let [failed, slowest, slow] = [0, 0, first];
  const began = performance.now();
  for (let seed = first; seed < first + cases; seed++) {
    const start = performance.now();
    const broken = await family.tries(seed);
    const took = performance.now() - start;
    if (took > slowest) [slowest, slow] = [took, seed];
    if (broken.length > 0) {
      failed++;
      console.log(`seed ${seed}: ${broken[0]}${broken.length > 1 ? ` (and ${broken.length - 1} more)` : ''}`);
    }
    const done = seed - first + 1;
    if (done % 1000 === 0 && done < cases) console.log(`${family.name}: ${done} cases, ${failed} failed`);
    if (cases === 1) console.log([family.tells(seed), ...broken].join('\n'));
  }
  const seconds = (performance.now() - began) / 1000;
  console.log(
    `${family.name}: ${cases} cases from seed ${first}, ${failed} failed, ${seconds.toFixed(0)} s, slowest ${slowest.toFixed(0)} ms (seed ${slow})`,
  );
  for (const line of family.sums?.() ?? []) console.log(`  ${line}`);
  return failed;
}
