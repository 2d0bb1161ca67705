import type { Diagnostic, InText } from '../../src/core/index.ts';

/**
 * The text with the fix of a diagnostic put in; the text itself where there is none.
 *
 * @example fixed('ease + 2', { severity: 'error', message: '', start: 7, end: 8, fix: '2 in' }) // => 'ease + 2 in'
 */
export function fixed(text: string, { start, end, fix }: Diagnostic<InText>): string {
  return fix === undefined ? text : text.slice(0, start) + fix + text.slice(end);
}
