import { z } from 'zod';
import { insideStep } from '../step/inside-step.ts';
import type { Word } from '../word.ts';

/** It has no view: all it shows is the text between its tags. */
export const IfWrong: Word = {
  group: 'making',
  about:
    'Inside a Step: what to do if it went wrong, in your words, with a photograph if you have one. It stands in place of “if wrong” in the project file.',
  example:
    '<Step id="pleat">\n\n<IfWrong>\n\nOpen the fold that is off, damp it, and press it flat before you fold anew.\n\n</IfWrong>\n\n</Step>',
  attributes: z.strictObject({}),
  text: 'needed',
  check: insideStep,
};
