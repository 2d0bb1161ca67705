/** Why a step cannot be sewn, as a finding at its place. */
import type { Diagnostic, Place } from '../../measure/index.ts';
import type { ClothFault } from '../../cloth/index.ts';
import type { StepPlan } from './plan.ts';

/** Mends by what stands in the way; the fault itself says what that is. */
const fixes: Partial<Record<ClothFault['code'], string>> = {
  held: 'Fold the layers that hang together in one go.',
  blocked: 'Fold what lies in the way first, or fold to the other side.',
  'sewn-down': 'Fold before you sew, or unpick that row.',
  'not-sewn-round': 'Sew round before you turn.',
  'no-gap': 'Leave a gap when you sew round.',
  'off-the-work': 'Check from which edge it is measured.',
  opening:
    'Sew each layer before they are sewn together; round an opening nothing can be sewn here yet. Where it is meant, a row says “sew shut: true”.',
  'one-edge': 'Write a step for each edge, with a strip of its own.',
  'too-deep': 'Check the allowance and the size of the pieces.',
};

export function explainFault(fault: ClothFault, plan: StepPlan): Diagnostic {
  const { code, message, amount } = fault;
  const fix = fixes[code];
  return {
    severity: 'error',
    place: placeOf(fault, plan),
    code,
    message,
    ...(fix !== undefined && { fix }),
    ...(amount !== undefined && { amount }),
  };
}

/** The edge that the fault names, where the step names it too. */
function placeOf({ edge }: ClothFault, { place, edges, doing }: StepPlan): Place {
  if (edge === undefined || !doing || !('at' in doing.step)) return place;
  return edges.find(({ name }) => name === edge)?.place ?? [...place, 'at'];
}
