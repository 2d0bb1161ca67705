/** What is said against what is computed: sizes, steps and names of a recording held against the project. */
import { defaultGrid, formatLength, marks, quote, type Diagnostic, type Edition } from '../measure/index.ts';
import { joinLines, placeIn, secondAt, type SpokenLine, type SpokenPlace, type SpokenText } from './lines.ts';
import { alignSteps, SURE_STEP, type ToldStep } from './align.ts';
import { editionSpoken } from './lengths.ts';
import {
  around,
  isSaid,
  lengthsAgainst,
  measuresOf,
  nearness,
  type InEditions,
  type KnownMeasure,
  type LengthInLines,
} from './sizes.ts';
import { saidFor } from './said-verbs.ts';
import { lengthsWithin } from './telling.ts';
import { clausesOf } from './sentences.ts';
import { phraseAt, plainWords, stem, stemsOf } from './stems.ts';
import { verbNames } from '../steps/index.ts';
import type { CourseWords } from './course-words.ts';
import { cutList, type Pattern, type Step } from '../project/index.ts';

/** Where a finding stands in a recording: the seconds, the words, and the place in the lines; none where it is about the whole. */
export type InRecording = { from: number; to: number; text: string; at?: SpokenPlace; step?: string };

/**
 * Something that is said and does not agree with the project. Codes: `said-another-measure`, `said-nearly`,
 * `said-other-edition`, `said-no-measure`, `said-unclear`, `told-not-in-file`, `never-told`, `two-names`.
 */
export type SpokenFinding = Diagnostic<InRecording>;

/** What is compared: the lines, mended or not, the project in both editions, its steps in both, and the words of the course. */
export type Compared = {
  lines: readonly SpokenLine[];
  patterns: InEditions;
  steps: Readonly<Record<Edition, readonly Step[]>>;
  words: CourseWords;
  /** The steps as they were told, where that is known already. */
  told?: readonly ToldStep[];
};

/**
 * Compares a recording with its project. Found are numbers that are another measure than the one that is named beside them,
 * nearly a measure, one of the other edition or none; steps that are told and not in the file, or in the file and never
 * told; and pieces that are called by two names. In the order in which they are said.
 */
export function compareSpoken({ lines, patterns, steps, words, told: known }: Compared): SpokenFinding[] {
  const spoken = joinLines(lines);
  if (spoken.words.length === 0) return [];
  const { home } = patterns.inch;
  const told = known ?? alignSteps(lines, steps[editionSpoken(spoken.text, home)], words);
  const measures = measuresOf(patterns);
  const others = otherLengths(patterns, steps);
  const findings = [
    ...lengthsAgainst(spoken, home, measures).flatMap(
      (length) => sizeFinding({ spoken, length, measures, others, told }) ?? [],
    ),
    ...notInFile(spoken, steps[home], told),
    ...neverTold(spoken, patterns[home], steps[home], told),
    ...twoNames(spoken, patterns[home]),
  ];
  return findings.sort((a, b) => a.from - b.from);
}

/** Lengths of a project that no measure holds: those of its steps, sizes that are shown, and things that are bought. In mm, by edition. */
function otherLengths(patterns: InEditions, steps: Compared['steps']): Record<Edition, readonly number[]> {
  const of = (edition: Edition): number[] =>
    lengthsWithin([
      steps[edition].map(({ instruction, size, nowMeasures, depth }) => [instruction, size, nowMeasures, depth]),
      Object.values(patterns[edition].materials).map(({ material }) => material?.width),
      cutList(patterns[edition]).map(({ size }) => size),
    ]);
  return { inch: of('inch'), metric: of('metric') };
}

type Looked = {
  spoken: SpokenText;
  length: LengthInLines;
  measures: readonly KnownMeasure[];
  others: Record<Edition, readonly number[]>;
  told: readonly ToldStep[];
};

const fixOf = (right: string): string => `Say ${right}, or write a correction beside the recording.`;

/** Beside these a number is a setting of a machine, a purchase or a distance on the table. */
const notOfTheProject =
  /\b(?:stitch(?:es)?(?: length)?|needle|yards?|metres?|meters?|fabric|zip|zipper|ruler|mat|thread)\b/u;

function sizeFinding({ spoken, length, measures, others, told }: Looked): SpokenFinding | undefined {
  // A fat quarter is bought; what is hardly a length is not held against anybody.
  if (length.takenBack || length.text.includes('fat')) return undefined;
  const { from, to, text, at, edition } = length;
  const step = told.find((one) => from >= one.from && from <= one.to)?.step;
  const where = { from, to, text, at, ...(step !== undefined && { step }) };
  if (length.asks) {
    return {
      severity: 'warning',
      code: 'said-unclear',
      message: `${quote(text)} cannot be read for sure. ${length.asks}`,
      ...where,
    };
  }
  const near = around(spoken, length);
  if (length.sure < 0.5) return undefined;
  for (const value of length.values) {
    const same = measures.filter((measure) => isSaid(value, measure.values[edition], edition));
    const named = namedBeside(measures, spoken, length, same);
    if (named && length.kind === 'one') return wrongOne(named, same, value, length, where);
    if (same.length > 0 || length.kind === 'range') continue;
    if (others[edition].some((mm) => isSaid(value, mm, edition))) continue;
    const other: Edition = edition === 'inch' ? 'metric' : 'inch';
    const across = measures.find((measure) => isSaid(value, measure.values[other], other));
    const show = (mm: number, shown: Edition = edition): string => formatLength(mm, shown);
    if (across && Math.abs(across.values[edition] - value) > 0.5) {
      const message = `${quote(text)} is ${across.label} of the other edition; in this one it is ${show(across.values[edition])}.`;
      return {
        severity: 'warning',
        code: 'said-other-edition',
        message,
        fix: fixOf(show(across.values[edition])),
        ...where,
      };
    }
    const nearest = nearly(value, edition, measures, near);
    if (nearest && length.kind !== 'about') {
      const message = `${quote(text)} is nearly ${nearest.label}, which is ${show(nearest.values[edition])}.`;
      return {
        severity: 'warning',
        code: 'said-nearly',
        message,
        fix: fixOf(show(nearest.values[edition])),
        amount: Math.abs(value - nearest.values[edition]),
        ...where,
      };
    }
    const nearby = spoken.text.slice(Math.max(0, length.start - 25), length.end + 25).toLowerCase();
    if (length.kind === 'about' || length.unit === 'yd' || length.unit === 'm' || notOfTheProject.test(nearby))
      continue;
    const message = `${quote(text)} is no measure of the project.`;
    return { severity: 'note', code: 'said-no-measure', message, ...where };
  }
  return undefined;
}

/** Between a name and its number, and no part of either. */
const betweenThem = new Set(
  stemsOf('exactly just about should be measures measure comes now finished cut only always again really quite'),
);

/** “The seam is …”: one word is a name where the number is said of it. */
const saidOfIt =
  /\b(?:is|are|was|measures?|of|should be|will be|stays)(?: (?:an?|about|just|only|exactly|always|now))* ?$/u;

/**
 * The one measure that is named right beside a number and has another value: “the seam allowance is …”, “… seam allowance”.
 * All of its words stand there, in any order, and nothing between them.
 */
function namedBeside(
  measures: readonly KnownMeasure[],
  { text }: SpokenText,
  { start, end }: LengthInLines,
  same: readonly KnownMeasure[],
): KnownMeasure | undefined {
  const lead = /[^.;:!?]*$/u.exec(text.slice(Math.max(0, start - 80), start))![0].toLowerCase();
  const before = stemsOf(lead).filter((word) => !betweenThem.has(word));
  const after = stemsOf(/^[^.;:!?,]*/u.exec(text.slice(end, end + 40))![0]);
  const ofIt = saidOfIt.test(lead);
  /** How many words of a name stand there; 0 where one is missing. */
  const named = ({ label, formula, ofThing }: KnownMeasure): number =>
    Math.max(
      // “The band is 18 inches long” tells of the piece, though a measure is called band as well.
      ...[label, ...(ofThing ? [] : [formula])].map((name) => {
        const stems = [...new Set(stemsOf(name))];
        // Of pockets that are counted, nobody can tell which is meant.
        if (stems.length === 0 || /\d/u.test(name)) return 0;
        const stands = (words: readonly string[]): boolean =>
          words.length === stems.length && stems.every((word) => words.includes(word));
        const isThere =
          (stands(before.slice(-stems.length)) && (stems.length > 1 || ofIt)) ||
          (stems.length > 1 && stands(after.slice(0, stems.length)));
        return isThere ? stems.length : 0;
      }),
    );
  const best = measures
    .map((measure) => ({ measure, words: named(measure) }))
    .toSorted((a, b) => b.words - a.words || b.measure.rank - a.measure.rank)[0];
  if (!best || best.words === 0 || same.includes(best.measure)) return undefined;
  // Another one of this value is spoken of as well: the zip’s seam allowance.
  const near = new Set([...before.slice(-5), ...after.slice(0, 3)]);
  const rival = same.some(
    (measure) =>
      named(measure) >= best.words ||
      [measure.label, measure.formula].some((name) => {
        const stems = stemsOf(name);
        return stems.length > 0 && stems.every((word) => near.has(word));
      }),
  );
  return rival ? undefined : best.measure;
}

function wrongOne(
  named: KnownMeasure,
  same: readonly KnownMeasure[],
  value: number,
  length: LengthInLines,
  where: InRecording,
): SpokenFinding {
  const right = formatLength(named.values[length.edition], length.edition);
  const also = same[0] ? ` ${formatLength(value, length.edition)} is ${same[0].label}.` : '';
  const message = `${quote(length.text)} is said of ${named.label}, which is ${right}.${also}`;
  return {
    severity: 'warning',
    code: 'said-another-measure',
    message,
    fix: fixOf(right),
    amount: Math.abs(value - named.values[length.edition]),
    ...where,
  };
}

/** So much of a measure's name must stand near a number that is nearly it: of many measures one is always nearly right. */
const SPOKEN_OF = 0.2;

/** A measure that is spoken of and differs by a mark or two of the ruler, or by a fortieth; of several the one named nearest. */
function nearly(
  value: number,
  edition: Edition,
  measures: readonly KnownMeasure[],
  near: ReadonlyMap<string, number>,
): KnownMeasure | undefined {
  return measures
    .filter(({ values }) => {
      const apart = Math.abs(values[edition] - value);
      const ruled = Math.abs(marks(values[edition], edition, defaultGrid) - marks(value, edition, defaultGrid));
      return value > 12 && (ruled <= (edition === 'inch' ? 2 : 3) || apart <= value / 40);
    })
    .map((measure) => ({ measure, named: nearness(measure, near) }))
    .filter(({ named }) => named >= SPOKEN_OF)
    .map(({ measure, named }) => ({
      measure,
      score: named + measure.rank - Math.abs(measure.values[edition] - value) / value,
    }))
    .sort((a, b) => b.score - a.score)[0]?.measure;
}

/** Verbs that belong to the telling of others: what is sewn is pressed, and what is turned is folded. */
const byTheWay = new Set([
  'press',
  'fold',
  'turn',
  'turn over',
  'quarter turn',
  'lay',
  'attach',
  'trim',
  'join',
  'sew round',
  'sew up',
  'put',
  'push in',
  'finish',
]);

/** Words that a verb’s name is part of, and that tell of something else: an end is tucked in, a pocket’s corner has a triangle. */
const notTheVerb: Readonly<Record<string, RegExp>> = {
  tuck: /\btuck(?:ed|ing|s)?(?: (?:it|them|this|that|the \w+|your \w+))? (?:in|under|into|inside|away|up|behind)\b|\btucked\b/u,
  triangles: /^(?!.*half.square).*\btriangles?\b/u,
};

/** Work that is told though no step of the file does it. */
function notInFile(spoken: SpokenText, steps: readonly Step[], told: readonly ToldStep[]): SpokenFinding[] {
  const done = new Set(
    steps.flatMap(({ verb, title, note, instruction }) => [
      ...[verb, ...Object.keys(instruction)],
      ...stemsOf(`${title} ${note ?? ''} ${Object.keys(instruction).join(' ')}`),
    ]),
  );
  const found: SpokenFinding[] = [];
  const met = new Set<string>();
  for (const clause of clausesOf(spoken)) {
    const [start, end] = [spoken.words[clause.first]!.start, spoken.words[clause.next - 1]!.end];
    const text = spoken.text.slice(start, end);
    const run = ` ${stemsOf(text).join(' ')} `;
    for (const verb of verbNames) {
      if (byTheWay.has(verb) || done.has(verb) || met.has(verb)) continue;
      const stems = stemsOf(verb);
      const said = stems.length > 0 && stems.every((word) => !done.has(word)) && run.includes(` ${stems.join(' ')} `);
      if (
        !said ||
        notTheVerb[verb]?.test(text.toLowerCase()) ||
        !told.some(({ from, to }) => secondAt(spoken, start) >= from - 20 && secondAt(spoken, start) <= to + 20)
      )
        continue;
      met.add(verb);
      const from = secondAt(spoken, start);
      const message = `“${verb}” is told here, and no step of the project does it.`;
      found.push({
        ...{
          severity: 'note' as const,
          code: 'told-not-in-file',
          message,
          fix: `Add a step with ${verb}, or leave it out of the lesson.`,
        },
        ...{ from, to: spoken.words[clause.next - 1]!.to, text, at: placeIn(spoken, start, end) },
      });
    }
  }
  return found;
}

/** A recording that tells so much of a project is one of the whole. */
const WHOLE = 2 / 3;

/** Steps of the file that nobody tells. Of a recording that shows a part, those that lie between others which it tells. */
function neverTold(
  spoken: SpokenText,
  pattern: Pattern,
  steps: readonly Step[],
  told: readonly ToldStep[],
): SpokenFinding[] {
  const met = new Set(told.map(({ step }) => step));
  const first = steps.findIndex(({ id }) => met.has(id));
  const last = steps.findLastIndex(({ id }) => met.has(id));
  const ofWhole = met.size >= WHOLE * steps.length;
  return steps.flatMap((step, i) => {
    if (met.has(step.id) || first < 0 || (!ofWhole && (i < first || i > last))) return [];
    const before = told.findLast((one) => steps.slice(0, i).some(({ id }) => id === one.step));
    const behind = told.find(
      ({ step: id, from }) => from >= (before?.from ?? 0) && steps.slice(i + 1).some((one) => one.id === id),
    );
    if (toldInPassing(spoken, pattern, step, { from: before?.from ?? 0, to: behind?.to ?? Infinity })) return [];
    const from = before?.to ?? 0;
    const heard = before === undefined || before.sure >= SURE_STEP;
    const message = `${quote(step.title)} is a step of the project and is never told${heard ? '' : ', as far as can be heard'}.`;
    return [
      {
        severity: heard ? ('warning' as const) : ('note' as const),
        code: 'never-told',
        message,
        fix: 'Tell it in a correction beside the recording, at this second.',
        from,
        to: from,
        text: '',
        step: step.id,
      },
    ];
  });
}

/** As many words may lie between what is done and what it is done to. */
const IN_ONE_BREATH = 7;

/**
 * Whether a step is told in a breath with its neighbours, too short for a stretch of its own: its verb, and within a few
 * words something that it takes.
 */
function toldInPassing(
  spoken: SpokenText,
  pattern: Pattern,
  { verb, title, takes }: Step,
  { from, to }: { from: number; to: number },
): boolean {
  const phrases = saidFor(verb).map((phrase) => plainWords(phrase).map(stem));
  const ofVerb = new Set(phrases.flat());
  // The last word of a name is the thing: the flap lining is a lining. What tells it from others must be said as well.
  const things = [
    ...takes.flatMap((name) => [name, pattern.pieces[name]?.label ?? name]),
    (title.toLowerCase().match(/\p{L}+/gu) ?? []).filter((word) => !ofVerb.has(stem(word))).join(' '),
  ].map((name) => stemsOf(name).filter((word) => !ofVerb.has(word)));
  const said = plainWords(
    spoken.words
      .filter((word) => word.from >= from && word.from <= to)
      .map(({ text }) => text)
      .join(' '),
  );
  const stems = said.map(stem);
  return stems.some((word, first) =>
    phrases.some((phrase) => {
      const last = word === phrase[0] ? phraseAt(stems, phrase, first) : -1;
      if (last < 0) return false;
      const near = new Set([
        ...stemsOf(said.slice(0, first).join(' ')).slice(-2),
        ...stemsOf(said.slice(first, last + 1).join(' ')),
        ...stemsOf(said.slice(last + 1, last + 1 + 3 * IN_ONE_BREATH).join(' ')).slice(0, IN_ONE_BREATH),
      ]);
      return things.some((words) => words.length > 0 && words.every((one) => near.has(one)));
    }),
  );
}

/** Names that people give to one and the same piece. Common practice, no source. */
const sameThing: readonly (readonly string[])[] = [
  ['cover', 'shell', 'outer', 'exterior'],
  ['lining', 'inner', 'inside fabric'],
  ['facing', 'backing'],
  ['interfacing', 'stabilizer', 'stabiliser', 'stiffener', 'vlieseline'],
  ['strap', 'handle'],
  ['flap', 'lid', 'tongue'],
  ['zip', 'zipper', 'fastener'],
  ['snap', 'popper', 'press stud', 'stud', 'press button'],
  ['pocket', 'pouch'],
  ['pouch', 'purse'],
  ['napkin', 'serviette'],
  ['runner', 'table cloth'],
  ['batting', 'wadding', 'fleece'],
  ['casing', 'channel', 'tunnel'],
  ['folio', 'folder', 'wallet'],
];

/** A piece, a material or a work that the project calls one thing and the speaker, more than once, another. */
function twoNames(spoken: SpokenText, pattern: Pattern): SpokenFinding[] {
  const called = new Set(
    [
      ...Object.values(pattern.pieces).flatMap(({ name, label }) => [name, label]),
      ...Object.values(pattern.materials).flatMap(({ role, label, material }) => [role, label, material?.label ?? '']),
      pattern.finished?.of ?? '',
      pattern.title,
    ]
      .flatMap((text) => text.toLowerCase().match(/\p{L}+/gu) ?? [])
      .map(stem),
  );
  const text = spoken.text.toLowerCase();
  return sameThing.flatMap((names) => {
    const own = names.find((name) => called.has(stem(name)));
    if (own === undefined) return [];
    return names.flatMap((other) => {
      // Zip and zipper are one word.
      if (called.has(stem(other)) || stem(other) === stem(own)) return [];
      const found = [...text.matchAll(new RegExp(`\\b(?:the|your|my|this|a) (${other}s?)\\b`, 'gu'))];
      if (found.length < 2) return [];
      const start = found[0]!.index + found[0]![0].length - found[0]![1]!.length;
      const end = found[0]!.index + found[0]![0].length;
      const from = secondAt(spoken, start);
      const message = `What the project calls ${quote(own)} is called ${quote(other)} here, ${found.length} times.`;
      return [
        {
          severity: 'note' as const,
          code: 'two-names',
          message,
          fix: `Say “${own}”, or add the other name to its label.`,
          from,
          to: from + 1,
          text: found[0]![1]!,
          at: placeIn(spoken, start, end),
        },
      ];
    });
  });
}
