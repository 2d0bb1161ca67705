/** Every text that an author writes is read for formulas in brackets and for typed numbers, wherever it stands. */
import { describe, expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { contentFolder, exchanged, GOOD } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const COURSE = 'content/courses/pleats/course.yaml';
const LESSON = 'content/courses/pleats/01-size.mdx';

/** What the check says of a folder, as an author reads it. */
const said = (changes: Record<string, string | undefined>): string[] =>
  findContentProblems(contentFolder(changes)).map(({ file, line, column, severity, message, fix }) =>
    `${file.split('/').at(-1)} ${line}:${column} ${severity} ${message} ${fix ?? ''}`.trim(),
  );

const lesson = (text: string) => ({ [LESSON]: `${GOOD[LESSON]}\n${text}\n` });
/** The last line of a lesson made by `lesson` from one line. */
const LAST = GOOD[LESSON]!.split('\n').length + 1;

/** Each place where a text can stand; `§` is where the text goes. */
const places: [where: string, changes: (text: string) => Record<string, string>, file: string, line: number][] = [
  ['the title of a project', (text) => exchanged(PROJECT, 'title: Folio', `title: '§${text}'`), 'project.yaml', 1],
  [
    'the summary of a project, folded over lines',
    (text) => exchanged(PROJECT, 'title: Folio', `title: Folio\nsummary: >-\n  A folio,\n  §${text}`),
    'project.yaml',
    4,
  ],
  [
    'the note of a measure',
    (text) => exchanged(PROJECT, 'ease: { in: 1/8, mm: 3 }', `ease: { in: 1/8, mm: 3, note: "§${text}" }`),
    'project.yaml',
    4,
  ],
  [
    'the note of a piece',
    (text) =>
      exchanged(
        PROJECT,
        'from: lining\n    size: [panel width, strip',
        `from: lining\n    note: '§${text}'\n    size: [panel width, strip`,
      ),
    'project.yaml',
    13,
  ],
  [
    'the note of a material',
    (text) => exchanged(PROJECT, 'lining: lawn', `lining: { use: lawn, note: '§${text}' }`),
    'project.yaml',
    9,
  ],
  [
    'the note of an option',
    (text) => exchanged(PROJECT, 'drops: [facing] }', `drops: [facing], note: '§${text}' }`),
    'project.yaml',
    21,
  ],
  [
    'the note of a step',
    (text) => exchanged(PROJECT, 'options:', `steps:\n  - { pleat: strip, note: '§${text}' }\noptions:`),
    'project.yaml',
    21,
  ],
  [
    'a step in words of its own',
    (text) => exchanged(PROJECT, 'options:', `steps:\n  - { pleat: strip, says: '§${text}' }\noptions:`),
    'project.yaml',
    21,
  ],
  ['the title of a course', (text) => exchanged(COURSE, 'title: Pleats', `title: '§${text}'`), 'course.yaml', 1],
  ['the summary of a course', (text) => exchanged(COURSE, 'Fold pockets.', `'§${text}'`), 'course.yaml', 2],
  [
    'the title of a session',
    (text) => exchanged(COURSE, 'title: First evening', `title: '§${text}'`),
    'course.yaml',
    6,
  ],
  ['the title of a lesson', (text) => exchanged(LESSON, 'title: Size it', `title: '§${text}'`), '01-size.mdx', 2],
  ['the summary of a lesson', (text) => exchanged(LESSON, 'Four sums.', `'§${text}'`), '01-size.mdx', 3],
  ['prose', (text) => lesson(`§${text}`), '01-size.mdx', LAST],
  ['a cell of a table', (text) => lesson(`| a | b |\n| - | - |\n| c | §${text} |`), '01-size.mdx', LAST + 2],
  ['a hint', (text) => lesson(`<AskSize id="h" of="panel width" hint="§${text}">How?</AskSize>`), '01-size.mdx', LAST],
  [
    'what is said to a wrong sum',
    (text) => lesson(`<AskSize id="h" of="panel width" slips={{"card width": "§${text}"}}>How?</AskSize>`),
    '01-size.mdx',
    LAST,
  ],
  [
    'another sentence for a slip',
    (text) => lesson(`<AskSize id="h" of="panel width" reword={{"left-out": "§${text}"}}>How?</AskSize>`),
    '01-size.mdx',
    LAST,
  ],
  [
    'what is said to a wrong choice',
    (text) => lesson(`<AskChoice id="h" right={["a"]} wrong={{"b": "§${text}"}}>Which?</AskChoice>`),
    '01-size.mdx',
    LAST,
  ],
  [
    'an answer to choose',
    (text) => lesson(`<AskChoice id="h" right={["a", "§${text}"]} wrong={["b"]}>Which?</AskChoice>`),
    '01-size.mdx',
    LAST,
  ],
  [
    'a question of a set',
    (text) => lesson(`<Practice id="h" asks={{"2 * ease": "§${text}"}}>Practise.</Practice>`),
    '01-size.mdx',
    LAST,
  ],
  [
    'what really happens',
    (text) => lesson(`<Predict id="h" guesses={["a", "b"]} shows="§${text}">Guess.</Predict>`),
    '01-size.mdx',
    LAST,
  ],
];

/** The changes without their mark, and where the text begins. */
function at(changes: Record<string, string>): { changes: Record<string, string>; column: number } {
  const [file, text] = Object.entries(changes)[0]!;
  const before = text.slice(0, text.indexOf('§'));
  return { changes: { [file]: text.replace('§', '') }, column: before.length - before.lastIndexOf('\n') };
}

describe.each(places)('in %s', (where, make, file, line) => {
  test('a formula that cannot be worked out is a mistake at its place', () => {
    const { changes, column } = at(make('Mind [eese] here.'));
    const found = said(changes).filter((one) => one.includes(' error '));
    expect(found).toHaveLength(1);
    // Behind “Mind [”.
    expect(found[0]).toContain(`${file} ${line}:${column + 6} error `);
    expect(found[0]).toContain('“eese”');
    expect(found[0]).toContain('“ease”');
  });

  test('one that can be is none, nor is an option that leaves its piece out', () => {
    const { changes } = at(make('Mind [2 * ease] and [facing width] here.'));
    expect(said(changes).filter((one) => / (error|warning “)/.test(one))).toEqual([]);
  });

  test('a typed size that a measure has is a warning with what says it', () => {
    const { changes, column } = at(make('A panel of 5 in.'));
    const bracket = file === '01-size.mdx' && (where === 'prose' || where.startsWith('a cell'));
    const fix = bracket ? 'Write <Size of="panel width" />.' : 'Write [panel width].';
    expect(said(changes).filter((one) => one.includes(' warning “'))).toEqual([
      `${file} ${line}:${column + 11} warning “5 in” is typed, so it stays when “panel width” changes. ${fix}`,
    ]);
  });
});

describe('in files of no project', () => {
  test.each([
    ['the glossary', 'content/glossary.yaml', "facing: 'It is [seam] wide.'\n", '1:16'],
    ['the site', 'content/site.yaml', `${GOOD['content/site.yaml']}summary: 'Pleats [seam] wide.'\n`, ':18'],
  ])('a formula in %s is a mistake', (_, file, text, place) => {
    const found = said({ [file]: text }).filter((one) => one.includes(' error '));
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(`${place} error “[seam]” cannot be worked out: this file belongs to no project.`);
  });

  test('so it is in a lesson without a project', () => {
    const { [COURSE]: course } = exchanged(COURSE, 'project: folio\n', '');
    const text = '---\ntitle: Words\nsummary: Words.\nminutes: 5\n---\n\nA seam, [seam] wide.\n';
    const found = said({ [COURSE]: course, [LESSON]: text, 'content/courses/pleats/02-fold.mdx': text });
    expect(found.filter((one) => one.includes(' error '))).toEqual([
      '01-size.mdx 7:9 error “[seam]” cannot be worked out: there is no project here. Write \\[ where a bracket is meant.',
      '02-fold.mdx 7:9 error “[seam]” cannot be worked out: there is no project here. Write \\[ where a bracket is meant.',
    ]);
  });
});

test('links, boxes of lists, footnotes, code and brackets behind a backslash are no formulas', () => {
  const text = String.raw`See [the fold](../fold/) and \[this\], or ${'`[that]`'}.[^1]

- [ ] cut
- [x] press

[^1]: A note.`;
  expect(said(lesson(text))).toEqual([]);
});

test('a formula that holds marks stays as it is, and says so', () => {
  expect(said(lesson('It is [*seam*] wide.'))).toEqual([
    `01-size.mdx ${LAST}:7 error “[seam]” holds more than a formula, and stays as it is. Write \\[ where a bracket is meant.`,
  ]);
});

test('the text of a set of practice takes no size, in brackets as little as by a lesson word', () => {
  const found = said(lesson('<Practice of="panel width">\n\nA seam of [seam]: how wide?\n\n</Practice>'));
  expect(found).toEqual([
    `01-size.mdx ${LAST + 2}:11 error In practice the numbers change, and this size would not. Take it out: each exercise lists what is given.`,
  ]);
});

describe('counts', () => {
  const counted = {
    ...exchanged(PROJECT, '  seam: { in', '  pockets: { count: 5, label: Number of pockets }\n  seam: { in'),
  };
  const project = counted[PROJECT]!.replace('pockets: 3', 'pockets: pockets');

  test.each([
    ['in prose', 'It has five stepped pockets.', 'Write <Size of="pockets" />.'],
    ['in digits', 'It has 5 pockets.', 'Write <Size of="pockets" />.'],
  ])('a count that a measure has is a warning, %s', (_, text, fix) => {
    const found = said({ [PROJECT]: project, ...lesson(text) });
    expect(found).toEqual([expect.stringContaining(`01-size.mdx ${LAST}:8 warning `)]);
    expect(found[0]).toContain(`is typed, so it stays when “pockets” changes. ${fix}`);
  });

  test('in a summary the bracket says it', () => {
    const [found] = said({
      [PROJECT]: project.replace('title: Folio', 'title: Folio\nsummary: Five stepped pockets.'),
    });
    expect(found).toBe(
      'project.yaml 2:10 warning “Five stepped pockets” is typed, so it stays when “pockets” changes. Write [pockets].',
    );
  });

  test('another number, a range, and what is counted behind “of the” are left alone', () => {
    const text = 'Two pockets meet. It may have four to six pockets, or 4 or 5 pockets. Five of the pockets are full.';
    expect(said({ [PROJECT]: project, ...lesson(text) })).toEqual([]);
  });

  test('a piece that is cut so often', () => {
    const changed = exchanged(PROJECT, 'size: [panel width, 3 in]', 'cut: 4\n    size: [panel width, 3 in]');
    expect(said({ ...changed, ...lesson('Cut the four facings.') })[0]).toBe(
      `01-size.mdx ${LAST}:9 warning “four facings” is typed, so it stays when “facing” is cut another number of times. Name the number under measures, “facings: { count: 4 }”, write “cut: facings”, and here <Size of="facings" />.`,
    );
  });

  test('layers: those that a step has at the lesson’s own size, and those that none has', () => {
    // A pleated strip of 3 pockets: 2 layers each, and the cloth behind them all.
    const steps = { ...exchanged(PROJECT, 'options:', 'steps:\n  - { id: pleat, pleat: strip }\noptions:') };
    const texts = lesson('You sew through seven layers. A stack of nine layers is thick. Two layers are not.');
    const found = said({ ...steps, ...texts }).filter((one) => one.includes('layers'));
    expect(found).toEqual([
      `01-size.mdx ${LAST}:17 warning “seven layers” is typed, and the sizes decide how many there are: step “pleat” has 7 at the lesson’s own. Write <Size of="layers of pleat" />, or let <LayerStudy step="pleat" /> count them.`,
      `01-size.mdx ${LAST}:42 note “nine layers” is typed, and no step of the project has so many in one place. Write “many layers”, or keep it with a reason: {/* keep nine layers: … */}`,
    ]);
  });

  test('a count of layers stands in the prose, and nowhere else', () => {
    const steps = exchanged(
      PROJECT,
      'options:',
      'steps:\n  - { id: pleat, pleat: strip, note: "[layers of pleat]" }\noptions:',
    );
    const texts = lesson(
      'You sew through [layers of pleat], at most [layers of the project], never [layers of plaet].',
    );
    expect(said({ ...steps, ...texts }).filter((one) => one.includes('layers'))).toEqual([
      `01-size.mdx ${LAST}:86 error There is no step “plaet” whose layers could be counted. Did you mean “pleat”?`,
      'project.yaml 21:39 error “[layers of pleat]” stands here, and layers are counted in the prose of a lesson alone, outside of questions. Write “many layers” here, or tell how many in a lesson.',
    ]);
  });

  test('a comment keeps a count, in a lesson and in a project file', () => {
    const kept = lesson('{/* keep five pockets: as in the picture */}\n\nFive stepped pockets.');
    expect(said({ [PROJECT]: project, ...kept })).toEqual([]);
    const file = project.replace('title: Folio', '# keep five pockets: as in the picture\ntitle: Five pockets');
    expect(said({ [PROJECT]: file })).toEqual([]);
  });

  test('a comment of a project file that keeps nothing, or says no reason', () => {
    const file = `# keep 5 in: as in the picture\n# keep 1/8 in\n${GOOD[PROJECT]}`;
    expect(said({ [PROJECT]: file })).toEqual([
      'project.yaml 1:1 note This keeps “5 in”, which the file no longer has. Take the comment away.',
      'project.yaml 2:1 warning This comment does not say why “1/8 in” is kept. Add the reason: # keep 1/8 in: the mark on the foot.',
    ]);
  });
});

test.each([
  ['begins with a bracket', 'summary: [seam] wide.', '22:17'],
  ['has one between braces', 'steps: [{ pleat: strip, note: Sew [seam] inside }]', '22:35'],
])('a text in YAML that %s needs quotes', (_, text, place) => {
  expect(said({ [PROJECT]: `${GOOD[PROJECT]}${text}\n` })).toContain(
    `project.yaml ${place} error A text with brackets needs quotes around it here: “… [seam] …”.`,
  );
});
