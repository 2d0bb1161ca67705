/** Reads the steps of a project file once: the verb of each, its lengths, and whether all that belongs to it is there. */
import { closest, quote } from '../../measure/index.ts';
import { listed, plainName } from '../names.ts';
import { readValue } from '../written.ts';
import { always, grammar, verbs } from './verbs.ts';
import type { Finding, Place } from '../pattern.ts';
import type { Grammar, Verb } from './verbs.ts';
import type { Raw, Reader, Written } from '../written.ts';
import type { StepFile } from '../schema.ts';

/** The name of a work, where the step says it. */
export type Taken = { name: string; place: Place };

export type CompiledStep = {
  /** Counted from 1, as people do. */
  n: number;
  place: Place;
  verb: Verb;
  raw: StepFile;
  takes: Taken[];
  makes: string;
  /** By field; entries of a list by field and index, as in “at 0”. */
  lengths: ReadonlyMap<string, Written>;
  /** What is wrong was reported, and the step cannot be done. */
  sound: boolean;
};

/** The names that steps can use beside those of works. */
type Known = { options: readonly string[]; roles: readonly string[] };

/** Reads all steps. */
export function readSteps(steps: readonly StepFile[], { options, roles }: Known, reader: Reader): CompiledStep[] {
  return steps.flatMap((raw, i): CompiledStep[] => {
    const place: Place = ['steps', i];
    const report = (finding: Omit<Finding, 'severity'>) => reader.findings.push({ severity: 'error', ...finding });
    const twin = steps.findIndex((one) => one.id !== undefined && plainName(one.id) === plainName(raw.id ?? ''));
    if (twin >= 0 && twin < i && !eitherOr(steps[twin]!, raw)) {
      const message = `Step ${twin + 1} has the id ${quote(raw.id!)} already.`;
      report({ place: [...place, 'id'], code: 'name-twice', message, mend: 'Give this one another id.' });
    }
    const verb = verbs.find((one) => raw[one] !== undefined);
    if (!verb) {
      const message = 'This step has no verb, so it says nothing to do.';
      report({ place, code: 'no-verb', message, mend: `Write one of ${listed(verbs, 'or')}.` });
      return [];
    }
    const before = reader.findings.length;
    for (const key of ['when', 'unless'] as const) reportUnknown('option', raw[key], [...place, key], options, report);
    reportUnknown('material', raw.attach, [...place, 'attach'], roles, report);
    reportFields(raw, verb, place, report);
    const lengths = readLengths(raw, grammar[verb], place, reader);
    const takes = readTaken(raw, grammar[verb], place);
    const kept = raw[grammar[verb].keeps ?? verb];
    const makes = raw.makes ?? String(Array.isArray(kept) ? kept[0] : kept);
    return [{ n: i + 1, place, verb, raw, takes, makes, lengths, sound: reader.findings.length === before }];
  });
}

/** Whether one step is done with an option and the other without it, so that they never meet. */
const eitherOr = (a: StepFile, b: StepFile): boolean =>
  [a.when === b.unless && a.when, a.unless === b.when && a.unless].some((option) => typeof option === 'string');

/** Where allowances can go; unopened leaves the works lying on one another. */
const PRESSED = /^(open|up|down|left|right|unopened|to \S.*)$/u;

type Report = (finding: Omit<Finding, 'severity'>) => void;

function reportUnknown(
  what: string,
  name: string | undefined,
  place: Place,
  known: readonly string[],
  report: Report,
): void {
  if (name === undefined || known.some((one) => plainName(one) === plainName(name))) return;
  const meant = closest(name, known);
  const message = `There is no ${what} called ${quote(name)}.`;
  const where = { place, start: 0, end: name.length };
  report({ ...where, code: 'unknown-name', message, ...(meant && { mend: `Do you mean ${quote(meant)}?` }) });
}

/** A field that belongs to another verb, or one that is lacking. */
function reportFields(raw: StepFile, verb: Verb, place: Place, report: Report): void {
  const { needs, may } = grammar[verb];
  const known = [verb, ...needs, ...may, ...always];
  for (const field of Object.keys(raw) as (keyof StepFile)[]) {
    if (known.includes(field) || raw[field] === undefined) continue;
    const isVerb = (verbs as readonly string[]).includes(field);
    report({
      place: [...place, field],
      code: isVerb ? 'two-verbs' : 'other-verb',
      message: isVerb
        ? `One step does one thing, but this one has both ${quote(verb)} and ${quote(field)}.`
        : `${quote(field)} does not belong to ${quote(verb)}.`,
      mend: isVerb
        ? 'Write two steps.'
        : `With ${quote(verb)} go ${listed([...needs, ...may].map(quote)) || 'no others'}.`,
    });
  }
  const { press } = raw;
  if (verb !== 'press' && press !== undefined && !PRESSED.test(press)) {
    const message = `Allowances are pressed open, up, down, left, right or to a work, not ${quote(press)}.`;
    report({ place: [...place, 'press'], start: 0, end: press.length, code: 'unclear-press', message });
  }
  for (const field of needs) {
    if (raw[field] !== undefined) continue;
    report({ place, code: 'step-incomplete', message: `${quote(verb)} needs ${quote(field)} too.` });
  }
}

function readLengths(
  raw: StepFile,
  { lengths: fields }: Grammar,
  place: Place,
  reader: Reader,
): ReadonlyMap<string, Written> {
  const lengths = new Map<string, Written>();
  const read = (key: string, value: Raw | undefined, where: Place) => {
    const written = value === undefined ? undefined : readValue(value, where, reader);
    if (written) lengths.set(key, written);
  };
  for (const field of fields) {
    const value = raw[field] as Raw | Raw[] | undefined;
    if (Array.isArray(value)) value.forEach((one, k) => read(`${field} ${k}`, one, [...place, field, k]));
    else read(field, value, [...place, field]);
  }
  read('gap', raw.gap?.length, [...place, 'gap', 'length']);
  read('now width', raw.now?.width, [...place, 'now', 'width']);
  read('now height', raw.now?.height, [...place, 'now', 'height']);
  return lengths;
}

function readTaken(raw: StepFile, { takes }: Grammar, place: Place): Taken[] {
  return takes.flatMap((field): Taken[] => {
    const value = raw[field];
    if (Array.isArray(value)) return value.map((name, k) => ({ name: String(name), place: [...place, field, k] }));
    return value === undefined ? [] : [{ name: String(value), place: [...place, field] }];
  });
}
