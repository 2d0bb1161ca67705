import { edgesName, pointAtEdges, type Pattern } from '../../../src/core/index.ts';
import { picksOf, textIn, textsIn } from '../given.ts';
import type { AskedInClass, AttributeValues, SavedRecord } from '../word.ts';
import type { Attributes } from './word.ts';

export type EdgeView = { name: string; piece: string; edges?: string[] | undefined; hint?: string | undefined };

/** What is asked for; without edges, those with a seam allowance. */
export const view = (_: Pattern, { piece, edges, hint, id = edgesName(piece) }: Attributes): EdgeView => ({
  ...{ name: id, piece, edges, hint },
});

export const saves = ({ id, piece }: AttributeValues): SavedRecord => ({
  as: 'answer',
  name: textIn(id) ?? edgesName(textIn(piece) ?? ''),
});

export function asked({ piece, edges }: AttributeValues, pattern: Pattern | undefined): AskedInClass | undefined {
  const drawn = pattern?.pieces[textIn(piece) ?? ''];
  return picksOf(drawn && pointAtEdges(drawn, edges === undefined ? undefined : textsIn(edges)));
}
