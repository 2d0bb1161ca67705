/** The fields of all verbs together: a step as a file may write it. */
import { verbNamed, verbNames } from './instruction.ts';
import type { Field } from './fields.ts';

/** A field of a step, as one or more verbs have it. */
export type StepField = { name: string; about: string; fields: readonly Field[] };

const table = new Map<string, { verb: string; field: Field }[]>();
for (const verb of verbNames) {
  for (const [name, field] of Object.entries(verbNamed(verb).fields)) {
    table.set(name, [...(table.get(name) ?? []), { verb, field }]);
  }
}

/** Each field by its name, the verbs' own first. */
export const stepFields: readonly StepField[] = [
  ...verbNames,
  ...[...table.keys()].filter((name) => !(verbNames as readonly string[]).includes(name)),
].map((name) => {
  const uses = table.get(name)!;
  return { name, about: aboutOf(name, uses), fields: uses.map(({ field }) => field) };
});

/** What a verb says of the field that has its name; for other fields, with which verbs they go and what they mean there. */
function aboutOf(name: string, uses: readonly { verb: string; field: Field }[]): string {
  const own = uses.find(({ verb }) => verb === name);
  const others = Map.groupBy(
    uses.filter((use) => use !== own),
    ({ field }) => field.about,
  );
  const sentences = [...others].map(([about, same]) => `${same.map(({ verb }) => verb).join(', ')}: ${about}`);
  return [...(own ? [own.field.about] : []), ...sentences].join(' ');
}
