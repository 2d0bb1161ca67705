/** Whether the edges that a seam brought together are of one length. */
import { type Diagnostic, quote, SAME } from '../../measure/index.ts';
import { sayIn } from './say.ts';
import type { Pattern } from '../pattern.ts';
import type { MetEdge, Work } from '../../cloth/index.ts';
import type { StepPlan } from './plan.ts';

/** Eased by more than this share of its length, cloth puckers. Common practice, no source. */
const EASED = 0.05;

/** @param before the works that the step took: what it did to them comes after what was done before */
export function checkMet(plan: StepPlan, before: readonly Work[], work: Work, pattern: Pattern): Diagnostic[] {
  const known = before.reduce((sum, { done }) => sum + done.length, 0);
  const met = work.done.slice(known).findLast((done) => done.met)?.met ?? [];
  const [first, ...others] = met;
  if (!first || others.every(({ length }) => Math.abs(length - first.length) <= SAME)) return [];
  const long = met.reduce((most, one) => (one.length > most.length ? one : most));
  const short = met.reduce((least, one) => (one.length < least.length ? one : least));
  const amount = long.length - short.length;
  const say = sayIn(pattern);
  const described = ({ edge, piece, length }: MetEdge) => `the ${edge} of ${quote(piece)} is ${say(length)}`;
  const lengths = `On the stitch line ${met.map(described).join(', ')}`;
  const place = plan.edges.length === 0 ? plan.place : [...plan.place, 'at'];
  const step = plan.doing?.step;
  const isEased = step !== undefined && 'eased' in step && step.eased;
  if (!isEased) {
    const message = `${lengths}. They differ by ${say(amount)}.`;
    const fix = `Make both alike, or gather the longer one first. A little can be eased in: “eased: true”.`;
    return [{ severity: 'error', place, code: 'edges-differ', message, fix, amount }];
  }
  if (amount <= EASED * short.length) return [];
  const message = `${lengths}. To ease in ${say(amount)} puckers the ${long.edge}.`;
  const fix = 'Gather the longer edge, or take it in.';
  return [{ severity: 'warning', place, code: 'edges-differ', message, fix, amount }];
}
