import { edgeOn } from '../../cloth/sides.ts';
import { fail, listed, quote } from '../../measure/index.ts';
import { pleat as foldPleats } from '../../cloth/pleat.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { work } from '../fields.ts';

const other = { mountain: 'valley', valley: 'mountain' } as const;

export const pleat = verb({
  name: 'pleat',
  fields: { pleat: work('Folds a piece along the pleats it has under pieces.') },
  pleats: true,
  ironsFirst: true,
  handling: 1,
  title: ({ pleat: strip }) => `Fold the pleats of ${the(strip)}`,
  tools: () => ['ruler', 'pen', 'iron', 'clips'],
  apply: ({ pleat: name }, { pleat: strip }, { pleatsOf }) => {
    const pleated = strip.plies.filter(({ piece }) => pleatsOf(piece) !== undefined);
    const pieces = [...new Set(pleated.map(({ piece }) => piece))];
    const [ply] = pleated;
    if (!ply) return fail({ code: 'unknown-piece', message: `${quote(name)} has no pleats under pieces.` });
    if (pieces.length > 1 || pleated.length > 1) {
      const message = `Several layers of ${quote(name)} have pleats: ${listed(pieces)}. Fold them before they are sewn together.`;
      return fail({ code: 'held', message });
    }
    const from = edgeOn(strip, `${ply.piece} bottom`);
    if (!from.ok) return from;
    // Mountains and valleys are told from the right side.
    const folds = pleatsOf(ply.piece)!.map(({ at, kind }) => ({ at, kind: ply.face === 'right' ? kind : other[kind] }));
    return foldPleats(strip, { from: from.value, folds });
  },
});
