/**
 * A list with one thing moved to another place.
 *
 * @example moved(['a', 'b', 'c'], 0, 2) // => ['b', 'c', 'a']
 */
export function moved<T>(list: readonly T[], from: number, to: number): T[] {
  const rest = list.filter((_, i) => i !== from);
  const thing = list[from];
  return thing === undefined || to < 0 || to >= list.length ? [...list] : rest.toSpliced(to, 0, thing);
}
