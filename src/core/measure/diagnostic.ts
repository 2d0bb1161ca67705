/** A path in a file: ['pieces', 'pocket strip', 'size', 0]. */
export type Place = (string | number)[];

/** Where a diagnostic stands in a project file. */
export type InFile = {
  /** An empty place is the whole file. A place that starts with 'values' is a learner's choice. */
  place: Place;
  /** Where it starts and ends within the text at that place, in UTF-16 units. Left out, all of it. */
  start?: number | undefined;
  end?: number | undefined;
};

/** Where a diagnostic stands in one text: UTF-16 indices, `end` the first after the faulty part. */
export type InText = {
  start: number;
  end: number;
  /** A second part of the text that has to do with it. */
  also?: { start: number; end: number };
};

/** Something that the author or the learner should know: what is wrong, where, and what puts it right. */
export type Diagnostic<Where = InFile> = {
  /** An error leaves something out or makes it false; a warning may spoil the work; a note is worth a look. */
  severity: 'error' | 'warning' | 'note';
  /** A name for programs, which stays when the sentence changes. */
  code?: string | undefined;
  /** One or two plain sentences. */
  message: string;
  /** The likeliest way to put it right: a sentence, or in one text what could stand in place of the faulty part. */
  fix?: string | undefined;
  /** By how much, in mm, where that can be said. */
  amount?: number;
} & Where;

/** What a reading or a sum gives: the value, or the one fault that stood in its way. */
export type Result<T, E = Diagnostic<InText>> = { ok: true; value: T } | { ok: false; fault: E };

/** A result that went well. */
export const ok = <T>(value: T): { ok: true; value: T } => ({ ok: true, value });

/** A result that did not. */
export const fail = <const E = Diagnostic<InText>>(fault: E): { ok: false; fault: E } => ({ ok: false, fault });

/** A text as it begins a sentence. @example capital('width') // => 'Width' */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A label as it stands inside of a sentence; one that begins with two capitals keeps them. @example inSentence('Width') // => 'width' */
export const inSentence = (label: string): string =>
  /^\p{Lu}\p{Lu}/u.test(label) ? label : label.charAt(0).toLowerCase() + label.slice(1);

/** The longest piece of somebody's own text that a message repeats, in characters. */
const QUOTED = 32;

/**
 * Somebody's own words in quotation marks, shortened at the end of a word so that a message stays one readable sentence.
 *
 * @example quote('seam') // => '“seam”'
 */
export function quote(text: string): string {
  const characters = Array.from(text.slice(0, 2 * QUOTED + 2).replace(/\s+/gu, ' '));
  const short = () =>
    characters
      .slice(0, QUOTED - 1)
      .join('')
      .replace(/(?<=\S) \S*$/u, '');
  return characters.length > QUOTED ? `“${short()}…”` : `“${characters.join('')}”`;
}
