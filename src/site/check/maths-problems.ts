/** Maths written between single dollar signs, which stay as they are. */
import { quote } from '../../core/measure/index.ts';
import type { LessonEntry } from '../content/read-content.ts';
import type { AtOffset } from '../content/diagnostic.ts';

/** Two dollar signs that hug what stands between them, as they never do in “$5 to $10”. */
const HUGGED = /(?<![$\\])\$(?![\s\d$])([^$\n]{1,80}?)(?<!\s)\$(?![\d$])/gu;

/** One dollar sign is a price. Who meant maths is told how it is written. */
export function mathsProblems({ lesson }: LessonEntry): AtOffset[] {
  return lesson.prose.flatMap(({ text, start }) =>
    [...text.matchAll(HUGGED)].map(({ 0: written, 1: tex = '', index }): AtOffset => {
      const message = `${quote(written)} stays as it is written: one dollar sign is a price.`;
      return { at: start + index, severity: 'warning', message, fix: `Write maths between two: $$${tex}$$.` };
    }),
  );
}
