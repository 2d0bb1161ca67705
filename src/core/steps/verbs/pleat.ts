import { edgeOn } from '../../cloth/sides.ts';
import { crossing, cutEdge, pleat as foldPleats } from '../../cloth/pleat.ts';
import { fail, listed, quote } from '../../measure/index.ts';
import { areaOf } from '../../cloth/ring.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { length, optional, work } from '../fields.ts';
import type { Ply } from '../../cloth/index.ts';

const other = { mountain: 'valley', valley: 'mountain' } as const;

export const pleat = verb({
  name: 'pleat',
  fields: {
    pleat: work(
      'Folds a piece along the pleats it has under pieces, across it or along an edge; hems may be sewn before.',
    ),
    topstitch: optional(
      length(
        'a row on each pleat’s own edge, that far from it, sewn through the pleat alone before the next is folded.',
      ),
    ),
  },
  pleats: true,
  ironsFirst: true,
  handling: 1,
  title: ({ pleat: strip, topstitch: row }) =>
    `Fold the pleats of ${the(strip)}${row === undefined ? '' : ', each with a row on its edge'}`,
  measured: ({ topstitch: row }) =>
    row === undefined
      ? []
      : [{ says: 'Sew a row … from the edge of each pleat, before you fold the next.', length: row }],
  tools: ({ topstitch: row }) => [
    'ruler',
    'pen',
    'iron',
    'clips',
    ...(row === undefined ? [] : (['machine'] as const)),
  ],
  apply: ({ pleat: name, topstitch: row }, { pleat: strip }, { pleatsOf }) => {
    const pleated = strip.plies.filter(({ piece }) => pleatsOf(piece) !== undefined);
    const pieces = [...new Set(pleated.map(({ piece }) => piece))];
    const [first] = pleated;
    if (!first) return fail({ code: 'unknown-piece', message: `${quote(name)} has no pleats under pieces.` });
    const { from, folds: marked } = pleatsOf(first.piece)!;
    const isAlong = pleatsOf(first.piece)!.isAlong === true;
    const cloths = new Set(pleated.map(({ piece, copy = 0 }) => `${copy} ${piece}`)).size;
    if (cloths > 1 || (pleated.length > 1 && !isAlong)) {
      const called = cloths > pieces.length ? `${cloths} cut as ${listed(pieces)}` : listed(pieces);
      const message = `Several layers of ${quote(name)} have pleats: ${called}.`;
      return fail({ code: 'held', message, fix: 'Fold them before they are sewn together.' });
    }
    // Of a piece that was hemmed, what is not turned in tells where its marks lie.
    const ply = pleated.reduce((most, one) => (areaOf(one.outline) > areaOf(most.outline) ? one : most));
    const edge = isAlong ? cutEdge(ply, from) : edgeOn(strip, `${ply.piece} bottom`);
    if ('ok' in edge && !edge.ok) return edge;
    const line = 'ok' in edge ? edge.value : edge;
    const lost = isAlong ? marked.findIndex(({ at }) => !crossing(ply, line, at)) : -1;
    if (lost >= 0) {
      const message = `Fold ${lost + 1} of ${quote(ply.piece)} lies where the cloth is folded in already, or was cut away.`;
      return fail({ code: 'misses', message, piece: ply.piece });
    }
    return foldPleats(strip, {
      from: line,
      folds: marked.map(({ at, kind }) => ({ at, kind: seenFrom(ply, kind) })),
      // A pleat's own edge is a mountain on the right side.
      ...(row !== undefined && { row: { on: seenFrom(ply, 'mountain'), by: row } }),
    });
  },
});

/** Mountains and valleys are told from the right side. */
const seenFrom = ({ face }: Ply, kind: 'mountain' | 'valley') => (face === 'right' ? kind : other[kind]);
