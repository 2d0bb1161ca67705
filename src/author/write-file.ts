/** The one way in which a command or the form writes a file of the author. */
import fs from 'node:fs';
import path from 'node:path';

/** Why a file was not written. It is then as it was. */
export type Refusal = { message: string; fix: string; code?: string };

/** What the file held when it was read: undefined, it was not there. */
export type Before = { before: string | undefined };

/** What is said where another hand has written the file since it was read. */
export const CHANGED_SINCE = 'changed since';

/**
 * Writes a file as a whole, or not at all: the text goes into a new file beside it, which then takes its place. What a
 * link points to is written, not the link. The file keeps its permissions. What another hand has written since it was
 * read is not written over: the file is read once more right before the new one takes its place.
 *
 * @param disk the file system; tests put one in that fails
 * @returns why not, or undefined once the file is written
 */
export function writeAuthorFile(file: string, text: string, { before }: Before, disk: Disk = fs): Refusal | undefined {
  let part: string | undefined;
  try {
    const isThere = disk.existsSync(file);
    const target = isThere ? disk.realpathSync(file) : file;
    if (isThere) disk.accessSync(target, fs.constants.W_OK);
    const mode = isThere ? disk.statSync(target).mode : 0o666;
    const name = partOf(target, process.pid);
    clearParts(target, disk);
    const handle = openNew(name, mode, disk);
    part = name;
    try {
      disk.writeFileSync(handle, text);
      disk.fsyncSync(handle);
    } finally {
      disk.closeSync(handle);
    }
    if (textOf(file, disk) !== before) {
      remove(part, disk);
      return {
        message: `${path.basename(file)} has changed meanwhile and is left as it is.`,
        fix: 'Look at it, and try again.',
        code: CHANGED_SINCE,
      };
    }
    disk.renameSync(part, target);
    return undefined;
  } catch (error) {
    if (part !== undefined) remove(part, disk);
    return refusalFor(file, error);
  }
}

const partOf = (target: string, program: number | string): string =>
  path.join(path.dirname(target), `.${path.basename(target)}.${program}.part`);

/** Takes away what programs left behind that were ended while they wrote this file. */
function clearParts(target: string, disk: Disk): void {
  const [start = '', end = ''] = path.basename(partOf(target, '?')).split('?');
  try {
    for (const name of disk.readdirSync(path.dirname(target))) {
      const program = name.startsWith(start) && name.endsWith(end) ? name.slice(start.length, -end.length) : '';
      if (/^[1-9]\d{0,9}$/.test(program) && !isRunning(Number(program))) remove(partOf(target, program), disk);
    }
  } catch {
    // It is in nobody's way.
  }
}

function isRunning(program: number): boolean {
  try {
    return process.kill(program, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** Where even that fails, the file itself is whole all the same. */
function remove(part: string, disk: Disk): void {
  try {
    disk.rmSync(part, { force: true });
  } catch {
    // The next write takes it away.
  }
}

/** One that this program could not take away before goes now. */
function openNew(name: string, mode: number, disk: Disk): number {
  try {
    return disk.openSync(name, 'wx', mode);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    disk.rmSync(name, { force: true });
    return disk.openSync(name, 'wx', mode);
  }
}

const textOf = (file: string, disk: Disk): string | undefined =>
  disk.existsSync(file) ? String(disk.readFileSync(file, 'utf8')) : undefined;

export type Disk = Pick<
  typeof fs,
  | 'existsSync'
  | 'realpathSync'
  | 'accessSync'
  | 'statSync'
  | 'openSync'
  | 'readdirSync'
  | 'readFileSync'
  | 'writeFileSync'
  | 'fsyncSync'
  | 'closeSync'
  | 'renameSync'
  | 'rmSync'
>;

/** Why a file could not be written, from what the system says. */
export function refusalFor(file: string, error: unknown): Refusal {
  const name = path.basename(file);
  const { code } = error as NodeJS.ErrnoException;
  if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS')
    return { message: `${name} may not be written here.`, fix: 'Allow writing to the file and to its folder.' };
  if (code === 'ENOSPC' || code === 'EDQUOT')
    return { message: `${name} is not written: the disk is full.`, fix: 'Make room, and try again.' };
  if (code === 'EBUSY')
    return { message: `${name} is not written: another program holds it.`, fix: 'Close it there, and try again.' };
  if (code === 'ENOENT' || code === 'ENOTDIR')
    return { message: `${name} is not written: its folder is gone.`, fix: 'Put the folder back, and try again.' };
  return { message: `${name} is not written (${code ?? 'no reason given'}).`, fix: 'Try again.' };
}
