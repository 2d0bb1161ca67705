import { mdxToMdast } from 'satteri';
import type { MdastNode } from 'satteri';
import type { Asked, PickQuestion } from '../../core/handout/index.ts';
import {
  edgesCalled,
  foldsCalled,
  rungAt,
  sideCalled,
  type AskedFold,
  type Difficulty,
} from '../../core/questions/index.ts';
import { features } from './lesson-text.ts';

/** What of a lesson goes on paper: its questions, what it shows, and where it can hurt. */
export type PaperLesson = {
  questions: Asked[];
  /** Its questions that take no sum. Terms of the glossary have no meaning yet. */
  picks: PickQuestion[];
  /** Its headings, in order. */
  shows: string[];
  /** What can hurt, by the key of the usual cautions, and the lesson's own words. */
  cautions: { of?: string; sentences: string[] }[];
};

/**
 * Reads a lesson for paper. A lesson with a mistake in its text has nothing to print; the check tells of the mistake.
 *
 * @param source the whole lesson, front matter included
 */
export function lessonOnPaper(source: string): PaperLesson {
  const lesson: PaperLesson = { questions: [], picks: [], shows: [], cautions: [] };
  let tree: MdastNode;
  try {
    tree = mdxToMdast(source, { features });
  } catch {
    return lesson;
  }
  walk(tree, lesson);
  return lesson;
}

function walk(node: MdastNode, lesson: PaperLesson): void {
  if (node.type === 'heading') {
    lesson.shows.push(
      wordsIn(node)
        .map((part) => (typeof part === 'string' ? part : part.size))
        .join(''),
    );
    return;
  }
  if (node.type === 'mdxJsxFlowElement' || node.type === 'mdxJsxTextElement') {
    if (node.name === 'AskSize' || node.name === 'Practice') {
      lesson.questions.push(...askedFrom(node));
      return;
    }
    const pick = pickFrom(node);
    if (pick) {
      lesson.picks.push(pick);
      return;
    }
    if (node.name === 'Caution') {
      const of = attribute(node, 'of');
      const own = wordsIn(node)
        .map((part) => (typeof part === 'string' ? part : part.size))
        .join('')
        .trim();
      lesson.cautions.push({
        ...(of !== undefined && { of }),
        sentences: own === '' ? [] : [own.replace(/\s+/g, ' ')],
      });
      return;
    }
  }
  if ('children' in node) for (const child of node.children) walk(child, lesson);
}

/** A set of practice gets so many exercises on paper, each harder than the one before. */
const EXERCISES = 3;

/** A question that is worked out; practice gives several, with numbers of their own each time. */
function askedFrom(node: Element): Asked[] {
  const of = attribute(node, 'of');
  const hint = attribute(node, 'hint');
  const help = hint !== undefined && { hints: [hint] };
  const id = attribute(node, 'id') ?? of;
  if (id === undefined) return [];
  if (node.name === 'AskSize') return of === undefined ? [] : [{ of, ...help, words: wordsIn(node), id }];
  const several = Object.entries(Object(plainValue(node, 'asks')) as Record<string, string>);
  const asks =
    of !== undefined
      ? Array.from({ length: EXERCISES }, () => ({ of, words: wordsIn(node) }))
      : several.map(([of, words]) => ({ of, words: [words] }));
  return asks.map(({ of: asked, words }, i): Asked => ({
    ...{ of: asked, ...help, id: `practice ${id} ${i + 1}` },
    words: [`Practice, ${i + 1} of ${asks.length}. `, ...words],
    difficulty: (1 + rungAt(i, asks.length, 3)) as Difficulty,
    isRepeated: of !== undefined && i > 0,
  }));
}

type Element = Extract<MdastNode, { type: 'mdxJsxFlowElement' | 'mdxJsxTextElement' }>;

/** The text of an attribute. */
export function attribute({ attributes }: Element, name: string): string | undefined {
  const found = attributes.find((one) => one.type === 'mdxJsxAttribute' && one.name === name);
  const value = found?.type === 'mdxJsxAttribute' ? found.value : undefined;
  return typeof value === 'string' ? value : undefined;
}

/** A question that is answered by choosing, ordering, pointing or matching. */
function pickFrom(node: Element): PickQuestion | undefined {
  const value = (name: string) => plainValue(node, name);
  const words = wordsIn(node);
  const id = attribute(node, 'id') ?? edgesCalled(attribute(node, 'piece') ?? '');
  switch (node.name) {
    case 'AskChoice':
      return { kind: 'choice', id, words, right: textsIn(value('right')), wrong: textsIn(value('wrong')) };
    case 'AskOrder':
      return { kind: 'order', id, words, steps: textsIn(value('steps')) };
    case 'AskEdge': {
      const edges = value('edges');
      return {
        kind: 'edges',
        id,
        words,
        piece: attribute(node, 'piece') ?? '',
        ...(edges !== undefined && { edges: textsIn(edges) }),
      };
    }
    case 'AskFold':
      return {
        ...{ kind: 'folds', words, piece: attribute(node, 'piece') ?? '', asked: foldIn(givenIn(node)) },
        id: attribute(node, 'id') ?? foldsCalled(attribute(node, 'piece') ?? '', foldIn(givenIn(node))),
      };
    case 'AskSide': {
      const [step, shows] = [attribute(node, 'step') ?? '', attribute(node, 'shows') ?? ''];
      const side = attribute(node, 'from') === 'back' ? 'back' : 'front';
      return { kind: 'side', id: attribute(node, 'id') ?? sideCalled(step, shows), words, step, side, shows };
    }
    case 'Predict':
      return { kind: 'guess', id, words, guesses: textsIn(value('guesses')), shows: attribute(node, 'shows') ?? '' };
    case 'MyPiece': {
      const piece = attribute(node, 'piece');
      const stage = attribute(node, 'stage') === 'sewn' ? 'sewn' : 'cut';
      const subject = piece === undefined ? ({ finished: true } as const) : { piece, stage: stage as 'cut' | 'sewn' };
      return { kind: 'piece', id: piece === undefined ? 'finished' : `${piece} ${stage}`, words, subject };
    }
    case 'AskPairs': {
      const terms = textsIn(value('terms')).map((term) => [term, '']);
      return { kind: 'pairs', id, words, pairs: { ...Object.fromEntries(terms), ...Object(value('pairs')) } };
    }
    default:
      return undefined;
  }
}

/** Which fold, or which kind of folds, an AskFold asks for. */
export function foldIn({ fold, kind }: { fold?: unknown; kind?: unknown }): AskedFold {
  return typeof fold === 'number' ? { fold } : { kind: kind === 'valley' ? 'valley' : 'mountain' };
}

/** All that an author gave to a word, by the names of its attributes. */
export const givenIn = (node: Element): Record<string, unknown> =>
  Object.fromEntries(
    node.attributes.flatMap((one) =>
      one.type === 'mdxJsxAttribute' ? [[one.name, plainValue(node, one.name)] as const] : [],
    ),
  );

/** What stands in braces, which is JSON. The content check tells of what is not. */
export function plainValue({ attributes }: Element, name: string): unknown {
  const found = attributes.find((one) => one.type === 'mdxJsxAttribute' && one.name === name);
  const value = found?.type === 'mdxJsxAttribute' ? found.value : undefined;
  if (typeof value !== 'object' || value === null) return value ?? undefined;
  try {
    return JSON.parse(value.value);
  } catch {
    return undefined;
  }
}

/** A list of texts, or the names of a group of them. */
const textsIn = (value: unknown): string[] =>
  (Array.isArray(value) ? value : Object.keys(Object(value))).map((one) => String(one));

/** The words of a part of the lesson, and the formula of each size among them. */
export function wordsIn(node: MdastNode): Asked['words'] {
  if (node.type === 'text' || node.type === 'inlineCode') return [node.value];
  if ((node.type === 'mdxJsxTextElement' || node.type === 'mdxJsxFlowElement') && node.name === 'Size') {
    const size = attribute(node, 'of');
    return size === undefined ? [] : [{ size }];
  }
  if (!('children' in node)) return node.type === 'break' ? [' '] : [];
  const parts = node.children.flatMap(wordsIn);
  return node.type === 'paragraph' ? [...parts, ' '] : parts;
}
