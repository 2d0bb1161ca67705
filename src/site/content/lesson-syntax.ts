import { words } from '../../../components/words/index.ts';
import type { AtOffset } from './diagnostic.ts';
import { INSTEAD } from './lesson-html.ts';
import { quote } from '../../core/measure/index.ts';

export const BRACES = {
  message: 'Braces { } have a meaning of their own in a lesson.',
  fix: 'Write \\{ to show a brace.',
};
export const IMPORT = {
  message: 'A line of a lesson cannot start with “import” or “export”.',
  fix: 'Every lesson word is ready to use without. If this is prose, begin the line with another word.',
};
export const PICTURE = {
  message: 'This picture names its file in another place.',
  fix: 'Write ![what it shows](picture.jpg).',
};
export const UNKNOWN = { message: 'This has no place in a lesson.', fix: 'Write it in plain Markdown.' };

/**
 * The fault that a lesson breaks off at. The parser's wording is for programmers; each fault a writer makes gets words of
 * its own.
 *
 * @param source the whole lesson
 * @param text the parser's message, which starts with line and column
 */
export function syntaxFault(source: string, text: string): AtOffset {
  return { severity: 'error', ...faultIn(source, text) };
}

function faultIn(source: string, text: string): Omit<AtOffset, 'severity'> {
  const place = /^(\d+):(\d+): /.exec(text);
  const at = place ? offsetAt(source, Number(place[1]), Number(place[2])) : 0;
  const about = (place ? text.slice(place[0].length) : text).replace(/\s*\([\w-]+:[\w-]+\)$/, '');
  const tag = /`<\/?([\w.]*)>`/.exec(about)?.[1] ?? '';

  if (about.startsWith('Expected a closing tag')) {
    const open = lastOpened(source, tag);
    if (open === undefined) return { at, ...unlike(tag, `<${tag}> and </${tag}> do not stand in the same paragraph.`) };
    const turned = source.slice(open).search(new RegExp(`<${tag}\\s*/>`));
    if (turned > 0) {
      const message = `<${tag} /> closes nothing: the stroke that closes stands before the name.`;
      return { at: open + turned, message, fix: `Write </${tag}>.` };
    }
    return { at: open, message: `<${tag}> is opened here and never closed.`, fix: closing(tag) };
  }
  if (about.startsWith('Unexpected closing tag')) {
    const word = Object.keys(words).find((one) => one !== tag && one.toLowerCase() === tag.toLowerCase());
    if (word) return { at, message: `</${tag}> closes nothing.`, fix: `Write </${word}>, with its capitals.` };
    return { at, message: `</${tag}> closes nothing.`, fix: `Write <${tag}> where it starts, or take this away.` };
  }
  if (about.startsWith('Expected the closing tag')) {
    return { at, ...unlike(tag, `</${tag}> stands inside a paragraph that started after <${tag}>.`) };
  }
  if (source.startsWith('<!--', at)) return { at, message: 'A comment is written {/* like this */}.' };
  if (/^<(https?:|[\w.+-]+@)/.test(source.slice(at, at + 80))) {
    return { at, message: 'A link is written [words](address).' };
  }
  if (/^(?:Unexpected character|Could not parse expression)/.test(about)) {
    const slip = slipInTag(source, at);
    if (slip) return slip;
  }
  if (about.startsWith('Unexpected character')) {
    return {
      at,
      message: 'A < starts a lesson word, but no word follows that can be read.',
      fix: 'Write \\< to show the sign; put quotes around what an attribute says.',
    };
  }
  if (about.includes('closing brace')) return { at, message: 'This { is never closed.', fix: BRACES.fix };
  if (about.startsWith('Could not parse expression')) return { at, ...BRACES };
  if (about.startsWith('Could not parse esm')) return { at: source.lastIndexOf('\n', at - 1) + 1, ...IMPORT };
  return { at, message: `This cannot be read: ${about}.` };
}

/** HTML without an end of its own. */
const EMPTY = /^(?:area|base|br|col|embed|hr|img|input|link|meta|source|track|wbr)$/;

/** How an opened word ends: one without text by a stroke of its own. */
function closing(tag: string): string {
  const instead = Object.hasOwn(INSTEAD, tag) ? INSTEAD[tag] : undefined;
  if (instead !== undefined) return instead;
  const word = Object.hasOwn(words, tag) ? words[tag] : undefined;
  if (EMPTY.test(tag) || (word && (word.text ?? 'none') === 'none')) {
    return `Write <${tag}${word && Object.keys(word.attributes.shape).length > 0 ? ' …' : ''} />, with a stroke before the >.`;
  }
  const orNone = word?.text === 'allowed' ? `, or <${tag} … /> where it has no text` : '';
  return `Write </${tag}> where it ends${orNone}.`;
}

/** What is wrong between the < and the > of a word that cannot be read. */
function slipInTag(source: string, at: number): Omit<AtOffset, 'severity'> | undefined {
  const start = source.lastIndexOf('<', at);
  const [name] = /(?<=^<)\p{L}[\w.]*/u.exec(source.slice(Math.max(0, start))) ?? [];
  if (start < 0 || name === undefined) return undefined;
  // A word may go on over lines, and never over an empty one.
  const rest = source.slice(start).split(/\n[ \t]*\n/u, 1)[0]!;
  const [whole = rest] = /^(?:[^<>"']|"[^"]*"|'[^']*')*>/u.exec(rest.slice(1))?.map((one) => `<${one}`) ?? [];
  if (Object.hasOwn(INSTEAD, name))
    return { at: start, message: `<${name}> has no place in a lesson.`, fix: INSTEAD[name]! };
  const inBraces = /=\s*\{[^}]*?[“”„‘’]/u.test(rest.split('>', 1)[0]!);
  if (inBraces || /=\s*[“”„‘’]/u.test(whole)) {
    const fix = inBraces ? 'Write straight ones: right={["seam", "fold"]}.' : 'Write straight ones: of="seam".';
    const first = start + source.slice(start).search(/[“”„‘’]/u);
    return { at: inBraces ? first : start, message: 'The quotes in this word are curly.', fix };
  }
  const bare = /\s([\w-]+)=([^\s"'{}/>][^\s"'{}>]*)/u.exec(whole);
  if (bare) {
    const [, attribute = '', value = ''] = bare;
    const message = `<${name}> ${attribute}: what stands behind = needs quotes.`;
    if (value.startsWith('[')) {
      const list = /\[[^\]]*\]/u.exec(rest.slice(bare.index))?.[0] ?? '["…"]';
      const inBraces = `<${name}> ${attribute}: a list stands in braces.`;
      return { at: start + bare.index + 1, message: inBraces, fix: `Write ${attribute}={${list}}.` };
    }
    return { at: start + bare.index + 1, message, fix: `Write ${attribute}="${value.replace(/\/$/, '')}".` };
  }
  const line = rest.split('\n', 1)[0]!;
  const colon = /\s([\w-]+) *:(?= *["'\w])/u.exec(whole);
  if (colon) {
    const message = `Behind ${quote(colon[1]!)} stands =, and not a colon.`;
    return { at: start + colon.index + 1, message, fix: `Write ${colon[1]}="…".` };
  }
  if (
    rest
      .slice(1 + name.length)
      .trimStart()
      .startsWith('=')
  ) {
    const first = Object.hasOwn(words, name) ? Object.keys(words[name]!.attributes.shape)[0] : undefined;
    return {
      at: start,
      message: `<${name}> does not say what its = belongs to.`,
      fix: `Write <${name} ${first ?? 'of'}="…">.`,
    };
  }
  if (/\\>/u.test(line))
    return { at: start, message: `<${name}> ends in \\>.`, fix: 'Write />, with the stroke that leans to the right.' };
  const quotes = [...line.matchAll(/"/gu)];
  if (quotes.length % 2 === 1) {
    return {
      at: start + quotes.at(-1)!.index,
      message: `A quote in <${name}> is opened and never closed.`,
      fix: 'Write another " where it ends.',
    };
  }
  if (!whole.endsWith('>'))
    return { at: start, message: `<${name}> has no end.`, fix: 'Write /> behind what it says.' };
  return undefined;
}

const unlike = (tag: string, message: string) => ({
  message,
  fix: `Put <${tag}> and </${tag}> on lines of their own, with blank lines around the text.`,
});

function offsetAt(source: string, line: number, column: number): number {
  let start = 0;
  for (let n = 1; n < line; n += 1) {
    const end = source.indexOf('\n', start);
    if (end < 0) return start;
    start = end + 1;
  }
  return Math.min(start + column - 1, source.length);
}

/** Offset of the last `<tag …>` that no `</tag>` answers. */
function lastOpened(source: string, tag: string): number | undefined {
  const open: number[] = [];
  for (const match of source.matchAll(new RegExp(`<(/?)${tag.replaceAll('.', '\\.')}(?![\\w.])[^>]*?(/?)>`, 'g'))) {
    if (match[1]) open.pop();
    else if (!match[2]) open.push(match.index);
  }
  return open.at(-1);
}
