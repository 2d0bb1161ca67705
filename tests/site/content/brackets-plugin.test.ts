/** The sizes in brackets that stand in the prose of a lesson, as the engine that builds the pages makes them. */
import { mdxToJs, markdownToHtml } from 'satteri';
import { expect, test } from 'vitest';
import { bracketsPlugin } from '../../../src/site/content/brackets-plugin.ts';
import { lessonOnPaper } from '../../../src/site/content/lesson-on-paper.ts';
import { questionsOf, stepsOf } from '../../../src/site/content/lesson-questions.ts';
import { features, readLesson } from '../../../src/site/content/lesson-text.ts';

const options = { features, mdastPlugins: [bracketsPlugin] };
/** The formulas of the sizes in a lesson. */
const sizes = (text: string) =>
  [...mdxToJs(text, options).code.matchAll(/_jsx\(Size, \{ of: "([^"]*)" \}\)/gu)].map(([, of]) => of);

const LESSON = String.raw`## The [pockets] pockets

Add [2 * seam] to it, **[ease] too**. See [the words](../words/), \[this\] and ${'`[that]`'}.[^1]

- [ ] cut [width]
- [x] press

| a       | b |
| ------- | - |
| [depth] | 1 |

<AskSize of="seam">

How much is [2 *
seam]?

</AskSize>

[^1]: A note.
`;

test('each is a size, and nothing else with brackets is', () => {
  expect(sizes(LESSON)).toEqual(['pockets', '2 * seam', 'ease', 'width', 'depth', '2 * seam']);
});

test('paper and the lists of questions read the same', () => {
  const { shows, questions } = lessonOnPaper(LESSON);
  expect(shows).toEqual([['The ', { size: 'pockets' }, ' pockets']]);
  expect(questions[0]!.words).toEqual(['How much is ', { size: '2 * seam' }, '?', ' ']);
  expect(questionsOf(LESSON).questions).toEqual([{ name: 'seam', words: 'How much is …?' }]);
  expect(stepsOf(LESSON)).toEqual(['The [pockets] pockets']);
});

test('the address of a heading is made of its words alone', () => {
  expect(readLesson(LESSON).anchors).toEqual(['the--pockets']);
});

test('in what is no lesson, brackets stay', () => {
  expect(markdownToHtml('Add [2 * seam].', options)).toMatchObject({ html: expect.stringContaining('[2 * seam]') });
});
