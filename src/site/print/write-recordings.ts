import { copyFile, mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Content } from '../content/read-content.ts';
import { recordingTexts, type RecordingsWish } from './recordings.ts';

/**
 * Writes what is made from the recordings of a content folder, and beside it the recordings themselves, byte for byte.
 *
 * @param root the folder that holds content/
 * @param to the folder of all recordings
 * @returns paths from there
 */
export async function writeRecordings(
  content: Content,
  root: string,
  to: string,
  wish: RecordingsWish = {},
): Promise<string[]> {
  const written: string[] = [];
  const folderOf = async (file: string) => {
    const full = path.join(to, file);
    await mkdir(path.dirname(full), { recursive: true });
    written.push(file);
    return full;
  };
  for (const { file, text } of recordingTexts(content, wish)) await writeFile(await folderOf(file), text);
  for (const { course, name, media, poster } of content.recordings) {
    if (wish.course !== undefined && course !== wish.course) continue;
    for (const file of [media, poster]) {
      if (file === undefined) continue;
      await copyFile(path.join(root, file), await folderOf(`${course}/${name}/${path.posix.basename(file)}`));
    }
  }
  return written;
}
