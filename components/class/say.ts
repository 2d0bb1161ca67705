/** What is said of answers that were handed in: the sentences that learners read, by the core that judges them. */
import {
  capital,
  formatQuantity,
  judge,
  kindInWords,
  listed,
  readTolerance,
  resolveProject,
  SAME,
  sayToClass,
  slipKinds,
  slipsOf,
  sumFor,
  wordingOf,
  type Edition,
  type Pattern,
  type Slip,
  type SlipKind,
} from '../../src/core/index.ts';
import { learnerOf } from '../page/learner.svelte.ts';
import { inUnits, questionOf } from '../words/ask-size/state.svelte.ts';
import type { AskedInClass } from '../words/word.ts';
import type { AnswerRecord, CourseLesson } from './hand-in.ts';
import { slipInWords } from './class.ts';

/** A question of a lesson, as the page of a class lists it. */
export type ClassQuestion = CourseLesson['questions'][number];

/** What is said of a slip: to the learner, and to a class that made it. */
export type SaidOfSlip = { sentence: string; toClass?: string };

/** An answer in words. `ownSize`: it was worked out at other sizes than the lesson’s, and is judged by its slip alone. */
export type SaidOfAnswer = { answer: string; sentence: string; ownSize: boolean };

const patterns = new Map<string, Pattern>();
/** The edition in which the author writes, for numbers without a unit. */
const homes = new WeakMap<Pattern, Edition>();

/** A project at the lesson's own size. */
export function lessonPattern(project: string | undefined, edition: Edition): Pattern | undefined {
  if (project === undefined) return undefined;
  const key = `${edition} ${project}`;
  let pattern = patterns.get(key);
  if (!pattern) {
    const { file, materials, edition: home } = learnerOf(project).project;
    patterns.set(key, (pattern = resolveProject(file, { edition, materials })));
    homes.set(pattern, home);
  }
  return pattern;
}

type Sums = Extract<AskedInClass, { kind: 'sum' }>;

function asQuestion({ of: _, ...written }: Sums, of: string, pattern: Pattern) {
  return questionOf({ ...written, of }, (text) => readTolerance(text, homes.get(pattern) ?? pattern.edition));
}

/** Slips worked out so far, for each pattern by the question that they are slips of. */
const known = new WeakMap<Pattern, Map<string, Slip[]>>();

function slipsIn(asked: Sums, pattern: Pattern): Slip[] {
  const here = known.get(pattern) ?? new Map<string, Slip[]>();
  known.set(pattern, here);
  const key = JSON.stringify(asked);
  const all =
    here.get(key) ??
    asked.of.flatMap((of) => {
      const sum = sumFor(of, pattern);
      return sum.ok ? slipsOf(asQuestion(asked, of, pattern), sum.value, pattern) : [];
    });
  here.set(key, all);
  return all;
}

/** What is said of a slip at a question, by its key. */
export function saySlip(key: string, { asked }: ClassQuestion, pattern: Pattern | undefined): SaidOfSlip {
  if (key === 'near') {
    return {
      sentence: 'Very close, but a mark or so off.',
      toClass: 'Mind the rounding, and count the marks of the ruler.',
    };
  }
  if (key === 'other' || !asked) return { sentence: `${capital(slipInWords(key))}.` };
  if (asked.kind !== 'sum') return sayPlace(key, asked);
  const slip = pattern && slipsIn(asked, pattern).find((one) => one.key === key);
  if (!slip || !pattern) return { sentence: `${capital(slipInWords(key))}.` };
  const reworded = asked.reword?.[slip.key] ?? asked.reword?.[slip.kind];
  return { sentence: slip.sentence, toClass: sayToClass(slip, wordingOf(pattern), reworded !== undefined) };
}

function sayPlace(key: string, asked: Exclude<AskedInClass, Sums>): SaidOfSlip {
  const [kind, place] = key.split(' ');
  const pick = asked.picks[Number(place)];
  if (!pick) return { sentence: 'Another wrong answer.' };
  const words = `“${pick.words}”`;
  switch (kind) {
    case 'without':
      return { sentence: `${words} is missing.`, toClass: `${words} belongs to it, too.` };
    case 'place':
      return {
        sentence: `${words} stands in the wrong place.`,
        toClass: `Look once more when it is time for this: ${words}.`,
      };
    case 'pair': {
      const means = asked.kind === 'pairs' && 'means' in pick ? asked.meanings[pick.means] : undefined;
      const sentence = `${words} was given another meaning.`;
      return means === undefined ? { sentence } : { sentence, toClass: `${words} means: ${means}` };
    }
    default: {
      const sentence = pick.say === undefined ? `${words} does not belong.` : `${words}: ${pick.say}`;
      return { sentence, toClass: sentence };
    }
  }
}

/** An answer as it was given, and what its learner read beside it. */
export function sayAnswer(answer: AnswerRecord, question: ClassQuestion, project: string | undefined): SaidOfAnswer {
  const { asked } = question;
  const { slip, slips, right, value, wanted, edition } = answer;
  const behind = slip ?? slips.at(-1);
  const pattern = lessonPattern(project, edition ?? 'inch');
  const sentence = right
    ? 'Right.'
    : behind === undefined
      ? 'Not right yet.'
      : saySlip(behind, question, pattern).sentence;
  if (asked?.kind !== 'sum') return { answer: pickedWords(answer, asked), sentence, ownSize: false };
  const [of = ''] = asked.of;
  const sum = pattern && sumFor(of, pattern);
  if (value === undefined || wanted === undefined || !pattern || !sum?.ok)
    return { answer: '', sentence, ownSize: false };
  const ours = sum.value.wanted;
  const shown = formatQuantity({ ...ours, value }, { edition: pattern.edition, grid: pattern.grid, style: 'set' });
  if (Math.abs(ours.value - wanted) > SAME) return { answer: shown, sentence, ownSize: true };
  // At the lesson's own size the sentence is worked out as it was for the learner.
  const judged = judge(inUnits(value, ours), asQuestion(asked, of, pattern), pattern);
  const isAlike = 'value' in judged && (judged.verdict === 'right') === right;
  return { answer: shown, sentence: isAlike ? judged.sentence : sentence, ownSize: false };
}

/** What is right, in an edition at the lesson's own size. */
export function rightAnswer({ asked }: ClassQuestion, pattern: Pattern | undefined): string {
  if (!asked) return '';
  if (asked.kind === 'sum') {
    if (!pattern) return '';
    const sum = sumFor(asked.of[0] ?? '', pattern);
    if (!sum.ok) return '';
    return formatQuantity(sum.value.wanted, { edition: pattern.edition, grid: pattern.grid, style: 'set' });
  }
  if (asked.kind === 'order') return asked.picks.map(({ words }, i) => `${i + 1}. ${words}`).join(' ');
  if (asked.kind === 'pairs')
    return asked.picks.map(({ words, means }) => `${words}: ${asked.meanings[means]}`).join('; ');
  return listed(asked.picks.flatMap(({ words, right }) => (right ? [words] : [])));
}

function pickedWords({ picked = [] }: AnswerRecord, asked: AskedInClass | undefined): string {
  if (!asked || asked.kind === 'sum') return '';
  const words = picked.map((at) => asked.picks[at]?.words ?? '…');
  if (asked.kind === 'order') return words.map((one, i) => `${i + 1}. ${one}`).join(' ');
  if (asked.kind === 'pairs')
    return picked.map((at, i) => `${asked.picks[i]?.words ?? '…'}: ${asked.meanings[at] ?? '–'}`).join('; ');
  return listed(words);
}

/**
 * What a learner does who makes slips of this key's kind; undefined where slips of one kind have nothing in common.
 *
 * @example kindOf('left-out ease') // => { kind: 'left-out', words: 'leaves a part out of the sum' }
 */
export function kindOf(key: string): { kind: string; words: string } | undefined {
  const [kind = ''] = key.split(' ');
  if (key === 'near') return { kind, words: 'is a mark off' };
  return slipKinds.some((one) => one === kind) ? { kind, words: kindInWords[kind as SlipKind] } : undefined;
}
