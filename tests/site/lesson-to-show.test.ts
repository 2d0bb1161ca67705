import { mdxToJs } from 'satteri';
import { expect, test } from 'vitest';
import { examine } from '../../src/site/find-content-problems.ts';
import { lessonToShow } from '../../src/site/live/lesson-to-show.ts';
import { readContent } from '../../src/site/read-content.ts';
import { readLesson } from '../../src/site/lesson-text.ts';
import { contentFolder, exchanged } from './content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';

function shown(part: string, by: string, lastReadable?: string): string {
  const root = contentFolder(exchanged(SIZE, part, by));
  const content = readContent(root);
  const mistakes = examine(content, root).problems.filter(
    ({ file, severity }) => file === SIZE && severity === 'error',
  );
  return lessonToShow(content.lessons[0]!, mistakes, lastReadable);
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
  expect(shown('$w + 2e$', '$w + \\foo$')).toContain(
    '{"8:59 This maths cannot be set: Undefined control sequence: \\\\foo."}',
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
