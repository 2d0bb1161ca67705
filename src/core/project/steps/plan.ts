/** The steps of a project in one edition: every length in mm, and which of them the options take in. */
import { plainName } from '../names.ts';
import type { CompiledStep, Taken } from './read.ts';
import type { Place } from '../pattern.ts';
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

/** Works out the steps. What cannot be worked out is reported, and its step marked. */
export function planSteps(reckoning: Reckoning): StepPlan[] {
  const { compiled, choices } = reckoning;
  const isOn = (name: string) => [...choices.on].some((one) => plainName(one) === plainName(name));
  return compiled.steps.map((step: CompiledStep): StepPlan => {
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
