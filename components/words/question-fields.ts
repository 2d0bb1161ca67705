/** Attributes that several questions take. */
import { z } from 'zod';
import { readTolerance, slipKinds } from '../../src/core/index.ts';

export const questionName = z.string().min(1).describe('A name of its own in the lesson. Answers are kept under it.');
export const questionHint = z.string().min(1).optional().describe('What to say after the first wrong answer.');
const slipNames = slipKinds.join(', ');

/** What judges the answer to a sum. */
export const sumFields = {
  tolerance: z
    .string()
    .refine((text) => readTolerance(text, 'inch') !== undefined, {
      error: 'a length belongs here, or one for each edition: 1/16 in | 1 mm',
    })
    .optional()
    .describe(
      'How far off an answer may be: 1/8 in, or one for each edition, 1/8 in | 2 mm. Left out, half a mark of the ruler, and less for a small answer.',
    ),
  hint: questionHint,
  slips: z
    .record(z.string(), z.string().min(1))
    .optional()
    .describe(
      'Wrong sums that you expect, and what to say to each: {{"card width + ease": "A card has two sides."}}. The usual ones are known without this.',
    ),
  reword: z
    .record(z.string(), z.string().min(1))
    .optional()
    .describe(`Your own sentence for a usual slip: {{"left-out": "…"}}. Slips are called ${slipNames}.`),
  forbid: z
    .array(z.string())
    .optional()
    .describe('Usual slips that are not thought of here: {["half", "left-out seam"]}.'),
};

/** Which of them hold texts. */
export const sumTexts = { hint: 'whole', slips: 'meanings', reword: 'meanings' } as const;
