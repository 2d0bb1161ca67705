/** An author's file is written as a whole or not at all, whatever fails. */
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { CHANGED_SINCE, writeAuthorFile, type Disk } from '../../src/author/write-file.ts';

function folder(): string {
  const made = fs.mkdtempSync(path.join(os.tmpdir(), 'write-'));
  onTestFinished(() => fs.rmSync(made, { recursive: true }));
  return made;
}

/** A disk on which one thing fails. */
const failing = (call: keyof Disk, code: string): Disk => ({
  ...fs,
  [call]: () => {
    throw Object.assign(new Error(code), { code });
  },
});

test('a new file, and one that is there, which keeps its permissions', () => {
  const file = path.join(folder(), 'project.yaml');
  expect(writeAuthorFile(file, 'title: Folio\n', { before: undefined })).toBeUndefined();
  fs.chmodSync(file, 0o640);
  expect(writeAuthorFile(file, 'title: Wallet\n', { before: 'title: Folio\n' })).toBeUndefined();
  expect(fs.readFileSync(file, 'utf8')).toBe('title: Wallet\n');
  expect(fs.statSync(file).mode & 0o777).toBe(0o640);
  expect(fs.readdirSync(path.dirname(file))).toEqual(['project.yaml']);
});

test('what a link points to is written, and the link stays', () => {
  const root = folder();
  fs.writeFileSync(path.join(root, 'real.yaml'), 'a');
  fs.symlinkSync('real.yaml', path.join(root, 'link.yaml'));
  expect(writeAuthorFile(path.join(root, 'link.yaml'), 'b', { before: 'a' })).toBeUndefined();
  expect(fs.readFileSync(path.join(root, 'real.yaml'), 'utf8')).toBe('b');
  expect(fs.lstatSync(path.join(root, 'link.yaml')).isSymbolicLink()).toBe(true);
});

test.each([
  ['accessSync', 'EACCES', 'project.yaml may not be written here.'],
  ['openSync', 'EROFS', 'project.yaml may not be written here.'],
  ['writeFileSync', 'ENOSPC', 'project.yaml is not written: the disk is full.'],
  ['fsyncSync', 'EIO', 'project.yaml is not written (EIO).'],
  ['renameSync', 'EBUSY', 'project.yaml is not written: another program holds it.'],
] as const)('%s fails: the file stays, and nothing lies beside it', (call, code, message) => {
  const file = path.join(folder(), 'project.yaml');
  fs.writeFileSync(file, 'title: Folio\n');
  expect(writeAuthorFile(file, 'title: Wallet\n', { before: 'title: Folio\n' }, failing(call, code))?.message).toBe(
    message,
  );
  expect(fs.readFileSync(file, 'utf8')).toBe('title: Folio\n');
  expect(fs.readdirSync(path.dirname(file))).toEqual(['project.yaml']);
});

test('a folder that is not there is said, too', () => {
  expect(writeAuthorFile(path.join(folder(), 'gone/project.yaml'), 'a', { before: undefined })).toEqual({
    message: 'project.yaml is not written: its folder is gone.',
    fix: 'Put the folder back, and try again.',
  });
});

test.each([
  ['has changed', 'title: Folio\n', 'title: Hers\n'],
  ['has come', undefined, 'title: Hers\n'],
  ['has gone', 'title: Folio\n', undefined],
])('a file that %s since it was read is left as it is', (_, before, now) => {
  const file = path.join(folder(), 'project.yaml');
  if (now !== undefined) fs.writeFileSync(file, now);
  expect(writeAuthorFile(file, 'title: Wallet\n', { before })?.code).toBe(CHANGED_SINCE);
  expect(fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : undefined).toBe(now);
  expect(fs.readdirSync(path.dirname(file))).toEqual(now === undefined ? [] : ['project.yaml']);
});

test('the file is compared after the new text is on the disk, right before it takes its place', () => {
  const file = path.join(folder(), 'project.yaml');
  fs.writeFileSync(file, 'title: Folio\n');
  const disk: Disk = {
    ...fs,
    fsyncSync(handle) {
      fs.fsyncSync(handle);
      fs.writeFileSync(file, 'title: Hers\n');
    },
  };
  expect(writeAuthorFile(file, 'title: Wallet\n', { before: 'title: Folio\n' }, disk)?.code).toBe(CHANGED_SINCE);
  expect(fs.readFileSync(file, 'utf8')).toBe('title: Hers\n');
});

test('what a program left behind when it was ended is in nobody’s way', () => {
  const file = path.join(folder(), 'project.yaml');
  fs.writeFileSync(path.join(path.dirname(file), `.project.yaml.${process.pid}.part`), 'half');
  expect(writeAuthorFile(file, 'title: Folio\n', { before: undefined })).toBeUndefined();
  expect(fs.readdirSync(path.dirname(file))).toEqual(['project.yaml']);
});

test('so is what a program left behind that is no more; what one that runs is writing stays', () => {
  const file = path.join(folder(), 'project.yaml');
  const { pid } = spawnSync(process.execPath, ['--version']);
  for (const program of [pid, process.ppid])
    fs.writeFileSync(`${path.dirname(file)}/.project.yaml.${program}.part`, 'half');
  expect(writeAuthorFile(file, 'title: Folio\n', { before: undefined })).toBeUndefined();
  expect(fs.readdirSync(path.dirname(file)).toSorted()).toEqual([`.project.yaml.${process.ppid}.part`, 'project.yaml']);
});

test('where even the part cannot be taken away, the reason of the failure is told', () => {
  const file = path.join(folder(), 'project.yaml');
  const disk: Disk = { ...failing('fsyncSync', 'ENOSPC'), rmSync: failing('rmSync', 'EROFS').rmSync };
  expect(writeAuthorFile(file, 'title: Folio\n', { before: undefined }, disk)?.message).toBe(
    'project.yaml is not written: the disk is full.',
  );
  expect(fs.existsSync(file)).toBe(false);
});
