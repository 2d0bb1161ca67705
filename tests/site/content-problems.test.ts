/** Every slip that an author can make in the content folder, with the whole of what the kit answers. */
import { describe, expect, test } from 'vitest';
import { findContentProblems } from '../../src/site/find-content-problems.ts';
import { asLine } from '../../src/site/problem.ts';
import { contentFolder, exchanged, GOOD } from './content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const COURSE = 'content/courses/pleats/course.yaml';
const SIZE = 'content/courses/pleats/01-size.mdx';
const FOLD = 'content/courses/pleats/02-fold.mdx';

type Case = [name: string, changes: Record<string, string | undefined>, says: string[]];

function cases(list: Case[]): void {
  test.each(list)('%s', (_, changes, says) => {
    expect(findContentProblems(contentFolder(changes)).map(asLine)).toEqual(says);
  });
}

test('a folder without a mistake', () => {
  expect(findContentProblems(contentFolder())).toEqual([]);
});

describe('a project file', () => {
  const inProject = (part: string, by: string) => exchanged(PROJECT, part, by);
  cases([
    ['is empty', { [PROJECT]: '' }, [`${PROJECT}:1:1 This file is empty. It needs at least: title, measures, pieces.`]],
    [
      'is not YAML',
      { [PROJECT]: '{\\rtf1\\ansi Dear diary' },
      [`${PROJECT}:1:23 A sign is missing here: a quote, a comma, a colon, or the closing ] or }.`],
    ],
    [
      'is no project',
      { [PROJECT]: 'title: Folio\nmesures: { seam: 1/4 }\n' },
      [
        `${PROJECT}:1:1 pieces: a group of named values is missing here.`,
        `${PROJECT}:2:1 “mesures” is not known here. Did you mean “measures”?`,
      ],
    ],
    [
      'has a cycle',
      inProject('ease: { in: 1/8, mm: 3 }', 'ease: { is: panel width / 8 }'),
      [`${PROJECT}:4:9 “ease” needs “panel width”, which needs “ease” again. Give one of them a value of its own.`],
    ],
    [
      'has a measure that rests on itself',
      inProject('ease: { in: 1/8, mm: 3 }', 'ease: { is: ease + 1 in }'),
      [`${PROJECT}:4:9 “ease” is worked out from itself. Give one of them a value of its own.`],
    ],
    [
      'has a negative length',
      inProject('ease: { in: 1/8, mm: 3 }', 'ease: { in: -1/8, mm: 3 }'),
      [`${PROJECT}:4:15 A length cannot be less than nothing. Leave out the minus sign.`],
    ],
    [
      'has an absurd length',
      inProject('ease: { in: 1/8, mm: 3 }', 'ease: { in: 1/8, mm: 300000 }'),
      [`${PROJECT}:4:24 “300000” is more than 100 m, longer than a roll of cloth. Check number and unit.`],
    ],
    [
      'has a piece of less than nothing',
      inProject('[panel width, 3 in]', '[panel width - 10 in, 3 in]'),
      [`${PROJECT}:17:11 The width of “facing” comes to -5 in. There is nothing to cut.`],
    ],
    [
      'has pleats that do not fit the strip',
      inProject('[panel width, strip length]', '[panel width, 6 in]'),
      [
        `${PROJECT}:13:25 These pleats do not fit: the strip of “strip” is 11 3/4 in too short. Cut it longer, or make the pockets fewer, less deep or closer.`,
      ],
    ],
    [
      'has no pocket',
      inProject('pockets: 3', 'pockets: 0'),
      [`${PROJECT}:14:24 A whole number of pockets belongs here, one or more.`],
    ],
    [
      'has pockets without end',
      inProject('pockets: 3', 'pockets: 3000'),
      [`${PROJECT}:14:24 A strip is folded into 24 pockets at the most here.`],
    ],
    [
      'has an unknown unit',
      inProject('mm: 3 }', 'mm: 3 furlongs }'),
      [`${PROJECT}:4:26 “furlongs” is not a unit of length. Write in, ft, yd, mm, cm or m.`],
    ],
    [
      'has a misspelt unit',
      inProject('3 in]\n', '3 inchs]\n'),
      [`${PROJECT}:17:27 “inchs” is not a unit of length. Do you mean “inch”?`],
    ],
    [
      'uses a name twice',
      inProject('  seam:', '  ease: 3\n  seam:'),
      [`${PROJECT}:5:3 “ease” is named twice; the first is on line 4. Keep one of them, or give one another name.`],
    ],
    [
      'uses a name twice, with other capitals and blanks',
      inProject('  seam:', '  Card  width: 3\n  seam:'),
      [
        `${PROJECT}:5:3 “Card width” is named twice; the first is on line 3. Keep one of them, or give one another name.`,
      ],
    ],
    [
      'uses a measure that does not exist',
      inProject('2 * ease', '2 * eas'),
      [`${PROJECT}:7:26 There is no measure called “eas”. Do you mean “ease”?`],
    ],
    [
      'uses one inside a block of text',
      inProject('    is: card width + 2 * ease + 2 * seam', '    is: >-\n      card width\n      + 2 * eas + 2 * seam'),
      [`${PROJECT}:9:13 There is no measure called “eas”. Do you mean “ease”?`],
    ],
    [
      'adds a number to a length',
      inProject('2 * ease + 2', '2 * ease + 2 + 2'),
      [
        `${PROJECT}:7:33 “card width + 2 * ease” is a length and “2” a plain number. Write “2 in” if you mean a length.`,
      ],
    ],
    [
      'uses a material that does not exist',
      inProject('lining: lawn', 'lining: lawm'),
      [`${PROJECT}:9:11 There is no material called “lawm”. Do you mean “lawn”?`],
    ],
    [
      'uses a role that does not exist',
      inProject('from: lining', 'from: linin'),
      [`${PROJECT}:12:11 There is no material in the role “linin”. Do you mean “lining”?`],
    ],
    [
      'holds something nowhere',
      inProject('pocket 1 of strip', 'pocket 1 of stip'),
      [`${PROJECT}:19:51 There is no piece called “stip”. Do you mean “strip”?`],
    ],
    [
      'holds something too wide',
      inProject('size: [card width, 2 in]', 'size: [9 in, 2 in]'),
      [
        `${PROJECT}:19:45 A card does not fit pocket 1 of the strip: it is 4 3/4 in too wide. Make strip wider, or the ease smaller.`,
      ],
    ],
    [
      'holds something that fits in one edition only',
      inProject('size: [card width, 2 in]', 'size: [{ in: 4 1/4, mm: 190 }, 2 in]'),
      [
        `${PROJECT}:19:63 Metric edition: A card does not fit pocket 1 of the strip: it is 85 mm too wide. Make strip wider, or the ease smaller.`,
      ],
    ],
    [
      'drops a piece that does not exist',
      inProject('drops: [facing]', 'drops: [facin]'),
      [`${PROJECT}:21:19 There is no piece or material called “facin”. Do you mean “facing”?`],
    ],
    [
      'breaks with an option',
      inProject('drops: [facing]', 'measures: { panel width: 3 in }'),
      [
        `${PROJECT}:19:51 With “flap”: A card does not fit pocket 1 of the strip: it is 2 in too wide. Make strip wider, or the ease smaller.`,
      ],
    ],
  ]);
});

describe('materials.yaml', () => {
  const file = 'content/materials.yaml';
  cases([
    [
      'has a width in words',
      { [file]: 'lawn: { kind: cloth, width: { in: wide, mm: 900, source: me } }\n' },
      [`${file}:1:35 “wide” is not a length. Write a number, such as 4 1/2 in.`],
    ],
    [
      'has a kind of its own',
      { [file]: 'lawn: { kind: cloths }\n' },
      [
        `${file}:1:15 kind: cloth, interfacing, batting, thread or hardware belongs here, not “cloths”. Did you mean “cloth”?`,
      ],
    ],
  ]);
});

describe('a course', () => {
  cases([
    [
      'has no summary',
      exchanged(COURSE, 'summary: Fold pockets.\n', ''),
      [`${COURSE}:1:1 summary: a text is missing here.`],
    ],
    [
      'names a missing project',
      exchanged(COURSE, 'project: folio', 'project: folo'),
      [`${COURSE}:4:10 There is no project “folo” in content/projects. Did you mean “folio”?`],
    ],
    [
      'lists a lesson that is not there',
      exchanged(COURSE, '02-fold.mdx', '02-flod.mdx'),
      [
        `${FOLD}:1:1 No page shows this lesson. List it under “lessons” in ${COURSE}.`,
        `${COURSE}:5:24 There is no lesson “02-flod.mdx” beside this file. Did you mean “02-fold.mdx”?`,
      ],
    ],
    [
      'lists a lesson twice',
      exchanged(COURSE, '[01-size.mdx, 02-fold.mdx]', '[01-size.mdx, 02-fold.mdx, 01-size.mdx]'),
      [`${COURSE}:5:37 The lesson “01-size.mdx” is listed twice. Keep one of them.`],
    ],
    [
      'lists a file that is no lesson',
      exchanged(COURSE, '[01-size.mdx, 02-fold.mdx]', '[01-size.mdx, 02-fold.mdx, 03.doc]'),
      [`${COURSE}:5:37 lessons, entry 3: the file name of a lesson belongs here, such as 01-sizing.mdx.`],
    ],
    [
      'has a comma in a text between braces',
      exchanged(COURSE, '{ title: First evening }', '{ title: Cut, press and fold }'),
      [
        `${COURSE}:6:26 sessions, entry 1: “press and fold” is not known here. If it belongs to the text before the comma, put quotes around the whole text.`,
      ],
    ],
    [
      'has two lessons at one address',
      {
        ...exchanged(COURSE, '02-fold.mdx]', '02-fold.mdx, 03-fold.mdx]'),
        'content/courses/pleats/03-fold.mdx': GOOD[FOLD],
      },
      [
        'content/courses/pleats/03-fold.mdx:1:1 This lesson would have the same address as “02-fold.mdx”: numbers in front do not count. Give it another name.',
      ],
    ],
  ]);
});

describe('the top of a lesson', () => {
  cases([
    [
      'is not there',
      { [FOLD]: '# Fold\n' },
      [`${FOLD}:1:1 A lesson starts with its title, summary and minutes between two lines of ---.`],
    ],
    [
      'has words for a number',
      exchanged(SIZE, 'minutes: 20', 'minutes: long'),
      [`${SIZE}:4:10 minutes: a whole number belongs here, not “long”.`],
    ],
    [
      'names a missing project',
      exchanged(SIZE, 'minutes', 'project: folo\nminutes'),
      [`${SIZE}:4:10 There is no project “folo” in content/projects. Did you mean “folio”?`],
    ],
    [
      'names a missing session',
      exchanged(SIZE, 'session: 1', 'session: 2'),
      [`${SIZE}:5:10 session: the course has 1 session. Add one under “sessions” in ${COURSE}.`],
    ],
    [
      'is not YAML',
      exchanged(SIZE, 'title: Size it', 'title: Size: how'),
      [`${SIZE}:2:8 A second “:” stands on this line. Put quotes around a text that has a colon in it.`],
    ],
    [
      'and its course name no project',
      exchanged(COURSE, 'project: folio\n', ''),
      [
        `${SIZE}:8:14 <Size> shows the numbers of a project, and this lesson has none. Write “project: …” at its top, or in course.yaml.`,
        `${SIZE}:10:1 <YourSize> shows the numbers of a project, and this lesson has none. Write “project: …” at its top, or in course.yaml.`,
        `${SIZE}:12:1 <AskSize> shows the numbers of a project, and this lesson has none. Write “project: …” at its top, or in course.yaml.`,
        `${FOLD}:7:1 <PleatStudy> shows the numbers of a project, and this lesson has none. Write “project: …” at its top, or in course.yaml.`,
      ],
    ],
  ]);
});

describe('a lesson', () => {
  const inSize = (part: string, by: string) => exchanged(SIZE, part, by);
  cases([
    [
      'has a misspelt word',
      inSize('<YourSize />', '<YorSize />'),
      [`${SIZE}:10:1 There is no lesson word <YorSize>. Did you mean <YourSize>?`],
    ],
    [
      'has a word nobody knows',
      inSize('<YourSize />', '<Carousel />'),
      [
        `${SIZE}:10:1 There is no lesson word <Carousel>. There are: Size, Working, CutList, MaterialsList, Piece, PleatStudy, AllowanceStudy, YourSize, AskSize, Step, MakeUp, LayerStudy, SeamStudy, DriftStudy, Caution, Tip.`,
      ],
    ],
    [
      'has a misspelt attribute',
      inSize('tolerance=', 'tolerence='),
      [`${SIZE}:12:37 <AskSize>: “tolerence” is not known here. Did you mean “tolerance”?`],
    ],
    [
      'lacks an attribute',
      inSize('<Size of="panel width" />', '<Size />'),
      [`${SIZE}:8:14 <Size> of: a text is missing here.`],
    ],
    [
      'has a number for a text',
      inSize('tolerance="1/16 in | 1 mm"', 'tolerance={3}'),
      [`${SIZE}:12:37 <AskSize> tolerance: a text belongs here, not “3”.`],
    ],
    [
      'has a program for a text',
      inSize('tolerance="1/16 in | 1 mm"', 'tolerance={2 * x}'),
      [
        `${SIZE}:12:37 <AskSize> tolerance: the braces hold no plain value. In braces go a number, a list, true or false. A text goes in quotes.`,
      ],
    ],
    [
      'spreads attributes',
      inSize('<YourSize />', '<YourSize {...x} />'),
      [`${SIZE}:10:11 <YourSize>: braces cannot stand for attributes. Write each one by its name.`],
    ],
    [
      'gives an attribute twice',
      inSize('of="panel width"', 'of="panel width" of="seam"'),
      [`${SIZE}:8:37 <Size> of: this is given twice. Keep one of them.`],
    ],
    [
      'gives text to a word without',
      inSize('<YourSize />', '<YourSize>my size</YourSize>'),
      [`${SIZE}:10:1 <YourSize> takes no text. Write <YourSize /> and let the text follow.`],
    ],
    [
      'gives no text to a word that needs it',
      exchanged(FOLD, 'Press each fold.', ''),
      [`${FOLD}:9:1 <Tip> has no text. Write it between <Tip> and </Tip>.`],
    ],
    [
      'names a measure that does not exist',
      inSize('of="panel width"', 'of="panel widht"'),
      [`${SIZE}:8:24 There is no measure called “panel widht”. Do you mean “panel width”?`],
    ],
    [
      'names one inside a sum',
      inSize('card width + 2 * ease', 'card width + 2 * eas'),
      [`${SIZE}:12:31 There is no measure called “eas”. Do you mean “ease”?`],
    ],
    [
      'adds a number to a length',
      inSize('card width + 2 * ease', 'card width + 2'),
      [`${SIZE}:12:27 “card width” is a length and “2” a plain number. Write “2 in” if you mean a length.`],
    ],
    [
      'names a piece that does not exist',
      exchanged(FOLD, 'piece="strip"', 'piece="strap"'),
      [`${FOLD}:7:20 The project “folio” has no piece “strap”. Did you mean “strip”?`],
    ],
    [
      'names a piece without pleats',
      exchanged(FOLD, 'piece="strip"', 'piece="facing"'),
      [`${FOLD}:7:20 The piece “facing” has no pleats. Pleated are: “strip”.`],
    ],
    [
      'has maths that breaks off',
      inSize('$w + 2e$', '$\\frac{w}{2$'),
      [`${SIZE}:8:65 This maths cannot be set: Unexpected end of input in a macro argument, expected '}'.`],
    ],
    [
      'has maths with an unknown sign',
      inSize('$w + 2e$', '$w + \\foo$'),
      [`${SIZE}:8:59 This maths cannot be set: Undefined control sequence: \\foo.`],
    ],
    [
      'has maths on lines of its own that breaks off',
      inSize('<YourSize />', '$$\na = b\n+ }\n$$'),
      [`${SIZE}:12:3 This maths cannot be set: Expected 'EOF', got '}'.`],
    ],
    [
      'has braces in its prose',
      inSize('<YourSize />', 'Cut {two}.'),
      [`${SIZE}:10:5 Braces { } have a meaning of their own in a lesson. Write \\{ to show a brace.`],
    ],
    [
      'has an open brace',
      inSize('<YourSize />', 'Cut {two.'),
      [`${SIZE}:10:5 This { is never closed. Write \\{ to show a brace.`],
    ],
    [
      'has a small than sign',
      inSize('<YourSize />', 'Less <3 in.'),
      [
        `${SIZE}:10:6 A < starts a lesson word, but no word follows that can be read. Write \\< to show the sign; put quotes around what an attribute says.`,
      ],
    ],
    [
      'imports',
      inSize('<YourSize />', "import X from './x'\n\n<YourSize />"),
      [
        `${SIZE}:10:1 A line of a lesson cannot start with “import” or “export”. Every lesson word is ready to use without. If this is prose, begin the line with another word.`,
      ],
    ],
    [
      'has prose that looks like an import',
      inSize('<YourSize />', 'import the pattern into your head'),
      [
        `${SIZE}:10:1 A line of a lesson cannot start with “import” or “export”. Every lesson word is ready to use without. If this is prose, begin the line with another word.`,
      ],
    ],
    [
      'opens a word and never closes it',
      inSize('</AskSize>', ''),
      [`${SIZE}:12:1 <AskSize> is opened here and never closed. Write </AskSize> where it ends.`],
    ],
    [
      'closes a word that is not open',
      inSize('<YourSize />', '</Tip>'),
      [`${SIZE}:10:1 </Tip> closes nothing. Write <Tip> where it starts, or take this away.`],
    ],
    [
      'closes a word inside a paragraph',
      exchanged(FOLD, 'Press each fold.\n\n</Tip>', 'Press each fold. </Tip>'),
      [
        `${FOLD}:11:18 </Tip> stands inside a paragraph that started after <Tip>. Put <Tip> and </Tip> on lines of their own, with blank lines around the text.`,
      ],
    ],
    [
      'opens a word inside a paragraph and closes it outside',
      inSize('<YourSize />', 'So <Tip>\n\nPress.\n\n</Tip>'),
      [
        `${SIZE}:10:4 <Tip> and </Tip> do not stand in the same paragraph. Put <Tip> and </Tip> on lines of their own, with blank lines around the text.`,
      ],
    ],
    [
      'has a comment of HTML',
      inSize('<YourSize />', '<!-- later -->'),
      [`${SIZE}:10:1 A comment is written {/* like this */}.`],
    ],
    [
      'has a link in angle brackets',
      inSize('<YourSize />', 'See <https://example.org>.'),
      [`${SIZE}:10:5 A link is written [words](address).`],
    ],
    [
      'shows a picture from elsewhere, without words',
      inSize('<YourSize />', '![](https://example.org/fold.png)'),
      [
        `${SIZE}:10:1 This picture comes from another host. Put it beside the lesson: a page asks no other host for anything.`,
        `${SIZE}:10:1 This picture has no words for those who cannot see it. Write ![what it shows](…).`,
      ],
    ],
    [
      'shows a picture that is not there',
      inSize('<YourSize />', '![A fold](fold.png)'),
      [`${SIZE}:10:1 There is no picture “fold.png” beside this lesson.`],
    ],
    [
      'brings a program along',
      inSize('<YourSize />', '<b onclick="alert(1)">fold</b> <script>alert(1)</script>'),
      [
        `${SIZE}:10:4 “onclick” would run a program, which no page of the site does. Leave it out.`,
        `${SIZE}:10:32 <script> has no place in a lesson. Use a lesson word.`,
      ],
    ],
  ]);

  test('may have comments, emphasis, links, tables and pictures', () => {
    const prose =
      '{/* later */} *Press* [on](../fold/), x < y.\n\n| a | b |\n| - | - |\n| 1 | 2 |\n\n![A fold](fold.png)';
    const root = contentFolder({ ...inSize('<YourSize />', prose), 'content/courses/pleats/fold.png': 'a picture' });
    expect(findContentProblems(root)).toEqual([]);
  });

  test('is not blamed for a project that cannot be read', () => {
    expect(findContentProblems(contentFolder({ [PROJECT]: 'title: [\n' })).map(({ file }) => file)).toEqual([PROJECT]);
  });

  test('is not blamed for a size that its project cannot work out', () => {
    const changes = {
      ...inSize('of="panel width"', 'of="strip finished height"'),
      ...exchanged(PROJECT, 'pockets: 3', 'pockets: 0'),
    };
    expect(findContentProblems(contentFolder(changes)).map(({ file }) => file)).toEqual([PROJECT]);
  });
});

describe('the folder', () => {
  cases([
    ['has no site.yaml', { 'content/site.yaml': undefined }, ['content/site.yaml:1:1 This file is missing.']],
    [
      'has a project folder without its file, and one with another ending',
      { [PROJECT]: undefined, 'content/projects/folio/project.yml': GOOD[PROJECT] },
      [
        `${PROJECT}:1:1 This file is missing.`,
        'content/projects/folio/project.yml:1:1 Nothing reads this file. Should it be called project.yaml?',
      ],
    ],
    [
      'has names that make no address',
      { 'content/projects/My Folio/project.yaml': GOOD[PROJECT] },
      [
        'content/projects/My Folio:1:1 This name becomes part of an address: lower-case letters a to z, digits and hyphens only.',
      ],
    ],
    [
      'has a site that speaks no language',
      { 'content/site.yaml': 'name: X\nlanguage: English please\naddress: example.org\n' },
      [
        'content/site.yaml:2:11 language: a language tag belongs here, such as en or en-GB.',
        'content/site.yaml:3:10 address: a web address belongs here, such as https://example.org/sewing/.',
      ],
    ],
  ]);

  test('all mistakes of all files come at once, in reading order', () => {
    const problems = findContentProblems(
      contentFolder({
        ...exchanged(PROJECT, '2 * ease', '2 * eas'),
        ...exchanged(SIZE, '<YourSize />', '<YorSize />'),
        'content/site.yaml': 'nam: X\n',
      }),
    );
    expect(problems.map(asLine)).toEqual([
      `${SIZE}:10:1 There is no lesson word <YorSize>. Did you mean <YourSize>?`,
      `${PROJECT}:7:26 There is no measure called “eas”. Do you mean “ease”?`,
      'content/site.yaml:1:1 “nam” is not known here. Did you mean “name”?',
    ]);
  });
});
