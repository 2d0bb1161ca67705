import { expect, test } from 'vitest';
import { unusedMeasures } from '../../../src/core/project/index.ts';
import { folio, notionsPouch, project, tableSet } from './files.ts';

const file = (more: string, pieces = 'front: { size: [width, 4] }') =>
  project(`title: A bag\nmeasures: { seam: 1/2, width: 8, strap: 12, tab length: 2 }\npieces: { ${pieces} }\n${more}`);

test('a measure that nothing uses is named; seam is what steps take without a word', () => {
  expect(unusedMeasures(file(''))).toEqual(['strap', 'tab length']);
});

test.each([
  ['a step', 'steps: [{ topstitch: front, at: top, by: strap / 4 + tab length }]'],
  ['a hold', 'holds: [{ what: a card, size: [strap, tab  length], in: front }]'],
  ['what is finished', 'finished: { of: front, width: strap, height: tab length }'],
  ['an option’s other value', 'options: { long: { measures: { width: strap + tab length } } }'],
  ['brackets in a text', 'steps: [{ press: front, note: "Leave [strap - tab length] free." }]'],
])('%s uses it', (_where, more) => expect(unusedMeasures(file(more))).toEqual([]));

test('words that happen to have its name do not use it', () => {
  const words = 'steps: [{ press: front, note: strap, says: "Press the strap" }]';
  expect(unusedMeasures(file(words, 'front: { label: strap, note: tab length, size: [width, 4] }'))).toEqual([
    'strap',
    'tab length',
  ]);
});

test('the demos use all they measure, but for what their lessons show alone', () => {
  expect([folio(), notionsPouch(), tableSet()].flatMap(unusedMeasures)).toEqual(['edge row']);
});
