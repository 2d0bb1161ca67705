import type { Formula } from './tree.ts';

/**
 * A ring of formulas that need each other, as the names along it with the first one again at the end; undefined where
 * there is none. Names that no formula of the map belongs to end a path.
 *
 * @example findCycle(new Map([['a', formula('b + 1 in')], ['b', formula('2 * a')]])) // => ['a', 'b', 'a']
 * @example findCycle(new Map([['a', formula('b + 1 in')]])) // => undefined
 */
export function findCycle(formulas: ReadonlyMap<string, Formula>): string[] | undefined {
  const done = new Set<string>();
  for (const first of formulas.keys()) {
    // The path from `first` to where the search stands, each name with the place in its list that comes next. Kept by
    // hand instead of by recursion, so that a long chain of measures cannot run out of stack.
    const path: { name: string; next: number }[] = [];
    const onPath = new Set<string>();
    const enter = (name: string) => {
      if (done.has(name) || !formulas.has(name)) return;
      path.push({ name, next: 0 });
      onPath.add(name);
    };
    enter(first);
    for (let step = path.at(-1); step; step = path.at(-1)) {
      const name = formulas.get(step.name)!.names[step.next++];
      if (name === undefined) {
        done.add(step.name);
        onPath.delete(step.name);
        path.pop();
      } else if (onPath.has(name)) {
        const names = path.map((passed) => passed.name);
        return [...names.slice(names.indexOf(name)), name];
      } else enter(name);
    }
  }
  return undefined;
}
