import type { AtOffset } from './diagnostic.ts';

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
    return { at: open, message: `<${tag}> is opened here and never closed.`, fix: `Write </${tag}> where it ends.` };
  }
  if (about.startsWith('Unexpected closing tag')) {
    return { at, message: `</${tag}> closes nothing.`, fix: `Write <${tag}> where it starts, or take this away.` };
  }
  if (about.startsWith('Expected the closing tag')) {
    return { at, ...unlike(tag, `</${tag}> stands inside a paragraph that started after <${tag}>.`) };
  }
  if (source.startsWith('<!--', at)) return { at, message: 'A comment is written {/* like this */}.' };
  if (/^<(https?:|[\w.+-]+@)/.test(source.slice(at, at + 80))) {
    return { at, message: 'A link is written [words](address).' };
  }
  if (about.startsWith('Unexpected character') && /^<[^>\n]*=\s*[“”„‘’]/.test(source.slice(at))) {
    return { at, message: 'The quotes in this word are curly.', fix: 'Write straight ones: of="seam".' };
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
