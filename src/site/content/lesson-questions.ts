import { mdxToMdast } from 'satteri';
import type { MdastNode } from 'satteri';
import { edgesCalled, foldsCalled, ROUNDS, sideCalled } from '../../core/questions/index.ts';
import { attribute, foldIn, givenIn, plainValue, wordsIn } from './lesson-on-paper.ts';
import { features } from './lesson-text.ts';

/** A question as a list of them shows it: the name its answers are kept under, and its words. */
export type ListedQuestion = { name: string; words: string };

/** What an author gave to a word: texts, numbers and lists, by the names of its attributes. */
type Given = Readonly<Record<string, unknown>>;

/** What a question is called where its author gives it no name. */
const unnamed: Record<string, (given: Given) => string | undefined> = {
  AskSize: ({ of }) => text(of),
  AskEdge: ({ piece }) => edgesCalled(text(piece) ?? ''),
  AskFold: ({ piece, ...asked }) => foldsCalled(text(piece) ?? '', foldIn(asked)),
  AskSide: ({ step, shows }) => sideCalled(text(step) ?? '', text(shows) ?? ''),
  AskChoice: () => undefined,
  AskOrder: () => undefined,
  AskPairs: () => undefined,
};

const text = (value: unknown): string | undefined => (typeof value === 'string' ? value : undefined);

/** The name that answers to a question are kept under; undefined for every word that is no question. */
export const calledBy = (word: string, given: Given): string | undefined =>
  Object.hasOwn(unnamed, word) ? (text(given.id) ?? unnamed[word]!(given)) : undefined;

type Element = Extract<MdastNode, { type: 'mdxJsxFlowElement' | 'mdxJsxTextElement' }>;

export type Listed = {
  /** Those that are right or wrong. */
  questions: ListedQuestion[];
  /** `rounds`: how many right in a row end the set. */
  practices: (ListedQuestion & { rounds: number })[];
  /** Pieces that learners measure. */
  pieces: ListedQuestion[];
  steps: number;
};

/** What a lesson asks its learners, and how many steps it has. Sizes among the words of a question are dots. */
export function questionsOf(source: string): Listed {
  const found: Listed = { questions: [], practices: [], pieces: [], steps: 0 };
  const walk = (node: MdastNode): void => {
    if (node.type === 'heading' && node.depth === 2) found.steps += 1;
    if (node.type === 'mdxJsxFlowElement' && node.name) list(node, node.name, found);
    if ('children' in node) for (const child of node.children) walk(child);
  };
  walk(mdxToMdast(source, { features }));
  return found;
}

function list(node: Element, word: string, { questions, practices, pieces }: Listed): void {
  if (word === 'MyPiece') {
    const piece = attribute(node, 'piece');
    const stage = attribute(node, 'stage') ?? 'cut';
    if (piece === undefined) pieces.push({ name: 'finished', words: 'the finished work' });
    else pieces.push({ name: `${piece} ${stage}`, words: `${piece}, ${stage}` });
    return;
  }
  const words = wordsIn(node)
    .map((part) => (typeof part === 'string' ? part : '…'))
    .join('')
    .replace(/\s+/gu, ' ')
    .trim();
  if (word === 'Practice') {
    const name = attribute(node, 'id') ?? attribute(node, 'of');
    const rounds = plainValue(node, 'rounds');
    if (name !== undefined) practices.push({ name, words, rounds: typeof rounds === 'number' ? rounds : ROUNDS });
  } else {
    const name = calledBy(word, givenIn(node));
    if (name !== undefined) questions.push({ name, words });
  }
}

/** The questions of a lesson as its author wrote them. */
export function questionsIn(source: string): App.WrittenQuestion[] {
  const found: App.WrittenQuestion[] = [];
  const walk = (node: MdastNode): void => {
    if (node.type === 'mdxJsxFlowElement' && node.name) {
      const given = givenIn(node);
      const name = calledBy(node.name, given);
      if (name !== undefined) found.push({ word: node.name, name, words: wordsIn(node), given });
    }
    if ('children' in node) for (const child of node.children) walk(child);
  };
  walk(mdxToMdast(source, { features }));
  return found;
}
