/** All that the browser keeps for this site, as one file: to take along, to put back, to clear. */
import { savedEntries, save, saveText } from '../page/storage.ts';

/** In characters: many times what a whole course makes. */
const MOST = 1_000_000;

export const progressFile = (): string => JSON.stringify({ progress: 1, kept: Object.fromEntries(savedEntries()) });

/** Puts a file's answers in the place of what is kept now. Says what is wrong with it, and then changes nothing. */
export async function restore(text: string): Promise<string | undefined> {
  const { ProgressFile } = await import('./schema.ts');
  const trouble = 'That is not a file of your progress, so that nothing was changed.';
  if (text.length > MOST) return trouble;
  let kept: Record<string, string>;
  try {
    const read = ProgressFile.safeParse(JSON.parse(text));
    if (!read.success) return trouble;
    ({ kept } = read.data);
    for (const one of Object.values(kept)) JSON.parse(one);
  } catch {
    return trouble;
  }
  clear();
  for (const [key, one] of Object.entries(kept)) saveText(key, one);
  return undefined;
}

export function clear(): void {
  for (const key of savedEntries().keys()) save(key, undefined);
}
