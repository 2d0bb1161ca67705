import { z } from 'zod';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z.string().min(1).describe('The file beside the lesson, of any kind: a PDF, a ZIP, a table, a sound.'),
  says: z.string().min(1).optional().describe('What the link says. Left out, the name of the file.'),
});
export type Attributes = z.infer<typeof attributes>;

/** It has no view: the page looks at the file. */
export const Download: Word = {
  group: 'note',
  about: 'A file that lies beside the lesson, to take along. Its kind and its size stand behind the link.',
  example: '<Download of="plan-of-the-room.pdf" says="Where the tables stand" />',
  attributes,
  names: { of: 'file' },
  texts: { says: 'whole' },
  anywhere: true,
};
