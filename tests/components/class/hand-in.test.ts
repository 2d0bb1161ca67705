/** What is handed in, on its way and when it comes from somebody who means no good. */
import { deflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import {
  mistakeInWords,
  slipInWords,
  toCsv,
  whatWasMeasured,
  whatWentWrong,
  whoIsWhere,
} from '../../../components/class/class.ts';
import { codesIn } from '../../../components/class/codes.ts';
import { collectRecords, type CourseLesson, type HandIn } from '../../../components/class/hand-in.ts';
import { qrPath } from '../../../components/class/qr.ts';
import { readHandIn, toCode, toFile } from '../../../components/class/wire.ts';

const lessons: CourseLesson[] = [
  {
    id: 'fold',
    title: 'Fold',
    url: 'courses/pleats/fold/',
    path: '/school/courses/pleats/fold/',
    project: 'folio',
    sections: 3,
    steps: ['pleat', 'press'],
    questions: [
      { name: 'strip', words: 'How long is the strip?' },
      { name: 'folds', words: 'How many folds?' },
    ],
    practices: [{ name: 'strip again', words: 'And how long is it now?', rounds: 2 }],
    pieces: [
      { name: 'strip cut', words: 'strip, cut' },
      { name: 'strip sewn', words: 'strip, sewn' },
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
  lessons: [{ lesson: 'fold', sections: 2, sewn: 1, answers: [answer] }],
});

test('what the browser kept is gathered, and rubbish is passed over', () => {
  const kept = new Map([
    [
      'answer:/school/courses/pleats/fold/#strip',
      '{"tries":2,"checked":{"right":true},"firstRight":false,"slips":["half",7]}',
    ],
    ['answer:/school/courses/pleats/fold/#folds', '{"tries":'],
    ['answer:/elsewhere/#strip', '{"tries":9}'],
    ['read:/courses/pleats/fold/', '["a","b"]'],
    ['done:/courses/pleats/fold/', '["b","c",7]'],
    ['steps:folio', '{"press":true,"sew-round":true,"pleat":"yes"}'],
  ]);
  expect(collectRecords(kept, lessons)).toEqual([
    {
      lesson: 'fold',
      sections: 3,
      sewn: 1,
      answers: [{ name: 'strip', tries: 2, right: true, atOnce: false, slips: ['half'] }],
    },
  ]);
});

test.each([
  ['nothing yet', '{"firstTries":[],"series":0}', undefined],
  [
    'a slip, then one',
    '{"firstTries":[false,true],"series":0,"slips":["half"]}',
    { exercises: 2, atOnce: 1, done: false, slips: ['half'] },
  ],
  [
    'two in a row',
    '{"firstTries":[false,true,true],"slips":["half"]}',
    { exercises: 3, atOnce: 2, done: true, slips: ['half'] },
  ],
  ['a second set just begun', '{"firstTries":[],"series":1}', { exercises: 0, atOnce: 0, done: true, slips: [] }],
  ['rubbish', '{"firstTries":"many","series":"x"}', undefined],
])('practice is gathered: %s', (_, kept, wanted) => {
  const [lesson] = collectRecords(new Map([['practice:/school/courses/pleats/fold/#strip again', kept]]), lessons);
  expect(lesson?.practised).toEqual(wanted && [{ name: 'strip again', ...wanted }]);
});

test('what was measured is gathered once it was compared', () => {
  const at = 'measured:/school/courses/pleats/fold/#';
  const kept = new Map([
    [`${at}strip cut`, '{"width":"5","height":"","verdict":"explained","mistakes":["cut-at-finished",3]}'],
    [`${at}strip sewn`, '{"width":"5","height":""}'],
    [`${at}flap cut`, '{"verdict":"well"}'],
  ]);
  expect(collectRecords(kept, lessons)[0]?.measured).toEqual([
    { name: 'strip cut', verdict: 'explained', mistakes: ['cut-at-finished'] },
  ]);
});

const more = {
  practised: [{ name: 'strip again', exercises: 4, atOnce: 3, done: true, slips: ['one-side seam'] }],
  measured: [{ name: 'strip cut', verdict: 'explained' as const, mistakes: ['cut-at-finished'] }],
};
const withMore = (name: string): HandIn => {
  const handIn = from(name);
  return { ...handIn, lessons: handIn.lessons.map((lesson) => ({ ...lesson, ...more })) };
};

test('practice and measured pieces travel too, and files from before they did are still read', async () => {
  for (const handIn of [withMore('Ada'), from('Ada')]) {
    expect(await readHandIn(toFile(handIn))).toEqual({ ok: true, value: handIn });
    expect(await readHandIn(await toCode(handIn))).toEqual({ ok: true, value: handIn });
  }
});

test('a file from before sections read and steps sewn were told apart says what it knows', async () => {
  const before = toFile(from('Ada')).replace('"sections":2,"sewn":1', '"steps":2');
  const read = await readHandIn(before);
  expect(read.ok && read.value.lessons[0]).toMatchObject({ sections: 2, sewn: 0 });
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
    ['a verdict that there is not', toFile(withMore('Ada')).replace('"explained"', '"splendid"')],
    ['mistakes of 5 000 letters', toFile(withMore('Ada')).replace('cut-at-finished', 'x'.repeat(5000))],
    ['half an exercise', toFile(withMore('Ada')).replace('"exercises":4', '"exercises":0.5')],
    ['practice with more to it', toFile(withMore('Ada')).replace('"exercises":4', '"exercises":4,"script":"x"')],
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
    { ...from('Dot'), lessons: [{ lesson: 'knots', sections: 900, sewn: 900, answers: [answered(1, true)] }] },
  ];
  expect(whoIsWhere(all, lessons).map(({ name, lessons: [one] }) => [name, one?.read, one?.right, one?.sewn])).toEqual([
    ['Ada', 2, 1, 1],
    ['Ben', 2, 0, 1],
    ['Cleo', 2, 1, 1],
    ['Dot', 0, 0, 0],
  ]);
  expect(whatWentWrong(all, lessons)).toEqual([
    {
      lesson: 'Fold',
      lessonId: 'fold',
      name: 'strip',
      words: 'How long is the strip?',
      isPractice: false,
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

test('a class is told what was practised and what pieces measured', () => {
  const all = [withMore('Ada'), from('Ben'), withMore('Cleo')];
  expect(whatWentWrong(all, lessons).find(({ isPractice }) => isPractice)).toEqual({
    lesson: 'Fold',
    lessonId: 'fold',
    name: 'strip again',
    words: 'And how long is it now?',
    isPractice: true,
    atOnce: 0,
    later: 2,
    open: 0,
    slips: [{ words: 'one side: seam', times: 2 }],
  });
  expect(whatWasMeasured(all, lessons)).toEqual([
    {
      lesson: 'Fold',
      words: 'strip, cut',
      well: 0,
      explained: 2,
      open: 0,
      mistakes: [{ words: 'cut at its finished size', times: 2 }],
    },
  ]);
  const [ada, ben] = whoIsWhere(all, lessons);
  expect(ada?.lessons[0]).toMatchObject({ practised: 1, ofPractices: 1, measured: 1, ofPieces: 2 });
  expect(ben?.lessons[0]).toMatchObject({ practised: 0, measured: 0 });
});

test('a mistake that no kit knows is shown as the text that it is', () => {
  expect(mistakeInWords('fold-off')).toBe('a fold on the wrong line');
  expect(mistakeInWords('constructor')).toBe('constructor');
});

test('slips are said in words', () => {
  expect(slipInWords('left-out card width')).toBe('left out: card width');
  expect(slipInWords('near')).toBe('a mark off');
  expect(slipInWords('own 2')).toBe('the lesson’s own slip 2');
  expect(slipInWords('A valley fold')).toBe('A valley fold');
});

// What a spreadsheet takes for a formula: OWASP, "CSV Injection". Quotes and line ends: RFC 4180.
test.each([
  ['=1+1', "'=1+1"],
  ['+1', "'+1"],
  ['-1', "'-1"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', "'\t'=1"],
  ['\r=1', "'\r'=1"],
  ['＝1+1', "'＝1+1"],
  [' ＠SUM(A1)', "' ＠SUM(A1)"],
  ['Ada;=1+1', "Ada;'=1+1"],
  ['Ada\t+1', "Ada\t'+1"],
  ['Ada, =1', 'Ada, =1'],
])('CSV: %j is no formula any more', (name, cell) => {
  expect(toCsv([from(name)], lessons)).toContain(`\r\n"${cell}","2030-05-01",`);
});

test('CSV: quotes and commas stay in their cell, and each kind has its line', () => {
  expect(toCsv([withMore('Ada "Pins", jr')], lessons).split('\r\n')).toEqual([
    '"name","day","lesson","kind","question","tries","right","right at once","slips"',
    '"Ada ""Pins"", jr","2030-05-01","Fold","sections read","2 of 3","","","",""',
    '"Ada ""Pins"", jr","2030-05-01","Fold","steps sewn","1 of 2","","","",""',
    '"Ada ""Pins"", jr","2030-05-01","Fold","question","How long is the strip?",1,"yes","yes",""',
    '"Ada ""Pins"", jr","2030-05-01","Fold","practice","And how long is it now?",4,"yes","no","one side: seam"',
    '"Ada ""Pins"", jr","2030-05-01","Fold","piece","strip, cut","","no","","cut at its finished size"',
    '',
  ]);
});

test('of a long text that was pasted the codes alone are read, and the rest is counted', () => {
  const pasted = `${'no '.repeat(125_000)}SEW1.abc\n${'none\t'.repeat(125_000)}`;
  expect(codesIn(pasted)).toEqual({ codes: ['SEW1.abc'], others: 250_000 });
});

test('all of a long course still is one picture to scan, and a longer text has none', async () => {
  // Three times the questions of the demo course, every one tried and with what went wrong in it.
  const answers = Array.from({ length: 30 }, (_, i) => ({
    ...{ name: `question ${i}`, tries: 1 + (i % 3), right: i % 4 > 0, atOnce: false, slips: ['left-out seam'] },
    ...{ value: 107.95 + i * 3.175, wanted: 114.3 + i * 3.175, edition: 'inch' as const },
  }));
  const full: HandIn = {
    ...{ name: 'Ada', course: 'x', day: '2030-05-01' },
    lessons: ['one', 'two', 'three'].map((lesson) => ({ lesson, sections: 8, sewn: 19, answers })),
  };
  const code = await toCode(full);
  expect(qrPath(code)?.size).toBeGreaterThan(100);
  // Beyond, the page offers the file and the text.
  expect(qrPath('x'.repeat(1801))).toBeUndefined();
});
