/** Changes to a YAML file that an author wrote: one value at a time, and nothing else of the text. */
import { Composer, CST, isAlias, isScalar, isSeq, parseDocument, Parser } from 'yaml';
import type { Document, ParsedNode } from 'yaml';
import type { Place } from '../site/located-yaml.ts';

/**
 * The text with another value at a place. Comments, order and the lines of everything else stay as they are; quotes
 * are put round the value only where it would not be read back otherwise.
 *
 * @param place of a plain value that is in the file
 * @param value as a reader of the file sees it
 * @returns undefined where no plain value is at that place, or where it cannot be written
 * @example
 * withValue('seam: { in: 1/4, mm: 6 } # a foot', ['seam', 'mm'], '7') // => 'seam: { in: 1/4, mm: 7 } # a foot'
 */
export function withValue(text: string, place: Place, value: string): string | undefined {
  // Plain first: it is how most values are written, and the rest are quoted only where they must be.
  for (const type of [undefined, 'PLAIN', 'QUOTE_SINGLE', 'QUOTE_DOUBLE'] as const) {
    const tokens = [...new Parser().parse(text)];
    const [document] = new Composer({ keepSourceTokens: true, version: '1.2' }).compose(tokens);
    const node = document?.getIn(place, true);
    if (!isScalar(node) || !node.srcToken || isAlias(node)) return undefined;
    CST.setScalarValue(node.srcToken, value, type === undefined ? {} : { type });
    const changed = tokens.map((token) => CST.stringify(token)).join('');
    if (reads(changed, place, value) && sameBeside(text, changed, place)) return changed;
  }
  return undefined;
}

function reads(text: string, place: Place, value: string): boolean {
  const document = parseDocument(text, { version: '1.2' });
  const node = document.getIn(place, true);
  return document.errors.length === 0 && isScalar(node) && (node.source ?? String(node.value)) === value;
}

/** Whether two texts hold the same, but for one place. */
function sameBeside(before: string, after: string, place: Place): boolean {
  const without = (text: string) => {
    const document = parseDocument(text, { version: '1.2' });
    document.setIn(place, null);
    return JSON.stringify(document.toJS());
  };
  return without(before) === without(after);
}

/**
 * The text with one more entry at the end of a list, in the way the list is written.
 *
 * @returns undefined where no list is at that place
 * @example
 * withEntry('lessons: [01-a.mdx]', ['lessons'], '02-b.mdx') // => 'lessons: [01-a.mdx, 02-b.mdx]'
 */
export function withEntry(text: string, place: Place, entry: string): string | undefined {
  const document: Document.Parsed = parseDocument(text, { version: '1.2' });
  const list = document.getIn(place, true);
  if (!isSeq<ParsedNode>(list)) return undefined;
  const last = list.items.at(-1);
  if (list.flow) {
    const end = text.lastIndexOf(']', list.range![1]);
    return last
      ? text.slice(0, last.range[1]) + `, ${entry}` + text.slice(last.range[1])
      : text.slice(0, end) + entry + text.slice(end);
  }
  if (!last) return undefined;
  const start = text.lastIndexOf('\n', last.range[0]) + 1;
  const dash = /^\s*-\s*/.exec(text.slice(start))?.[0];
  if (dash === undefined) return undefined;
  const lineEnd = text.indexOf('\n', last.range[1] - 1);
  const at = lineEnd < 0 ? text.length : lineEnd;
  return `${text.slice(0, at)}\n${dash}${entry}${text.slice(at)}`;
}
