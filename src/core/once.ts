/**
 * A function that is asked again and again for the same text of the same thing, and works it out once.
 *
 * @example
 * const length = oncePer((thing: object, text) => text.length);
 * length(project, 'seam') // => 4
 */
export function oncePer<Thing extends object, T>(workOut: (thing: Thing, text: string) => T) {
  const known = new WeakMap<Thing, Map<string, T>>();
  return (thing: Thing, text: string): T => {
    const own = known.get(thing) ?? new Map<string, T>();
    known.set(thing, own);
    if (!own.has(text)) own.set(text, workOut(thing, text));
    return own.get(text)!;
  };
}
