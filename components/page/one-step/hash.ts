/** How the end of an address says that the steps are open one at a time, and at which. */
export const HASH = '#one-step';

/** The end of the address that opens a step. */
export const hashOf = (id: string): string => `${HASH}:${encodeURIComponent(id)}`;

/** The step that the end of an address opens; undefined where it names none. */
export function stepIn(hash: string): string | undefined {
  if (!hash.startsWith(`${HASH}:`)) return undefined;
  try {
    return decodeURIComponent(hash.slice(HASH.length + 1));
  } catch {
    return undefined;
  }
}
