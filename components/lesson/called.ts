/** What a question is called where its author gives it no name: under this its answers are kept and handed in. */

export const edgesCalled = (piece: string): string => `edges of ${piece}`;

export const foldsCalled = (piece: string, asked: { fold: number } | { kind: 'mountain' | 'valley' }): string =>
  'fold' in asked ? `fold ${asked.fold} of ${piece}` : `${asked.kind} folds of ${piece}`;

export const sideCalled = (step: string, shows: string): string => `${shows} after ${step}`;
