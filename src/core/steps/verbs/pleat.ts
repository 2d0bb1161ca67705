import { edgeOn } from '../edges.ts';
import { fail, quote } from '../../measure/index.ts';
import { pleat as foldPleats } from '../../cloth/pleat.ts';
import { the } from '../words.ts';
import { verb } from '../verb.ts';
import { work } from '../fields.ts';

export const pleat = verb({
  name: 'pleat',
  fields: { pleat: work('Folds a piece along the pleats it has under pieces.') },
  pleats: true,
  ironsFirst: true,
  handling: 1,
  title: ({ pleat: strip }) => `Fold the pleats of ${the(strip)}`,
  tools: () => ['ruler', 'pen', 'iron', 'clips'],
  apply: ({ pleat: name }, { pleat: strip }, { pleatsOf }) => {
    const folds = pleatsOf(name);
    const from = edgeOn(strip, 'bottom');
    if (!folds) return fail({ code: 'unknown-piece', message: `${quote(name)} has no pleats under pieces.` });
    return from.ok ? foldPleats(strip, { from: from.value.name, folds }) : from;
  },
});
