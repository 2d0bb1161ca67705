/** A recording with what its course and its project know of it: for pages, print and the commands. */
import { recordingView, type RecordingFiles, type RecordingView } from '../../../components/words/recording/view.ts';
import { mend, type SpokenLine } from '../../core/speech/index.ts';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { PLAYED } from '../content/recordings/files.ts';
import type { Content, RecordingEntry } from '../content/read-content.ts';
import type { CourseFile, RecordingFile } from '../content/schemas.ts';

/** Where the files of recordings lie in a built site, from its root. */
export const FOLDER = 'recordings';

/** A recording with its words mended, and the folder name of its project. */
export type Recorded = RecordingFiles & { projectId: string | undefined };

/** What was read of a recording: its lines, its settings, and the paths of its files from the root. */
export type ReadRecording = Pick<RecordingEntry, 'course' | 'name' | 'media' | 'poster'> & {
  lines: readonly SpokenLine[];
  settings?: RecordingFile | undefined;
};

/**
 * A recording with what was misheard mended.
 *
 * @param ofCourse what course.yaml says
 * @param address of a file of the site, from its root: the base goes before it
 */
export function recorded(
  { course, name, lines, settings, media, poster }: ReadRecording,
  ofCourse: Pick<CourseFile, 'project' | 'misheard'> | undefined,
  address: (url: string) => string = (url) => url,
): Recorded {
  const at = (file: string) => address(`/${fileInSite(course, name, file)}`);
  const ending = media?.split('.').at(-1)?.toLowerCase() ?? '';
  return {
    ...{ course, name, title: settings?.title, projectId: settings?.project ?? ofCourse?.project },
    lines: mend(lines, { ...ofCourse?.misheard, ...settings?.misheard }),
    media: media === undefined ? undefined : { url: at(media), type: PLAYED[ending] ?? '' },
    poster: poster === undefined ? undefined : at(poster),
    address: settings?.address,
    addressAt: settings?.['address at a second'],
    corrections: settings?.corrections ?? [],
  };
}

/** The same from the content folder; undefined where one of its files has a mistake. */
export function recordedFrom(
  { said, settings, ...entry }: RecordingEntry,
  ofCourse: Pick<CourseFile, 'project' | 'misheard'> | undefined,
): Recorded | undefined {
  if (!said.value || (settings && !settings.value)) return undefined;
  return recorded({ ...entry, lines: said.value, settings: settings?.value }, ofCourse);
}

/** Where a file of a recording lies in the built site: `recordings/pocket-folio/whole/whole.webm`. */
export const fileInSite = (course: string, name: string, file: string): string =>
  `${FOLDER}/${course}/${name}/${file.split('/').at(-1)!}`;

/** Every recording that can be read, with its project. */
export function recordedIn(
  { recordings, courses, projects, materials }: Content,
  course?: string,
): { recording: Recorded; project: { file: ProjectFile; materials: MaterialsFile } | undefined }[] {
  return recordings
    .filter((one) => course === undefined || one.course === course)
    .flatMap((entry) => {
      const recording = recordedFrom(entry, courses.find(({ id }) => id === entry.course)?.value);
      if (!recording) return [];
      const file = projects.find(({ id }) => id === recording.projectId)?.value;
      return [{ recording, project: file && { file, materials: materials.value ?? {} } }];
    });
}

/** What is shown of a recording; without a project its words alone. */
export const viewOf = (
  recording: RecordingFiles,
  project: { file: ProjectFile; materials: MaterialsFile } | undefined,
  edition: 'inch' | 'metric',
): RecordingView =>
  project
    ? recordingView(recording, { ...project, edition })
    : { lines: recording.lines.map(({ from, to, text }) => ({ from, to, text })), chapters: [] };
