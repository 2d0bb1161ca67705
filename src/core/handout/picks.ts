/** Questions on paper that are answered without a sum: by ticking, numbering, writing letters, and measuring. */
import { formatLength } from '../measure/index.ts';
import { makeUp } from '../project/steps/make-up.ts';
import { pointAtEdges, pointAtFolds, type FoldQuestion, type Pointing } from '../questions/pointing.ts';
import { pointAtVisible } from '../questions/visible.ts';
import { randomFrom, shuffled } from '../questions/practice.ts';
import { literal } from '../formula/brackets.ts';
import { inText } from '../project/texts.ts';
import { heading, paragraph, row, table, together, toTick } from './blocks.ts';
import { seedText } from './exercises.ts';
import { pointingFigure } from './pointing-figure.ts';
import type { Subject } from '../questions/measured-work.ts';
import type { UsualSizes } from '../questions/measured.ts';
import type { Pattern, Size } from '../project/pattern.ts';
import type { PaperQuestion, Seed } from './exercises.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';

/** Its texts may hold sizes in square brackets: `[2 * seam]`. */
export type PickQuestion = { readonly id: string; readonly words: PaperQuestion['words'] } & (
  | { readonly kind: 'choice'; readonly right: readonly string[]; readonly wrong: readonly string[] }
  | { readonly kind: 'order'; readonly steps: readonly string[] }
  | PointQuestion
  | { readonly kind: 'pairs'; readonly pairs: Readonly<Record<string, string>> }
  | /** Nobody is wrong; the key says what happens. */ {
      readonly kind: 'guess';
      readonly guesses: readonly string[];
      readonly shows: string;
    }
  | /** A record of what somebody's work measures. `sizes` are those of the edition. */ {
      readonly kind: 'piece';
      readonly subject: Subject;
      readonly sizes?: UsualSizes;
    }
);

/** Questions that a page lets its readers point at. */
type PointQuestion =
  | { readonly kind: 'edges'; readonly piece: string; readonly edges?: readonly string[] }
  | { readonly kind: 'folds'; readonly piece: string; readonly fold: FoldQuestion }
  | { readonly kind: 'side'; readonly step: string; readonly side: 'front' | 'back'; readonly shows: string };

/** What to do, told to whoever has no page to point at. */
const todo: Record<Exclude<PickQuestion['kind'], PointQuestion['kind'] | 'piece'>, string> = {
  choice: 'Tick what is right.',
  order: 'Write 1 before what comes first, and so on.',
  pairs: 'Write the letter of its meaning behind each term.',
  guess: 'Guess, and tick. A wrong guess costs nothing.',
};

/** So many answers to tick are not parted. */
const FEW = 8;

/** The questions with room for their answers, mixed anew for each sheet; numbers go on from `from`. */
export function picksOnSheet(
  picks: readonly PickQuestion[],
  from: number,
  seed: Seed,
  pattern: Pattern,
  type: Type,
): Block[] {
  return picksInPattern(picks, pattern).flatMap((pick, i) => {
    const random = randomFrom(`${seedText(seed)} ${pick.id}`);
    return [
      ...paragraph(`${from + i}. ${inText(wordsOf(pick, pattern), pattern)}`, type, {
        keep: true,
        after: 0.2 * type.text,
      }),
      ...answerRoomOf(pick, pattern, random, type),
      ...paragraph('', type),
    ];
  });
}

function answerRoomOf(pick: PickQuestion, pattern: Pattern, random: () => number, type: Type): Block[] {
  const text = (words: string) => inText(words, pattern);
  /** A few stand on one page, with what is asked. */
  const ticks = (texts: readonly string[]) =>
    texts.flatMap((one, i) => {
      const blocks = toTick(text(one), type, { indent: 4 });
      return texts.length <= FEW && i < texts.length - 1 ? together(blocks) : blocks;
    });
  const lines = (texts: readonly string[]) =>
    texts.flatMap((one) => paragraph(text(one), type, { indent: 4, after: 0.3 * type.text }));
  const say = (words: string) => paragraph(words, type, { keep: true, size: type.small, after: 0.3 * type.text });
  switch (pick.kind) {
    case 'choice':
      return [...say(todo.choice), ...ticks(shuffled([...pick.right, ...pick.wrong], random))];
    case 'order':
      return [...say(todo.order), ...lines(shuffled(pick.steps, random).map((step) => `____  ${step}`))];
    case 'pairs':
      return [...say(todo.pairs), ...lines(matching(pick.pairs, random))];
    case 'guess':
      return [...say(todo.guess), ...ticks(pick.guesses)];
    case 'piece':
      return record(pick.sizes!, type);
    default: {
      const pointing = pointingOf(pick, pattern)!;
      return [
        ...say(pointing.todo.replace('Choose', 'Tick')),
        ...pointingFigure(pointing, type, pick.id),
        ...ticks(pointing.spots.map(({ label }) => label)),
      ];
    }
  }
}

/** What the drawing of a question is, and what of it is right; undefined where the pattern has no such thing. */
function pointingOf(pick: PointQuestion, pattern: Pattern): Pointing | undefined {
  if (pick.kind === 'side') {
    const step = makeUp(pattern).find(({ id }) => id === pick.step);
    return step && pointAtVisible(step.after, pick.side, pick.shows, pattern);
  }
  const piece = Object.hasOwn(pattern.pieces, pick.piece) ? pattern.pieces[pick.piece] : undefined;
  if (!piece) return undefined;
  return pick.kind === 'edges' ? pointAtEdges(piece, pick.edges) : pointAtFolds(piece, pick.fold, pattern);
}

/** What it should measure, worked out by the maker, and what it does. */
const record = ({ expected }: UsualSizes, type: Type): Block[] =>
  table(
    [
      { title: '', share: 1 },
      { title: 'It should measure', share: 2 },
      { title: 'It measures', share: 2 },
    ],
    waysOf(expected).map(([way]) => row([way, '______________', '______________'])),
    type,
  );

const waysOf = ({ width, height }: Size) =>
  [
    ['Width', width],
    ['Height', height],
  ] as const;

/** What is right, by the numbers of the sheets. It is the same on every sheet, however mixed. */
export function picksInKey(picks: readonly PickQuestion[], from: number, pattern: Pattern, type: Type): Block[] {
  return picksInPattern(picks, pattern).flatMap((pick, i) => [
    ...heading(`Question ${from + i}`, type),
    ...paragraph(inText(wordsOf(pick, pattern), pattern), type, { keep: true, after: 0.3 * type.text }),
    ...answersOf(pick, pattern).flatMap((one) =>
      paragraph(inText(one, pattern), type, { indent: 4, after: 0.1 * type.text, strong: true }),
    ),
    ...(pick.kind === 'piece' ? usualSizes(pick.sizes!, pattern, type) : []),
  ]);
}

/** What the usual single mistakes come to. */
function usualSizes({ usual }: UsualSizes, pattern: Pattern, type: Type): Block[] {
  const show = showIn(pattern);
  return table(
    [
      { title: 'What it looks like', share: 4 },
      { title: 'Width', share: 1.4 },
      { title: 'Height', share: 1.4 },
    ],
    usual.map(({ sentence, size: { width, height } }) => row([sentence, show(width), show(height)])),
    type,
    type.small,
  );
}

const showIn =
  ({ edition, grid }: Pattern) =>
  (mm: number): string =>
    formatLength(mm, edition, { grid, style: 'set' });

/** Those that the pattern has: what is left out is not asked for. */
export const picksInPattern = (picks: readonly PickQuestion[], pattern: Pattern): PickQuestion[] =>
  picks.filter((pick) => {
    if (pick.kind === 'piece') return pick.sizes !== undefined;
    return !isPointed(pick) || pointingOf(pick, pattern) !== undefined;
  });

const isPointed = (pick: PickQuestion): pick is PickQuestion & PointQuestion =>
  pick.kind === 'edges' || pick.kind === 'folds' || pick.kind === 'side';

/** Terms with room for a letter, then the meanings by letter. */
function matching(pairs: Readonly<Record<string, string>>, random: () => number): string[] {
  const meanings = shuffled([...new Set(Object.values(pairs))], random);
  return [
    ...Object.keys(pairs).map((term) => `${term}  ____`),
    ...meanings.map((meaning, i) => `${String.fromCharCode(65 + i)}.  ${meaning}`),
  ];
}

function answersOf(pick: PickQuestion, pattern: Pattern): string[] {
  switch (pick.kind) {
    case 'choice':
      return [...pick.right];
    case 'order':
      return pick.steps.map((step, i) => `${i + 1}. ${step}`);
    case 'pairs':
      return Object.entries(pick.pairs).map(([term, meaning]) => `${term}: ${meaning}`);
    case 'guess':
      return [pick.shows];
    case 'piece':
      return waysOf(pick.sizes!.expected).map(([way, mm]) => `${way}: ${showIn(pattern)(mm)}`);
    default:
      return pointingOf(pick, pattern)!.spots.flatMap(({ label, right }) => (right ? [label] : []));
  }
}

/** The question's words; its sizes in brackets, as its answers have them. A piece to measure is named. */
function wordsOf(pick: PickQuestion, { pieces, finished }: Pattern): string {
  const words = pick.words
    .map((part) => (typeof part === 'string' ? literal(part) : `[${part.size}]`))
    .join('')
    .replace(/[ \n\t]+/gu, ' ')
    .trim();
  if (pick.kind !== 'piece') return words;
  const { subject } = pick;
  const thing =
    'finished' in subject
      ? (finished?.of ?? 'the work')
      : `${pieces[subject.piece]?.label ?? subject.piece}, ${subject.stage}`;
  return `My piece measures: ${thing}. ${words}`.trim();
}
