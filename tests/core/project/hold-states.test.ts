/** What a work holds is tried in the state that its hold names, open if it names none. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { check } from '../../../src/core/project/index.ts';
import { lines, resolved } from './files.ts';

const wrong = readFileSync(new URL('../../fixtures/wrong/hold-when-open.yaml', import.meta.url), 'utf8');
/** What is found, but for the advice on folding four layers together. */
const found = (yaml: string, edition: 'inch' | 'metric' = 'inch') =>
  lines(check(resolved(yaml, { edition })).filter(({ code }) => code !== 'turn-of-cloth'));
const changed = (part: string, by: string) => {
  expect(wrong).toContain(part);
  return wrong.replace(part, by);
};

describe('a hold', () => {
  it('is tried before the folds that close the work', () => {
    expect(found(wrong)).toEqual([]);
    expect(found(wrong, 'metric')).toEqual([]);
  });

  it('is tried with them where it says so', () => {
    const closed = changed('in: inside', 'in: inside, state: closed');
    expect(found(closed)).toEqual([
      'error holds > 0 > in: pocket-narrow: Folded shut, the inside is 4 in wide. That is 2 5/16 in too narrow for a banknote. Make the inside wider, or sew nearer to its edge.',
    ]);
    expect(found(changed('in: inside', 'in: inside, state: open'))).toEqual([]);
  });

  it.each([
    ['two folds, in thirds', '- { fold: case, from: left, at: 3 }\n  - { fold: case, from: right, at: 3 }'],
    ['from another side', '- { fold: case, from: right, at: 4 }'],
    ['under', '- { fold: case, from: left, at: 4, lands: under }'],
    ['pressed after', '- { fold: case, from: left, at: 4 }\n  - { press: case }'],
    ['turned over after', '- { fold: case, from: left, at: 4 }\n  - { turn over: case }'],
    ['under another name', '- { fold: case, from: left, at: 4, makes: shut case }'],
  ])('of a case with %s is tried open', (_, folds) => {
    expect(found(changed('- { fold: case, from: left, at: 4 }', folds))).toEqual([]);
  });

  it('is tried with a fold that a row of stitches holds', () => {
    const sewn = changed(
      '- { fold: case, from: left, at: 4 }',
      '- { fold: case, from: left, at: 4 }\n  - { topstitch: case, at: right, by: 1/8 }',
    );
    expect(found(sewn)).toEqual([
      expect.stringMatching(/pocket-narrow: Once sewn, the inside is /u),
      // The row also goes through the case that lies folded there.
      expect.stringMatching(/walls-together: “case” is folded across its opening/u),
    ]);
  });
});
