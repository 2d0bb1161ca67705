/** Changes to a YAML file that an author wrote: one value at a time, and nothing else of the text. */
import { Composer, CST, isAlias, isMap, isScalar, isSeq, parseDocument, Parser, stringify } from 'yaml';
import type { Document, ParsedNode } from 'yaml';
import type { Place } from '../site/content/located-yaml.ts';

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
  return withLine(text, last.range[1] - 1, dash + entry);
}

/** The text with one more line below the one that an offset is in; its lines end as the file's own do. */
function withLine(text: string, offset: number, line: string): string {
  const end = text.slice(offset).search(/\r?\n/);
  const at = end < 0 ? text.length : offset + end;
  return text.slice(0, at) + (text.includes('\r\n') ? '\r\n' : '\n') + line + text.slice(at);
}

/**
 * The text with one more named value at the end of a group, in the way the group is written. A group of the whole file that
 * is not there yet comes to its end.
 *
 * @param place of a group that has a value already, or the name of one that the file lacks
 * @param value as a reader of the file sees it
 * @returns undefined where no such group can be at that place, or where it has the name already
 * @example
 * withField('seam: { in: 1/4 } # a foot', ['seam'], 'mm', '6') // => 'seam: { in: 1/4, mm: 6 } # a foot'
 */
export function withField(text: string, place: Place, name: string, value: string): string | undefined {
  const document: Document.Parsed = parseDocument(text, { version: '1.2' });
  const top = document.contents;
  const group = place.length ? document.getIn(place, true) : top;
  if (place.length === 1 && isMap(top) && !top.flow && !top.has(place[0]) && document.errors.length === 0) {
    const stand = `${stringify(place[0], { lineWidth: 0 }).trim()}:`;
    const line = `${stringify(name, { lineWidth: 0 }).trim()}: x`;
    return withValue(
      withLine(withLine(text, text.trimEnd().length, `  ${line}`), text.trimEnd().length, stand),
      [...place, name],
      value,
    );
  }
  if (!isMap<ParsedNode, ParsedNode>(group) || group.has(name) || document.errors.length > 0) return undefined;
  const last = group.items.at(-1);
  const first = group.items[0];
  const end = last?.value?.range[1] ?? last?.key.range[1];
  if (end === undefined || !first) return undefined;
  const key = stringify(name, { lineWidth: 0 }).trim();
  // A stand-in first, then the value by the way every value is written.
  let added: string;
  if (group.flow) added = `${text.slice(0, end)}, ${key}: x${text.slice(end)}`;
  else {
    const indent = ' '.repeat(first.key.range[0] - text.lastIndexOf('\n', first.key.range[0] - 1) - 1);
    const done = text.slice(0, end).trimEnd().length;
    added = withLine(text, done, `${indent}${key}: x`);
  }
  const written = withValue(added, [...place, name], value);
  return written !== undefined && sameBeside(withoutField(text), withoutField(written), [...place, name])
    ? written
    : undefined;

  /** Both texts have the name then, so that the rest of them can be compared. */
  function withoutField(one: string): string {
    const document = parseDocument(one, { version: '1.2' });
    document.setIn([...place, name], null);
    return document.toString();
  }
}
