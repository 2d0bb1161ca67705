/** What is said about a formula that cannot be read: the place, a kind sentence, and the fix where it is plain. */
import { closest, endOfText, quote, readLength, type Diagnostic, type InText } from '../measure/index.ts';
import { findName, findWord, wordsAt, type NameBook } from './names.ts';
import type { Node, Span } from './tree.ts';

export const empty = (text: string): Diagnostic<InText> => ({
  severity: 'error',
  code: 'empty-formula',
  message: 'Write a number, a name or a sum.',
  start: 0,
  end: text.length,
});

export const tooLong = (text: string): Diagnostic<InText> => ({
  severity: 'error',
  code: 'formula-too-long',
  message: 'This formula is too long. Give a part of it a name of its own.',
  start: 0,
  end: text.length,
});

export const tooDeep = (at: number): Diagnostic<InText> => ({
  severity: 'error',
  code: 'nested-too-deep',
  message: 'This formula is nested too deep. Give a part of it a name of its own.',
  start: at,
  end: at + 1,
});

export const leftOpen = (at: number): Diagnostic<InText> => ({
  severity: 'error',
  code: 'bracket-open',
  message: 'This bracket is never closed. Put “)” where it should end.',
  start: at,
  end: at + 1,
});

export const withoutTo = (start: number, end: number): Diagnostic<InText> => ({
  severity: 'error',
  code: 'to-missing',
  message: 'Say what to round to, such as “round up width / 3 to 1/8 in”.',
  start,
  end,
});

/** Nothing that makes a part stands at `at`. */
export function partMissing(text: string, at: number): Diagnostic<InText> {
  const character = characterAt(text, at);
  const code = 'part-missing';
  if (character === '') {
    const end = endOfText(text);
    return { severity: 'error', code, message: 'A number or a name is missing at the end.', start: end - 1, end };
  }
  // The only word that is never read as a name is the `to` of a rounding.
  const next = findWord(text, at, 'to') ?? character;
  if (next !== 'to' && !'+*×·⋅∗/÷∕),'.includes(next)) return stray(text, at);
  return {
    severity: 'error',
    code,
    message: `A number or a name is missing before ${quote(next)}.`,
    start: at,
    end: at + next.length,
  };
}

/** Something stands at `at`, after a whole part, that no sign joins on. */
export function leftOver(text: string, at: number, before: Node, book: NameBook | undefined): Diagnostic<InText> {
  const character = characterAt(text, at);
  const place = { start: at, end: at + character.length };
  if (character === ')') {
    const message = 'This bracket closes nothing. Take it out, or put “(” before it.';
    return { severity: 'error', code: 'bracket-shut', message, ...place, fix: '' };
  }
  if (findWord(text, at, 'x', 'X')) {
    return { severity: 'error', code: 'times-sign', message: 'Write “*” or “×” for times.', ...place, fix: '*' };
  }
  if (character === '^' || character === '²' || character === '³') {
    const message = 'There are no powers here. Write a product, such as “width * width”.';
    return { severity: 'error', code: 'power', message, ...place };
  }
  const end = endOfPart(text, at, book);
  if (end === undefined) return stray(text, at);
  const second = text.slice(at, end);
  const first = text.slice(startOfWord(text, before.start, endOfText(text, at)), endOfText(text, at));
  const message = `A sign such as + or * is missing between ${quote(first)} and ${quote(second)}.`;
  return { severity: 'error', code: 'sign-missing', message, start: at, end, fix: `* ${second}` };
}

function endOfPart(text: string, at: number, book: NameBook | undefined): number | undefined {
  const name = (book && findName(book, text, at)) ?? wordsAt(text, at, false);
  if (name) return name.end;
  const number = readLength(text, at, 'formula');
  if (number) return number.ok ? number.value.end : number.fault.end;
  return text[at] === '(' ? at + 1 : undefined;
}

/** Where the last run without blanks before `end` begins, but not before `earliest`. */
function startOfWord(text: string, earliest: number, end: number): number {
  let start = end - 1;
  while (start > earliest && !/[\s(*/+]/u.test(text[start - 1]!)) start--;
  return start;
}

function stray(text: string, at: number): Diagnostic<InText> {
  const character = characterAt(text, at);
  const message = `${quote(character)} has no meaning in a formula.`;
  return { severity: 'error', code: 'stray-sign', message, start: at, end: at + character.length };
}

const characterAt = (text: string, at: number) => (at < text.length ? String.fromCodePoint(text.codePointAt(at)!) : '');

/** `words` stand where a name should, and no known name fits. */
export function unknownWords(text: string, words: Span & { name: string }, book: NameBook): Diagnostic<InText> {
  // A hyphen may belong to the name that was meant: “top-stich” for “top-stitch”.
  const hyphened = hyphenedWords.exec(text.slice(words.start))?.[0] ?? words.name;
  const meant = closest(hyphened, book.names);
  if (meant === undefined) return unknownName(words.name, closest(words.name, book.names), words);
  return unknownName(hyphened, meant, { start: words.start, end: words.start + hyphened.length });
}

const hyphenedWords = /^[\p{L}\p{M}\p{Nd}_'’]+(?:(?:-|\s+)[\p{L}\p{M}\p{Nd}_'’]+)*/u;

/** A name that nothing has, with the one that was meant, if any is near. */
export function unknownName(name: string, meant: string | undefined, { start, end }: Span): Diagnostic<InText> {
  const unknown = { severity: 'error', code: 'unknown-name', start, end } as const;
  if (meant === undefined) return { ...unknown, message: `There is no measure called ${quote(name)}.` };
  return { ...unknown, message: `There is no measure called ${quote(name)}. Do you mean ${quote(meant)}?`, fix: meant };
}

/** `width / 1/4`: the fraction may be one number, or be divided step by step. */
export function twoWaysFraction(text: string, left: Node, right: Node): Diagnostic<InText> {
  const [sum, fraction] = [text.slice(left.start, right.end), text.slice(right.start, right.end)];
  const message = `${quote(sum)} can be read two ways. Put brackets: “(${fraction})”.`;
  return {
    severity: 'error',
    code: 'two-ways-fraction',
    message,
    start: right.start,
    end: right.end,
    fix: `(${fraction})`,
  };
}

/** `min(2,5)`: the comma may part two numbers, or be a decimal comma. */
export function twoWaysComma(text: string, start: number, end: number): Diagnostic<InText> {
  const written = text.slice(start, end);
  const [list, decimal] = [written.replace(',', ', '), written.replace(',', '.')];
  const message = `${quote(written)} can be read two ways. Write “${list}” for two numbers, or “${decimal}”.`;
  return { severity: 'error', code: 'two-ways-comma', message, start, end, fix: list };
}
