/** Where a step may begin: clauses, and what each says of going on to another step. */
import { sidesSaid, sideTexts } from './telling.ts';
import { stem, stemsOf } from './stems.ts';
import { clausesOf, type Clause } from './sentences.ts';
import {
  AGAIN,
  AGAIN_AT_TURN,
  ANNOUNCED,
  ASIDE,
  DONE,
  ON_ANOTHER_SIDE,
  SAME_AGAIN,
  STARTS,
  WHEN,
} from './turns-of-phrase.ts';
import type { SpokenText } from './lines.ts';
import type { Step } from '../project/index.ts';

/** A clause as a place to go on to another step: how it begins, and whether it says that something is told once more. */
export type Cut = Clause & {
  again: boolean;
  /** The states that come of “the same once more”: the next steps that are like one before them. */
  onward: ReadonlySet<number>;
  /** It tells of something else than what is done now. */
  aside: boolean;
  /** It tells what came of a step. */
  done: boolean;
  starts: boolean;
  announced: boolean;
};

/** At the most so many words of a clause are looked at together. */
const TOGETHER = 12;

/** So many words at least stand before and behind a place where a clause may be cut. */
const FEWEST = 3;

/** A pause of so many seconds is a turn of the talk: something was sewn. */
const LONG_PAUSE = 4;

/** As many words behind a clause belong to what is said at its end. */
const BEYOND = 5;

/** What somebody is told to do. */
const DOING = new Set(
  (
    'take get grab put pop use make find draw mark measure check start begin open close give pin clip sew stitch press fold ' +
    'turn flip cut trim lay place bring pull push run thread slip slide hold line match leave snip box pinch reach join iron ' +
    'wrap set go move tack baste hem topstitch edgestitch gather pleat fuse bind quilt chop slice shorten double bend shut do look'
  )
    .split(' ')
    .map(stem),
);

/** Behind these a verb tells no one to do it. */
const BOUND =
  /^(?:to|you|we|i|they|and|or|can|will|well|youll|just|dont|not|gonna|wanna|a|an|the|that|this|your|my|our|it|them|id|ill|could|should|would|must|always|never|also|top|back|edge|one|long|straight|nice|please|then|now|so|next|of|in|for|with|first|by|no|lets|is|be|being|like|as|each|every|if|when|before|after|while)$/u;

/** What a clause says, in lower case and without apostrophes. */
export const plainOf = ({ words, text }: SpokenText, { first, next }: Pick<Clause, 'first' | 'next'>): string =>
  text
    .slice(words[first]!.start, words[next - 1]!.end)
    .toLowerCase()
    .replace(/['’]/gu, '');

/** Whether words that begin in a clause are said; they may end behind it. */
export function saysIn(spoken: SpokenText, { first, next }: Clause, words: RegExp): boolean {
  const own = plainOf(spoken, { first, next }).length;
  const found = words.exec(plainOf(spoken, { first, next: Math.min(spoken.words.length, next + BEYOND) }));
  return found !== null && found.index < own;
}

/** The clauses of a recording, short enough that a step begins at one, and what each says of going on. */
export function cutsOf(spoken: SpokenText, steps: readonly Step[]): Cut[] {
  const like = likeBefore(steps);
  const sides = newSides(steps);
  return clausesOf(spoken)
    .flatMap((clause) => parted(spoken, clause).flatMap(evenly))
    .map((clause) => {
      const turn = pauseBefore(spoken, clause) >= LONG_PAUSE ? 'strong' : clause.turn;
      return cutAt(spoken, { ...clause, turn }, steps, like, sides);
    });
}

/** For how long nobody speaks before a clause, in seconds. While something is sewn nobody does. */
const pauseBefore = ({ words }: SpokenText, { first }: Clause): number =>
  first === 0 ? 0 : words[first]!.from - words[first - 1]!.to;

const plainWord = ({ words }: SpokenText, i: number): string =>
  (words[i]?.text ?? '').toLowerCase().replace(/[^\p{L}]/gu, '');

/** Whether something of its own may begin at a word within a clause, and how surely. */
function mayBegin(spoken: SpokenText, i: number): Clause['turn'] | undefined {
  const [before, word, after] = [i - 1, i, i + 1].map((k) => plainWord(spoken, k)) as [string, string, string];
  if (/^(?:and|so|then|but|or)$/u.test(word)) {
    if (/^(?:and|or|but|so)$/u.test(before)) return undefined;
    const other = /^(?:the|these|those|this|that|your|other|now|next|again|same|here|once|to)$/u.test(after);
    if (other || DOING.has(stem(after))) return 'weak';
    const who = /^(?:i|you|if|its|it|we|thats|dont|when|they|theyre|youre|youve|at|from|just|a|what|mine)$/u.test(
      after,
    );
    return who ? 'none' : undefined;
  }
  if (/^(?:right|same)$/u.test(word)) {
    const turns = /^(?:so|then|now|okay|all|the|again|at|with|on)$/u.test(after);
    if (turns) return /^(?:the|its|your|is|that|and)$/u.test(before) ? undefined : 'weak';
  }
  if (/^(?:but|because|cause|anyway|lets|oh|yes|okay)$/u.test(word))
    return /^(?:the|its|your|is|that|and)$/u.test(before) ? undefined : 'weak';
  if (word === 'number' && /^(?:one|two|three|four|five|six)$/u.test(after)) return 'weak';
  // … half an inch under, right side half an inch under.
  if (/^(?:top|bottom|left|right)$/u.test(word) && /^(?:side|edge|end)$/u.test(after))
    return BOUND.test(before) || /^(?:and|open|hand)$/u.test(before) ? undefined : 'weak';
  return DOING.has(stem(word)) && !/(?:ing|ed)$/u.test(word) && !BOUND.test(before) ? 'weak' : undefined;
}

function parted(spoken: SpokenText, { first, next, turn }: Clause): Clause[] {
  const parts: Clause[] = [{ first, next, turn }];
  for (let i = first + FEWEST; i <= next - FEWEST; i++) {
    const last = parts.at(-1)!;
    if (i - last.first < FEWEST) continue;
    const how = mayBegin(spoken, i);
    if (how === undefined) continue;
    last.next = i;
    parts.push({ first: i, next, turn: how });
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

/** A step that is done as one shortly before it: to each of several things, or on another side. */
type Like = 'no' | 'yes' | 'on another side';

/** As many steps before one are looked at for its like: lay and stitch the first, lay and stitch the second. */
const SHORTLY = 3;

/** For each state whether its step is like one before it. */
function likeBefore(steps: readonly Step[]): readonly Like[] {
  const like = steps.map(({ verb }, i): Like => {
    const before = steps.slice(Math.max(0, i - SHORTLY), i).findLast((one) => one.verb === verb);
    if (!before) return 'no';
    // “And the other one” of a step that is done to several is said within it.
    return before.times > 1 ? 'on another side' : 'yes';
  });
  return ['no', ...like, 'no'];
}

/** For each state the sides that its step has and the step before it, which does the same to the same, has not. */
function newSides(steps: readonly Step[]): readonly ReadonlySet<string>[] {
  const none: ReadonlySet<string> = new Set();
  const of = steps.map(({ instruction }) => sidesSaid(sideTexts(instruction)));
  const own = steps.map(({ verb, takes }, i) => {
    const before = steps[i - 1];
    if (before?.verb !== verb || before.takes[0] !== takes[0]) return none;
    return new Set([...of[i]!].filter((side) => !of[i - 1]!.has(side)));
  });
  return [none, ...own, none];
}

/** “Some people” at the end of a clause tells who does what the next one says. */
const goesOnFromAside = (spoken: SpokenText, { first, next, turn }: Clause): boolean =>
  turn !== 'strong' && first >= 2 && ASIDE.test(plainOf(spoken, { first: first - 2, next }));

function cutAt(
  spoken: SpokenText,
  clause: Clause,
  steps: readonly Step[],
  like: readonly Like[],
  sides: readonly ReadonlySet<string>[],
): Cut {
  const text = plainOf(spoken, clause);
  const again = saysIn(spoken, clause, AGAIN) || (clause.turn === 'strong' && AGAIN_AT_TURN.test(text));
  const [same, other] = [saysIn(spoken, clause, SAME_AGAIN), saysIn(spoken, clause, ON_ANOTHER_SIDE)];
  const said = new Set(again && clause.turn === 'strong' ? stemsOf(text) : []);
  const named = [...sidesSaid(text)];
  // What some people do as well is no step of this one.
  const aside = saysIn(spoken, clause, ASIDE) || goesOnFromAside(spoken, clause);
  const onward = like.flatMap((how, state) => {
    if (aside || WHEN.test(text)) return [];
    // “And then the bottom”, where the left and the right were folded.
    const side = sides[state]!.size > 0 && named.length > 0 && named.every((one) => sides[state]!.has(one));
    const oncemore = how !== 'no' && said.size > 0 && stemsOf(steps[state - 1]!.verb).every((word) => said.has(word));
    return side || oncemore || (same && (how === 'yes' || (how !== 'no' && other))) ? [state] : [];
  });
  return {
    ...{ ...clause, again, aside, onward: new Set(onward) },
    ...{ done: DONE.test(text), starts: STARTS.test(text), announced: ANNOUNCED.test(text) },
  };
}
