/**
 * Documents of builds before, so that a build makes only those of courses that changed. They lie in a folder of their
 * own, a folder a course, each with a record of what it was made from.
 */
import { createHash } from 'node:crypto';
import { constants } from 'node:fs';
import { copyFile, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { allEntries, type Content } from '../content/read-content.ts';
import type { WrittenHandouts } from './write-handouts.ts';

/** Where a build keeps them, from the project's root. */
export const KEPT_HANDOUTS = '.cache/handouts';

const RECORD = 'made-from.json';
/** What makes documents, libraries and all. */
const KIT = ['src', 'components', 'package.json', 'package-lock.json'];

type Record = WrittenHandouts & { digest: string };

export class KeptHandouts {
  readonly #folder: string;
  readonly #kit: string;

  /**
   * @param folder where they are kept
   * @param kit what stands for the kit as it is (`digestOfKit`)
   */
  constructor(folder: string, kit: string) {
    this.#folder = folder;
    this.#kit = kit;
  }

  /** What the documents of a course are made from, in a few letters: every file it uses, what was wished for, and the kit. */
  digest(course: Content, wish: unknown): string {
    const hash = createHash('sha256').update(JSON.stringify([this.#kit, wish]));
    for (const { file, text } of allEntries(course)) hash.update(JSON.stringify([file, text]));
    return hash.digest('hex');
  }

  /**
   * Copies the documents of a course that was made from the same.
   *
   * @returns undefined where there are none, or not all of them
   */
  async copy(course: string, digest: string, to: string): Promise<WrittenHandouts | undefined> {
    try {
      const record = JSON.parse(await readFile(path.join(this.#folder, course, RECORD), 'utf8')) as Record;
      if (record.digest !== digest) return undefined;
      for (const file of record.files) await copied(path.join(this.#folder, file), path.join(to, file));
      return { files: record.files, findings: record.findings };
    } catch {
      // What cannot be read is made anew.
      return undefined;
    }
  }

  /**
   * Keeps what was written for a course. The record comes last: without it nothing of the course counts. Where there is
   * no room for it, the next build makes the documents again.
   */
  async keep(course: string, digest: string, from: string, { files, findings }: WrittenHandouts): Promise<void> {
    const folder = path.join(this.#folder, course);
    const record: Record = { digest, files, findings };
    try {
      await rm(folder, { recursive: true, force: true });
      for (const file of files) await copied(path.join(from, file), path.join(this.#folder, file));
      await mkdir(folder, { recursive: true });
      await writeFile(path.join(folder, RECORD), JSON.stringify(record));
    } catch {
      await rm(folder, { recursive: true, force: true }).catch(() => undefined);
    }
  }

  /** Lets go what belongs to no course any more. */
  async keepOnly(courses: readonly string[]): Promise<void> {
    const kept = await readdir(this.#folder).catch(() => []);
    for (const name of kept)
      if (!courses.includes(name)) await rm(path.join(this.#folder, name), { recursive: true, force: true });
  }
}

/** Stands for the kit in records: any other text in any of its files gives another. */
export async function digestOfKit(root: string): Promise<string> {
  // Prices are written by Node's own tables.
  const hash = createHash('sha256').update(process.version);
  for (const part of KIT) {
    const full = path.join(root, part);
    const below = await readdir(full, { recursive: true, withFileTypes: true }).catch(() => undefined);
    const files = below?.filter((one) => one.isFile()).map((one) => path.join(one.parentPath, one.name)) ?? [full];
    for (const file of files.sort()) {
      const text = await readFile(file).catch(() => '');
      hash.update(`${path.relative(root, file)} ${text.length}\n`).update(text);
    }
  }
  return hash.digest('hex');
}

/** Where the disk can, both share their room until one changes. */
async function copied(from: string, to: string): Promise<void> {
  await mkdir(path.dirname(to), { recursive: true });
  await copyFile(from, to, constants.COPYFILE_FICLONE);
}
