import type { Pattern, Subject } from '../../../src/core/index.ts';
import { textIn } from '../given.ts';
import type { AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

/** What is measured, and the name it is kept under. */
export const view = (_: Pattern, given: Attributes) => ({ name: saves(given).name, subject: subjectOf(given) });

/** What is measured: a piece, or without one the finished work. */
export function subjectOf({ piece, stage }: AttributeValues): Subject {
  const name = textIn(piece);
  return name === undefined ? { finished: true } : { piece: name, stage: stage === 'sewn' ? 'sewn' : 'cut' };
}

export function saves(given: AttributeValues): Extract<SavedRecord, { as: 'measured' }> {
  const subject = subjectOf(given);
  if ('finished' in subject) return { as: 'measured', name: 'finished', of: 'the finished work' };
  const { piece, stage } = subject;
  return { as: 'measured', name: `${piece} ${stage}`, of: `${piece}, ${stage}` };
}
