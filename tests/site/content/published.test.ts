import { expect, test } from 'vitest';
import { published } from '../../../src/site/content/published.ts';
import { contentFolder } from '../content-folder.ts';

const site = (text: string) => contentFolder({ 'content/site.yaml': text });

test('the environment goes before site.yaml', () => {
  const root = site('name: X\naddress: https://example.org/sewing/\n');
  expect(published(root, {})?.href).toBe('https://example.org/sewing/');
  expect(published(root, { BASE_ADDRESS: 'https://school.example/kit/' })?.pathname).toBe('/kit/');
});

test('without either the site fits the top of any host', () => {
  expect(published(contentFolder(), {})).toBe(undefined);
  expect(published(site('name: [\n'), {})).toBe(undefined);
});

test('an address that is none is refused in words', () => {
  expect(() => published(contentFolder(), { BASE_ADDRESS: 'example.org' })).toThrow(
    'BASE_ADDRESS is “example.org”. A web address belongs there, such as https://example.org/sewing/.',
  );
});
