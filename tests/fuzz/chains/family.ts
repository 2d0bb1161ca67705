/** Random chains of steps, with all laws on. */
import { parse, stringify } from 'yaml';
import { chance } from '../chance.ts';
import { check, formatLength, makeUp, verbNamed } from '../../../src/core/index.ts';
import { editions, projectOf, resolved, Thrown } from './grammar.ts';
import * as laws from './laws.ts';
import { drawn } from './drawn.ts';
import { insideStitches, stillThere, together, turned } from './still.ts';
import { foldedOver, laidAtDistance, laidAtSide, rowsAlongSides, setThrough, trimmedTo } from './sentence.ts';
import { takenBy } from './laws.ts';
import type { Work } from '../../../src/core/cloth/index.ts';
import type { Edition, Pattern, Step } from '../../../src/core/index.ts';
import type { Family } from '../family.ts';
import type { File, Said } from './grammar.ts';

/** How often each verb was sewn and refused since the start. */
export const counts = new Map<string, { sewn: number; refused: number }>();

const tries = (seed: number): string[] => triesFile(() => projectOf(chance(seed), seed), seed);

function triesFile(makes: () => File, seed: number): string[] {
  try {
    const file = makes();
    return editions.flatMap((edition) => brokenIn(file, edition, seed).map((line) => `${edition}: ${line}`));
  } catch (thrown) {
    const error = thrown instanceof Thrown ? thrown.cause : thrown;
    return [
      `threw ${error instanceof Error ? (error.stack ?? error.message).split('\n').slice(0, 4).join(' ') : String(error)}`,
    ];
  }
}

function brokenIn(file: File, edition: Edition, seed: number): string[] {
  const pattern = resolved(file, edition);
  const steps = makeUp(pattern);
  count(file, steps);
  const { share } = chance(seed + 7);
  return [
    ...steps.flatMap((step) => brokenBy(step, pattern, share).map((line) => `${nameOf(step)}: ${line}`)),
    ...handedOn(steps),
    ...found(pattern, file),
    ...told(pattern, file, steps),
    ...fixedPoint(pattern, file, edition, steps),
    ...(seed % 5 === 0 ? alikeWhenShorter(file, edition, steps) : []),
  ];
}

const nameOf = ({ place, verb }: Step): string => `step ${Number(place[1]) + 1} (${verb})`;

function brokenBy(step: Step, pattern: Pattern, share: () => number): string[] {
  const cuts = verbNamed(step.verb).cuts === true || /seam$/u.test(step.verb);
  const seam = pattern.making?.seam ?? 0;
  const points = (work: Work) => laws.pointsIn(work, 12, share);
  return [
    ...laws.finite(step),
    ...laws.clothStays(step, cuts),
    ...laws.partsOfPieces(step, pattern),
    ...laws.untorn(step, pattern),
    ...laws.untangled(step),
    ...laws.rowsStay(step, cuts),
    ...laws.marksStay(step, cuts),
    ...laws.layersCounted(step, points(step.after)),
    ...laws.sized(step),
    ...turned(step, points(takenBy(step)[0]!)),
    ...stillThere(step, seam, points(takenBy(step)[0]!).concat(points(takenBy(step)[1] ?? takenBy(step)[0]!))),
    ...insideStitches(step, laws.pointsIn(takenBy(step)[0]!, 40, share)),
    ...together(step, 60, points),
    ...rowsAlongSides(step, pattern.edition),
    ...setThrough(step),
    ...trimmedTo(step),
    ...foldedOver(step, points(takenBy(step)[0]!)),
    ...laidAtSide(step),
    ...laidAtDistance(step),
    ...drawn(step, pattern, share() < 0.5 ? 'front' : 'back', points(step.after)),
  ];
}

/** Findings name a place in the file, in words that hold no slip of the program. */
function found(pattern: Pattern, file: File): string[] {
  const lines: string[] = [];
  for (const { place, message, fix = '', code = '', severity } of check(pattern)) {
    let there: unknown = file;
    for (const step of place) there = (there as Record<string | number, unknown> | undefined)?.[step];
    if (place.length === 0 || there === undefined)
      lines.push(`${severity} ${code} names no place in the file: ${place.join(' > ')}`);
    if (code === 'cloth-lost') lines.push(`${place.join(' > ')}: ${message}`);
    if (/NaN|Infinity|undefined|\[object|null/u.test(`${message} ${fix}`))
      lines.push(`${code} says “${message} ${fix}”`);
  }
  return lines;
}

/** A work that a step takes is as the step before left it, or a piece as it was cut. */
function handedOn(steps: readonly Step[]): string[] {
  const known = new Map<string, Work>();
  const lines: string[] = [];
  for (const step of steps) {
    for (const [name, work] of Object.entries(step.before)) {
      const left = known.get(name);
      const raw = work.plies.length === 1 && work.stitches.length === 0 && work.marks.length === 0;
      if (left ? work !== left && !raw : !raw) lines.push(`${nameOf(step)}: ${name} is not as it was left`);
    }
    known.set(step.makes, step.after);
  }
  return lines;
}

/** A step that is not done has an error at its place, or waits for what one before it did not make. */
function told(pattern: Pattern, file: File, steps: readonly Step[]): string[] {
  const done = new Set(steps.map(({ place }) => place[1]));
  const first = file.steps.findIndex((_, i) => !done.has(i));
  const isTold = check(pattern).some(
    ({ severity, code, place: [part, n] }) =>
      (severity === 'error' || code === 'left-out') && part === 'steps' && n === first,
  );
  return first < 0 || isTold ? [] : [`step ${first + 1} is not done, and nobody says why`];
}

/** What the work measures, written down as “now”, is right. */
function fixedPoint(pattern: Pattern, file: File, edition: Edition, steps: readonly Step[]): string[] {
  const unit = edition === 'inch' ? 'in' : 'mm';
  const text = (mm: number) => {
    const shown = formatLength(mm, edition);
    return shown.includes('≈') ? `${(edition === 'inch' ? mm / 25.4 : mm).toFixed(6)} ${unit}` : shown;
  };
  const sizes = new Map(steps.map(({ place, size }) => [place[1], size]));
  const stated = file.steps.map((step, i): Said => {
    const size = sizes.get(i);
    const both = (mm: number) => ({ [unit]: text(mm) });
    return size ? { ...step, now: { width: both(size.width), height: both(size.height) } } : step;
  });
  const before = check(pattern).length;
  const after = check(resolved({ ...file, steps: stated }, edition));
  return after.length === before
    ? []
    : [`“now” as measured is refused: ${after.map(({ message }) => message).join(' ')}`];
}

/** What a step did does not change by the steps that follow. */
function alikeWhenShorter(file: File, edition: Edition, steps: readonly Step[]): string[] {
  const many = Math.ceil(file.steps.length / 2);
  if (many === file.steps.length || file.steps.some((step) => 'meets' in step)) return [];
  const short = makeUp(resolved({ ...file, steps: file.steps.slice(0, many) }, edition));
  const text = (step: Step | undefined) =>
    step && JSON.stringify([step.title, step.after.plies, step.after.stitches, step.after.marks]);
  const other = short.find((step, i) => text(step) !== text(steps[i]));
  return other ? [`${nameOf(other)}: comes out otherwise when later steps are left out`] : [];
}

function count(file: File, steps: readonly Step[]): void {
  const done = new Set(steps.map(({ place }) => place[1]));
  for (const [i, step] of file.steps.entries()) {
    const verb = Object.keys(step).find((key) => key !== 'id')!;
    const known = counts.get(verb) ?? { sewn: 0, refused: 0 };
    counts.set(verb, done.has(i) ? { ...known, sewn: known.sewn + 1 } : { ...known, refused: known.refused + 1 });
  }
}

/** The project of a seed, also where thinking of it throws. */
function fileOf(seed: number): File {
  try {
    return projectOf(chance(seed), seed);
  } catch (error) {
    if (error instanceof Thrown) return error.file;
    throw error;
  }
}

export const chains = {
  name: 'chains',
  tries,
  again: (text) => triesFile(() => parse(text) as File, 0),
  tells: (seed) => stringify(fileOf(seed)),
  sums: () => [...counts].sort().map(([verb, { sewn, refused }]) => `${verb}: ${sewn} sewn, ${refused} refused`),
} satisfies Family;
