/**
 * Writing on the machine's own file system: a disk that is really full, a file that may not be written, and a program that
 * is ended at a system call. Linux alone, with the right to mount and with strace; what cannot be tried is said.
 */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const WRITER = fileURLToPath(new URL('writer.ts', import.meta.url));
const [OLD, NEW] = ['old\n'.repeat(5_000), 'new!\n'.repeat(20_000)];
/** The system calls of a write, as Node makes them; those that a program's start makes by the hundred, on this folder alone. */
const CALLS = ['write', 'fsync', 'rename', 'unlink', 'openat', 'close', 'statx', 'access', 'read'];
const MANY_AT_START = ['openat', 'close', 'statx', 'access', 'read'];

const writer = (file: string, before: string[] = [], options = {}) => {
  const given = [process.execPath, WRITER, file];
  const [program, ...rest] = [...before, ...given];
  return spawnSync(program!, rest, { encoding: 'utf8', input: JSON.stringify({ text: NEW, before: OLD }), ...options });
};

/** Tries everything once; gives what went wrong and prints what was tried, a line each. */
export function onDisk(): string[] {
  const home = fs.mkdtempSync(path.join(os.tmpdir(), 'disk-'));
  try {
    return [...full(home), ...forbidden(home), ...killed(home)];
  } finally {
    fs.rmSync(home, { recursive: true, force: true });
  }
}

function full(home: string): string[] {
  const disk = path.join(home, 'full');
  fs.mkdirSync(disk);
  if (spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=64k', 'tmpfs', disk]).status !== 0)
    return untried('a full disk: nothing can be mounted');
  try {
    const file = path.join(disk, 'project.yaml');
    fs.writeFileSync(file, OLD);
    const { stdout } = writer(file);
    console.log(`  a full disk: ${stdout.trim()}`);
    const lines = fs.readFileSync(file, 'utf8') === OLD ? [] : ['a full disk cut the file'];
    if (!stdout.includes('the disk is full')) lines.push(`a full disk is told as ${stdout}`);
    if (fs.readdirSync(disk).length !== 1) lines.push('a full disk: a part is left');
    return lines;
  } finally {
    spawnSync('umount', [disk]);
  }
}

function forbidden(home: string): string[] {
  const [uid, gid] = [65_534, 65_534];
  if (process.getuid?.() !== 0) return untried('a file of somebody else: only root makes one');
  const lines: string[] = [];
  for (const [name, mode, folderMode] of [
    ['file', 0o444, 0o777],
    ['folder', 0o666, 0o555],
  ] as const) {
    const folder = path.join(home, name);
    fs.mkdirSync(folder);
    const file = path.join(folder, 'project.yaml');
    fs.writeFileSync(file, OLD);
    fs.chmodSync(home, 0o755);
    fs.chmodSync(file, mode);
    fs.chmodSync(folder, folderMode);
    const { stdout, stderr } = writer(file, [], { uid, gid });
    if (stdout === '' && /EACCES|Cannot find/u.test(stderr))
      return untried('a write-protected file: nobody else may read the kit here');
    console.log(`  a write-protected ${name}: ${stdout.trim()}`);
    if (!stdout.includes('may not be written')) lines.push(`a write-protected ${name} is told as ${stdout} ${stderr}`);
    if (fs.readFileSync(file, 'utf8') !== OLD) lines.push(`a write-protected ${name} was written`);
  }
  return lines;
}

function killed(home: string): string[] {
  if (spawnSync('strace', ['-o', '/dev/null', 'true']).status !== 0)
    return untried('an end at a system call: strace does not run');
  const lines: string[] = [];
  let [ended, whole] = [0, 0];
  for (const call of CALLS) {
    for (let n = 1; n <= 400; n++) {
      const folder = path.join(home, `${call}-${n}`);
      fs.mkdirSync(folder);
      const file = path.join(folder, 'project.yaml');
      fs.writeFileSync(file, OLD);
      const only = MANY_AT_START.includes(call) ? ['-P', folder, '-P', file] : [];
      const trace = ['strace', '-f', '-qq', '-o', '/dev/null', ...only];
      const { signal, status, stdout } = writer(file, [
        ...trace,
        '-e',
        `trace=${call}`,
        '-e',
        `inject=${call}:signal=KILL:when=${n}`,
      ]);
      const isEnded = signal === 'SIGKILL' || (status !== null && status !== 0);
      const text = fs.readFileSync(file, 'utf8');
      if (text !== OLD && text !== NEW) lines.push(`ended at ${call} ${n}: the file is ${text.length} signs long`);
      const again = writer(file, [], { input: JSON.stringify({ text: NEW, before: text }) });
      if (!again.stdout.includes('written'))
        lines.push(`ended at ${call} ${n}: cannot be written again: ${again.stdout}`);
      if (fs.readdirSync(folder).length !== 1) lines.push(`ended at ${call} ${n}: a part stays for ever`);
      fs.rmSync(folder, { recursive: true });
      if (!isEnded) {
        if (!stdout.includes('written')) lines.push(`at ${call} ${n}: ${stdout}`);
        whole++;
        break;
      }
      ended++;
    }
  }
  console.log(
    `  ended at ${ended} system calls of ${CALLS.join(', ')}; ${whole} of these ${CALLS.length} kinds to their last`,
  );
  return lines;
}

function untried(why: string): string[] {
  console.log(`  not tried: ${why}`);
  return [];
}
