/**
 * What the learner's own browser keeps: choices and answers, and nothing else. Storage can be full, forbidden or hold
 * rubbish; then the page goes on without it and says so once.
 */
/** What the keys of every site begin with. */
export const PREFIX = 'course-kit:';

let own: string | undefined;

/**
 * What the keys of this site begin with. Sites of one host share its storage and keep apart by the path that each lies
 * at, which its icon tells, wherever the site was put.
 */
export function prefix(): string {
  if (own !== undefined) return own;
  const icon = document.querySelector<HTMLLinkElement>('link[rel="icon"]');
  const root = new URL('.', new URL(icon?.getAttribute('href') ?? '/', location.href)).pathname;
  own = root === '/' ? PREFIX : `${PREFIX}${root}:`;
  if (root !== '/') takeOver(root, own);
  return own;
}

/** What was kept before sites kept apart is taken over once. It stays where it is: it may be another site's, too. */
function takeOver(root: string, into: string): void {
  try {
    const done = PREFIX + root;
    if (localStorage.getItem(done) !== null) return;
    for (const key of Object.keys(localStorage)) {
      const [kind = '', path = ''] = key.slice(PREFIX.length).split(':');
      if (!key.startsWith(PREFIX) || key.startsWith('/', PREFIX.length)) continue;
      if (/^(?:answer|practice|measured)$/.test(kind) && !path.startsWith(root)) continue;
      localStorage.setItem(into + key.slice(PREFIX.length), localStorage.getItem(key)!);
    }
    localStorage.setItem(done, '1');
  } catch (cause) {
    report(troubleOf(cause));
  }
}

export type StorageTrouble = 'forbidden' | 'full';

let trouble: StorageTrouble | undefined;
const listeners = new Set<(trouble: StorageTrouble) => void>();

/** Calls back when the browser refuses to save something, and at once if it already has. */
export function onStorageTrouble(listener: (trouble: StorageTrouble) => void): () => void {
  listeners.add(listener);
  if (trouble) listener(trouble);
  return () => listeners.delete(listener);
}

/** Tells the page, once. */
export function report(found: StorageTrouble): void {
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
    text = localStorage.getItem(prefix() + key);
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

/** Saves `value` under `key`; `undefined` removes it. Returns why it could not be saved. */
export const save = (key: string, value: unknown): StorageTrouble | undefined =>
  saveText(key, value === undefined ? undefined : JSON.stringify(value));

/** The same for what is JSON already. */
export function saveText(key: string, text: string | undefined): StorageTrouble | undefined {
  try {
    if (text === undefined) localStorage.removeItem(prefix() + key);
    else localStorage.setItem(prefix() + key, text);
    return undefined;
  } catch (cause) {
    const found = troubleOf(cause);
    report(found);
    return found;
  }
}

/** Why storage threw. */
export const troubleOf = (cause: unknown): StorageTrouble =>
  cause instanceof DOMException && cause.name === 'QuotaExceededError' ? 'full' : 'forbidden';

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
    if (event.key === null || event.key === prefix() + key) changed();
  };
  addEventListener('storage', hear);
  return () => removeEventListener('storage', hear);
}

/**
 * The path of a page, as answers are saved under it: the same whether its address names the file or not.
 *
 * @param address of the page, also relative to this one
 */
export const pagePath = (address: string = location.href): string =>
  new URL(address, location.href).pathname.replace(/(?<=\/)index\.html$/, '');
