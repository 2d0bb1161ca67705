/** Reading what an author gave to a word, before anything has checked it. */

/** A text, or undefined for anything else. */
export const textIn = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

/** A list of texts, or the names of a group of them. */
export const textsIn = (value: unknown): string[] => (Array.isArray(value) ? value : namesIn(value)).map(String);

/** The names of a group; of anything else none. */
export const namesIn = (value: unknown): string[] =>
  typeof value === 'object' && value !== null ? Object.keys(value) : [];

/** All texts in a value, however deep; of groups the names, too. */
export function allTextsIn(value: unknown): string[] {
  if (typeof value === 'string') return [value];
  if (Array.isArray(value)) return value.flatMap(allTextsIn);
  return typeof value === 'object' && value !== null ? Object.entries(value).flatMap(allTextsIn) : [];
}
