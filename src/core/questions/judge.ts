import { formatQuantity, type Quantity } from '../formula/index.ts';
import { isOnGrid, listed, markOf, type Edition } from '../measure/index.ts';
import { readAnswer } from './answer.ts';
import { inText } from '../project/texts.ts';
import { called, wordingOf } from './sentences.ts';
import { isPartner, slips, type OwnSlip, type Slip } from './slips.ts';
import { edgesIn, partnersOf, sumFor, type Sum } from './sum.ts';
import type { Pattern } from '../project/pattern.ts';

/** A question that asks for a length, an area or a number of things. The right answer comes from the pattern. */
export type Question = {
  /** A measure's name, or a formula over measures. */
  of: string;
  /** How far an answer may be off, in mm; left out, half a mark of the ruler. */
  tolerance?: number | Record<Edition, number>;
  /** What an author says first to whoever asks for help. */
  hints?: readonly string[];
  /** Wrong ways the author expects. */
  slips?: readonly OwnSlip[];
  /** Other sentences, by a slip's key (`one-side seam`) or its kind (`one-side`). */
  reword?: Readonly<Record<string, string>>;
  /** Keys or kinds of slips that are never thought of here. */
  forbid?: readonly string[];
};

/** What came of an answer; `sentence` says it to the learner. */
export type Judgement = { sentence: string } & (
  | /** It could not be read: no attempt. */ { verdict: 'unread' }
  | /** The pattern, with its options, has no such thing. */ { verdict: 'away' }
  | ({ value: number; wanted: Quantity } & (
      | { verdict: 'right' }
      | /** The sum was right, and the rounding was not: a neighbouring mark, or the wrong way. */ { verdict: 'near' }
      | /** One slip explains it. */ { verdict: 'slip'; slip: Slip }
      | /** Several slips explain it, or one that cannot be told from another. */ { verdict: 'hint'; slips: Slip[] }
      | { verdict: 'unknown' }
    ))
);

/**
 * Judges an answer as it was typed, and says what went wrong where that can be told.
 *
 * Never claimed is a slip whose value lies as near to the right answer as a rounding does, or within the tolerance of
 * another slip's value; beside a likely slip, such as a part left out, a rare one, such as a wrong sign, does not count.
 * A learner who made a likely slip and rounded within the tolerance is therefore never told of another one.
 *
 * @example judge('4 3/4', { of: 'panel width' }, pattern).verdict // => 'slip'
 */
export function judge(answer: string, question: Question, pattern: Pattern): Judgement {
  const sum = sumFor(question.of, pattern);
  if (!sum.ok) return { verdict: 'away', sentence: 'Your project leaves this out, so there is nothing to work out.' };
  const { wanted } = sum.value;
  const read = readAnswer(answer, wanted.dimension, pattern.edition);
  if (!read.ok) return { verdict: 'unread', sentence: withoutAnswer(read.fault.message, wanted, pattern) };
  const value = read.value;
  const limits = limitsOf(question, wanted, pattern);
  const off = Math.abs(value - wanted.value);
  const show = (value: number) =>
    formatQuantity({ ...wanted, value }, { edition: pattern.edition, grid: pattern.grid, style: 'set' });
  const judged = { value, wanted };

  if (off <= limits.right) {
    const exact = off <= limits.exact || show(value) === show(wanted.value);
    const sentence = exact
      ? `Right: ${show(wanted.value)}.`
      : `Right. It is ${show(wanted.value)}, and yours is near enough.`;
    return { verdict: 'right', ...judged, sentence };
  }
  const way = value > wanted.value ? 'too much' : 'too little';
  if (off <= limits.near) {
    const sentence = `Very close, but a little ${way}. Check your rounding, and count the marks again.`;
    return { verdict: 'near', ...judged, sentence };
  }
  const all = slipsOf(question, sum.value, pattern);
  const fitting = all.filter((slip) => Math.abs(slip.value - value) <= reach(slip, limits));
  const [slip] = fitting;
  if (!slip) return { verdict: 'unknown', ...judged, sentence: `Not yet: ${show(value)} is ${way}.` };
  const likely = fitting.some(isLikely) ? fitting.filter((one) => !isRare(one)) : fitting;
  const might = [...new Set([...likely, ...likely.flatMap((one) => rivals(one, all, limits))])];
  const [only] = might;
  if (might.length === 1 && only && !hidden(only, wanted, limits))
    return { verdict: 'slip', slip: only, ...judged, sentence: only.sentence };
  if (might.every(isRounding)) {
    return {
      verdict: 'near',
      ...judged,
      sentence: 'The sum is right, but not the rounding. Check which way, and to which mark.',
    };
  }
  return { verdict: 'hint', slips: might, ...judged, sentence: sharedHint(might, way, pattern) };
}

/** What could not be read, without an example that happens to be the answer. */
function withoutAnswer(message: string, wanted: Quantity, { edition, grid }: Pattern): string {
  const answer = formatQuantity(wanted, { edition, grid });
  return message.includes(` ${answer}.`) ? message.replace(/,? such as [^,]*(?=\.$)/u, '') : message;
}

const isRounding = ({ kind }: Slip) =>
  kind === 'rounded-down' || kind === 'rounded-up' || kind === 'not-rounded' || kind === 'other-mark';

const isLikely = ({ likelihood }: Slip) => likelihood === 'likely';
const isRare = ({ likelihood }: Slip) => likelihood === 'rare';

/** How far an answer may lie from a slip's value and still come from it. */
const reach = (slip: Slip, limits: Limits) => slip.within ?? limits.right;

/** The other slips that come to the same, within tolerance. Beside a likely one nobody thinks of a rare one. */
const rivals = (slip: Slip, all: readonly Slip[], limits: Limits) =>
  all.filter(
    (other) =>
      other !== slip &&
      !(isLikely(slip) && isRare(other)) &&
      Math.abs(other.value - slip.value) <= Math.max(reach(slip, limits), reach(other, limits)),
  );

/** Whether a slip lies as near to the right answer as a rounding does. */
const hidden = (slip: Slip, wanted: Quantity, { near }: Limits) => Math.abs(slip.value - wanted.value) <= near;

/** Whether a slip can be told, at this size, from the right answer and from every other slip. */
export function isClear(slip: Slip, all: readonly Slip[], wanted: Quantity, limits: Limits): boolean {
  return !hidden(slip, wanted, limits) && rivals(slip, all, limits).length === 0;
}

/** The slips of a question at one size, with what its author added, reworded and forbade; the most common first. */
export function slipsOf(question: Question, { formula, scope, asked }: Sum, pattern: Pattern): Slip[] {
  const { reword = {}, forbid = [] } = question;
  const own = question.slips?.map(({ is, say }) => ({ is, say: inText(say, pattern) }));
  const all = slips(formula, scope, {
    isRatio: (name) => pattern.measures[name]?.isRatio === true,
    ...wordingOf(pattern),
    ...{ own, asked, edges: edgesIn({ formula, ...(asked !== undefined && { asked }) }, pattern) },
    partners: partnersOf(pattern),
  });
  return all.flatMap((slip) => {
    if (forbid.includes(slip.key) || forbid.includes(slip.kind)) return [];
    const other = reword[slip.key] ?? reword[slip.kind];
    return [other === undefined ? slip : { ...slip, sentence: inText(other, pattern) }];
  });
}

/** How far off an answer may be, in the unit of what is wanted. */
export type Limits = { exact: number; right: number; near: number };

/** As shares of the right answer: of a small one, half a mark is much. Common practice, no source. */
const [MOST_OFF, MOST_NEAR] = [0.1, 0.25];

/**
 * Lengths: right within half a mark, close within a mark more, and less for small ones. Areas are for shopping: right within one per cent, close
 * within two (common practice, no source). A number of things is right or not; a ratio as its three decimals are shown.
 */
export function limitsOf({ tolerance }: Question, { value, dimension }: Quantity, { edition, grid }: Pattern): Limits {
  const hair = 1e-6;
  if (dimension === 0) {
    const right = Number.isInteger(value) ? hair : 0.005 * Math.abs(value);
    return { exact: hair, right, near: right };
  }
  if (dimension === 2) return { exact: hair, right: 0.01 * value + hair, near: 0.02 * value + hair };
  const mark = markOf(edition, grid);
  const allowed = typeof tolerance === 'object' ? tolerance[edition] : tolerance;
  // An answer on the marks can hit a value between two marks only as nearly as that.
  const least = isOnGrid(value, edition, grid) ? 0 : mark / 2;
  const right = Math.max(allowed ?? Math.min(mark / 2, MOST_OFF * value), least) + hair;
  return { exact: 0.05, right, near: Math.max(right, Math.min(right + mark, MOST_NEAR * value)) };
}

function sharedHint(slips: readonly Slip[], way: string, pattern: Pattern): string {
  const wording = wordingOf(pattern);
  const names = [...new Set(slips.flatMap((slip) => slip.names))].slice(0, 3);
  const isOther = slips.some(({ kind, names }) => isPartner(kind) && names.length === 0);
  if (names.length === 0 && !isOther) return `Not yet: that is ${way}. Work the sum through once more.`;
  const looked = [...names.map((name) => called(name, wording)), ...(isOther ? ['which size is asked'] : [])];
  return `Not yet: that is ${way}. Look again at ${listed(looked)}.`;
}
