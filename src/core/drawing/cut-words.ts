import { area } from '../geometry/index.ts';
import { capital, listed } from '../measure/index.ts';
import { numbered } from './layout.ts';
import type { LaidCloth, StraightCut } from '../layout/index.ts';

/** How a list of cuts speaks: what learners call a piece, and how it writes lengths of so many mm. */
export type CutWords = { labels: Readonly<Record<string, string>>; set: (mm: number) => string };

/**
 * The straight cuts of a cloth as a person follows them, a sentence or two for each; alike cuts in a row are one. Pieces
 * have the number that they have in the drawing and in the list of places.
 *
 * @example
 * cutSentences(laid, words)[0] // => 'The cloth: measure 4 in and cut from selvage to selvage. That is strip A.'
 */
export function cutSentences(laid: LaidCloth, { labels, set }: CutWords): string[] {
  const pieces = new Map(
    numbered(laid.placements).map(({ n, piece, number }) => [
      `${piece} ${number}`,
      { n, piece, label: labels[piece] ?? piece },
    ]),
  );
  const called = (part: string): string => {
    const piece = pieces.get(part);
    return part === laid.cloth ? 'the cloth' : piece ? `${piece.label} (${piece.n})` : part;
  };
  const straight = rowsOf(laid.cuts, (part) => pieces.get(part)?.piece).map((row) => {
    const { of, way, measure } = row[0]!;
    const { leaves } = row.at(-1)!;
    const where = way === 'across' ? 'from selvage to selvage' : 'along the selvage';
    const times = row.length > 1 ? `, ${row.length} times` : '';
    const made = row.map(({ makes }) => called(makes));
    const which = listed(made);
    const rest = leaves === of ? '' : ` ${capital(called(leaves))} is left.`;
    const are = row.length > 1 ? 'These are' : 'That is';
    return `${capital(called(of))}: measure ${set(measure)} and cut ${where}${times}. ${are} ${which}.${rest}`;
  });
  // Straight cuts give the boxes round them.
  const shaped = laid.placements.filter(({ outline, size }) => area(outline) < 0.999 * size.width * size.height);
  const last = shaped.map(({ piece, number }) => called(`${piece} ${number}`));
  return last.length === 0 || straight.length === 0
    ? straight
    : [...straight, `Now cut ${listed(last)} to shape, by the template.`];
}

/** Cuts in a row that are made alike: off one part, as far from the last, each giving the same piece. */
function rowsOf(cuts: readonly StraightCut[], pieceOf: (part: string) => string | undefined): StraightCut[][] {
  const rows: StraightCut[][] = [];
  for (const cut of cuts) {
    const last = rows.at(-1)?.at(-1);
    const piece = pieceOf(cut.makes);
    const alike =
      last &&
      piece !== undefined &&
      pieceOf(last.makes) === piece &&
      last.leaves === last.of &&
      last.of === cut.of &&
      last.way === cut.way &&
      Math.abs(last.measure - cut.measure) < 1e-3;
    if (alike) rows.at(-1)!.push(cut);
    else rows.push([cut]);
  }
  return rows;
}
