/** What is waited for at the iron, and for how long. */
import { fusibleOf } from './check-heat.ts';
import { verbNamed } from '../../steps/index.ts';
import type { Always, Instruction } from '../../steps/index.ts';
import type { Pattern } from '../pattern.ts';
import type { Timer } from '../step.ts';

/**
 * What fuses is pressed and then cools. How long, the author says, or else the material; where neither does, only its maker
 * knows. Another step is waited for where its author says so.
 */
export function timersOf(
  step: Instruction,
  given: Always['timer'],
  pattern: Pattern,
  taken: readonly { name: string }[],
): Timer[] {
  const fuses = verbNamed(step.verb).fuses ?? false;
  const material = fuses ? fusibleOf(pattern, { takes: taken.map(({ name }) => name) }) : undefined;
  const known = { press: material?.presses, cool: material?.cools };
  return (['press', 'cool'] as const).flatMap((what): Timer[] => {
    const [own, shelved] = [given?.[what], known[what]];
    if (own !== undefined) return [{ what, seconds: own, from: 'author' }];
    if (shelved !== undefined) return [{ what, seconds: shelved, from: 'material' }];
    return fuses ? [{ what, from: 'maker' }] : [];
  });
}
