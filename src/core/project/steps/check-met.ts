/** Whether the edges that a seam brought together are of one length. */
import { type Diagnostic, quote, SAME } from '../../measure/index.ts';
import { EASED } from '../check-edges.ts';
import { sayIn } from './say.ts';
import { verbNamed } from '../../steps/index.ts';
import type { Pattern } from '../pattern.ts';
import type { MetEdge, Work } from '../../cloth/index.ts';
import type { StepPlan } from './plan.ts';

const areAlike = (met: readonly MetEdge[]): boolean =>
  met.every(({ length }) => Math.abs(length - met[0]!.length) <= SAME);

/** A zip that alone differs is neither gathered nor eased. */
function zipMended(met: readonly MetEdge[], { pieces, materials }: Pattern): string | undefined {
  const zip = met.find(({ piece }) => materials[pieces[piece]?.material ?? '']?.material?.hardware === 'zip');
  const others = met.filter((one) => one !== zip);
  if (!zip || !areAlike(others)) return undefined;
  return zip.length > others[0]!.length
    ? `Trim ${quote(zip.piece)} to that length in a step before, or take a shorter one.`
    : `Take a longer ${quote(zip.piece)}, or sew cloth to its ends first.`;
}

/** What is caught between two edges goes along all of them; a strap that does not is laid on one of the two. */
function caughtMended(met: readonly MetEdge[]): string | undefined {
  const [first, last] = [met[0]!, met.at(-1)!];
  const odd = met.slice(1, -1).find(({ length }) => Math.abs(length - first.length) > SAME);
  if (!odd || !areAlike([first, last])) return undefined;
  return `Lay ${quote(odd.piece)} on one of the two in a step before, and leave “between” out: this seam holds it then.`;
}

/** @param before the works that the step took: what it did to them comes after what was done before */
export function checkMet(plan: StepPlan, before: readonly Work[], work: Work, pattern: Pattern): Diagnostic[] {
  const known = before.reduce((sum, { done }) => sum + done.length, 0);
  const met = work.done.slice(known).findLast((done) => done.met)?.met ?? [];
  if (met.length < 2 || areAlike(met)) return [];
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
    const mayEase = step !== undefined && 'eased' in verbNamed(step.verb).fields;
    const usual = `Make both alike, or gather the longer one first.${mayEase ? ' A little can be eased in: “eased: true”.' : ''}`;
    const isCaught = step !== undefined && 'between' in step && step.between !== undefined;
    const fix = zipMended(met, pattern) ?? (isCaught ? caughtMended(met) : undefined) ?? usual;
    return [{ severity: 'error', place, code: 'edges-differ', message, fix, amount }];
  }
  if (amount <= EASED * short.length) return [];
  const message = `${lengths}. To ease in ${say(amount)} puckers the ${long.edge}.`;
  const fix = 'Gather the longer edge, or take it in.';
  return [{ severity: 'warning', place, code: 'edges-differ', message, fix, amount }];
}
