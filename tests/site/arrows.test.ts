/** Arrows run one way: what a folder may import is a rule of the house, held by the linter. Here the rule itself is tried. */
import { fileURLToPath } from 'node:url';
import { ESLint } from 'eslint';
import ts from 'typescript-eslint';
import { expect, test } from 'vitest';
import { arrows } from '../../.config/boundaries.js';

const root = fileURLToPath(new URL('../..', import.meta.url));
const linter = new ESLint({ cwd: root, overrideConfigFile: true, baseConfig: [ts.configs.base, arrows] });

/** Whether a file at this place may import that one. */
async function mayImport(from: string, to: string): Promise<boolean> {
  const [result] = await linter.lintText(`import '${to}';`, { filePath: `${root}/${from}` });
  expect(result!.messages.every(({ ruleId }) => ruleId === 'boundaries/dependencies')).toBe(true);
  return result!.messages.length === 0;
}

test.each([
  ['src/core/cloth/some.ts', '../measure/index.ts'],
  ['src/core/steps/some.ts', '../cloth/index.ts'],
  ['src/core/project/some.ts', '../steps/index.ts'],
  ['src/core/speech/some.ts', '../project/index.ts'],
  ['src/core/index.ts', './handout/index.ts'],
  ['src/site/check/some.ts', '../content/read-content.ts'],
  ['src/site/content/some.ts', '../../../components/words/index.ts'],
  ['src/author/some.ts', '../site/check/report.ts'],
  ['components/page/some.ts', '../../src/core/index.ts'],
  ['src/core/measure/some.ts', 'node:path'],
])('%s may import %s', async (from, to) => {
  expect(await mayImport(from, to)).toBe(true);
});

test.each([
  ['src/core/measure/some.ts', '../formula/index.ts'],
  ['src/core/cloth/some.ts', '../steps/index.ts'],
  ['src/core/steps/some.ts', '../project/index.ts'],
  ['src/core/layout/some.ts', '../questions/index.ts'],
  ['src/core/speech/some.ts', '../drawing/index.ts'],
  ['src/core/kit/some.ts', '../../site/check/report.ts'],
  ['src/site/content/some.ts', '../check/report.ts'],
  ['src/site/check/some.ts', '../../../components/page/storage.ts'],
  ['components/page/some.ts', '../../src/site/content/schemas.ts'],
  ['src/site/check/some.ts', '../../author/check.ts'],
])('%s may not import %s', async (from, to) => {
  expect(await mayImport(from, to)).toBe(false);
});
