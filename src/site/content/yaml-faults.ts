/** What a slip in the signs of YAML is called, and where it is: the library's wording is for programmers. */
import { isScalar, isSeq, visit } from 'yaml';
import type { Document, ErrorCode, YAMLError } from 'yaml';
import { quote } from '../../core/measure/index.ts';

/** A slip at an offset of the text. */
export type Slip = { at: number; message: string; fix?: string | undefined };

/** The faults a writer makes, by the codes of the library. */
const SYNTAX: Partial<Record<ErrorCode, string>> = {
  BAD_ALIAS: 'A word that starts with * or & has a meaning of its own here. Put quotes around it.',
  BAD_COLLECTION_TYPE: 'A list and named values are mixed here.',
  BAD_DQ_ESCAPE: 'A backslash inside double quotes has a meaning of its own. Use single quotes.',
  BAD_INDENT: 'This line is not set in like its neighbours. Lines that belong together start in the same column.',
  BAD_SCALAR_START: 'A text cannot start with this sign. Put quotes around the text.',
  BLOCK_AS_IMPLICIT_KEY: 'A second “:” stands on this line. Put quotes around a text that has a colon in it.',
  BLOCK_IN_FLOW: 'Lines that start with “-” cannot stand inside { } or [ ].',
  MISSING_CHAR: 'A sign is missing here: a quote, a comma, a colon, or the closing ] or }.',
  MULTILINE_IMPLICIT_KEY: 'A name and its “:” belong on one line. A colon may be missing here.',
  MULTIPLE_DOCS: 'A second “---” starts another file here. Keep one.',
  NON_STRING_KEY: 'A name belongs before the colon.',
  TAB_AS_INDENT: 'A tab stands at the start of this line. Use blanks.',
  TAG_RESOLVE_FAILED: 'A text that starts with ! needs quotes around it.',
  UNEXPECTED_TOKEN: 'This sign is not expected here.',
};

const OUT_OF_STEP = [SYNTAX.BAD_INDENT, SYNTAX.BAD_COLLECTION_TYPE];
const CLOSES_NOTHING = /^This [}\]] closes nothing/u;
const OPEN_BRACKET = 'A bracket opened above is not closed before this line: ] or } is missing.';

/**
 * What is wrong in a text that is no YAML. What follows on the same line is most often the same slip, seen again; and a
 * tab, a blank that is none or a missing colon puts the lines below out of step.
 */
export function syntaxSlips(document: Document, text: string): Slip[] {
  const lineOf = (at: number) => text.lastIndexOf('\n', at - 1);
  const firsts = [...Map.groupBy(document.errors, (error) => lineOf(error.pos[0])).values()].map(([first]) => first!);
  const tabs = firsts.filter(({ code }) => code === 'TAB_AS_INDENT');
  if (tabs.length > 0) return tabs.map((error) => slipAt(document, text, error));
  const strange = firsts.flatMap((error) => noBreakSpace(text, error.pos[0]) ?? []);
  if (strange.length > 0) return [...new Map(strange.map((slip) => [slip.at, slip])).values()];
  const slips: Slip[] = [];
  for (const error of firsts) {
    const before = slips.at(-1);
    const slip = slipAt(document, text, error);
    const follows =
      before !== undefined &&
      ((before.message === NO_COLON && isBelow(text, before.at, error.pos[0])) ||
        (error.code === 'BAD_INDENT' && OUT_OF_STEP.includes(before.message) && slip.message === SYNTAX.BAD_INDENT));
    if (!follows) slips.push(slip);
    // Behind the sign that closes what was never opened, the library reads nothing as it is meant.
    if (CLOSES_NOTHING.test(slip.message)) break;
  }
  return slips;
}

/** Looks like a blank, and is none: what a text program puts between a number and its unit. */
const NO_BLANK = '[\u00a0\\u2000-\\u200b\\u202f\\u3000\\ufeff]';
const WHERE_A_BLANK_BELONGS = new RegExp(`^[ -]*(?=${NO_BLANK})|(?<=[:,{[])[ ]*(?=${NO_BLANK})`, 'mu');

/** The first no-break space where only a blank will do, on the line of an offset or the one before it. */
export function noBreakSpace(text: string, near: number): Slip | undefined {
  const line = text.lastIndexOf('\n', near - 1);
  const start = line < 0 ? 0 : text.lastIndexOf('\n', line - 1) + 1;
  const end = text.indexOf('\n', near);
  const found = WHERE_A_BLANK_BELONGS.exec(text.slice(start, end < 0 ? undefined : end));
  if (!found) return undefined;
  const message = 'This looks like a blank and is another sign, a no-break space.';
  return { at: start + found.index + found[0].length, message, fix: 'Type a blank in its place.' };
}

const NO_COLON = 'A name and its “:” belong on one line. A colon may be missing here.';

/** A line without a colon: a name that lacks it, or a text that goes on and is not set in. */
export function noColon(text: string, near: number): Slip {
  const start = text.lastIndexOf('\n', near - 1) + 1;
  const [line] = text.slice(start).split('\n', 1);
  const [, dash = '', said = ''] = /^(\s*(?:- )?)(.*?)\s*$/u.exec(line!) ?? [];
  const at = start + dash.length;
  const other = /^([\p{L}][\p{L} ]*?) ?([=;]) ?(.+)$/u.exec(said);
  if (other) {
    const [, name, sign, value] = other;
    return {
      at: at + name!.length,
      message: `Behind a name stands “:”, and not “${sign}”.`,
      fix: `Write “${name}: ${value}”.`,
    };
  }
  const next = text.slice(start + line!.length + 1).split('\n', 1)[0]!;
  const isName = blanksBefore(next) > blanksBefore(line!);
  const [, name = said, value] =
    /^([\p{L}\d][^[\]{}"'\d]*?) ([[{"'\d].*)$/u.exec(said) ?? /^(\S+) (.+)$/u.exec(said) ?? [];
  const meant = isName ? `${said}:` : value === undefined ? `${said}: …` : `${name}: ${value}`;
  const goesOn = at > 0 && !isName ? ' A text that goes on from the line above is set in by two blanks.' : '';
  return { at, message: NO_COLON, fix: `Is it ${quote(meant)}?${goesOn}` };
}

const blanksBefore = (line: string): number => /^ */u.exec(line)![0].length;

/** Whether all lines from one offset to another are set in more deeply than the first. */
function isBelow(text: string, from: number, to: number): boolean {
  const start = text.lastIndexOf('\n', from - 1) + 1;
  const [first, ...rest] = text.slice(start, to + 1).split('\n');
  return rest.every((line) => line.trim() === '' || blanksBefore(line) > blanksBefore(first!));
}

function slipAt(document: Document, text: string, error: YAMLError): Slip {
  const at = error.pos[0];
  const said = (message: string, fix?: string, where = at): Slip => ({ at: where, message, fix });
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const line = text.slice(start).split('\n', 1)[0]!;
  const [before, behind] = [line.slice(0, at - start), line.slice(at - start)];
  if (/call stack/.test(error.message)) return said('This file is nested too deeply to be read.');
  switch (error.code) {
    case 'MISSING_CHAR':
      if (error.message.includes('quote'))
        return said('A quote is opened here and never closed.', undefined, openQuote(document, at) ?? at);
      if (error.message.startsWith('Flow'))
        return said('This bracket is never closed: ] or } is missing.', undefined, openBracket(text, at) ?? at);
      if (error.message.startsWith('Implicit map keys')) return noColon(text, at);
      break;
    case 'MULTILINE_IMPLICIT_KEY': {
      const colon = /^[^:#'"\n]+:(?=[^\s:/])/.exec(behind);
      return colon
        ? said('A blank belongs behind this colon.', undefined, at + colon[0].length - 1)
        : noColon(text, at);
    }
    case 'BLOCK_AS_IMPLICIT_KEY': {
      const curly = /^([“”„‘«])(.*?)[“”’»]?\s*$/u.exec(behind);
      if (curly) return said('Quotes that hold a text together are straight.', `Write "${curly[2]}".`);
      if (/\S : \d/u.test(behind)) return said('A colon stands in this sum.', 'For “divided by” write /.');
      if (behind.startsWith('('))
        return said('Named values stand in { }, and not in ( ).', 'Write { and } for the round brackets.');
      if (/^[\p{L} ]+: [^,:]+, *[\p{L} ]+:(?: |$)/u.test(behind))
        return said('Several named values need { } round them.', `Write { ${behind.trim()} }.`);
      if (/^\? /u.test(behind)) return said(SYNTAX.BAD_SCALAR_START!);
      // A line that is set in too deeply is taken as going on with the one above, where no second colon is to be seen.
      const next = start + line.length + 1;
      if (text.length > next - 1 && !behind.includes(':'))
        return said(SYNTAX.BAD_INDENT!, undefined, next + blanksBefore(text.slice(next)));
      break;
    }
    case 'BAD_INDENT':
      if (/(?:^|\n)[ ]*- [^\n]*\n$/u.test(text.slice(0, start)) && !/^ *- /u.test(line))
        return said(SYNTAX.BAD_COLLECTION_TYPE!, 'Begin each of them with “- ”, or none.');
      if (error.message.startsWith('Flow')) return said(OPEN_BRACKET);
      break;
    case 'BLOCK_IN_FLOW': {
      const part = /^[^,}\]\n]*/u.exec(behind)![0].trim();
      if (behind.startsWith('- ') || !part.includes(':')) break;
      const semicolon = part.search(/;/u);
      if (semicolon >= 0)
        return said('Inside { } a comma parts one value from the next.', 'Write , for ;', at + semicolon);
      const next = /^(?=[^:]*\d)[^:]*?(?= +[a-z ]+:)/u.exec(part)?.[0];
      if (next !== undefined && !/\p{L}{3}/u.test(next))
        return said('A comma is missing between two values.', `Write a comma behind “${next}”.`);
      return said('A second “:” stands in this text.', `Put quotes around the whole text: "${part}".`);
    }
    case 'UNEXPECTED_TOKEN': {
      const [, closing] = /Unexpected flow-(?:map|seq)-end token.*"([}\]])"/u.exec(error.message) ?? [];
      if (closing)
        return said(`This ${closing} closes nothing.`, 'Take it away, or write the sign that opens before it.');
      if (/^[>|]/u.test(before.trimEnd().slice(-1)))
        return said('A text that starts with > or | needs quotes around it.');
      if (behind.startsWith('- ')) {
        const [, first = ''] = /^- (.*?)\s*$/u.exec(behind) ?? [];
        return said(
          'A list does not begin behind a colon.',
          `Write [${first}], or each “- …” on a line of its own below.`,
        );
      }
      if (isSeq(document.contents) && /^[^\s:]+:(?:\s|$)/u.test(behind)) return said(SYNTAX.BAD_COLLECTION_TYPE!);
      const ended = /:\s+(["'])[^"']*\1$/u.exec(before) ?? /[:,[{]\s*(["'])[^"']*\1\s*$/u.exec(before);
      if (ended && error.message.includes('at node end')) {
        const other = ended[1] === '"' ? "single quotes: ' … '" : 'double quotes: " … "';
        return said(`The ${ended[1]} right before this ends the text.`, `Put the whole text into ${other}.`);
      }
      const bracket = /(\[[^\][{}]*\])[ \t]*$/u.exec(before) ?? /^(\[[^\][{}]*\])/u.exec(behind);
      if (bracket) return said(`A text with brackets needs quotes around it here: “… ${bracket[1]} …”.`);
      break;
    }
  }
  return said(SYNTAX[error.code] ?? `This is not YAML: ${error.message}.`);
}

/** The last bracket before an offset that nothing closes up to there. */
function openBracket(text: string, before: number): number | undefined {
  let open = 0;
  for (let at = before - 1; at >= 0; at -= 1) {
    if (/[\]}]/u.test(text[at]!)) open += 1;
    else if (/[[{]/u.test(text[at]!) && --open < 0) return at;
  }
  return undefined;
}

/** The last quote opened before an offset. */
function openQuote(document: Document, before: number): number | undefined {
  let found: number | undefined;
  visit(document, {
    Scalar(_, { type, range }) {
      if (type?.startsWith('QUOTE') && range && range[0] <= before) found = range[0];
    },
  });
  return found;
}

/**
 * Where a text ends too early without being a mistake of YAML: behind a blank, # begins a comment. Comments have a blank
 * behind their #, and numbers and colours have none.
 */
export function cutShort(document: Document, text: string): Slip[] {
  const slips: Slip[] = [];
  visit(document, {
    Pair(_, { key, value }) {
      if (!isScalar(key) || !key.range || !(value === null || (isScalar(value) && value.type === 'PLAIN'))) return;
      const isText = isScalar(value) && value.value !== null;
      const end = isText ? value.range![1] : text.indexOf(':', key.range[1]) + 1;
      const found = /^[ \t]+(#[^\s#].*)$/mu.exec(text.slice(end).split('\n', 1)[0]!);
      if (!found) return;
      const before = isText ? text.slice(value.range![0], end) : '';
      const message = `${quote(found[1]!)} is not read: behind a blank, # begins a comment.`;
      const whole = `${before}${before && ' '}${found[1]!.trim()}`;
      slips.push({ at: end + found[0].indexOf('#'), message, fix: `Put quotes around the whole text: "${whole}".` });
    },
  });
  return slips;
}
