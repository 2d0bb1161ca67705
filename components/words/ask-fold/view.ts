import { foldsName, pointAtFolds, type FoldQuestion, type Pattern } from '../../../src/core/index.ts';
import { picksOf, textIn } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

export type FoldView = { name: string; piece: string; asked: FoldQuestion; hint?: string | undefined };

/** Which fold is asked for, or which kind of folds. */
export function view(_: Pattern, { id, piece, fold, kind, hint }: Attributes): FoldView {
  const asked = foldIn({ fold, kind });
  return { name: id ?? foldsName(piece, asked), piece, asked, hint };
}

/** Which fold, or which kind of folds, is asked for. */
export const foldIn = ({ fold, kind }: AttributeValues): FoldQuestion =>
  typeof fold === 'number' ? { fold } : { kind: kind === 'valley' ? 'valley' : 'mountain' };

export const saves = ({ id, piece, ...asked }: AttributeValues): SavedRecord => ({
  as: 'answer',
  name: textIn(id) ?? foldsName(textIn(piece) ?? '', foldIn(asked)),
});

export function asked({ piece, ...which }: AttributeValues, pattern: Pattern | undefined): AskedInClass | undefined {
  const strip = pattern?.pieces[textIn(piece) ?? ''];
  return picksOf(strip && pattern && pointAtFolds(strip, foldIn(which), pattern));
}
