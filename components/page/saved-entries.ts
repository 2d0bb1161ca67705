/** All that the browser keeps for this site, together: for the page that shows it, saves it and puts it back. */
import { prefix, PREFIX, report, saveText, troubleOf, type StorageTrouble } from './storage.ts';

/** Whether a key is one of this site: at the top of a host, one that names no path. */
const isOwn = (key: string): boolean =>
  key.startsWith(prefix()) && !(prefix() === PREFIX && key.startsWith('/', PREFIX.length));

/**
 * Puts these entries in the place of all that is kept, as a whole or not at all.
 *
 * @param entries JSON by key
 * @returns why not; what was there before is then there still
 */
export function replaceSaved(entries: ReadonlyMap<string, string>): StorageTrouble | undefined {
  // Where there is no room for both, what was there makes room, and comes back if that was not enough.
  const trouble = putAll(entries, false);
  return trouble === 'full' ? putAll(entries, true) : trouble;
}

function putAll(entries: ReadonlyMap<string, string>, makesRoom: boolean): StorageTrouble | undefined {
  let before = new Map<string, string>();
  try {
    before = entriesNow();
    const gone = [...before.keys()].filter((key) => !entries.has(key));
    if (makesRoom) for (const key of gone) localStorage.removeItem(prefix() + key);
    for (const [key, text] of entries) localStorage.setItem(prefix() + key, text);
    for (const key of gone) localStorage.removeItem(prefix() + key);
    return undefined;
  } catch (cause) {
    // What was put in goes first, all of it, so that there is room for each text that was there.
    for (const [key, text] of entries) if (before.get(key) !== text) saveText(key, undefined);
    for (const [key, text] of before) saveText(key, text);
    return troubleOf(cause);
  }
}

function entriesNow(): Map<string, string> {
  const { length } = prefix(); // before the keys are listed: it may take some over
  const keys = Object.keys(localStorage).filter(isOwn).toSorted();
  return new Map(keys.map((key) => [key.slice(length), localStorage.getItem(key) ?? 'null']));
}

/** Everything that was saved, as JSON, by key. */
export function savedEntries(): Map<string, string> {
  try {
    return entriesNow();
  } catch (cause) {
    report(troubleOf(cause));
    return new Map();
  }
}

/** Calls back when another tab changed anything that is saved. Returns a function that stops it. */
export function onAnyStorageChange(changed: () => void): () => void {
  addEventListener('storage', changed);
  return () => removeEventListener('storage', changed);
}
