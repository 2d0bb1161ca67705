/** Every verb by its name, and the step that it does: read off the files in verbs/, and off nothing else. */
import { areaOf } from '../cloth/ring.ts';
import { cutApartIn } from '../cloth/work.ts';
import { fail } from '../measure/index.ts';
import { verbs } from './verbs/index.ts';
import type { AnyVerb, MaterialOf, StepContext } from './verb.ts';
import type { Field, ValuesOf } from './fields.ts';
import type { Sewn, Work } from '../cloth/index.ts';

type VerbFile = (typeof verbs)[number];

/** The trade's verbs, as the project file writes them. */
export type VerbName = VerbFile['name'];

/** A step as its verb is given it: the verb, and the values of its own fields, lengths in mm. */
export type Instruction = {
  [V in VerbFile as V['name']]: { readonly verb: V['name'] } & ValuesOf<V['fields']>;
}[VerbName];

/** Every verb by name, in the order in which they are listed. */
const byName: ReadonlyMap<string, AnyVerb> = new Map(verbs.map((one): [string, AnyVerb] => [one.name, one]));

export const verbNames = verbs.map(({ name }) => name) as readonly VerbName[];

/** All that is known of a verb. */
export const verbNamed = (name: VerbName): AnyVerb => byName.get(name)!;

/**
 * The verb of a step as it stands in a file. One verb may have a field of another's name, as a join that is pressed: the
 * verb is the one to which the others belong, or else the first.
 *
 * @example verbIn({ join: ['bag', 'facing'], at: 'top', press: 'open' }) // => 'join'
 */
export function verbIn(step: Readonly<Record<string, unknown>>): VerbName | undefined {
  const there = verbNames.filter((name) => step[name] !== undefined);
  return there.find((name) => there.every((other) => other in verbNamed(name).fields)) ?? there[0];
}

/** A step that sets something at a point, which may meet what another step set. */
export type SetAtPoint = Extract<Instruction, { readonly meets?: string }>;

/** Whether a step sets something at a point: its verb has the fields `at` and `meets`. */
export const setsAtPoint = (step: Instruction): step is SetAtPoint => 'meets' in verbNamed(step.verb).fields;

/** Whether a field names works that the step takes. */
export const takesWork = ({ kind }: Field): boolean => kind === 'work' || kind === 'works' || kind === 'grid';

/** The field whose work keeps its name. */
export const keptBy = ({ keeps, fields }: AnyVerb): string =>
  keeps ?? Object.keys(fields).find((name) => takesWork(fields[name]!))!;

/** Does a step. The works are those that its fields name, in that order. Faults are those of the cloth. */
export function sew(step: Instruction, works: readonly Work[], setting: StepContext): Sewn {
  const verb = verbNamed(step.verb);
  const given: Record<string, Work | readonly Work[]> = {};
  let next = 0;
  for (const [name, field] of Object.entries(verb.fields)) {
    const named = (step as Readonly<Record<string, unknown>>)[name];
    if (field.kind === 'work') given[name] = works[next++]!;
    else if (takesWork(field) && Array.isArray(named)) given[name] = works.slice(next, (next += named.flat().length));
  }
  const sewn = verb.apply(step, given, setting);
  if (!sewn.ok) return sewn;
  if (sewn.value.plies.length === 0) {
    const message = 'This step would cut away all of the work: nothing of it would be left.';
    return fail({ code: 'too-deep', message, fix: 'Cut off less, or leave this step out.' });
  }
  if (sewsNothing(sewn.value)) {
    const message = 'The row of stitches of this step would miss the cloth: its lengths leave nothing to sew.';
    return fail({ code: 'misses', message });
  }
  // What is cut apart is one of several alike.
  const lost = clothOf(works) - (cutApartIn(works, sewn.value)?.many ?? 1) * clothOf([sewn.value]);
  if (Math.abs(lost) <= LOST) return sewn;
  const message =
    'How the cloth comes to lie in this step cannot be worked out: some of it would be there twice, or not at all.';
  return fail({ code: 'cloth-lost', message });
}

/** Cloth that a step may lose to the arithmetic of cutting, in mm²: less than a thread. */
const LOST = 0.5;

/** The cloth of works and what was cut away of it, gathers let out, in mm². */
const clothOf = (works: readonly Work[]): number =>
  works.reduce(
    (sum, { plies, done }) =>
      sum +
      plies.reduce((all, { outline, fullness }) => all + areaOf(outline) * fullness, 0) +
      done.reduce((all, { cutAway = 0 }) => all + cutAway, 0),
    0,
  );

/** Whether a row that the last step sewed goes nowhere. */
const sewsNothing = ({ done, stitches }: Work): boolean => {
  const rows = done.at(-1)?.stitches ?? [];
  return stitches.some(({ id, runs }) => rows.includes(id) && runs.length === 0);
};

/** A step in a plain sentence, without a full stop: Join the pocket panel and the facing at the top. */
export const titleOf = (step: Instruction, material?: MaterialOf): string => verbNamed(step.verb).title(step, material);
