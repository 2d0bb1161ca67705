import type { Diagnostic } from '../content/diagnostic.ts';
import { programsIn } from '../check/programs-in.ts';
import { asSentence, isError } from '../content/diagnostic.ts';
import { topOf } from '../content/lesson-top.ts';
import type { LessonEntry } from '../content/read-content.ts';

/**
 * The lesson that the live preview shows. Where a word or maths has a mistake, the mistake stands in its place and the
 * rest is as written; what else is found stands at the end of its paragraph. A lesson that cannot be read at all shows
 * its last readable state, or else only what is wrong; so does one that with its marks would be more than a text.
 *
 * @param problems all that was found in this file
 * @param lastReadable what was shown before the lesson became unreadable
 */
export function lessonToShow(entry: LessonEntry, problems: readonly Diagnostic[], lastReadable?: string): string {
  const onlyMistakes = () => `${frontOf(entry.text)}\n${problems.filter(isError).map(marked).join('\n\n')}\n`;
  if (entry.lesson.faults.length > 0) return lastReadable ?? onlyMistakes();
  const parts = partsOf(problems);
  const beside = problems
    .filter((problem) => !problem.part)
    .flatMap((problem) => besidePlace(entry, problem))
    .filter(({ start }) => !parts.some((part) => part.start < start && start < part.end));
  // From the end backwards, so that offsets stay true; of two at one place the one that comes first stands first.
  const changes = [...parts, ...beside].toSorted((a, b) => a.start - b.start).toReversed();
  const shown = changes.reduce((text, { start, end, by }) => text.slice(0, start) + by + text.slice(end), entry.text);
  return programsIn(shown).length === 0 ? shown : (lastReadable ?? onlyMistakes());
}

type Change = { start: number; end: number; by: string };

/** What cannot be shown, with its mistakes in its place; the outer of two parts stands for both. */
function partsOf(problems: readonly Diagnostic[]): Change[] {
  const placed = problems
    .filter((problem) => problem.part)
    .toSorted((a, b) => a.part!.start - b.part!.start || b.part!.end - a.part!.end);
  const parts: { start: number; end: number; mistakes: Diagnostic[] }[] = [];
  for (const mistake of placed) {
    const { start, end } = mistake.part!;
    const outer = parts.find((part) => part.start <= start && end <= part.end);
    if (outer) outer.mistakes.push(mistake);
    else parts.push({ start, end, mistakes: [mistake] });
  }
  return parts.map(({ start, end, mistakes }) => ({ start, end, by: mistakes.map(marked).join(' ') }));
}

/** A remark on running text stands at the end of its paragraph, one on a lesson word before the word. */
function besidePlace({ text, lesson }: LessonEntry, problem: Diagnostic): Change[] {
  const at = offsetOf(text, problem);
  const word = lesson.words.find(({ part }) => part.start <= at && at < part.end);
  const prose = lesson.prose.find(({ start, text }) => start <= at && at < start + text.length);
  // A heading gets none, since its words make its address; what stands inside a word's text belongs to that text.
  if (prose && !(word && prose.start <= word.part.start)) {
    // A cell ends before the stroke that closes it.
    const running = prose.kind === 'cell' ? prose.text.replace(/[\s\u2060]+$/u, '') : prose.text;
    const end = prose.start + running.length;
    return [{ start: end, end, by: prose.kind === 'heading' ? `\n\n${marked(problem)}\n` : ` ${marked(problem)}` }];
  }
  const startsLine = word && (word.part.start === 0 || text[word.part.start - 1] === '\n');
  return startsLine ? [{ start: word.part.start, end: word.part.start, by: `${marked(problem)}\n\n` }] : [];
}

function offsetOf(text: string, { line, column }: Diagnostic): number {
  let start = 0;
  for (let n = 1; n < line; n += 1) start = text.indexOf('\n', start) + 1;
  return start + column - 1;
}

/** The top of a lesson, unless it is one that the build would read in another way. */
function frontOf(text: string): string {
  const { yaml, fault } = topOf(text);
  return yaml === undefined || fault ? '' : `---\n${yaml}---`;
}

/** The words stand in braces as a quoted text, so that nothing in them is read as Markdown; nor as the end of a cell. */
const marked = (mistake: Diagnostic): string =>
  `<mark data-mistake="${isError(mistake) ? '' : mistake.severity}">{${JSON.stringify(`${mistake.line}:${mistake.column} ${asSentence(mistake)}`).replaceAll('|', '\\u007c')}}</mark>`;
