/** What the author's form and its page tell each other. */
import type { Materials, ProjectFile } from '../../core/index.ts';
import type { Place } from '../../site/content/located-yaml.ts';

/** One value of the project file, as a box of the form. */
export type FormField = {
  place: Place;
  /** Its name inside its entry: “in”, “between › least”. */
  label: string;
  /** As the file has it, without quotes. */
  value: string;
  /** What the authoring reference says of it. */
  about?: string;
  /** Where only these may stand. */
  choices?: readonly string[];
  line: number;
};

/** One measure, piece, step or the like. */
export type FormEntry = {
  place: Place;
  name: string;
  fields: FormField[];
  /** What else may stand in it, each with the words of the authoring reference. */
  more: { name: string; about?: string }[];
};

export type FormSection = { name: string; about?: string; entries: FormEntry[] };

/** A project file as it lies on disk, or in its last state that could be read. */
export type FormState = {
  file: string;
  sections: FormSection[];
  project: ProjectFile;
  materials: Materials;
  /** Why the file on disk cannot be read; the rest is then its last state. */
  broken?: { line: number; column: number; message: string; fix?: string | undefined };
};

/**
 * A change as the page sends it. `was` is what stood in the box before: what the author looked at. Without it the value
 * is a new one.
 */
export type ValueChange = { place: Place; was?: string | undefined; value: string };

/** What became of a change. */
export type ChangeResult =
  | { kind: 'written'; form: FormState; line: number }
  /** Another hand changed the same value on disk meanwhile; undefined where it is gone. */
  | { kind: 'conflict'; form: FormState; theirs: string | undefined }
  /** It cannot stand there, so it was not written. */
  | { kind: 'refused'; message: string; fix?: string | undefined };

/** All boxes of a form. */
export const allFields = ({ sections }: Pick<FormState, 'sections'>): FormField[] =>
  sections.flatMap(({ entries }) => entries.flatMap(({ fields }) => fields));

/** What is said in the recordings of a project, as they lie on disk. */
export type SaidState = {
  recordings: {
    course: string;
    name: string;
    file: string;
    /** As `npm run check` has them. */
    findings: { severity: 'error' | 'warning' | 'note'; message: string; fix?: string; line: number }[];
    /** What was heard, and what is likely meant, with every place. */
    misheard: { heard: string; meant: string; where: { at: string; before: string; after: string }[] }[];
  }[];
};

/** A word for the list of a course: what was heard, and what was said. */
export type MendedWord = { course: string; heard: string; meant: string };

/** What became of it. */
export type MendResult =
  | { kind: 'written'; file: string; line: number; said?: SaidState }
  | { kind: 'refused'; message: string; fix?: string | undefined };
