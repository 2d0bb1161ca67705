/** A mistake in a file an instructor wrote, with the place to mend it. */
export type Problem = {
  /** Path from the project's root, with forward slashes: `content/projects/folio/project.yaml`. */
  file: string;
  /** Counted from 1. */
  line: number;
  /** Counted from 1, in UTF-16 units, as editors count. */
  column: number;
  /** An error fails the build; a warning and a note do not. */
  severity: 'error' | 'warning' | 'note';
  /** What is wrong and what was expected, in the trade's words. */
  message: string;
  /** The likeliest mend: `Did you mean “seam”?` */
  mend?: string | undefined;
  /** In a lesson: the word, maths or picture that cannot be shown because of it, as offsets into the file's text. */
  part?: { start: number; end: number };
  /** A mend that is certain, as offsets into the file's text: `npm run check -- --fix` puts it in. */
  fix?: { start: number; end: number; text: string } | undefined;
};

/** A problem of one text, at an offset of it. */
export type Said = Pick<Problem, 'severity' | 'message' | 'mend' | 'fix'> & { at: number };

/** Line and column of an offset. */
export function placeIn(text: string, at: number): { line: number; column: number } {
  const before = text.slice(0, at);
  return { line: before.split('\n').length, column: at - before.lastIndexOf('\n') };
}

/** Files by name; inside a file from top to bottom. Works on a copy. */
export function inReadingOrder(problems: readonly Problem[]): Problem[] {
  return problems.toSorted(
    (a, b) =>
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      a.line - b.line ||
      a.column - b.column ||
      (a.message < b.message ? -1 : 1),
  );
}

export const isError = (problem: Problem): boolean => problem.severity === 'error';

/**
 * One line for a terminal or a log.
 *
 * @example
 * asLine({ file: 'content/site.yaml', line: 2, column: 1, severity: 'error', message: '“nam” is not known here.', mend: 'Did you mean “name”?' })
 * // => 'content/site.yaml:2:1 “nam” is not known here. Did you mean “name”?'
 */
export function asLine(problem: Problem): string {
  return `${problem.file}:${problem.line}:${problem.column} ${asSentence(problem)}`;
}

/** The message and its mend, without the place. */
export function asSentence(problem: Problem): string {
  return problem.mend ? `${problem.message} ${problem.mend}` : problem.message;
}

/** What a reader calls each severity. */
export const WORD = { error: 'mistake', warning: 'warning', note: 'note' } as const;

/**
 * How many problems of each kind there are, in a sentence.
 *
 * @example counted([]) // => 'No mistakes found.'
 */
export function counted(problems: readonly Problem[]): string {
  const kinds = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const n = problems.filter((problem) => problem.severity === severity).length;
    return n ? [`${n} ${WORD[severity]}${n === 1 ? '' : 's'}`] : [];
  });
  if (kinds.length === 0) return 'No mistakes found.';
  const files = new Set(problems.map(({ file }) => file)).size;
  const list = kinds.length > 1 ? `${kinds.slice(0, -1).join(', ')} and ${kinds.at(-1)}` : kinds[0];
  return `${list} in ${files} ${files === 1 ? 'file' : 'files'}.`;
}
