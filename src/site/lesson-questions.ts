import { mdxToMdast } from 'satteri';
import type { MdastNode } from 'satteri';
import { attribute, wordsIn } from './lesson-on-paper.ts';
import { features } from './lesson-text.ts';

/** A question as a list of them shows it: the name its answers are kept under, and its words. */
export type ListedQuestion = { name: string; words: string };

/** What a question is called where its author gives it no name. */
const unnamed: Record<string, (node: Element) => string | undefined> = {
  AskSize: (node) => attribute(node, 'of'),
  AskEdge: (node) => `edges of ${attribute(node, 'piece')}`,
  AskChoice: () => undefined,
  AskOrder: () => undefined,
  AskPairs: () => undefined,
};

type Element = Extract<MdastNode, { type: 'mdxJsxFlowElement' | 'mdxJsxTextElement' }>;

/** The questions of a lesson that are right or wrong, and how many steps it has. Sizes among their words are dots. */
export function questionsOf(source: string): { questions: ListedQuestion[]; steps: number } {
  const found = { questions: [] as ListedQuestion[], steps: 0 };
  const walk = (node: MdastNode): void => {
    if (node.type === 'heading' && node.depth === 2) found.steps += 1;
    if (node.type === 'mdxJsxFlowElement' && node.name && Object.hasOwn(unnamed, node.name)) {
      const name = attribute(node, 'id') ?? unnamed[node.name]!(node);
      const words = wordsIn(node).map((part) => (typeof part === 'string' ? part : '…'));
      if (name !== undefined) found.questions.push({ name, words: words.join('').replace(/\s+/gu, ' ').trim() });
    }
    if ('children' in node) for (const child of node.children) walk(child);
  };
  walk(mdxToMdast(source, { features }));
  return found;
}
