import { expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { questionsIn } from '../../../src/site/content/lesson-questions.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';
const CHOICE = '<AskChoice id="which" right={["a"]} wrong={["b"]}>\n\nWhich?\n\n</AskChoice>';
const EDGE = '<AskEdge piece="facing" edges={["left"]}>\n\nWhich edge?\n\n</AskEdge>';
const GUESS = '<Predict id="guess" guesses={["a", "b"]} shows="a">\n\nWhat happens?\n\n</Predict>';

/** The errors of a lesson with a set that takes these attributes, beside a choice, an edge and a guess. */
const saidOf = (attributes: string) => {
  const set = `<Practice of="panel width" ${attributes}>\n\nHow wide?\n\n</Practice>`;
  const words = [CHOICE, EDGE, GUESS, set, '<YourSize />'].join('\n\n');
  return findContentProblems(contentFolder(exchanged(SIZE, '<YourSize />', words)))
    .filter(({ severity, file }) => severity === 'error' && file === SIZE)
    .map(({ message, fix }) => [message, fix].filter(Boolean).join(' '));
};

test('a set takes other questions of its lesson, by the names they have or are given', () => {
  expect(saidOf('also={["which", "edges of facing"]}')).toEqual([]);
});

test('a name that no question has is told, with the likeliest', () => {
  expect(saidOf('also={["wich"]}')).toEqual([
    'also: no question of this lesson is called “wich”. Did you mean “which”?',
  ]);
  expect(saidOf('also={["gusset"]}')).toEqual([
    'also: no question of this lesson is called “gusset”. There are: which or edges of facing.',
  ]);
});

test('what cannot come up in a set is told with its reason', () => {
  expect(saidOf('also={["panel width"]}')).toEqual([expect.stringContaining('“panel width” is a set of its own.')]);
  expect(saidOf('also={["card width + 2 * ease"]}')).toEqual([expect.stringContaining('takes a sum')]);
  expect(saidOf('also={["guess"]}')).toEqual([expect.stringContaining('is a guess')]);
});

test('a question stands once in a set, and the set is long enough for it', () => {
  expect(saidOf('also={["which", "which"]}')).toEqual(['also: “which” stands there twice. Keep one of them.']);
  expect(saidOf('rounds={1} also={["which"]}')).toEqual([expect.stringContaining('never comes to these')]);
});

test('a question is read as its author wrote it, with the sizes among its words', () => {
  const source =
    '<AskEdge piece="flap" edges={["left"]}>\n\nIt is <Size of="flap width" /> wide. Which edge?\n\n</AskEdge>';
  expect(questionsIn(source)).toEqual([
    {
      word: 'AskEdge',
      name: 'edges of flap',
      words: ['It is ', { size: 'flap width' }, ' wide. Which edge?', ' '],
      given: { piece: 'flap', edges: ['left'] },
    },
  ]);
});
