import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { missingCharacterText, plainName, writePdf, type Fonts } from '../../core/index.ts';
import { ContentFiles, readCourse } from '../content/read-content.ts';
import { everything, plannedHandouts, type HandoutChoice, type Planned } from './handouts.ts';
import type { Content } from '../content/read-content.ts';
import type { KeptHandouts } from './kept-handouts.ts';

export type WrittenHandouts = {
  /** Paths from the folder they were written to. */
  files: string[];
  /** What could not be put on paper, with the file it belongs to. */
  findings: string[];
};

export type HandoutRequest = {
  choice?: HandoutChoice;
  /** One course, by the name of its folder; all if left out. */
  course?: string | undefined;
  /** Only what makers may have; the teacher's too if left out. */
  withoutTeacher?: boolean;
  /** Those of a build before: a course that did not change takes them over. */
  kept?: KeptHandouts;
  /** Told before each file, and once at the end. `done` and `all` count courses. */
  progress?: (told: { done: number; all: number; files: number; file: string }) => void;
};

/**
 * Writes the documents of a content folder, each into the folder of its course, paper and edition. One course is read at
 * a time, and one document made: a large school needs no more memory than a small one.
 *
 * @param root the folder that holds content/
 * @returns also how many files were taken over
 */
export async function writeHandouts(
  root: string,
  to: string,
  fonts: Fonts,
  wish: HandoutRequest = {},
): Promise<WrittenHandouts & { takenOver: number }> {
  const { choice = everything, course, withoutTeacher = false, kept, progress = () => {} } = wish;
  const courses = new ContentFiles(root).courses().filter((id) => course === undefined || id === course);
  const written: WrittenHandouts = { files: [], findings: [] };
  let takenOver = 0;
  let isSize = choice.size === undefined;
  for (const [done, id] of courses.entries()) {
    const content = readCourse(root, id);
    isSize ||= hasSize(content, choice.size);
    const digest = kept?.digest(content, [choice, withoutTeacher]) ?? '';
    let ofCourse = await kept?.copy(id, digest, to);
    takenOver += ofCourse?.files.length ?? 0;
    if (!ofCourse) {
      ofCourse = { files: [], findings: [] };
      for (const planned of plannedHandouts(content, id, choice)) {
        if (planned.reader === 'teacher' && withoutTeacher) continue;
        const { file } = planned;
        progress({ done, all: courses.length, files: written.files.length + ofCourse.files.length, file });
        const { bytes, findings } = await made(planned, fonts);
        await mkdir(path.dirname(path.join(to, file)), { recursive: true });
        await writeFile(path.join(to, file), bytes);
        ofCourse.files.push(file);
        ofCourse.findings.push(...findings.map((finding) => `${file}: ${finding}`));
      }
      await kept?.keep(id, digest, to, ofCourse);
    }
    written.files.push(...ofCourse.files);
    written.findings.push(...ofCourse.findings);
  }
  if (!isSize)
    written.findings.push(`No project here has a size called “${choice.size!}”: all is in the lesson’s size.`);
  if (course === undefined) await kept?.keepOnly(courses);
  progress({ done: courses.length, all: courses.length, files: written.files.length, file: '' });
  return { ...written, takenOver };
}

const hasSize = ({ projects }: Content, size = ''): boolean =>
  projects.some(({ value }) => Object.keys(value?.sizes?.of ?? {}).some((one) => plainName(one) === plainName(size)));

/** One file as it is written, and what could not be put on paper. */
export async function made(planned: Planned, fonts: Fonts): Promise<{ bytes: Uint8Array; findings: string[] }> {
  if (planned.kind === 'outline') return { bytes: new TextEncoder().encode(planned.make()), findings: [] };
  const handout = planned.make();
  const { bytes, unshown } = await writePdf(handout, fonts);
  return {
    bytes,
    findings: unshown.length > 0 ? [...handout.findings, missingCharacterText(unshown)] : [...handout.findings],
  };
}
