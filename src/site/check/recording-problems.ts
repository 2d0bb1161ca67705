import { clockTime, didYouMean, quote } from '../../core/measure/index.ts';
import { makeUp } from '../../core/project/index.ts';
import { compareSpoken, courseWords, mend } from '../../core/speech/index.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { Entry, RecordingEntry } from '../content/read-content.ts';
import type { CourseFile } from '../content/schemas.ts';
import { bracketProblems } from './bracket-problems.ts';
import { isWhole, type WorkedOut } from './project-problems.ts';
import { textsOfRecording } from './texts.ts';
import { typedNumbersInFile } from './typed-numbers.ts';

export type AroundRecording = {
  /** The folder name of its project. */
  named: string | undefined;
  worked: WorkedOut | undefined;
  projects: readonly string[];
};

/** What is wrong in what lies beside a recording, and what is said in it that the project says otherwise. */
export function recordingProblems(
  recording: RecordingEntry,
  course: Entry<CourseFile> | undefined,
  { named, worked, projects }: AroundRecording,
): Diagnostic[] {
  const { settings } = recording;
  const problems = worked ? saidOtherwise(recording, course?.value, worked) : [];
  if (!settings?.value) return problems;
  const { project } = settings.value;
  if (project !== undefined && !projects.includes(project)) {
    problems.push({
      file: settings.file,
      ...settings.locate(['project']),
      severity: 'error',
      message: `There is no project ${quote(project)}.`,
      fix: didYouMean(project, projects),
    });
  }
  const texts = textsOfRecording(recording);
  problems.push(...bracketProblems(settings.file, texts, { project: named, worked, projects }));
  if (worked) problems.push(...typedNumbersInFile(settings, texts, worked));
  return problems;
}

/**
 * What is said and does not agree with the project, each at its place in the file. What the author has put right in a
 * correction is told to readers already.
 */
function saidOtherwise(
  { said, settings }: RecordingEntry,
  ofCourse: CourseFile | undefined,
  worked: WorkedOut,
): Diagnostic[] {
  const lines = said.value;
  // What cannot be worked out has its own mistakes.
  if (!lines || !isWhole(worked)) return [];
  const [patterns] = worked.variants;
  const mended = mend(lines, { ...ofCourse?.misheard, ...settings?.value?.misheard });
  const corrected = (settings?.value?.corrections ?? []).map(({ at }) => at);
  const found = compareSpoken({
    lines: mended,
    patterns,
    steps: { inch: makeUp(patterns.inch), metric: makeUp(patterns.metric) },
    words: courseWords(patterns[patterns.inch.home]),
  });
  const written = said.text.split(/\r\n|\r|\n/);
  return found
    .filter(({ from, to }) => !corrected.some((second) => second >= from - 5 && second <= to + 10))
    .map(({ severity, code, message, fix, from, text, at }): Diagnostic => {
      const spokenLine = at ? lines[at.line] : lines.findLast((one) => one.from <= from);
      const line = spokenLine?.line ?? 1;
      const begin = at && mended[at.line]!.text.slice(at.start).split(' ', 1)[0]!;
      const inLine = written[line - 1] ?? '';
      const column = Math.max(0, inLine.indexOf(text), begin ? inLine.indexOf(begin) : 0) + 1;
      return {
        file: said.file,
        line,
        column,
        severity,
        code,
        message: `At ${clockTime(from)}: ${message}`,
        ...(fix && { fix }),
      };
    });
}
