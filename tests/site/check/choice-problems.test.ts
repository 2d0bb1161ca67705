import { expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';

/** The errors of a lesson in which this word stands. */
const saidOf = (word: string) =>
  findContentProblems(contentFolder(exchanged(SIZE, '<YourSize />', `${word}\n\n<YourSize />`)))
    .filter(({ severity, file }) => severity === 'error' && file === SIZE)
    .map(({ message, fix }) => [message, fix].filter(Boolean).join(' '));

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

test('folds are those of the strip', () => {
  const fold = (attributes: string) => `<AskFold piece="strip" ${attributes}>\n\nWhich?\n\n</AskFold>`;
  expect(saidOf(fold('fold={2}'))).toEqual([]);
  expect(saidOf(fold('kind="valley"'))).toEqual([]);
  expect(saidOf(fold(''))).toEqual(['<AskFold>: which fold? Write fold={3}, or kind="valley".']);
  expect(saidOf(fold('fold={2} kind="valley"'))).toEqual([
    '<AskFold>: it asks for one fold or for a kind, and not for both. Take one of them out.',
  ]);
  expect(saidOf(fold('fold={40}'))).toEqual([
    expect.stringMatching(/^fold: “strip” has \d+ folds at the lesson’s size\./),
  ]);
  expect(saidOf('<AskFold piece="facing" fold={1}>\n\nWhich?\n\n</AskFold>')).toEqual([
    expect.stringContaining('The piece “facing” has no pleats.'),
  ]);
});

test('what is to be pointed at shows, and not everywhere', () => {
  const PROJECT = 'content/projects/folio/project.yaml';
  const steps = 'steps:\n  - { id: half, fold: facing, from: right, at: 1 in }\nholds:';
  const said = (attributes: string) => {
    const word = `<AskSide step="half" ${attributes}>\n\nWhere?\n\n</AskSide>`;
    const files = {
      ...exchanged(SIZE, '<YourSize />', `${word}\n\n<YourSize />`),
      ...exchanged(PROJECT, 'holds:', steps),
    };
    return findContentProblems(contentFolder(files))
      .filter(({ severity, file }) => severity === 'error' && file === SIZE)
      .map(({ message, fix }) => [message, fix].filter(Boolean).join(' '));
  };
  expect(said('shows="wrong side"')).toEqual([]);
  expect(said('shows="wrong sid"')).toEqual([
    'shows: there is no side or piece “wrong sid”. Did you mean “wrong side”?',
  ]);
  expect(said('shows="strip"')).toEqual([
    'shows: seen from the front, nothing of it shows after that step. Ask for another step, or look from the other side.',
  ]);
  expect(said('shows="facing"')).toEqual([
    'shows: seen from the front, all that shows after that step is right. Ask for another step, or look from the other side.',
  ]);
});
