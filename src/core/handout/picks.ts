/** Questions on paper that are answered without a sum: by ticking, numbering, and writing letters. */
import { evaluate } from '../formula/evaluate.ts';
import { parseFormula } from '../formula/parse.ts';
import { formatQuantity } from '../formula/quantity.ts';
import { sewnEdges } from '../questions/choices.ts';
import { randomFrom, shuffled } from '../questions/practice.ts';
import { scopeOf } from '../questions/sum.ts';
import { heading, paragraph, toTick } from './blocks.ts';
import { seedText } from './exercises.ts';
import type { Pattern } from '../project/pattern.ts';
import type { Asked, Seed } from './exercises.ts';
import type { Block } from './flow.ts';
import type { Type } from './type.ts';

/** Its texts may hold sizes in square brackets: `[2 * seam]`. */
export type PickQuestion = { readonly id: string; readonly words: Asked['words'] } & (
  | { readonly kind: 'choice'; readonly right: readonly string[]; readonly wrong: readonly string[] }
  | { readonly kind: 'order'; readonly steps: readonly string[] }
  | { readonly kind: 'edges'; readonly piece: string; readonly edges?: readonly string[] }
  | { readonly kind: 'pairs'; readonly pairs: Readonly<Record<string, string>> }
);

/** What to do, told to whoever has no page to point at. */
const todo: Record<PickQuestion['kind'], string> = {
  choice: 'Tick what is right.',
  order: 'Write 1 before what comes first, and so on.',
  edges: 'Tick the edges.',
  pairs: 'Write the letter of its meaning behind each term.',
};

/** The questions with room for their answers, mixed anew for each sheet; numbers go on from `from`. */
export function picksOnSheet(
  picks: readonly PickQuestion[],
  from: number,
  seed: Seed,
  pattern: Pattern,
  type: Type,
): Block[] {
  return asked(picks, pattern).flatMap((pick, i) => {
    const random = randomFrom(`${seedText(seed)} ${pick.id}`);
    const text = (words: string) => filled(words, pattern);
    const lines = (texts: readonly string[]) =>
      texts.flatMap((one) => paragraph(text(one), type, { indent: 4, after: 0.3 * type.text }));
    return [
      ...paragraph(`${from + i}. ${text(wordsOf(pick))}`, type, { keep: true, after: 0.2 * type.text }),
      ...paragraph(todo[pick.kind], type, { keep: true, size: type.small, after: 0.3 * type.text }),
      ...ticked(pick, pattern, random).flatMap((one) => toTick(text(one), type, { indent: 4 })),
      ...(pick.kind === 'order' ? lines(shuffled(pick.steps, random).map((step) => `____  ${step}`)) : []),
      ...(pick.kind === 'pairs' ? lines(matching(pick.pairs, random)) : []),
      ...paragraph('', type),
    ];
  });
}

/** What is right, by the numbers of the sheets. It is the same on every sheet, however mixed. */
export function picksInKey(picks: readonly PickQuestion[], from: number, pattern: Pattern, type: Type): Block[] {
  return asked(picks, pattern).flatMap((pick, i) => [
    ...heading(`Question ${from + i}`, type),
    ...paragraph(filled(wordsOf(pick), pattern), type, { keep: true, after: 0.3 * type.text }),
    ...answersOf(pick, pattern).flatMap((one) =>
      paragraph(filled(one, pattern), type, { indent: 4, after: 0.1 * type.text, strong: true }),
    ),
  ]);
}

/** Those that the pattern has: a piece that is left out is not asked for. */
export const asked = (picks: readonly PickQuestion[], { pieces }: Pattern): PickQuestion[] =>
  picks.filter((pick) => pick.kind !== 'edges' || Object.hasOwn(pieces, pick.piece));

function ticked(pick: PickQuestion, { pieces }: Pattern, random: () => number): string[] {
  if (pick.kind === 'choice') return shuffled([...pick.right, ...pick.wrong], random);
  if (pick.kind !== 'edges') return [];
  const names = pieces[pick.piece]!.outline.map(({ name }) => name);
  return [...new Set(names.filter((name) => !name.endsWith(' corner')))];
}

/** Terms with room for a letter, then the meanings by letter. */
function matching(pairs: Readonly<Record<string, string>>, random: () => number): string[] {
  const meanings = shuffled([...new Set(Object.values(pairs))], random);
  return [
    ...Object.keys(pairs).map((term) => `${term}  ____`),
    ...meanings.map((meaning, i) => `${String.fromCharCode(65 + i)}.  ${meaning}`),
  ];
}

function answersOf(pick: PickQuestion, { pieces }: Pattern): string[] {
  switch (pick.kind) {
    case 'choice':
      return [...pick.right];
    case 'order':
      return pick.steps.map((step, i) => `${i + 1}. ${step}`);
    case 'edges':
      return [(pick.edges ?? sewnEdges(pieces[pick.piece]!)).join(', ')];
    case 'pairs':
      return Object.entries(pick.pairs).map(([term, meaning]) => `${term}: ${meaning}`);
  }
}

/** The question's words; its sizes in brackets, as its answers have them. */
const wordsOf = ({ words }: PickQuestion): string =>
  words
    .map((part) => (typeof part === 'string' ? part : `[${part.size}]`))
    .join('')
    .replace(/[ \n\t]+/gu, ' ')
    .trim();

/** A text with its sizes at the pattern's size. */
function filled(text: string, pattern: Pattern): string {
  const scope = scopeOf(pattern);
  return text.replace(/\[([^\][]+)\]/gu, (_, of: string) => {
    const formula = parseFormula(of, { names: scope.known! });
    const value = formula.ok ? evaluate(formula.value, scope) : formula;
    const { edition, grid } = pattern;
    return value.ok ? formatQuantity(value.value, { edition, grid, style: 'set' }) : '?';
  });
}
