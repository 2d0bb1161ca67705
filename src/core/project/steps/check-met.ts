/** Whether the edges that a seam brought together are of one length. */
import { quote, SAME } from '../../measure/index.ts';
import { sayIn } from './say.ts';
import type { Finding, Pattern } from '../pattern.ts';
import type { Met, Work } from '../../cloth/index.ts';
import type { StepPlan } from './plan.ts';

/** Eased by more than this share of its length, cloth puckers. Common practice, no source. */
const EASED = 0.05;

export function checkMet(plan: StepPlan, work: Work, pattern: Pattern): Finding[] {
  const [first, ...others] = work.done.at(-1)?.met ?? [];
  if (!first) return [];
  const odd = others.find((met) => Math.abs(met.length - first.length) > SAME);
  if (!odd) return [];
  const amount = Math.abs(odd.length - first.length);
  const [long, short] = odd.length > first.length ? [odd, first] : [first, odd];
  const say = sayIn(pattern);
  const told = ({ edge, piece, length }: Met) => `${edge} of ${quote(piece)} is ${say(length)}`;
  const lengths = `On the stitch line the ${told(first)}, the ${told(odd)}`;
  const place = plan.edges.length === 0 ? plan.place : [...plan.place, 'at'];
  const step = plan.doing?.step;
  const isEased = step !== undefined && 'eased' in step && step.eased;
  if (!isEased) {
    const message = `${lengths}. They differ by ${say(amount)}.`;
    const mend = `Make both alike, or gather the longer one first. A little can be eased in: “eased: true”.`;
    return [{ severity: 'error', place, code: 'edges-differ', message, mend, amount }];
  }
  if (amount <= EASED * short.length) return [];
  const message = `${lengths}. To ease in ${say(amount)} puckers the ${long.edge}.`;
  const mend = 'Gather the longer edge, or take it in.';
  return [{ severity: 'warning', place, code: 'edges-differ', message, mend, amount }];
}
