/** What heat and pins do to the materials in the heap. */
import { COOLEST, isPinned, sayHeat, verbNamed } from '../../steps/index.ts';
import { materialsIn } from './thickness.ts';
import { type Diagnostic, quote } from '../../measure/index.ts';
import type { Material, Pattern } from '../pattern.ts';
import type { Step } from '../step.ts';

export function checkHeat(pattern: Pattern, steps: readonly Step[]): Diagnostic[] {
  const said = new Set<string>();
  // What a material cannot stand is said where it first meets it.
  const once = (what: string, material: Material, finding: Diagnostic): Diagnostic[] => {
    const key = `${what} ${material.name}`;
    if (said.has(key)) return [];
    said.add(key);
    return [finding];
  };
  return steps.flatMap((step): Diagnostic[] => {
    const heap = materialsIn(pattern, step.after);
    const fusing = verbNamed(step.verb).fuses ? fusibleOf(pattern, step)?.fuses : undefined;
    const ironed = step.uses.includes('iron');
    const hottest = Math.max(0, ...heap.map(({ heat = 0 }) => heat));
    return heap.flatMap((material): Diagnostic[] => {
      const { kind, heat, label, holes } = material;
      const findings: Diagnostic[] = [];
      const { place } = step;
      const severity = 'warning';
      if (heat !== undefined && fusing !== undefined && heat < fusing) {
        const message = `Fusing needs ${sayHeat(fusing)} here, but ${quote(label)} takes only ${sayHeat(heat)}.`;
        const fix = 'Choose an interfacing that fuses cooler, or one to sew in.';
        const amount = fusing - heat;
        findings.push(...once('fuse', material, { severity, place, code: 'too-hot', message, fix, amount }));
      } else if (heat !== undefined && ironed && heat < COOLEST) {
        const message = `This step needs an iron, whose coolest setting, one dot, is ${sayHeat(COOLEST)}. ${quote(label)} takes only ${sayHeat(heat)}.`;
        const fix = 'Crease it with a bone folder, or topstitch it flat.';
        const amount = COOLEST - heat;
        findings.push(...once('iron', material, { severity, place, code: 'too-hot', message, fix, amount }));
      } else if (
        ironed &&
        heat !== undefined &&
        heat === step.iron?.celsius &&
        heat < hottest &&
        kind !== 'interfacing'
      ) {
        // Interfacing is bonded by heat, and what it takes belongs to fusing it.
        const message = `Iron no hotter than ${sayHeat(heat)} here: ${quote(label)} takes no more, though the rest does.`;
        const fix = `Set the iron for ${quote(label)}, and lay a press cloth between.`;
        const amount = hottest - heat;
        findings.push(...once('cool', material, { severity: 'note', place, code: 'cool-iron', message, fix, amount }));
      }
      if (holes === 'stay' && isPinned(step.instruction) && !step.uses.includes('pins')) {
        const message = `Holes stay in ${quote(label)}, so this step cannot be pinned.`;
        const fix = 'Hold it with clips, and unpick nothing.';
        findings.push(...once('pins', material, { severity: 'note', place, code: 'holes-stay', message, fix }));
      }
      return findings;
    });
  });
}

/** The material that a step fuses. */
export function fusibleOf(
  { pieces, materials }: Pick<Pattern, 'pieces' | 'materials'>,
  { takes }: Pick<Step, 'takes'>,
): Material | undefined {
  const piece = pieces[takes[0]!];
  return piece && materials[piece.material]?.material;
}
