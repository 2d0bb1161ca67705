/** The texts of a project file: where they stand, and what they say at a learner's size. */
import { partsOf, workedText, type Scope } from '../formula/index.ts';
import { compiled } from './compile.ts';
import { oncePer } from './cache.ts';
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

/** Many texts of a pattern are worked out with one scope: finding the names in a formula takes longer than its sum. */
const scopeFor = oncePer((pattern: Pattern) => scopeOf(pattern));

/**
 * What an author wrote, with each formula in square brackets worked out at the pattern's size and in its edition. A text
 * that belongs to no project stays as it is.
 *
 * @example inText('Add [2 * seam].', pattern) // => 'Add ½ in.'
 */
export function inText(text: string, pattern: Pattern | undefined): string {
  if (!text.includes('[')) return text;
  if (pattern) return workedText(text, scopeFor(pattern));
  return partsOf(text)
    .map((part, i) => (i % 2 === 1 ? `[${part}]` : part))
    .join('');
}

/** A text of a file, and the path to it. */
export type WrittenText = { place: Place; text: string };

/** Every text of a project file that people read: title, summary, labels, notes, what is held, and what its steps say. */
export function textsIn(file: ProjectFile): WrittenText[] {
  const found: WrittenText[] = [];
  const read = (place: Place, entry: unknown, ...keys: string[]) => {
    for (const key of keys) {
      const text = typeof entry === 'object' && entry !== null ? (entry as Record<string, unknown>)[key] : undefined;
      if (typeof text === 'string') found.push({ place: [...place, key], text });
    }
  };
  read([], file, 'title', 'summary');
  read(['sizes'], file.sizes, 'label', 'note');
  for (const [name, { 'one of': of }] of Object.entries(file.choices ?? {}))
    for (const [one, entry] of Object.entries(of)) read(['choices', name, 'one of', one], entry, 'label', 'note');
  for (const group of ['measures', 'materials', 'pieces', 'options', 'choices'] as const)
    for (const [name, entry] of Object.entries<unknown>(file[group] ?? {})) {
      read([group, name], entry, 'label', 'note');
      if (group !== 'pieces') continue;
      const { notches = [], folds = [] } = file.pieces[name]!;
      for (const [i, notch] of notches.entries()) read([group, name, 'notches', i], notch, 'label');
      for (const [i, fold] of folds.entries()) read([group, name, 'folds', i], fold, 'label');
    }
  for (const [i, hold] of (file.holds ?? []).entries()) read(['holds', i], hold, 'what');
  for (const [i, step] of (file.steps ?? []).entries())
    read(['steps', i], step, 'says', 'note', 'should look', 'if wrong');
  return found;
}

/** Works out the texts of a pattern once its measures are there. Those of its steps follow when it is made up. */
export function workTexts(pattern: Pattern): void {
  const worked = (text: string): string => inText(text, pattern);
  // What was found wrong names things by labels as they were written.
  const { measures, pieces } = compiled(pattern.origin.file);
  for (const { label } of [...measures.values(), ...pieces.values()]) {
    if (!label.includes('[')) continue;
    const now = worked(label);
    pattern.findings = pattern.findings.map((one) => ({ ...one, message: one.message.replaceAll(label, now) }));
  }
  pattern.title = worked(pattern.title);
  if (pattern.summary !== undefined) pattern.summary = worked(pattern.summary);
  type Told = { label?: string; spoken?: string; note?: string };
  const work = (one: Told): void => {
    if (one.label?.includes('[')) one.label = worked(one.label);
    if (one.spoken?.includes('[')) one.spoken = worked(one.spoken);
    if (one.note?.includes('[')) one.note = worked(one.note);
  };
  const { measures: sized, pieces: cut, options, choices, materials, sizes } = pattern;
  const ones = Object.values(choices).map(({ of }) => of);
  for (const group of [sized, cut, options, choices, ...ones, materials])
    for (const one of Object.values<Told>(group)) work(one);
  if (sizes) work(sizes);
  for (const { notches, folds } of Object.values(pattern.pieces)) for (const one of [...notches, ...folds]) work(one);
  for (const hold of pattern.holds) {
    if (!hold.what.includes('[')) continue;
    [hold.what, hold.thing, hold.sentence] = [worked(hold.what), worked(hold.thing), worked(hold.sentence)];
  }
}
