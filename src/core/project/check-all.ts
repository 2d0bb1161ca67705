/** The findings of a project in both editions and with every combination of its options. */
import { check } from './check.ts';
import { compiled } from './compile.ts';
import { farApart, formatLength, listed, quote } from '../measure/index.ts';
import { resolveProject } from './resolve.ts';
import type { Diagnostic, Edition, InFile } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { Materials } from './materials.ts';
import type { ProjectFile } from './schema.ts';

/** Where and in which editions and options something was met. */
export type Occurrence = InFile & {
  /** Where not both editions have it, the one that does. */
  edition?: Edition;
  /** Where only some ends of the sliders have it: one such choice of a learner, by label, in words. */
  values?: Readonly<Record<string, string>>;
  /** The options that differ from how the lesson has them, where the lesson's own way does not have it. */
  options?: Readonly<Record<string, boolean>>;
};

/** A project worked out in one edition, each option on or off as given, and with a learner's values if there are any. */
export type WorkOut = (
  edition: Edition,
  options: Readonly<Record<string, boolean>>,
  values?: Readonly<Record<string, number>>,
) => Pattern;

/**
 * Of so many sliders every corner is tried, each at its least or its most; of more, the ends of each two. Six have 64
 * corners, which is no more work than the 60 ends of their pairs.
 */
export const MOST_SLIDERS = 6;

/** More combinations of options than this are sampled. */
export const MOST_COMBINATIONS = 32;

/**
 * Checks a project in both editions and with every combination of its options; each finding is told once, as it is met
 * nearest to the lesson's own way. Of more than 32 combinations a sample is tried, and a note says so: the lesson's own,
 * each option changed alone, all on, all off, and others spread evenly.
 *
 * What a learner may choose is tried at the ends of the sliders (see `endsOf`). What goes wrong there alone is a warning.
 *
 * @param workOut for whoever has worked out some of them already
 * @param ends false leaves the ends of the sliders out, which take longer than all the rest
 * @example
 * checkAll(file, materials) // => [] when all is well
 */
export function checkAll(
  file: ProjectFile,
  materials?: Materials,
  workOut: WorkOut = (edition, options, values) =>
    resolveProject(file, { edition, options, ...(values && { values }), ...(materials && { materials }) }),
  { ends = true }: { ends?: boolean } = {},
): Diagnostic<Occurrence>[] {
  const names = Object.keys(file.options ?? {});
  const { combinations, all } = combinationsOf(file, names);
  const found: Diagnostic<Occurrence>[] = [];
  const said = new Set<string>();
  for (const options of combinations) {
    const [inch, metric] = (['inch', 'metric'] as const).map((edition) => check(workOut(edition, options))) as [
      Diagnostic[],
      Diagnostic[],
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
  if (ends) found.push(...checkEnds(file, workOut, said));
  if (combinations.length < all) {
    const message = `${names.length} options make ${all} combinations. ${combinations.length} of them were tried.`;
    found.push({ severity: 'note', place: ['options'], code: 'sampled', message });
  }
  return found;
}

type Slider = {
  name: string;
  label: string;
  place: Diagnostic['place'];
  range: Record<Edition, { min: number; max: number }>;
};

/** Which sliders stand at which end; the others stand where the lesson has them. */
type Ends = readonly { slider: Slider; end: 'min' | 'max' }[];

/**
 * The choices of a learner to try: of up to six sliders all corners, of more each two at their ends. Fewer sliders at
 * their ends come first, so that what fails is told of as few as it takes.
 */
function endsOf(sliders: readonly Slider[]): { tried: Ends[]; all: boolean } {
  const all = sliders.length <= MOST_SLIDERS;
  const most = all ? sliders.length : 2;
  let [last, tried]: Ends[][] = [[[]], []];
  for (let k = 1; k <= most; k++) {
    last = last!.flatMap((ends) => {
      const next = ends.length === 0 ? 0 : sliders.indexOf(ends.at(-1)!.slider) + 1;
      return sliders.slice(next).flatMap((slider): Ends[] => [
        [...ends, { slider, end: 'min' }],
        [...ends, { slider, end: 'max' }],
      ]);
    });
    // Corners alone, with the ends of each slider by itself before them: what lies between is no corner.
    if (k === 1 || k === most) tried = [...tried!, ...last];
  }
  return { tried: tried!, all };
}

/** What goes wrong where sliders stand at their ends, the lesson's own options on; `said` is told already. */
function checkEnds(file: ProjectFile, workOut: WorkOut, said: ReadonlySet<string>): Diagnostic<Occurrence>[] {
  const project = compiled(file);
  const sliders = [...project.measures.values()].flatMap(({ name, label, place, range }): Slider[] =>
    range ? [{ name, label, place, range }] : [],
  );
  if (sliders.length === 0) return [];
  const options = Object.fromEntries(
    Object.entries(file.options ?? {}).map(([name, { default: on = false }]) => [name, on]),
  );
  const { tried, all } = endsOf(sliders);
  const checked = (edition: Edition, ends: Ends): Diagnostic[] =>
    check(
      workOut(
        edition,
        options,
        Object.fromEntries(ends.map(({ slider, end }) => [slider.name, slider.range[edition][end]])),
      ),
    );
  const met = new Map<string, { finding: Diagnostic; edition: Edition; ends: Ends; times: number }>();
  for (const edition of ['inch', 'metric'] as const) {
    for (const ends of tried) {
      const here = new Set<string>();
      for (const finding of checked(edition, ends)) {
        // Notes are no trouble, and an end between two marks has been told where the range is read.
        if (finding.severity === 'note' || finding.place[0] === 'values') continue;
        const key = keyOf(finding);
        if (said.has(key) || here.has(key)) continue;
        here.add(key);
        const before = met.get(key);
        if (before) before.times++;
        else met.set(key, { finding, edition, ends, times: 1 });
      }
    }
  }
  const count = 2 * tried.length;
  // Sliders that have no part in it are not named: without them it goes wrong all the same.
  for (const one of met.values()) {
    for (const without of one.ends) {
      const fewer = one.ends.filter((end) => end !== without);
      if (fewer.length === 0) break;
      const same = checked(one.edition, fewer).find((finding) => keyOf(finding) === keyOf(one.finding));
      if (same) [one.finding, one.ends] = [same, fewer];
    }
  }
  const found = [...met.values()].map(({ finding, edition, ends, times }): Diagnostic<Occurrence> => {
    const say = ({ slider: { name, range }, end }: Ends[number]) =>
      project.measures.get(name)!.kind === 'count'
        ? String(range[edition][end])
        : formatLength(range[edition][end], edition, { grid: project.grid });
    const values = Object.fromEntries(ends.map((one) => [one.slider.label, say(one)]));
    const message = `${finding.message} ${times === 1 ? 'That is one' : `It is so in ${times}`} of the ${count} choices tried.`;
    return { ...finding, severity: 'warning', message, edition, values };
  });
  if (all) return found;
  const corners = 2 ** sliders.length;
  const message = `${sliders.length} sliders have ${corners} corners. Each two of them were tried at their ends, ${tried.length} choices in each edition; the corners were not.`;
  return [...found, { severity: 'note', place: sliders[0]!.place, code: 'ends-sampled', message }];
}

/**
 * Small differences between the editions that a formula adds up: twelve gaps of 1/16 in are 3/4 in, and twelve of 2 mm
 * are 24 mm. Of what rests on such a sum, or on a measure whose editions are meant to differ, nothing more is said.
 */
function driftOf(file: ProjectFile, workOut: WorkOut): Diagnostic<Occurrence>[] {
  const options = Object.fromEntries(
    Object.entries(file.options ?? {}).map(([name, { default: on = false }]) => [name, on]),
  );
  const [inch, metric] = [workOut('inch', options), workOut('metric', options)];
  const { parts } = compiled(file);
  const said = new Map<string, boolean>();
  const found: Diagnostic<Occurrence>[] = [];
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
      const fix = 'Small differences between the editions add up here. Choose values that lie closer together.';
      const place = part ? ['pieces', part.piece] : ['measures', name];
      found.push({
        severity: 'note',
        place,
        code: 'editions-drift',
        message,
        fix,
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
export function metIn({ edition, options, values }: Diagnostic<Occurrence>): string {
  const chosen = Object.entries(values ?? {}).map(([label, value]) => `${quote(label)} at ${value}`);
  const changed = Object.entries(options ?? {});
  const sides = [true, false].flatMap((side) => {
    const those = changed.filter(([, on]) => on === side).map(([name]) => quote(name));
    return those.length === 0 ? [] : [`${side ? 'with' : 'without'} ${listed(those)}`];
  });
  return [
    ...(edition ? [`${edition} edition`] : []),
    ...(sides.length > 0 ? [listed(sides)] : []),
    ...(chosen.length > 0 ? [`with ${listed(chosen)}`] : []),
  ].join(', ');
}

/** The same fault in both editions is one fault, though its sentence tells the sizes of each. */
const keyOf = ({ place, code, start }: Diagnostic): string => JSON.stringify([place, code, start]);

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
