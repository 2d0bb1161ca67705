import { formatLength, quote, SAME } from '../../core/measure/index.ts';
import type { Measure } from '../../core/project/index.ts';
import type { Prose } from '../content/lesson-prose.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import type { WorkedOut } from './project-problems.ts';
import type { LessonEntry } from '../content/read-content.ts';
import { typedLengths } from './typed-lengths.ts';
import type { TypedLength } from './typed-lengths.ts';

const example = '{/* keep 1/8 in: the mark on the foot */}';

/**
 * Numbers typed in a lesson that the project holds, nearly holds or does not hold: none of them follows when the
 * project changes. An author keeps one, with a reason, by a comment of the form that
 * `example` shows.
 */
export function typedNumbers(entry: LessonEntry, worked: WorkedOut): AtOffset[] {
  const kept = entry.lesson.comments.flatMap(readKeep);
  const said: AtOffset[] = kept.flatMap(({ fault }) => fault ?? []);
  const used = new Set<unknown>();
  for (const prose of entry.lesson.prose) {
    for (const typed of together(typedLengths(prose.text), prose.text)) {
      const keep = kept.find(({ length }) => length && typed.some((one) => one && isSame(one, length)));
      if (keep) used.add(keep);
      else said.push(about(typed, prose, worked));
    }
  }
  for (const keep of kept) {
    if (keep.length && !keep.fault && !used.has(keep)) {
      const message = `This keeps ${quote(keep.length.text)}, which the lesson no longer has.`;
      said.push({ at: keep.at, severity: 'note', message, fix: 'Take the comment away.' });
    }
  }
  return said;
}

const isSame = (a: TypedLength, b: TypedLength): boolean => a.edition === b.edition && Math.abs(a.mm - b.mm) <= SAME;

type Keep = { at: number; length?: TypedLength; fault?: AtOffset };

function readKeep({ start: at, text }: { start: number; text: string }): Keep[] {
  const keep = /^keep\b\s*([^:]*)(?::\s*([\s\S]*))?$/.exec(text);
  if (!keep) return [];
  const [length] = typedLengths(keep[1]!);
  if (!length) {
    const message = 'This comment does not say which length to keep.';
    return [{ at, fault: { at, severity: 'warning', message, fix: `Write it like ${example}.` } }];
  }
  if (keep[2]?.trim()) return [{ at, length }];
  const message = `This comment does not say why ${quote(length.text)} is kept.`;
  return [{ at, length, fault: { at, severity: 'warning', message, fix: `Add the reason: ${example}.` } }];
}

/** One length for each edition, one after the other, are two ways to write one: 1/4 in (6 mm). */
function together(lengths: TypedLength[], text: string): [TypedLength, TypedLength?][] {
  const groups: [TypedLength, TypedLength?][] = [];
  for (const length of lengths) {
    const last = groups.at(-1);
    const between = last && text.slice(last[0].end, length.start);
    if (
      last &&
      last[1] === undefined &&
      last[0].edition !== length.edition &&
      /^\s*(\(|\/|or|,|\|)\s*$/.test(between!)
    ) {
      last[1] = length;
    } else groups.push([length]);
  }
  return groups;
}

function about(typed: [TypedLength, TypedLength?], prose: Prose, { variants: [own] }: WorkedOut): AtOffset {
  const [first, second] = typed;
  const end = (second ?? first).end + (second && prose.text[second.end] === ')' ? 1 : 0);
  const at = prose.start + first.start;
  const written = quote(prose.text.slice(first.start, end).replaceAll('\u2060', '').replace(/\s+/g, ' '));
  const sentence = sentenceAround(prose.text, first.start);
  const has = (measure: Measure) =>
    [first, second].every((length) => {
      const value = length && own[length.edition].measures[measure.name]?.value;
      return length === undefined || (value !== undefined && Math.abs(value - length.mm) <= SAME);
    });
  const lengths = Object.values(own[first.edition].measures).filter(({ dimension }) => dimension === 1);
  const named = lengths.map((measure) => ({ measure, shared: sharedWords(measure, sentence) }));
  const same = preferred(named.filter(({ measure }) => has(measure)));
  if (same.length > 0) {
    const most = same[0]!.shared;
    const likely = same.filter(({ shared }) => shared === most);
    const words = likely.slice(0, 3).map(({ measure }) => `<Size of="${measure.name}" />`);
    const beside = { before: prose.text.slice(0, first.start), after: prose.text.slice(end) };
    const certain = likely.length === 1 && prose.kind !== 'heading' && isNamedBeside(likely[0]!.measure, beside);
    return {
      at,
      severity: 'warning',
      message: `${written} is typed, so it stays when ${likely.length === 1 ? quote(likely[0]!.measure.name) : 'the project'} changes.`,
      fix: prose.kind === 'heading' ? 'Leave numbers out of headings.' : `Write ${words.join(' or ')}.`,
      ...(certain && { edit: { start: at, end: prose.start + end, text: words[0]! } }),
    };
  }
  const [near] = named
    .filter(({ measure, shared }) => shared > 0 && isNear(measure.value, first.mm))
    .toSorted((a, b) => b.shared - a.shared || off(a.measure, first) - off(b.measure, first));
  if (near) {
    const { name, value } = near.measure;
    const now = formatLength(value, first.edition, { grid: own[first.edition].grid });
    return {
      at,
      severity: 'warning',
      message: `${written} is typed, and ${quote(name)} is ${now}. It may be out of date.`,
      fix: `Write <Size of="${name}" />, or keep it with a reason: {/* keep ${first.text}: … */}`,
    };
  }
  return {
    at,
    severity: 'note',
    message: `${written} is typed, and no measure of the project has it.`,
    fix: `Name it in project.yaml, or keep it with a reason: {/* keep ${first.text}: … */}`,
  };
}

/** Words that may stand between a measure's name and its number. */
const JOINTS = new Set(['of', 'is', 'are', 'by', 'be', 'it', 'them']);

/**
 * Whether a measure's own words stand right beside a number, all of them and nothing between: a seam of 1/4 in, the
 * panel 5 in wide. A number that is only equal to it, such as a snap's, is another's.
 */
function isNamedBeside({ name, label }: Measure, { before, after }: { before: string; after: string }): boolean {
  const words = (text: string) => text.replaceAll('\u2060', '').match(/[\p{L}\p{N}]+|[^\s\p{L}\p{N}]/gu) ?? [];
  const plain = (word: string) => stem(SAME_MEANING[word.toLowerCase()] ?? word);
  const ahead = words(after.replace(/^\s*\)/, ''));
  const behind = words(before.replace(/\(\s*$/, '')).toReversed();
  const first = behind.findIndex((word) => !JOINTS.has(word.toLowerCase()));
  return [name, label].some((own) => {
    // A number in a name tells it from its neighbours, and nobody can tell it from the size.
    const wanted = new Set(wordsOf(own));
    if (wanted.size === 0 || /\d/.test(own)) return false;
    const run = (said: readonly string[]) => {
      const end = said.findIndex((word) => !wanted.has(plain(word)));
      return said.slice(0, end < 0 ? undefined : end).map(plain);
    };
    const near = new Set([...(first < 0 ? [] : run(behind.slice(first))), ...run(ahead)]);
    return near.size === wanted.size;
  });
}

const off = (measure: Measure, { mm }: TypedLength): number => Math.abs(measure.value - mm);

/** Within a tenth of it, or within about an eighth of an inch: what an old number is off by. */
const isNear = (value: number, mm: number): boolean => Math.abs(value - mm) <= Math.max(3.2, value / 10);

/** Measures the author named go before the numbers of pieces; those the sentence speaks of go first. */
function preferred(found: { measure: Measure; shared: number }[]): { measure: Measure; shared: number }[] {
  const named = found.filter(({ measure }) => measure.source === 'stated' || measure.source === 'derived');
  const spoken = found.filter(({ shared }) => shared > 0);
  const chosen = named.some(({ shared }) => shared > 0) || spoken.length === 0 ? named : spoken;
  return (chosen.length ? chosen : found).toSorted((a, b) => b.shared - a.shared);
}

function sentenceAround(text: string, at: number): string {
  const start = Math.max(0, ...[...text.slice(0, at).matchAll(/[.!?]\s/g)].map(({ index }) => index + 1));
  const end = /[.!?](\s|$)/.exec(text.slice(at));
  return text.slice(start, end ? at + end.index : undefined);
}

const SMALL = new Set([
  'the',
  'and',
  'from',
  'your',
  'how',
  'for',
  'each',
  'every',
  'with',
  'more',
  'much',
  'far',
  'its',
]);
const stem = (word: string): string => word.toLowerCase().replace(/(ies|es|s)$/, '');
const SAME_MEANING: Readonly<Record<string, string>> = {
  wide: 'width',
  high: 'height',
  tall: 'height',
  long: 'length',
  deep: 'depth',
};
const wordsOf = (text: string): string[] =>
  (text.match(/\p{L}{3,}/gu) ?? []).map((word) => SAME_MEANING[word.toLowerCase()] ?? word).map(stem);

/** How many words of a measure's name, or of its label, a sentence has. */
function sharedWords({ name, label }: Measure, sentence: string): number {
  const said = new Set(wordsOf(sentence));
  const count = (text: string) =>
    [...new Set(wordsOf(text))].filter((word) => !SMALL.has(word) && said.has(word)).length;
  return Math.max(count(name), count(label));
}
