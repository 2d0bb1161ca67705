import { edgesName, type Pattern } from '../../../src/core/index.ts';
import { textIn } from '../given.ts';
import type { Given, Kept } from '../word.ts';
import type { Attributes } from './word.ts';

export type Shown = { name: string; piece: string; edges?: string[] | undefined; hint?: string | undefined };

/** What is asked for; without edges, those with a seam allowance. */
export const view = (_: Pattern, { piece, edges, hint, id = edgesName(piece) }: Attributes): Shown => ({
  ...{ name: id, piece, edges, hint },
});

export const kept = ({ id, piece }: Given): Kept => ({
  as: 'answer',
  name: textIn(id) ?? edgesName(textIn(piece) ?? ''),
});
