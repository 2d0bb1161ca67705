/** The worked examples of the authoring reference: each does what its verb says, and what it comes to is worked out by hand. */
import { describe, expect, it } from 'vitest';
import { verbExamples } from '../../../src/site/pages/verb-examples.ts';
import { verbNames } from '../../../src/core/index.ts';

const inch = verbExamples();
const plain = (text: string) => text.replaceAll(/\s/gu, ' ');
const comesTo = (verb: string) => plain(inch.find((one) => one.verb === verb)!.comesTo);

it('are there for every verb, without a mistake, in both editions', () => {
  expect(inch.map(({ verb }) => verb)).toEqual(verbNames);
  for (const { verb, findings, scene, text } of [...inch, ...verbExamples('metric')]) {
    expect([verb, ...findings.map(({ message }) => message)]).toEqual([verb]);
    expect(text.trimEnd().split('\n').at(-1)).toContain(`{ ${verb}: `);
    expect(scene.shapes.filter(({ name }) => /^(?:before|after) /u.test(name)).length).toBeGreaterThan(0);
  }
});

describe('what they come to', () => {
  it.each([
    // 8 + 8 - 2 x 1/2.
    ['join', '15 in wide and 6 in high'],
    // 4 + 4 - 2 x 1/4 on the two rows of a block.
    ['sew in rows', '7 1/2 in wide and 7 1/2 in high'],
    ['cut apart', '2 in wide and 6 in high'],
    // Two box pleats take 4 in each.
    ['pleat', '8 in wide and 6 in high'],
    // Both turns come off: 6 - 1/4 - 3/4.
    ['hem', '8 in wide and 5 in high'],
    ['trim', '8 in wide and 5 in high'],
    // A pad of 8 x 6 loses its allowance on every side.
    ['turn', '7 in wide and 5 in high'],
    ['close gap', '7 in wide and 5 in high'],
    ['quarter turn', '6 in wide and 8 in high'],
    // Folded down by 2.
    ['fold', '8 in wide and 4 in high'],
    // The binding goes round the edge: the work keeps its size.
    ['bind', '8 in wide and 6 in high'],
    // A tuck takes twice its depth.
    ['tuck', '8 in wide and 5 in high'],
  ])('%s: %s', (verb, size) => {
    expect(comesTo(verb)).toContain(size);
  });
});
