import { wordCalled } from '../../../components/words/index.ts';
import type { TextRange, WrittenAttribute, WrittenWord } from './lesson-text.ts';

/** A text in an attribute of a lesson word, and where each of its characters stands in the lesson. */
export type AttributeText = { attribute: string; text: string; at: (index: number) => number; part: TextRange };

/**
 * The texts for people that a word's attributes hold, in the order of the lesson.
 *
 * @param source the whole lesson
 */
export function attributeTexts(word: WrittenWord, source: string): AttributeText[] {
  const texts = wordCalled(word.name)?.texts ?? {};
  return word.attributes.flatMap((attribute) => {
    const kind = texts[attribute.name];
    if (kind === undefined || attribute.value === undefined) return [];
    return stringsIn(attribute, source)
      .filter(({ isName }) => kind === 'whole' || !isName)
      .map(({ text, at }) => ({ attribute: attribute.name, text, at, part: word.part }));
  });
}

type Found = { text: string; isName: boolean; at: (index: number) => number };

function stringsIn({ value, textAt }: WrittenAttribute, source: string): Found[] {
  const opened = /\{\s*["']?$/.exec(source.slice(0, textAt));
  if (!opened) return typeof value === 'string' ? [{ text: value, isName: false, at: (index) => textAt + index }] : [];
  const found: Found[] = [];
  let left = count(value);
  const literal = /"(?:[^"\\]|\\.)*"|'[^'\\]*'/gu;
  literal.lastIndex = opened.index;
  for (let next = literal.exec(source); next && left > 0; next = literal.exec(source), left -= 1) {
    const [written] = next;
    const start = next.index + 1;
    found.push({
      text: written.startsWith("'") ? written.slice(1, -1) : (JSON.parse(written) as string),
      isName: /^\s*:/u.test(source.slice(literal.lastIndex)),
      at: (index) => start + lengthOf(source, start, index),
    });
  }
  return found;
}

/** How many texts a value holds, the names of its groups among them. */
function count(value: unknown): number {
  if (typeof value === 'string') return 1;
  if (typeof value !== 'object' || value === null) return 0;
  const names = Array.isArray(value) ? 0 : Object.keys(value).length;
  return Object.values(value).reduce<number>((sum, one) => sum + count(one), names);
}

/** How far so many characters of a JSON text reach: an escape is two signs long, or six. */
function lengthOf(source: string, start: number, index: number): number {
  let at = start;
  for (let i = 0; i < index; i += 1) at += source[at] === '\\' ? (source[at + 1] === 'u' ? 6 : 2) : 1;
  return at - start;
}
