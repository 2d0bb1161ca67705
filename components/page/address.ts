/** Time before the address is written, in ms: browsers refuse an address that changes with every move of a slider. */
const REST = 500;

let rest: ReturnType<typeof setTimeout> | undefined;
const changes = new Map<string, (query: URLSearchParams) => void>();

/**
 * Changes the address once nothing was changed for a while, or the page is left. A later change of the same `matter`
 * replaces an earlier one.
 */
export function writeAddress(matter: string, change: (query: URLSearchParams) => void): void {
  changes.set(matter, change);
  clearTimeout(rest);
  rest = setTimeout(addressNow, REST);
}

/** The page's address with every change made, for whoever wants to copy it. */
export function addressNow(): string {
  clearTimeout(rest);
  const url = new URL(location.href);
  const due = [...changes.values()];
  changes.clear();
  for (const change of due) change(url.searchParams);
  if (due.length > 0) history.replaceState(history.state, '', url);
  return url.href;
}

if (typeof document !== 'undefined') {
  addEventListener('pagehide', addressNow);
  document.addEventListener('visibilitychange', () => document.visibilityState === 'hidden' && addressNow());
}
