/** A lesson is text: nothing that it holds is ever run, and nothing that it loads comes from another host. */
import { cpSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { contentFolder, exchanged } from '../content-folder.ts';

const SIZE = 'content/courses/pleats/01-size.mdx';

const mistakesOf = (part: string, root = contentFolder(exchanged(SIZE, '<YourSize />', part))): string[] =>
  findContentProblems(root)
    .filter(({ severity, file }) => severity === 'error' && file === SIZE)
    .map(({ message }) => message);

test.each([
  ['a program between two comments', '{/* a */ process.exit() /* b */}'],
  ['a program behind a comment', '{/* a */ process.exit()}'],
  ['a program behind a line that is a comment', '{// a\nprocess.exit()}'],
  ['a text in braces', '{"text"}'],
  ['a program in an attribute', '<p title={process.exit()}>x</p>'],
  ['a template in an attribute', '<p title={`x`}>x</p>'],
  ['an element in an attribute', '<p title={<b>{process.exit()}</b>}>x</p>'],
  ['a list in an attribute of an element', '<p title={["x"]}>x</p>'],
  ['attributes spread out', '<p {...(process.exit(), {})}>x</p>'],
  ['a dotted name', '<process.exit />'],
  ['a dotted name with a capital', '<Size.constructor of="seam" />'],
  ['a name with a colon', '<svg:script />'],
  ['a name that every object has', '<__proto__ />'],
  ['a name of the language', '<Function />'],
  ['a fragment by its name', '<Fragment set:html="<b>x</b>" />'],
  ['markup in an attribute', '<p set:html="<script>alert(1)</script>" />'],
  ['a directive of the framework', '<YourSize client:load />'],
  ['a handler', '<p onclick="alert(1)">x</p>'],
  ['a look of its own', '<p style="background: url(https://example.org/a.png)">x</p>'],
  ['an element that nobody listed', '<dialog open>x</dialog>'],
  ['an element of a drawing', '<svg><use href="https://example.org/a.svg#b" /></svg>'],
  ['a form', '<input type="text" />'],
  ['a recording of another host', '<video src="https://example.org/a.mp4" />'],
  ['one without its protocol', '<video src="//example.org/a.mp4" />'],
  ['one with backslashes', '<video src="\\\\example.org\\a.mp4" />'],
  ['one with a tab in its protocol', '<video src="ht&Tab;tps://example.org/a.mp4" />'],
  ['one in braces', '<video src={"https://example.org/a.mp4"} />'],
  ['the picture of a recording', '<video poster="https://example.org/a.png" />'],
  ['captions of another host', '<video src="a.mp4"><track src="https://example.org/a.vtt" /></video>'],
  ['a picture of another host', '![x](https://example.org/a.png)'],
  ['one with backslashes', '![x](<\\\\\\\\example.org\\a.png>)'],
  ['one by reference', '![x][a]\n\n[a]: https://example.org/a.png'],
  ['a link that is a program', '[x](javascript:alert)'],
  ['one with a blank before it', '<a href=" javascript:alert(1)">x</a>'],
  ['one with a tab in it', '[x](java&Tab;script:alert)'],
  ['one in braces', '<a href={"javascript:alert(1)"}>x</a>'],
  ['a key that is no key', '<AskSize of="seam" wrong={[{"__proto__": {"sum": "seam"}}]}>\n\n?\n\n</AskSize>'],
  ['an import', 'import x from "./x.js"'],
])('%s is a mistake', (_, part) => {
  expect(mistakesOf(part)).not.toEqual([]);
});

test.each([
  ['a comment', '{/* a */}'],
  ['two comments', '{/* a */ /* b */}'],
  ['a comment with stars and braces', '{/* a * } { ** / */}'],
  ['plain elements', '<p class="quiet" lang="fa" dir="rtl">x <b>y</b><br /></p>'],
  ['a table in elements', '<table><tbody><tr><td colspan={2}>x</td></tr></tbody></table>'],
  ['a recording beside the lesson', '<video src="a.mp4" controls><track src="a.vtt" kind="captions" /></video>'],
  [
    'a link to another host',
    '<a href="https://example.org/">x</a> [y](https://example.org/) [z](mailto:a@example.org)',
  ],
  ['a fragment', '<>x</>'],
])('%s is none', (_, part) => {
  expect(mistakesOf(part)).toEqual([]);
});

test.each(['pic.js', 'pic.ts', 'pic.svelte', 'pic.mdx', 'pic.json', 'pic.png.js', 'pic?raw'])(
  'a file that is no picture is not taken in as one: %s',
  (name) => {
    const root = contentFolder(exchanged(SIZE, '<YourSize />', `![x](${name})`));
    writeFileSync(path.join(root, path.dirname(SIZE), name), 'process.exit()');
    expect(mistakesOf('', root)).not.toEqual([]);
  },
);

test('a picture of the machine that lies outside the content is not published', () => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', '![x](../../../private.png) ![y](50%.png)'));
  writeFileSync(path.join(root, 'private.png'), '');
  expect(mistakesOf('', root)).toHaveLength(2);
});

test.each([
  ['<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0h9" /></svg>', 0],
  ['<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>', 1],
  ['<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"></svg>', 1],
  ['<svg xmlns="http://www.w3.org/2000/svg"><a href="javascript:alert(1)"></a></svg>', 1],
])('a drawing is one that runs nothing: %s', (drawing, mistakes) => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', '![x](fold.svg)'));
  writeFileSync(path.join(root, path.dirname(SIZE), 'fold.svg'), drawing);
  expect(mistakesOf('', root)).toHaveLength(mistakes);
});

test('a picture beside the lesson is', () => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', '![x](pictures/the%20panel.JPG)'));
  mkdirSync(path.join(root, path.dirname(SIZE), 'pictures'));
  const photo = fileURLToPath(new URL('../../../components/words/picture/example/sewn-hem.jpg', import.meta.url));
  cpSync(photo, path.join(root, path.dirname(SIZE), 'pictures/the panel.JPG'));
  expect(mistakesOf('', root)).toEqual([]);
});

test.each([
  ['ends with three pluses', (text: string) => text.replace('session: 1\n---', 'session: 1\n+++\nlayout: x\n---')],
  [
    'ends in a line that goes on',
    (text: string) => text.replace('session: 1\n---', 'session: 1\n--- {process.exit()}'),
  ],
  ['stands below a blank line', (text: string) => `\n${text}`],
  ['is of pluses', (text: string) => text.replaceAll('---', '+++')],
])('the top of a lesson that %s is a mistake', (_, change) => {
  const [[file, text]] = Object.entries(exchanged(SIZE, '<YourSize />', '<YourSize />')) as [[string, string]];
  expect(change(text)).not.toBe(text);
  expect(mistakesOf('', contentFolder({ [file]: change(text) }))).not.toEqual([]);
});

test('an address with a sign that is none is told, and the check goes on', () => {
  const root = contentFolder(exchanged(SIZE, '<YourSize />', '[x](#50%) [y](../50%/)'));
  const about = findContentProblems(root).filter(({ file }) => file === SIZE);
  expect(about.map(({ severity }) => severity)).toEqual(['warning', 'warning']);
});
