/** Runs one of Astro's own commands (build, preview, check, sync) in the project's folder, without its calls home. */
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import '../site/alone.ts';

const home = path.dirname(createRequire(import.meta.url).resolve('astro/package.json'));
const root = fileURLToPath(new URL('../..', import.meta.url));
const child = spawn(process.execPath, [path.join(home, 'bin/astro.mjs'), ...process.argv.slice(2)], {
  cwd: root,
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => (process.exitCode = code ?? 1));
