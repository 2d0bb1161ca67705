/**
 * One of Astro's own commands in the project's folder, without its calls home: `node src/author/astro.ts preview`.
 * Beside a build the content is checked, so that mistakes stop it in plain words.
 */
import { spawn } from 'node:child_process';
import { rmSync } from 'node:fs';
import { createRequire, enableCompileCache } from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import '../site/pages/no-telemetry.ts';
import { CHECKED_BESIDE } from '../site/pages/beside.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const args = process.argv.slice(2);
const isBuild = args[0] === 'build';
const colour = process.stdout.hasColors?.() ?? false;

const home = path.dirname(createRequire(import.meta.url).resolve('astro/package.json'));
// Pages are many short texts: with more room for what is young, they are gone before they are looked at again.
const room = isBuild ? ['--max-semi-space-size=64'] : [];
// Where what was read of the content lies meanwhile.
const content = path.join(root, `.cache/content-${process.pid}`);
const child = spawn(process.execPath, [...room, path.join(home, 'bin/astro.mjs'), ...args], {
  cwd: root,
  serialization: 'advanced', // pages come as bytes
  stdio: isBuild ? ['inherit', 'pipe', 'pipe', 'ipc'] : 'inherit',
  env: { ...process.env, ...(isBuild && { [CHECKED_BESIDE]: content, ...(colour && { FORCE_COLOR: '1' }) }) },
});
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => child.kill(signal));
child.on('exit', (code) => (process.exitCode = code ?? 1));
process.on('exit', () => rmSync(content, { force: true }));

if (isBuild) {
  enableCompileCache(); // as Astro does for itself
  const { besideBuild } = await import('./beside-build.ts');
  await besideBuild(child, root, colour, content);
}
