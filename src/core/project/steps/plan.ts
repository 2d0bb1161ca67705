/** The steps of a project in one edition: every length in mm, and which of them the options take in. */
import { plainName } from '../names.ts';
import { readSteps, type CompiledStep, type Taken } from './read.ts';
import { reckoningOf } from '../reckon.ts';
import type { Compiled } from '../compile.ts';
import type { Finding, Pattern, Place } from '../pattern.ts';
import type { Reckoning } from '../reckon.ts';
import type { StepFile } from '../schema.ts';
import type { Verb } from './verbs.ts';

export type StepPlan = {
  /** Counted from 1 in the file, steps that the options leave out counted too. */
  n: number;
  id: string;
  place: Place;
  verb: Verb;
  /** The step's words, as the file has them. */
  words: StepFile;
  takes: readonly Taken[];
  makes: string;
  /** Its lengths in mm by field; entries of a list by field and index, as in “at 0”. */
  mm: Readonly<Record<string, number>>;
  /** The option that leaves it out now. */
  off?: string;
  /** A fault in it was reported, so that it cannot be done. */
  faulty: boolean;
};

/** The steps of a pattern, and what was found wrong in reading and working them out. */
export type Plans = {
  steps: StepPlan[];
  /** What steps without a verb would make, each with the number of its step. */
  unread: readonly { n: number; makes: string }[];
  findings: Finding[];
};

type ReadSteps = Pick<Plans, 'unread' | 'findings'> & { steps: CompiledStep[] };
const readings = new WeakMap<Compiled, ReadSteps>();
const plans = new WeakMap<Pattern, Plans>();

/**
 * The steps of a pattern with every length in mm. They are read when first asked for and not with the rest of the
 * file: most pages show sizes only, and need none of this.
 */
export function plansOf(pattern: Pattern): Plans {
  const reckoning = reckoningOf(pattern);
  if (!reckoning) return { steps: [], unread: [], findings: [] };
  let found = plans.get(pattern);
  if (!found) {
    const { steps, unread, findings } = readOf(reckoning.compiled);
    const before = reckoning.findings.length;
    const planned = planSteps(steps, reckoning);
    const all = [...findings, ...reckoning.findings.slice(before)];
    plans.set(pattern, (found = { steps: planned, unread, findings: all }));
  }
  return found;
}

function readOf(compiled: Compiled): ReadSteps {
  let read = readings.get(compiled);
  if (!read) {
    const { file, home, names, options, roles } = compiled;
    const findings: Finding[] = [];
    const known = { options: [...options.keys()], roles: [...roles.keys()] };
    const steps = readSteps(file.steps ?? [], known, { home, names, findings });
    const isRead = new Set(steps.map(({ n }) => n));
    const unread = (file.steps ?? []).flatMap(({ makes }, i) =>
      makes === undefined || isRead.has(i + 1) ? [] : [{ n: i + 1, makes }],
    );
    readings.set(compiled, (read = { steps, unread, findings }));
  }
  return read;
}

/** Works out the steps. What cannot be worked out is reported, and its step marked. */
function planSteps(steps: readonly CompiledStep[], reckoning: Reckoning): StepPlan[] {
  const { choices } = reckoning;
  const isOn = (name: string) => [...choices.on].some((one) => plainName(one) === plainName(name));
  return steps.map((step): StepPlan => {
    const { n, place, verb, raw, takes, makes } = step;
    const { when, unless } = raw;
    const off = when !== undefined && !isOn(when) ? when : unless !== undefined && isOn(unless) ? unless : undefined;
    const shared = { n, id: raw.id ?? `step ${n}`, place, verb, words: raw, takes, makes };
    if (off !== undefined) return { ...shared, mm: {}, off, faulty: false };
    const mm: Record<string, number> = {};
    let faulty = !step.sound;
    for (const [key, written] of step.lengths) {
      // A place may be measured from an edge by a plain nought.
      const found = reckoning.quantity(written);
      const length = found?.value === 0 && found.dimension === 0 ? 0 : found && reckoning.length(written);
      if (length === undefined) faulty = true;
      else mm[key] = length;
    }
    return { ...shared, mm, faulty };
  });
}
