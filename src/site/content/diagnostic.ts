import type * as core from '../../core/measure/index.ts';

/** Something wrong in a file that an instructor wrote. */
export type Diagnostic = core.Diagnostic<{
  /** Path from the project's root, with forward slashes: `content/projects/folio/project.yaml`. */
  file: string;
  /** Counted from 1. */
  line: number;
  /** Counted from 1, in UTF-16 units, as editors count. */
  column: number;
  /** In a lesson: the word, maths or picture that cannot be shown because of it, as offsets into the file's text. */
  part?: { start: number; end: number };
  /** A fix that is certain, as offsets into the file's text: `npm run check -- --fix` puts it in. */
  edit?: Edit | undefined;
}>;

type Edit = { start: number; end: number; text: string };

/** Something wrong in one text, at an offset of it. */
export type AtOffset = core.Diagnostic<{ at: number; edit?: Edit | undefined }>;

/** Line and column of an offset. */
export function placeIn(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at);
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n') };
}

/** Files by name; inside a file from top to bottom. Works on a copy. */
export function inReadingOrder(problems: readonly Diagnostic[]): Diagnostic[] {
  return problems.toSorted(
    (a, b) =>
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      a.line - b.line ||
      a.column - b.column ||
      (a.message < b.message ? -1 : 1),
  );
}

export const isError = (problem: Diagnostic): boolean => problem.severity === 'error';

/** The message and its fix, without the place. */
export function asSentence(problem: Diagnostic): string {
  return problem.fix ? `${problem.message} ${problem.fix}` : problem.message;
}

/** What a reader calls each severity. */
export const WORD = { error: 'mistake', warning: 'warning', note: 'note' } as const;

/**
 * How many problems of each kind there are, in a sentence.
 *
 * @example counted([]) // => 'No mistakes found.'
 */
export function counted(problems: readonly Diagnostic[]): string {
  const kinds = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const n = problems.filter((problem) => problem.severity === severity).length;
    return n ? [`${n} ${WORD[severity]}${n === 1 ? '' : 's'}`] : [];
  });
  if (kinds.length === 0) return 'No mistakes found.';
  const files = new Set(problems.map(({ file }) => file)).size;
  const list = kinds.length > 1 ? `${kinds.slice(0, -1).join(', ')} and ${kinds.at(-1)}` : kinds[0];
  return `${list} in ${files} ${files === 1 ? 'file' : 'files'}.`;
}
