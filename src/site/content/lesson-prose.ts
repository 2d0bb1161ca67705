import Slugger from 'github-slugger';
import type { MdastNode } from 'satteri';
import { partsOf } from '../../core/formula/index.ts';
import { commentsIn } from './lesson-expression.ts';
import type { TextRange } from './lesson-text.ts';

/**
 * Running text of a lesson. `text` is as long as what it was taken from, so that an index into it and `start` make an
 * offset into the lesson: marks of emphasis and links are filled with `JOINER`, and what is no text with `THING`.
 */
export type Prose = { kind: 'paragraph' | 'heading' | 'cell'; start: number; text: string };

/** Stands for marks such as ** that a reader does not see. */
export const JOINER = '\u2060';
/** Stands for a lesson word, maths, code or a picture. */
export const THING = '\ufffc';

export type Link = { address: string; part: TextRange };

export type LessonProse = {
  prose: Prose[];
  links: Link[];
  /** What is set in bold: how a lesson brings in a term. */
  terms: (TextRange & { text: string })[];
  /** The parts of the page a link can lead to. */
  anchors: string[];
  comments: (TextRange & { text: string })[];
};

/** What stands in a lesson beside its words, from the tree that the pages are built from. */
export function readProse(tree: MdastNode, source: string): LessonProse {
  const found: LessonProse = { prose: [], links: [], terms: [], anchors: [], comments: [] };
  walk(tree, source, found, new Slugger());
  return found;
}

const BLOCKS: Partial<Record<MdastNode['type'], Prose['kind']>> = {
  paragraph: 'paragraph',
  heading: 'heading',
  tableCell: 'cell',
};

function walk(node: MdastNode, source: string, found: LessonProse, slugger: Slugger): void {
  const part = partOf(node, source);
  const kind = BLOCKS[node.type];
  if (kind) found.prose.push({ kind, start: part.start, text: runningText(node, source) });
  switch (node.type) {
    case 'heading':
      found.anchors.push(slugger.slug(wordsOf(node, source)));
      break;
    case 'link':
    case 'definition':
      found.links.push({ address: node.url, part });
      break;
    case 'strong':
      found.terms.push({ ...part, text: plainText(node) });
      break;
    case 'mdxJsxFlowElement':
    case 'mdxJsxTextElement':
      for (const attribute of node.attributes) {
        if (attribute.type !== 'mdxJsxAttribute' || typeof attribute.value !== 'string') continue;
        if (attribute.name === 'href') found.links.push({ address: attribute.value, part });
        if (attribute.name === 'id' && /^[a-z]/.test(node.name ?? '')) found.anchors.push(attribute.value);
      }
      break;
    case 'mdxFlowExpression':
    case 'mdxTextExpression': {
      for (const { text } of commentsIn(node.value) ?? []) found.comments.push({ ...part, text });
      break;
    }
  }
  if ('children' in node) for (const child of node.children) walk(child, source, found, slugger);
}

const partOf = (node: MdastNode, source: string): TextRange => ({
  start: node.position?.start.offset ?? 0,
  end: node.position?.end.offset ?? source.length,
});

function runningText(block: MdastNode, source: string): string {
  const { start, end } = partOf(block, source);
  let text = '';
  const put = (node: MdastNode): void => {
    const part = partOf(node, source);
    text += JOINER.repeat(Math.max(0, part.start - start - text.length));
    if (node.type === 'text') text += source.slice(part.start, part.end);
    else if ('children' in node && node.children.length > 0) for (const child of node.children) put(child);
    else text += THING.repeat(part.end - part.start);
  };
  put(block);
  return text + JOINER.repeat(Math.max(0, end - start - text.length));
}

/** A text of the tree as the author wrote it: with a backslash before each bracket that has one in the lesson. */
export function asWritten(node: Extract<MdastNode, { type: 'text' }>, source: string): string {
  const { start, end } = partOf(node, source);
  const signs = [...source.slice(start, end).matchAll(/(\\*)[\][]/gu)];
  if (!signs.some(([, before = '']) => before.length % 2 === 1)) return node.value;
  let i = 0;
  return node.value.replace(/[\][]/gu, (sign) => ((signs[i++]?.[1]?.length ?? 0) % 2 === 1 ? `\\${sign}` : sign));
}

/** The words of a heading, without the sizes among them: its address is made of these. */
function wordsOf(node: MdastNode, source: string): string {
  if (node.type === 'text') {
    return partsOf(asWritten(node, source))
      .filter((_, i) => i % 2 === 0)
      .join('');
  }
  return 'children' in node ? node.children.map((child) => wordsOf(child, source)).join('') : plainText(node);
}

/** What a reader sees of a part, without its marks. */
export function plainText(node: MdastNode): string {
  if (node.type === 'text' || node.type === 'inlineCode') return node.value;
  return 'children' in node ? node.children.map(plainText).join('') : '';
}
