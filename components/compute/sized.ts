/** A project at a learner's size, as a worker can be told of it: it works the pattern out again by itself. */
import type { Edition, Materials, Pattern, ProjectFile } from '../../src/core/index.ts';
import type { Project } from '../page/learner.svelte.ts';

export type Sized = {
  file: ProjectFile;
  materials: Materials;
  edition: Edition;
  values: Record<string, number>;
  options: Record<string, boolean>;
};

export function sized({ file, materials }: Project, pattern: Pattern): Sized {
  const chosen = Object.values(pattern.measures).filter(({ adjustable }) => adjustable);
  return {
    file,
    materials,
    edition: pattern.edition,
    values: Object.fromEntries(chosen.map(({ name, value }) => [name, value])),
    options: Object.fromEntries(Object.entries(pattern.options).map(([name, { on }]) => [name, on])),
  };
}
