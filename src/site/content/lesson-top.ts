import type { AtOffset } from './diagnostic.ts';

/** A lesson in two: the YAML between the two lines of ---, and the rest, in which the top is blanks of the same length. */
export type Top = { yaml: string | undefined; body: string; fault?: AtOffset };

/**
 * Takes the top of a lesson off in the way that the build does. Where the build would end it at another place, what is
 * checked would not be what is shown; then there is a fault.
 *
 * @param source the whole lesson
 */
export function topOf(source: string): Top {
  const top = /^\uFEFF?---[ \t]*(\r?\n([\s\S]*?\n)?)---[ \t]*(?=\r?\n|$)/.exec(source);
  if (!top) {
    const at = /^\s*(?:---|\+\+\+)/.exec(source)?.[0].length;
    if (at === undefined) return { yaml: undefined, body: source };
    const message = 'The top of a lesson begins in its first line and stands between two lines of ---.';
    const fix = 'Write --- alone on the first line, and again below the last line of the top.';
    return { yaml: undefined, body: source, fault: { at: at - 3, severity: 'error', message, fix } };
  }
  const [all, inner, yaml = ''] = top;
  const body = all.replace(/[^\r\n\uFEFF]/g, ' ') + source.slice(all.length);
  const early = /\n(?:---|\+\+\+)/.exec(inner!);
  if (!early) return { yaml, body };
  const at = all.indexOf('\n') - inner!.indexOf('\n') + early.index + 1;
  const message = 'A line of the top begins with --- or +++, which would end it there.';
  return { yaml, body, fault: { at, severity: 'error', message, fix: 'Put blanks before it, or leave it out.' } };
}
