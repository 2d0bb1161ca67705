/** Reading what an author gave to a word, before anything has checked it. */

import { partsOf, type Pointing } from '../../src/core/index.ts';
import type { AskedInClass, QuestionText } from './word.ts';

/** A text, or undefined for anything else. */
export const textIn = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

/** A list of texts, or the names of a group of them. */
export const textsIn = (value: unknown): string[] => (Array.isArray(value) ? value : namesIn(value)).map(String);

/** The names of a group; of anything else none. */
export const namesIn = (value: unknown): string[] =>
  typeof value === 'object' && value !== null ? Object.keys(value) : [];

/** A group of texts by their names; what is no text is left out. */
export const textsOf = (value: unknown): Record<string, string> =>
  typeof value === 'object' && value !== null
    ? Object.fromEntries(Object.entries(value).filter((pair): pair is [string, string] => typeof pair[1] === 'string'))
    : {};

/** All texts in a value, however deep; of groups the names, too. */
export function allTextsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(allTextsIn);
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(allTextsIn) : [];
}

/** The words of a text, and the formula of each size in it. */
export const wordsFrom = (text: string): QuestionText =>
  partsOf(text).flatMap((part, i): QuestionText => (i % 2 === 1 ? [{ size: part }] : part === '' ? [] : [part]));

/** What can be pointed at, as the page of a class names it. */
export const picksOf = (pointing: Pointing | undefined): Extract<AskedInClass, { kind: 'choose' }> | undefined =>
  pointing && {
    kind: 'choose',
    picks: pointing.spots.map(({ key, label, right, say }) => ({ key, words: label, say, ...(right && { right }) })),
  };
