/** What speaks for each step at each clause: for being in it, and for its beginning there. */
import { editionSpoken, spokenLengths } from './lengths.ts';
import { plainOf, type Cut } from './cuts.ts';
import { stem } from './stems.ts';
import { heardOf, tellingOf, type Heard, type Told } from './telling.ts';
import { ANECDOTE, GOODBYE, NEEDS, WELCOME, WHEN } from './turns-of-phrase.ts';
import { weights } from './weights.ts';
import type { Clause } from './sentences.ts';
import type { CourseWords } from './course-words.ts';
import type { SpokenText } from './lines.ts';
import type { Step } from '../project/index.ts';

/**
 * A row for each clause and in it a value for each state: 0 before the first step, then the steps, then behind the last.
 * `stays` is how much speaks for being in it, `begins` how much more for its beginning here, and `recalls` how much the
 * words alone speak of it where somebody comes back to a step.
 */
export type Evidence = { stays: Float64Array[]; begins: Float64Array[]; recalls: Float64Array[] };

/** The opening of a step is that many words or seconds. */
const OPENING = { words: 18, seconds: 9 };

/** For so many seconds a work that was named is meant by “it”. */
const MEANT = 15;

const meanOf = (row: Float64Array): number => row.reduce((sum, value) => sum + value, 0) / row.length;

export function evidenceOf(
  spoken: SpokenText,
  clauses: readonly Cut[],
  steps: readonly Step[],
  words: CourseWords,
): Evidence {
  const heard = heardOf(spoken, spokenLengths(spoken.text, { edition: editionSpoken(spoken.text, 'inch') }));
  const telling = tellingOf(heard, steps, words);
  // “It” is what the step before was done to.
  const carriesOn = steps.map(({ takes }, i) => {
    const before = steps[i - 1];
    return before !== undefined && [before.makes, ...before.takes].includes(takes[0]!);
  });
  const evidence: Evidence = { stays: [], begins: [], recalls: [] };
  const expected = expectedPlaces(steps);
  const all = spoken.words.length;
  let story = false;
  for (const clause of clauses) {
    const text = plainOf(spoken, clause);
    story = ANECDOTE.test(text) || (story && clause.turn === 'none');
    const scale = clause.aside || story ? weights.aside : 1;
    const within = telling.of(clause.first, clause.next);
    const mean = meanOf(within.all);
    const staying = within.all.map((value) => {
      const told = weights.staying * (value - weights.meanStaying * mean);
      return scale * Math.min(weights.mostStaying, Math.max(weights.leastStaying, told));
    });
    const opening = telling.of(clause.first, openingEnds(spoken, clause), true);
    const earlier = telling.namesIn(earlierFrom(spoken, clause), clause.first);
    const openingMean = meanOf(opening.all);
    const recalls = opening.all.map((value) =>
      Math.min(weights.mostOpening, weights.opening * (value - weights.meanOpening * openingMean)),
    );
    const ifSo = WHEN.test(text) ? weights.ifSo : 0;
    const begins = recalls.map((value, i) => {
      const known = carriesOn[i]! ? 'it' : earlier[i]! > weights.isNamed ? 'earlier' : 'no';
      const off = clause.first / all - expected[i]!;
      const told = scale * value - ifSo - lacking(opening, i, clause, known) - weights.outOfTime * off * off;
      if (clause.onward.has(i + 1)) return told;
      // What tells of the step before as well is that one still.
      const least = steps[i - 1]?.verb === steps[i]!.verb ? weights.news : 0;
      const isNews = i === 0 || value - recalls[i - 1]! >= least;
      return told - (told < weights.leastTelling ? weights.hardlyTold : 0) - (isNews ? 0 : weights.noNews);
    });
    // Who says how something is done is not at the welcome any more.
    const intro = before(heard, clause, text) - weights.making * meanOf(within.verb);
    const end = behind(heard, clause);
    evidence.stays.push(Float64Array.of(intro, ...staying, end));
    evidence.begins.push(Float64Array.of(0, ...begins, end));
    evidence.recalls.push(Float64Array.of(0, ...recalls, 0));
  }
  return evidence;
}

/** What is said before the first step and behind the last, as parts of the whole. */
const [INTRO, OUTRO] = [0.15, 0.05];

/** Where each step is expected, as a part of the whole: each is told for some time, and one that takes longer for more. */
function expectedPlaces(steps: readonly Step[]): number[] {
  const shares = steps.map(({ minutes }) => 1 + minutes.value / 10);
  const sum = shares.reduce((all, share) => all + share, 0);
  let before = 0;
  return shares.map((share) => {
    const place = INTRO + (1 - INTRO - OUTRO) * (before / sum);
    before += share;
    return place;
  });
}

/** How much an opening lacks that says no verb, or does not name what it is done to. */
function lacking({ verb, names }: Told, i: number, clause: Cut, known: 'it' | 'earlier' | 'no'): number {
  const named = names[i]! > weights.isNamed;
  if (verb[i]! >= weights.leastVerb) {
    if (named || known === 'it') return 0;
    return known === 'earlier' ? weights.namedBefore : weights.noName;
  }
  if (clause.onward.has(i + 1)) return 0;
  if (!named) return weights.noVerb;
  // “Now the binding”: the talk turns to it.
  return clause.turn === 'strong' ? weights.topic : weights.namedOnly;
}

function openingEnds({ words }: SpokenText, { first }: Clause): number {
  const until = words[first]!.from + OPENING.seconds;
  let end = first + 1;
  while (end < words.length && end < first + OPENING.words && words[end]!.from < until) end++;
  return end;
}

/** From where on a work that was named is still meant. */
function earlierFrom({ words }: SpokenText, { first }: Clause): number {
  let from = first;
  while (from > 0 && words[from - 1]!.from > words[first]!.from - MEANT) from--;
  return from;
}

const stemsIn = (words: string): ReadonlySet<string> => new Set(words.split(' ').map(stem));
const [welcome, goodbye] = [stemsIn(WELCOME), stemsIn(GOODBYE)];

const count = (set: ReadonlySet<string>, { stems }: Heard, { first, next }: Clause): number =>
  new Set(stems.slice(first, next).filter((word) => set.has(word))).size;

/** How much speaks for the time before the first step: greetings, and sizes of two sides, which are those of pieces to cut. */
function before(heard: Heard, clause: Clause, text: string): number {
  let sizes = 0;
  for (let at = clause.first; at < clause.next; at++) if (heard.lengths.get(at)?.kind === 'pair') sizes++;
  const needs = NEEDS.test(text) ? weights.need : 0;
  return Math.min(6, weights.welcome * count(welcome, heard, clause) + weights.cutSize * sizes + needs);
}

/** How much speaks for the time behind the last step. */
const behind = (heard: Heard, clause: Clause): number => Math.min(2, weights.goodbye * count(goodbye, heard, clause));
