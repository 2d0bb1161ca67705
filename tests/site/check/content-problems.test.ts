/** What is no mistake, and how mistakes of several files come together; each single slip lies in tests/fixtures/broken. */
import { describe, expect, test } from 'vitest';
import { findContentProblems } from '../../../src/site/check/find-content-problems.ts';
import { asLine } from '../as-line.ts';
import { contentFolder, exchanged, GOOD, pngOf } from '../content-folder.ts';

const PROJECT = 'content/projects/folio/project.yaml';
const SIZE = 'content/courses/pleats/01-size.mdx';

/** A lesson with a paragraph in the place of its panel. */
const saying = (prose: string) => exchanged(SIZE, '<YourSize />', prose);

describe('a lesson', () => {
  const inSize = (part: string, by: string) => exchanged(SIZE, part, by);
  test('may have comments, emphasis, links, tables and pictures', () => {
    const prose =
      '{/* later */} *Press* [on](../fold/), x < y.\n\n| a | b |\n| - | - |\n| 1 | 2 |\n\n![A fold](fold.png)';
    const root = contentFolder({
      ...inSize('<YourSize />', prose),
      'content/courses/pleats/fold.png': pngOf(900, 600),
    });
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
  test.each([
    ['{/* keep 44 in: the width of the bolt */}\n\nBuy cloth 44 in wide.'],
    ['Set the stitch length to 2.5 mm, with a needle of size 80/12, and wait 5 minutes.'],
    ['Cut `5 in` wide.'],
    // No zip is near.
    ['The teeth of the feed dogs carry the cloth along, as the plastic teeth of a comb would.'],
  ])('may keep a number: %s', (prose) => {
    expect(findContentProblems(contentFolder(saying(prose)))).toEqual([]);
  });

  test('may have links that lead somewhere', () => {
    const links =
      '## Add *the* `ease`\n\n[here](#add-the-ease) [there](../fold/) [numbers](../../../projects/folio/) [out](https://example.org) [write](mailto:me@example.org)';
    expect(findContentProblems(contentFolder(saying(links)))).toEqual([]);
  });
  test('may have a caution of one’s own words', () => {
    const own = 'Take the rotary cutter.\n\n<Caution>\n\nThe rotary cutter is sharp.\n\n</Caution>';
    expect(findContentProblems(contentFolder(saying(own)))).toEqual([]);
  });
});

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

test('a fault that only two options together bring about is found, and told with both', () => {
  const changes = exchanged(
    PROJECT,
    '  flap: { drops: [facing] }',
    '  flap: { drops: [facing] }\n  loop: {}\nsteps:\n  - { press: facing, when: loop }\n  - { lay: facing, on: strip, unless: flap }',
  );
  const errors = findContentProblems(contentFolder(changes)).filter(({ severity }) => severity === 'error');
  expect(errors.map(asLine)).toEqual([
    `${PROJECT}:24:14 With “flap” and “loop”: With “flap” there is no “facing” for this step. Add “unless: flap” to this step.`,
  ]);
});

test('a lesson with more questions than a hand-in has room for is told, once', () => {
  const asked = Array.from({ length: 1003 }, (_, i) => `<AskSize id="q${i}" of="seam">\n\nHow wide?\n\n</AskSize>`);
  const root = contentFolder(exchanged('content/courses/pleats/01-size.mdx', '<YourSize />', asked.join('\n\n')));
  const said = findContentProblems(root).filter(({ message }) => message.startsWith('A hand-in has room for'));
  expect(said.map(({ message, severity }) => [severity, message])).toEqual([
    ['warning', 'A hand-in has room for 1000 of these in one lesson; this one and those after it are left out.'],
  ]);
});

test.each(['C#', '50%', '50%25', 'a?b', '%E0%A4%A'])('a folder called %s is told, and the rest is checked', (name) => {
  const root = contentFolder({
    [`content/courses/${name}/course.yaml`]: GOOD['content/courses/pleats/course.yaml'],
    [`content/courses/${name}/01-size.mdx`]: GOOD[SIZE],
    [`content/projects/${name}/project.yaml`]: GOOD[PROJECT],
  });
  const said = findContentProblems(root).filter(({ message }) => message.startsWith('This name becomes part of an'));
  expect(said.map(({ file, severity }) => [file, severity])).toEqual([
    [`content/courses/${name}`, 'error'],
    [`content/projects/${name}`, 'error'],
  ]);
});
