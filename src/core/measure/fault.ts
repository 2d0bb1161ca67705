/**
 * A mistake in a text that an author or a learner wrote, as a value.
 *
 * `start` and `end` are UTF-16 indices into that text; `end` is the first index after the faulty part. `mend` is a
 * text that could stand in place of that part. `also` is a second place that has to do with it.
 */
export type Fault = {
  code: string;
  message: string;
  start: number;
  end: number;
  mend?: string;
  also?: { start: number; end: number };
};

/** What a reading or a sum gives: the value, or the one fault that stood in its way. */
export type Result<T, E = Fault> = { ok: true; value: T } | { ok: false; fault: E };

/** A result that went well. */
export const ok = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });

/** A result that did not. */
export const fail = <E = Fault>(fault: E): { ok: false; fault: E } => ({ ok: false, fault });

/**
 * The text with the fault's mend put in; the text itself where there is none.
 *
 * @example mended('ease + 2', { code: 'kinds-differ', message: '', start: 7, end: 8, mend: '2 in' }) // => 'ease + 2 in'
 */
export function mended(text: string, { start, end, mend }: Fault): string {
  return mend === undefined ? text : text.slice(0, start) + mend + text.slice(end);
}

/** A text as it begins a sentence. @example capital('width') // => 'Width' */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The longest piece of somebody's own text that a message repeats, in characters. */
const QUOTED = 32;

/**
 * Somebody's own words in quotation marks, shortened so that a message stays one readable sentence.
 *
 * @example quote('seam') // => '“seam”'
 */
export function quote(text: string): string {
  const characters = Array.from(text.slice(0, 2 * QUOTED + 2).replace(/\s+/gu, ' '));
  return characters.length > QUOTED ? `“${characters.slice(0, QUOTED - 1).join('')}…”` : `“${characters.join('')}”`;
}
