import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { readArguments, type Command } from '../../src/author/arguments.ts';
import { readWords } from '../../src/author/new.ts';

const kit = fileURLToPath(new URL('../..', import.meta.url));

const command = {
  name: 'npm run print',
  about: 'Prints.',
  choices: {
    large: { about: 'large letters' },
    to: { takes: 'FOLDER', normally: 'dist', about: 'where to' },
    'dry-run': { about: 'prints nothing' },
    host: { takes: '[ADDRESS]', alone: '0.0.0.0', about: 'for others' },
  },
} as const satisfies Command;
const left = { large: false, to: 'dist', 'dry-run': false, host: undefined };
const read = (args: string[], kept: Record<string, string> = {}, event = 'print') =>
  readArguments(command, args, { ...kept, npm_lifecycle_event: event });

test.each([
  [[], left],
  [['--large', '--to', 'stick'], { ...left, large: true, to: 'stick' }],
  [['--to=a b'], { ...left, to: 'a b' }],
  [['--host'], { ...left, host: '0.0.0.0' }],
  [['--host', '--large'], { ...left, large: true, host: '0.0.0.0' }],
  [['--host', '127.0.0.1'], { ...left, host: '127.0.0.1' }],
])('%j', (args, values) => {
  expect(read(args)).toEqual({ ok: true, values, names: [] });
});

test.each([
  [['--larg'], 'There is no choice --larg. Did you mean --large?'],
  [['--colour'], 'There is no choice --colour.'],
  [['--to'], '--to takes FOLDER behind it.'],
  [['--to', '--large'], '--to takes FOLDER behind it.'],
  [['--large=yes'], '--large takes nothing behind it.'],
  [['stick'], '“stick” means nothing here.'],
])('%j is answered in words, with the help', (args, message) => {
  const asked = read(args);
  expect(asked).toMatchObject({ ok: false, code: 1 });
  expect(!asked.ok && asked.answer).toBe(`${message}\n
npm run print -- [choices]\n
Prints.\n
  --large                  large letters
  --to FOLDER              where to
  --dry-run                prints nothing
  --host [ADDRESS]         for others
  --help                   this text`);
});

test('choices that npm keeps for itself are found, for this command alone', () => {
  expect(read([], { npm_config_large: 'true', npm_config_dry_run: 'true' })).toMatchObject({
    values: { ...left, large: true, 'dry-run': true },
  });
  // What npm takes for a choice without a value stands among the names.
  expect(
    readArguments({ name: 'npm run print', about: '', choices: { out: { takes: 'FOLDER', about: '' } } }, ['x'], {
      npm_config_out: 'true',
      npm_lifecycle_event: 'print',
    }),
  ).toEqual({ ok: true, values: { out: 'x' }, names: [] });
  expect(read([], { npm_config_large: 'true' }, 'test')).toMatchObject({ values: left });
  expect(read(['--to', 'a'], { npm_config_to: 'b' })).toMatchObject({ values: { ...left, to: 'a' } });
});

test('a title keeps its words', () => {
  expect(readWords(['project', 'tote', '--title', 'Tote', 'bag', '--from', 'x'], {})).toEqual({
    ok: true,
    names: ['project', 'tote'],
    values: { title: 'Tote bag', project: undefined, from: 'x', 'from-recording': undefined },
  });
  expect(readWords(['project', '--title', 'Tote bag', 'tote'], {})).toMatchObject({
    names: ['project', 'tote'],
    values: { title: 'Tote bag' },
  });
  expect(readWords(['--title', 'Tote', 'project', 'tote'], {})).toMatchObject({
    names: ['project', 'tote'],
    values: { title: 'Tote' },
  });
});

test('npm itself, without the -- before the choices', () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'npm-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const program = (file: string, what: string) =>
    writeFileSync(
      path.join(folder, file),
      `import { ${what} as read } from ${JSON.stringify(pathToFileURL(path.join(kit, 'src/author', file)).href)};
console.log(JSON.stringify(read()));`.replace('new.ts"', 'new.ts"'),
    );
  program('new.ts', 'readWords');
  program('publish.ts', 'readChoices');
  const scripts = { new: 'node new.ts', publish: 'node publish.ts' };
  writeFileSync(path.join(folder, 'package.json'), JSON.stringify({ name: 'x', type: 'module', scripts }));
  const run = (...words: string[]) => {
    // As from a terminal: what runs this test has settings of its own.
    const own = Object.entries(process.env).filter(([name]) => !name.startsWith('npm_'));
    const { stdout } = spawnSync('npm', ['run', '-s', ...words], {
      ...{ cwd: folder, encoding: 'utf8', shell: process.platform === 'win32', env: Object.fromEntries(own) },
    });
    return JSON.parse(stdout) as unknown;
  };
  expect(run('new', 'lesson', 'pleats', 'Sew it')).toMatchObject({ names: ['lesson', 'pleats', 'Sew it'] });
  expect(run('new', 'project', 'tote', '--title=Tote bag')).toMatchObject({
    names: ['project', 'tote'],
    values: { title: 'Tote bag' },
  });
  // Which of the words belong to the title, nobody can tell.
  expect(run('new', 'project', '--title', 'Tote', 'bag')).toMatchObject({
    ok: false,
    answer: expect.stringContaining('npm kept “--title” for itself. Write --title="…", with the sign = and quotes.'),
  });
  expect(run('publish', '--dry-run')).toMatchObject({ dryRun: true });
  expect(run('publish', '--to', 'stick')).toMatchObject({ to: 'stick' });
  expect(run('publish', '--', '--to', 'stick')).toMatchObject({ to: 'stick' });
});

test('every command of package.json has a help of its own', () => {
  const { scripts } = JSON.parse(readFileSync(path.join(kit, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };
  const own = Object.entries(scripts).filter(([, line]) =>
    /^node (src\/author|tests\/(bench|fuzz))\/\S+( \w+)?$/.test(line),
  );
  expect(own.map(([name]) => name)).toEqual(
    expect.arrayContaining([
      'start',
      'build',
      'preview',
      'check',
      'new',
      'schema',
      'handouts',
      'recordings',
      'script',
      'publish',
      'bench',
      'fuzz',
    ]),
  );
  for (const [name, line] of own) {
    const { stdout, status } = spawnSync(process.execPath, [...line.split(' ').slice(1), '--help'], {
      cwd: kit,
      encoding: 'utf8',
    });
    expect(stdout, name).toMatch(new RegExp(`^npm (run )?${name} -- `));
    expect(stdout, name).toContain('--help');
    expect(status, name).toBe(0);
  }
}, 60_000);
