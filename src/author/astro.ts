/**
 * One of Astro's own commands in the project's folder, without its calls home: `node src/author/astro.ts preview`.
 * A build starts with the content check, so that mistakes stop it in plain words.
 */
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import '../site/alone.ts';
import { check } from './check.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const args = process.argv.slice(2);

if (args[0] === 'build') {
  const { text, code, problems } = check(root, { colour: process.stdout.hasColors?.() ?? false });
  if (problems.length) console.log(`${text}\n`);
  if (code) {
    console.log('The site is not built. Mend the mistakes above first.');
    process.exit(code);
  }
  process.env.CONTENT_CHECKED = 'yes';
}

const home = path.dirname(createRequire(import.meta.url).resolve('astro/package.json'));
const child = spawn(process.execPath, [path.join(home, 'bin/astro.mjs'), ...args], { cwd: root, stdio: 'inherit' });
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => (process.exitCode = code ?? 1));
