import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { deserialize, serialize } from 'node:v8';

/**
 * Set by a command that checks the content beside the build it has started: names the file in which it leaves what it has
 * read, so that the build need not read it as well.
 */
export const CHECKED_BESIDE = 'CONTENT_IS_CHECKED_BESIDE';

/** Leaves something in a file, in one go: the build may be looking. */
export function leave(file: string, thing: unknown): void {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(`${file}.part`, serialize(thing));
  renameSync(`${file}.part`, file);
}

/** What was left for this build; nothing where no other process is beside it, or has not come so far. */
export function left(): unknown {
  try {
    return deserialize(readFileSync(process.env[CHECKED_BESIDE] ?? ''));
  } catch {
    return undefined;
  }
}
