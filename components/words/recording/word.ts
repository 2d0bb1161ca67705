import { z } from 'zod';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  name: z
    .string()
    .describe('The recording: the name of its file in the folder recordings of the course, without its ending.'),
});
export type Attributes = z.infer<typeof attributes>;

/** What it shows is worked out of the recording's files, which the page reads. */
export const Recording: Word = {
  group: 'making',
  about:
    'A recording of the making: what is said in it beside the player, the steps to jump to, and captions that follow the reader’s edition and size. Without the recording itself, a transcript with its times.',
  example: '<Recording name="whole" />',
  attributes,
  names: { name: 'recording' },
};
