/** Whether the halves of snaps and magnets, and buttons and their buttonholes, meet on the finished work. */
import { distance } from '../../geometry/point.ts';
import { listed, quote } from '../../measure/index.ts';
import { setsAtPoint } from '../../steps/index.ts';
import { plansOf } from './plan.ts';
import { fieldsOfPlace } from '../../steps/places.ts';
import { sayIn } from './say.ts';
import type { Diagnostic } from '../../measure/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Ledger, Step } from '../step.ts';

/**
 * Halves that lie farther apart than this, in mm, do not close. Nearer they may lie: what goes round a filled fold takes
 * some mm that the flat work does not show. Common practice, no source.
 */
const CLOSES = 5;

/** Two steps that set what closes together, and whether the file says so. */
type Pair = { step: Step; other: string; isSaid: boolean };

/**
 * Of two halves that a step says meet it is a mistake when they do not. Where no step says so, snaps and magnets of one
 * role that are set twice are taken for two halves, and as many buttons as buttonholes for each other, in their order.
 */
export function checkMeets(pattern: Pattern, { steps, results, finished }: Ledger): Diagnostic[] {
  const work = finished === undefined ? undefined : results[finished];
  if (!work) return [];
  const markOf = (id: string) => work.marks.find((mark) => mark.step === id);
  const say = sayIn(pattern);
  return pairsOf(pattern, steps).flatMap(({ step, other, isSaid }): Diagnostic[] => {
    const [here, there] = [markOf(step.id), markOf(other)];
    if (!here || !there) {
      const together = Object.values(results).some(({ marks }) =>
        [step.id, other].every((id) => marks.some((mark) => mark.step === id)),
      );
      if (!isSaid || together || !steps.some(({ id }) => id === other)) return [];
      const message = `The two halves never come together: no step brings their works to lie on one another.`;
      const fix = 'Sew or fold both works together, or leave “meets” out.';
      return [{ severity: 'error', place: [...step.place, 'meets'], code: 'halves-apart', message, fix }];
    }
    const apart = distance(here.at, there.at);
    if (apart <= CLOSES) return [];
    const isHole = step.instruction.verb === 'buttonhole';
    const what = isHole
      ? `The buttonhole and ${quote(there.name)} lie`
      : here.name === there.name
        ? `The halves of ${quote(here.name)} lie`
        : `${quote(here.name)} and ${quote(there.name)} lie`;
    const message = `${what} ${say(apart)} apart on the finished work.`;
    const plan = plansOf(pattern).steps.find(({ id }) => id === step.id)?.doing?.step;
    const placedBy = plan !== undefined && setsAtPoint(plan) ? fieldsOfPlace(plan) : [];
    const fix =
      isSaid && placedBy.length === 0
        ? 'The two works do not come to lie face to face: give its place, “from top: 1”.'
        : isSaid
          ? `Leave out ${listed(placedBy.map(quote))}, and it is set where it meets ${isHole ? 'the button' : 'the other half'}.`
          : `Fold the work shut in a step of its own, and say with “meets” which ${isHole ? 'button' : 'half'} it meets.`;
    const place = isSaid ? [...step.place, 'meets'] : step.place;
    return [{ severity: isSaid ? 'error' : 'warning', place, code: 'halves-apart', message, fix, amount: apart }];
  });
}

function pairsOf({ materials }: Pattern, steps: readonly Step[]): Pair[] {
  const said = new Set<string>();
  const pairs: Pair[] = [];
  const alone = new Map<string, Step[]>();
  const [buttons, holes]: [Step[], Step[]] = [[], []];
  for (const step of steps) {
    const { instruction: set } = step;
    if (!setsAtPoint(set)) continue;
    if (set.meets !== undefined) {
      pairs.push({ step, other: set.meets, isSaid: true });
      said.add(step.id).add(set.meets);
    }
    if (set.verb === 'buttonhole') {
      holes.push(step);
      continue;
    }
    const kind = materials[set.attach]?.material?.hardware;
    if (kind === 'snap' || kind === 'magnet') alone.set(set.attach, [...(alone.get(set.attach) ?? []), step]);
    if (kind === 'button') buttons.push(step);
  }
  const unsaid = (some: readonly Step[]) => some.filter(({ id }) => !said.has(id));
  for (const halves of alone.values()) {
    const left = unsaid(halves);
    if (left.length === 2) pairs.push({ step: left[1]!, other: left[0]!.id, isSaid: false });
  }
  const [free, open] = [unsaid(buttons), unsaid(holes)];
  if (free.length === open.length) pairs.push(...open.map((step, i) => ({ step, other: free[i]!.id, isSaid: false })));
  return pairs;
}
