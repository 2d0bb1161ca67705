import { expect, test } from 'vitest';
import { quote } from '../../../src/core/measure/index.ts';

test.each([
  ['seam', '“seam”'],
  ['two\n  lines', '“two lines”'],
  ['The iron is hot: let each fold cool before you go on.', '“The iron is hot: let each fold…”'],
  // What has no blank has no end of a word.
  ['9'.repeat(40), `“${'9'.repeat(31)}…”`],
  ['🧵'.repeat(40), `“${'🧵'.repeat(31)}…”`],
])('%j is shortened at the end of a word', (text, said) => {
  expect(quote(text)).toBe(said);
});
