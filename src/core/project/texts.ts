/** The texts of a project file: where they stand, and what they say at a learner's size. */
import { partsOf, workedText, type Scope } from '../formula/index.ts';
import { ok, type Place } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { ProjectFile } from './schema.ts';

/** A pattern's measures, as a formula asks for them. */
export function scopeOf({ measures, edition, grid }: Pick<Pattern, 'measures' | 'edition' | 'grid'>): Scope {
  return {
    edition,
    grid,
    known: Object.keys(measures),
    get: (name) => {
      const found = Object.hasOwn(measures, name) ? measures[name]! : undefined;
      return found && ok({ value: found.value, dimension: found.dimension });
    },
  };
}

/**
 * What an author wrote, with each formula in square brackets worked out at the pattern's size and in its edition. A text
 * that belongs to no project stays as it is.
 *
 * @example inText('Add [2 * seam].', pattern) // => 'Add ½ in.'
 */
export function inText(text: string, pattern: Pattern | undefined): string {
  if (!text.includes('[')) return text;
  if (pattern) return workedText(text, scopeOf(pattern));
  return partsOf(text)
    .map((part, i) => (i % 2 === 1 ? `[${part}]` : part))
    .join('');
}

/** A text of a file, and the path to it. */
export type WrittenText = { place: Place; text: string };

/** Every text of a project file that people read: its title, its summary, its notes, and what its steps say. */
export function textsIn(file: ProjectFile): WrittenText[] {
  const found: WrittenText[] = [];
  const read = (place: Place, text: unknown) => {
    if (typeof text === 'string') found.push({ place, text });
  };
  read(['title'], file.title);
  read(['summary'], file.summary);
  for (const group of ['measures', 'materials', 'pieces', 'options'] as const)
    for (const [name, entry] of Object.entries<unknown>(file[group] ?? {}))
      if (typeof entry === 'object' && entry !== null && 'note' in entry) read([group, name, 'note'], entry.note);
  for (const [i, step] of (file.steps ?? []).entries())
    for (const key of ['says', 'note'] as const) read(['steps', i, key], step[key]);
  return found;
}

/** Works out the texts of a pattern once its measures are there. Those of its steps follow when it is made up. */
export function workTexts(pattern: Pattern): void {
  pattern.title = inText(pattern.title, pattern);
  if (pattern.summary !== undefined) pattern.summary = inText(pattern.summary, pattern);
  for (const group of [pattern.measures, pattern.pieces, pattern.options, pattern.materials])
    for (const one of Object.values<{ note?: string }>(group))
      if (one.note?.includes('[')) one.note = inText(one.note, pattern);
}
