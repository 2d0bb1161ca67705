/** Finds poppler's tools, the second opinion on paper, or installs them the way that works on this machine. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import path from 'node:path';
import { packageRights } from './browser.ts';

const ADVICE =
  'The tests of paper need poppler’s tools (pdftoppm, pdftotext, pdffonts). Install them: poppler-utils on Debian and ' +
  'its kin, poppler elsewhere; or name their folder in POPPLER.';

/** The program file of one of the tools: in the folder that POPPLER names, on the path, or where they usually are. */
export function findPoppler(tool: string, environment: NodeJS.ProcessEnv = process.env): string | undefined {
  const ending = process.platform === 'win32' ? '.exe' : '';
  const folders = [
    environment.POPPLER,
    ...(environment.PATH ?? '').split(path.delimiter),
    '/usr/bin',
    '/usr/local/bin',
    '/opt/homebrew/bin',
  ];
  return folders
    .flatMap((folder) => (folder === undefined || folder === '' ? [] : [path.join(folder, tool + ending)]))
    .find((file) => existsSync(file));
}

/**
 * Installs poppler's tools where that can be done without asking, and says what it does.
 *
 * @returns whether they are there afterwards
 */
export function installPoppler(say: (line: string) => void): boolean {
  const prefix = packageRights();
  if (prefix) {
    say('poppler’s tools are not installed. Installing them:');
    const run = (...args: string[]) => {
      const [first, ...rest] = [...prefix, 'apt-get', '-o', 'DPkg::Lock::Timeout=120', ...args];
      say(`  ${[first, ...rest].join(' ')}`);
      return spawnSync(first!, rest, { stdio: 'inherit' }).status === 0;
    };
    if (run('update') && run('install', '-y', '--no-install-recommends', 'poppler-utils') && findPoppler('pdftoppm'))
      return true;
  }
  say(ADVICE);
  return false;
}

/** Runs one of the tools and gives what it prints. */
export function poppler(tool: 'pdftoppm' | 'pdftotext' | 'pdffonts', ...args: string[]): Buffer {
  const file = findPoppler(tool) ?? (installPoppler(console.log) ? findPoppler(tool) : undefined);
  if (file === undefined) throw new Error(ADVICE);
  const { status, stdout, stderr, error } = spawnSync(file, args, { maxBuffer: 1 << 28 });
  if (status !== 0) throw new Error(`${tool} ${args.join(' ')}: ${error?.message ?? stderr.toString()}`);
  return stdout;
}

/** A page as rows of ink, 0 (white) to 255 (black). */
export type Picture = { width: number; height: number; dpi: number; ink: (x: number, y: number) => number };

/** Renders one page of a file in greys. */
export const render = (file: string, page: number, dpi = 300): Picture =>
  pictures(poppler('pdftoppm', '-r', String(dpi), '-f', String(page), '-l', String(page), '-gray', file), dpi)[0]!;

/** Renders all pages of a file in greys. */
export const renderAll = (file: string, dpi = 300): Picture[] =>
  pictures(poppler('pdftoppm', '-r', String(dpi), '-gray', file), dpi);

/** The pictures of a stream of PGM, one after the other. */
function pictures(pgm: Buffer, dpi: number): Picture[] {
  const found: Picture[] = [];
  for (let at = 0; at < pgm.length;) {
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(pgm.subarray(at, at + 40).toString('latin1'));
    if (!head) throw new Error('pdftoppm gave no picture.');
    const [width, height, from] = [Number(head[1]), Number(head[2]), at + head[0].length];
    found.push({ width, height, dpi, ink: (x, y) => 255 - (pgm[from + y * width + x] ?? 255) });
    at = from + width * height;
  }
  if (found.length === 0) throw new Error('pdftoppm gave no picture.');
  return found;
}
