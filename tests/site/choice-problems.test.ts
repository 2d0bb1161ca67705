import { expect, test } from 'vitest';
import { findContentProblems } from '../../src/site/find-content-problems.ts';
import { contentFolder, exchanged } from './content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';

/** The errors of a lesson in which this word stands. */
const saidOf = (word: string) =>
  findContentProblems(contentFolder(exchanged(SIZE, '<YourSize />', `${word}\n\n<YourSize />`)))
    .filter(({ severity, file }) => severity === 'error' && file === SIZE)
    .map(({ message, mend }) => [message, mend].filter(Boolean).join(' '));

const choice = (attributes: string) => `<AskChoice id="a" ${attributes}>\n\nWhich?\n\n</AskChoice>`;

test('texts with sizes in brackets are taken when the sizes can be worked out', () => {
  expect(saidOf(choice('right={["[2 * seam]"]} wrong={{"[seam]": "Twice [seam]."}}'))).toEqual([]);
  expect(saidOf(choice('right={["[2 * saem]"]} wrong={["b"]}'))).toEqual([
    expect.stringMatching(/^right: .*“saem”.*seam/),
  ]);
  expect(saidOf(choice('right={["a"]} wrong={{"b": "Twice [saem]."}}'))).toEqual([expect.stringContaining('wrong: ')]);
});

test('two answers alike cannot be told apart', () => {
  expect(saidOf(choice('right={["a"]} wrong={["b", "a"]}'))).toEqual([
    '<AskChoice>: “a” stands there twice. Keep one of them.',
  ]);
  expect(saidOf('<AskOrder id="o" steps={["a", "b", "a"]}>\n\nOrder?\n\n</AskOrder>')).toHaveLength(1);
});

test('edges are those of the piece', () => {
  const edges = (list: string) => `<AskEdge piece="facing" edges={${list}}>\n\nWhich?\n\n</AskEdge>`;
  expect(saidOf(edges('["left"]'))).toEqual([]);
  expect(saidOf(edges('["lefft"]'))).toEqual(['edges: the piece has no edge “lefft”. Did you mean “left”?']);
});

test('terms are in the glossary', () => {
  const pairs = (list: string) => `<AskPairs id="p" terms={${list}}>\n\nMatch.\n\n</AskPairs>`;
  expect(saidOf(pairs('["raw edge"]'))).toEqual([expect.stringContaining('the glossary does not have “raw edge”')]);
});
