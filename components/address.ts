/** Browsers refuse an address that changes with every move of a slider, and fetch the page's icon anew each time. */
const REST = 500;

let addressTimer: ReturnType<typeof setTimeout> | undefined;
const addressChanges: ((query: URLSearchParams) => void)[] = [];

/** Changes the address once the hand rests. */
export function writeAddress(change: (query: URLSearchParams) => void): void {
  addressChanges.push(change);
  clearTimeout(addressTimer);
  addressTimer = setTimeout(addressNow, REST);
}

/** The page's address with every change made, for whoever wants to copy it. */
export function addressNow(): string {
  clearTimeout(addressTimer);
  const url = new URL(location.href);
  const changes = addressChanges.splice(0);
  for (const change of changes) change(url.searchParams);
  if (changes.length > 0) history.replaceState(history.state, '', url);
  return url.href;
}
