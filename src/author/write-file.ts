/** The one way in which a command or the form writes a file of the author. */
import fs from 'node:fs';
import path from 'node:path';

/** Why a file was not written. It is then as it was. */
export type Refusal = { message: string; fix: string };

/**
 * Writes a file as a whole, or not at all: the text goes into a new file beside it, which then takes its place. What a
 * link points to is written, not the link. The file keeps its permissions.
 *
 * @param disk the file system; tests put one in that fails
 * @returns why not, or undefined once the file is written
 */
export function writeAuthorFile(file: string, text: string, disk: Disk = fs): Refusal | undefined {
  let part: string | undefined;
  try {
    const isThere = disk.existsSync(file);
    const target = isThere ? disk.realpathSync(file) : file;
    if (isThere) disk.accessSync(target, fs.constants.W_OK);
    const mode = isThere ? disk.statSync(target).mode : 0o666;
    const name = path.join(path.dirname(target), `.${path.basename(target)}.${process.pid}.part`);
    const handle = disk.openSync(name, 'wx', mode);
    part = name;
    try {
      disk.writeFileSync(handle, text);
      disk.fsyncSync(handle);
    } finally {
      disk.closeSync(handle);
    }
    disk.renameSync(part, target);
    return undefined;
  } catch (error) {
    if (part !== undefined) disk.rmSync(part, { force: true });
    return refusal(path.basename(file), (error as NodeJS.ErrnoException).code);
  }
}

export type Disk = Pick<
  typeof fs,
  | 'existsSync'
  | 'realpathSync'
  | 'accessSync'
  | 'statSync'
  | 'openSync'
  | 'writeFileSync'
  | 'fsyncSync'
  | 'closeSync'
  | 'renameSync'
  | 'rmSync'
>;

function refusal(name: string, code: string | undefined): Refusal {
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS')
    return { message: `${name} may not be written here.`, fix: 'Allow writing to the file and to its folder.' };
  if (code === 'ENOSPC' || code === 'EDQUOT')
    return { message: `${name} is not written: the disk is full.`, fix: 'Make room, and try again.' };
  if (code === 'EBUSY')
    return { message: `${name} is not written: another program holds it.`, fix: 'Close it there, and try again.' };
  return { message: `${name} is not written (${code ?? 'no reason given'}).`, fix: 'Try again.' };
}
