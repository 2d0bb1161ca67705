import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { withEntry, withValue } from '../../src/author/yaml-edit.ts';
import type { Place } from '../../src/site/located-yaml.ts';

const folio = readFileSync(new URL('../../content/projects/swatch-folio/project.yaml', import.meta.url), 'utf8');

/** The lines that differ, each as it was and as it is. */
function changedLines(before: string, after: string): [string, string][] {
  const [was, is] = [before.split('\n'), after.split('\n')];
  expect(is).toHaveLength(was.length);
  return was.flatMap((line, i): [string, string][] => (line === is[i] ? [] : [[line, is[i]!]]));
}

test.each<[Place, string, string]>([
  [['measures', 'ease', 'in'], '3/16', '    in: 3/16'],
  [['measures', 'seam', 'mm'], '7', '  seam: { in: 1/4, mm: 7, label: Seam allowance, note: One presser foot wide. }'],
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
