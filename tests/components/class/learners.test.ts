/** One learner, one row: names as people compare them, and what a later hand-in changes. */
import { describe, expect, test } from 'vitest';
import type { AnswerRecord, HandIn } from '../../../components/class/hand-in.ts';
import {
  changeBetween,
  changeInWords,
  inOtherEdition,
  nameKey,
  takeIn,
  type ClassLearner,
} from '../../../components/class/learners.ts';

// Unicode's own case folding of İ, ß, Σ and of letters of another width: CaseFolding.txt and UAX #15.
test.each([
  ['Mira', 'MIRA'],
  ['Zoe\u0308', 'ZOË'],
  ['İpek', 'ipek'],
  ['Groß', 'GROSS'],
  ['Σίσυφος', 'ΣΊΣΥΦΟΣ'],
  ['Ｍｉｒａ', 'mira'],
])('%s and %s are one name', (one, other) => {
  expect(nameKey(one)).toBe(nameKey(other));
});

test('different names stay different', () => {
  expect(nameKey('Mira')).not.toBe(nameKey('Mirá'));
  expect(nameKey('علی\u200cرضا')).not.toBe(nameKey('علی'));
});

const record = (name: string, right: boolean): AnswerRecord => {
  return { name, tries: 1, right, atOnce: right, slips: right ? [] : ['left-out ease'] };
};
const handIn = (answers: AnswerRecord[], more: Partial<HandIn> = {}, sewn = 0): HandIn => ({
  name: 'Mira',
  course: 'pleats',
  day: '2030-05-01',
  lessons: [{ lesson: 'fold', sections: 1, sewn, answers }],
  ...more,
});
const known = (value: HandIn): ClassLearner => ({ key: nameKey(value.name), handIn: value, times: 1 });

describe('a later hand-in', () => {
  const first = handIn([record('a', false), record('b', false), record('c', true)]);
  const later = handIn(
    [record('a', true), record('b', true), record('c', true), ...['d', 'e', 'f', 'g'].map((one) => record(one, false))],
    { name: 'MIRA', day: '2030-05-02' },
    2,
  );

  test('takes the place of the one before, with a word about what changed', () => {
    const { what, learner } = takeIn(known(first), later);
    expect(what).toBe('again');
    expect(learner).toMatchObject({ key: 'mira', handIn: later, times: 2 });
    expect(changeInWords(learner.change!)).toBe('4 more answers, 2 now right, 2 more steps sewn');
  });

  test('of the same day is told by its time', () => {
    const at = (time?: string) => handIn([record('a', true)], time === undefined ? {} : { time });
    expect(takeIn(known(at('09:00')), at('10:00')).what).toBe('again');
    expect(takeIn(known(at('10:00')), at('09:00')).what).toBe('older');
    // A file from before times were handed in comes before all of its day.
    expect(takeIn(known(at()), at('00:01')).what).toBe('again');
  });

  test('that is older leaves the row as it is, and the same file is the same', () => {
    expect(takeIn(known(later), first)).toMatchObject({ what: 'older', learner: { handIn: later } });
    expect(takeIn(known(first), structuredClone(first)).what).toBe('same');
    expect(takeIn(undefined, first).what).toBe('new');
  });

  test('with less in it may be somebody else’s', () => {
    expect(changeInWords(changeBetween(later, first))).toBe(
      '4 answers fewer than before: is it somebody else of that name?',
    );
    expect(changeInWords(changeBetween(first, first))).toBe('nothing new');
  });
});

test('a learner who answers in the other edition is named', () => {
  const inInches = handIn([{ ...record('a', true), edition: 'inch' }, record('b', true)]);
  const mixed = handIn([
    { ...record('a', true), edition: 'inch' },
    { ...record('b', true), edition: 'metric' },
  ]);
  const all = [known(inInches), known({ ...mixed, name: 'Ben' })];
  expect(inOtherEdition(all, 'inch')).toEqual([{ name: 'Ben', answers: 1, of: 2 }]);
  expect(inOtherEdition([known(inInches)], 'inch')).toEqual([]);
});
