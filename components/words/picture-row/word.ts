import { z } from 'zod';
import type { Word } from '../word.ts';

/** It has no view: it sets beside each other what stands between its tags. */
export const PictureRow: Word = {
  group: 'note',
  about:
    'Several pictures beside each other, such as before and after; on a narrow screen they stand below each other.',
  example:
    '<PictureRow>\n\n<Picture of="folded-hem.jpg" shows="A hem, folded up twice">\n\nBefore\n\n</Picture>\n\n<Picture of="sewn-hem.jpg" shows="The same hem, with a row of stitches along its edge">\n\nAfter\n\n</Picture>\n\n</PictureRow>',
  attributes: z.strictObject({}),
  text: 'needed',
  anywhere: true,
};
