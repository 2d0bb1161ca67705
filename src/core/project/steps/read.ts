/** Reads the steps of a project file once: the verb of each, what its fields say, and whether all is there. */
import { always, keptBy, takesWork, verbIn, verbNamed, verbNames } from '../../steps/index.ts';
import { type Diagnostic, type Place, listed, quote, plainName } from '../../measure/index.ts';
import { isName, readFields, textIn } from './read-fields.ts';
import type { Known, Named, Report, FieldValue } from './read-fields.ts';
import type { Reader } from '../raw-value.ts';
import type { StepFile } from '../schema.ts';
import type { VerbName } from '../../steps/index.ts';

export type CompiledStep = {
  /** Counted from 1, as people do. */
  n: number;
  place: Place;
  verb: VerbName;
  /** What the verb's own fields say, and those that every step may have. */
  said: ReadonlyMap<string, FieldValue>;
  always: ReadonlyMap<string, FieldValue>;
  /** The works it takes, where the step says them. */
  takes: Named[];
  /** The edges it names. */
  edges: Named[];
  makes: string;
  /** What is wrong was reported, and the step cannot be done. */
  sound: boolean;
};

/** The steps of a file, read once for all its patterns. */
export type ReadSteps = {
  steps: readonly CompiledStep[];
  /** What steps without a verb would make, each with the number of its step. */
  unread: readonly { n: number; makes: string }[];
  findings: readonly Diagnostic[];
};

/** Reads all steps. */
export function readSteps(steps: readonly StepFile[], known: Known, reader: Reader): CompiledStep[] {
  return steps.flatMap((raw, i): CompiledStep[] => {
    const place: Place = ['steps', i];
    const report = (finding: Omit<Diagnostic, 'severity'>) => reader.findings.push({ severity: 'error', ...finding });
    const id = textIn(raw, 'id');
    const twin = steps.findIndex((one) => id !== undefined && plainName(textIn(one, 'id') ?? '') === plainName(id));
    if (twin >= 0 && twin < i && !eitherOr(steps[twin]!, raw)) {
      const message = `Step ${twin + 1} has the id ${quote(id!)} already.`;
      report({ place: [...place, 'id'], code: 'name-twice', message, fix: 'Give this one another id.' });
    }
    const verb = verbIn(raw);
    if (!verb) {
      const message = 'This step has no verb, so it says nothing to do.';
      report({ place, code: 'no-verb', message, fix: `Write one of ${listed(verbNames, 'or')}.` });
      return [];
    }
    const before = reader.findings.length;
    reportFields(raw, verb, place, report);
    const file = verbNamed(verb);
    const reading = { known, report, reader };
    const general = readFields(raw, always, place, reading);
    const own = readFields(raw, file.fields, place, reading);
    const takes = Object.entries(file.fields).flatMap(([name, field]) =>
      takesWork(field) ? (own.named.get(name) ?? []) : [],
    );
    const edges = Object.entries(file.fields).flatMap(([name, { kind }]) =>
      kind === 'edges' ? (own.named.get(name) ?? []) : [],
    );
    const makes = textIn(raw, 'makes') ?? own.named.get(keptBy(file))?.[0]?.name ?? '';
    const sound = reader.findings.length === before;
    return [{ n: i + 1, place, verb, said: own.said, always: general.said, takes, edges, makes, sound }];
  });
}

/** Whether one step is done with an option and the other without it, so that they never meet. */
const eitherOr = (a: StepFile, b: StepFile): boolean =>
  (['when', 'unless'] as const).some((word) => {
    const others = optionsIn(b, word === 'when' ? 'unless' : 'when');
    return optionsIn(a, word).some((option) => others.includes(option));
  });

const optionsIn = (step: StepFile, word: 'when' | 'unless'): string[] =>
  [step[word]]
    .flat()
    .filter(isName)
    .map((name) => plainName(String(name)));

/** A field that belongs to another verb, or one that is lacking. */
function reportFields(raw: StepFile, verb: VerbName, place: Place, report: Report): void {
  const { fields } = verbNamed(verb);
  const others = Object.keys(fields).filter((field) => field !== verb);
  const needed = others.filter((field) => !fields[field]!.optional);
  for (const field of Object.keys(raw)) {
    if (field in fields || field in always || raw[field] === undefined) continue;
    const isVerb = (verbNames as readonly string[]).includes(field);
    const free = others.filter((one) => fields[one]!.optional);
    report({
      place: [...place, field],
      code: isVerb ? 'two-verbs' : 'other-verb',
      message: isVerb
        ? `One step does one thing, but this one has both ${quote(verb)} and ${quote(field)}.`
        : `${quote(field)} does not belong to ${quote(verb)}.`,
      fix: isVerb
        ? 'Write two steps.'
        : `With ${quote(verb)} go ${listed([...needed, ...free].map(quote)) || 'no others'}.`,
    });
  }
  for (const field of needed) {
    if (raw[field] !== undefined) continue;
    report({ place, code: 'step-incomplete', message: `${quote(verb)} needs ${quote(field)} too.` });
  }
}
