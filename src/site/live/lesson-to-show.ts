import type { Problem } from '../problem.ts';
import { asSentence } from '../problem.ts';
import type { LessonEntry } from '../read-content.ts';

/**
 * The lesson that the live preview shows. Where a word or maths has a mistake, the mistake stands in its place and the
 * rest is as written. A lesson that cannot be read at all shows its last readable state, or else only what is wrong.
 *
 * @param mistakes the errors of this file
 * @param lastReadable what was shown before the lesson became unreadable
 */
export function lessonToShow(entry: LessonEntry, mistakes: readonly Problem[], lastReadable?: string): string {
  if (entry.lesson.faults.length > 0) {
    return lastReadable ?? `${frontMatter(entry.text)}\n${mistakes.map(marked).join('\n\n')}\n`;
  }
  let text = entry.text;
  let from = Infinity;
  // From the end backwards, so that offsets stay true; the outer of two parts stands for both.
  const placed = mistakes
    .filter((mistake) => mistake.part)
    .toSorted((a, b) => b.part!.end - a.part!.end || a.part!.start - b.part!.start);
  const parts = new Map<number, { end: number; mistakes: Problem[] }>();
  for (const mistake of placed) {
    const outer = [...parts].find(([start, { end }]) => start <= mistake.part!.start && mistake.part!.end <= end);
    if (outer) outer[1].mistakes.push(mistake);
    else parts.set(mistake.part!.start, { end: mistake.part!.end, mistakes: [mistake] });
  }
  for (const [start, part] of [...parts].toSorted(([a], [b]) => b - a)) {
    if (part.end > from) continue;
    text = text.slice(0, start) + part.mistakes.map(marked).join(' ') + text.slice(part.end);
    from = start;
  }
  return text;
}

const frontMatter = (text: string): string => /^\uFEFF?---[ \t]*\r?\n[\s\S]*?^---[ \t]*$/m.exec(text)?.[0] ?? '';

/** The words stand in braces as a quoted text, so that nothing in them is read as Markdown. */
const marked = (mistake: Problem): string =>
  `<mark data-mistake="">{${JSON.stringify(`${mistake.line}:${mistake.column} ${asSentence(mistake)}`)}}</mark>`;
