/**
 * Every figure that DEVELOPERS.md records, one after the other: node tests/bench/all.ts. Anything after the name is
 * handed on to the bench of cutting layouts, as in: npm run bench -- --data <folder of instances>
 */
import { spawnSync } from 'node:child_process';
import os from 'node:os';
import { fileURLToPath } from 'node:url';
import { helpOf, tell } from '../../src/author/arguments.ts';

const layoutArguments = process.argv.slice(2);
if (layoutArguments.includes('--help')) {
  const about = 'Measures speed and size, one bench after the other. Anything else is handed to the bench of layouts.';
  tell({ answer: helpOf({ name: 'npm run bench', about, choices: {} }), code: 0 });
  process.exit();
}
const benches: [file: string, args?: string[]][] = [
  ['resolve.ts'],
  ['drawing.ts'],
  ['cloth-readings.ts'],
  ['drawing-works.ts'],
  ['make-up.ts'],
  ['kit.ts'],
  ['recording.ts'],
  ['handouts.ts'],
  ['lesson-page.ts'],
  ['own-sheets.ts'],
  ['pasting.ts'],
  ['check.ts'],
  ['build.ts'],
  ['scale.ts'],
  ['start.ts'],
  ...(layoutArguments.length > 0 ? [['layout.ts', layoutArguments] as [string, string[]]] : []),
];

const [cpu] = os.cpus();
console.log(`${cpu?.model ?? 'unknown processor'}, ${os.cpus().length} cores, Node ${process.version}`);
let failed = 0;
for (const [file, args = []] of benches) {
  console.log(`\n=== ${file} ===`);
  const script = fileURLToPath(new URL(file, import.meta.url));
  if (spawnSync(process.execPath, [script, ...args], { stdio: 'inherit' }).status !== 0) failed += 1;
}
process.exitCode = failed === 0 ? 0 : 1;
