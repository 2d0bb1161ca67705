import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { withEntry, withField, withValue } from '../../src/author/yaml-edit.ts';
import type { Place } from '../../src/site/content/located-yaml.ts';

const folio = readFileSync(new URL('../../content/projects/swatch-folio/project.yaml', import.meta.url), 'utf8');

/** The lines that differ, each as it was and as it is. */
function changedLines(before: string, after: string): [string, string][] {
  const [was, is] = [before.split('\n'), after.split('\n')];
  expect(is).toHaveLength(was.length);
  return was.flatMap((line, i): [string, string][] => (line === is[i] ? [] : [[line, is[i]!]]));
}

test.each<[Place, string, string]>([
  [['measures', 'ease', 'in'], '3/16', '    in: 3/16'],
  [
    ['measures', 'seam', 'mm'],
    '7',
    '  seam: { in: 3/8, mm: 7, label: Seam allowance, note: Wide enough for many layers and for corners that are turned. }',
  ],
  [
    ['measures', 'head', 'is'],
    'max(card height - depth, 0 in) + ease',
    '    is: max(card height - depth, 0 in) + ease',
  ],
  [['pieces', 'facing', 'size', 0], 'panel width - 1/8 in', '    size: [panel width - 1/8 in, panel height]'],
  [['pieces', 'facing', 'size', 0], 'max(seam, ease)', "    size: ['max(seam, ease)', panel height]"],
  [['title'], 'Folio: for cards # of cloth', 'title: "Folio: for cards # of cloth"'],
  [['options', 'flap', 'default'], 'false', '    default: false'],
])('%j becomes %s in one line, beside comments', (place, value, line) => {
  expect(changedLines(folio, withValue(folio, place, value)!).map(([, is]) => is)).toEqual([line]);
});

test('what is no plain value, or is not there, is left alone', () => {
  expect(withValue(folio, ['measures'], '1')).toBe(undefined);
  expect(withValue(folio, ['measures', 'hem'], '1')).toBe(undefined);
  expect(withValue('a: [1', ['a'], '2')).toBe(undefined);
});

test('any text that can be typed is read back as it was typed, and nothing else changes', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), fc.boolean(), (value, flow) => {
      const text = flow ? 'a: { b: one, c: two } # why\nd: 3\n' : 'a:\n  b: one # why\n  c: two\nd: 3\n';
      const changed = withValue(text, ['a', 'b'], value);
      if (changed === undefined) return;
      const { a, d } = parse(changed, { schema: 'failsafe' }) as { a: { b: string; c: string }; d: string };
      expect([a.b, a.c, d]).toEqual([value, 'two', '3']);
      expect(changed).toContain('# why');
    }),
    { numRuns: 300 },
  );
});

test.each([
  ['l: [a, b] # both\n', 'l: [a, b, c] # both\n'],
  ['l: []\n', 'l: [c]\n'],
  ['l:\n  - a # first\n  - b # last\n\nm: 1\n', 'l:\n  - a # first\n  - b # last\n  - c\n\nm: 1\n'],
  ['l:\n- a', 'l:\n- a\n- c'],
])('an entry more: %j', (before, after) => {
  expect(withEntry(before, ['l'], 'c')).toBe(after);
});

test.each<[string, Place, string, string, string]>([
  ['seam: { in: 1/4 } # a foot', ['seam'], 'mm', '6', 'seam: { in: 1/4, mm: 6 } # a foot'],
  ['seam:\n  in: 1/4 # a foot\n\nease: 1\n', ['seam'], 'mm', '6', 'seam:\n  in: 1/4 # a foot\n  mm: 6\n\nease: 1\n'],
  ['a:\n  b: { c: 1 }\n# end\nz: 1\n', ['a'], 'new one', 'b + 1', 'a:\n  b: { c: 1 }\n  new one: b + 1\n# end\nz: 1\n'],
  [
    'a:\n  note: >-\n    long\n    words\nz: 1\n',
    ['a'],
    'b',
    '2',
    'a:\n  note: >-\n    long\n    words\n  b: 2\nz: 1\n',
  ],
  ['a:\n  b:\n    - c: 1\n      d: 2\n', ['a', 'b', 0], 'e', '3', 'a:\n  b:\n    - c: 1\n      d: 2\n      e: 3\n'],
  ['a: 1', [], 'b', '2', 'a: 1\nb: 2'],
  ['a:\r\n  b: 1 # one\r\nz: 1\r\n', ['a'], 'c', '2', 'a:\r\n  b: 1 # one\r\n  c: 2\r\nz: 1\r\n'],
  ['a: { b: 1 }', ['a'], 'note', 'wide, then narrow', "a: { b: 1, note: 'wide, then narrow' }"],
])('%j gets one value more at %j', (text, place, name, value, after) => {
  expect(withField(text, place, name, value)).toBe(after);
});

test('nothing is added where the name is there, or where there is no group', () => {
  expect(withField('a: { b: 1 }', ['a'], 'b', '2')).toBe(undefined);
  expect(withField('a: { b: 1 }', ['a', 'b'], 'c', '2')).toBe(undefined);
  expect(withField('a: [1', [], 'b', '2')).toBe(undefined);
});

test('every group of the demo project can be given a value, and the rest stays', () => {
  const groups: Place[] = [
    [],
    ['measures'],
    ['measures', 'seam'],
    ['measures', 'ease'],
    ['pieces', 'flap'],
    ['steps', 3],
  ];
  for (const place of groups) {
    const after = withField(folio, place, 'remark', 'new') ?? '';
    expect(place.reduce<unknown>((part, step) => (part as Record<string, unknown>)[step], parse(after))).toMatchObject({
      remark: 'new',
    });
    const [before, now] = [folio.split('\n'), after.split('\n')];
    expect(now.filter((line) => !before.includes(line))).toHaveLength(1);
  }
});
