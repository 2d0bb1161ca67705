/** A new lesson word is a folder and one line in the registry: everything else finds it by itself. */
import { expect, test, vi } from 'vitest';
import { inSet, words } from '../../../components/words/index.ts';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { editorFiles } from '../../../src/site/content/editor-files.ts';
import { lessonOnPaper } from '../../../src/site/content/lesson-on-paper.ts';
import { questionsIn, questionsOf } from '../../../src/site/content/lesson-questions.ts';
import { fieldsOf } from '../../../src/site/pages/reference.ts';
import { folioIn } from '../../core/questions/demo.ts';
import { contentFolder, exchanged } from '../../site/content-folder.ts';

// The one line.
vi.mock('../../../components/words/registry.ts', async (registry) => ({
  ...(await registry<object>()),
  AskGrain: (await import('./ask-grain/word.ts')).AskGrain,
}));

const SIZE = 'content/courses/pleats/01-size.mdx';
const asked = (attributes: string) => `<AskGrain ${attributes}>\n\nWhich way does it run?\n\n</AskGrain>`;
const GRAIN = asked('piece="facing" runs="up"');

const saidOf = (text: string) =>
  findContentProblems(contentFolder(exchanged(SIZE, '<YourSize />', `${text}\n\n<YourSize />`)))
    .filter(({ file }) => file === SIZE)
    .map(({ message }) => message);

test('the content check reads its attributes, what they name, and its own mistakes', () => {
  const before = saidOf('');
  const more = (text: string) => saidOf(text).filter((message) => !before.includes(message));
  expect(more(GRAIN)).toEqual([]);
  expect(more(asked('piece="facing"'))).toEqual([expect.stringContaining('<AskGrain> runs')]);
  expect(more(asked('piece="facng" runs="up"'))).toEqual([
    'The lesson’s own size has no “facng”.',
    'The project “folio” has no piece “facng”.',
  ]);
  expect(more('<AskGrane />')[0]).toContain('There is no lesson word <AskGrane>');
});

test('the authoring reference and the text editors list it among the questions', () => {
  expect(Object.keys(words).indexOf('AskGrain')).toBe(Object.keys(words).indexOf('AskFold') + 1);
  expect(fieldsOf(words.AskGrain!.attributes).map(({ path }) => path.join())).toEqual(['piece', 'runs']);
  expect(editorFiles().get('.vscode/lesson-words.code-snippets')).toContain('<AskGrain');
});

test('it stands on paper and in the list of questions', () => {
  expect(lessonOnPaper(GRAIN).picks).toEqual([
    {
      ...{ kind: 'choice', id: 'grain of facing', right: ['up'], wrong: ['askew'] },
      words: ['Which way does it run?', ' '],
    },
  ]);
  expect(questionsOf(GRAIN).questions).toEqual([{ name: 'grain of facing', words: 'Which way does it run?' }]);
});

test('it comes up in a Practice set that names it', () => {
  const set = (name: string) =>
    `${GRAIN}\n\n<Practice of="panel width" also={["${name}"]}>\n\nHow wide?\n\n</Practice>`;
  expect(saidOf(set('grain of facing')).filter((message) => message.startsWith('also'))).toEqual([]);
  expect(saidOf(set('grain'))).toContain('also: no question of this lesson is called “grain”.');
  const [question] = questionsIn(GRAIN);
  expect(inSet(question!, folioIn('inch'), {})?.view).toEqual({
    ...{ name: 'grain of facing', piece: 'facing', runs: 'up' },
  });
});
