/** The findings of a project in both editions, in every size and with its options and choices. */
import { check } from './check.ts';
import { choiceKind, formatChosen } from './chosen.ts';
import { compiled } from './compile.ts';
import { farApart, formatLength, listed, quote } from '../measure/index.ts';
import { resolveProject } from './resolve.ts';
import { inText } from './texts.ts';
import type { Diagnostic, Edition, InFile } from '../measure/index.ts';
import type { Pattern } from './pattern.ts';
import type { ProjectWay } from './ways.ts';
import type { Materials } from './materials.ts';
import type { ProjectFile } from './schema.ts';

/** Where and in which editions and options something was met. */
export type Occurrence = InFile & {
  /** Where not both editions have it, the one that does. */
  edition?: Edition;
  /** Where only some ends of the sliders have it: one such choice of a learner, by label, in words. */
  values?: Readonly<Record<string, string>>;
  /** The options and choices that differ from how the lesson has them, where the lesson's own way does not have it. */
  options?: Readonly<Record<string, boolean | string>>;
  /** The size, where the lesson's own does not have it. */
  size?: string;
};

/** A project worked out in one edition and way, and with a learner's values if there are any. */
export type WorkOut = (
  edition: Edition,
  way: Partial<ProjectWay>,
  values?: Readonly<Record<string, number>>,
) => Pattern;

/**
 * Of so many sliders every corner is tried, each at its least or its most; of more, the ends of each two. Six have 64
 * corners, which is no more work than the 60 ends of their pairs.
 */
export const MOST_SLIDERS = 6;

/** In each edition so many ends of sliders are tried at the most, all sizes together; of more, those of the lesson's own size. */
const MOST_ENDS = 64;

/** More combinations of options, choices and sizes than this are sampled. */
export const MOST_COMBINATIONS = 32;

/**
 * Checks a project in both editions, in every size and with every combination of its options and choices; each finding is
 * told once, as it is met nearest to the lesson's own way. Of more than 32 combinations a sample is tried, and a note says
 * so: the lesson's own, each thing changed alone, all options on, all off, each size with each one of a choice and each
 * two ones of two choices, and others spread evenly.
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
  workOut: WorkOut = (edition, way, values) =>
    resolveProject(file, { edition, ...way, ...(values && { values }), ...(materials && { materials }) }),
  { ends = true }: { ends?: boolean } = {},
): Diagnostic<Occurrence>[] {
  const own = workOut('inch', {});
  const things = thingsToChoose(own);
  const { combinations, all } = combinationsOf(things);
  const found: Diagnostic<Occurrence>[] = [];
  const said = new Set<string>();
  for (const combination of combinations) {
    const way = wayIn(things, combination);
    const [inch, metric] = (['inch', 'metric'] as const).map((edition) => check(workOut(edition, way))) as [
      Diagnostic[],
      Diagnostic[],
    ];
    const differs = wayIn(things, combination, true);
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
          ...(Object.keys(differs.options).length > 0 && { options: differs.options }),
          ...(differs.size !== undefined && { size: differs.size }),
        });
      }
    }
  }
  for (const size of own.sizes?.of ?? [undefined]) {
    for (const finding of driftOf(file, (edition) => workOut(edition, size === undefined ? {} : { size }))) {
      if (said.has(keyOf(finding))) continue;
      said.add(keyOf(finding));
      found.push({ ...finding, ...(size !== undefined && size !== own.sizes!.default && { size }) });
    }
  }
  if (ends) found.push(...checkEnds(file, workOut, said, own.sizes));
  if (combinations.length < all) {
    const message = `${makeCombinations(own)} ${all} combinations. ${combinations.length} of them were tried.`;
    const place = own.sizes ? 'sizes' : Object.keys(own.choices).length > 0 ? 'choices' : 'options';
    found.push({ severity: 'note', place: [place], code: 'sampled', message });
  }
  return found;
}

/** “7 options make”, “5 sizes, 2 choices and 3 options make”. */
function makeCombinations({ sizes, choices, options }: Pattern): string {
  const parts = [
    [sizes?.of.length ?? 0, 'size'],
    [Object.keys(choices).length, 'choice'],
    [Object.keys(options).length, 'option'],
  ] as const;
  const said = parts.flatMap(([n, what]) => (n === 0 ? [] : [`${n} ${what}${n === 1 ? '' : 's'}`]));
  return `${listed(said)} make`;
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

/** What goes wrong where sliders stand at their ends, the lesson's own options on, in each size; `said` is told already. */
function checkEnds(
  file: ProjectFile,
  workOut: WorkOut,
  said: ReadonlySet<string>,
  sizes: Pattern['sizes'],
): Diagnostic<Occurrence>[] {
  const project = compiled(file);
  const sliders = [...project.measures.values()].flatMap(({ name, label, place, range }): Slider[] =>
    range ? [{ name, label, place, range }] : [],
  );
  if (sliders.length === 0) return [];
  const { tried, all } = endsOf(sliders);
  const others = sizes?.of.filter((size) => size !== sizes.default) ?? [];
  const inEach = others.length === 0 || (others.length + 1) * tried.length <= MOST_ENDS;
  const checked = (edition: Edition, ends: Ends, size: string | undefined): Diagnostic[] =>
    check(
      workOut(
        edition,
        size === undefined ? {} : { size },
        Object.fromEntries(ends.map(({ slider, end }) => [slider.name, slider.range[edition][end]])),
      ),
    );
  type Met = { finding: Diagnostic; edition: Edition; ends: Ends; size: string | undefined; times: number };
  const met = new Map<string, Met>();
  for (const edition of ['inch', 'metric'] as const) {
    for (const size of [undefined, ...(inEach ? others : [])]) {
      for (const ends of tried) {
        const here = new Set<string>();
        for (const finding of checked(edition, ends, size)) {
          // Notes are no trouble, and an end between two marks has been told where the range is read.
          if (finding.severity === 'note' || finding.place[0] === 'values') continue;
          const key = keyOf(finding);
          if (said.has(key) || here.has(key)) continue;
          here.add(key);
          const before = met.get(key);
          if (before) before.times++;
          else met.set(key, { finding, edition, ends, size, times: 1 });
        }
      }
    }
  }
  const count = 2 * tried.length * (inEach ? others.length + 1 : 1);
  // Sliders that have no part in it are not named: without them it goes wrong all the same.
  for (const one of met.values()) {
    for (const without of one.ends) {
      const fewer = one.ends.filter((end) => end !== without);
      if (fewer.length === 0) break;
      const same = checked(one.edition, fewer, one.size).find((finding) => keyOf(finding) === keyOf(one.finding));
      if (same) [one.finding, one.ends] = [same, fewer];
    }
  }
  const found = [...met.values()].map(({ finding, edition, ends, size, times }): Diagnostic<Occurrence> => {
    const say = ({ slider: { name, range }, end }: Ends[number]) =>
      formatChosen(range[edition][end], choiceKind(project.measures.get(name)!), edition, { grid: project.grid });
    const own = workOut(edition, {});
    const values = Object.fromEntries(ends.map((one) => [inText(one.slider.label, own), say(one)]));
    const message = `${finding.message} ${times === 1 ? 'That is one' : `It is so in ${times}`} of the ${count} choices tried.`;
    return { ...finding, severity: 'warning', message, edition, values, ...(size !== undefined && { size }) };
  });
  if (!inEach) {
    const message = `The sliders were tried at their ends in the size ${quote(sizes!.default)} alone.`;
    found.push({ severity: 'note', place: ['sizes'], code: 'ends-in-one-size', message });
  }
  if (all) return found;
  const corners = 2 ** sliders.length;
  const message = `${sliders.length} sliders have ${corners} corners. Each two of them were tried at their ends, ${tried.length} choices in each edition; the corners were not.`;
  return [...found, { severity: 'note', place: sliders[0]!.place, code: 'ends-sampled', message }];
}

/**
 * Small differences between the editions that a formula adds up: twelve gaps of 1/16 in are 3/4 in, and twelve of 2 mm
 * are 24 mm. Of what rests on such a sum, or on a measure whose editions are meant to differ, nothing more is said.
 */
function driftOf(file: ProjectFile, workOut: (edition: Edition) => Pattern): Diagnostic<Occurrence>[] {
  const [inch, metric] = [workOut('inch'), workOut('metric')];
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
export function metIn({ edition, options, size, values }: Diagnostic<Occurrence>): string {
  const chosen = Object.entries(values ?? {}).map(([label, value]) => `${quote(label)} at ${value}`);
  const changed = Object.entries(options ?? {});
  const sides = [true, false].flatMap((side) => {
    const those = changed
      .filter(([, on]) => (on !== false) === side)
      .map(([name, on]) => quote(typeof on === 'string' ? `${name}: ${on}` : name));
    return those.length === 0 ? [] : [`${side ? 'with' : 'without'} ${listed(those)}`];
  });
  return [
    ...(edition ? [`${edition} edition`] : []),
    ...(size === undefined ? [] : [`size ${quote(size)}`]),
    ...(sides.length > 0 ? [listed(sides)] : []),
    ...(chosen.length > 0 ? [`with ${listed(chosen)}`] : []),
  ].join(', ');
}

/** The same fault in both editions is one fault, though its sentence tells the sizes of each. */
const keyOf = ({ place, code, start }: Diagnostic): string => JSON.stringify([place, code, start]);

/** What is chosen: its name, and what it may be, the lesson's own first. The size has no name. */
type Thing = { name: string | undefined; of: readonly (boolean | string)[] };

function thingsToChoose({ options, choices, sizes }: Pattern): Thing[] {
  const ownFirst = (all: readonly string[], own: string) => [own, ...all.filter((one) => one !== own)];
  return [
    ...Object.entries(options).map(([name, { default: on }]) => ({ name, of: [on, !on] })),
    ...Object.entries(choices).map(([name, { of, default: own }]) => ({ name, of: ownFirst(Object.keys(of), own) })),
    ...(sizes ? [{ name: undefined, of: ownFirst(sizes.of, sizes.default) }] : []),
  ];
}

/** For each thing which of what it may be; 0 is the lesson's own. */
type Combination = readonly number[];

/** A combination as a way to make the project up; with `differing`, only what is not as in the lesson. */
function wayIn(things: readonly Thing[], combination: Combination, differing = false): ProjectWay {
  const chosen = things.flatMap(({ name, of }, i) =>
    differing && combination[i] === 0 ? [] : [[name, of[combination[i]!]!] as const],
  );
  const size = chosen.find(([name]) => name === undefined)?.[1];
  const options = Object.fromEntries(chosen.flatMap(([name, one]) => (name === undefined ? [] : [[name, one]])));
  return { options, ...(size !== undefined && { size: String(size) }) };
}

/** The combinations to try, the lesson's own first and those that differ least from it next. */
function combinationsOf(things: readonly Thing[]): { combinations: Combination[]; all: number } {
  const all = things.reduce((product, { of }) => product * of.length, 1);
  const numbered = (n: number): number[] => {
    let rest = n;
    return things.map(({ of }) => {
      const digit = rest % of.length;
      rest = Math.floor(rest / of.length);
      return digit;
    });
  };
  const changed = (one: Combination) => one.filter((digit) => digit > 0).length;
  if (all <= MOST_COMBINATIONS) {
    const combinations = Array.from({ length: all }, (_, n) => numbered(n));
    return { combinations: combinations.sort((a, b) => changed(a) - changed(b)), all };
  }
  const chosen = new Map<string, Combination>();
  const add = (one: Combination) => chosen.set(one.join(), one);
  add(things.map(() => 0));
  const alone = things.flatMap(({ of }, i) => of.slice(1).map((_, k) => things.map((_, j) => (i === j ? k + 1 : 0))));
  alone.forEach(add);
  for (const on of [true, false]) add(things.map(({ of }) => Math.max(0, of.indexOf(on))));
  for (const pair of pairsAmong(things)) add(pair);
  // Steps of the golden section spread evenly, however many there are.
  for (let k = 1; chosen.size < MOST_COMBINATIONS; k++) add(numbered(Math.floor(((k * 0.618_033_988_75) % 1) * all)));
  return { combinations: [...chosen.values()], all };
}

/**
 * Combinations in which each size meets each one of each choice, and each one of a choice each one of the others: as few
 * as are found by always taking what meets most that has not met. Options take turns on and off beside them.
 */
function pairsAmong(things: readonly Thing[]): Combination[] {
  const several = things.flatMap(({ of }, i) => (of.some((one) => typeof one === 'string') ? [i] : []));
  const open = new Set<string>();
  const keyFor = (i: number, a: number, j: number, b: number) => [i, a, j, b].join();
  for (const i of several)
    for (const j of several)
      if (i < j)
        for (const a of things[i]!.of.keys()) for (const b of things[j]!.of.keys()) open.add(keyFor(i, a, j, b));
  const found: Combination[] = [];
  while (open.size > 0) {
    const [first] = open;
    const [i, a, j, b] = first!.split(',').map(Number) as [number, number, number, number];
    const digits = things.map((_, k) => (several.includes(k) ? -1 : (found.length >> (k % 5)) % 2));
    [digits[i], digits[j]] = [a, b];
    for (const k of several) {
      if (digits[k] !== -1) continue;
      const meets = (digit: number) =>
        several
          .filter((m) => digits[m] !== -1 && m !== k)
          .filter((m) => open.has(m < k ? keyFor(m, digits[m]!, k, digit) : keyFor(k, digit, m, digits[m]!))).length;
      digits[k] = [...things[k]!.of.keys()].reduce((best, digit) => (meets(digit) > meets(best) ? digit : best), 0);
    }
    for (const m of several) for (const k of several) if (m < k) open.delete(keyFor(m, digits[m]!, k, digits[k]!));
    found.push(digits);
  }
  return found;
}
