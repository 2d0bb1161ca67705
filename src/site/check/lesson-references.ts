import type { Reference } from '../../../components/words/word.ts';
import { evaluate, parseFormula } from '../../core/formula/index.ts';
import { ALL_STEPS, layersAsked, steppedPleats } from '../../core/project/index.ts';
import { anyOf, didYouMean, fail, ok, plainName, quote } from '../../core/measure/index.ts';
import type { Diagnostic, InText } from '../../core/measure/index.ts';
import type { AtOffset } from '../content/diagnostic.ts';
import type { WorkedOut } from './project-problems.ts';

/** What a lesson can name. */
export type Surroundings = {
  /** Folder name of the lesson's project; undefined where neither the lesson nor its course names one. */
  project: string | undefined;
  /** The lesson's project, unless its file cannot be read: then its names are not checked. */
  worked: WorkedOut | undefined;
  /** Folder names of all projects. */
  projects: readonly string[];
  /** Names of the recordings of the lesson's course; none where no lesson is looked at. */
  recordings?: readonly string[];
};

/**
 * What is wrong with the name or formula that an attribute gives; the offset counts in its text.
 *
 * @param reference what it should name
 */
export function referenceFault(
  reference: Reference,
  text: string,
  { project, worked, projects, recordings = [] }: Surroundings,
): AtOffset | undefined {
  // The glossary's check tells of terms, the attribute's schema of cautions, and the checks of pictures and files of these.
  if (reference === 'term' || reference === 'caution') return undefined;
  if (reference === 'picture' || reference === 'file') return undefined;
  const severity = 'error';
  if (reference === 'project') {
    if (projects.includes(text)) return undefined;
    return { at: 0, severity, message: `There is no project ${quote(text)}.`, fix: didYouMean(text, projects) };
  }
  if (reference === 'recording') {
    if (recordings.includes(text)) return undefined;
    const fix = didYouMean(text, recordings) ?? `Put ${text}.vtt into the folder recordings of the course.`;
    return { at: 0, severity, message: `This course has no recording ${quote(text)} of this project.`, fix };
  }
  if (!worked) return undefined;
  const asked = reference === 'formula or layers' && !namesOf('measure', worked).includes(text) && layersAsked(text);
  if (asked) {
    const steps = [...namesOf('step', worked), ALL_STEPS];
    if (steps.some((step) => plainName(step) === plainName(asked))) return undefined;
    const message = `There is no step ${quote(asked)} whose layers could be counted.`;
    return { at: text.length - asked.length, severity, message, fix: didYouMean(asked, steps) };
  }
  if (reference === 'formula' || reference === 'formula or layers' || reference === 'length') {
    const fault = sumFault(text, reference, worked);
    if (!fault) return undefined;
    const { start: at, message, fix } = fault;
    return { at, severity, message, fix: fix && !message.includes(fix) ? `Write ${quote(fix)}.` : undefined };
  }
  const known = namesOf(reference, worked);
  if (known.includes(text)) return undefined;
  if (reference === 'measure' && restsOnFault(text, worked)) return undefined;
  if (reference === 'pleated piece' && namesOf('piece', worked).includes(text)) {
    const pleated = known.length > 0 ? `Pleated are: ${anyOf(known.map(quote))}.` : undefined;
    return { at: 0, severity, message: `The piece ${quote(text)} has no pleats.`, fix: pleated };
  }
  const kind = reference === 'pleated piece' ? 'piece' : reference;
  const message = `The project ${quote(project ?? '')} has no ${kind} ${quote(text)}.`;
  return { at: 0, severity, message, fix: didYouMean(text, known) };
}

function namesOf(
  reference: 'measure' | 'piece' | 'pleated piece' | 'cloth' | 'option' | 'step',
  { file, variants }: WorkedOut,
): string[] {
  switch (reference) {
    case 'measure': {
      const worked = variants.flatMap(({ inch, metric }) => [inch.measures, metric.measures]);
      return [...new Set([file.measures, ...worked].flatMap((measures) => Object.keys(measures)))];
    }
    case 'piece':
      return Object.keys(file.pieces);
    case 'pleated piece':
      return Object.entries(file.pieces).flatMap(([name, piece]) => (steppedPleats(piece) ? [name] : []));
    case 'cloth':
      return Object.keys(file.materials ?? {}).filter((role) =>
        Object.values(file.pieces).some((piece) => piece.from === role),
      );
    case 'option':
      return Object.keys(file.options ?? {});
    case 'step':
      return (file.steps ?? []).flatMap(({ id }) => (typeof id === 'string' ? id : []));
  }
}

/** A number of a piece that could not be worked out is missing for a reason that is reported in the project file. */
const restsOnFault = (name: string, { file, variants }: WorkedOut): boolean =>
  variants[0].inch.findings.some((finding) => finding.severity === 'error') &&
  Object.keys(file.pieces).some((piece) => name.startsWith(`${piece} `));

/** What is wrong with a sum that a lesson asks for. */
function sumFault(
  text: string,
  reference: 'formula' | 'formula or layers' | 'length',
  worked: WorkedOut,
): Diagnostic<InText> | undefined {
  const { sumFaults } = worked;
  const key = `${reference} ${text}`;
  if (!sumFaults.has(key)) sumFaults.set(key, findSumFault(text, reference, worked));
  return sumFaults.get(key);
}

function findSumFault(
  text: string,
  reference: 'formula' | 'formula or layers' | 'length',
  worked: WorkedOut,
): Diagnostic<InText> | undefined {
  const names = namesOf('measure', worked);
  const formula = parseFormula(text, { names });
  if (!formula.ok) return restsOnFault(text.slice(formula.fault.start), worked) ? undefined : formula.fault;
  for (const edition of ['inch', 'metric'] as const) {
    const patterns = worked.variants.map((variant) => variant[edition]);
    const result = evaluate(formula.value, {
      get(name) {
        const measure = patterns.find(({ measures }) => measures[name])?.measures[name];
        if (measure) return ok({ value: measure.value, dimension: measure.dimension });
        return fail({ severity: 'error', code: 'no-value', message: '', start: 0, end: 0 }); // its own file says why
      },
      edition,
      grid: worked.variants[0][edition].grid,
      known: names,
    });
    if (!result.ok) return result.fault.code === 'rests-on-fault' ? undefined : result.fault;
    if (reference === 'length' && result.value.dimension !== 1) {
      const message = 'A length belongs here, with its unit: 1/16 in or 1 mm.';
      return { severity: 'error', code: 'no-length', message, start: 0, end: text.length };
    }
  }
  return undefined;
}
