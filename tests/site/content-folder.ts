import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { onTestFinished } from 'vitest';

const SOUND = fileURLToPath(new URL('../fixtures/sound', import.meta.url));

/** The files below a folder, by path from it with forward slashes. */
export function filesIn(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    files.map(({ name, parentPath }) => {
      const full = path.join(parentPath, name);
      return [path.relative(folder, full).replaceAll('\\', '/'), readFileSync(full, 'utf8')];
    }),
  );
}

/** A small content folder without a mistake; tests change one file of it. */
export const GOOD: Readonly<Record<string, string>> = filesIn(SOUND);

/**
 * Writes a content folder for one test, which takes it away when it ends.
 *
 * @param changes files that differ from the good ones; undefined leaves a file out
 * @returns the folder that holds content/
 */
export function contentFolder(changes: Record<string, string | Buffer | undefined> = {}): string {
  const root = mkdtempSync(path.join(tmpdir(), 'sewing-content-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  for (const [file, text] of Object.entries({ ...GOOD, ...changes })) {
    if (text === undefined) continue;
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return root;
}

/** A good file with one part exchanged; the part has to be there. */
export function exchanged(file: string, part: string, by: string): Record<string, string> {
  const text = GOOD[file];
  if (!text?.includes(part)) throw new Error(`${file} has no ${part}`);
  return { [file]: text.replace(part, () => by) };
}

/** The beginning of a PNG of so many dots: all that is read of it before it is shown. */
export function pngOf(width: number, height: number): Buffer {
  const head = Buffer.alloc(33);
  head.write('\x89PNG\r\n\x1a\n\0\0\0\rIHDR', 'latin1');
  head.writeUInt32BE(width, 16);
  head.writeUInt32BE(height, 20);
  return head;
}
