import { formatLength, quote, SAME } from '../../core/measure/index.ts';
import type { Measure } from '../../core/project/index.ts';
import { placeIn, type Diagnostic } from '../content/diagnostic.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';
import type { WorkedOut } from './project-problems.ts';
import type { Said } from './texts.ts';
import { aboutCount, countsIn, isSameCount, listsIn, type OwnList, type TypedCount } from './typed-counts.ts';
import { typedLengths } from './typed-lengths.ts';
import type { TypedLength } from './typed-lengths.ts';

/** A comment of a file: in a lesson between {/* and *\/}, in YAML behind #. */
type Comment = { text: string; place: { line: number; column: number } };

/** What is said of a number in a text; `start` and `end` count in that text. */
export type AboutNumber = Pick<Diagnostic, 'severity' | 'message' | 'fix'> & {
  start: number;
  end: number;
  /** What would stand there for certain. */
  by?: string;
};

/**
 * Numbers typed in the texts of a lesson that the project holds, nearly holds or does not hold: none of them follows
 * when the project changes. An author keeps one, with a reason, by a comment: `{/* keep 1/8 in: the mark on the foot *\/}`.
 */
export function typedNumbersInLesson(entry: LessonEntry, texts: readonly Said[], worked: WorkedOut): Diagnostic[] {
  const own = entry.lesson.comments.map(({ start, text }) => ({ text, place: placeIn(entry.text, start) }));
  const front = /^\uFEFF?---[ \t]*\r?\n[\s\S]*?^---[ \t]*$/mu.exec(entry.text)?.[0] ?? '';
  const comments = [...own, ...yamlComments(front)];
  return typedNumbers(entry.file, texts, comments, worked, inLesson, listsIn(entry.lesson.words));
}

/** The same for the texts of a YAML file, where the comment is `# keep 1/8 in: the mark on the foot`. */
export const typedNumbersInFile = (entry: Entry<unknown>, texts: readonly Said[], worked: WorkedOut): Diagnostic[] =>
  typedNumbers(entry.file, texts, yamlComments(entry.text), worked, inYaml, []);

/** How a comment is written that keeps a number. */
type Kept = (words: string, why: string) => string;
const inLesson: Kept = (words, why) => `{/* keep ${words}: ${why} */}`;
const inYaml: Kept = (words, why) => `# keep ${words}: ${why}`;

function yamlComments(text: string): Comment[] {
  return text.split('\n').flatMap((line, i): Comment[] => {
    const found = /(?:^|\s)#\s*(keep\b.*)$/u.exec(line);
    return found
      ? [{ text: found[1]!.trim(), place: { line: i + 1, column: line.indexOf('#', found.index) + 1 } }]
      : [];
  });
}

function typedNumbers(
  file: string,
  texts: readonly Said[],
  comments: readonly Comment[],
  worked: WorkedOut,
  kept: Kept,
  lists: readonly OwnList[],
): Diagnostic[] {
  const keeps = comments.flatMap((comment) => readKeep(comment, kept));
  const found: Diagnostic[] = keeps.flatMap(({ fault }) => (fault ? [{ file, ...fault }] : []));
  const used = new Set<Keep>();
  const isKept = (fits: (keep: Keep) => boolean): boolean => {
    const keep = keeps.find(fits);
    if (keep) used.add(keep);
    return keep !== undefined;
  };
  for (const said of texts) {
    const about: AboutNumber[] = [];
    for (const typed of together(typedLengths(said.text), said.text)) {
      if (!isKept(({ length }) => length !== undefined && typed.some((one) => one && isSame(one, length))))
        about.push(aboutLength(typed, said, worked, kept));
    }
    for (const count of countsIn(said.text)) {
      if (isKept((keep) => keep.count !== undefined && isSameCount(keep.count, count))) continue;
      const one = aboutCount(count, said, worked, lists, (why) => kept(count.text, why));
      if (one) about.push(one);
    }
    for (const { start, end, by, ...rest } of about) {
      const { offset } = said;
      found.push({
        file,
        ...said.place(start),
        ...rest,
        ...(by !== undefined && offset && { edit: { start: offset(start), end: offset(end), text: by } }),
      });
    }
  }
  for (const keep of keeps) {
    if (keep.fault || used.has(keep)) continue;
    const where = kept === inLesson ? 'the lesson' : 'the file';
    const message = `This keeps ${quote(keep.words)}, which ${where} no longer has.`;
    found.push({ file, ...keep.place, severity: 'note', message, fix: 'Take the comment away.' });
  }
  return found;
}

const isSame = (a: TypedLength, b: TypedLength): boolean => a.edition === b.edition && Math.abs(a.mm - b.mm) <= SAME;

type Keep = Pick<Comment, 'place'> & {
  /** What is kept, as it is written. */
  words: string;
  length?: TypedLength;
  count?: TypedCount;
  fault?: Omit<Diagnostic, 'file'>;
};

function readKeep({ text, place }: Comment, kept: Kept): Keep[] {
  const keep = /^keep\b\s*([^:]*)(?::\s*([\s\S]*))?$/.exec(text);
  if (!keep) return [];
  const example = kept('1/8 in', 'the mark on the foot');
  const [length] = typedLengths(keep[1]!);
  const [count] = countsIn(keep[1]!);
  if (!length && !count) {
    const message = 'This comment does not say which length to keep.';
    return [{ place, words: '', fault: { ...place, severity: 'warning', message, fix: `Write it like ${example}.` } }];
  }
  const words = (length ?? count)!.text;
  const said = { place, words, ...(length ? { length } : { count: count! }) };
  if (keep[2]?.trim()) return [said];
  const message = `This comment does not say why ${quote(words)} is kept.`;
  return [{ ...said, fault: { ...place, severity: 'warning', message, fix: `Add the reason: ${example}.` } }];
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

/** How a text says a measure: running text by a lesson word, the others in brackets. */
export function inText(name: string, { kind }: Said): string {
  return kind === 'prose' || kind === 'heading' ? `<Size of="${name}" />` : `[${name}]`;
}

function aboutLength(
  typed: [TypedLength, TypedLength?],
  said: Said,
  { variants: [own] }: WorkedOut,
  kept: Kept,
): AboutNumber {
  const { kind, text } = said;
  const [first, second] = typed;
  const end = (second ?? first).end + (second && text[second.end] === ')' ? 1 : 0);
  const { start } = first;
  const written = quote(text.slice(start, end).replaceAll('\u2060', '').replace(/\s+/g, ' '));
  const sentence = sentenceAround(text, start);
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
    const words = likely.slice(0, 3).map(({ measure }) => inText(measure.name, said));
    const beside = { before: text.slice(0, start), after: text.slice(end) };
    const certain = likely.length === 1 && kind !== 'heading' && isNamedBeside(likely[0]!.measure, beside);
    return {
      start,
      end,
      severity: 'warning',
      message: `${written} is typed, so it stays when ${likely.length === 1 ? quote(likely[0]!.measure.name) : 'the project'} changes.`,
      fix: kind === 'heading' ? 'Leave numbers out of headings.' : `Write ${words.join(' or ')}.`,
      ...(certain && { by: words[0]! }),
    };
  }
  const [near] = named
    .filter(({ measure, shared }) => shared > 0 && isNear(measure.value, first.mm))
    .toSorted((a, b) => b.shared - a.shared || off(a.measure, first) - off(b.measure, first));
  if (near) {
    const { name, value } = near.measure;
    const now = formatLength(value, first.edition, { grid: own[first.edition].grid });
    return {
      start,
      end,
      severity: 'warning',
      message: `${written} is typed, and ${quote(name)} is ${now}. It may be out of date.`,
      fix: `Write ${inText(name, said)}, or keep it with a reason: ${kept(first.text, '…')}`,
    };
  }
  return {
    start,
    end,
    severity: 'note',
    message: `${written} is typed, and no measure of the project has it.`,
    fix: `Name it in project.yaml, or keep it with a reason: ${kept(first.text, '…')}`,
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

export const SMALL = new Set([
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
export const stem = (word: string): string => word.toLowerCase().replace(/(ies|es|s)$/, '');
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
