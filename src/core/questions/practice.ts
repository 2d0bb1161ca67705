import { isOnGrid } from '../measure/index.ts';
import { isClear, limitsOf, slipsOf, type Question } from './judge.ts';
import { sumFor } from './sum.ts';
import type { Formula, Node } from '../formula/index.ts';
import type { Measure, Pattern } from '../project/pattern.ts';

/** 1: one measure changes, on the longer marks. 2: two do, on finer marks. 3: all of them, on every mark. */
export type Difficulty = 1 | 2 | 3;

/** New numbers for a question: measures in mm or whole numbers, and the pattern they make. */
export type Exercise = { values: Record<string, number>; pattern: Pattern };

/** The marks that an easy exercise keeps to, in mm: half and quarter inches, whole and half centimetres. */
const coarse = { inch: [12.7, 6.35, 0], metric: [10, 5, 0] } as const;

/** How often new numbers are drawn before the best of them is taken. */
const DRAWS = 40;

/**
 * The same question with new numbers for the measures a learner may change, each in its range and on a mark of the
 * edition. The same seed gives the same numbers. Numbers are drawn until every slip can be told from the others; where
 * no draw does that, the one with the fewest that cannot is taken. Undefined where nothing can be changed.
 *
 * `resolve` makes the pattern: `(values) => resolveProject(file, { edition, values })`.
 *
 * @example practise({ of: 'panel width' }, resolve, 7).values // => { 'card width': 88.9 }
 */
export function practise(
  question: Question,
  resolve: (values: Record<string, number>) => Pattern,
  seed: number | string,
  difficulty: Difficulty = 1,
): Exercise | undefined {
  const lesson = resolve({});
  const sum = sumFor(question.of, lesson);
  if (!sum.ok) return undefined;
  const movers = Object.values(lesson.measures).flatMap((measure) => {
    const places = placesOf(measure, lesson, difficulty);
    const other = places.find((place) => place !== measure.value);
    const there = other === undefined ? undefined : sumFor(question.of, resolve({ [measure.name]: other }));
    return there?.ok && there.value.wanted.value !== sum.value.wanted.value ? [{ name: measure.name, places }] : [];
  });
  const random = randomFrom(seed);
  const faults = troubles(lesson);
  let best: (Exercise & { blurred: number }) | undefined;
  for (let draw = 0; draw < DRAWS && movers.length > 0 && best?.blurred !== 0; draw++) {
    const changing = shuffled(movers, random).slice(0, difficulty === 3 ? movers.length : difficulty);
    const values = Object.fromEntries(
      changing.map(({ name, places }) => [name, places[Math.floor(random() * places.length)]!]),
    );
    const pattern = resolve(values);
    const drawn = sumFor(question.of, pattern);
    if (!drawn.ok || troubles(pattern) > faults) continue;
    const { wanted } = drawn.value;
    if (wanted.value <= 0 || wanted.value === sum.value.wanted.value) continue;
    const limits = limitsOf(question, wanted, pattern);
    const all = slipsOf(question, drawn.value, pattern);
    const blurred = all.filter((slip) => !isClear(slip, all, wanted, limits)).length;
    if (!best || blurred < best.blurred) best = { values, pattern, blurred };
  }
  return best && { values: best.values, pattern: best.pattern };
}

/** Every value a measure may take, on the marks of a difficulty; of the finest where that leaves no choice. */
function placesOf({ adjustable }: Measure, { edition, grid }: Pattern, difficulty: Difficulty): number[] {
  if (!adjustable) return [];
  const { min, max, step, kind } = adjustable;
  const all = Array.from({ length: Math.floor((max - min) / step + 1e-6) + 1 }, (_, k) => min + k * step);
  if (kind !== 'length') return all;
  const onMarks = all.filter((place) => isOnGrid(place, edition, grid));
  const mark = coarse[edition][difficulty - 1]!;
  const easy = onMarks.filter((place) => mark === 0 || Math.abs(place / mark - Math.round(place / mark)) < 1e-6);
  return easy.length > 2 ? easy : onMarks;
}

const troubles = ({ findings, holds }: Pattern) =>
  findings.filter(({ severity }) => severity !== 'note').length + holds.filter(({ fits }) => !fits).length;

/** So many right in a row end a set, unless its author says otherwise. */
export const ROUNDS = 3;

/**
 * Whether a practice set is done: the last `wanted` answers were right at the first try.
 *
 * @example isDone([false, true, true, true]) // => true
 */
export const isDone = (firstTries: readonly boolean[], wanted = ROUNDS): boolean =>
  firstTries.length >= wanted && firstTries.slice(-wanted).every(Boolean);

/**
 * The questions of a set, those that take the fewest sums first. What the pattern leaves out comes last.
 *
 * @example fromEasyToHard([{ of: 'panel width' }, { of: 'depth + step' }], pattern).map(({ of }) => of) // => ['depth + step', 'panel width']
 */
export function fromEasyToHard<T extends { of: string }>(questions: readonly T[], pattern: Pattern): T[] {
  const steps = ({ of }: T) => {
    const sum = sumFor(of, pattern);
    return sum.ok ? stepsIn(sum.value.formula) : Infinity;
  };
  return questions.toSorted((a, b) => steps(a) - steps(b) || 0);
}

/**
 * Where a set that rises stands after so many right in a row: on the first of `rungs` with none, on the last where one
 * more ends the set. A slip leads back to the first.
 *
 * @example [0, 1, 2].map((inARow) => rungAt(inARow, 3, 5)) // => [0, 2, 4]
 */
export const rungAt = (inARow: number, wanted: number, rungs: number): number =>
  wanted <= 1 ? rungs - 1 : Math.round((Math.min(inARow, wanted - 1) * (rungs - 1)) / (wanted - 1));

/** How many sums a formula takes: its signs, comparisons and roundings. Sets rise by it. */
export function stepsIn({ tree }: Formula): number {
  const count = (node: Node): number => {
    switch (node.kind) {
      case 'name':
      case 'number':
      case 'length':
      case 'pi':
        return 0;
      case 'minus':
        return count(node.of);
      case 'root':
        return 1 + count(node.of);
      case 'min':
      case 'max':
        return 1 + node.of.reduce((steps, part) => steps + count(part), 0);
      case 'round':
        return 1 + count(node.of) + count(node.to);
      default:
        return 1 + count(node.left) + count(node.right);
    }
  };
  return count(tree);
}

/**
 * Numbers from 0 up to 1, the same for the same seed.
 *
 * The generator is mulberry32 (T. Ettinger, public domain), seeded by the FNV-1a hash of the seed's text; from memory.
 */
export function randomFrom(seed: number | string): () => number {
  let state = 0x811c9dc5;
  for (const character of String(seed)) state = Math.imul(state ^ character.codePointAt(0)!, 0x01000193);
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The same things in an order by chance. */
export function shuffled<T>(things: readonly T[], random: () => number): T[] {
  const mixed = [...things];
  for (let i = mixed.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [mixed[i], mixed[j]] = [mixed[j]!, mixed[i]!];
  }
  return mixed;
}
