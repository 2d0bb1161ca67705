import { cp, mkdtemp, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** A copy of the kit that a test may write in, with the installed packages of this one. */
export async function copyKit(): Promise<{ folder: string; remove(): Promise<void> }> {
  const folder = await mkdtemp(path.join(tmpdir(), 'sewing-course-kit-'));
  for (const part of ['content', 'components', 'src', 'astro.config.mjs', 'package.json', 'tsconfig.json']) {
    await cp(path.join(root, part), path.join(folder, part), { recursive: true });
  }
  await symlink(path.join(root, 'node_modules'), path.join(folder, 'node_modules'), 'junction');
  return { folder, remove: () => rm(folder, { recursive: true, force: true, maxRetries: 5 }) };
}
