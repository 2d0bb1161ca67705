import { mdxToJs } from 'satteri';
import { expect, test } from 'vitest';
import { katexPlugin, texFault } from '../../../src/site/content/katex-plugin.ts';
import { features } from '../../../src/site/content/lesson-text.ts';

const compiled = async (text: string) =>
  (await Promise.resolve(mdxToJs(text, { features, mdastPlugins: [katexPlugin] }))).code;

test('maths is set as HTML with MathML for screen readers', async () => {
  const line = await compiled('So $$\\frac{a}{2}$$.');
  expect(line).toContain('katex-mathml');
  expect(line).toContain('"mfrac"');
  expect(line).not.toContain('katex-display');
  expect(await compiled('$$\na\n$$')).toContain('katex-display');
});

test('a single dollar sign is a price', async () => {
  expect(await compiled('A yard for $5, two for $9.')).not.toContain('katex');
});

test('braces in maths are no program', async () => {
  expect(await compiled('$$\\text{a {b} c}$$')).toContain('katex');
});

test('what cannot be set is told with its place in the TeX', () => {
  expect(texFault('a + \\foo', false)).toEqual({ message: 'Undefined control sequence: \\foo', at: 4 });
  expect(texFault('\\frac{1}{2}', true)).toBe(undefined);
});

test('what other programs could not set is refused here as it is on the page', async () => {
  expect(texFault('é', false)?.message).toBe('Accented Unicode text character "é" used in math mode');
  await expect(async () => compiled('$$é$$')).rejects.toThrow('Accented Unicode');
});
