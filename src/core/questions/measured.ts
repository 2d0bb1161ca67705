import { formatLength, listed, markOf, type Edition } from '../measure/index.ts';
import {
  measuredWorkOf,
  sizeNames,
  type MeasuredWork,
  type ProjectAtHand,
  type Subject,
  type SizeName,
} from './measured-work.ts';
import { mistakesFor, type SewingMistake } from './mistakes.ts';
import { remediesFor, type Remedy } from './remedies.ts';
import type { Pattern, Size } from '../project/pattern.ts';

/** What a learner's work measures, in mm; one way or both. */
export type Measured = Partial<Size>;

/** A mistake that explains what was measured, and by how much it misses it each way, in mm. */
export type Explanation = SewingMistake & { miss: Measured };

export type MeasuredReading = {
  verdict: 'well' | 'explained' | 'ambiguous' | 'unexplained';
  sentence: string;
  expected: Size;
  /** Measured less expected, in mm. */
  off: Measured;
  /** What explains it, the commonest first. */
  explanations: Explanation[];
  remedies: Remedy[];
};

/**
 * How far work may be off and still be well, in mm: cutting is more exact than sewing, where every seam and fold adds a
 * little. Common practice, no source.
 */
export const workTolerance: Record<'cut' | 'sewn', Record<Edition, number>> = {
  cut: { inch: 25.4 / 16, metric: 2 },
  sewn: { inch: 25.4 / 8, metric: 3 },
};

/**
 * Explains what somebody's work measures: the single mistake that accounts for width and height together, and what can
 * still be done. A mistake explains a size that it gives to within one mark of the ruler. Where several do, all are
 * named and none is claimed. Undefined where the project, with its options, has no such thing or nothing was measured.
 *
 * @example explainMeasured({ width: 107.95, height: 155.6 }, { finished: true }, { file }).sentence // => 'It looks sewn with seams of ⅜ in. The pattern has ¼ in.'
 */
export function explainMeasured(
  measured: Measured,
  subject: Subject,
  project: ProjectAtHand,
): MeasuredReading | undefined {
  const work = measuredWorkOf(subject, project);
  const given = sizeNames.filter((way) => measured[way] !== undefined);
  if (!work || given.length === 0) return undefined;
  const { expected, pattern, stage } = work;
  const { edition, grid } = pattern;
  const less = (size: Size): Measured => Object.fromEntries(given.map((way) => [way, measured[way]! - size[way]]));
  const off = less(expected);
  const largest = (miss: Measured) => Math.max(...given.map((way) => Math.abs(miss[way]!)));
  const tolerance = workTolerance[stage][edition];
  if (largest(off) <= tolerance + 1e-6) {
    return {
      verdict: 'well',
      sentence: wellSentence(work, largest(off)),
      expected,
      off,
      explanations: [],
      remedies: [],
    };
  }

  const mark = markOf(edition, grid);
  const fitting = mistakesFor(work, off)
    .map((mistake): Explanation => ({ ...mistake, miss: less(mistake.size) }))
    .filter(
      ({ size, miss }) => largest(miss) <= mark + 0.05 && given.some((way) => apart(size, expected, way, tolerance)),
    );
  // One whose size was chosen to fit is heard only where nothing else explains it.
  const firm = fitting.filter(({ loose }) => !loose);
  const explanations = distinct(firm.length > 0 ? firm : fitting, given);
  const [best] = explanations;
  const shared = { expected, off, explanations, remedies: remediesFor(work, measured, off, explanations) };
  const wrong = given.filter((way) => Math.abs(off[way]!) > tolerance);
  if (!best) {
    const far = listed(wrong.map((way) => difference(way, off[way]!, pattern)));
    const sentence = `It is ${far}. No single mistake explains that; measure once more.`;
    return { verdict: 'unexplained', sentence, ...shared };
  }
  if (explanations.length > 1) {
    const sentence = 'More than one mistake would give this size. Look at the work to tell which.';
    return { verdict: 'ambiguous', sentence, ...shared };
  }
  const both = wrong.length === 2 ? ' That explains both width and height.' : '';
  return { verdict: 'explained', sentence: best.sentence + both, ...shared };
}

const apart = (a: Size, b: Size, way: SizeName, tolerance: number) => Math.abs(a[way] - b[way]) > tolerance;

/** Mistakes of one kind that come to the same in what was measured are one. */
function distinct(mistakes: readonly Explanation[], given: readonly SizeName[]): Explanation[] {
  const same = (a: Explanation, b: Explanation) =>
    a.kind === b.kind && a.names[0] === b.names[0] && given.every((way) => !apart(a.size, b.size, way, 1e-6));
  return mistakes.filter((mistake, i) => mistakes.findIndex((other) => same(mistake, other)) === i);
}

function wellSentence({ stage }: MeasuredWork, largest: number): string {
  if (largest < 0.05) return 'All is well: it measures exactly what it should.';
  return `All is well: that is within what ${stage === 'cut' ? 'cutting' : 'sewing'} allows.`;
}

function difference(way: SizeName, off: number, { edition, grid }: Pattern): string {
  const by = formatLength(Math.abs(off), edition, { grid, style: 'set' });
  return `${by} too ${off > 0 ? 'large' : 'small'} in ${way}`;
}

/** What a piece should measure, and what the usual single mistakes would make of it. In mm. */
export type UsualSizes = { expected: Size; usual: { sentence: string; size: Size }[] };

/** As many of one kind, and as many in all. */
const [OF_A_KIND, IN_ALL] = [2, 8];

/**
 * The commonest mistakes with what they come to, each size once: for whoever looks at many pieces. Undefined where the
 * project, with its options, has no such thing.
 */
export function usualSizes(subject: Subject, project: ProjectAtHand): UsualSizes | undefined {
  const work = measuredWorkOf(subject, project);
  if (!work) return undefined;
  const { expected, pattern } = work;
  const text = ({ width, height }: Size) =>
    [width, height].map((mm) => formatLength(mm, pattern.edition, { grid: pattern.grid })).join(' x ');
  const known = [text(expected)];
  const kinds: string[] = [];
  const usual = mistakesFor(work, {}).filter(({ kind, size, loose }) => {
    const isKnown = known.includes(text(size)) || size.width <= 0 || size.height <= 0;
    const isMany = kinds.filter((one) => one === kind).length >= OF_A_KIND || kinds.length >= IN_ALL;
    if (loose || isKnown || isMany) return false;
    known.push(text(size));
    kinds.push(kind);
    return true;
  });
  return { expected, usual: usual.map(({ sentence, size }) => ({ sentence, size })) };
}
