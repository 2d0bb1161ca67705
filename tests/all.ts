/**
 * npm test: every check and every test, whether or not an earlier one failed. The checks take one core each, and run two
 * at a time; the tests share the machine out themselves, and run one after the other.
 * The last line says how many passed and failed: a check counts as one, a test of the test runners as one each.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import '../src/site/pages/no-telemetry.ts';
import { findBrowser, installBrowser } from './browser.ts';
import { countPlaywright, countVitest, type Count } from './count.ts';
import { findPoppler, installPoppler } from './poppler.ts';
import { freePort } from './free-port.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const results: { name: string; count: Count; seconds: number }[] = [];

function stage(name: string, run: () => Count): Count {
  console.log(`\n=== ${name} ===`);
  const start = performance.now();
  const count = run();
  results.push({ name, count, seconds: (performance.now() - start) / 1000 });
  return count;
}

/** Runs a command of the installed packages; npm puts them, and their Node, first on the path. */
function run(command: string, environment: Record<string, string> = {}): boolean {
  console.log(`> ${command}`);
  const { status } = spawnSync(command, {
    cwd: root,
    stdio: 'inherit',
    shell: true,
    env: { ...process.env, ...environment },
  });
  return status === 0;
}

const counted = (well: boolean): Count => ({ passed: well ? 1 : 0, failed: well ? 0 : 1, skipped: 0 });
const check = (command: string) => (): Count => counted(run(command));

/** Runs checks two at a time. What one prints is shown whole, when it has ended. */
async function checks(all: Record<string, string>): Promise<void> {
  const waiting = Object.entries(all);
  const lane = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [name, command] = next;
      const start = performance.now();
      const child = spawn(command, { cwd: root, shell: true, stdio: ['ignore', 'pipe', 'pipe'] });
      let printed = '';
      for (const stream of [child.stdout, child.stderr]) stream.on('data', (text) => (printed += String(text)));
      const status = await new Promise((done) => child.once('close', done));
      console.log(`\n=== ${name} ===\n> ${command}\n${printed}`);
      results.push({ name, count: counted(status === 0), seconds: (performance.now() - start) / 1000 });
    }
  };
  await Promise.all([lane(), lane()]);
}

/** Runs a test runner that leaves its results in a file; where it leaves none, that is one failure. */
function tests(
  command: string,
  file: string,
  read: (json: string) => Count,
  environment: Record<string, string> = {},
): Count {
  rmSync(`${root}/${file}`, { force: true });
  const went = run(command, environment);
  const count = existsSync(`${root}/${file}`)
    ? read(readFileSync(`${root}/${file}`, 'utf8'))
    : { passed: 0, failed: 0, skipped: 0 };
  return !went && count.failed === 0 ? { ...count, failed: 1 } : count;
}

stage('Types of Astro’s own files', check('astro sync'));
// One checker for each language: what another checks already it leaves out.
await checks({
  Lint: 'eslint -c .config/eslint.config.js .',
  'Types: TypeScript': 'tsc --noEmit',
  'Types: Svelte': 'svelte-check --no-tsconfig --ignore dist,.cache --fail-on-warnings',
  'Types: Astro': 'astro-check --tsconfig .config/tsconfig.astro.json',
  Format: 'prettier --check .',
});
// The tests of paper ask for it; without it they fail and say how to install it.
if (!findPoppler('pdftoppm')) installPoppler(console.log);
stage('Unit and reference tests', () =>
  tests(
    'vitest run -c .config/vitest.config.ts --reporter=default --reporter=json --outputFile.json=.cache/vitest.json',
    '.cache/vitest.json',
    countVitest,
  ),
);
const built = stage('Build', check('node src/author/astro.ts build'));
const port = await freePort();
stage('Tests in a browser', () => {
  if (built.failed) {
    console.log('There is no site to look at, because the build failed.');
    return { passed: 0, failed: 1, skipped: 0 };
  }
  if (!findBrowser() && !installBrowser(console.log)) return { passed: 0, failed: 1, skipped: 0 };
  console.log(`Browser: ${findBrowser()}`);
  return tests(
    'playwright test -c .config/playwright.config.ts --reporter=list,json',
    '.cache/playwright.json',
    countPlaywright,
    {
      PLAYWRIGHT_JSON_OUTPUT_FILE: `${root}/.cache/playwright.json`,
      TEST_PORT: String(port),
    },
  );
});

console.log('\n=== Summary ===');
for (const { name, count, seconds } of results) {
  const { passed, failed, skipped } = count;
  console.log(
    `${failed ? '✗' : '✓'} ${name.padEnd(28)} ${passed} passed, ${failed} failed${skipped ? `, ${skipped} skipped` : ''} (${seconds.toFixed(1)} s)`,
  );
}
const total = (kind: keyof Count) => results.reduce((sum, { count }) => sum + count[kind], 0);
process.exitCode = total('failed') ? 1 : 0;
console.log(
  `${total('passed')} passed, ${total('failed')} failed${total('skipped') ? `, ${total('skipped')} skipped` : ''}`,
);
