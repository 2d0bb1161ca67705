/** Which step is spoken of: lines and steps aligned in order, by dynamic programming over the whole. */
import { joinLines, type SpokenLine, type SpokenText } from './lines.ts';
import { clausesOf, type Clause } from './sentences.ts';
import { saidFor } from './said-verbs.ts';
import { editionSpoken, spokenLengths, type SpokenLength } from './lengths.ts';
import { stem, stemsOf } from './stems.ts';
import { isSaid } from './sizes.ts';
import type { CourseWords } from './course-words.ts';
import type { Step } from '../project/index.ts';

/**
 * A stretch of a recording in which a step is told: its id, the seconds from and to, and from 0 to 1 how sure that is. A
 * step that is told twice has two stretches, of which the later is `again`.
 */
export type ToldStep = { step: string; from: number; to: number; sure: number; again?: true };

/** From here on a stretch needs no second look. */
export const SURE_STEP = 0.7;

/**
 * Aligns a recording with the steps of a project. Verbs, the names of pieces and materials, numbers and edges tell which
 * step a clause speaks of; steps come in order, may be skipped, and may be told once more. What comes before the first and
 * behind the last belongs to none.
 *
 * @returns The stretches in the order in which they are said. A step that is never told has none.
 */
export function alignSteps(lines: readonly SpokenLine[], steps: readonly Step[], words: CourseWords): ToldStep[] {
  const spoken = joinLines(lines);
  const alike = alikeSteps(steps);
  const clauses = shortClauses(spoken).map((clause): Cut => cutAt(spoken, clause, steps, alike));
  if (clauses.length === 0 || steps.length === 0) return [];
  const evidence = evidenceOf(spoken, clauses, steps, words);
  const path = bestPath(evidence, clauses);
  const retold = tellAgain(path, evidence, clauses);
  const sure = chances(evidence, clauses);
  return stretches(spoken, clauses, path, sure, steps, evidence, retold);
}

/** As many words of a clause are looked at together. */
const TOGETHER = 16;

/** So many words at least stand before a place where a clause may be cut. */
const FEWEST = 4;

/** Where something of its own may begin within a clause, without any turn: “… and stitch that one down”, “… so the tie goes on”. */
const MAY_BEGIN =
  /^(?:and (?:stitch|sew|fold|press|turn|hem|pin|lay|put|take|trim|clip|join|gather|fuse|cut|baste|at|the|then|i|you|if|its|it)|so (?:the|this|your|that|these)|but|because|right (?:so|then|now|okay|all|the)|anyway|lets|oh)\b/u;

/** Clauses, long ones in several. */
function shortClauses(spoken: SpokenText): Clause[] {
  return clausesOf(spoken).flatMap((clause) => parted(spoken, clause).flatMap(evenly));
}

function parted({ words }: SpokenText, { first, next, turn }: Clause): Clause[] {
  const parts: Clause[] = [{ first, next, turn }];
  for (let i = first + FEWEST; i <= next - FEWEST; i++) {
    const last = parts.at(-1)!;
    if (i - last.first < FEWEST) continue;
    const two = `${words[i]!.text} ${words[i + 1]!.text}`.toLowerCase().replace(/[^\p{L} ]/gu, '');
    if (!MAY_BEGIN.test(two)) continue;
    last.next = i;
    parts.push({
      first: i,
      next,
      turn: /^(?:and (?:at|the|then|i|you|if|its|it)|but|because)\b/u.test(two) ? 'none' : 'weak',
    });
  }
  return parts;
}

function evenly({ first, next, turn }: Clause): Clause[] {
  const pieces = Math.ceil((next - first) / TOGETHER);
  return Array.from({ length: pieces }, (_, k): Clause => {
    const cut = (part: number): number => first + Math.round(((next - first) * part) / pieces);
    return { first: cut(k), next: cut(k + 1), turn: k === 0 ? turn : 'none' };
  });
}

/** For each clause a row: how much speaks for no step yet, for each step, and for the time behind the last. */
type Evidence = number[][];

/** What tells of a step, each with its weight. */
type Signs = {
  /** The sides it names; empty where it names none or all. */
  sides: ReadonlySet<string>;
  words: ReadonlyMap<string, number>;
  phrases: readonly { stems: string; weight: number }[];
  lengths: readonly number[];
};

function evidenceOf(
  spoken: SpokenText,
  clauses: readonly Clause[],
  steps: readonly Step[],
  words: CourseWords,
): Evidence {
  const signs = signsOf(steps, words);
  const lengths = spokenLengths(spoken.text, { edition: editionSpoken(spoken.text, 'inch') });
  let story = false;
  return clauses.map((clause) => {
    const said = saidIn(spoken, clause, lengths);
    story = ANECDOTE.test(plainOf(spoken, clause)) || (story && clause.turn === 'none');
    const here = signs.map((one) => speaksFor(one, said));
    // What speaks for all steps alike speaks for none.
    const mean = here.reduce((sum, value) => sum + value, 0) / here.length;
    const scale = said.aside || story ? 0.3 : 1;
    const scores = here.map((value) => Math.min(8, Math.max(-0.5, 0.8 * value - 0.65 * mean)) * scale);
    return [before(said), ...scores, behind(said)];
  });
}

type Said = {
  stems: ReadonlySet<string>;
  run: string;
  sides: ReadonlySet<string>;
  lengths: readonly SpokenLength[];
  aside: boolean;
  needs: boolean;
};

/** With these a story begins, which goes on until the next turn. */
const ANECDOTE =
  /\b(?:last (?:time|week|month|year|class|lesson)|i once|once i|i had (?:a|an|one|this|some)|a student|students? (?:of mine|once)|one of my|somebody (?:once|asked)|years ago|when i was)\b/u;

/** Words of what has been and what will be: another step is spoken of, and not told. */
const ASIDE =
  /\b(?:later|earlier|already|remember|yet|last (?:time|week|lesson)|next (?:week|time|lesson)|in a (?:minute|moment|bit|second)|before (?:we|you|i)|until (?:we|you)|we (?:did|made|sewed|fused|basted|pressed)|going to need|will be|you could|some people|if you (?:are|were|dont|want|prefer|like))\b/u;

/** What a clause says, in lower case. */
const textOf = ({ words, text }: SpokenText, { first, next }: Clause): string =>
  text.slice(words[first]!.start, words[next - 1]!.end).toLowerCase();

const plainOf = (spoken: SpokenText, clause: Clause): string => textOf(spoken, clause).replace(/['’]/gu, '');

function saidIn(spoken: SpokenText, clause: Clause, lengths: readonly SpokenLength[]): Said {
  const { words, text } = spoken;
  const { first, next } = clause;
  const [start, end] = [words[first]!.start, words[next - 1]!.end];
  const run = stemsOf(text.slice(start, end));
  return {
    stems: new Set(run),
    run: ` ${run.join(' ')} `,
    sides: sidesIn(text.slice(start, end)),
    lengths: lengths.filter((length) => length.start >= start && length.start < end),
    needs: /\b(?:youll|you|we|well) need\b|\bbefore we (?:start|begin)\b/u.test(
      textOf(spoken, clause).replace(/['’]/gu, ''),
    ),
    aside: ASIDE.test(text.slice(start, end).toLowerCase().replace(/['’]/gu, '')),
  };
}

const WELCOME = new Set(
  'hello hi welcome today video supply material gather fabric yard cut prewash wash list project introduc measur choos'
    .split(' ')
    .map(stem),
);
const GOODBYE = new Set(
  'thank watch bye goodby finish enjoy subscrib homework see next week lesson admir congratulation proud gift'
    .split(' ')
    .map(stem),
);

const count = (set: ReadonlySet<string>, { stems }: Said): number => [...stems].filter((word) => set.has(word)).length;
const before = (said: Said): number => {
  // Sizes of two sides are those of pieces to cut.
  const sizes = said.lengths.filter(({ kind }) => kind === 'pair').length;
  return Math.min(6, 0.9 * count(WELCOME, said) + 1.2 * sizes + (said.needs ? 2 : 0));
};
const behind = (said: Said): number => Math.min(2, 0.6 * count(GOODBYE, said));

/** Sides and places of a work, which speak softly. */
const places = new Set(
  'top bottom left right middle centre center corner edge gap opening front back fold'.split(' ').map(stem),
);

function signsOf(steps: readonly Step[], words: CourseWords): Signs[] {
  const bags = steps.map((step) => bagOf(step, words));
  const met = new Map<string, number>();
  for (const bag of bags) for (const word of bag.keys()) met.set(word, (met.get(word) ?? 0) + 1);
  /** A word of few steps tells more than a word of many. */
  const rare = (word: string): number =>
    Math.log((steps.length + 1) / (met.get(word) ?? 1)) / Math.log(steps.length + 1);
  return steps.map((step, i) => ({
    words: new Map(
      [...bags[i]!].map(([word, weight]): [string, number] => [word, weight * (0.35 + 0.65 * rare(word))]),
    ),
    phrases: saidFor(step.verb)
      .map((phrase) => stemsOf(phrase))
      .filter((phrase) => phrase.length > 1)
      .map((phrase) => ({ stems: ` ${phrase.join(' ')} `, weight: 2 })),
    lengths: lengthsOf(step),
    sides: sidesIn(sideTexts(step.instruction)),
  }));
}

const SIDES = ['top', 'bottom', 'left', 'right'];

/** What the fields of a step say that name a side: at, from, of two works the places of each. */
const sideTexts = (value: unknown): string =>
  typeof value === 'string'
    ? value
    : typeof value === 'object' && value !== null
      ? Object.entries(value)
          .map(([name, inner]) => `${name} ${sideTexts(inner)}`)
          .join(' ')
      : '';

/** The sides in a text; none where it tells of all four. “Right side up” and “right sides together” name no side. */
function sidesIn(text: string): ReadonlySet<string> {
  const plain = text
    .toLowerCase()
    .replace(/\bleft (?=in|over|with|to|for|of)\b/gu, '')
    .replace(/\b(?:right|wrong) sides?(?: (?:up|down|out|together|facing))?\b/gu, (said) =>
      /(?:up|down|out|together|facing)$/u.test(said) || said.endsWith('sides') || said.startsWith('wrong') ? '' : said,
    );
  const found = SIDES.filter((side) => new RegExp(`\\b${side}\\b`, 'u').test(plain));
  return new Set(found.length === SIDES.length ? [] : found);
}

/** The words of a step, each with how much it tells. */
function bagOf(step: Step, { names }: CourseWords): Map<string, number> {
  const bag = new Map<string, number>();
  const add = (text: string, weight: number, softly = false): void => {
    for (const word of stemsOf(text)) {
      const most = softly && places.has(word) ? Math.min(weight, 0.7) : weight;
      bag.set(word, Math.max(bag.get(word) ?? 0, most));
    }
  };
  add(step.note ?? '', 0.6, true);
  add(step.tools.join(' '), 0.2);
  for (const name of [...step.takes, step.makes]) for (const called of names[name] ?? [name]) add(called, 1);
  for (const [name, value] of Object.entries(step.instruction)) {
    add(named(value, names), 1.2, true);
    if (value !== false && name !== 'note') add(name, 1.2, true);
  }
  add(step.title, 1.3, true);
  for (const [k, phrase] of saidFor(step.verb).entries())
    if (!phrase.includes(' ')) add(phrase, k === 0 ? 2.8 : k < 3 ? 2.2 : 1.2);
  for (const phrase of saidFor(step.verb)) if (phrase.includes(' ') && stemsOf(phrase).length === 1) add(phrase, 0.9);
  return bag;
}

/** Whatever a field of a step names: works, sides, a manner. */
function named(value: unknown, names: CourseWords['names']): string {
  if (typeof value === 'string') return [value, ...(names[value] ?? [])].join(' ');
  if (Array.isArray(value)) return value.map((one) => named(one, names)).join(' ');
  return '';
}

/** The lengths of a step in mm, of its own fields and of what it measures then. */
const lengthsOf = ({ instruction, nowMeasures }: Step): number[] => lengthsWithin([instruction, nowMeasures]);

/** All numbers in a value, however deep, that may be lengths in mm which are said. */
export function lengthsWithin(value: unknown): number[] {
  if (typeof value === 'number') return value > 0.5 ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(lengthsWithin) : [];
}

function speaksFor({ words, phrases, lengths, sides }: Signs, said: Said): number {
  let sum = 0;
  // Where a speaker says one side, a step of other sides is hardly meant.
  if (sides.size > 0 && said.sides.size > 0 && [...said.sides].every((side) => !sides.has(side))) sum -= OTHER_SIDE;
  for (const word of said.stems) sum += words.get(word) ?? 0;
  for (const { stems, weight } of phrases) if (said.run.includes(stems)) sum += weight;
  for (const { values, edition } of said.lengths) {
    const alike = (value: number, mm: number) => isSaid(value, mm, edition) || Math.abs(value - mm) < value / 25;
    if (values.some((value) => lengths.some((mm) => alike(value, mm)))) sum += 0.8;
  }
  return sum;
}

/** So much a side speaks against the steps of others. */
const OTHER_SIDE = 0.9;

/** A clause as a place to go on to another step: how it begins, and whether it says that something is told once more. */
type Cut = Clause & {
  again: boolean;
  /** The states that come of “the same once more”: the next steps that are like one before them. */
  onward: ReadonlySet<number>;
  done: boolean;
  starts: boolean;
  announced: boolean;
};

/** A step that is done as one shortly before it: to each of several things, or on another side. */
type Alike = 'no' | 'yes' | 'on another side';

/** As many steps before one are looked at for its like: lay and stitch the first, lay and stitch the second. */
const SHORTLY = 3;

/** For each state whether its step is like one before it. */
function alikeSteps(steps: readonly Step[]): readonly Alike[] {
  const like = steps.map(({ verb }, i): Alike => {
    const before = steps.slice(Math.max(0, i - SHORTLY), i).findLast((one) => one.verb === verb);
    if (!before) return 'no';
    // “And the other one” of a step that is done to several is said within it.
    return before.times > 1 ? 'on another side' : 'yes';
  });
  return ['no', ...like, 'no'];
}

function cutAt(spoken: SpokenText, clause: Clause, steps: readonly Step[], alike: readonly Alike[]): Cut {
  const text = plainOf(spoken, clause);
  const [same, side, again] = [SAME_AGAIN.test(text), ON_ANOTHER_SIDE.test(text), AGAIN.test(text)];
  const said = new Set(again && clause.turn === 'strong' ? stemsOf(text) : []);
  const onward = alike.flatMap((like, state) => {
    if (like === 'no') return [];
    const further = stemsOf(steps[state - 1]!.verb).every((word) => said.has(word)) && said.size > 0;
    return further || (same && (like === 'yes' || side)) ? [state] : [];
  });
  return {
    ...{ ...clause, again, onward: new Set(onward) },
    ...{ done: DONE.test(text), starts: STARTS.test(text), announced: ANNOUNCED.test(text) },
  };
}

const ON_ANOTHER_SIDE = /\b(?:sides?|ends?|edges?|half|halves|corners?|left|right|top|bottom)\b/u;

/** The speaker says that the next begins. */
const ANNOUNCED =
  /\b(?:(?:next|last|final) (?:step|thing|bit|part|job)|next up|moving on|on to the next|now for the|now its time)\b/u;

/** What came of a step is told at its end: “now you’ve got a pocket”, “it should measure”, “so that’s a nice crease”. */
const DONE =
  /^(?:(?:and|so|okay|right|then|now|there|but) )*(?:when thats done )?(?:youve (?:now )?got|you have|you should (?:have|now)|your \p{L}+ (?:should|is|measures)|it (?:should|measures|comes|looks)|that(?:s| is) (?:an?|the|your|it|how|what)\b|this is how|you end up|itll|it will|youll (?:have|end|see|get)|mine is|doesnt)/u;

/** With these the making begins. */
const STARTS =
  /\b(?:lets (?:start|begin|get started|get going)|(?:were|we are|ill|well) (?:going to )?(?:start|begin) with|first of all|first (?:thing|step|off)|step one)\b/u;

/** “The same on the other side”: the next step is like this one. */
const SAME_AGAIN =
  /\b(?:the same|same thing|other (?:side|one|half|end|tape|piece|strap|handle|sleeve|pocket|edge|corner)|second (?:one|side))\b/u;

const AGAIN = /\b(?:again|once more|one more time|another look|go back to|going back to|one more look)\b/u;

/** What it costs to go on to another step at a clause, in the same measure as the evidence. */
function cost(from: number, to: number, last: number, cut: Cut): number {
  if (from === to) return 0;
  const turned = cut.turn === 'strong' ? 1 : cut.turn === 'weak' ? 2 : 3.2;
  const here = Math.min(turned, cut.announced ? 0.3 : turned) + (cut.done ? 2 : 0) - (cut.starts && from === 0 ? 3 : 0);
  if (to === from + 1 && cut.onward.has(to)) return here - 3;
  if (to > from) return here + Math.min(2.7, 0.8 * (to - from - 1)) * (to === last ? 0.5 : 1);
  if (to === 0) return here + 9;
  return here + (cut.again ? 2 : 4.5) + Math.min(3, 0.3 * (from - to));
}

const BEGIN: Cut = {
  ...{ first: 0, next: 0, turn: 'strong', again: false, onward: new Set() },
  ...{ done: false, starts: false, announced: false },
};

/** A step begins where something tells of it, and not in an aside: so much it costs to begin where nothing does. */
const NOTHING_TELLS = 1.2;
const entry = (value: number, to: number, last: number, cut: Cut): number =>
  to > 0 && to < last && value < 0.3 && !cut.onward.has(to) ? NOTHING_TELLS : 0;

/**
 * The costs of going from each state (the row) to each other (the column) at a cut, each as `of` makes it; worked out once
 * for cuts that are alike.
 */
function movesFor(states: number, of: (cost: number) => number): (cut: Cut) => Float64Array {
  const last = states - 1;
  const known = new Map<string, Float64Array>();
  return (cut) => {
    const { turn, again, done, starts, announced, onward } = cut;
    const key = `${turn} ${again} ${done} ${starts} ${announced}`;
    let moves = known.get(key);
    if (!moves) {
      const alone = { ...cut, onward: new Set<number>() };
      moves = Float64Array.from({ length: states * states }, (_, k) =>
        of(cost(Math.floor(k / states), k % states, last, alone)),
      );
      known.set(key, moves);
    }
    if (onward.size === 0) return moves;
    const eased = moves.slice();
    for (const to of onward) eased[(to - 1) * states + to] = of(cost(to - 1, to, last, cut));
    return eased;
  };
}

/** The state of every clause: 0 before the first step, then the steps, then behind the last. */
function bestPath(evidence: Evidence, clauses: readonly Cut[]): number[] {
  const states = evidence[0]!.length;
  const last = states - 1;
  let best = evidence[0]!.map((value, state) => value - (state === 0 ? 0 : cost(0, state, last, BEGIN)));
  const from: Int32Array[] = [];
  const movesAt = movesFor(states, (cost) => cost);
  for (let t = 1; t < evidence.length; t++) {
    const [cut, moves] = [clauses[t]!, movesAt(clauses[t]!)];
    const back = new Int32Array(states);
    const next = evidence[t]!.map((value, to) => {
      const into = entry(value, to, last, cut);
      let [most, origin] = [-Infinity, to];
      // Of two ways that are as good, the one that goes on later: who digresses has not begun the next step.
      for (let state = 0; state < states; state++) {
        const sum = state === to ? best[to]! : best[state]! - moves[state * states + to]! - into;
        if (sum > most) [most, origin] = [sum, state];
      }
      back[to] = origin;
      return most + value;
    });
    from.push(back);
    best = next;
  }
  let state = best.indexOf(Math.max(...best));
  const path = [state];
  for (const back of from.reverse()) path.push((state = back[state]!));
  return path.reverse();
}

/** As many clauses are looked at for a step that is told once more. */
const MOST_AGAIN = 8;

/** By how much the words must speak for the earlier step. */
const LEAST_AGAIN = 0.8;

/**
 * A speaker who says that something comes again goes back to one step for a while, and on from where they were. So much the
 * costs of going from step to step cannot know; the words alone decide.
 *
 * @returns How sure each is, by the clause it begins at.
 */
function tellAgain(path: number[], evidence: Evidence, clauses: readonly Cut[]): ReadonlyMap<number, number> {
  const retold = new Map<number, number>();
  for (let t = 0; t < path.length; t++) {
    if (!clauses[t]!.again) continue;
    const farthest = Math.max(...path.slice(0, t));
    let best = { state: 0, end: t, gain: LEAST_AGAIN };
    for (let state = 1; state < farthest; state++) {
      let gain = 0;
      for (let end = t; end < Math.min(path.length, t + MOST_AGAIN); end++) {
        if (path[end] === state) break;
        gain += evidence[end]![state]! - evidence[end]![path[end]!]!;
        // A stretch ends where something new begins.
        const ends = end + 1 === path.length || clauses[end + 1]!.turn === 'strong';
        if (ends && gain > best.gain) best = { state, end: end + 1, gain };
      }
    }
    if (best.end === t) continue;
    path.fill(best.state, t, best.end);
    retold.set(t, 1 - Math.exp(-best.gain));
    t = best.end - 1;
  }
  return retold;
}

/** The chance of each state at each clause, all ways through the recording taken together: forwards and backwards. */
function chances(evidence: Evidence, clauses: readonly Cut[]): Float64Array[] {
  const states = evidence[0]!.length;
  const last = states - 1;
  const movesAt = movesFor(states, (cost) => Math.exp(-cost));
  const likely = evidence.map((row) => row.map((value) => Math.exp(value)));
  const entering = evidence.map((row, t) => row.map((value, to) => Math.exp(-entry(value, to, last, clauses[t]!))));
  const scaled = (row: Float64Array): Float64Array => {
    const sum = row.reduce((all, value) => all + value, 0) || 1;
    return row.map((value) => value / sum);
  };
  const forwards = [scaled(Float64Array.from(likely[0]!, (value, state) => value * movesAt(BEGIN)[state]!))];
  for (let t = 1; t < evidence.length; t++) {
    const [move, row, before] = [movesAt(clauses[t]!), new Float64Array(states), forwards[t - 1]!];
    for (let state = 0; state < states; state++) {
      const weight = before[state]!;
      if (weight < 1e-12) continue;
      const into = entering[t]!;
      for (let to = 0; to < states; to++) row[to]! += weight * move[state * states + to]! * into[to]!;
      row[state]! += weight * (1 - into[state]!);
    }
    forwards.push(scaled(row.map((value, to) => value * likely[t]![to]!)));
  }
  const result: Float64Array[] = [];
  let after: Float64Array = new Float64Array(states).fill(1);
  for (let t = evidence.length - 1; t >= 0; t--) {
    result[t] = scaled(forwards[t]!.map((value, state) => value * after[state]!));
    if (t === 0) break;
    const [move, row] = [movesAt(clauses[t]!), new Float64Array(states)];
    for (let to = 0; to < states; to++) {
      const weight = after[to]! * likely[t]![to]!;
      if (weight < 1e-12) continue;
      const into = entering[t]![to]!;
      for (let state = 0; state < states; state++) row[state]! += weight * move[state * states + to]! * into;
      row[to]! += weight * (1 - into);
    }
    after = scaled(row);
  }
  return result;
}

function stretches(
  spoken: SpokenText,
  clauses: readonly Clause[],
  path: readonly number[],
  sure: readonly Float64Array[],
  steps: readonly Step[],
  evidence: Evidence,
  retold: ReadonlyMap<number, number>,
): ToldStep[] {
  const told: ToldStep[] = [];
  const met = new Set<string>();
  for (let t = 0; t < path.length;) {
    const state = path[t]!;
    let end = t + 1;
    while (end < path.length && path[end] === state) end++;
    const step = steps[state - 1];
    if (step) {
      let [sum, weight] = [0, 0];
      for (let k = t; k < end; k++) {
        const telling = 0.2 + Math.max(0, evidence[k]![state]!);
        sum += telling * sure[k]![state]!;
        weight += telling;
      }
      const begin = spoken.words[clauses[t]!.first]!.from;
      const to = spoken.words[clauses[end - 1]!.next - 1]!.to;
      const again = met.has(step.id);
      met.add(step.id);
      told.push({
        step: step.id,
        from: begin,
        to,
        sure: Math.round(100 * (retold.get(t) ?? sum / weight)) / 100,
        ...(again && { again: true as const }),
      });
    }
    t = end;
  }
  return told;
}
