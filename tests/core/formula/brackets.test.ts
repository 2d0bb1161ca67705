import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bracketsIn, literal, partsOf, workedText } from '../../../src/core/formula/index.ts';
import { folio, scopeOf } from './read.ts';

const found = (text: string) => bracketsIn(text).map(({ formula }) => formula);

describe('formulas in a text', () => {
  it('stand in square brackets, with their places', () => {
    const text = 'Add [2 * seam] and [ ease ].';
    expect(bracketsIn(text)).toEqual([
      { start: 4, end: 14, formula: '2 * seam' },
      { start: 19, end: 27, formula: 'ease' },
    ]);
    expect(partsOf(text)).toEqual(['Add ', '2 * seam', ' and ', 'ease', '.']);
  });

  it.each([
    ['a link', 'See [the seam](../seams/) first.'],
    ['boxes of a list', '- [ ] pin\n- [x] press\n* [X] sew\n1. [x] trim'],
    ['a footnote', 'As said.[^1]'],
    ['an empty bracket', 'Write [] or [ ] here.'],
    ['a bracket behind a backslash', String.raw`Take it \[as it is\].`],
  ])('%s is none', (_, text) => {
    expect(found(text)).toEqual([]);
  });

  it('an x is a formula where no list begins, and behind two backslashes stands a bracket', () => {
    expect(found('It is [x] wide.')).toEqual(['x']);
    expect(found(String.raw`A stroke \\[seam]`)).toEqual(['seam']);
  });

  it('a formula over the end of a line is one', () => {
    expect(found('It takes [2 *\n  seam].')).toEqual(['2 * seam']);
  });

  it('a bracket behind a backslash is shown without it', () => {
    expect(partsOf(String.raw`\[ease\] is [ease]`)).toEqual(['[ease] is ', 'ease', '']);
  });

  it('words that are made literal stay as they are, whatever they are', () => {
    fc.assert(
      fc.property(fc.string({ unit: fc.constantFrom('a', ' ', '[', ']', 'seam', '(', 'x', '-') }), (words) => {
        expect(partsOf(literal(words))).toEqual([words]);
      }),
    );
  });
});

describe('a text worked out', () => {
  it('has its sizes in the edition of the scope', () => {
    // By hand: the ease there is 1/4 in, and 2 × 1/4 = 1/2.
    expect(workedText('Room: [2 * ease].', scopeOf(folio, 'inch'))).toBe('Room: ½\u202fin.');
  });

  it('shows a dash where a name has no value, and no text without brackets is touched', () => {
    expect(workedText('Room: [nothing].', scopeOf(folio, 'inch'))).toBe('Room: –.');
    expect(workedText('Room.', scopeOf(folio))).toBe('Room.');
  });
});
