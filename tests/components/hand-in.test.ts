/** What is handed in, on its way and when it comes from somebody who means no good. */
import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { slipInWords, toCsv, whatWentWrong, whoIsWhere } from '../../components/handing-in/class.ts';
import { gather, type CourseLesson, type HandIn } from '../../components/handing-in/hand-in.ts';
import { readHandIn, toCode, toFile } from '../../components/handing-in/wire.ts';

const lessons: CourseLesson[] = [
  {
    id: 'fold',
    title: 'Fold',
    url: '/courses/pleats/fold/',
    path: '/school/courses/pleats/fold/',
    steps: 3,
    questions: [
      { name: 'strip', words: 'How long is the strip?' },
      { name: 'folds', words: 'How many folds?' },
    ],
  },
];

const answered = (tries: number, right: boolean, slips: string[] = []) => ({
  name: 'strip',
  tries,
  right,
  atOnce: tries === 1 && right,
  slips,
});
const from = (name: string, answer = answered(1, true)): HandIn => ({
  name,
  course: 'pleats',
  day: '2030-05-01',
  lessons: [{ lesson: 'fold', steps: 2, answers: [answer] }],
});

test('what the browser kept is gathered, and rubbish is passed over', () => {
  const kept = new Map([
    [
      'answer:/school/courses/pleats/fold/#strip',
      '{"tries":2,"checked":{"right":true},"firstRight":false,"slips":["half",7]}',
    ],
    ['answer:/school/courses/pleats/fold/#folds', '{"tries":'],
    ['answer:/elsewhere/#strip', '{"tries":9}'],
    ['done:/courses/pleats/fold/', '["a","b","c","d","e"]'],
  ]);
  expect(gather(kept, lessons)).toEqual([
    { lesson: 'fold', steps: 3, answers: [{ name: 'strip', tries: 2, right: true, atOnce: false, slips: ['half'] }] },
  ]);
});

test('a hand-in comes out of its file and its code as it went in', async () => {
  const handIn = from('Åsa Ñ. 🧵', answered(3, false, ['one-side seam']));
  expect(await readHandIn(toFile(handIn))).toEqual({ ok: true, value: handIn });
  const code = await toCode(handIn);
  expect(code).toMatch(/^SEW1\.[\w-]+$/);
  expect(await readHandIn(`  ${code.slice(0, 30)}\n${code.slice(30)} `)).toEqual({ ok: true, value: handIn });
});

describe('refused', () => {
  const whole = JSON.parse(toFile(from('Ada'))) as Record<string, unknown>;
  const bomb = deflateRawSync(Buffer.alloc(20_000_000, 32)).toString('base64url');
  test.each([
    ['nothing', ''],
    ['another text', 'Dear teacher'],
    ['another file', '{"progress":1,"kept":{}}'],
    ['a list', '[1,2,3]'],
    ['null', 'null'],
    ['a damaged code', 'SEW1.abc'],
    ['a code with other signs', 'SEW1.<b>'],
    ['a small code that unpacks to 20 MB', `SEW1.${bomb}`],
    ['a very long text', 'x'.repeat(100_000)],
    ['a name of 5 000 letters', JSON.stringify({ ...whole, name: 'x'.repeat(5000) })],
    ['a name with a line break', JSON.stringify({ ...whole, name: 'Ada\n=1+1' })],
    ['a name that turns the writing round', JSON.stringify({ ...whole, name: 'Ada\u202Eada' })],
    ['something more than a hand-in has', JSON.stringify({ ...whole, script: 'alert(1)' })],
    ['a prototype', '{"hand-in":1,"__proto__":{"name":"Ada"},"course":"pleats","day":"2030-05-01","lessons":[]}'],
    ['tries below none', toFile(from('Ada', { ...answered(1, true), tries: -1 }))],
    ['a later version', JSON.stringify({ ...whole, 'hand-in': 2 })],
  ])('%s', async (_, text) => {
    const read = await readHandIn(text);
    expect(read).toEqual({ ok: false, sentence: expect.stringMatching(/^(?:It is|The code is) .+\.$/) });
  });
});

test('a class is told who is where and what went wrong, the commonest slip first', () => {
  const all = [
    from('Cleo', answered(2, true, ['one-side seam'])),
    from('Ada'),
    from('Ben', answered(2, false, ['half', 'one-side seam'])),
    { ...from('Dot'), lessons: [{ lesson: 'knots', steps: 900, answers: [answered(1, true)] }] },
  ];
  expect(whoIsWhere(all, lessons).map(({ name, lessons: [one] }) => [name, one?.right, one?.of, one?.steps])).toEqual([
    ['Ada', 1, 2, 2],
    ['Ben', 0, 2, 2],
    ['Cleo', 1, 2, 2],
    ['Dot', 0, 2, 0],
  ]);
  expect(whatWentWrong(all, lessons)).toEqual([
    {
      lesson: 'Fold',
      words: 'How long is the strip?',
      atOnce: 1,
      later: 1,
      open: 1,
      slips: [
        { words: 'one side: seam', times: 2 },
        { words: 'half', times: 1 },
      ],
    },
  ]);
});

test('slips are said in words', () => {
  expect(slipInWords('left-out card width')).toBe('left out: card width');
  expect(slipInWords('near')).toBe('a mark off');
  expect(slipInWords('own 2')).toBe('the lesson’s own slip 2');
  expect(slipInWords('A valley fold')).toBe('A valley fold');
});

// What a spreadsheet takes for a formula: OWASP, "CSV Injection". Quotes and line ends: RFC 4180.
test.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1'])('CSV: %j is no formula any more', (name) => {
  const [, row = ''] = toCsv([from(name)], lessons).split('\r\n');
  expect(row.startsWith(`"'${name}",`)).toBe(true);
});

test('CSV: quotes and commas stay in their cell', () => {
  const text = toCsv([from('Ada "Pins", jr')], lessons);
  expect(text).toBe(
    '"name","day","lesson","question","tries","right","right at once","slips"\r\n' +
      '"Ada ""Pins"", jr","2030-05-01","Fold","How long is the strip?","1","yes","yes",""\r\n',
  );
});
