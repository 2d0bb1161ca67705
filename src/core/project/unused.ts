/** Which measures of a project nothing in it needs. */
import { compiled } from './compile.ts';
import { parseFormula } from '../formula/index.ts';
import { plainName, singleBlanks } from '../measure/index.ts';
import type { ProjectFile } from './schema.ts';

/** What stands under these is for reading, and is no formula. Brackets in it hold one: [card width]. */
const WORDS: ReadonlySet<string> = new Set(['title', 'summary', 'label', 'note', 'says', 'what', 'source', 'editions']);
const BRACKETS = /\[([^\][]+)\]/gu;

/** Steps take their allowance from it without naming it. */
const SEAM = plainName('seam');

/**
 * The measures, by name as the file writes them, that no other measure, no piece, step, hold or text of the project
 * uses. A lesson may still show them.
 *
 * @example unusedMeasures(file) // => ['strap length']
 */
export function unusedMeasures(file: ProjectFile): string[] {
  const { names } = compiled(file);
  const used = new Set([SEAM]);
  const read = (text: string): void => {
    const formula = parseFormula(text, { names });
    if (formula.ok) for (const name of formula.value.names) used.add(plainName(name));
  };
  const look = (value: unknown, key: string): void => {
    if (typeof value === 'string') {
      for (const [, inside] of value.matchAll(BRACKETS)) read(inside!);
      if (!WORDS.has(key)) read(value);
    } else if (Array.isArray(value)) for (const one of value) look(one, key);
    else if (typeof value === 'object' && value !== null) {
      for (const [name, one] of Object.entries(value)) look(one, name);
    }
  };
  for (const [key, value] of Object.entries(file)) {
    // A measure’s name may be a word such as “note”, and is no such key.
    if (key === 'measures') for (const measure of Object.values(file.measures)) look(measure, '');
    else look(value, key);
  }
  return Object.keys(file.measures).filter((name) => !used.has(plainName(singleBlanks(name))));
}
