import { mdxToMdast } from 'satteri';
import type { MdastNode } from 'satteri';
import { wordCalled } from '../../../components/words/index.ts';
import { literal } from '../../core/formula/index.ts';
import { attributesOf, wordsIn, type Element } from './lesson-on-paper.ts';
import { features } from './lesson-text.ts';

/** A question as a list of them shows it: the name its answers are kept under, and its words. */
export type ListedQuestion = { name: string; words: string };

export type LessonQuestions = {
  /** Those that are right or wrong. */
  questions: ListedQuestion[];
  /** `rounds`: how many right in a row end the set. */
  practices: (ListedQuestion & { rounds: number })[];
  /** Pieces that learners measure. */
  pieces: ListedQuestion[];
  /** How many sections it has. */
  sections: number;
  /** The steps of the making that it tells, by their ids. */
  steps: string[];
};

/** What a lesson asks its learners, how many sections it has, and which steps it tells. Sizes among the words of a question are dots. */
export function questionsOf(source: string): LessonQuestions {
  const found: LessonQuestions = { questions: [], practices: [], pieces: [], sections: 0, steps: [] };
  walk(source, (node) => {
    if (node.type === 'heading' && node.depth === 2) found.sections += 1;
    if (node.type !== 'mdxJsxFlowElement' || !node.name) return;
    list(node, node.name, source, found);
    const { id } = attributesOf(node);
    if (node.name === 'Step' && typeof id === 'string' && !found.steps.includes(id)) found.steps.push(id);
  });
  return found;
}

function list(node: Element, word: string, source: string, { questions, practices, pieces }: LessonQuestions): void {
  const kept = wordCalled(word)?.saves?.(attributesOf(node));
  if (!kept) return;
  const words = wordsIn(node, source)
    .map((part) => (typeof part === 'string' ? part : '…'))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();
  const { name } = kept;
  if (kept.as === 'answer') questions.push({ name, words });
  else if (kept.as === 'practice') practices.push({ name, words, rounds: kept.rounds });
  else if (kept.as === 'measured') pieces.push({ name, words: kept.of });
}

/** The headings of a lesson that are its steps, in order; sizes among their words stand in brackets. */
export function stepsOf(source: string): string[] {
  const found: string[] = [];
  walk(source, (node) => {
    if (node.type !== 'heading' || node.depth !== 2) return;
    const parts = wordsIn(node, source).map((part) => (typeof part === 'string' ? literal(part) : `[${part.size}]`));
    found.push(parts.join(''));
  });
  return found;
}

/** The questions of a lesson that are right or wrong, as their author wrote them. */
export function questionsIn(source: string): App.WrittenQuestion[] {
  const found: App.WrittenQuestion[] = [];
  eachWord(source, ({ name, ...written }, node) => {
    if (name !== undefined) found.push({ ...written, name, words: wordsIn(node, source) });
  });
  return found;
}

/** Every word of a lesson, in order. */
export function wordsOf(source: string): App.WrittenWord[] {
  const found: App.WrittenWord[] = [];
  eachWord(source, (written) => found.push(written));
  return found;
}

function eachWord(source: string, visit: (written: App.WrittenWord, node: Element) => void): void {
  walk(source, (node) => {
    if (node.type !== 'mdxJsxFlowElement' || !node.name) return;
    const given = attributesOf(node);
    const kept = wordCalled(node.name)?.saves?.(given);
    visit({ word: node.name, given, ...(kept?.as === 'answer' && { name: kept.name }) }, node);
  });
}

/** Visits the nodes of a lesson, in order: none of one that cannot be read, which the live preview shows by its mistakes. */
function walk(source: string, visit: (node: MdastNode) => void): void {
  const into = (node: MdastNode): void => {
    visit(node);
    if ('children' in node) for (const child of node.children) into(child);
  };
  const tree = readable(source);
  if (tree) into(tree);
}

/** The lesson that was read last: its page asks for its headings, its words and its questions, one after the other. */
let last: { source: string; tree: MdastNode | undefined } | undefined;

function readable(source: string): MdastNode | undefined {
  if (last?.source !== source) last = { source, tree: parsed(source) };
  return last.tree;
}

function parsed(source: string): MdastNode | undefined {
  try {
    return mdxToMdast(source, { features });
  } catch {
    return undefined;
  }
}
