/** `npm start` on a copy of the kit, as an instructor runs it. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { expect } from '@playwright/test';
import { freePort } from '../free-port.ts';

export type Started = { address: string; output: () => string; stop: () => Promise<void> };

/** Runs the README's command and waits until it prints its address. */
export async function start(folder: string, environment: NodeJS.ProcessEnv = {}): Promise<Started> {
  const port = await freePort();
  const child: ChildProcess = spawn('npm', ['start', '--', '--port', String(port), '--host', '127.0.0.1'], {
    cwd: folder,
    detached: process.platform !== 'win32', // npm's own child has to end with it
    shell: process.platform === 'win32',
    env: { ...process.env, ...environment, NO_COLOR: '1', FORCE_COLOR: undefined },
  });
  let printed = '';
  child.stdout?.on('data', (text) => (printed += text));
  child.stderr?.on('data', (text) => (printed += text));
  await expect.poll(() => printed, { timeout: 60_000 }).toContain('Ctrl+C stops it.');
  return {
    address: `http://127.0.0.1:${port}`,
    output: () => printed,
    async stop() {
      const ended = new Promise((done) => child.once('exit', done));
      if (process.platform === 'win32') child.kill();
      else process.kill(-child.pid!, 'SIGTERM');
      await ended;
    },
  };
}
