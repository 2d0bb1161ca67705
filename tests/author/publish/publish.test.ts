import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { readChoices } from '../../../src/author/publish.ts';

test.each([
  [[], { dryRun: false, to: undefined, address: undefined }],
  [['--dry-run'], { dryRun: true, to: undefined, address: undefined }],
  [['--to', 'stick'], { dryRun: false, to: 'stick', address: undefined }],
  [
    ['--address', 'https://example.org/sewing/'],
    { dryRun: false, to: undefined, address: new URL('https://example.org/sewing/') },
  ],
])('%j', (given, wish) => {
  expect(readChoices(given)).toEqual({ ok: true, ...wish });
});

test.each([
  [['--address', 'example.org'], '--address takes a web address, such as https://example.org/sewing/.'],
  [['--address', 'ftp://example.org'], '--address takes a web address, such as https://example.org/sewing/.'],
  [['--dry-run', '--to', 'stick'], 'A dry run writes nothing, so leave out --to.'],
  [['--dry'], 'There is no choice --dry. Did you mean'],
  [['--help'], 'npm run publish -- [choices]'],
])('%j is answered with the choices there are', (given, said) => {
  const read = readChoices(given);
  expect(!read.ok && read.answer).toContain(said);
  expect(!read.ok && read.answer).toContain('--dry-run ');
});

test('the workflow for hosted pages runs commands that there are, with choices that they take', () => {
  const read = (file: string) => readFileSync(new URL(`../../../${file}`, import.meta.url), 'utf8');
  const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
  const workflow = parse(read('.github/workflows/publish.yml')) as {
    jobs: { publish: { steps: { run?: string; with?: Record<string, string> }[] } };
  };
  const { steps } = workflow.jobs.publish;
  const [install, publish = ''] = steps.flatMap(({ run }) => run ?? []);
  expect(install).toBe('npm ci');
  const [, name = '', given = ''] = /^npm run (\S+) -- (.*)$/.exec(publish) ?? [];
  expect(scripts[name]).toBe('node src/author/publish.ts');
  // The host writes its address in place of what stands in braces.
  const words = given
    .replace(/\$\{\{.*?\}\}/, 'https://name.example/kit')
    .replaceAll('"', '')
    .split(' ');
  expect(readChoices(words)).toMatchObject({ address: new URL('https://name.example/kit/') });
  expect(steps.find((step) => step.with?.path)?.with?.path).toBe('dist');
});
