/**
 * No text that the check lets pass, and no text that the live preview shows, holds anything that runs. What the engine
 * makes of the text is asked, by a parser that knows nothing of the check: a name that only a program can use is put
 * into every corner, and must never come out as a name.
 */
import path from 'node:path';
import fc from 'fast-check';
import { mdxToJs } from 'satteri';
import ts from 'typescript';
import { expect, test } from 'vitest';
import { lessonProblems } from '../../../src/site/check/lesson-problems.ts';
import { linkProblems } from '../../../src/site/check/link-problems.ts';
import { onlyTexts, programsIn } from '../../../src/site/check/programs-in.ts';
import { features, readLesson } from '../../../src/site/content/lesson-text.ts';
import type { LessonEntry } from '../../../src/site/content/read-content.ts';
import { lessonToShow } from '../../../src/site/live/lesson-to-show.ts';
import { runs } from '../../random.ts';
import { GOOD } from '../content-folder.ts';

const FILE = 'content/courses/pleats/01-size.mdx';
const HOST = 'other.example';

/** The top of a page as Astro takes it off (packages/internal-helpers/src/frontmatter.ts of its version 7). */
const TOP = /(?:^\uFEFF?|^\s*\n)(?:---|\+\+\+)([\s\S]*?\n)(?:---|\+\+\+)/;

/** Names, and addresses of another host that are loaded, in what the build compiles a lesson to. */
function runsIn(text: string): string[] {
  const top = TOP.exec(text);
  const found = top && /^\s*layout\s*[:=]/m.test(top[1]!) ? ['layout'] : [];
  const body = top ? text.replace(top[0], top[0].replace(/[^\r\n]/g, ' ')) : text;
  const { code } = mdxToJs(body, { features: { ...features, smartPunctuation: true } });
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && /canary/i.test(node.text)) found.push(node.text);
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText().replace(/^"|"$/g, '');
      if (/^(set:|client:|is:|on|style$)/.test(name)) found.push(name);
      if (/^(src|poster|srcset)$/.test(name) && node.initializer.getText().includes(HOST)) found.push(name);
    }
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('lesson.js', code, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS));
  return found;
}

const expression = fc.constantFrom(
  ...['canary()', '/* a */', '/* a */ /* b */', '/* a */ canary()', '/* a */ canary() /* b */', '/**/ canary /**/'],
  ...[
    '// a\ncanary()\n',
    '// a\n',
    '"x"',
    "'x'",
    '[1, "a"]',
    '{"a": {"b": 1}}',
    '{"a": canary()}',
    '[canary]',
    '1 + 1',
  ],
  ...['`${canary()}`', '`x`', '"}" + canary()', '/* } */ canary()', '"/*", canary(), "*/"', '/[*/]/, canary(), /[/*]/'],
  ...[
    "'a' /* ' */, canary()",
    '{"__proto__": 1}',
    '<b>{canary()}</b>',
    '<></>',
    '-2',
    'true',
    '',
    '"\\u0022 + canary()"',
  ],
  ...['...canary', '...(canary(), {})', 'frontmatter.canary', '{}', '\u2028canary()', '/* \u2028 */'],
);
const value = fc.oneof(
  fc.constantFrom('"x"', "'y'", `"https://${HOST}/a.png"`, `"//${HOST}/a"`, '"javascript:canary()"', '"{canary()}"'),
  expression.map((text) => `{${text}}`),
);
const attribute = fc.oneof(
  fc
    .tuple(
      fc.constantFrom(
        'title',
        'class',
        'src',
        'href',
        'of',
        'id',
        'set:html',
        'onclick',
        'client:load',
        'style',
        'canary',
      ),
      fc.option(value),
    )
    .map(([name, given]) => (given === null ? name : `${name}=${given}`)),
  expression.map((text) => `{${text}}`),
  fc.constantFrom('{...canary}', '{...(canary(), {})}', '{...{"title": canary()}}'),
);
const { word } = fc.letrec<{ word: string; piece: string }>((tie) => ({
  piece: fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom('a', ' ', '\n', '\n\n', '**', '`', '``', '|', '- ', '> ', '    ', '#') },
    fc.constantFrom(
      '\\',
      '\\{',
      '&#123;canary()&#125;',
      '&#96;',
      '$$',
      '~~~\n',
      '```\n',
      '\n---\n',
      '\n+++\n',
      '<!--',
      '$',
    ),
    fc.constantFrom(
      `![x](https://${HOST}/a.png)`,
      `![x][r]\n\n[r]: //${HOST}/a\n`,
      '[x](javascript:canary)',
      '](',
      '[',
    ),
    fc.constantFrom(
      '\nimport canary from "x"\n',
      '\nexport const a = canary()\n',
      '{/*',
      '*/}',
      '}',
      '{',
      '\u2028',
      '/>',
    ),
    expression.map((text) => `{${text}}`),
    tie('word'),
  ),
  word: fc
    .tuple(
      fc.constantFrom(
        'p',
        'b',
        'Size',
        'Tip',
        'YourSize',
        'Fragment',
        'canary.x',
        'Canary',
        '_canary',
        'video',
        'script',
        'a',
        '',
      ),
      fc.array(attribute, { maxLength: 2 }),
      fc.option(fc.array(tie('piece'), { maxLength: 3 })),
    )
    .map(([name, given, inside]) => {
      const open = [name, ...given].join(' ');
      return inside ? `<${open}>${inside.join('')}</${name}>` : `<${open} />`;
    }),
}));
const loose = fc.array(
  fc.oneof(
    { weight: 2, arbitrary: word },
    { weight: 2, arbitrary: expression.map((text) => `{${text}}`) },
    fc.constantFrom('\n\n', ' ', 'a', '`', '{/* a */}', '**b**', '<Tip>\n\nx\n\n</Tip>'),
  ),
  { maxLength: 4 },
);
const sound = GOOD[FILE]!;
/** A sound lesson with something put in somewhere, or a lesson of such things alone. */
const lesson = fc.oneof(
  fc
    .tuple(fc.nat(sound.length), loose)
    .map(([at, pieces]) => `${sound.slice(0, at)}${pieces.join('')}${sound.slice(at)}`),
  fc
    .tuple(fc.constantFrom('', '---\ntitle: x\n---\n', '\n---\nlayout: x\n---\n'), loose)
    .map(([top, text]) => top + text.join('')),
);

test('what passes runs nothing and loads nothing of another host', () => {
  const count = { passed: 0, withBraces: 0, refused: 0, shown: 0 };
  fc.assert(
    fc.property(lesson, (text) => {
      const entry = { text, file: FILE, course: 'pleats', slug: 'size', lesson: readLesson(text) } as LessonEntry;
      const problems = [
        ...lessonProblems(entry, '/nowhere', { project: undefined, worked: undefined, projects: [] }),
        ...linkProblems(entry, new Map()).map((one) => ({ ...one, file: FILE, line: 1, column: 1 })),
      ];
      if (programsIn(text).length === 0) {
        count.passed += 1;
        if (text.includes('{')) count.withBraces += 1;
        expect(runsIn(text)).toEqual([]);
      } else {
        count.refused += 1;
        // What the build would refuse has been said by the check.
        expect(problems.filter(({ severity }) => severity === 'error')).not.toEqual([]);
      }
      const shown = lessonToShow(entry, problems);
      if (programsIn(shown).length === 0) {
        count.shown += 1;
        expect(runsIn(shown)).toEqual([]);
      }
    }),
    runs(2500),
  );
  // The test would prove nothing if hardly anything passed.
  expect(count.passed).toBeGreaterThan(200);
  expect(count.withBraces).toBeGreaterThan(100);
  expect(count.refused).toBeGreaterThan(600);
  expect(count.shown).toBeGreaterThan(2400);
});

test('the name comes out where a program gets through', () => {
  expect(runsIn('{/* a */ canary() /* b */}')).toEqual(['canary']);
  expect(runsIn(`<video src="https://${HOST}/a.mp4" />`)).toEqual(['src']);
  expect(runsIn('<p set:html="x" />')).toEqual(['set:html']);
});

test.each([
  ['an address that is the site’s own on http alone', '<audio src="http:other.example/a.mp3" controls />'],
  ['one that is its own on https alone', '<audio src="https:other.example/a.mp3" controls />'],
  ['a layout', '---\nlayout: ../x.astro\n---\n'],
  ['a layout in other words of YAML', '---\n{ "layout": x }\n---\n'],
])('%s is refused', (_, text) => {
  expect(programsIn(text)).toHaveLength(1);
});

test('the build compiles no lesson that is more than a text, whatever the check said before', () => {
  const root = process.cwd();
  const { transform } = onlyTexts(root);
  const { handler } = transform as { handler: (this: object, text: string, id: string) => unknown };
  const compile = (text: string, file: string) =>
    handler.call(
      {
        error({ message }: Error) {
          throw new Error(message);
        },
      },
      text,
      path.join(root, file),
    );
  expect(() => compile(`${sound}\n{/* a */ exit() /* b */}\n`, FILE)).toThrow('Nothing of this lesson is shown.');
  expect(() => compile(sound, FILE)).not.toThrow();
  // A page of the kit's own is a program.
  expect(() => compile('import x from "y"', 'src/pages/authoring/first-lesson.mdx')).not.toThrow();
});
