/**
 * What the learner's own browser keeps: choices and answers, and nothing else. Storage can be full, forbidden or hold
 * rubbish; then the page goes on without it and says so once.
 */
const PREFIX = 'course-kit:';

export type StorageTrouble = 'forbidden' | 'full';

let trouble: StorageTrouble | undefined;
const listeners = new Set<(trouble: StorageTrouble) => void>();

/** Calls back when the browser refuses to save something, and at once if it already has. */
export function onStorageTrouble(listener: (trouble: StorageTrouble) => void): () => void {
  listeners.add(listener);
  if (trouble) listener(trouble);
  return () => listeners.delete(listener);
}

function report(found: StorageTrouble) {
  if (trouble) return;
  trouble = found;
  for (const listener of listeners) listener(found);
}

/**
 * Loads what was saved under `key`. `read` turns the parsed value into what is wanted, or returns undefined for a value
 * that is not of the right shape: anything may lie in storage.
 */
export function load<T>(key: string, read: (value: unknown) => T | undefined): T | undefined {
  let text: string | null;
  try {
    text = localStorage.getItem(PREFIX + key);
  } catch {
    report('forbidden');
    return undefined;
  }
  if (text === null) return undefined;
  try {
    return read(JSON.parse(text));
  } catch {
    return undefined;
  }
}

/** Saves `value` under `key`; `undefined` removes it. */
export function save(key: string, value: unknown): void {
  saveText(key, value === undefined ? undefined : JSON.stringify(value));
}

/** Saves a text that is JSON already. */
export function saveText(key: string, text: string | undefined): void {
  try {
    if (text === undefined) localStorage.removeItem(PREFIX + key);
    else localStorage.setItem(PREFIX + key, text);
  } catch (cause) {
    report(cause instanceof DOMException && cause.name === 'QuotaExceededError' ? 'full' : 'forbidden');
  }
}

/** Everything that was saved, as JSON, by key. */
export function savedEntries(): Map<string, string> {
  try {
    const keys = Object.keys(localStorage).filter((key) => key.startsWith(PREFIX));
    return new Map(keys.toSorted().map((key) => [key.slice(PREFIX.length), localStorage.getItem(key) ?? 'null']));
  } catch {
    report('forbidden');
    return new Map();
  }
}

/** Whether anything was saved under `key`. */
export const isSaved = (key: string): boolean => load(key, () => true) === true;

/** A plain object with text keys, or undefined: the first question to ask of anything that was kept. */
export function asRecord(value: unknown): Record<string, unknown> | undefined {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
    ? (value as Record<string, unknown>)
    : undefined;
}

/** Calls back when another tab changed what is saved under `key`. Returns a function that stops it. */
export function onStorageChange(key: string, changed: () => void): () => void {
  const hear = (event: StorageEvent) => {
    if (event.key === null || event.key === PREFIX + key) changed();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}

/** Calls back when another tab changed anything that is saved. Returns a function that stops it. */
export function onAnyStorageChange(changed: () => void): () => void {
  addEventListener('storage', changed);
  return () => removeEventListener('storage', changed);
}
