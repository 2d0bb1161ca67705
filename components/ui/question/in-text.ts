/** Texts of a question with sizes in them: `Add [2 * seam] to it.` What stands in brackets is worked out. */
import { showQuantity, valueOf } from '../../page/quantity.ts';
import type { Pattern } from '../../../src/core/index.ts';

/** Words and sizes in turn; the first is always words, if only none. */
export const partsOf = (text: string): string[] => text.split(/\[([^\][]+)\]/u);

/**
 * A text with its sizes at the learner's size. On a page without a project it stays as it is.
 *
 * @example inText('Add [2 * seam].', pattern) // => 'Add ½ in.'
 */
export const inText = (text: string, pattern: Pattern | undefined): string =>
  pattern
    ? partsOf(text)
        .map((part, i) => (i % 2 === 1 ? showQuantity(valueOf(part, pattern), pattern) : part))
        .join('')
    : text;
