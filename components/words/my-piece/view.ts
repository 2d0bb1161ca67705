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

type Measured = Extract<SavedRecord, { as: 'measured' }>;

export const saves = (given: AttributeValues): Measured => savedFor(subjectOf(given));

/** What a browser keeps of a subject that is measured. */
export function savedFor(subject: Subject): Measured {
  if ('finished' in subject) return { as: 'measured', name: 'finished', of: 'the finished work' };
  const { piece, stage } = subject;
  return { as: 'measured', name: `${piece} ${stage}`, of: `${piece}, ${stage}` };
}
