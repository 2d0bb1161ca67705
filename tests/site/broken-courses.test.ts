/**
 * What can be known of a course beside whether it builds: each course has one slip, and the whole of what the kit
 * answers stands beside it. The slips that keep a course from being built are in content-problems.test.ts.
 */
import { describe, expect, test } from 'vitest';
import { findContentProblems } from '../../src/site/find-content-problems.ts';
import { asLine } from '../../src/site/problem.ts';
import { contentFolder, exchanged, GOOD } from './content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const COURSE = 'content/courses/pleats/course.yaml';
const SIZE = 'content/courses/pleats/01-size.mdx';
const FOLD = 'content/courses/pleats/02-fold.mdx';
const GLOSSARY = 'content/glossary.yaml';

type Case = [name: string, changes: Record<string, string | undefined>, says: string[]];

function cases(list: Case[]): void {
  test.each(list)('%s', (_, changes, says) => {
    const problems = findContentProblems(contentFolder(changes));
    expect(problems.map((problem) => `${problem.severity} ${asLine(problem)}`)).toEqual(says);
  });
}

/** A lesson with a paragraph in the place of its panel. */
const saying = (prose: string) => exchanged(SIZE, '<YourSize />', prose);

describe('numbers typed in prose', () => {
  cases([
    [
      'that one measure has',
      saying('Cut the panel 5 in wide.'),
      [
        `warning ${SIZE}:10:15 “5 in” is typed, so it stays when “panel width” changes. Write <Size of="panel width" />.`,
      ],
    ],
    [
      'that a measure has in both editions',
      saying('The seam takes 1/4 in (6 mm).'),
      [`warning ${SIZE}:10:16 “1/4 in (6 mm)” is typed, so it stays when “seam” changes. Write <Size of="seam" />.`],
    ],
    [
      'that a measure has in the other edition',
      saying('Your card is 105 mm wide.'),
      [
        `warning ${SIZE}:10:14 “105 mm” is typed, so it stays when “card width” changes. Write <Size of="card width" />.`,
      ],
    ],
    [
      'in emphasis',
      saying('Your card is **4 1/4** in wide.'),
      [
        `warning ${SIZE}:10:16 “4 1/4 in” is typed, so it stays when “card width” changes. Write <Size of="card width" />.`,
      ],
    ],
    [
      'that a measure nearly has',
      saying('Cut the panel 5 1/8 in wide.'),
      [
        `warning ${SIZE}:10:15 “5 1/8 in” is typed, and “panel width” is 5 in. It may be out of date. Write <Size of="panel width" />, or keep it with a reason: {/* keep 5 1/8 in: … */}`,
      ],
    ],
    [
      'that no measure has',
      saying('Buy cloth 44 in wide.'),
      [
        `note ${SIZE}:10:11 “44 in” is typed, and no measure of the project has it. Name it in project.yaml, or keep it with a reason: {/* keep 44 in: … */}`,
      ],
    ],
    [
      'in a heading',
      saying('## A panel 5 in wide'),
      [`warning ${SIZE}:10:12 “5 in” is typed, so it stays when “panel width” changes. Leave numbers out of headings.`],
    ],
    [
      'in a table',
      saying('| part | size |\n| --- | --- |\n| seam | 1/4 in |'),
      [`warning ${SIZE}:12:10 “1/4 in” is typed, so it stays when “seam” changes. Write <Size of="seam" />.`],
    ],
    [
      'kept without a reason',
      saying('{/* keep 44 in */}\n\nBuy cloth 44 in wide.'),
      [
        `warning ${SIZE}:10:1 This comment does not say why “44 in” is kept. Add the reason: {/* keep 1/8 in: the mark on the foot */}.`,
      ],
    ],
    [
      'kept without a length',
      saying('{/* keep this: I like it */}'),
      [
        `warning ${SIZE}:10:1 This comment does not say which length to keep. Write it like {/* keep 1/8 in: the mark on the foot */}.`,
      ],
    ],
    [
      'kept though it is gone',
      saying('{/* keep 44 in: the width of the bolt */}'),
      [`note ${SIZE}:10:1 This keeps “44 in”, which the lesson no longer has. Take the comment away.`],
    ],
  ]);

  test.each([
    ['{/* keep 44 in: the width of the bolt */}\n\nBuy cloth 44 in wide.'],
    ['Set the stitch length to 2.5 mm, with a needle of size 80/12, and wait 5 minutes.'],
    ['Cut `5 in` wide.'],
  ])('fine: %s', (prose) => {
    expect(findContentProblems(contentFolder(saying(prose)))).toEqual([]);
  });
});

describe('terms', () => {
  cases([
    [
      'in bold that the glossary does not have',
      saying('The rest is called **head**.'),
      [
        `note ${SIZE}:10:20 “head” is set in bold like a term, and the glossary does not have it. Add it to content/glossary.yaml, or set it in plain type.`,
      ],
    ],
    [
      'in bold, misspelt',
      saying('It needs **eaze**.'),
      [`note ${SIZE}:10:10 “eaze” is set in bold like a term, and the glossary does not have it. Did you mean “ease”?`],
    ],
    [
      'of the trade that the glossary does not have',
      saying('Basted, it holds.'),
      [
        `note ${SIZE}:10:1 “baste” is a term of the trade, and the glossary does not have it. Add it to content/glossary.yaml.`,
      ],
    ],
    [
      'of the glossary that nothing uses',
      { [GLOSSARY]: `${GOOD[GLOSSARY]}gusset: A piece let in to give room.\n` },
      [`note ${GLOSSARY}:2:9 No lesson and no project uses “gusset”. Use it, or take it away.`],
    ],
  ]);
});

describe('links', () => {
  cases([
    [
      'to a page that is not there',
      saying('[Fold](../flod/) it.'),
      [
        `warning ${SIZE}:10:1 This link leads to /courses/pleats/flod/, where no page is. Did you mean “/courses/pleats/fold/”?`,
      ],
    ],
    [
      'to the file of a lesson',
      saying('[Fold](02-fold.mdx) it.'),
      [`warning ${SIZE}:10:1 A link leads to a page, and not to its file. Write ../fold/`],
    ],
    [
      'without the last stroke',
      saying('[Fold](../fold) it.'),
      [`warning ${SIZE}:10:1 The address of a page ends in /. Write ../fold/`],
    ],
    [
      'from the top of the host',
      saying('[Numbers](/projects/folio/).'),
      [
        `warning ${SIZE}:10:1 A link that starts with / leads astray where the site is published below a path. Write ../../../projects/folio/`,
      ],
    ],
    [
      'to a heading that is not there',
      saying('## Add the ease\n\n[See](#add-the-eas).'),
      [`warning ${SIZE}:12:1 There is no heading “#add-the-eas” on this page. Did you mean “add-the-ease”?`],
    ],
    [
      'to a heading of another lesson that is not there',
      saying('[See](../fold/#press).'),
      [`warning ${SIZE}:10:1 There is no heading “#press” on /courses/pleats/fold/.`],
    ],
    [
      'without an address',
      saying('[See]().'),
      [`warning ${SIZE}:10:1 This link has no address. Write [words](address).`],
    ],
    [
      'that would run a program',
      saying('[See](javascript:alert).'),
      [`error ${SIZE}:10:1 This link would run a program. Link to a page.`],
    ],
    [
      'in HTML, to nowhere',
      saying('<a href="../flod/">Fold</a>'),
      [
        `warning ${SIZE}:10:1 This link leads to /courses/pleats/flod/, where no page is. Did you mean “/courses/pleats/fold/”?`,
      ],
    ],
  ]);

  test('that lead somewhere', () => {
    const links =
      '## Add *the* `ease`\n\n[here](#add-the-ease) [there](../fold/) [numbers](../../../projects/folio/) [out](https://example.org) [write](mailto:me@example.org)';
    expect(findContentProblems(contentFolder(saying(links)))).toEqual([]);
  });
});

describe('questions', () => {
  cases([
    [
      'without an answer',
      exchanged(SIZE, 'of="card width + 2 * ease"', 'of="card width - card width"'),
      [
        `warning ${SIZE}:12:14 This question has no answer: “card width - card width” comes to nothing. Ask for another size.`,
      ],
    ],
    [
      'with an answer below nothing',
      exchanged(SIZE, 'of="card width + 2 * ease"', 'of="ease - card width"'),
      [
        `warning ${SIZE}:12:14 This question has no answer: “ease - card width” comes to less than nothing. Ask for another size.`,
      ],
    ],
    [
      'with a tolerance that lets a slip pass',
      exchanged(SIZE, 'tolerance="1/16 in | 1 mm"', 'tolerance="1/4 in | 6 mm"'),
      [
        `warning ${SIZE}:12:48 So wide a tolerance does not tell the right answer from this slip: You left out the ease. Both sides need it. Make it smaller.`,
      ],
    ],
  ]);
});

describe('cautions', () => {
  cases([
    [
      'missing for the iron',
      exchanged(FOLD, '<Caution of="iron" />', ''),
      [
        `warning ${FOLD}:11:1 Hot iron: this can hurt, and this lesson does not say so. Write <Caution of="iron" /> where it is taken up.`,
      ],
    ],
    [
      'missing for the rotary cutter',
      saying('Take the rotary cutter.'),
      [
        `warning ${SIZE}:10:10 Rotary cutter: this can hurt, and this lesson does not say so. Write <Caution of="blade" /> where it is taken up.`,
      ],
    ],
    [
      'missing for pins',
      saying('Pin it together.'),
      [
        `warning ${SIZE}:10:1 Pins: this can hurt, and this lesson does not say so. Write <Caution of="pins" /> where it is taken up.`,
      ],
    ],
    [
      'missing for a magnet',
      saying('The magnets close it.'),
      [
        `warning ${SIZE}:10:5 Magnets: this can hurt, and this lesson does not say so. Write <Caution of="magnet" /> where it is taken up.`,
      ],
    ],
    [
      'missing for what the steps need',
      exchanged(
        PROJECT,
        'options:',
        'steps:\n  - { pleat: strip }\n  - { baste: facing, at: top, unless: flap }\noptions:',
      ),
      [
        `warning ${COURSE}:4:10 Machine needle: this can hurt, and no lesson of this course says so. Write <Caution of="needle" /> where it is taken up.`,
        `note ${PROJECT}:21:5 No lesson tells “step 1”: none speaks of “pleat”. Say in a lesson how it is done.`,
        `note ${PROJECT}:22:5 No lesson tells “step 2”: none speaks of “baste”. Say in a lesson how it is done.`,
      ],
    ],
  ]);

  test('of one’s own words', () => {
    const own = 'Take the rotary cutter.\n\n<Caution>\n\nThe rotary cutter is sharp.\n\n</Caution>';
    expect(findContentProblems(contentFolder(saying(own)))).toEqual([]);
  });
});

describe('length and reading age', () => {
  const long = Array.from({ length: 60 }, () => 'The strip is laid down flat and it is folded up again. ').join('');
  const hard = Array.from(
    { length: 12 },
    () => 'Considerable dimensional irregularities necessitate systematically recalculating manufacturing allowances. ',
  ).join('');
  cases([
    [
      'a lesson that takes longer to read than it says',
      { ...saying(long), ...{ [SIZE]: saying(long)[SIZE]!.replace('minutes: 20', 'minutes: 2') } },
      [
        `note ${SIZE}:1:1 It takes about 4 minutes to read, and the lesson says 2. Give it more minutes, or part it in two.`,
      ],
    ],
    [
      'a lesson in long words',
      saying(hard),
      [
        `note ${SIZE}:1:1 This lesson reads like a text for 18 years and up. Shorter sentences and plainer words make it easier.`,
      ],
    ],
  ]);
});
