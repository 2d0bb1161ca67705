import { mdxToMdast } from 'satteri';
import type { MdastNode } from 'satteri';
import { wordCalled } from '../../../components/words/index.ts';
import type { AttributeValues, PaperContext, QuestionText } from '../../../components/words/word.ts';
import { partsOf } from '../../core/formula/index.ts';
import type { PaperQuestion, PickQuestion } from '../../core/handout/index.ts';
import { asWritten } from './lesson-prose.ts';
import { features } from './lesson-text.ts';

/** What of a lesson goes on paper: its questions, what it shows, and where it can hurt. */
export type PaperLesson = {
  questions: PaperQuestion[];
  /** Its questions that take no sum. */
  picks: PickQuestion[];
  /** Its headings, in order. */
  shows: QuestionText[];
  /** What can hurt, by the key of the usual cautions, and the lesson's own words. */
  cautions: { of?: string; words: QuestionText }[];
};

/**
 * Reads a lesson for paper. A lesson with a mistake in its text has nothing to print; the check tells of the mistake.
 *
 * @param source the whole lesson, front matter included
 */
export function lessonOnPaper(source: string, context: PaperContext = {}): PaperLesson {
  const lesson: PaperLesson = { questions: [], picks: [], shows: [], cautions: [] };
  let tree: MdastNode;
  try {
    tree = mdxToMdast(source, { features });
  } catch {
    return lesson;
  }
  walk(tree, source, lesson, context);
  return lesson;
}

function walk(node: MdastNode, source: string, lesson: PaperLesson, context: PaperContext): void {
  if (node.type === 'heading') {
    lesson.shows.push(wordsIn(node, source));
    return;
  }
  const word = isElement(node) ? wordCalled(node.name ?? '') : undefined;
  if (word?.paper && isElement(node)) {
    const form = word.paper(attributesOf(node), wordsIn(node, source), context);
    if (!form) return;
    if ('sums' in form) lesson.questions.push(...form.sums);
    else if ('picks' in form) lesson.picks.push(...form.picks);
    else lesson.cautions.push(form.caution);
    return;
  }
  if ('children' in node) for (const child of node.children) walk(child, source, lesson, context);
}

export type Element = Extract<MdastNode, { type: 'mdxJsxFlowElement' | 'mdxJsxTextElement' }>;

const isElement = (node: MdastNode): node is Element =>
  node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement';

/** All that an author gave to a word, by the names of its attributes. */
export const attributesOf = ({ attributes }: Element): AttributeValues =>
  Object.fromEntries(
    attributes.flatMap((one) => (one.type === 'mdxJsxAttribute' ? [[one.name, plainValue(one.value)] as const] : [])),
  );

/** A text, or what stands in braces, which is JSON. The content check tells of what is not. */
function plainValue(value: Extract<Element['attributes'][number], { type: 'mdxJsxAttribute' }>['value']): unknown {
  if (typeof value !== 'object' || value === null) return value ?? undefined;
  try {
    return JSON.parse(value.value);
  } catch {
    return undefined;
  }
}

/** The words of a part of the lesson, and the formula of each size among them. */
export function wordsIn(node: MdastNode, source: string): QuestionText {
  if (node.type === 'text') {
    const parts = partsOf(asWritten(node, source)).map((part, i) => (i % 2 === 1 ? { size: part } : part));
    return parts.filter((part) => part !== '');
  }
  if (node.type === 'inlineCode') return [node.value];
  const sizeInText = isElement(node) ? wordCalled(node.name ?? '')?.sizeInText : undefined;
  if (sizeInText && isElement(node)) {
    const size = sizeInText(attributesOf(node));
    return size === undefined ? [] : [{ size }];
  }
  if (!('children' in node)) return node.type === 'break' ? [' '] : [];
  const parts = node.children.flatMap((child) => wordsIn(child, source));
  return node.type === 'paragraph' ? [...parts, ' '] : parts;
}
