/**
 * What a question shows, from what its author wrote: where it stands in the lesson, and in a set of practice. What can be
 * chosen is mixed while the site is built, the same for everyone.
 */
import { edgesCalled, foldsCalled, randomFrom, shuffled, sideCalled, type AskedFold } from '../../src/core/index.ts';
import { learnerOf } from '../page/learner.svelte.ts';
import { shown } from './shows.ts';
import { outOfOrder, type Other } from './practice/other.ts';

export type Choice = { id: string; right: string[]; wrong: string[] | Record<string, string>; hint?: string };
export type Order = { id: string; steps: string[]; hint?: string };
export type Pairs = { id: string; terms?: string[]; pairs?: Record<string, string>; hint?: string };
export type Edge = { id?: string; piece: string; edges?: string[]; hint?: string };
export type Fold = { id?: string; piece: string; fold?: number; kind?: 'mountain' | 'valley'; hint?: string };
export type Side = { id?: string; step: string; shows: string; from?: 'front' | 'back'; hint?: string };

/** Terms and what they mean. */
type Glossary = Readonly<Record<string, string>>;

export function choice({ id, right, wrong, hint }: Choice) {
  const others = Array.isArray(wrong)
    ? wrong.map((text) => ({ text, right: false }))
    : Object.entries(wrong).map(([text, say]) => ({ text, right: false, say }));
  const all = [...right.map((text) => ({ text, right: true })), ...others];
  return { name: id, choices: shuffled(all, randomFrom(id)), hint };
}

export const order = ({ id, steps, hint }: Order) => ({
  ...{ name: id, steps, hint },
  mixed: outOfOrder(steps, randomFrom(id)),
});

export function pairs({ id, terms = [], pairs: own = {}, hint }: Pairs, glossary: Glossary) {
  const told = terms.flatMap((term) => (glossary[term] === undefined ? [] : [[term, glossary[term]] as const]));
  const all: Record<string, string> = { ...Object.fromEntries(told), ...own };
  return { name: id, pairs: all, meanings: shuffled([...new Set(Object.values(all))], randomFrom(id)), hint };
}

export const edge = ({ piece, edges, hint, id = edgesCalled(piece) }: Edge) => ({ name: id, piece, edges, hint });

export function fold({ id, piece, fold, kind = 'mountain', hint }: Fold) {
  const asked: AskedFold = fold === undefined ? { kind } : { fold };
  return { name: id ?? foldsCalled(piece, asked), piece, asked, hint };
}

export function side({ step, shows, from, hint, id = sideCalled(step, shows) }: Side, project: string) {
  const built = shown('AskSide', project, learnerOf(project).pattern, step, shows, from);
  return { ...{ name: id, step, side: from ?? 'front', shows, hint }, built };
}

/** A question of the lesson for a set; undefined for kinds that no set holds. The content check has seen what was given. */
export function otherOf(
  { word, words, given }: App.WrittenQuestion,
  project: string,
  glossary: Glossary,
): Other | undefined {
  switch (word) {
    case 'AskChoice':
      return { word, words, shown: choice(given as Choice) };
    case 'AskOrder':
      return { word, words, shown: order(given as Order) };
    case 'AskPairs':
      return { word, words, shown: pairs(given as Pairs, glossary) };
    case 'AskEdge':
      return { word, words, shown: edge(given as Edge) };
    case 'AskFold':
      return { word, words, shown: fold(given as Fold) };
    case 'AskSide':
      return { word, words, shown: side(given as Side, project) };
    default:
      return undefined;
  }
}
