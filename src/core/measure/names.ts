/** Names as people write them. */

/**
 * A name as it is compared: capitals and the number of blanks do not count.
 *
 * @example plainName(' Packet  width ') // => 'packet width'
 */
export const plainName = (name: string): string => singleBlanks(name).toLowerCase();

/** A name with its capitals, without blanks around it or runs of them in it. */
export const singleBlanks = (name: string): string => name.trim().replace(/\s+/gu, ' ');
