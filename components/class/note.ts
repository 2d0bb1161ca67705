/** A note from a teacher to a learner, as a small file: a few sentences, and nothing but text. */
import { asRecord } from '../page/storage.ts';
import { cleanName, cleanText } from './names.ts';

export type Note = {
  /** The learner's name. */
  to: string;
  course: string;
  /** As 2030-12-31. */
  day: string;
  text: string;
};

/** In UTF-16 units. */
export const LONGEST_NOTE = 1000;
/** Of a file, in characters: a note with every sign escaped, and its name. */
const MOST_TEXT = 20_000;

/** A note as the text of a file. */
export const toNoteFile = (note: Note): string => JSON.stringify({ note: 1, ...note, text: cleanText(note.text) });

/** Reads one. It may come from anybody: what is shown of it is text alone, and short. */
export function readNote(file: string): { ok: true; value: Note } | { ok: false; sentence: string } {
  const none = { ok: false as const, sentence: 'That is not a note from a teacher.' };
  if (file.length > MOST_TEXT) return none;
  let read: Record<string, unknown> | undefined;
  try {
    read = asRecord(JSON.parse(file));
  } catch {
    return none;
  }
  const { note, to, course, day, text } = read ?? {};
  if (note !== 1 || typeof to !== 'string' || typeof course !== 'string' || typeof text !== 'string') return none;
  if (typeof day !== 'string' || !/^\d{4}-\d\d-\d\d$/.test(day) || text.length > LONGEST_NOTE) return none;
  const value = { to: cleanName(to), course, day, text: cleanText(text) };
  return value.text === '' ? none : { ok: true, value };
}
