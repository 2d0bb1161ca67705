/**
 * While a site is built its content stands still: what is read of it is read once. While it is written, every page looks
 * anew.
 */
export function standing<T>(read: () => T): () => T {
  let known: { is: T } | undefined;
  return () => (import.meta.env.PROD ? (known ??= { is: read() }) : { is: read() }).is;
}

/** The same for each text that is asked about. */
export function standingFor<T>(read: (text: string) => T): (text: string) => T {
  const known = standing(() => new Map<string, T>());
  return (text) => {
    const is = known();
    if (!is.has(text)) is.set(text, read(text));
    return is.get(text)!;
  };
}
