/** Codes in a text that somebody pasted. */
import { MARK } from './wire.ts';

/** @returns the codes, and how many other words stand between them: those are only counted, however many they are */
export function codesIn(pasted: string): { codes: string[]; others: number } {
  const words = pasted.split(/\s+/u).filter(Boolean);
  const codes = words.filter((word) => word.startsWith(MARK));
  return { codes, others: words.length - codes.length };
}
