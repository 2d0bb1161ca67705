/** What a question is called where its author gives it no name: under this its answers are kept and handed in. */
import type { AskedFold } from './pointing.ts';

export const edgesCalled = (piece: string): string => `edges of ${piece}`;

export const foldsCalled = (piece: string, asked: AskedFold): string =>
  'fold' in asked ? `fold ${asked.fold} of ${piece}` : `${asked.kind} folds of ${piece}`;

export const sideCalled = (step: string, shows: string): string => `${shows} after ${step}`;
