/**
 * While a site is built its content stands still: what is read of it is read once. While it is written, every page looks
 * anew.
 */
export function standing<T>(read: () => T): () => T {
  let known: { is: T } | undefined;
  return () => (import.meta.env.PROD ? (known ??= { is: read() }) : { is: read() }).is;
}
