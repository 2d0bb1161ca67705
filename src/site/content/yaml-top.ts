import { parse } from 'yaml';

/**
 * Some entries at the top of a YAML file, read without the rest of it: for a list of hundreds of files, of which it shows
 * the titles. An entry that cannot be read so is missing; nothing is checked.
 *
 * @example
 * topEntries('title: Folio\nsteps:\n  - press: strip\n', ['title', 'summary']) // => { title: 'Folio' }
 */
export function topEntries(text: string, names: readonly string[]): Readonly<Record<string, unknown>> {
  // Each entry at the top begins at the start of a line; what follows and belongs to it is set in, or empty.
  const entries = text.split(/^(?=[^\s#-])/mu);
  const wanted = entries.filter((entry) => names.some((name) => entry.startsWith(`${name}:`)));
  try {
    const found: unknown = parse(wanted.join(''), { logLevel: 'error' });
    return typeof found === 'object' && found !== null ? (found as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}
