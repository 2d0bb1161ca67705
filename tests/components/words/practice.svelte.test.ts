/**
 * A set of practice and its learner. Sums by hand, metric edition of the swatch-card folio: panel width = card width +
 * 2 ease + 2 seam; a wrong sum leaves one seam of 6 mm out.
 */
import { beforeEach, expect, test } from 'vitest';
import { PracticeState, type SumQuestion } from '../../../components/words/practice/state.svelte.ts';
import type { SetQuestion } from '../../../components/words/word.ts';
import { editionChoice } from '../../../components/page/edition.svelte.ts';
import { learner, newPage, plain } from '../lesson.ts';

beforeEach(() => newPage());

const PANEL: SumQuestion[] = [{ of: 'panel width' }];
const set = (asks = PANEL, others: SetQuestion[] = [], wanted = 3) =>
  new PracticeState(learner('metric'), { id: 'panel' }, { asks, others }, wanted, 'rising');

/** The answer in mm, worked out from what is given. */
function panel({ pattern }: PracticeState): number {
  const mm = (name: string) => pattern?.measures[name]?.value ?? NaN;
  return mm('card width') + 2 * mm('ease') + 2 * mm('seam');
}

function answer(practice: PracticeState, text: string): void {
  practice.type(text);
  practice.check();
}

test('a set ends when three in a row are right at once, and starts over after a slip', async () => {
  let practice = set();
  await practice.begin();
  const seen = new Set<number>();
  for (let round = 0; round < 4; round++) {
    expect(practice.given).toEqual(['card width', 'ease', 'seam']);
    const wanted = panel(practice);
    seen.add(wanted);
    // The second is answered wrongly at first: one seam only.
    if (round === 1) {
      answer(practice, String(wanted - practice.pattern!.measures.seam!.value));
      expect(practice.feedback).toContain('Try once more.');
      expect(practice.hints).toHaveLength(1);
      expect(practice.inARow).toBe(0);
    }
    answer(practice, String(wanted));
    expect(plain(practice.feedback)).toMatch(/Right: \d+ mm/);
    expect(practice.status).toBe('right');
    // In the middle the page is loaded again, and the set goes on.
    if (round === 2) await (practice = set()).begin();
    else if (round < 3) practice.next();
  }
  expect(seen.size).toBeGreaterThan(2);
  expect(practice.inARow).toBe(2);
  expect(practice.isDone).toBe(false);
  practice.next();
  answer(practice, String(panel(practice)));
  expect(practice.isDone).toBe(true);
  // Whoever begins once more has all of it before them.
  await practice.begin();
  expect(practice.inARow).toBe(0);
});

test('what cannot be read is no try, and the same answer twice is one', async () => {
  const practice = set();
  await practice.begin();
  practice.check();
  expect(practice.feedback).toBe('Write your answer first.');
  answer(practice, 'wide enough');
  expect(practice.status).toBe('unread');
  expect(practice.feedback).toContain('is not a length');
  expect(practice.tries).toBe(0);
  answer(practice, '1 mm');
  expect(practice.status).toBe('again');
  practice.check();
  expect(practice.tries).toBe(1);
  answer(practice, '2 mm');
  expect(practice.status).toBe('wrong');
  expect(practice.feedback).toContain('The worked solution shows the way.');
});

test('another edition draws other numbers, on its own marks', async () => {
  const practice = set();
  await practice.begin();
  expect(practice.pattern?.edition).toBe('metric');
  editionChoice.choose('inch');
  practice.onEdition();
  expect(practice.pattern?.edition).toBe('inch');
  for (const name of practice.given) {
    const sixteenths = practice.pattern!.measures[name]!.value / (25.4 / 16);
    expect(sixteenths).toBeCloseTo(Math.round(sixteenths), 6);
  }
});

const FOLDS: SumQuestion[] = [
  { of: 'depth + step' },
  { of: 'seam + lift + depth' },
  { of: 'seam + lift + 3 * depth + step' },
];
const others: SetQuestion[] = ['first-fold', 'bottoms'].map((name) => ({
  word: 'AskChoice',
  words: [name],
  view: {
    name,
    choices: [
      { text: 'a mountain fold', right: true },
      { text: 'a valley fold', right: false },
    ],
  },
  newNumbers: false,
}));

/** What an exercise of the strip's folds comes to, by hand. */
function fold({ pattern, ask }: PracticeState): string {
  const mm = (name: string) => pattern?.measures[name]?.value ?? NaN;
  const edge = mm('seam') + mm('lift');
  const sums = [mm('depth') + mm('step'), edge + mm('depth'), edge + 3 * mm('depth') + mm('step')];
  return String(sums[FOLDS.findIndex(({ of }) => of === ask.of)]);
}

test('a set rises with each right answer, asks other kinds between, and a slip leads back to the first', async () => {
  let practice = set(FOLDS, others, 5);
  await practice.begin();
  const asked = () => practice.other?.view.name ?? practice.ask.of;
  expect(asked()).toBe('depth + step');
  answer(practice, fold(practice));
  expect(practice.inARow).toBe(1);
  practice.next();
  // A question of another kind, got wrong at first: the row begins anew.
  const missed = asked();
  expect(['first-fold', 'bottoms']).toContain(missed);
  practice.judged(false);
  expect(practice.inARow).toBe(0);
  practice.next();

  expect(asked()).toBe('depth + step');
  answer(practice, fold(practice));
  practice.next();
  expect(['first-fold', 'bottoms']).toContain(asked());
  expect(asked()).not.toBe(missed);
  practice.judged(true);
  expect(practice.inARow).toBe(2);
  // In the middle the page is loaded again, and goes on where it was.
  practice = set(FOLDS, others, 5);
  expect(practice.inARow).toBe(2);
  await practice.begin();

  expect(asked()).toBe('seam + lift + depth');
  answer(practice, fold(practice));
  practice.next();
  expect(asked()).toBe(missed);
  practice.judged(true);
  expect(practice.inARow).toBe(4);
  practice.next();
  expect(asked()).toBe('seam + lift + 3 * depth + step');
  answer(practice, fold(practice));
  expect(practice.isDone).toBe(true);
});

test.each(['{', 'null', '[]', '{"firstTries":[1],"level":9,"series":0.5,"slips":{}}'])(
  'a set of which %s is kept begins afresh',
  async (rubbish) => {
    localStorage.setItem('course-kit:practice:/lesson/#panel', rubbish);
    const practice = set();
    expect([practice.inARow, practice.level, practice.isDone]).toEqual([0, 'rising', false]);
    await practice.begin();
    answer(practice, String(panel(practice)));
    expect(practice.inARow).toBe(1);
  },
);
