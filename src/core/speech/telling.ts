/** What tells of a step: verbs as people say them, the names of works, lengths, sides, and which of several it is. */
import { phraseAt, plainWords, stem, stemsOf } from './stems.ts';
import { isSaid } from './sizes.ts';
import { perhapsFor, saidFor } from './said-verbs.ts';
import { weights } from './weights.ts';
import type { CourseWords } from './course-words.ts';
import type { SpokenLength } from './lengths.ts';
import type { SpokenText } from './lines.ts';
import type { Step } from '../project/index.ts';
import type { VerbName } from '../steps/index.ts';

/** A recording word by word, as it is looked through again and again. */
export type Heard = {
  spoken: SpokenText;
  /** The stem of each word. */
  stems: readonly string[];
  plain: readonly string[];
  /** Where each stem is said. */
  places: ReadonlyMap<string, readonly number[]>;
  /** The lengths, by the word they begin at. */
  lengths: ReadonlyMap<number, SpokenLength>;
};

export function heardOf(spoken: SpokenText, lengths: readonly SpokenLength[]): Heard {
  const plain = spoken.words.map(({ text }) => text.toLowerCase().replace(/[^\p{L}\p{N}]/gu, ''));
  const stems = plain.map(stem);
  const places = new Map<string, number[]>();
  for (const [i, one] of stems.entries()) {
    const known = places.get(one);
    if (known) known.push(i);
    else places.set(one, [i]);
  }
  const at = new Map<number, SpokenLength>();
  let next = 0;
  for (const length of lengths) {
    while (next < spoken.words.length && spoken.words[next]!.end <= length.start) next++;
    if (next < spoken.words.length) at.set(next, length);
  }
  return { spoken, stems, plain, places, lengths: at };
}

/** Where a work is laid down to be worked on: “lay it on the table” is no step. */
const onTheTable = ({ plain }: Heard, at: number): boolean =>
  /^(?:lay|put|place|set|smooth|spread)$/u.test(plain[at]!) &&
  /\bon (?:the|your|a) (?:table|desk|floor|board|ironing board|worktop)\b/u.test(plain.slice(at, at + 9).join(' '));

/** For each word how much it tells of a verb. */
function verbHeard(verb: VerbName, heard: Heard, special: (phrase: string) => number): Float64Array {
  const told = new Float64Array(heard.stems.length);
  const mark = (phrases: readonly string[], weight: number): void => {
    for (const phrase of phrases) {
      const amount = weight * special(phrase);
      const stems = plainWords(phrase).map(stem);
      for (const first of heard.places.get(stems[0]!) ?? [])
        if (phraseAt(heard.stems, stems, first) >= 0 && !onTheTable(heard, first))
          told[first] = Math.max(told[first]!, amount);
    }
  };
  mark(perhapsFor(verb), weights.perhaps);
  mark(saidFor(verb), weights.surely);
  return told;
}

/** Sides and places of a work, which are names of pieces as well and then tell little by themselves. */
const placeWords = new Set(
  'top bottom left right middle centre center corner edge gap opening front back fold side upper lower'
    .split(' ')
    .map(stem),
);

const SIDES = ['top', 'bottom', 'left', 'right'];

/** For each step: how much tells of it, how much of that its verb, and how much the names of what it takes. */
export type Told = { all: Float64Array; verb: Float64Array; names: Float64Array };

export type Telling = {
  /** How much the words from one to before another tell of each step. An opening tells less the further on it is. */
  of(first: number, next: number, opening?: boolean): Told;
  /** How much they name what each step takes. */
  namesIn(first: number, next: number): Float64Array;
};

/** The first words of an opening tell all, and those behind them less and less. */
const TELL_ALL = 8;
const FADING = 14;
const LEAST = 0.25;

export function tellingOf(heard: Heard, steps: readonly Step[], words: CourseWords): Telling {
  const verbs = verbsIn(heard, steps);
  const holders = holdersOf(heard, steps, words);
  const lengths = steps.map(lengthsOf);
  const having = (mm: number): number =>
    lengths.reduce((sum, own) => sum + (own.some((one) => Math.abs(one - mm) < 0.05) ? 1 : 0), 0);
  // A length of many steps tells little of one.
  const rarity = lengths.map((own) => own.map((mm) => 0.4 + 0.6 * fewOf(having(mm), steps.length)));
  const sides = steps.map(({ instruction }) => sidesSaid(sideTexts(instruction)));
  const which = whichOf(steps);

  const names = (first: number, next: number, into: Float64Array): void => {
    const seen = new Set<string>();
    for (let at = first; at < next; at++) {
      const word = heard.stems[at]!;
      if (seen.has(word)) continue;
      seen.add(word);
      for (const { step, amount, takes } of holders.get(word) ?? []) if (takes) into[step]! += amount;
    }
  };

  const lengthTells = (value: SpokenLength, step: number): number => {
    let best = 0;
    for (const [k, mm] of lengths[step]!.entries()) {
      for (const one of value.values) {
        const near = isSaid(one, mm, value.edition) ? 1 : Math.abs(one - mm) < one / 30 ? weights.nearly : 0;
        best = Math.max(best, near * rarity[step]![k]!);
      }
    }
    return weights.length * best;
  };

  return {
    namesIn(first, next) {
      const into = new Float64Array(steps.length);
      names(first, next, into);
      return into;
    },
    of(first, next, opening = false) {
      const fade = (at: number): number =>
        opening ? Math.max(LEAST, 1 - Math.max(0, at - first - TELL_ALL) / FADING) : 1;
      const told = { all: new Float64Array(steps.length), verb: new Float64Array(steps.length) };
      const named = new Float64Array(steps.length);
      for (const { told: said, of } of verbs) {
        let [most, further] = [0, 0];
        for (let at = first; at < next; at++) {
          if (said[at] === 0) continue;
          const here = said[at]! * fade(at);
          [most, further] = here > most ? [here, further + most] : [most, further + here];
        }
        if (most === 0) continue;
        for (const step of of) {
          told.verb[step] = most;
          told.all[step]! += most + weights.further * Math.min(further, 4);
        }
      }
      const seen = new Set<string>();
      for (let at = first; at < next; at++) {
        const word = heard.stems[at]!;
        const length = heard.lengths.get(at);
        if (length) for (const step of steps.keys()) told.all[step]! += lengthTells(length, step) * fade(at);
        const held = holders.get(word);
        if (!held || seen.has(word)) continue;
        seen.add(word);
        for (const { step, amount, takes } of held) {
          told.all[step]! += amount * fade(at);
          if (takes) named[step]! += amount * fade(at);
        }
      }
      const text = heard.plain.slice(first, next).join(' ');
      const [ownSides, one] = [sidesSaid(text), whichIn(text)];
      for (const step of steps.keys()) {
        if (sides[step]!.size > 0 && ownSides.size > 0)
          told.all[step]! +=
            weights.side * [...ownSides].filter((side) => sides[step]!.has(side)).length || -weights.otherSide;
        const own = which[step];
        if (own && one !== undefined) told.all[step]! += isWhich(one, own) ? weights.which : -weights.otherOne;
      }
      return { ...told, names: named };
    },
  };
}

/** 1 where only one of them has something, and less the more have it. */
const fewOf = (having: number, all: number): number => 1 - Math.log(having) / Math.log(all + 2);

/** The verbs of a project: for each word of the recording how much it tells of one, and the steps that do it. */
function verbsIn(heard: Heard, steps: readonly Step[]): { told: Float64Array; of: number[] }[] {
  const doing = new Map<VerbName, number[]>();
  for (const [i, { verb }] of steps.entries()) doing.set(verb, [...(doing.get(verb) ?? []), i]);
  // What is said of many verbs of the project tells little of one.
  const sharing = new Map<string, number>();
  for (const verb of doing.keys())
    for (const phrase of new Set([...saidFor(verb), ...perhapsFor(verb)]))
      sharing.set(phrase, (sharing.get(phrase) ?? 0) + 1);
  return [...doing].map(([verb, of]) => ({
    told: verbHeard(verb, heard, (phrase) => 1 / Math.sqrt(sharing.get(phrase) ?? 1)),
    of,
  }));
}

type Holder = { step: number; amount: number; takes: boolean };

/** For each word that is said the steps it tells of beside their verbs. */
function holdersOf(heard: Heard, steps: readonly Step[], words: CourseWords): ReadonlyMap<string, readonly Holder[]> {
  const bags = steps.map((step) => bagOf(step, words));
  const having = new Map<string, number>();
  for (const bag of bags) for (const word of bag.keys()) having.set(word, (having.get(word) ?? 0) + 1);
  const holders = new Map<string, Holder[]>();
  for (const [step, bag] of bags.entries()) {
    const takes = new Set(
      steps[step]!.takes.flatMap((name) => (words.names[name] ?? [name]).flatMap((called) => stemsOf(called))),
    );
    for (const [word, weight] of bag) {
      const said = heard.places.get(word)?.length;
      if (said === undefined) continue;
      // A word that is said all the time, or of all steps, tells little.
      const often = 1 + (weights.common * said) / having.get(word)!;
      const amount = (weight * (0.3 + 0.7 * fewOf(having.get(word)!, steps.length))) / often;
      const held = holders.get(word) ?? [];
      held.push({ step, amount, takes: takes.has(word) });
      holders.set(word, held);
    }
  }
  return holders;
}

const ORDINALS =
  /\b(?:(first|number one)|(second|number two)|(third|number three)|(fourth|number four)|(other|another)|(last))\b/gu;

/**
 * Which of several alike is spoken of: the first, the second. “The other one” is the second of two and the next of more;
 * the last is the last of them.
 */
type Which = number | 'other' | 'last';

/** Behind these words “first” tells when, and “last” what was before; nothing is counted. */
const NOT_COUNTED =
  /\b(?:first (?:thing|of all|off|we|i|you|then|step|bit|part|up|let|lets|time)|last (?:thing|step|bit|part|job|week|time|year|month|of all|one of)|at first|other (?:side|end|edge|way|half|hand|people|long|short)|(?:the|an) other day|each other|one another|number (?:of|on)|a second|one second|second (?:time|fold|hem|row))\b/gu;

function whichIn(text: string): Which | undefined {
  const found = [...text.toLowerCase().replace(NOT_COUNTED, '').matchAll(ORDINALS)][0];
  if (!found) return undefined;
  const place = found.slice(1).findIndex((one) => one !== undefined);
  return place < 4 ? place + 1 : place === 4 ? 'other' : 'last';
}

/** Which of several alike each step does, counted from 1, and of how many; undefined where it does all, or the only one. */
function whichOf(steps: readonly Step[]): ({ which: number; of: number } | undefined)[] {
  const own = steps.map(({ title }) => {
    const which = whichIn(title);
    return typeof which === 'number' ? which : undefined;
  });
  return steps.map(({ verb, takes }, i) => {
    const which = own[i];
    if (which === undefined) return undefined;
    const alike = steps.flatMap((step, k) => (step.verb === verb && step.takes[0] === takes[0] ? (own[k] ?? []) : []));
    return { which, of: Math.max(...alike) };
  });
}

const isWhich = (said: Which, { which, of }: { which: number; of: number }): boolean =>
  said === 'last' ? which === of : said === 'other' ? which > 1 : which === said;

/** Fields that name a side which the step is not done at. */
const NO_PLACE = new Set(['gap', 'open', 'press', 'makes', 'note', 'turned', 'verb']);

/** What the fields of a step say that name a side: at, from, of two works the places of each. */
export const sideTexts = (value: unknown): string =>
  typeof value === 'string'
    ? value
    : typeof value === 'object' && value !== null
      ? Object.entries(value)
          .filter(([name]) => !NO_PLACE.has(name))
          .map(([name, inner]) => `${name} ${sideTexts(inner)}`)
          .join(' ')
      : '';

/** The sides in a text; none where it tells of all four. “Right side up” and “right sides together” name no side. */
export function sidesSaid(text: string): ReadonlySet<string> {
  const plain = text
    .toLowerCase()
    // “From the bottom to the top” tells which way.
    .replace(
      /\bfrom (?:the )?(?:top|bottom|left|right)(?: (?:side|edge))?(?: \p{L}+){0,2} to (?:the )?(?:top|bottom|left|right|other)\b/gu,
      '',
    )
    .replace(/\bleft (?=in|over|with|to|for|of)\b/gu, '')
    .replace(/\bright (?=so|now|okay|then|down|up|through|round|around|on|over|along|at the edge)\b/gu, '')
    .replace(/^(?:so |and |all )*right\b/gu, '')
    .replace(/\b(?:right|wrong) sides?(?: (?:up|down|out|together|facing))?\b/gu, (said) =>
      /(?:up|down|out|together|facing)$/u.test(said) || said.endsWith('sides') || said.startsWith('wrong') ? '' : said,
    );
  const words = new Set(plain.split(/[^\p{L}]+/u));
  const found = SIDES.filter((side) => words.has(side));
  return new Set(found.length === SIDES.length ? [] : found);
}

/** The words of a step beside its verb, each with how much it weights. */
function bagOf(step: Step, { names }: CourseWords): Map<string, number> {
  const bag = new Map<string, number>();
  const own = new Set(stemsOf(step.verb));
  const add = (text: string, weight: number, isName = false): void => {
    const found = stemsOf(text);
    for (const [k, word] of found.entries()) {
      if (SIDES.includes(word) && weight < weights.taken) continue;
      // The last word of a name is the thing: a light strip is a strip.
      const ofName = isName && k < found.length - 1 ? weights.partOfName : 1;
      const amount = weight * ofName * (placeWords.has(word) ? weights.place : 1);
      if (!own.has(word)) bag.set(word, Math.max(bag.get(word) ?? 0, amount));
    }
  };
  for (const [k, name] of step.takes.entries())
    for (const called of names[name] ?? [name]) add(called, k === 0 ? weights.first : weights.taken, true);
  for (const called of names[step.makes] ?? [step.makes]) add(called, weights.made, true);
  for (const [name, value] of Object.entries(step.instruction)) {
    if (name === 'verb') continue;
    add(named(value, names), weights.field);
    if (value !== false && name !== 'note') add(name, weights.field);
  }
  add(step.title, weights.field);
  add(step.note ?? '', weights.note);
  return bag;
}

/** Whatever a field of a step names: works, sides, a manner. */
function named(value: unknown, names: CourseWords['names']): string {
  if (typeof value === 'string') return [value, ...(names[value] ?? [])].join(' ');
  if (Array.isArray(value)) return value.map((one) => named(one, names)).join(' ');
  return '';
}

/** The lengths of a step in mm, of its own fields and of what it measures then. */
const lengthsOf = ({ instruction, nowMeasures }: Step): number[] => [
  ...new Set(lengthsWithin([instruction, nowMeasures])),
];

/** All numbers in a value, however deep, that may be lengths in mm which are said. */
export function lengthsWithin(value: unknown): number[] {
  if (typeof value === 'number') return value > 0.5 ? [value] : [];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(lengthsWithin) : [];
}
