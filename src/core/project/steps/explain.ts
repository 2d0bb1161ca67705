/** Why a step cannot be sewn, as a finding at its place. */
import { type Diagnostic, type Place, quote } from '../../measure/index.ts';
import type { ClothFault } from '../../cloth/index.ts';
import type { StepPlan } from './plan.ts';

/** Mends by what stands in the way; the fault itself says what that is. */
const fixes: Partial<Record<ClothFault['code'], string>> = {
  held: 'Fold the layers that hang together in one go.',
  blocked: 'Fold what lies in the way first, or fold to the other side.',
  'sewn-down': 'Fold before you sew, or unpick that row.',
  'sewn-along': 'Gather the edge first, and sew it afterwards.',
  'not-sewn-round': 'Sew round before you turn.',
  'no-gap': 'Leave a gap when you sew round.',
  'off-the-work': 'Check from which edge it is measured.',
  opening:
    'A hem, a casing or a row goes round it with “at: opening”; anything else is sewn to each layer before they are sewn together. Where it is meant, a row or a binding says “sew shut: true”.',
  points: 'Trim them level with it first: a step “trim” with “at” and without “by”.',
  'unclear-casing':
    'An edge that is turned needs “width”, and takes “then”; a strip that was laid on takes “by”, and two edges that face away from one another: “at: [strip top, strip bottom]”.',
  'not-straight': 'Name a straight edge: on a curve this cannot be done here yet.',
  'one-edge': 'Write a step for each edge.',
  'two-places': 'Leave one of the two out.',
  enclosed: 'Finish them before they are turned in or sewn shut.',
  'no-edge': 'Name the edge: “at: top”.',
  'too-many-edges': 'Name one edge for each work, or a single one for all.',
  'too-deep': 'Check the allowance and the size of the pieces.',
};

/** @param say writes a length */
export function explainFault(fault: ClothFault, plan: StepPlan, say: (mm: number) => string): Diagnostic {
  const { code, field, amount, lengths = [] } = fault;
  let next = 0;
  const message = lengths.length > 0 ? fault.message.replace(/…/gu, () => say(lengths[next++] ?? NaN)) : fault.message;
  const smaller = (name: string) =>
    isSaid(plan, name) ? `Make ${quote(name)} smaller.` : `Write a smaller ${quote(name)}.`;
  const fix = fault.fix ?? (code === 'too-deep' && field !== undefined ? smaller(field) : fixes[code]);
  return {
    severity: 'error',
    place: placeOf(fault, plan),
    code,
    message,
    ...(fix !== undefined && { fix }),
    ...(amount !== undefined && { amount }),
  };
}

/** The field or the edge that the fault names, where the step names it too. */
function placeOf({ edge, field }: ClothFault, plan: StepPlan): Place {
  const { place, edges, doing } = plan;
  // What is left out has no place of its own.
  if (field !== undefined && isSaid(plan, field)) return [...place, field];
  if (edge === undefined || !doing || !('at' in doing.step)) return place;
  return edges.find(({ name }) => name === edge)?.place ?? [...place, 'at'];
}

/** Whether a step says a field. */
function isSaid({ doing }: StepPlan, field: string): boolean {
  const said: Readonly<Record<string, unknown>> = { ...doing?.step };
  return said[field] !== undefined;
}
