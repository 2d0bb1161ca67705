/** Gives a text to the reader as a file of theirs. */
export function download(text: string, name: string, type = 'application/json'): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  Object.assign(document.createElement('a'), { href: url, download: name }).click();
  // The browser reads it after this turn.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
