/** As much of a browser as the page's own storage asks for: an address, an icon, and a storage that can fail. */

/** What a storage does otherwise than it should. */
export type Fault =
  /** There is room for so many signs more than lie there. */
  | { kind: 'full'; room: number }
  /** The page may not keep anything. */
  | { kind: 'forbidden' }
  /** One call fails, the n-th. */
  | { kind: 'once'; call: number; writes: boolean }
  /** Right before the n-th call another page clears everything. */
  | { kind: 'vanishes'; call: number };

/** What lies in the storage, and how it fails. */
export type Kept = { entries: Map<string, string>; fault: Fault | undefined; calls: number };

/** In signs. */
export const sizeOf = (entries: ReadonlyMap<string, string>): number =>
  [...entries].reduce((sum, [name, text]) => sum + name.length + text.length, 0);

const error = (name: string) => new DOMException(name, name);

function storageOf(kept: Kept, there: number): Storage {
  const call = (writes: boolean, size = 0) => {
    kept.calls++;
    const { fault } = kept;
    if (fault?.kind === 'forbidden') throw error('SecurityError');
    if (fault?.kind === 'once' && fault.call === kept.calls && fault.writes === writes)
      throw error('QuotaExceededError');
    if (fault?.kind === 'vanishes' && fault.call === kept.calls) kept.entries.clear();
    if (fault?.kind === 'full' && size > there + fault.room) throw error('QuotaExceededError');
  };
  const methods: Record<string, unknown> = {
    getItem(key: string) {
      call(false);
      return kept.entries.get(key) ?? null;
    },
    setItem(key: string, text: string) {
      const all = new Map(kept.entries).set(key, text);
      call(true, sizeOf(all));
      kept.entries.set(key, text);
    },
    removeItem(key: string) {
      call(true);
      kept.entries.delete(key);
    },
  };
  return new Proxy({} as Storage, {
    get: (_, name) => (Object.hasOwn(methods, name) ? methods[String(name)] : kept.entries.get(String(name))),
    ownKeys: () => {
      call(false);
      return [...kept.entries.keys()];
    },
    getOwnPropertyDescriptor: (_, key) =>
      kept.entries.has(String(key))
        ? { configurable: true, enumerable: true, value: kept.entries.get(String(key)) }
        : undefined,
  });
}

/** Runs something on a page whose browser keeps this. */
export function onPage<T>(kept: Kept, run: () => T): T {
  const before = {
    document: globalThis.document,
    location: globalThis.location,
    storage: Object.getOwnPropertyDescriptor(globalThis, 'localStorage'),
  };
  const set = (name: string, value: unknown) =>
    Object.defineProperty(globalThis, name, { value, configurable: true, writable: true });
  set('document', { querySelector: () => null });
  set('location', { href: 'http://127.0.0.1/lesson/' });
  const there = sizeOf(kept.entries);
  set('localStorage', storageOf(kept, there));
  try {
    return run();
  } finally {
    set('document', before.document);
    set('location', before.location);
    if (before.storage) Object.defineProperty(globalThis, 'localStorage', before.storage);
    else Reflect.deleteProperty(globalThis, 'localStorage');
  }
}
