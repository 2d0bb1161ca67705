/** All that the browser keeps for this site, as one file: to take along, to put back, to clear. */
import { replaceSaved, savedEntries } from '../page/saved-entries.ts';
import { asRecord, type StorageTrouble } from '../page/storage.ts';

/** In characters: many times what a whole course makes. */
const MOST = 1_000_000;
const MOST_OF_ONE = 16_000;

/** What a browser keeps for a course: choices, answers and steps, and nothing of anybody else's. */
const KEYS = /^(?:(?:answer|practice|measured|read|done|place|steps|size|class):[^\p{Cc}]+|edition|theme)$/u;

export const progressFile = (): string => JSON.stringify({ progress: 1, kept: Object.fromEntries(savedEntries()) });

/** How it ended, in a sentence for the learner. */
export type Outcome = { ok: boolean; sentence: string };

const no = (sentence: string): Outcome => ({ ok: false, sentence: `${sentence} Nothing was changed.` });

/**
 * Puts a file's answers in the place of what is kept now: all of them, or else nothing is changed. What this version of
 * the kit does not know is passed over.
 */
export function restore(text: string): Outcome {
  const none = no('That is not a file of your progress.');
  const file = text.length > MOST ? undefined : asRecord(parsed(text));
  const kept = file?.progress === 1 ? asRecord(file.kept) : undefined;
  if (!kept) return none;
  const entries = new Map<string, string>();
  let isAll = true;
  for (const [key, one] of Object.entries(kept)) {
    if (key.length > 400 || !KEYS.test(key)) isAll = false;
    else if (typeof one !== 'string' || one.length > MOST_OF_ONE || parsed(one) === undefined) return none;
    else entries.set(key, one);
  }
  if (entries.size === 0) return no('There is no progress in that file.');
  const trouble = replaceSaved(entries);
  if (trouble) return no(`The progress in that file could not be kept: ${REASON[trouble]}.`);
  const known = 'Your progress is back.';
  return { ok: true, sentence: isAll ? known : `${known} What this site does not know was left out.` };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** Why a browser keeps nothing. */
export const REASON: Record<StorageTrouble, string> = {
  full: 'your browser has no room left',
  forbidden: 'your browser does not let the page keep anything',
};

/** Forgets everything that this site keeps. */
export function clear(): Outcome {
  const trouble = replaceSaved(new Map());
  return trouble
    ? no(`It could not be cleared: ${REASON[trouble]}.`)
    : { ok: true, sentence: 'Everything is cleared.' };
}
