import { expect, test } from 'vitest';
import { kindOf, sizeOf } from '../../../components/words/download/kinds.ts';
import { canBeTaken } from '../../../src/site/content/files-beside.ts';

test.each([
  ['plan.pdf', 'PDF'],
  ['The plan.ODT', 'text'],
  ['room.v2.xlsx', 'table'],
  ['a.step', 'STEP'],
  ['plan', 'file'],
])('%s is a %s', (name, kind) => expect(kindOf(name)).toBe(kind));

test.each([
  [0, '1 kB'],
  [1400, '1 kB'],
  [999_499, '999 kB'],
  [999_500, '1 MB'],
  [1_250_000, '1.3 MB'],
  [12_600_000, '13 MB'],
  [2_400_000_000, '2.4 GB'],
])('%i bytes are %s', (bytes, said) => expect(sizeOf(bytes)).toBe(said));

test.each(['../site.yaml', 'a/b.pdf', 'a\\b.pdf', '.env', '01-size.mdx', 'course.yaml', 'x.html', 'x.SVG', 'x.js'])(
  '%s is never handed out',
  (name) => expect(canBeTaken(name)).toBe(false),
);
