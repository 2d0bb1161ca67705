/** What a question is called where its author gives it no name: under this its answers are kept and handed in. */
import type { FoldQuestion } from './pointing.ts';

export const edgesName = (piece: string): string => `edges of ${piece}`;

export const foldsName = (piece: string, asked: FoldQuestion): string =>
  'fold' in asked ? `fold ${asked.fold} of ${piece}` : `${asked.kind} folds of ${piece}`;

export const sideName = (step: string, shows: string): string => `${shows} after ${step}`;
