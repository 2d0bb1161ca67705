/** Which step is spoken of: lines and steps aligned in order, by dynamic programming over the whole. */
import { cutsOf, type Cut } from './cuts.ts';
import { evidenceOf, type Evidence } from './evidence.ts';
import { joinLines, type SpokenLine, type SpokenText } from './lines.ts';
import { alikeIn, bestPath, chances, tellAgain, toTurns } from './path.ts';
import type { CourseWords } from './course-words.ts';
import type { Step } from '../project/index.ts';

/**
 * A stretch of a recording in which a step is told: its id, the seconds from and to, and from 0 to 1 how sure that is. A
 * step that is told twice has two stretches, of which the later is `again`.
 */
export type ToldStep = { step: string; from: number; to: number; sure: number; again?: true };

/** From here on a stretch needs no second look. */
export const SURE_STEP = 0.7;

/**
 * Aligns a recording with the steps of a project. Verbs, the names of pieces and materials, numbers and edges tell which
 * step a clause speaks of; steps come in order, may be skipped, and may be told once more. What comes before the first and
 * behind the last belongs to none.
 *
 * @returns The stretches in the order in which they are said. A step that is never told has none.
 */
export function alignSteps(lines: readonly SpokenLine[], steps: readonly Step[], words: CourseWords): ToldStep[] {
  const spoken = joinLines(lines);
  const clauses = cutsOf(spoken, steps);
  if (clauses.length === 0 || steps.length === 0) return [];
  const evidence = evidenceOf(spoken, clauses, steps, words);
  const alike = alikeIn(steps);
  const path = bestPath(evidence, clauses, alike);
  const retold = tellAgain(path, evidence, clauses);
  toTurns(path, evidence, spoken, clauses);
  return stretches({ spoken, clauses, path, sure: chances(evidence, clauses, alike), steps, evidence, retold });
}

type Found = {
  spoken: SpokenText;
  clauses: readonly Cut[];
  path: readonly number[];
  sure: readonly Float64Array[];
  steps: readonly Step[];
  evidence: Evidence;
  retold: ReadonlyMap<number, number>;
};

function stretches({ spoken, clauses, path, sure, steps, evidence, retold }: Found): ToldStep[] {
  const told: ToldStep[] = [];
  const met = new Set<string>();
  for (let t = 0; t < path.length;) {
    const state = path[t]!;
    let end = t + 1;
    while (end < path.length && path[end] === state) end++;
    const step = steps[state - 1];
    if (step) {
      let [sum, weight] = [0, 0];
      for (let k = t; k < end; k++) {
        const telling = 0.2 + Math.max(0, evidence.stays[k]![state]!);
        sum += telling * sure[k]![state]!;
        weight += telling;
      }
      const begin = spoken.words[clauses[t]!.first]!.from;
      const to = spoken.words[clauses[end - 1]!.next - 1]!.to;
      const again = met.has(step.id);
      met.add(step.id);
      told.push({
        step: step.id,
        from: begin,
        to,
        sure: Math.round(100 * (retold.get(t) ?? sum / weight)) / 100,
        ...(again && { again: true as const }),
      });
    }
    t = end;
  }
  return told;
}
