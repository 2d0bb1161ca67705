import { describe, expect, test } from 'vitest';
import { readLesson } from '../../../src/site/content/lesson-text.ts';

const read = (text: string) => {
  const lesson = readLesson(text);
  expect(lesson.faults).toEqual([]);
  return lesson;
};

describe('the attributes of a word', () => {
  test.each([
    ['a text', '<Size of="seam" />', 'seam'],
    ['a text in single quotes', "<Size of='seam' />", 'seam'],
    ['a text in braces', '<Size of={"seam"} />', 'seam'],
    ['a text in single quotes in braces', "<Size of={'seam'} />", 'seam'],
    ['a sign written as a name', '<Size of="a &amp; b" />', 'a & b'],
    ['a number', '<Size of={-2.5} />', -2.5],
    ['a list', '<Size of={[1, "two"]} />', [1, 'two']],
    ['named values', '<Size of={{"a": {"b": 1}}} />', { a: { b: 1 } }],
    ['false', '<Size of={false} />', false],
    ['nothing but the name', '<Size of />', true],
    ['a name of a program', '<Size of={seam} />', undefined],
    ['a sum', '<Size of={1 + 1} />', undefined],
    ['a program', '<Size of={(() => { throw 1; })()} />', undefined],
  ])('%s', (_, text, value) => {
    expect(read(text).words[0]?.attributes[0]?.value).toEqual(value);
  });

  test('each keeps its place, over lines, behind braces and signs of other alphabets', () => {
    const text =
      'Größe 🧵 <AskSize\n  id="a > b"\n  list={["}", 1]}\n  open\n  of = "seam">How wide?</AskSize> and on\n';
    const [word] = read(text).words;
    const at = (name: string) => word?.attributes.find((attribute) => attribute.name === name);
    for (const name of ['id', 'list', 'open', 'of']) expect(text.slice(at(name)?.at).startsWith(name)).toBe(true);
    expect(text.slice(at('of')?.textAt).startsWith('seam"')).toBe(true);
    expect(text.slice(at('id')?.textAt).startsWith('a > b"')).toBe(true);
    expect(text.slice(word?.part.start, word?.part.end)).toMatch(/^<AskSize[^]*<\/AskSize>$/);
  });
});

test('words inside lists, quotes, tables and other words are found', () => {
  const text =
    '> <Size of="a" />\n\n- one <Size of="b" />\n\n| x |\n| - |\n| <Size of="c" /> |\n\n<Tip>\n\n**<Size of="d" />**\n\n</Tip>\n';
  expect(read(text).words.map(({ name, attributes }) => `${name} ${JSON.stringify(attributes[0]?.value)}`)).toEqual([
    'Size "a"',
    'Size "b"',
    'Size "c"',
    'Tip undefined',
    'Size "d"',
  ]);
});

test('maths is found with the offset of its first sign', () => {
  const text = 'So $$a+b$$ and\n\n$$\nc\n$$\n';
  expect(read(text).maths.map(({ tex, display, at }) => [tex, display, text.slice(at, at + tex.length)])).toEqual([
    ['a+b', false, 'a+b'],
    ['c', true, 'c'],
  ]);
});

test('a price is a price', () => {
  expect(read('It costs $5 to $10, and $w + 2e$ is no maths.').maths).toEqual([]);
});

test('code is no word and no maths', () => {
  expect(read('`<Size of={x} />` and `$$a$$`\n\n```\n<Siez /> {x}\n```\n')).toMatchObject({
    words: [],
    maths: [],
    pictures: [],
    faults: [],
  });
});
