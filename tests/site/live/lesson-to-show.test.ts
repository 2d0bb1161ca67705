import { mdxToJs } from 'satteri';
import { expect, test } from 'vitest';
import { examine } from '../../../src/site/check/find-content-problems.ts';
import { lessonToShow } from '../../../src/site/live/lesson-to-show.ts';
import { readContent } from '../../../src/site/content/read-content.ts';
import { readLesson } from '../../../src/site/content/lesson-text.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';

function shown(part: string, by: string, lastReadable?: string): string {
  const root = contentFolder(exchanged(SIZE, part, by));
  const content = readContent(root);
  const problems = examine(content, root).problems.filter(({ file }) => file === SIZE);
  return lessonToShow(content.lessons[0]!, problems, lastReadable);
}

test('a mistake stands in the place of its word, and the rest is as written', () => {
  const text = shown('<Size of="panel width" />', '<Size of="panel widht" />');
  expect(text).toContain(
    'The panel is <mark data-mistake="">{"8:24 There is no measure called “panel widht”. Do you mean “panel width”?"}</mark> wide',
  );
  expect(text).toContain('<YourSize />');
  expect(() => mdxToJs(text)).not.toThrow();
});

test('several mistakes of one word stand together; a word inside a wrong word goes with it', () => {
  const text = shown(
    'How wide is a pocket?',
    '<Sice />\n\n</AskSize>\n\n<Aske off="x">\n\n<Siez />\n\n</Aske>\n\n<AskSize of="seam">\n\n?',
  );
  expect(text.match(/data-mistake/g)).toHaveLength(3);
  expect(text).not.toContain('<Siez />');
  expect(text).toContain('<AskSize of="seam">');
});

test('maths that cannot be set is marked too', () => {
  expect(shown('$$w + 2e$$', '$$w + \\foo$$')).toContain(
    '{"8:60 This maths cannot be set: Undefined control sequence: \\\\foo."}',
  );
});

test('a lesson that cannot be read shows its last readable state', () => {
  expect(shown('</AskSize>', '', 'as it was')).toBe('as it was');
});

test('one that never was readable shows what is wrong, under its own title', () => {
  const text = shown('</AskSize>', '');
  expect(text).toMatch(/^---\ntitle: Size it\n[^]*---\n<mark data-mistake="">/);
  expect(text).toContain('<AskSize> is opened here and never closed.');
  expect(readLesson(text).words.map(({ name }) => name)).toEqual(['mark']);
});

test('a remark on running text stands at the end of its paragraph, and the text stays', () => {
  const text = shown('<YourSize />', 'Cut it 5 in wide,\nand **press** it.\n\nThe next one.');
  expect(text).toContain(
    'Cut it 5 in wide,\nand **press** it. <mark data-mistake="warning">{"10:8 “5 in” is typed, so it stays when “panel width” changes. Write <Size of=\\"panel width\\" />."}</mark>',
  );
  expect(() => mdxToJs(text)).not.toThrow();
});

test('a remark on a heading stands below it, so that its address stays', () => {
  const text = shown('<YourSize />', '## A panel 5 in wide');
  expect(text).toContain('## A panel 5 in wide\n\n<mark data-mistake="warning">');
  expect(readLesson(text).anchors).toEqual(['a-panel-5-in-wide']);
});

test('a remark on a cell stays in its cell', () => {
  const text = shown('<YourSize />', '| part | size |\n| --- | --- |\n| seam | 1/4 in |');
  expect(text).toMatch(/\| seam \| 1\/4 in <mark data-mistake="warning">.*<\/mark> \|/);
  expect(() => mdxToJs(text)).not.toThrow();
});

test('a remark on a question stands before it', () => {
  const text = shown('of="card width + 2 * ease"', 'of="card width - card width"');
  expect(text).toMatch(/<mark data-mistake="warning">\{"12:14 This question has no answer[^\n]*<\/mark>\n\n<AskSize/);
  expect(() => mdxToJs(text)).not.toThrow();
});
