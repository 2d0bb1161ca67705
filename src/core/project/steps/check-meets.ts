/** Whether the halves of snaps and magnets meet on the finished work. */
import { distance } from '../../geometry/point.ts';
import { quote } from '../../measure/index.ts';
import { sayIn } from './say.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ledger, Step } from '../step.ts';

/**
 * Halves that lie farther apart than this, in mm, do not close. Nearer they may lie: what goes round a filled fold takes
 * some mm that the flat work does not show. Common practice, no source.
 */
const CLOSES = 5;

/**
 * Of two halves that a step says meet it is a mistake when they do not. Where no step says so, snaps and magnets of one
 * role that are set twice are taken for two halves.
 */
export function checkMeets(pattern: Pattern, { steps, results, finished }: Ledger): Diagnostic[] {
  const work = finished === undefined ? undefined : results[finished];
  if (!work) return [];
  const placeOf = (id: string) => work.marks.find((mark) => mark.step === id)?.at;
  const say = sayIn(pattern);
  return pairsOf(pattern, steps).flatMap(([step, other, isSaid]): Diagnostic[] => {
    const [here, there] = [placeOf(step.id), placeOf(other)];
    const { instruction: set } = step;
    if (!here || !there || set.verb !== 'attach') return [];
    const apart = distance(here, there);
    if (apart <= CLOSES) return [];
    const message = `The halves of ${quote(set.attach)} lie ${say(apart)} apart on the finished work.`;
    const fix = isSaid
      ? 'Leave out “at”, and it is set where it meets the other half.'
      : 'Fold the work shut in a step of its own, and say with “meets” which half it meets.';
    const place = isSaid ? [...step.place, 'meets'] : step.place;
    return [{ severity: isSaid ? 'error' : 'warning', place, code: 'halves-apart', message, fix, amount: apart }];
  });
}

/** Steps that set a half, each with the step that set the other. */
function pairsOf({ materials }: Pattern, steps: readonly Step[]): [Step, string, boolean][] {
  const said = new Set<string>();
  const pairs: [Step, string, boolean][] = [];
  const alone = new Map<string, Step[]>();
  for (const step of steps) {
    const { instruction: set } = step;
    if (set.verb !== 'attach') continue;
    if (set.meets !== undefined) {
      pairs.push([step, set.meets, true]);
      said.add(step.id).add(set.meets);
    }
    const kind = materials[set.attach]?.material?.hardware;
    if (kind === 'snap' || kind === 'magnet') alone.set(set.attach, [...(alone.get(set.attach) ?? []), step]);
  }
  for (const halves of alone.values()) {
    const left = halves.filter(({ id }) => !said.has(id));
    if (left.length === 2) pairs.push([left[1]!, left[0]!.id, false]);
  }
  return pairs;
}
