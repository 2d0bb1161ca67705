import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { kitFolderFault } from '../../src/author/kit-folder.ts';

const kit = fileURLToPath(new URL('../..', import.meta.url));

test.each(['C#', '50%', 'a?b', '%20'])('in a folder called %s no page can be made', (name) => {
  const fault = kitFolderFault(path.join('/home/ada', name, 'kit'));
  expect(fault).toContain(`in “${name}” has a meaning of its own`);
  expect(fault).toContain('Rename that folder');
});

test.each(['a b', 'ü', "Ada's & co", '100 €', 'x=1', '[kit]', '(2)'])(
  'a folder called %s is one like any other',
  (name) => {
    expect(kitFolderFault(path.join('/home/ada', name, 'kit'))).toBeUndefined();
  },
);

test.each([
  ['start', 'src/author/start.ts', []],
  ['build', 'src/author/astro.ts', ['build']],
  ['check', 'src/author/check.ts', []],
])('%s says so at once', (_, program, args) => {
  const folder = mkdtempSync(path.join(tmpdir(), 'kit-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const house = path.join(folder, 'C#');
  mkdirSync(house);
  for (const part of ['src', 'components']) cpSync(path.join(kit, part), path.join(house, part), { recursive: true });
  cpSync(path.join(kit, 'package.json'), path.join(house, 'package.json'));
  symlinkSync(path.join(kit, 'node_modules'), path.join(house, 'node_modules'));
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    ...{ cwd: house, encoding: 'utf8', timeout: 30_000 },
  });
  expect(status).toBe(1);
  expect(stdout + stderr).toContain('the # in “C#” has a meaning of its own in addresses');
});
