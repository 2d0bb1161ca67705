/** What is said in the recordings of a project, between the disk and the form. */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { clockTime, quote } from '../../core/measure/index.ts';
import { courseWords, mend, misheard } from '../../core/speech/index.ts';
import { recordingProblems } from '../../site/check/recording-problems.ts';
import { isWhole, workOut, type WorkedOut } from '../../site/check/project-problems.ts';
import { readYaml } from '../../site/content/located-yaml.ts';
import { ContentFiles, type Entry, type RecordingEntry } from '../../site/content/read-content.ts';
import { CourseFile } from '../../site/content/schemas.ts';
import { CHANGED_SINCE, refusalFor, writeAuthorFile } from '../write-file.ts';
import { withField } from '../yaml-edit.ts';
import type { MendResult, MendedWord, SaidState } from './messages.ts';

/** How often a word is put into a file that another hand writes at the same time. */
const TIMES = 5;

/** The recordings of a content folder, as the form shows them, and the list of each course that words are put into. */
export class SaidInRecordings {
  readonly #root: string;
  readonly #files: ContentFiles;
  /** What was read last, and the texts it was read from: the form asks again after every change of any file. */
  readonly #last = new Map<string, { texts: string; said: SaidState }>();

  /** @param root the folder that holds content/ */
  constructor(root: string) {
    this.#root = root;
    this.#files = new ContentFiles(root);
  }

  /**
   * The recordings that a project is made in: what `npm run check` finds in them, and the words that may be misheard.
   *
   * @param id name of the project’s folder
   */
  read(id: string): SaidState {
    const file = this.#files.projects().includes(id) ? this.#files.project(id) : undefined;
    if (!file?.value) return { recordings: [] };
    const all = this.#files.courses().flatMap((name) => {
      const { recordings } = this.#files.recordingsOf(name);
      if (recordings.length === 0) return [];
      const course = this.#files.course(name);
      return recordings
        .filter(({ settings }) => (settings?.value?.project ?? course.value?.project) === id)
        .map((recording) => ({ recording, course }));
    });
    if (all.length === 0) return { recordings: [] };
    const [materials, glossary] = [this.#files.materials(), this.#files.glossary()];
    const read = [
      file,
      materials,
      glossary,
      ...all.flatMap(({ recording, course }) => [recording.said, recording.settings, course]),
    ];
    const texts = read.map((entry) => entry?.text).join('\0');
    const last = this.#last.get(id);
    if (last?.texts === texts) return last.said;
    const worked = workOut(file.value, materials.value ?? {});
    const said = {
      recordings: all.map(({ recording, course }) => ({
        ...{ course: recording.course, name: recording.name, file: recording.said.file },
        findings: [
          ...recording.said.problems,
          ...recordingProblems(recording, course, { named: id, worked, projects: this.#files.projects() }),
        ].map(({ severity, message, fix, line }) => ({ severity, message, line, ...(fix !== undefined && { fix }) })),
        misheard: isWhole(worked) ? heardIn(recording, course, worked, Object.keys(glossary.value ?? {})) : [],
      })),
    };
    this.#last.set(id, { texts, said });
    return said;
  }

  /**
   * Puts a word that was misheard into the list of its course, and nothing else into the file; every recording of the
   * course is mended by it from then on.
   *
   * @param id name of the project’s folder, for the answer
   */
  accept(id: string, word: MendedWord): MendResult {
    for (let times = 1; times <= TIMES; times += 1) {
      try {
        const answer = this.#put(word);
        if (answer === 'again') continue;
        return answer.kind === 'written' ? { ...answer, said: this.read(id) } : answer;
      } catch (error) {
        return { kind: 'refused', ...refusalFor(fileOf(word.course), error) };
      }
    }
    return {
      kind: 'refused',
      message: 'Another program keeps writing this file.',
      fix: 'Wait until it is done, and try again.',
    };
  }

  #put({ course, heard, meant }: MendedWord): MendResult | 'again' {
    const full = this.#find(course);
    if (full === undefined) return { kind: 'refused', message: `There is no course ${quote(course)}.` };
    const before = readFileSync(full, 'utf8');
    const { value } = readYaml(before, CourseFile, fileOf(course));
    if (!value) return { kind: 'refused', message: 'The file has a mistake.', fix: 'Mend it in your editor first.' };
    const known = value.misheard?.[heard];
    if (known !== undefined) {
      return { kind: 'refused', message: `${quote(heard)} is ${quote(known)} in that list already.` };
    }
    const after = withField(before, ['misheard'], heard, meant);
    const read = after === undefined ? undefined : readYaml(after, CourseFile, fileOf(course));
    if (after === undefined || read?.value?.misheard?.[heard] !== meant) {
      return { kind: 'refused', message: 'This word cannot be written from here.', fix: 'Write it in your editor.' };
    }
    const refusal = writeAuthorFile(full, after, { before });
    if (refusal?.code === CHANGED_SINCE) return 'again';
    if (refusal) return { kind: 'refused', message: refusal.message, fix: refusal.fix };
    return { kind: 'written', file: fileOf(course), line: read.locate(['misheard', heard]).line };
  }

  /** Only a course’s own file, and only where it truly lies: no name and no link leads out of the content folder. */
  #find(course: string): string | undefined {
    if (!this.#files.courses().includes(course)) return undefined;
    const shelf = path.join(this.#root, 'content/courses');
    const full = path.join(shelf, course, 'course.yaml');
    if (!existsSync(full)) return undefined;
    return realpathSync(full) === path.join(realpathSync(shelf), course, 'course.yaml') ? full : undefined;
  }
}

const fileOf = (course: string): string => `content/courses/${course}/course.yaml`;

/** The words of a recording that may be misheard, but for those that are mended already. */
function heardIn(
  { said, settings }: RecordingEntry,
  course: Entry<CourseFile>,
  worked: WorkedOut,
  terms: readonly string[],
): SaidState['recordings'][number]['misheard'] {
  const lines = mend(said.value ?? [], { ...course.value?.misheard, ...settings?.value?.misheard });
  const [{ inch }] = worked.variants;
  return misheard(lines, courseWords(inch, terms)).map(({ heard, meant, where }) => ({
    ...{ heard, meant },
    where: where.map(({ from, before, after }) => ({ at: clockTime(from), before, after })),
  }));
}
