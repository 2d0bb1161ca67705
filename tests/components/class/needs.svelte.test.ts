/** Who needs help first and what to say again, and that slips are said as the learner reads them. */
import { expect, test } from 'vitest';
import type { AnswerRecord, CourseLesson, HandIn } from '../../../components/class/hand-in.ts';
import { collectRecords } from '../../../components/class/hand-in.ts';
import { nameKey, type ClassLearner } from '../../../components/class/learners.ts';
import { whatToSayAgain, whoNeedsHelp } from '../../../components/class/needs.ts';
import { lessonPattern, rightAnswer, sayAnswer, saySlip } from '../../../components/class/say.ts';
import { provideProject } from '../../../components/page/learner.svelte.ts';
import { judge, kindInWords, sayToClass, slipKinds, slipsOf, sumFor, wordingOf } from '../../../src/core/index.ts';
import { folio, notionsPouch, shelf, tableSet } from '../../core/project/files.ts';
import { resolveProject } from '../../../src/core/index.ts';

provideProject({ id: 'folio', file: folio(), materials: shelf(), edition: 'inch' });

const sum = (of: string) => ({ name: of, words: `${of}?`, asked: { kind: 'sum' as const, of: [of] } });
const [room, panel, choice] = [
  sum('card width + 2 * ease'),
  sum('panel width'),
  {
    name: 'edges',
    words: 'Which edges?',
    asked: {
      kind: 'choose' as const,
      picks: [
        { key: 'left', words: 'Left', right: true as const },
        { key: 'top', words: 'Top', say: 'Not the top edge.' },
      ],
    },
  },
];
const lessons: CourseLesson[] = [
  {
    ...{ id: 'size', title: 'Size', url: 'courses/x/size/', path: '/courses/x/size/', project: 'folio', sections: 2 },
    ...{ steps: ['cut', 'fuse', 'sew', 'turn'], questions: [room, panel, choice], practices: [], pieces: [] },
  },
];

const right = (name: string): AnswerRecord => ({ name, tries: 1, right: true, atOnce: true, slips: [] });
const wrong = (name: string, slip: string): AnswerRecord => {
  return { name, tries: 1, right: false, atOnce: false, slips: [slip], slip };
};
const learner = (name: string, answers: AnswerRecord[], sewn = 2, day = '2030-05-01'): ClassLearner => {
  const handIn: HandIn = { name, course: 'x', day, lessons: [{ lesson: 'size', sections: 1, sewn, answers }] };
  return { key: nameKey(name), handIn, times: 1 };
};

test('the rule: most slips of a kind, then most open, then behind, then longest ago', () => {
  const left = (name: string) => wrong(name, 'left-out ease');
  const needs = whoNeedsHelp([
    learner('Fine', [right(room.name)]),
    learner('Behind', [right(room.name)], 0),
    learner('Today', [wrong(room.name, 'other')], 2, '2030-05-02'),
    learner('Long ago', [wrong(room.name, 'other')], 2, '2030-04-02'),
    learner('Two kinds', [left(room.name), wrong(panel.name, 'half')]),
    learner('One kind', [left(room.name), wrong(panel.name, 'left-out seam')]),
  ]);
  expect(needs.map(({ name }) => name)).toEqual(['One kind', 'Two kinds', 'Long ago', 'Today', 'Behind']);
  expect(needs[0]!.reason).toBe('leaves a part out of the sum, in 2 open questions.');
  expect(needs.at(-1)!.reason).toBe('2 steps behind the middle of the class.');
});

test('what half of the class missed is said again, a slip once for all its questions', () => {
  const again = whatToSayAgain(
    [
      learner('A', [wrong(room.name, 'left-out ease'), wrong(choice.name, 'other')]),
      learner('B', [wrong(room.name, 'left-out ease'), wrong(choice.name, 'other')]),
      learner('C', [right(room.name), right(choice.name)]),
      learner('D', [wrong(panel.name, 'left-out seam')]),
    ],
    lessons,
    'inch',
  );
  expect(again).toEqual([
    {
      sentence: expect.stringMatching(/^Take the ease into the sum\. /) as string,
      why: `2 of 4 made this slip, at “${room.words}”.`,
      learners: 2,
    },
    {
      sentence: 'Work this through together: “Which edges?”',
      why: '2 of 3 had it wrong at first, and 2 still have.',
      learners: 2,
    },
  ]);
});

test('an answer at the lesson’s size is said as its learner read it; at another size by its slip', () => {
  const pattern = lessonPattern('folio', 'inch')!;
  for (const text of ['4 1/4 in', '4 1/2 in', '7 in', '4 5/8 in']) {
    const judged = judge(text, { of: room.name }, pattern);
    if (!('value' in judged)) throw new Error(text);
    const [lesson] = collectRecords(
      new Map([
        [
          `answer:/courses/x/size/#${room.name}`,
          JSON.stringify({
            given: text,
            tries: 1,
            slips: ['left-out ease'],
            checked: {
              given: text,
              right: judged.verdict === 'right',
              note: { value: judged.value, wanted: judged.wanted.value, edition: 'inch', sentence: judged.sentence },
            },
          }),
        ],
      ]),
      lessons,
    );
    const said = sayAnswer(lesson!.answers[0]!, room, 'folio');
    expect(said).toMatchObject({ sentence: judged.sentence, ownSize: false });
    const elsewhere = sayAnswer({ ...lesson!.answers[0]!, wanted: 999 }, room, 'folio');
    expect(elsewhere.ownSize).toBe(true);
    if (judged.verdict !== 'right') expect(elsewhere.sentence).toMatch(/^You left out the ease\./);
  }
  expect(rightAnswer(room, pattern)).toMatch(/^4\D*½\sin$|^4 1⁄2\sin$/u);
});

test('what was chosen goes along by its place, and comes back in words', () => {
  const kept = {
    given: ['top'],
    tries: 1,
    slips: ['top', 'without: left'],
    checked: { given: ['top'], right: false, slip: 'top' },
  };
  const [lesson] = collectRecords(new Map([['answer:/courses/x/size/#edges', JSON.stringify(kept)]]), lessons);
  const [answer] = lesson!.answers;
  expect(answer).toMatchObject({ picked: [1], slip: 'pick 1', slips: ['pick 1', 'without 0'] });
  expect(sayAnswer(answer!, choice, 'folio')).toEqual({
    answer: 'Top',
    sentence: '“Top”: Not the top edge.',
    ownSize: false,
  });
  expect(saySlip('without 0', choice, undefined).sentence).toBe('“Left” is missing.');
  expect(saySlip('pick 77', choice, undefined).sentence).toBe('Another wrong answer.');
});

test('every slip of the demos has a sentence for a class: whole, short, and for nobody alone', () => {
  const kinds = new Set<string>();
  for (const file of [folio(), notionsPouch(), tableSet()]) {
    const pattern = resolveProject(file, { edition: 'inch', materials: shelf() });
    for (const { name, formula } of Object.values(pattern.measures)) {
      if (!formula) continue;
      const sum = sumFor(name, pattern);
      if (!sum.ok) continue;
      for (const slip of slipsOf({ of: name }, sum.value, pattern)) {
        const said = sayToClass(slip, wordingOf(pattern));
        kinds.add(slip.kind);
        expect(said, slip.key).toMatch(/^\p{Lu}.*[.?]$/u);
        expect(said, slip.key).not.toMatch(/\byou (?:left|added|took|counted|used)\b|undefined|\s{2}/iu);
      }
    }
  }
  for (const kind of ['left-out', 'one-side', 'alone', 'twice', 'wrong-sign', 'unit', 'half'])
    expect(kinds).toContain(kind);
  expect(Object.keys(kindInWords).toSorted()).toEqual([...slipKinds].toSorted());
});
