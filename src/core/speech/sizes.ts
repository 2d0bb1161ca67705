/** Which spoken lengths are measures of the project, so that captions can follow the learner's edition and size. */
import { MM_PER_INCH, SAME, type Edition } from '../measure/index.ts';
import { joinLines, placeIn, secondAt, wordAt, type SpokenLine, type SpokenPlace, type SpokenText } from './lines.ts';
import { editionSpoken, inUnit, NO_UNIT, spokenLengths, type SpokenLength } from './lengths.ts';
import { unitSize, type SpokenUnit } from './units.ts';
import { stem, stemsOf } from './stems.ts';
import { cutList, resolveProject, wayOf, type Measure, type Pattern } from '../project/index.ts';

/** A project in both editions: a speaker may use either. */
export type InEditions = Readonly<Record<Edition, Pattern>>;

/** A measure that a spoken length may be. */
export type SpokenMeasure = {
  /** As a `<Size of>` names it. */
  formula: string;
  label: string;
  /** Its value in each edition, in mm. */
  values: Record<Edition, number>;
};

/** A spoken length with its place in the lines and the seconds it is said from and to. */
export type LengthInLines = SpokenLength & { at: SpokenPlace; from: number; to: number };

/**
 * A spoken length, and for each of its values the measure it is; undefined where it is none. `certain` tells that every
 * value is a measure, that no other measure of this value would read differently in the other edition or at another size,
 * and that the length itself is certain.
 */
export type SpokenSize = LengthInLines & {
  measures: (SpokenMeasure | undefined)[];
  /** Other measures of the same value, for each of the values, the likeliest first. */
  otherMeasures: SpokenMeasure[][];
  certain: boolean;
};

/**
 * Every length in the lines; one that goes over the end of a line is one. Bare numbers are of the edition whose units are
 * said; where those do not tell, of `edition`.
 */
export function lengthsIn(lines: readonly SpokenLine[], edition: Edition = 'inch'): LengthInLines[] {
  return lengthsOf(joinLines(lines), edition);
}

export const lengthsOf = (spoken: SpokenText, edition: Edition): LengthInLines[] =>
  spokenLengths(spoken.text, { edition: editionSpoken(spoken.text, edition) }).map((length) => ({
    ...length,
    at: placeIn(spoken, length.start, length.end),
    from: secondAt(spoken, length.start),
    to: wordAt(spoken, length.end - 1)?.to ?? 0,
  }));

/**
 * The spoken lengths of a recording, each with the measures of the project that it is. A length is compared with the
 * values of the edition of its unit. Of several measures with one value the one is taken whose name stands nearest in what
 * is said around it.
 */
export function spokenSizes(lines: readonly SpokenLine[], patterns: InEditions): SpokenSize[] {
  const spoken = joinLines(lines);
  const known = measuresOf(patterns);
  return lengthsAgainst(spoken, patterns.inch.home, known).map((length) => sizeOf(spoken, length, known));
}

/** So sure is a unit that was not said, and without which no measure of the project has this value. */
const BY_THE_PROJECT = 0.8;

/**
 * Every length, and where no unit was said that one by which its values are measures of the project: “forty eight” is 48 cm
 * where that is a measure and 48 mm is none. Where both are, or none is, it stays unsure.
 */
export function lengthsAgainst(spoken: SpokenText, home: Edition, known: readonly KnownMeasure[]): LengthInLines[] {
  return lengthsOf(spoken, home).map((length) => {
    if (length.unitSaid || length.edition !== 'metric') return length;
    const own = { values: length.values, edition: length.edition };
    const read = [own, ...length.others.filter(({ why }) => why === NO_UNIT)];
    const fits = read.filter(({ values, edition }) =>
      values.every((value) => known.some((measure) => isSaid(value, measure.values[edition], edition))),
    );
    if (fits.length !== 1) return length;
    const unit = unitFor(length, fits[0]!.values);
    return unit ? inUnit(length, unit, Math.max(length.sure, BY_THE_PROJECT)) : length;
  });
}

/** The unit by which a length that was read in another has these values. */
function unitFor({ values, unit }: LengthInLines, meant: readonly number[]): SpokenUnit | undefined {
  const factor = (meant[0]! / values[0]!) * unitSize[unit];
  return (['mm', 'cm', 'in'] as const).find((one) => Math.abs(unitSize[one] - factor) < 1e-6);
}

/** A measure with what is compared: its words, and how much of a name of its own it is. */
export type KnownMeasure = SpokenMeasure & {
  stems: readonly string[];
  rank: number;
  /** A piece or a material has the same name. */
  ofThing: boolean;
  /** Its value where a learner has chosen every size anew, in mm; what is bound to no choice keeps its own. */
  changed: number | undefined;
};

/** The measures of a project that have a value in both editions, lengths alone. */
export function measuresOf({ inch, metric }: InEditions): KnownMeasure[] {
  const known: KnownMeasure[] = [];
  const chosen = chosenAnew(inch);
  for (const measure of Object.values(inch.measures)) {
    const other = metric.measures[measure.name];
    if (measure.dimension !== 1 || !other || measure.value <= SAME) continue;
    known.push({
      formula: measure.name,
      label: measure.spoken ?? measure.label,
      values: { inch: measure.value, metric: other.value },
      stems: [...new Set(stemsOf(`${measure.name} ${measure.label}`))],
      rank: ranks[measure.source],
      ofThing: Object.hasOwn(inch.pieces, measure.name) || Object.hasOwn(inch.materials, measure.name),
      changed: chosen.measures[measure.name]?.value,
    });
  }
  return [...known, ...cutSides({ inch, metric }, known)];
}

/** Sides of cut pieces that no measure has: a name the author gave to another size is not that of the piece. */
function cutSides({ inch, metric }: InEditions, known: readonly KnownMeasure[]): KnownMeasure[] {
  const others = new Map(cutList(metric).map(({ piece, size }) => [piece, size]));
  return cutList(inch).flatMap(({ piece, label, size }) =>
    (['width', 'height'] as const).flatMap((side): KnownMeasure[] => {
      const values = { inch: size[side], metric: others.get(piece)?.[side] ?? size[side] };
      const isMeasure = known.some(
        (one) => one.formula.startsWith(`${piece} `) && Math.abs(one.values.inch - values.inch) <= SAME,
      );
      const name = `cut ${side} of ${label}`;
      return isMeasure
        ? []
        : [
            {
              ...{ formula: '', label: name, values, rank: 0.1 },
              stems: stemsOf(`${piece} ${label} ${side}`),
              ofThing: true,
              changed: undefined,
            },
          ];
    }),
  );
}

/** The project where every measure that a learner may choose has another value, each moved by a share of its own. */
function chosenAnew(pattern: Pattern): Pattern {
  const { file, edition } = pattern.origin;
  const values: Record<string, number> = {};
  for (const [i, { name, value, adjustable }] of Object.values(pattern.measures).entries()) {
    if (!adjustable) continue;
    const { min, max, step } = adjustable;
    const marks = Math.floor((max - min) / step + 1e-6);
    // Shares that differ, so that two measures which are chosen apart hardly meet again.
    const at = (part: number): number => min + step * Math.round(marks * part);
    const one = at(0.15 + 0.7 * ((i * 0.618) % 1));
    values[name] = Math.abs(one - value) > SAME ? one : at(one < (min + max) / 2 ? 1 : 0);
  }
  return resolveProject(file, { edition, ...wayOf(pattern), values });
}

/** “An eighth of an inch from the edge”: where a row of stitches or a fastening lies, whatever piece is named beside it. */
const FROM_EDGE =
  /^ ?(?:(?:in|away|down|up|back) )?from (?:(?:the|that|this|its|each|every|both|your|raw|folded|top|bottom|left|right|side|inner|outer|finished|sewn) )*(?<thing>edges?|folds?|seams?|stitch(?:es|ing)|ends?|sides?)\b/u;

/** Words by which a measure tells such a place. */
const placesOfRows = new Set(stemsOf('edge row seam allowance topstitch edgestitch stitching inset hem baste from'));

/** What the author named comes before what pieces and pleats give. */
const ranks: Record<Measure['source'], number> = { stated: 0.3, derived: 0.2, piece: 0.1, pleats: 0 };

/** How many words before and behind a length tell what it measures. */
const AROUND = 9;

/** Words around a length that tell along which way it is measured. */
const ways: readonly (readonly [said: RegExp, stems: RegExp])[] = [
  [/^(?:wide|width|white|across)$/u, /^(?:width|across)$/u],
  [/^(?:long|length|tall|high|height|deep|down)$/u, /^(?:length|height|long|drop|depth)$/u],
];

/** Whether a value that was said is that of a measure: people read values off a ruler. */
export const isSaid = (said: number, value: number, edition: Edition): boolean =>
  Math.abs(said - value) <= (edition === 'inch' ? MM_PER_INCH / 64 : 0.5) - 1e-9 || Math.abs(said - value) <= SAME;

function sizeOf(spoken: SpokenText, length: LengthInLines, known: readonly KnownMeasure[]): SpokenSize {
  const near = around(spoken, length);
  const from = FROM_EDGE.exec(spoken.text.slice(length.end, length.end + 60).toLowerCase())?.groups?.['thing'];
  const ranked = length.values.map((value, k) => {
    const found = rankMeasures(value, length, k, near, known);
    const tellsIt = found.best?.stems.some((word) => placesOfRows.has(word) || word === stem(from ?? ''));
    return from !== undefined && !tellsIt ? { ...found, clear: false } : found;
  });
  const measures = ranked.map(({ best }) => best && plainly(best));
  const certain =
    length.sure >= 0.75 &&
    !length.asks &&
    !length.takenBack &&
    length.kind !== 'range' &&
    ranked.every(({ best, clear }) => best && clear);
  return { ...length, measures, otherMeasures: ranked.map(({ others }) => others.map(plainly)), certain };
}

const plainly = ({ formula, label, values }: KnownMeasure): SpokenMeasure => ({ formula, label, values });

/** The stems of the words near a length, with how near each stands: 1 beside it, less farther away. */
export function around(
  spoken: SpokenText,
  { start, end }: { start: number; end: number },
): ReadonlyMap<string, number> {
  const near = new Map<string, number>();
  const before = stemsOf(spoken.text.slice(Math.max(0, start - 80), start)).reverse();
  const after = stemsOf(spoken.text.slice(end, end + 70));
  for (const side of [before, after]) {
    for (const [k, word] of side.slice(0, AROUND).entries())
      near.set(word, Math.max(near.get(word) ?? 0, 1 - k / (AROUND + 3)));
  }
  return near;
}

type Ranked = { best: KnownMeasure | undefined; clear: boolean; others: KnownMeasure[] };

function rankMeasures(
  value: number,
  { edition }: SpokenLength,
  side: number,
  near: ReadonlyMap<string, number>,
  known: readonly KnownMeasure[],
): Ranked {
  const scored = known
    .filter((measure) => isSaid(value, measure.values[edition], edition))
    .map((measure) => ({ measure, score: nearness(measure, near) + measure.rank + sideOf(measure, side) }))
    .sort((a, b) => b.score - a.score);
  const [best, ...rest] = scored;
  if (!best) return { best: undefined, clear: false, others: [] };
  const rivals = rest.filter(({ measure }) => !alike(measure, best.measure));
  const clear = rivals.every(({ score }) => best.score - score >= 0.5) && isTold(best.measure, near);
  const others = rivals.map(({ measure }) => measure).filter(({ formula }) => formula !== '');
  // A lesson can name no side of a piece that is no measure.
  if (best.measure.formula === '') return { best: others[0], clear: false, others: others.slice(1) };
  return { best: best.measure, clear, others };
}

/** Up to here a size is an allowance, a hem or a row, in mm, and is said without its name: fold it under by half an inch. */
const ALLOWANCE = 20;

/** Whether what is said around a number tells that it is this measure, and not something else that is as long: four inches of thread. */
function isTold(measure: KnownMeasure, near: ReadonlyMap<string, number>): boolean {
  const tells = nearness(measure, near);
  if (measure.rank <= ranks.piece) return tells >= 0.25;
  return tells >= 0.15 || Math.max(...Object.values(measure.values)) <= ALLOWANCE;
}

/** Two measures that read the same in both editions, and at other sizes. */
const alike = (a: KnownMeasure, b: KnownMeasure): boolean =>
  Math.abs(a.values.inch - b.values.inch) <= SAME &&
  Math.abs(a.values.metric - b.values.metric) <= SAME &&
  Math.abs((a.changed ?? a.values.inch) - (b.changed ?? b.values.inch)) <= SAME;

/** How much of a measure's name stands near: the share of its words, nearer ones counting more. */
export function nearness({ stems }: KnownMeasure, near: ReadonlyMap<string, number>): number {
  if (stems.length === 0) return 0;
  let sum = 0;
  for (const word of stems) sum += near.get(word) ?? 0;
  for (const [said, meant] of ways) {
    if ([...near.keys()].some((word) => said.test(word)) && stems.some((word) => meant.test(word))) sum += 0.4;
  }
  return (2 * sum) / (stems.length + 2);
}

/** The first number of a pair is the width, as a rule. */
const sideOf = ({ stems }: KnownMeasure, side: number): number =>
  (side === 0 && stems.includes('width')) ||
  (side === 1 && stems.some((word) => word === 'length' || word === 'height'))
    ? 0.1
    : 0;
