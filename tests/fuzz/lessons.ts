/**
 * Lesson texts: what passes the check holds nothing that runs, no raw HTML and no address of another host. A parser that
 * knows nothing of the check reads what the engine makes of the text: beside the engine's own names, no name may stand there.
 */
import { readFileSync } from 'node:fs';
import { mdxToJs } from 'satteri';
import ts from 'typescript';
import { wordCalled } from '../../components/words/index.ts';
import { lessonProblems } from '../../src/site/check/lesson-problems.ts';
import { linkProblems } from '../../src/site/check/link-problems.ts';
import { programsIn } from '../../src/site/check/programs-in.ts';
import { features, readLesson } from '../../src/site/content/lesson-text.ts';
import type { LessonEntry } from '../../src/site/content/read-content.ts';
import type { Chance } from './chance.ts';
import { count, family } from './family.ts';
import { ODD } from './texts.ts';

const FILE = 'content/courses/pleats/01-size.mdx';
const sound = readFileSync(new URL(`../fixtures/sound/${FILE}`, import.meta.url), 'utf8');
const HOST = 'other.example';
const EXPRESSIONS = [
  ...[
    'run()',
    'run',
    '/* a */',
    '/* a */ run() /* b */',
    '// a\nrun()',
    '"x"',
    "'x'",
    '`${run()}`',
    '`x`',
    '[1, 2]',
    '[run]',
  ],
  ...[
    '{"a": 1}',
    '{"a": run()}',
    '{a: 1}',
    '{["a"]: run()}',
    '{get a() { return run() }}',
    '{"__proto__": 1}',
    '{...run}',
  ],
  ...[
    '1',
    '-1',
    '1n',
    '1 + 1',
    'true',
    'null',
    'undefined',
    'this',
    'new run',
    'import("run")',
    'import.meta.url',
    '/run/',
    'a`b`',
  ],
  ...[
    'props.run',
    'props',
    'MDXContent',
    'arguments',
    'await run()',
    '() => run()',
    'async () => {}',
    'class {}',
    'function run() {}',
  ],
  ...[
    '<b>{run()}</b>',
    '<run.exit />',
    '<></>',
    '"\\u{72}un"',
    '\\u0072un()',
    '"*/" + run() + "/*"',
    '/**//**/ run',
    '"}"',
    "'\\''",
    '',
  ],
];
const ADDRESSES = [
  ...[
    'a.png',
    '/a.png',
    '../x/',
    'https://other.example/a.png',
    '//other.example/a',
    '/\\\\other.example',
    'https:other.example',
  ],
  ...[
    'javascript:run()',
    'JaVaScRiPt:run()',
    'java\tscript:run()',
    ' javascript:run()',
    'java&#x0A;script:run()',
    '&#106;avascript:run()',
  ],
  ...[
    'data:text/html,<script>run()</script>',
    'data:image/svg+xml,<svg onload=run()>',
    'vbscript:run',
    'blob:x',
    'file:///x',
    'a.js',
    'a.png?raw',
  ],
  ...[
    'mailto:a@b.example',
    'tel:1',
    'HTTPS://OTHER.example/',
    '\u0001javascript:run()',
    'x.svg',
    '%6a%61vascript:run()',
    '#a',
    '',
  ],
];
const ELEMENTS = [
  ...[
    'p',
    'b',
    'a',
    'img',
    'video',
    'audio',
    'source',
    'track',
    'script',
    'style',
    'link',
    'meta',
    'base',
    'iframe',
    'object',
    'embed',
  ],
  ...[
    'form',
    'input',
    'button',
    'svg',
    'math',
    'use',
    'foreignObject',
    'animate',
    'image',
    'template',
    'slot',
    'portal',
    'details',
  ],
  ...[
    'table',
    'td',
    'blockquote',
    'ins',
    'SCRIPT',
    'Script',
    'Size',
    'Tip',
    'Step',
    'YourSize',
    'Fragment',
    'run',
    'Run',
    'run.exit',
  ],
  ...[
    'process.exit',
    'svg:script',
    'x-run',
    'astro-island',
    'noscript',
    'marquee',
    'frame',
    'body',
    'html',
    'head',
    'title',
    'textarea',
    '',
  ],
];
const ATTRIBUTES = [
  ...[
    'href',
    'src',
    'srcset',
    'poster',
    'style',
    'class',
    'id',
    'title',
    'of',
    'name',
    'onclick',
    'onerror',
    'ONLOAD',
    'action',
    'formaction',
  ],
  ...[
    'srcdoc',
    'http-equiv',
    'content',
    'xlink:href',
    'set:html',
    'set:text',
    'is:raw',
    'client:load',
    'client:only',
    'server:defer',
    'define:vars',
  ],
  ...[
    'background',
    'cite',
    'ping',
    'data',
    'innerHTML',
    'dangerouslySetInnerHTML',
    'ref',
    'key',
    'slot',
    'is',
    'children',
    '__proto__',
    'run',
  ],
  ...[
    'aria-label',
    'data-x',
    'hidden',
    'controls',
    'target',
    'rel',
    'manifest',
    'lowsrc',
    'usemap',
    'to',
    'values',
    'xmlns',
    'transition:name',
  ],
];
const PIECES = [
  ...[
    'a',
    ' ',
    '\n',
    '\n\n',
    '**',
    '_',
    '`',
    '``',
    '```\n',
    '~~~js\n',
    '|',
    '- ',
    '> ',
    '    ',
    '\t',
    '# ',
    '$$',
    '$',
    '\\',
    '\\{',
    '&#123;',
  ],
  ...[
    '<!--',
    '-->',
    '{',
    '}',
    '{/*',
    '*/}',
    '</p>',
    '</Tip>',
    '<p>',
    '<Tip>',
    '[a]',
    '[',
    '](',
    ')',
    '[^1]',
    '[^1]: ',
    '---',
    '+++',
    ':::x\n',
  ],
  ...[
    '\nimport run from "x"\n',
    '\nexport const a = run()\n',
    '\nexport default run\n',
    '\nimport "x"\n',
    '<https://other.example/>',
    '&lt;script&gt;',
  ],
  ...[
    'https://other.example/',
    'www.other.example',
    '<?run?>',
    '<!DOCTYPE run>',
    '<![CDATA[run]]>',
    '[card width]',
    '[card width + run()]',
  ],
  ...ODD,
];

const valueFrom = (from: Chance): string =>
  from.of([
    () => `"${from.of(ADDRESSES)}"`,
    () => `'${from.of(ADDRESSES)}'`,
    () => `{${from.of(EXPRESSIONS)}}`,
    () => `{${JSON.stringify(from.of(ADDRESSES))}}`,
    () => '"background:url(https://other.example/a)"',
    () => '"https://other.example/a 2x, a.png 1x"',
    () => from.of(['run', '1', '""']),
  ])();
const attributeFrom = (from: Chance): string =>
  from.of([
    () => from.of(ATTRIBUTES),
    () => `${from.of(ATTRIBUTES)}=${valueFrom(from)}`,
    () => `${from.of(ATTRIBUTES)}=${valueFrom(from)}`,
    () => `{...${from.of(['run', '(run(), {})', '{"title": run()}', '{"a": 1}', 'props'])}}`,
    () => `{${from.of(EXPRESSIONS)}}`,
    () => `/* a */`,
  ])();
function elementFrom(from: Chance, depth: number): string {
  const name = from.of(ELEMENTS);
  const given = Array.from({ length: from.below(3) }, () => attributeFrom(from));
  const open = [name, ...given].join(' ');
  if (from.often(0.4)) return `<${open} />`;
  const inside = Array.from({ length: from.below(3) }, () => pieceFrom(from, depth - 1)).join('');
  return `<${open}>${from.often(0.3) ? `\n\n${inside}\n\n` : inside}</${name}>`;
}
const pieceFrom = (from: Chance, depth: number): string =>
  from.of([
    () => from.of(PIECES),
    () => from.of(PIECES),
    () => `{${from.of(EXPRESSIONS)}}`,
    () => (depth > 0 ? elementFrom(from, depth) : 'a'),
    () => `[a](${from.of(ADDRESSES)})`,
    () => `![a](${from.of(ADDRESSES)})`,
    () => `[a][r]\n\n[r]: ${from.of(ADDRESSES)}\n`,
    () => `![a][r]\n\n[r]: <${from.of(ADDRESSES)}> "run"\n`,
    () => `<${from.of(ADDRESSES)}>`,
  ])();

/** What the engine itself writes into a page. */
const ENGINE = new Set([
  '_createMdxContent',
  'MDXContent',
  'MDXLayout',
  '_components',
  '_jsx',
  '_jsxs',
  '_Fragment',
  'props',
  'components',
  'wrapper',
  'Object',
  'assign',
  'children',
  'jsx',
  'jsxs',
  'Fragment',
  'type',
  'href',
  '_missingMdxReference',
  'Error',
  'id',
  'component',
  'undefined',
]);
const came = new Map<string, number>();

export const lessons = family<string>(
  {
    name: 'lessons',
    makes: (from) => {
      const loose = Array.from({ length: 1 + from.below(4) }, () => pieceFrom(from, 3)).join('');
      if (from.often(0.3)) return loose;
      const at = from.below(sound.length);
      return sound.slice(0, at) + loose + sound.slice(at);
    },
    broken(text) {
      const entry = { text, file: FILE, course: 'pleats', slug: 'size', lesson: readLesson(text) } as LessonEntry;
      const said = [
        ...lessonProblems(entry, '/nowhere', { project: undefined, worked: undefined, projects: [] }),
        ...linkProblems(entry, new Map()),
      ];
      const refused = programsIn(text);
      if (refused.length > 0) {
        count(came, 'refused');
        return said.some(({ severity }) => severity === 'error')
          ? []
          : [`the build refuses what the check lets pass: ${refused[0]!.message}`];
      }
      count(came, text.includes('{') || text.includes('<') ? 'passed, with braces or words' : 'passed');
      return runsIn(text);
    },
    tells: (text) => text,
  },
  came,
);

/** The top of a page as Astro takes it off (packages/internal-helpers/src/frontmatter.ts of its version 7). */
const TOP = /(?:^\uFEFF?|^\s*\n)(?:---|\+\+\+)([\s\S]*?\n)(?:---|\+\+\+)/;

function runsIn(text: string): string[] {
  const found: string[] = [];
  const top = TOP.exec(text);
  if (top && /^\s*layout\s*[:=]/m.test(top[1]!)) found.push('the top names a layout');
  const body = top ? text.replace(top[0], top[0].replace(/[^\r\n]/g, ' ')) : text;
  const { code } = mdxToJs(body, { features: { ...features, smartPunctuation: true } });
  const visit = (node: ts.Node): void => {
    if (ts.isIdentifier(node) && !ENGINE.has(node.text) && !isOwnName(node))
      found.push(`the name ${node.text} is a program`);
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText().replace(/^"|"$/g, '');
      if (/^(?:set:|client:|server:|is:|on[a-z]|style$|dangerously|innerHTML)/i.test(name))
        found.push(`the attribute ${name}`);
      const text = ts.isStringLiteral(node.initializer) ? node.initializer.text : '';
      if (/^(?:src|poster|srcset|data|background)$/i.test(name) && (!safe(text) || text.includes(HOST)))
        found.push(`${name} loads ${text}`);
      if (/^(?:href|xlink:href|action|formaction)$/i.test(name) && !safe(text)) found.push(`${name} runs ${text}`);
    }
    const tag = ts.isCallExpression(node) ? node.arguments[0] : undefined;
    if (
      tag &&
      ts.isStringLiteral(tag) &&
      /^(?:script|style|iframe|object|embed|base|meta|link|form|svg|math)$/i.test(tag.text)
    )
      found.push(`the element ${tag.text}`);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile('lesson.js', code, ts.ScriptTarget.Latest, true, ts.ScriptKind.JS));
  return found;
}

/** Whether a browser goes to a page, a letter box or a telephone there (WHATWG URL), and runs nothing. */
const safe = (address: string): boolean =>
  !URL.canParse(address, 'http://site.example/') ||
  ['http:', 'https:', 'mailto:', 'tel:'].includes(new URL(address, 'http://site.example/').protocol);

/** The key of a record, or a lesson word or element that the engine looks up in its list. */
const isOwnName = (node: ts.Identifier): boolean => {
  const { parent } = node;
  if (ts.isPropertyAssignment(parent) && parent.name === node) return true;
  if (ts.isPropertyAccessExpression(parent) && parent.name === node)
    return parent.expression.getText() === '_components';
  if (ts.isBindingElement(parent)) return true;
  return WORDS.has(node.text);
};
const WORDS = { has: (name: string) => wordCalled(name) !== undefined };
