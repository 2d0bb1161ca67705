/** Counts that are typed in a text: five stepped pockets, nine layers. */
import { quote } from '../../core/measure/index.ts';
import { makeUp, type Pattern } from '../../core/project/index.ts';
import type { WorkedOut } from './project-problems.ts';
import type { Said } from './texts.ts';
import type { WordInLesson } from '../../../components/words/word.ts';
import { inText, SMALL, stem, type AboutNumber } from './typed-numbers.ts';

/** A number of things, in words or in digits, with up to three words behind it that may name them. */
export type TypedCount = { start: number; end: number; text: string; value: number; words: string[] };

const NUMBERS =
  'two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen twenty';
const VALUES = new Map(NUMBERS.split(' ').map((word, i) => [word, i + 2]));
const pattern = new RegExp(
  `(?<![\\p{L}\\p{N}.,/⁄$€£–-])(${NUMBERS.replaceAll(' ', '|')}|[1-9]\\d?)((?:[\\s\\u2060]+\\p{L}[\\p{L}-]*){1,3})`,
  'giu',
);
/** What comes behind these is not what is counted. */
const STOPS = new Set(
  'a an and are as at by for from in is it of on one or than that the then this to with'.split(' '),
);

/**
 * The counts in a text. Of a range (four to six pockets) neither end is one.
 *
 * @example countsIn('It has five stepped pockets.') // => [{ value: 5, words: ['stepped', 'pockets'], … }]
 */
export function countsIn(text: string): TypedCount[] {
  return [...text.matchAll(pattern)].flatMap((found): TypedCount[] => {
    const [, number = '', behind = ''] = found;
    const start = found.index;
    if (/(\b(to|or|and)|–)[\s\u2060]*$/iu.test(text.slice(0, start))) return [];
    const all = behind.split(/[\s\u2060]+/u).filter(Boolean);
    const stop = all.findIndex((word) => STOPS.has(word.toLowerCase()));
    const words = stop < 0 ? all : all.slice(0, stop);
    const last = words.at(-1);
    if (last === undefined) return [];
    const end = text.indexOf(last, start + number.length) + last.length;
    const value = VALUES.get(number.toLowerCase()) ?? Number(number);
    return [{ start, end, text: text.slice(start, end).replaceAll('\u2060', '').replace(/\s+/gu, ' '), value, words }];
  });
}

/** Whether a comment keeps a count: the same number of the same things. */
export const isSameCount = (kept: TypedCount, typed: TypedCount): boolean =>
  kept.value === typed.value && typed.words.some((word) => stem(word) === stem(kept.words.at(-1)!));

/** What stands in these lists is words. */
const WORDS = new Set(['term', 'pair']);

/** A list of a lesson's own, such as the terms of a question. `things`: what its entries may be called, as stems. */
export type OwnList = { word: string; count: number; things: readonly string[] };

/**
 * The lists that an author wrote among the attributes of a lesson's words.
 *
 * @example listsIn(words) // => [{ word: 'AskPairs', count: 4, things: ['term', 'word'] }]
 */
export function listsIn(words: readonly WordInLesson[]): OwnList[] {
  return words.flatMap(({ name: word, attributes }) =>
    attributes.flatMap(({ name, value }): OwnList[] => {
      if (typeof value !== 'object' || value === null) return [];
      const thing = stem(name);
      return [{ word, count: Object.keys(value).length, things: WORDS.has(thing) ? [thing, 'word'] : [thing] }];
    }),
  );
}

/** What is said of a count that the project or the lesson holds; undefined for any other. */
export function aboutCount(
  count: TypedCount,
  said: Said,
  { variants: [own] }: WorkedOut,
  lists: readonly OwnList[],
  keep: (why: string) => string,
): AboutNumber | undefined {
  const { start, value, words } = count;
  const upTo = (name: (word: string) => boolean): { end: number; text: string } | undefined => {
    const i = words.findIndex((word) => /s$/iu.test(word) && name(stem(word)));
    if (i < 0) return undefined;
    const end = said.text.indexOf(words[i]!, start) + words[i]!.length;
    return { end, text: quote(said.text.slice(start, end).replaceAll('\u2060', '').replace(/\s+/gu, ' ')) };
  };
  const measure = Object.values(own.inch.measures).find(
    ({ dimension, value: is, name, label }) =>
      dimension === 0 && is === value && upTo((word) => [name, label].some((one) => countedBy(one).has(word))),
  );
  if (measure) {
    const { end, text } = upTo((word) => [measure.name, measure.label].some((one) => countedBy(one).has(word)))!;
    const message = `${text} is typed, so it stays when ${quote(measure.name)} changes.`;
    const fix = said.kind === 'heading' ? 'Leave numbers out of headings.' : `Write ${inText(measure.name, said)}.`;
    return { start, end, severity: 'warning', message, fix };
  }
  const piece = Object.values(own.inch.pieces).find(
    ({ count: is, name, label }) =>
      is > 1 && is === value && upTo((word) => [name, label].some((one) => lastOf(one) === word)),
  );
  if (piece) {
    const { end, text } = upTo((word) => [piece.name, piece.label].some((one) => lastOf(one) === word))!;
    const name = `${piece.name.split(' ').at(-1)}s`;
    const message = `${text} is typed, so it stays when ${quote(piece.name)} is cut another number of times.`;
    const fix = `Name the number under measures, “${name}: { count: ${value} }”, write “cut: ${name}”, and here ${inText(name, said)}.`;
    return { start, end, severity: 'warning', message, fix };
  }
  const list = lists.find((one) => one.count === value && upTo((word) => one.things.includes(word)));
  if (list) {
    const { end, text } = upTo((word) => list.things.includes(word))!;
    const message = `${text} is typed, so it stays when <${list.word}> gets another.`;
    return { start, end, severity: 'warning', message, fix: 'Say it without the number.' };
  }
  const layers = value > 2 ? upTo((word) => word === 'layer' || word === 'pl') : undefined;
  if (!layers) return undefined;
  const step = [own.inch, own.metric].flatMap((pattern) => goingThrough(value, pattern))[0];
  // Of a step without an id of its own nothing can be asked.
  const isTold = said.kind === 'prose' && !said.inQuestion && step !== undefined && !/^step \d+$/u.test(step);
  const instead = isTold ? `Write ${inText(`layers of ${step}`, said)}` : 'Write “many layers”';
  if (step === undefined) {
    const message = `${layers.text} is typed, and no step of the project has so many in one place.`;
    return { start, ...layers, severity: 'note', message, fix: `${instead}, or keep it with a reason: ${keep('…')}` };
  }
  const message = `${layers.text} is typed, and the sizes decide how many there are: step ${quote(step)} has ${value} at the lesson’s own.`;
  const fix = `${instead}, or let <LayerStudy step="${step}" /> count them.`;
  return { start, end: layers.end, severity: 'warning', message, fix };
}

/** The steps whose work has so many layers in one place, or a row through so many. */
const goingThrough = (layers: number, pattern: Pattern): string[] =>
  makeUp(pattern).flatMap((step) =>
    step.layersMost === layers || step.stitches.some((row) => row.layers === layers) ? [step.id] : [],
  );

/** What a number is a number of: Number of pockets, petals in a row. */
function countedBy(name: string): Set<string> {
  const [things = ''] = name
    .replace(/^(the\s+)?(number|count)\s+of\s+/iu, '')
    .split(/\s(?:of|per|in|on|at|to|for|across)\s/iu);
  const words = (things.match(/\p{L}{3,}/gu) ?? []).map(stem);
  return new Set(words.filter((word) => !SMALL.has(word) && word !== 'number'));
}

const lastOf = (name: string): string =>
  stem(
    name
      .split(/[^\p{L}]+/u)
      .filter(Boolean)
      .at(-1) ?? '',
  );
