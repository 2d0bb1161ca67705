/**
 * The words of a lesson, by name: what the content check, the lists of questions, paper, the authoring reference and the
 * text editors read. Pages find the markup of each in markup.ts.
 */
import * as registry from './registry.ts';
import { groups, type SetQuestion, type ViewContext, type Word } from './word.ts';

/** In the order of the authoring reference: by group, then by name. */
export const words: Readonly<Record<string, Word>> = Object.fromEntries(
  Object.entries<Word>(registry).toSorted(
    ([a, one], [b, other]) => groups.indexOf(one.group) - groups.indexOf(other.group) || (a < b ? -1 : 1),
  ),
);

/** The word of that name; undefined for HTML and for what there is not. */
export const wordCalled = (name: string): Word | undefined => (Object.hasOwn(words, name) ? words[name] : undefined);

/** A question of the lesson as a Practice set shows it; undefined for words that come up in no set. */
export function inSet(
  { word: name, words: text, given }: App.WrittenQuestion,
  pattern: Parameters<NonNullable<Word['view']>>[0],
  context: ViewContext,
): SetQuestion | undefined {
  const word = wordCalled(name);
  if (typeof word?.inSets !== 'string' || !word.view) return undefined;
  return {
    word: name,
    words: text,
    view: word.view(pattern, given, context) as SetQuestion['view'],
    newNumbers: word.inSets === 'with new numbers',
  };
}
