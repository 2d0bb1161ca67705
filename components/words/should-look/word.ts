import { z } from 'zod';
import { insideStep } from '../step/inside-step.ts';
import type { Word } from '../word.ts';

/** It has no view: all it shows is the text between its tags. */
export const ShouldLook: Word = {
  group: 'making',
  about:
    'Inside a Step: how it looks when it is right, in your words, with a photograph if you have one. It stands in place of “should look” in the project file.',
  example:
    '<Step id="pleat">\n\n<ShouldLook>\n\nThe tops of the pockets lie one below the other, all level.\n\n</ShouldLook>\n\n</Step>',
  attributes: z.strictObject({}),
  text: 'needed',
  check: insideStep,
};
