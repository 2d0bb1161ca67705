/** Names of people and texts from elsewhere: every writing of the world, and no sign that turns the text around it. */

/** Signs that come along unseen when a name is pasted: directions, soft hyphens, marks of bytes, joiners of words. */
const PASTED = /[\u00ad\u061c\u180e\u200b\u200e\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufeff\ufff9-\ufffb]/gu;
/** Joiners at an edge join nothing. Between letters they belong to Persian, Arabic and Indian names, and to joined emoji. */
const AT_EDGES = /^[\s\u200c\u200d]+|[\s\u200c\u200d]+$/gu;
/** Lone halves of a sign, controls, and what no one has given a meaning. */
const BROKEN = /[\p{Cc}\p{Cs}]+/gu;
/** A sign that a reader sees: no filler of a writing, and not the empty pattern of Braille. */
const SEEN = /[^\p{Default_Ignorable_Code_Point}\p{Z}\p{C}\u2800]/u;

/** The longest name, in UTF-16 units. */
export const LONGEST_NAME = 60;

/**
 * A name as it is handed in and shown: composed, on one line, without what came along unseen, and never cut in the
 * middle of a sign; empty where there is nothing to see.
 *
 * @example cleanName(' \u202bعلی\u200cرضا\u202c ') // => 'علی\u200cرضا'
 */
export function cleanName(typed: string): string {
  const name = typed
    .normalize('NFC')
    .replace(PASTED, '')
    .replace(BROKEN, ' ')
    .replace(/\s+/gu, ' ')
    .replace(AT_EDGES, '');
  if (!SEEN.test(name)) return '';
  if (name.length <= LONGEST_NAME) return name;
  let short = '';
  for (const { segment } of new Intl.Segmenter().segment(name)) {
    if (short.length + segment.length > LONGEST_NAME) break;
    short += segment;
  }
  return short.replace(AT_EDGES, '');
}

/** Sentences as they are shown: composed, with their lines, and without what came along unseen. */
export const cleanText = (typed: string): string =>
  typed
    .normalize('NFC')
    .replace(/\r\n?/gu, '\n')
    .replace(PASTED, '')
    .split('\n')
    .map((line) => line.replace(BROKEN, ' ').trimEnd())
    .join('\n')
    .trim();
