/** The steps of a project in one edition: every length in mm, and which of them the features take in. */
import type { Diagnostic, Place } from '../../measure/index.ts';
import { calledNames, hindrance } from '../features.ts';
import { oncePer } from '../cache.ts';
import { PatternAmounts } from '../pattern-amounts.ts';
import { readSteps, type CompiledStep, type ReadSteps } from './read.ts';
import { valuesOf, type Named } from './read-fields.ts';
import type { Amounts } from '../amounts.ts';
import type { Compiled } from '../compile.ts';
import type { Pattern } from '../pattern.ts';
import type { Always, Instruction } from '../../steps/index.ts';

export type StepPlan = {
  /** Counted from 1 in the file, steps that the options leave out counted too. */
  n: number;
  id: string;
  place: Place;
  takes: readonly Named[];
  /** The edges it names. */
  edges: readonly Named[];
  makes: string;
  /** The option, or one of a choice, that leaves it out now, as the step calls it. */
  off?: string;
  /** What is to be done; left out where the option is off, or a fault was reported so that it cannot be done. */
  doing?: { step: Instruction; always: Always };
};

/** The steps of a pattern, and what was found wrong in reading and working them out. */
export type Plans = {
  steps: StepPlan[];
  unread: ReadSteps['unread'];
  findings: Diagnostic[];
};

/**
 * The steps of a pattern with every length in mm. They are read when first asked for and not with the rest of the
 * file: most pages show sizes only, and need none of this.
 */
export const plansOf = oncePer((pattern: Pattern): Plans => {
  const amounts = new PatternAmounts(pattern);
  const { steps, unread, findings } = readOf(amounts.compiled);
  const planned = planSteps(steps, amounts);
  return { steps: planned, unread, findings: [...findings, ...amounts.findings] };
});

function readOf(project: Compiled): ReadSteps {
  const { file, home, names, features, choices, roles } = project;
  if (project.steps) return project.steps;
  const findings: Diagnostic[] = [];
  const called = calledNames(features);
  const known = { features: called, choices: [...choices.values()], roles: [...roles.keys()] };
  const steps = readSteps(file.steps ?? [], known, { home, names, findings });
  const isRead = new Set(steps.map(({ n }) => n));
  const unread = (file.steps ?? []).flatMap(({ makes }, i) =>
    typeof makes !== 'string' || isRead.has(i + 1) ? [] : [{ n: i + 1, makes }],
  );
  return (project.steps = { steps, unread, findings });
}

/** Works out the steps. What cannot be worked out is reported, and its step left undone. */
function planSteps(steps: readonly CompiledStep[], amounts: Amounts): StepPlan[] {
  return steps.map((compiled): StepPlan => {
    const { n, place, verb, said, sound, takes, edges, makes } = compiled;
    const text = (field: keyof Always): string | undefined => {
      const found = compiled.always.get(field);
      return found?.kind === 'plain' && typeof found.value === 'string' ? found.value : undefined;
    };
    const named = (field: keyof Always): readonly string[] => {
      const found = compiled.always.get(field);
      return found?.kind === 'plain' && typeof found.value === 'object' ? found.value : [];
    };
    const condition = { when: named('when'), unless: named('unless') };
    const off = hindrance(condition, amounts.compiled.features, amounts.on);
    const shared = { n, id: text('id') ?? `step ${n}`, place, takes, edges, makes };
    if (off !== undefined) return { ...shared, off };
    const [own, always] = [valuesOf(said, amounts), valuesOf(compiled.always, amounts)];
    if (!own || !always || !sound) return shared;
    // Both were read by the fields of their verb, and so have the types that are made from those.
    return { ...shared, doing: { step: { verb, ...own } as Instruction, always: always } };
  });
}
