/** Names that become part of an address: of courses, lessons, projects and recordings. */
import path from 'node:path';
import type { Diagnostic } from './diagnostic.ts';

/** Whether a name can stand in an address as it is. */
export const isAddress = (name: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name);

/** What is said of a file whose name cannot. */
export const noAddress = (file: string): Diagnostic => {
  const { name, ext } = path.posix.parse(file);
  const better = asAddress(name);
  return {
    file,
    line: 1,
    column: 1,
    severity: 'error',
    message: 'This name becomes part of an address: lower-case letters a to z, digits and hyphens only.',
    fix: better === '' ? undefined : `Call it ${better}${ext}.`,
  };
};

/**
 * A name as an address has it; empty where nothing of it can be kept.
 *
 * @example asAddress('03 Größe & Maß') // => '03-groesse-mass'
 */
export const asAddress = (name: string): string =>
  name
    .toLowerCase()
    .replace(/[äöüßæøå]/gu, (letter) => ({ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss', æ: 'ae', ø: 'oe', å: 'aa' })[letter]!)
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z0-9]+/gu, '-')
    .replace(/^-|-$/gu, '');
