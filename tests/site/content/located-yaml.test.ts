import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { readYaml } from '../../../src/site/content/located-yaml.ts';
import { asLine } from '../as-line.ts';

/** A small stand-in for a project file, so that these tests say what reading does and not what a project holds. */
const Pleats = z.strictObject({
  pockets: z.int().min(1),
  depth: z.union([z.string(), z.number()]),
  level: z.boolean().optional(),
});
const Sample = z.strictObject({
  title: z.string().min(1),
  edition: z.enum(['inch', 'metric']).optional(),
  pleats: Pleats.optional(),
  size: z.tuple([z.number(), z.number()]).optional(),
  measures: z
    .record(
      z.string(),
      z.union([z.number(), z.string(), z.strictObject({ in: z.string().optional(), mm: z.number().optional() })]),
    )
    .optional(),
  steps: z.array(z.strictObject({ id: z.string(), minutes: z.number().positive().max(600) })).optional(),
});

const lines = (text: string, schema: z.ZodType = Sample) => readYaml(text, schema, 'a.yaml').problems.map(asLine);

describe('a file without a mistake', () => {
  test('gives its value', () => {
    const read = readYaml('title: Folio\npleats: { pockets: 3, depth: 2 3/4 }\n', Sample, 'a.yaml');
    expect(read.problems).toEqual([]);
    expect(read.value).toEqual({ title: 'Folio', pleats: { pockets: 3, depth: '2 3/4' } });
  });
});

describe('not YAML', () => {
  test.each([
    ['an empty file', '', 'a.yaml:1:1 This file is empty. It needs at least: title.'],
    ['nothing but a comment', '# later\n', 'a.yaml:1:1 This file is empty. It needs at least: title.'],
    ['prose', 'Dear reader', 'a.yaml:1:1 A group of named values belongs here, not “Dear reader”.'],
    [
      'a list',
      '- a\n- b\n',
      'a.yaml:1:1 A group of named values belongs here, not a list. Leave out the “- ” before each name.',
    ],
    ['a tab', 'title: x\npleats:\n\tpockets: 3\n', 'a.yaml:3:1 A tab stands at the start of this line. Use blanks.'],
    [
      'an open bracket',
      'title: x\nsize: [3, 4\n',
      'a.yaml:3:1 A bracket opened above is not closed before this line: ] or } is missing.',
    ],
    ['an open quote', 'title: "x\n', 'a.yaml:1:8 A quote is opened here and never closed.'],
    [
      'two colons',
      'title: Pockets: how to\n',
      'a.yaml:1:8 A second “:” stands on this line. Put quotes around a text that has a colon in it.',
    ],
    [
      'a line set in wrongly',
      'pleats:\n  pockets: 3\n   depth: 2\n',
      'a.yaml:3:4 This line is not set in like its neighbours. Lines that belong together start in the same column.',
    ],
    [
      'a name without its colon',
      'title: x\npleats\nsize: [1, 2]\n',
      'a.yaml:2:1 A name and its “:” belong on one line. A colon may be missing here. Is it “pleats: …”? A text that goes on from the line above is set in by two blanks.',
    ],
    ['a percent sign', 'title: %x\n', 'a.yaml:1:8 A text cannot start with this sign. Put quotes around the text.'],
  ])('%s', (_, text, message) => {
    expect(lines(text)).toEqual([message]);
  });
});

describe('a name used twice', () => {
  test('as it is', () => {
    expect(lines('title: x\nmeasures:\n  seam: 6\n  ease: 3\n  seam: 7\n')).toEqual([
      'a.yaml:5:3 “seam” is named twice; the first is on line 3. Keep one of them, or give one another name.',
    ]);
  });
  test('with other capitals and blanks', () => {
    expect(lines('title: x\nmeasures: { packet width: 6, Packet  Width: 7 }\n')).toEqual([
      'a.yaml:2:30 “Packet Width” is named twice; the first is on line 2. Keep one of them, or give one another name.',
    ]);
  });
  test('does not hide other mistakes', () => {
    expect(lines('title: x\ntitle: y\nsise: [1, 2]\n')).toEqual([
      'a.yaml:2:1 “title” is named twice; the first is on line 1. Keep one of them, or give one another name.',
      'a.yaml:3:1 “sise” is not known here. Did you mean “size”?',
    ]);
  });
});

describe('a value that does not belong', () => {
  test.each([
    ['missing in a file', 'size: [1, 2]\n', 'a.yaml:1:1 title: a text is missing here.'],
    ['missing in a group', 'title: x\npleats: { depth: 2 }\n', 'a.yaml:2:1 pockets: a whole number is missing here.'],
    ['missing in a block', 'title: x\npleats:\n  depth: 2\n', 'a.yaml:2:1 pockets: a whole number is missing here.'],
    ['missing in a list', 'title: x\nsteps:\n  - id: cut\n', 'a.yaml:3:5 minutes: a number is missing here.'],
    ['a name with nothing behind it', 'title:\nsize: [1, 2]\n', 'a.yaml:1:1 title: a text is missing here.'],
    [
      'a word for a number',
      'title: x\npleats: { pockets: three, depth: 2 }\n',
      'a.yaml:2:20 pockets: a whole number belongs here, not “three”.',
    ],
    [
      'half a pocket',
      'title: x\npleats: { pockets: 2.5, depth: 2 }\n',
      'a.yaml:2:20 pockets: a whole number belongs here, not “2.5”.',
    ],
    [
      'too few',
      'title: x\npleats: { pockets: 0, depth: 2 }\n',
      'a.yaml:2:20 pockets: 1 or more belongs here, not “0”.',
    ],
    [
      'not above nothing',
      'title: x\nsteps: [{ id: cut, minutes: 0 }]\n',
      'a.yaml:2:29 minutes: a number above 0 belongs here, not “0”.',
    ],
    [
      'too many',
      'title: x\nsteps: [{ id: cut, minutes: 601 }]\n',
      'a.yaml:2:29 minutes: 600 or less belongs here, not “601”.',
    ],
    ['an empty text', "title: ''\n", 'a.yaml:1:8 title: this must not be empty.'],
    ['a number for a text', 'title: 12\n', 'a.yaml:1:8 title: a text belongs here, not “12”.'],
    [
      'no choice',
      'title: x\nedition: inches\n',
      'a.yaml:2:10 edition: inch or metric belongs here, not “inches”. Did you mean “inch”?',
    ],
    [
      'yes for true',
      'title: x\npleats: { pockets: 1, depth: 2, level: yes }\n',
      'a.yaml:2:40 level: true or false belongs here, not “yes”. Write true.',
    ],
    ['one side only', 'title: x\nsize: [3]\n', 'a.yaml:2:7 size: at least 2 entries belong here.'],
    [
      'a text in a list',
      'title: x\nsize: [3, wide]\n',
      'a.yaml:2:11 size, entry 2: a number belongs here, not “wide”.',
    ],
    [
      'one of several kinds',
      'title: x\nmeasures: { seam: [1] }\n',
      'a.yaml:2:19 seam: a number, a text or a group of named values belongs here, not a list.',
    ],
    [
      'inside one of several kinds',
      'title: x\nmeasures: { seam: { in: 1/4, mn: 6 } }\n',
      'a.yaml:2:30 seam: “mn” is not known here. Did you mean “mm”?',
    ],
    [
      'a name nobody knows',
      'title: x\npleats: { pockets: 1, depth: 2, colour: red }\n',
      'a.yaml:2:33 pleats: “colour” is not known here. Known here: pockets, depth, level.',
    ],
    ['a misspelt name that is needed', 'titel: x\n', 'a.yaml:1:1 “titel” is not known here. Did you mean “title”?'],
  ])('%s', (_, text, message) => {
    expect(lines(text)).toEqual([message]);
  });

  test('a number that YAML takes for no number is said as it is', () => {
    const [line] = lines('title: Folio\npleats: { pockets: .inf, depth: 2 }\n');
    expect(line).toContain('Infinity');
    expect(line).not.toContain('null');
  });

  test('all mistakes come at once', () => {
    expect(lines('title: x\npleats: { pockets: a }\nsize: [b, 2]\n')).toEqual([
      'a.yaml:2:20 pockets: a whole number belongs here, not “a”.',
      'a.yaml:2:1 depth: a text or a number is missing here.',
      'a.yaml:3:8 size, entry 1: a number belongs here, not “b”.',
    ]);
  });

  test('aliases that swell without end are refused', () => {
    const swell = [
      'a: &a [x, x, x, x, x, x, x, x, x]',
      ...'bcdef'.split('').map((k, i) => `${k}: &${k} [${`*${'abcde'[i]}, `.repeat(9)}]`),
    ];
    expect(lines(swell.join('\n'), z.record(z.string(), z.any()))).toEqual([
      'a.yaml:1:1 The aliases (*name) in this file lead to each other without end.',
    ]);
  });
});

describe('the place of a character in a text', () => {
  const where = (text: string, index: number, place: (string | number)[] = ['is']) => {
    const { line, column } = readYaml(text, z.any(), 'a.yaml').locate(place, { start: index });
    return text.split('\n')[line - 1]?.slice(column - 1);
  };
  test.each([
    ['plain', 'is: seam + eas\n', 7, 'eas'],
    ['single quotes', "is: 'the maker''s seam'\n", 12, 'seam'.concat("'")],
    ['double quotes', 'is: "a \\"b\\" \\u2014 \\t seam"\n', 10, 'seam"'],
    ['a number', 'is: 120\n', 1, '20'],
    ['a literal block', 'is: |\n  seam +\n  eas\n', 7, 'eas'],
    ['a folded block', 'is: >-\n  seam\n  + eas\n', 7, 'eas'],
    ['a block set in more deeply inside', 'is: |\n  seam +\n    eas\n', 9, 'eas'],
    ['a plain text over two lines', 'is: seam +\n   eas\n', 7, 'eas'],
    ['quotes over two lines', 'is: "seam +\n   eas"\n', 7, 'eas"'],
    ['Windows line ends', 'is: |\r\n  seam +\r\n  eas\r\n', 7, 'eas\r'],
    ['behind a picture sign', 'is: 🧵 seam\n', 3, 'seam'],
  ])('%s', (_, text, index, rest) => {
    expect(where(text, index)).toBe(rest);
  });

  test('a value that is not there is placed where it is missing from', () => {
    const { locate } = readYaml('pieces:\n  strip:\n    cut: 2\n', z.any(), 'a.yaml');
    expect(locate(['pieces', 'strip', 'size', 0])).toEqual({ line: 2, column: 3 });
  });

  test('front matter counts its lines from the top of the lesson', () => {
    expect(readYaml('titel: x\n', Sample, 'a.mdx', 2).problems.map(asLine)).toEqual([
      'a.mdx:2:1 “titel” is not known here. Did you mean “title”?',
    ]);
  });
});

test.each([
  ['__proto__: 1', '1:1'],
  ['a:\n  __proto__: { b: 1 }', '2:3'],
  ['a: { "__proto__": 1 }', '1:6'],
])('a name that a program would lose is told: %s', (text, place) => {
  const { value, problems } = readYaml(text, z.record(z.string(), z.unknown()), 'a.yaml');
  expect(value).toBeUndefined();
  expect(problems.map(({ line, column, message }) => `${line}:${column} ${message}`)).toEqual([
    `${place} “__proto__” can be no name.`,
  ]);
});

test.each(['['.repeat(20_000) + ']'.repeat(20_000), `${'{a: '.repeat(9000)}1${'}'.repeat(9000)}`])(
  'a file that is nested without end is told in words',
  (text) => {
    const { problems } = readYaml(`a: ${text}`, z.record(z.string(), z.unknown()), 'a.yaml');
    expect(problems[0]?.message).toBe('This file is nested too deeply to be read.');
  },
);
