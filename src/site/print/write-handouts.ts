import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { missingCharacterText, writePdf, type Fonts } from '../../core/index.ts';
import { everything, plannedHandouts, type HandoutChoice, type Planned } from './handouts.ts';
import type { Content } from '../content/read-content.ts';

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
  /** Told before each file, and once at the end. */
  progress?: (done: number, all: number, file: string) => void;
};

/** Writes the documents of a content folder, each into the folder of its course, paper and edition. */
export async function writeHandouts(
  content: Content,
  to: string,
  fonts: Fonts,
  wish: HandoutRequest = {},
): Promise<WrittenHandouts> {
  const { choice = everything, course, withoutTeacher = false, progress = () => {} } = wish;
  const courses = content.courses.filter(({ id }) => course === undefined || id === course);
  const plannedFor = (id: string) =>
    plannedHandouts(content, id, choice).filter(({ reader }) => reader === 'maker' || !withoutTeacher);
  // Planned once to count and once to make: what a course is worked out for goes before the next begins.
  const all = courses.reduce((sum, { id }) => sum + plannedFor(id).length, 0);
  const written: WrittenHandouts = { files: [], findings: [] };
  for (const { id } of courses) {
    for (const planned of plannedFor(id)) {
      const { file } = planned;
      progress(written.files.length, all, file);
      const { bytes, findings } = await made(planned, fonts);
      await mkdir(path.dirname(path.join(to, file)), { recursive: true });
      await writeFile(path.join(to, file), bytes);
      written.files.push(file);
      written.findings.push(...findings.map((finding) => `${file}: ${finding}`));
    }
  }
  progress(all, all, '');
  return written;
}

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
