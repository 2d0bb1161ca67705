/** What a recording shows at a project: its words, its sizes and the steps in it. Worked out while a page is built. */
import {
  alignSteps,
  bracketsIn,
  courseWords,
  editionSpoken,
  makeUp,
  resolveProject,
  spokenSizes,
  type Edition,
  type Materials,
  type Pattern,
  type ProjectFile,
  type SpokenLine,
  type Step,
} from '../../../src/core/index.ts';
import type { SaidLine, SaidSize } from './follow.ts';

/**
 * A step as the recording tells it; seconds. `sure` from 0 to 1. A step that is told twice is there twice. `says` is its
 * title as the author wrote it, where sizes in it follow the learner.
 */
export type Chapter = { step: string; title: string; says?: string; from: number; to: number; sure: number };

/** A correction: at which second, and what is right; sizes in square brackets. */
export type Correction = { at: number; note: string };

/** A recording as it lies beside its course. */
export type RecordingFiles = {
  course: string;
  name: string;
  title?: string | undefined;
  /** With what was misheard mended. */
  lines: readonly SpokenLine[];
  /** Where the site has it, and the kind of file: `video/webm`. */
  media?: { url: string; type: string } | undefined;
  poster?: string | undefined;
  /** Where it is published, and the same with `{second}` in it. */
  address?: string | undefined;
  addressAt?: string | undefined;
  corrections: readonly Correction[];
};

/** What is shown of it; the same for a page, its captions and print. */
export type RecordingView = { lines: SaidLine[]; chapters: Chapter[] };

/** The same on a page, which asks for its view in several places. */
export type RecordingOnPage = RecordingFiles & { view: () => RecordingView };

/** Works something out when it is asked for the first time. */
export function once<T>(make: () => T): () => T {
  let made: { value: T } | undefined;
  return () => (made ??= { value: make() }).value;
}

/** The stretch of a step in a recording that the lesson shows, with the number of its chapter. */
export function stretchOf(
  step: string,
  { words, recordings = [] }: Pick<App.Locals, 'words' | 'recordings'>,
): { recording: RecordingFiles; index: number; chapter: Chapter } | undefined {
  const shown = (words?.() ?? []).flatMap(({ word, given }) => (word === 'Recording' ? [given['name']] : []));
  for (const recording of recordings) {
    if (!shown.includes(recording.name)) continue;
    const { chapters } = recording.view();
    const index = chapters.findIndex((chapter) => chapter.step === step);
    if (index >= 0) return { recording, index, chapter: chapters[index]! };
  }
  return undefined;
}

/** A project in both editions, at the lesson's own size. */
export const inEditions = (file: ProjectFile, materials: Materials): Record<Edition, Pattern> => ({
  inch: resolveProject(file, { edition: 'inch', materials }),
  metric: resolveProject(file, { edition: 'metric', materials }),
});

/** Steps that are less sure than this are not shown to learners. */
export const SURE_ENOUGH = 0.35;

/**
 * The words of a recording with the sizes that are measures of the project, and the steps in the order they are told.
 *
 * @param recording with what was misheard mended already
 */
export function recordingView(
  { lines }: Pick<RecordingFiles, 'lines'>,
  { file, materials, edition }: { file: ProjectFile; materials: Materials; edition: Edition },
): RecordingView {
  const patterns = inEditions(file, materials);
  const said: SaidLine[] = lines.map(({ from, to, text }) => ({ from, to, text }));
  for (const { at, values, measures, edition: spoken, certain } of spokenSizes(lines, patterns)) {
    const line = said[at.endLine];
    if (!certain || !line || measures.every((measure) => measure === undefined)) continue;
    const size: SaidSize = {
      start: at.endLine === at.line ? at.start : 0,
      end: at.end,
      values,
      of: measures.map((measure) => measure?.formula ?? null),
      edition: spoken,
    };
    (line.sizes ??= []).push(size);
  }
  const steps = makeUp(patterns[edition]);
  const titles = new Map(steps.map((step) => [step.id, titleOf(step, file)]));
  // Numbers tell which step is spoken of: those of the edition that is spoken.
  const spoken = editionSpoken(lines.map(({ text }) => text).join(' '), edition);
  const told = spoken === edition ? steps : makeUp(patterns[spoken]);
  const chapters = alignSteps(lines, told, courseWords(patterns[edition]))
    .filter(({ sure }) => sure >= SURE_ENOUGH)
    .map(({ step, from, to, sure }) => ({ step, ...(titles.get(step) ?? { title: step }), from, to, sure }))
    .toSorted((a, b) => a.from - b.from);
  return { lines: said, chapters };
}

/** The title of a step, and what the author wrote of it where it has sizes. */
function titleOf({ title, place }: Step, { steps }: ProjectFile): Pick<Chapter, 'title' | 'says'> {
  const { says } = (steps?.[Number(place[1])] ?? {}) as { says?: unknown };
  return { title, ...(typeof says === 'string' && bracketsIn(says).length > 0 && { says }) };
}
