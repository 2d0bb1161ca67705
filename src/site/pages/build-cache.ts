/**
 * Content does not change while a site is built, so a build reads it once. The live preview reads it for every page.
 */
export function oncePerBuild<T>(read: () => T): () => T {
  let cached: { value: T } | undefined;
  return () => (import.meta.env.PROD ? (cached ??= { value: read() }) : { value: read() }).value;
}

/** The same for a function of a text. */
export function oncePerBuildBy<T>(read: (text: string) => T): (text: string) => T {
  const cache = oncePerBuild(() => new Map<string, T>());
  return (text) => {
    const known = cache();
    if (!known.has(text)) known.set(text, read(text));
    return known.get(text)!;
  };
}
