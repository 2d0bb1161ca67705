/** Names that become part of an address: of courses, lessons, projects and recordings. */
import type { Diagnostic } from './diagnostic.ts';

/** Whether a name can stand in an address as it is. */
export const isAddress = (name: string): boolean => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name);

/** What is said of a file whose name cannot. */
export const noAddress = (file: string): Diagnostic => ({
  file,
  line: 1,
  column: 1,
  severity: 'error',
  message: 'This name becomes part of an address: lower-case letters a to z, digits and hyphens only.',
});
