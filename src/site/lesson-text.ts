import { mdxToMdast } from 'satteri';
import type { MdastNode, MdxJsxAttributeUnion } from 'satteri';

/** An attribute of a lesson word as it is written: `piece="pocket strip"`, `tolerance={0.5}`, `open`. */
export type WrittenAttribute = {
  name: string;
  /** The text, number, list or true; undefined where the braces hold no plain value. */
  value: unknown;
  /** Offset of the attribute's name. */
  at: number;
  /** Offset of the first character of a text, inside its quotes. */
  textAt: number;
};

/** From the first character of something up to the one after it, as UTF-16 offsets. */
export type Part = { start: number; end: number };

/** A lesson word (`<Measure … />`) or an HTML element in a lesson. */
export type WrittenWord = {
  name: string;
  part: Part;
  attributes: WrittenAttribute[];
  /** Offset of braces that stand in place of attributes. */
  spread?: number | undefined;
  hasText: boolean;
};

/** Maths: `at` is the offset of the first character between the dollar signs. */
export type WrittenMaths = { tex: string; display: boolean; at: number; part: Part };

/** A picture with the words for those who cannot see it. */
export type WrittenPicture = { address: string; words: string; part: Part };

/** Something that has no place in a lesson, or that the text breaks off at. */
export type TextFault = { at: number; message: string; mend?: string };

export type LessonText = {
  words: WrittenWord[];
  maths: WrittenMaths[];
  pictures: WrittenPicture[];
  faults: TextFault[];
};

/** What the site's Markdown understands; the build and the content check must agree on it. */
export const features = { math: true } as const;

/**
 * Reads a lesson with the engine that builds the pages, so that what passes here also builds.
 *
 * @param source the whole lesson, front matter included; offsets are UTF-16 indices into it
 */
export function readLesson(source: string): LessonText {
  const lesson: LessonText = { words: [], maths: [], pictures: [], faults: [] };
  let tree: MdastNode;
  try {
    tree = mdxToMdast(source, { features });
  } catch (error) {
    lesson.faults.push(syntaxFault(source, error instanceof Error ? error.message : String(error)));
    return lesson;
  }
  walk(tree, source, lesson);
  return lesson;
}

function walk(node: MdastNode, source: string, lesson: LessonText): void {
  const part = { start: node.position?.start.offset ?? 0, end: node.position?.end.offset ?? source.length };
  switch (node.type) {
    case 'mdxJsxFlowElement':
    case 'mdxJsxTextElement':
      if (node.name) lesson.words.push(wordFrom(node.name, node.attributes, node.children.length > 0, source, part));
      break;
    case 'math':
    case 'inlineMath': {
      const at = Math.max(part.start, source.indexOf(node.value, part.start));
      lesson.maths.push({ tex: node.value, display: node.type === 'math', at, part });
      break;
    }
    case 'image':
      lesson.pictures.push({ address: node.url, words: node.alt ?? '', part });
      break;
    case 'mdxFlowExpression':
    case 'mdxTextExpression':
      if (!isComment(node.value)) lesson.faults.push({ at: part.start, ...BRACES });
      break;
    case 'mdxjsEsm':
      lesson.faults.push({ at: part.start, ...IMPORT });
      break;
  }
  if ('children' in node) for (const child of node.children) walk(child, source, lesson);
}

const BRACES = { message: 'Braces { } have a meaning of their own in a lesson.', mend: 'Write \\{ to show a brace.' };
const IMPORT = {
  message: 'A line of a lesson cannot start with “import” or “export”.',
  mend: 'Every lesson word is ready to use without. If this is prose, begin the line with another word.',
};

const isComment = (expression: string): boolean => /^\s*(\/\*[\s\S]*\*\/\s*)?$/.test(expression);

function wordFrom(
  name: string,
  attributes: MdxJsxAttributeUnion[],
  hasText: boolean,
  source: string,
  part: Part,
): WrittenWord {
  const places = attributePlaces(source, part.start + 1 + name.length);
  const written = attributes.map((attribute, i) => ({
    attribute,
    place: places[i] ?? { at: part.start, textAt: part.start },
  }));
  return {
    name,
    part,
    hasText,
    spread: written.find(({ attribute }) => attribute.type === 'mdxJsxExpressionAttribute')?.place.at,
    attributes: written.flatMap(({ attribute, place }) =>
      attribute.type === 'mdxJsxAttribute'
        ? [{ name: attribute.name, value: plainValue(attribute.value), ...place }]
        : [],
    ),
  };
}

/** A value in braces is read as JSON, a text in single quotes too: nothing in a lesson is ever run as a program. */
function plainValue(value: Extract<MdxJsxAttributeUnion, { type: 'mdxJsxAttribute' }>['value']): unknown {
  if (value === null || value === undefined) return true;
  if (typeof value === 'string') return value;
  const expression = value.value.trim();
  const single = /^'([^'\\]*)'$/.exec(expression);
  if (single) return single[1];
  try {
    return JSON.parse(expression);
  } catch {
    return undefined;
  }
}

/** The parser keeps no places of attributes, so the opening tag is walked once more. */
function attributePlaces(source: string, from: number): { at: number; textAt: number }[] {
  const places: { at: number; textAt: number }[] = [];
  let at = from;
  while (at < source.length) {
    const sign = source[at]!;
    if (sign === '>' || source.startsWith('/>', at)) break;
    if (sign === '{') {
      places.push({ at, textAt: at + 1 });
      at = pastBraces(source, at);
    } else if (/[\p{L}_$]/u.test(sign)) {
      const name = /[^\s=/>{]+/uy;
      name.lastIndex = at;
      const equals = /\s*=\s*/y;
      equals.lastIndex = at + name.exec(source)![0].length;
      const sign = equals.exec(source);
      const value = sign ? equals.lastIndex : -1;
      if (value < 0) {
        places.push({ at, textAt: at });
        at = name.lastIndex;
      } else {
        const inBraces = source[value] === '{';
        const quote = inBraces ? /\{\s*["']?/y : /["']/y;
        quote.lastIndex = value;
        places.push({ at, textAt: value + (quote.exec(source)?.[0].length ?? 0) });
        at = inBraces ? pastBraces(source, value) : source.indexOf(source[value]!, value + 1) + 1;
      }
    } else at += 1;
  }
  return places;
}

function pastBraces(source: string, open: number): number {
  let depth = 0;
  let quote = '';
  for (let at = open; at < source.length; at += 1) {
    const sign = source[at]!;
    if (quote) {
      if (sign === '\\') at += 1;
      else if (sign === quote) quote = '';
    } else if (sign === '"' || sign === "'" || sign === '`') quote = sign;
    else if (sign === '{') depth += 1;
    else if (sign === '}' && --depth === 0) return at + 1;
  }
  return source.length;
}

/** The engine's wording is for programmers; each fault a writer makes gets words of its own. */
function syntaxFault(source: string, text: string): TextFault {
  const place = /^(\d+):(\d+): /.exec(text);
  const at = place ? offsetAt(source, Number(place[1]), Number(place[2])) : 0;
  const about = (place ? text.slice(place[0].length) : text).replace(/\s*\([\w-]+:[\w-]+\)$/, '');
  const tag = /`<\/?([\w.]*)>`/.exec(about)?.[1] ?? '';

  if (about.startsWith('Expected a closing tag')) {
    return {
      at: lastOpened(source, tag) ?? at,
      message: `<${tag}> is opened here and never closed.`,
      mend: `Write </${tag}> where it ends.`,
    };
  }
  if (about.startsWith('Unexpected closing tag')) {
    return { at, message: `</${tag}> closes nothing.`, mend: `Write <${tag}> where it starts, or take this away.` };
  }
  if (about.startsWith('Expected the closing tag')) {
    return {
      at,
      message: `</${tag}> stands inside a paragraph that started after <${tag}>.`,
      mend: `Put <${tag}> and </${tag}> on lines of their own, with blank lines around the text.`,
    };
  }
  if (about.startsWith('Unexpected character after `<`')) {
    return {
      at,
      message: 'A < starts a lesson word, but no word follows that can be read.',
      mend: 'Write \\< to show the sign; put quotes around what an attribute says.',
    };
  }
  if (about.includes('closing brace')) return { at, message: 'This { is never closed.', mend: BRACES.mend };
  if (about.startsWith('Could not parse expression')) return { at, ...BRACES };
  if (about.startsWith('Could not parse esm')) return { at: source.lastIndexOf('\n', at - 1) + 1, ...IMPORT };
  return { at, message: `This cannot be read: ${about}.` };
}

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
