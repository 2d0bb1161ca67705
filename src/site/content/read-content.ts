import { isUtf8 } from 'node:buffer';
import { existsSync, readdirSync, readFileSync, type Dirent } from 'node:fs';
import path from 'node:path';
import { z } from 'zod';
import { closest } from '../../core/measure/index.ts';
import { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { readLesson } from './lesson-text.ts';
import type { LessonText } from './lesson-text.ts';
import { topOf } from './lesson-top.ts';
import { readYaml } from './located-yaml.ts';
import type { ReadYaml } from './located-yaml.ts';
import { isAddress, noAddress } from './addresses.ts';
import { isError, placeIn, type Diagnostic } from './diagnostic.ts';
import { CourseFile, GlossaryFile, LessonFront, RecordingFile, SiteFile } from './schemas.ts';
import { recordingsIn, type RecordingFiles } from './recordings/files.ts';
import { readTimedText, type Kind, type TimedLine } from './recordings/timed-text.ts';
import { topEntries } from './yaml-top.ts';

/** One file of the content folder as read: its value where it has no mistake of its own. */
export type Entry<T> = {
  /** Path from the root with forward slashes. */
  file: string;
  /** What addresses and other files call it. */
  id: string;
  text: string;
  value?: T;
  /** Mistakes of the file by itself; what it says about other files is checked later. */
  problems: Diagnostic[];
  locate: ReadYaml<T>['locate'];
};

export type LessonEntry = Entry<LessonFront> & {
  course: string;
  slug: string;
  fileName: string;
  lesson: LessonText;
};

/** What a list shows of a project. */
export type ProjectTop = Pick<ProjectFile, 'title' | 'summary'>;

/** What is said in a recording, and what lies beside it. */
export type RecordingEntry = {
  course: string;
  name: string;
  said: Entry<readonly TimedLine[]>;
  settings: Entry<RecordingFile> | undefined;
  /** The recording itself and a picture of it, as paths from the root. */
  media: string | undefined;
  poster: string | undefined;
};

/** The whole content folder. */
export type Content = {
  site: Entry<SiteFile>;
  materials: Entry<MaterialsFile>;
  glossary: Entry<GlossaryFile>;
  projects: Entry<ProjectFile>[];
  courses: Entry<CourseFile>[];
  lessons: LessonEntry[];
  recordings: RecordingEntry[];
  /** What is wrong with the folder itself: files that nothing reads, names that make no address. */
  problems: Diagnostic[];
};

/** Every file of the folder, in no order that matters. */
export function allEntries({
  site,
  materials,
  glossary,
  projects,
  courses,
  lessons,
  recordings,
}: Content): (Entry<unknown> | LessonEntry)[] {
  const recorded = recordings.flatMap(({ said, settings }) => (settings ? [said, settings] : [said]));
  return [site, materials, glossary, ...projects, ...courses, ...lessons, ...recorded];
}

const FOLDER = 'content';

/**
 * The files of a content folder, each read when it is asked for. One that did not change since it was read before is the
 * same entry. Never throws for what an instructor wrote.
 */
export class ContentFiles {
  readonly #root: string;
  readonly #known: ReadonlyMap<string, Entry<unknown>>;

  /**
   * @param root folder of the project, the one that holds `content/`
   * @param known entries of an earlier reading, by their files
   */
  constructor(root: string, known: ReadonlyMap<string, Entry<unknown>> = new Map()) {
    this.#root = root;
    this.#known = known;
  }

  /** The folder names of the projects. */
  projects = (): string[] => this.#folders(`${FOLDER}/projects`);

  /** The folder names of the courses. */
  courses = (): string[] => this.#folders(`${FOLDER}/courses`);

  /** The names of the lesson files in a course's folder. */
  lessonsIn(course: string): string[] {
    return listing(this.#root, `${FOLDER}/courses/${course}`)
      .map(({ name }) => name)
      .filter((name) => name.endsWith('.mdx'));
  }

  site = () => this.#yaml(`${FOLDER}/site.yaml`, SiteFile, 'site', 'needed');
  materials = () => this.#yaml(`${FOLDER}/materials.yaml`, MaterialsFile, 'materials', 'fine');
  glossary = () => this.#yaml(`${FOLDER}/glossary.yaml`, GlossaryFile, 'glossary', 'fine');
  project = (id: string) => this.#yaml(`${FOLDER}/projects/${id}/project.yaml`, ProjectFile, id, 'needed');
  course = (id: string) => this.#yaml(`${FOLDER}/courses/${id}/course.yaml`, CourseFile, id, 'needed');

  /** The title and the summary of a project, the rest of its file unread; undefined where that does not tell the title. */
  projectTop(id: string): ProjectTop | undefined {
    const file = path.join(this.#root, FOLDER, 'projects', id, 'project.yaml');
    const { title, summary } = existsSync(file) ? topEntries(readFileSync(file, 'utf8'), ['title', 'summary']) : {};
    if (typeof title !== 'string' || title.trim() === '') return undefined;
    return { title, ...(typeof summary === 'string' && { summary }) };
  }

  /** A lesson that `lessonsIn` names. */
  lesson(course: string, name: string): LessonEntry {
    const file = `${FOLDER}/courses/${course}/${name}`;
    return this.#read(file, (text) => lessonFrom(file, course, name, text));
  }

  /** The recordings of a course, and what is wrong with their folder. */
  recordingsOf(course: string): { recordings: RecordingEntry[]; problems: Diagnostic[] } {
    const folder = `${FOLDER}/courses/${course}/recordings`;
    const { recordings, problems } = recordingsIn(folder, namesIn(listing(this.#root, folder)));
    return { recordings: recordings.map((files) => this.#recording(course, files)), problems };
  }

  #recording(course: string, { name, said, kind, settings, media, poster }: RecordingFiles): RecordingEntry {
    const id = `${course}/${name}`;
    return {
      ...{ course, name, media, poster },
      said: this.#read(said, (text) => saidIn(said, id, kind, text)),
      settings: settings === undefined ? undefined : this.#yaml(settings, RecordingFile, id, 'fine'),
    };
  }

  #yaml<S extends z.ZodType>(file: string, schema: S, id: string, missing: 'needed' | 'fine'): Entry<z.output<S>> {
    if (existsSync(path.join(this.#root, file)))
      return this.#read(file, (text) => ({ file, id, text, ...readYaml(text, schema, file) }));
    return {
      file,
      id,
      text: '',
      problems:
        missing === 'fine' ? [] : [{ file, line: 1, column: 1, severity: 'error', message: 'This file is missing.' }],
      locate: () => ({ line: 1, column: 1 }),
    };
  }

  #read<E extends Entry<unknown>>(file: string, make: (text: string) => E): E {
    const bytes = readFileSync(path.join(this.#root, file));
    const text = bytes.toString('utf8');
    const earlier = this.#known.get(file);
    // A file that was missing had no text either.
    if (text !== '' && earlier?.text === text) return earlier as E;
    const entry = make(text);
    if (!isUtf8(bytes)) entry.problems = [notUtf8(file, bytes, text)];
    return entry;
  }

  #folders(folder: string): string[] {
    return listing(this.#root, folder)
      .filter((entry) => entry.isDirectory())
      .map(({ name }) => name);
  }
}

/**
 * Reads every file below `content/`. Never throws for what an instructor wrote.
 *
 * @param root folder of the project, the one that holds `content/`
 * @param before an earlier reading of the folder: a file that did not change since is the same entry
 */
export function readContent(root: string, before?: Content): Content {
  const files = new ContentFiles(root, new Map(before && allEntries(before).map((entry) => [entry.file, entry])));
  const [projects, courses] = [files.projects(), files.courses()];
  const recorded = courses.map((course) => files.recordingsOf(course));
  const content: Content = {
    site: files.site(),
    materials: files.materials(),
    glossary: files.glossary(),
    projects: projects.map(files.project),
    courses: courses.map(files.course),
    lessons: courses.flatMap((course) => files.lessonsIn(course).map((name) => files.lesson(course, name))),
    recordings: recorded.flatMap(({ recordings }) => recordings),
    problems: [
      ...courses.map((name) => `${FOLDER}/courses/${name}`),
      ...projects.map((name) => `${FOLDER}/projects/${name}`),
    ]
      .filter((folder) => !isAddress(path.posix.basename(folder)))
      .map(noAddress),
  };
  const { problems } = content;
  problems.push(...recorded.flatMap((one) => one.problems));
  for (const { file, slug } of content.lessons) if (!isAddress(slug)) problems.push(noAddress(file));
  problems.push(...unreadFiles(root, content));
  return content;
}

/** As much of a content folder as one course is made from. */
export function readCourse(root: string, course: string): Content {
  const files = new ContentFiles(root);
  const isThere = files.courses().includes(course);
  const courses = isThere ? [files.course(course)] : [];
  const lessons = isThere ? files.lessonsIn(course).map((name) => files.lesson(course, name)) : [];
  const { recordings } = isThere ? files.recordingsOf(course) : { recordings: [] };
  const settings = recordings.map((recording) => recording.settings);
  const used = new Set([...courses, ...lessons, ...settings].map((entry) => entry?.value?.project));
  return {
    site: files.site(),
    materials: files.materials(),
    glossary: files.glossary(),
    projects: files
      .projects()
      .filter((id) => used.has(id))
      .map(files.project),
    courses,
    lessons,
    recordings,
    problems: [],
  };
}

function listing(root: string, folder: string) {
  const full = path.join(root, folder);
  if (!existsSync(full)) return [];
  return readdirSync(full, { withFileTypes: true })
    .filter((entry) => !/^[._]/.test(entry.name))
    .toSorted((a, b) => (a.name < b.name ? -1 : 1));
}

const namesIn = (entries: readonly Dirent[]): string[] => entries.filter((one) => one.isFile()).map(({ name }) => name);

function saidIn(file: string, id: string, kind: Kind, text: string): Entry<readonly TimedLine[]> {
  const { lines, problems } = readTimedText(text, kind, file);
  return {
    ...{ file, id, text, problems },
    ...(!problems.some(isError) && { value: lines }),
    locate: () => ({ line: 1, column: 1 }),
  };
}

/** A file of an older text program: its letters with marks, and all of them in UTF-16, would be lost. */
function notUtf8(file: string, bytes: Buffer, text: string): Diagnostic {
  const isWide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  const what = isWide ? 'The letters of this file' : 'This letter';
  return {
    ...{ file, ...placeIn(text, isWide ? 0 : Math.max(0, text.indexOf('\ufffd'))), severity: 'error' },
    message: `${what} cannot be read: the file is not saved as UTF-8.`,
    fix: 'Open it in your editor, choose “Save as”, and the encoding UTF-8.',
  };
}

/** Last part of a lesson's address: its file name without its number and ending. */
export const slugOf = (fileName: string): string => fileName.replace(/^\d+[-_ ]*/, '').replace(/\.mdx$/, '');

function lessonFrom(file: string, course: string, fileName: string, text: string): LessonEntry {
  const slug = slugOf(fileName);
  const { yaml, fault } = topOf(text);
  let lesson: LessonText | undefined;
  const read: ReadYaml<LessonFront> =
    yaml !== undefined
      ? readYaml(yaml, LessonFront, file, 2)
      : {
          // A top that stands at a wrong place is a fault of the lesson.
          problems: fault
            ? []
            : [
                {
                  file,
                  line: 1,
                  column: 1,
                  severity: 'error',
                  message: 'A lesson starts with its title, summary and minutes between two lines of ---.',
                  fix: /^\s*[–—-]/u.test(text)
                    ? 'Type three hyphens: a text program makes one long dash of them.'
                    : undefined,
                },
              ],
          locate: () => ({ line: 1, column: 1 }),
        };
  return {
    ...{ file, id: `${course}/${slug}`, course, slug, fileName, text, ...read },
    // Who puts a lesson on a shelf needs no more than what stands at its top.
    get lesson() {
      return (lesson ??= readLesson(text));
    },
  };
}

/** A file that looks like content but lies where nothing reads it: most often a slip in its name. */
function unreadFiles(root: string, content: Content): Diagnostic[] {
  const read = new Set(allEntries(content).map(({ file }) => file));
  const found: string[] = [];
  const look = (folder: string) => {
    for (const entry of listing(root, folder)) {
      if (entry.isDirectory()) look(`${folder}/${entry.name}`);
      else if (/\.(ya?ml|mdx?|vtt|srt)(\.(txt|rtf|docx?|odt))?$/i.test(entry.name))
        found.push(`${folder}/${entry.name}`);
    }
  };
  look(FOLDER);
  // Of two timed texts beside each other it has been told already which one is read.
  const isTold = (file: string) => /\/recordings\/[^/]+\.(vtt|srt)$/i.test(file);
  return found
    .filter((file) => !read.has(file) && !isTold(file))
    .map((file) => {
      if (/\.(vtt|srt)$/i.test(file)) {
        const fix = 'What is said in a recording lies in the folder recordings of its course.';
        return { file, line: 1, column: 1, severity: 'warning', message: 'Nothing reads this file.', fix };
      }
      const hidden = /^(.*\.(?:ya?ml|mdx?))\.(?:txt|rtf|docx?|odt)$/i.exec(file)?.[1];
      if (hidden !== undefined) {
        const fix = `Call it ${path.posix.basename(hidden)}: your computer hides the last ending. Save it as plain text.`;
        return { file, line: 1, column: 1, severity: 'warning', message: 'Nothing reads this file.', fix };
      }
      const isLesson = /^content\/courses\/[^/]+\/[^/]+\.mdx?$/i.test(file);
      if (!isLesson && (/\.mdx$/i.test(file) || /^content\/courses\/.*\.md$/i.test(file))) {
        const [, course = 'NAME'] = /^content\/courses\/([^/]+)\//.exec(file) ?? [];
        const fix = `A lesson lies right in the folder of its course: content/courses/${course}/${path.posix.basename(file)}.`;
        return { file, line: 1, column: 1, severity: 'warning', message: 'Nothing reads this file.', fix };
      }
      const near = isLesson ? file.replace(/\.mdx?$/i, '.mdx') : closest(file, read);
      const isBeside = near !== undefined && path.posix.dirname(near) === path.posix.dirname(file);
      return {
        file,
        line: 1,
        column: 1,
        severity: 'warning',
        message: 'Nothing reads this file.',
        fix: near && `Should it be called ${isBeside ? path.posix.basename(near) : near}?`,
      };
    });
}
