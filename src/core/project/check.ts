/** What an instructor should know before the first cut. */
import type { Finding, Pattern } from './pattern.ts';

/**
 * Every finding about a pattern: those of resolving it, and what does not fit where it should.
 *
 * @example check(resolveProject(file)) // => [] when all is well
 */
export function check(pattern: Pattern): Finding[] {
  const misfits = pattern.holds
    .filter((hold) => !hold.fits)
    .map((hold): Finding => {
      const lack = Math.max(
        0,
        -hold.room.width,
        -hold.room.height,
        hold.cover * hold.size.height - (hold.size.height - hold.shows),
      );
      return {
        severity: 'error',
        place: [...hold.place, 'in'],
        code: 'does-not-fit',
        message: hold.sentence,
        mend: mendOf(hold),
        amount: lack,
      };
    });
  return [...pattern.findings, ...misfits];
}

function mendOf({ room, covered, cover, piece, pocket }: Pattern['holds'][number]): string {
  if (room.width < -0.05) return `Make ${piece} wider, or the ease smaller.`;
  if (covered < cover) return 'Make the pockets deeper, or ask for less cover.';
  return pocket === undefined
    ? `Make ${piece} taller, or the ease smaller.`
    : 'Make the head above the top pocket larger.';
}
