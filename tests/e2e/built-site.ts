/** Builds a copy of the kit, and opens what was built as its README says. */
import { execFile, spawn } from 'node:child_process';
import { promisify } from 'node:util';
import { expect } from '@playwright/test';

/**
 * The built site of a kit, as learners get it.
 *
 * @param folder of the kit, with the content that it is to be built from
 */
export async function openBuilt(folder: string): Promise<{ address: string; close: () => void }> {
  await promisify(execFile)(process.execPath, ['src/author/astro.ts', 'build'], { cwd: folder });
  const server = spawn(process.execPath, ['src/author/publish/open.mjs', 'dist'], {
    cwd: folder,
    env: { ...process.env, PORT: '0' },
  });
  let said = '';
  server.stdout.on('data', (text) => (said += String(text)));
  await expect.poll(() => said).toContain('The site is open at');
  return { address: (/http:\S+/.exec(said)?.[0] ?? '').replace(/\/$/u, ''), close: () => server.kill() };
}
