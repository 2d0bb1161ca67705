import { cp, mkdtemp, readFile, realpath, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** A copy of the kit that a test may write in, with the installed packages of this one. */
export async function copyKit(): Promise<{ folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(path.join(tmpdir(), 'sewing-course-kit-'));
  for (const part of ['content', 'components', 'src', 'astro.config.mjs', 'package.json', 'tsconfig.json']) {
    await cp(path.join(root, part), path.join(folder, part), { recursive: true });
  }
  await symlink(path.join(root, 'node_modules'), path.join(folder, 'node_modules'), 'junction');
  // The live preview hands out files of its own folder alone; the packages lie outside of the copy.
  const config = path.join(folder, 'astro.config.mjs');
  const allow = JSON.stringify([folder, await realpath(path.join(root, 'node_modules'))]);
  const text = await readFile(config, 'utf8');
  await writeFile(config, text.replace('  vite: {\n', `  vite: {\n    server: { fs: { allow: ${allow} } },\n`));
  return { folder, remove: () => rm(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
