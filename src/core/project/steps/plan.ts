/** The steps of a project in one edition: every length in mm, and which of them the options take in. */
import { plainName } from '../../measure/index.ts';
import type { Diagnostic, Place } from '../../measure/index.ts';
import { readSteps, type CompiledStep } from './read.ts';
import { evaluatorOf } from '../evaluator.ts';
import { valuesOf, type Named } from './read-fields.ts';
import type { Compiled } from '../compile.ts';
import type { Pattern } from '../pattern.ts';
import type { Evaluator } from '../evaluator.ts';
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
  /** The option that leaves it out now. */
  off?: string;
  /** What is to be done; left out where the option is off, or a fault was reported so that it cannot be done. */
  doing?: { step: Instruction; always: Always };
};

/** The steps of a pattern, and what was found wrong in reading and working them out. */
export type Plans = {
  steps: StepPlan[];
  /** What steps without a verb would make, each with the number of its step. */
  unread: readonly { n: number; makes: string }[];
  findings: Diagnostic[];
};

type ReadSteps = Pick<Plans, 'unread' | 'findings'> & { steps: CompiledStep[] };
const readings = new WeakMap<Compiled, ReadSteps>();
const plans = new WeakMap<Pattern, Plans>();

/**
 * The steps of a pattern with every length in mm. They are read when first asked for and not with the rest of the
 * file: most pages show sizes only, and need none of this.
 */
export function plansOf(pattern: Pattern): Plans {
  const evaluator = evaluatorOf(pattern);
  if (!evaluator) return { steps: [], unread: [], findings: [] };
  let found = plans.get(pattern);
  if (!found) {
    const { steps, unread, findings } = readOf(evaluator.compiled);
    const before = evaluator.findings.length;
    const planned = planSteps(steps, evaluator);
    const all = [...findings, ...evaluator.findings.slice(before)];
    plans.set(pattern, (found = { steps: planned, unread, findings: all }));
  }
  return found;
}

function readOf(compiled: Compiled): ReadSteps {
  let read = readings.get(compiled);
  if (!read) {
    const { file, home, names, options, roles } = compiled;
    const findings: Diagnostic[] = [];
    const known = { options: [...options.keys()], roles: [...roles.keys()] };
    const steps = readSteps(file.steps ?? [], known, { home, names, findings });
    const isRead = new Set(steps.map(({ n }) => n));
    const unread = (file.steps ?? []).flatMap(({ makes }, i) =>
      typeof makes !== 'string' || isRead.has(i + 1) ? [] : [{ n: i + 1, makes }],
    );
    readings.set(compiled, (read = { steps, unread, findings }));
  }
  return read;
}

/** Works out the steps. What cannot be worked out is reported, and its step left undone. */
function planSteps(steps: readonly CompiledStep[], evaluator: Evaluator): StepPlan[] {
  const isOn = (name: string) => [...evaluator.choices.on].some((one) => plainName(one) === plainName(name));
  return steps.map((compiled): StepPlan => {
    const { n, place, verb, said, sound, takes, edges, makes } = compiled;
    const text = (field: keyof Always): string | undefined => {
      const found = compiled.always.get(field);
      return found?.kind === 'plain' && typeof found.value === 'string' ? found.value : undefined;
    };
    const [when, unless] = [text('when'), text('unless')];
    const off = when !== undefined && !isOn(when) ? when : unless !== undefined && isOn(unless) ? unless : undefined;
    const shared = { n, id: text('id') ?? `step ${n}`, place, takes, edges, makes };
    if (off !== undefined) return { ...shared, off };
    const [own, always] = [valuesOf(said, evaluator), valuesOf(compiled.always, evaluator)];
    if (!own || !always || !sound) return shared;
    // Both were read by the fields of their verb, and so have the types that are made from those.
    return { ...shared, doing: { step: { verb, ...own } as Instruction, always: always } };
  });
}
