/** The tools of a step: the usual ones of its verb, and the author's own after them. */
import { plainName } from '../../measure/index.ts';
import { tools as known, usualTools } from '../../steps/index.ts';
import type { Instruction, Tool } from '../../steps/index.ts';
import type { IronLimit } from '../step.ts';
import type { Material } from '../pattern.ts';

const byLabel = new Map((Object.keys(known) as Tool[]).map((key) => [known[key].label as string, key]));

/**
 * What a list calls the tools, and those among them that the kit knows, by key. A tool of the author's own that is one
 * of those by its name is that tool.
 */
export function toolsOf(
  step: Instruction,
  own: readonly string[] = [],
  materials: readonly Material[],
  materialOf?: (role: string) => Material | undefined,
): { tools: string[]; uses: Tool[] } {
  const usual = usualTools(step, materials, materialOf);
  const uses = [...usual, ...own.flatMap((tool) => byLabel.get(plainName(tool)) ?? [])];
  return { tools: [...new Set([...usual.map((key) => known[key].label), ...own])], uses: [...new Set(uses)] };
}

/** How hot an iron may be for everything in the heap, as far as the shelf knows; undefined where none is used. */
export function ironLimitOf(uses: readonly Tool[], materials: readonly Material[]): IronLimit | undefined {
  if (!uses.includes('iron')) return undefined;
  let least: IronLimit | undefined;
  for (const { heat, label } of materials) {
    if (heat !== undefined && heat < (least?.celsius ?? Infinity)) least = { celsius: heat, material: label };
  }
  return least;
}
