import type { SaidLine } from './follow.ts';
import type { Chapter, Correction } from './view.ts';

/** Lines that are read together; `lines` are their numbers. */
export type Paragraph = {
  from: number;
  /** The steps that begin with it, by their numbers. */
  steps: number[];
  lines: number[];
  /** What is put right in it. */
  corrections: Correction[];
};

/** In seconds: a paragraph is about as long as this. */
const LONG = 30;

/** What is said, in paragraphs: one begins with each step, and after half a minute. */
export function paragraphsOf(
  lines: readonly Pick<SaidLine, 'from'>[],
  chapters: readonly Chapter[],
  corrections: readonly Correction[],
): Paragraph[] {
  const paragraphs: Paragraph[] = [];
  let next = 0;
  for (const [i, { from }] of lines.entries()) {
    const steps: number[] = [];
    while (chapters[next] && (chapters[next]!.from <= from + 0.5 || i === lines.length - 1)) steps.push(next++);
    const last = paragraphs.at(-1);
    if (last && steps.length === 0 && from - last.from < LONG) last.lines.push(i);
    else paragraphs.push({ from, steps, lines: [i], corrections: [] });
  }
  for (const correction of corrections)
    (paragraphs.findLast(({ from }) => from <= correction.at) ?? paragraphs[0])?.corrections.push(correction);
  return paragraphs;
}
