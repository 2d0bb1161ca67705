/** The findings of a project in both editions and with every combination of its options. */
import { check } from './check.ts';
import { compiled } from './compile.ts';
import { farApart, formatLength, listed, quote } from '../measure/index.ts';
import { resolveProject } from './resolve.ts';
import type { Edition } from '../measure/index.ts';
import type { Finding, Pattern } from './pattern.ts';
import type { Materials } from './materials.ts';
import type { ProjectFile } from './schema.ts';

/** A finding with the editions and options it was met in. */
export type MetFinding = Finding & {
  /** Where not both editions have it, the one that does. */
  edition?: Edition;
  /** The options that differ from how the lesson has them, where the lesson's own way does not have it. */
  options?: Readonly<Record<string, boolean>>;
};

/** A project worked out in one edition, each option on or off as given. */
export type WorkOut = (edition: Edition, options: Readonly<Record<string, boolean>>) => Pattern;

/** More combinations of options than this are sampled. */
export const MOST_COMBINATIONS = 32;

/**
 * Checks a project in both editions and with every combination of its options; each finding is told once, as it is met
 * nearest to the lesson's own way. Of more than 32 combinations a sample is tried, and a note says so: the lesson's own,
 * each option changed alone, all on, all off, and others spread evenly.
 *
 * @param workOut for whoever has worked out some of them already
 * @example
 * checkAll(file, materials) // => [] when all is well
 */
export function checkAll(
  file: ProjectFile,
  materials?: Materials,
  workOut: WorkOut = (edition, options) => resolveProject(file, { edition, options, ...(materials && { materials }) }),
): MetFinding[] {
  const names = Object.keys(file.options ?? {});
  const { combinations, all } = combinationsOf(file, names);
  const found: MetFinding[] = [];
  const said = new Set<string>();
  for (const options of combinations) {
    const [inch, metric] = (['inch', 'metric'] as const).map((edition) => check(workOut(edition, options))) as [
      Finding[],
      Finding[],
    ];
    const differs = Object.fromEntries(
      names.flatMap((name) => (isDefault(file, name, options) ? [] : [[name, options[name]!]])),
    );
    for (const [edition, here, there] of [
      ['inch', inch, metric],
      ['metric', metric, inch],
    ] as const) {
      for (const finding of here) {
        if (said.has(keyOf(finding))) continue;
        said.add(keyOf(finding));
        const both = there.some((one) => keyOf(one) === keyOf(finding));
        found.push({
          ...finding,
          ...(!both && { edition }),
          ...(Object.keys(differs).length > 0 && { options: differs }),
        });
      }
    }
  }
  found.push(...driftOf(file, workOut));
  if (combinations.length < all) {
    const message = `${names.length} options make ${all} combinations. ${combinations.length} of them were tried.`;
    found.push({ severity: 'note', place: ['options'], code: 'sampled', message });
  }
  return found;
}

/**
 * Small differences between the editions that a formula adds up: twelve gaps of 1/16 in are 3/4 in, and twelve of 2 mm
 * are 24 mm. Of what rests on such a sum, or on a measure whose editions are meant to differ, nothing more is said.
 */
function driftOf(file: ProjectFile, workOut: WorkOut): MetFinding[] {
  const options = Object.fromEntries(
    Object.entries(file.options ?? {}).map(([name, { default: on = false }]) => [name, on]),
  );
  const [inch, metric] = [workOut('inch', options), workOut('metric', options)];
  const { parts } = compiled(file);
  const said = new Map<string, boolean>();
  const found: MetFinding[] = [];
  const visit = (name: string): boolean => {
    const before = said.get(name);
    if (before !== undefined) return before;
    said.set(name, false);
    const [one, other] = [inch.measures[name], metric.measures[name]];
    if (!one || !other || one.dimension !== 1) return false;
    const apart = Math.min(one.value, other.value) > 0 && farApart(one.value, other.value);
    // What is stated far apart is an error, or is meant to be.
    const rests = one.formula?.names.map(visit).includes(true) ?? false;
    if (apart && !rests && one.source !== 'stated') {
      const part = parts.get(name);
      const say = (of: Pattern, mm: number) => formatLength(mm, of.edition, { grid: of.grid });
      const message = `${quote(name)} comes to ${say(inch, one.value)}, which is ${say(metric, one.value)}, in the inch edition and to ${say(metric, other.value)} in the metric edition.`;
      const mend = 'Small differences between the editions add up here. Choose values that lie closer together.';
      const place = part ? ['pieces', part.piece] : ['measures', name];
      found.push({
        severity: 'note',
        place,
        code: 'editions-drift',
        message,
        mend,
        amount: Math.abs(one.value - other.value),
      });
    }
    said.set(name, apart || rests);
    return apart || rests;
  };
  Object.keys(inch.measures).forEach(visit);
  return found;
}

/**
 * How a finding was met, for the front of its sentence: `metric edition, without “flap”`. Empty for the lesson's own way.
 */
export function metIn({ edition, options }: MetFinding): string {
  const changed = Object.entries(options ?? {});
  const sides = [true, false].flatMap((side) => {
    const those = changed.filter(([, on]) => on === side).map(([name]) => quote(name));
    return those.length === 0 ? [] : [`${side ? 'with' : 'without'} ${listed(those)}`];
  });
  return [...(edition ? [`${edition} edition`] : []), ...(sides.length > 0 ? [listed(sides)] : [])].join(', ');
}

/** The same fault in both editions is one fault, though its sentence tells the sizes of each. */
const keyOf = ({ place, code, start }: Finding): string => JSON.stringify([place, code, start]);

const isDefault = (file: ProjectFile, name: string, options: Readonly<Record<string, boolean>>): boolean =>
  options[name] === (file.options?.[name]?.default ?? false);

type Options = Readonly<Record<string, boolean>>;

/** The combinations to try, the lesson's own first and those that differ least from it next. */
function combinationsOf(file: ProjectFile, names: readonly string[]): { combinations: Options[]; all: number } {
  const all = 2 ** names.length;
  // The bits of a number say which options differ from the lesson.
  const made = (bits: number): Options =>
    Object.fromEntries(
      names.map((name, i) => [
        name,
        (file.options?.[name]?.default ?? false) !== (Math.floor(bits / 2 ** i) % 2 === 1),
      ]),
    );
  const changed = (bits: number) => bits.toString(2).replaceAll('0', '').length;
  if (all <= MOST_COMBINATIONS) {
    const bits = Array.from({ length: all }, (_, k) => k).sort((a, b) => changed(a) - changed(b) || a - b);
    return { combinations: bits.map(made), all };
  }
  const on = names.reduce((bits, name, i) => bits + (file.options?.[name]?.default ? 0 : 2 ** i), 0);
  const chosen = new Set([0, ...names.map((_, i) => 2 ** i), on, all - 1 - on]);
  // Steps of the golden section spread evenly, however many there are.
  for (let k = 1; chosen.size < MOST_COMBINATIONS; k++) chosen.add(Math.floor(((k * 0.618_033_988_75) % 1) * all));
  return { combinations: [...chosen].map(made), all };
}
