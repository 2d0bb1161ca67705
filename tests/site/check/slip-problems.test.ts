import { expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';
const ASKED = '<AskSize of="card width + 2 * ease"';

const saidOf = (attributes: string) =>
  findContentProblems(contentFolder(exchanged(SIZE, ASKED, `${ASKED} ${attributes}`)))
    .filter(({ severity, file }) => severity === 'error' && file === SIZE)
    .map(({ message, fix }) => [message, fix].filter(Boolean).join(' '));

test('wrong sums, sentences and forbidden slips that can be read are taken', () => {
  expect(
    saidOf(
      'slips={{"card width + ease": "Two sides."}} reword={{"left-out": "Hm."}} forbid={["half", "one-side ease"]}',
    ),
  ).toEqual([]);
});

test('a wrong sum that cannot be worked out is an error', () => {
  expect(saidOf('slips={{"card widht + ease": "Two sides."}}')).toEqual([
    expect.stringMatching(/^slips: .*“card widht”.*card width/),
  ]);
});

test('a slip that there is not is an error with the likeliest name', () => {
  expect(saidOf('forbid={["haf"]}')).toEqual(['forbid: there is no slip “haf”. Did you mean “half”?']);
  expect(saidOf('reword={{"one-sided seam": "Both."}}')).toEqual([
    expect.stringContaining('reword: there is no slip “one-sided”. Did you mean “one-side”?'),
  ]);
});
