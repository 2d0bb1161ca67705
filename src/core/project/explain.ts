/** Says in plain words why a strip cannot be pleated as the file wishes. */
import { MOST_POCKETS } from './pleats.ts';
import { type Diagnostic, type Place, quote } from '../measure/index.ts';
import type { CompiledPiece } from './shapes.ts';
import type { PleatFault } from './pleats.ts';
import type { ProjectFile } from './schema.ts';

/** The finding for a fault of pleats, at the field it has to do with. `say` writes a length. */
export function explainPleats(
  fault: PleatFault,
  piece: CompiledPiece,
  file: ProjectFile,
  say: (mm: number) => string,
): Diagnostic {
  const amount = fault.amount ?? 0;
  const fold = fault.index === undefined ? '' : `Fold ${fault.index + 1}`;
  const [message, fix] = words(fault.code, say(amount), fold, quote(piece.label));
  return {
    severity: 'error',
    place: placeOf(fault, piece, file),
    code: fault.code,
    message,
    ...(fix !== undefined && { fix }),
    ...(fault.amount !== undefined && { amount }),
  };
}

function words(code: PleatFault['code'], amount: string, fold: string, piece: string): [string, string?] {
  switch (code) {
    case 'pockets-not-whole':
      return ['A whole number of pockets belongs here, one or more.'];
    case 'too-many-pockets':
      return [`A strip is folded into ${MOST_POCKETS} pockets at the most here.`];
    case 'no-depth':
      return ['A pocket must be deeper than nothing.'];
    case 'no-step':
      return [
        'Without a step between them, each pocket hides the one behind it.',
        'Make the step larger than nothing.',
      ];
    case 'below-bottom-edge':
      return fold
        ? [`${fold} would hang ${amount} below the bottom edge of ${piece}.`, 'Fold the pocket below it less deep.']
        : [`The lowest pocket would hang ${amount} below the bottom edge of ${piece}.`, 'Make the lift larger.'];
    case 'head-too-low':
      return [
        `${piece} ends too low: above the top pocket ${amount} more is needed for the seam.`,
        'Make the panel taller, or the pockets fewer, less deep or closer.',
      ];
    case 'strip-too-short':
      return [
        `These pleats do not fit: the strip of ${piece} is ${amount} too short.`,
        'Cut it longer, or make the pockets fewer, less deep or closer.',
      ];
    case 'odd-folds':
      return [
        'Each pocket needs two folds, so the number of folds is even.',
        'Add the fold that is missing, or take one out.',
      ];
    case 'folds-out-of-order':
      return [`${fold} does not lie above the one before it.`, 'List the folds from the bottom edge upwards.'];
    case 'pocket-hidden':
      return [
        `${fold} lies no higher than the pocket in front, which hides it.`,
        'Move it up, or the fold below it down.',
      ];
    case 'no-length':
      return [`The strip of ${piece} has no length.`, 'Give the piece a length, or a height under pleats.'];
  }
}

/** The field as the file has it: a wish under pleats, one of the folds, or the length of the piece. */
function placeOf(fault: PleatFault, piece: CompiledPiece, file: ProjectFile): Place {
  const raw = file.pieces[piece.name]!;
  if (fault.field === 'length' && raw.size) return [...piece.place, 'size', 1];
  const pleats: Place = [...piece.place, 'pleats'];
  if (fault.field === 'folds') return [...pleats, 'folds', ...(fault.index === undefined ? [] : [fault.index])];
  if (fault.field !== 'length' && raw.pleats?.[fault.field] !== undefined) return [...pleats, fault.field];
  if (fault.field === 'height' && raw.finished) return [...piece.place, 'finished', 1];
  return pleats;
}
