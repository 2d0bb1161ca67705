import { z } from 'zod';
import { check } from './check.ts';
import type { Word } from '../word.ts';

const attributes = z.strictObject({
  of: z
    .string()
    .min(1)
    .describe('The file beside the lesson: a photograph (.jpg, .png, .webp, .avif) or a drawing (.svg).'),
  shows: z.string().min(1).describe('What is to be seen on it, for those who cannot see it.'),
  marks: z
    .record(z.string(), z.string().min(1))
    .optional()
    .describe(
      'Numbered marks on it, and what each is: {{ "30 40": "the fold" }} sets mark 1 at 30 hundredths of its width from the left and 40 of its height from the top.',
    ),
});
export type Attributes = z.infer<typeof attributes>;

/** It has no view: all it shows stands in the lesson and in the file. */
export const Picture: Word = {
  group: 'note',
  about:
    'A photograph or a drawing that lies beside the lesson, as wide as the page at the most and large when it is pressed. Your own words between the tags stand below it.',
  example:
    '<Picture of="folded-hem.jpg" shows="The corner of a cloth with its hem folded up twice" marks={{"24 62": "first fold", "70 88": "edge that is sewn"}}>\n\nPress the first fold before you turn the second.\n\n</Picture>',
  attributes,
  names: { of: 'picture' },
  texts: { marks: 'meanings' },
  text: 'allowed',
  anywhere: true,
  check,
};
