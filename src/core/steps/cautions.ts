/** The tools of a step, and what can hurt in it. */
import { COOLEST } from './heat.ts';
import { tools } from './tools.ts';
import { verbNamed } from './instruction.ts';
import type { CautionKey, Material, Tool } from './tools.ts';
import type { Instruction } from './instruction.ts';
import type { MaterialOf } from './verb.ts';

/** Whether pins hold a step, where holes close again. */
export const isPinned = (step: Instruction): boolean => verbNamed(step.verb).tools(step).includes('pins');

/** The usual tools of a step on these materials: clips take the place of pins where holes stay. */
export function usualTools(step: Instruction, materials: readonly Material[], materialOf?: MaterialOf): Tool[] {
  const holesStay = materials.some(({ holes }) => holes === 'stay');
  return verbNamed(step.verb)
    .tools(step, materialOf)
    .map((tool) => (tool === 'pins' && holesStay ? 'clips' : tool));
}

/**
 * What can hurt: from the tools, from the verb itself, and from what heat does to the materials in the heap.
 *
 * @param materialOf finds the material of a role
 */
export function cautionsOf(
  step: Instruction,
  used: readonly Tool[],
  materials: readonly Material[],
  materialOf: MaterialOf,
): CautionKey[] {
  const cautions = used.flatMap((tool): CautionKey[] => {
    const known = tools[tool];
    return 'caution' in known ? [known.caution] : [];
  });
  const melts = materials.some(({ heat }) => (heat ?? Infinity) < COOLEST);
  if (melts && used.includes('iron')) cautions.push('coating');
  const meetsZip = used.includes('machine') && materials.some((one) => one.hardware === 'zip');
  if (meetsZip) cautions.push('zip');
  return [...cautions, ...(verbNamed(step.verb).cautions?.(step, materialOf) ?? [])];
}
