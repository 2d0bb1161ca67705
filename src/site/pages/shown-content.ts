import { resolveProject } from '../../core/project/index.ts';
import type { MaterialsFile, ProjectFile } from '../../core/project/schema.ts';
import { ContentFiles } from '../content/read-content.ts';
import type { Entry, LessonEntry, ProjectTop, RecordingEntry } from '../content/read-content.ts';
import type { CourseFile, GlossaryFile, LessonFront, SiteFile } from '../content/schemas.ts';
import type { ReadRecording } from './recorded.ts';

/** A lesson as far as pages show it by themselves: what stands at its top, and its text. */
export type ShownLesson = { front: LessonFront; text: string };

const NONE: MaterialsFile = {};

/** Whether a text that an author wrote can be the name of a folder, and of no other. */
const isName = (text: string): boolean => !/[\\/]|^\.+$/.test(text);

/**
 * The content as pages show it. A file is read when a page asks for it, so that no page waits for what it does not show.
 * While the site is being edited it is read again each time, and a file with a mistake is shown in its last state without
 * one; where there was none since the start, it is missing.
 */
export class ShownContent {
  readonly #files: ContentFiles;
  readonly #isEdited: boolean;
  /** Files as they were read last. */
  readonly #known = new Map<string, Entry<unknown>>();
  /** Files in their last state without a mistake. */
  readonly #sound = new Map<string, Entry<unknown>>();
  /** Whether a project has every number, and the materials it was asked with. */
  readonly #usable = new WeakMap<ProjectFile, { materials: MaterialsFile; isUsable: boolean }>();
  /** Projects as they were when they had every number. */
  readonly #lastUsable = new Map<string, ProjectFile>();
  /** Recordings of which all files were read, by course and name. */
  readonly #lastRead = new Map<string, ReadRecording>();

  /**
   * @param root folder of the project, the one that holds `content/`
   * @param isEdited false where the content stays as it is
   */
  constructor(root: string, isEdited: boolean) {
    this.#files = new ContentFiles(root, this.#known);
    this.#isEdited = isEdited;
  }

  /** Folder names of the projects. */
  projects = (): string[] => this.#files.projects();

  /** Folder names of the courses. */
  courses = (): string[] => this.#files.courses();

  site = (): SiteFile | undefined => this.#shown('site', () => this.#files.site())?.value;
  materials = (): MaterialsFile => this.#shown('materials', () => this.#files.materials())?.value ?? NONE;
  glossary = (): GlossaryFile => this.#shown('glossary', () => this.#files.glossary())?.value ?? {};
  course = (id: string): CourseFile | undefined => this.#shown(`course ${id}`, () => this.#files.course(id))?.value;

  /** What a list shows of a project: its title and its summary, as they are or as they were when they could be read. */
  projectTop = (id: string): ProjectTop | undefined =>
    isName(id) ? (this.#files.projectTop(id) ?? this.projectFile(id)) : undefined;

  /** A project of which the words can be read, but not all sizes may be known. */
  projectFile = (id: string): ProjectFile | undefined =>
    isName(id) ? this.#shown(`project ${id}`, () => this.#files.project(id))?.value : undefined;

  /** A project that has every number of the lesson's own size. In a build all have, since it ends before otherwise. */
  project(id: string): ProjectFile | undefined {
    const file = this.projectFile(id);
    if (!this.#isEdited) return file;
    if (file === undefined) this.#lastUsable.delete(id);
    else if (this.#hasAllNumbers(file)) this.#lastUsable.set(id, file);
    return this.#lastUsable.get(id);
  }

  /** The lessons of a course that are there, in its order. */
  lessonsOf(id: string): string[] {
    const there = new Set(this.#files.lessonsIn(id));
    return (this.course(id)?.lessons ?? []).filter((fileName) => there.has(fileName));
  }

  /** @param fileName one of `lessonsOf` */
  lesson(course: string, fileName: string): ShownLesson | undefined {
    const entry = this.#shown(`lesson ${course}/${fileName}`, () => this.#files.lesson(course, fileName));
    return entry?.value && { front: entry.value, text: entry.text };
  }

  /** The recordings of a course, each as it was when none of its files had a mistake. */
  recordings(course: string): ReadRecording[] {
    const { recordings } = this.#files.recordingsOf(course);
    // What is gone is no file with a mistake.
    for (const [id, before] of this.#lastRead)
      if (before.course === course && !recordings.some(({ name }) => name === before.name)) this.#lastRead.delete(id);
    return recordings.flatMap((entry) => this.#recording(entry) ?? []);
  }

  #recording({ course, name, said, settings, media, poster }: RecordingEntry): ReadRecording | undefined {
    const id = `${course}/${name}`;
    for (const entry of [said, settings]) if (entry) this.#known.set(entry.file, entry);
    if (said.value && (!settings || settings.value))
      this.#lastRead.set(id, { course, name, media, poster, lines: said.value, settings: settings?.value });
    return this.#lastRead.get(id);
  }

  #shown<E extends Entry<unknown> | LessonEntry>(name: string, read: () => E): E | undefined {
    const before = this.#sound.get(name) as E | undefined;
    if (before && !this.#isEdited) return before;
    const entry = read();
    this.#known.set(entry.file, entry);
    // A file that is gone is no file with a mistake.
    if (entry.text === '') this.#sound.delete(name);
    else if (entry.value !== undefined) this.#sound.set(name, entry);
    return this.#sound.get(name) as E | undefined;
  }

  #hasAllNumbers(file: ProjectFile): boolean {
    const materials = this.materials();
    const before = this.#usable.get(file);
    if (before?.materials === materials) return before.isUsable;
    const isUsable = (['inch', 'metric'] as const).every((edition) =>
      resolveProject(file, { edition, materials }).findings.every(({ severity }) => severity !== 'error'),
    );
    this.#usable.set(file, { materials, isUsable });
    return isUsable;
  }
}
