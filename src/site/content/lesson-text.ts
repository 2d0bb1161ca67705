import { mdxToMdast } from 'satteri';
import type { MdastNode, MdxJsxAttributeUnion } from 'satteri';
import { attributePlaces } from './attribute-places.ts';
import { readProse } from './lesson-prose.ts';
import type { LessonProse } from './lesson-prose.ts';
import { commentsIn, plainValue } from './lesson-expression.ts';
import { BRACES, IMPORT, PICTURE, syntaxFault, UNKNOWN } from './lesson-syntax.ts';
import { topOf } from './lesson-top.ts';
import type { AtOffset } from './diagnostic.ts';

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
export type TextRange = { start: number; end: number };

/** A lesson word (`<Measure … />`) or an HTML element in a lesson. */
export type WrittenWord = {
  name: string;
  part: TextRange;
  attributes: WrittenAttribute[];
  /** Offset of braces that stand in place of attributes. */
  spread?: number | undefined;
  hasText: boolean;
};

/** Maths: `at` is the offset of the first character between the dollar signs. */
export type WrittenMaths = { tex: string; display: boolean; at: number; part: TextRange };

/** A picture with the words for those who cannot see it. */
export type WrittenPicture = { address: string; words: string; part: TextRange };

export type LessonText = LessonProse & {
  words: WrittenWord[];
  maths: WrittenMaths[];
  pictures: WrittenPicture[];
  faults: AtOffset[];
};

/**
 * What the site's Markdown understands; the build and the content check must agree on it. Prices stay prices: one dollar
 * sign is one, and mathematics stands between two.
 */
export const features = { math: { singleDollarTextMath: false }, gfm: true } as const;

/** Marks the fault of a text that stands in braces: nothing that runs. */
export const TEXT_IN_BRACES = 'text-in-braces';

/**
 * Reads a lesson with the parser that builds the pages, so that what passes here also builds.
 *
 * @param source the whole lesson, front matter included; offsets are UTF-16 indices into it
 */
export function readLesson(source: string): LessonText {
  const none = { words: [], maths: [], pictures: [], prose: [], links: [], terms: [], anchors: [], comments: [] };
  const { body, fault } = topOf(source);
  const faults = fault ? [fault] : [];
  let tree: MdastNode;
  try {
    tree = mdxToMdast(body, { features });
  } catch (error) {
    return { ...none, faults: [...faults, syntaxFault(body, error instanceof Error ? error.message : String(error))] };
  }
  const lesson: LessonText = { words: [], maths: [], pictures: [], faults, ...readProse(tree, source) };
  walk(tree, source, lesson);
  return lesson;
}

/** What Markdown is made of. What is not among it could be anything, so it is refused. */
const MARKDOWN: ReadonlySet<string> = new Set<MdastNode['type']>([
  ...(['root', 'paragraph', 'heading', 'text', 'emphasis', 'strong', 'delete', 'break', 'thematicBreak'] as const),
  ...(['link', 'linkReference', 'definition', 'list', 'listItem', 'blockquote', 'code', 'inlineCode'] as const),
  ...(['table', 'tableRow', 'tableCell', 'footnoteReference', 'footnoteDefinition'] as const),
]);

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
      if (!commentsIn(node.value)) {
        const literal = typeof plainValue(node.value) === 'string';
        const fix = /^[\p{L}][\p{L} ]*$/u.test(node.value.trim())
          ? `A size stands in square brackets: [${node.value.trim()}]. ${BRACES.fix}`
          : BRACES.fix;
        const code = literal && { code: TEXT_IN_BRACES };
        lesson.faults.push({ at: part.start, severity: 'error', message: BRACES.message, fix, ...code });
      }
      break;
    case 'imageReference':
      lesson.faults.push({ at: part.start, severity: 'error', ...PICTURE });
      break;
    case 'mdxjsEsm':
      lesson.faults.push({ at: part.start, severity: 'error', ...IMPORT });
      break;
    default:
      if (!MARKDOWN.has(node.type)) lesson.faults.push({ at: part.start, severity: 'error', ...UNKNOWN });
  }
  if ('children' in node) for (const child of node.children) walk(child, source, lesson);
}

function wordFrom(
  name: string,
  attributes: MdxJsxAttributeUnion[],
  hasText: boolean,
  source: string,
  part: TextRange,
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
      attribute.type === 'mdxJsxAttribute' ? [{ name: attribute.name, value: valueOf(attribute.value), ...place }] : [],
    ),
  };
}

/** A text in quotes stands for itself. */
function valueOf(value: Extract<MdxJsxAttributeUnion, { type: 'mdxJsxAttribute' }>['value']): unknown {
  if (value === null || value === undefined) return true;
  return typeof value === 'string' ? value : plainValue(value.value);
}
