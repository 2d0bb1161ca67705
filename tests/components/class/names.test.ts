/** Names of people in every writing, and what a hand-in may say beside them. */
import { expect, test } from 'vitest';
import type { HandIn } from '../../../components/class/hand-in.ts';
import { cleanName } from '../../../components/class/names.ts';
import { readHandIn, toCode, toFile } from '../../../components/class/wire.ts';
import { slipKinds } from '../../../src/core/index.ts';

const from = (name: string, slips: string[] = [], mistakes: string[] = []): HandIn => ({
  name,
  course: 'pleats',
  day: '2030-05-01',
  lessons: [
    {
      lesson: 'fold',
      sections: 2,
      sewn: 1,
      answers: [{ name: 'نیم‌فاصله', tries: 2, right: true, atOnce: false, slips }],
      practised: [{ name: 'strip', exercises: 1, atOnce: 0, done: false, slips }],
      measured: [{ name: 'strip', verdict: 'explained', mistakes }],
    },
  ],
});

// The joiners are part of these writings: The Unicode Standard, section 23.2, Layout Controls.
test.each([
  ['a Persian name', 'علی‌رضا', 'علی‌رضا'],
  ['an Arabic one', 'محمد', 'محمد'],
  ['a Hindi one', 'क्‍षमा', 'क्‍षमा'],
  ['one with marks that go together', 'Zoe\u0308', 'Zoë'],
  ['a joined emoji', '👩🏽‍🔧 Ada', '👩🏽‍🔧 Ada'],
  ['a flag of tags', '🏴󠁧󠁢󠁥󠁮󠁧󠁿', '🏴󠁧󠁢󠁥󠁮󠁧󠁿'],
  ['marks of direction round it', '\u202bعلی‌رضا\u202c', 'علی‌رضا'],
  ['one that turns the writing round', 'Ada\u202Eada', 'Adaada'],
  ['isolates, a byte mark and a soft hyphen', '\ufeff\u2068A\u00adda\u2069\u200f', 'Ada'],
  ['a tab, a line and blanks', ' Ada\t\r\nB. ', 'Ada B.'],
  ['joiners at its edges', '\u200dAda\u200c', 'Ada'],
  ['half a sign', 'Ada\ud83d', 'Ada'],
  ['nothing to be seen', '\u200b\u2060\u200d ', ''],
])('%s', async (_, typed, name) => {
  expect(cleanName(typed)).toBe(name);
  if (name === '') return;
  const handIn = from(cleanName(typed));
  expect(await readHandIn(toFile(handIn))).toEqual({ ok: true, value: handIn });
  expect(await readHandIn(await toCode(handIn))).toEqual({ ok: true, value: handIn });
});

test('a long name ends between two signs', () => {
  const family = '👨‍👩‍👧‍👦';
  expect(cleanName(family.repeat(10))).toBe(family.repeat(5));
  expect(cleanName('e\u0301'.repeat(80))).toBe('é'.repeat(60));
});

test('a name from elsewhere with nothing to be seen in it is refused', async () => {
  expect(await readHandIn(toFile(from('\u200d\u200c')))).toMatchObject({ ok: false });
});

test('what the kit calls a slip travels, and no other text does', async () => {
  const known = [
    ...slipKinds.map((kind) => `${kind} card width`),
    'near',
    'other',
    'own 1',
    'half',
    'left-out seam, lift',
  ];
  for (let i = 0; i < known.length; i += 12) {
    const slips = known.slice(i, i + 12);
    expect(await readHandIn(toFile(from('Ada', slips)))).toEqual({ ok: true, value: from('Ada', slips) });
  }
  const mistakes = ['cut-at-finished', 'Ring 555-0100', '__proto__'];
  const foreign = ['Buy at example.org', 'half <b>', 'half =1+1', 'own one', 'constructor', '__proto__', 'half'];
  const file = JSON.stringify({ 'hand-in': 1, ...from('Ada', foreign, mistakes) });
  expect(await readHandIn(file)).toEqual({ ok: true, value: from('Ada', ['other', 'half'], ['cut-at-finished']) });
  expect(toFile(from('Ada', foreign, mistakes))).not.toMatch(/example|Ring|<b>/);
});

test.each([
  ['2030-02-28', true],
  ['2032-02-29', true],
  ['2030-02-29', false],
  ['2030-13-01', false],
  ['2030-00-10', false],
  ['2030-04-31', false],
])('%s is a day: %s', async (day, ok) => {
  expect((await readHandIn(toFile({ ...from('Ada'), day }))).ok).toBe(ok);
});

test('a lesson of a thousand questions is handed in whole, as file and as code', async () => {
  const [lesson] = from('Ada').lessons;
  const answers = Array.from({ length: 1000 }, (_, i) => ({
    ...lesson!.answers[0]!,
    name: `card width + ${i} * ease + 2 * seam`,
    slips: ['one-side seam', 'left-out ease'],
  }));
  const handIn = { ...from('Ada'), lessons: [{ ...lesson!, answers }] };
  expect(await readHandIn(toFile(handIn))).toEqual({ ok: true, value: handIn });
  expect(await readHandIn(await toCode(handIn))).toEqual({ ok: true, value: handIn });
});

test.each(['\u3164', '\u115f\u1160', '\u2800', '\u180b', '\uffa0', '\u{e0041}', '\u034f', '\u200d\ufe0f'])(
  'a name in which nothing is seen is none: %j',
  (typed) => expect(cleanName(typed)).toBe(''),
);
