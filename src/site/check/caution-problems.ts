import { cautions } from '../../../components/words/caution/cautions.ts';
import { wordCalled } from '../../../components/words/index.ts';
import { makeUp } from '../../core/project/index.ts';
import type { CautionKey } from '../../core/steps/index.ts';
import type { Diagnostic, AtOffset } from '../content/diagnostic.ts';
import type { WorkedOut } from './project-problems.ts';
import type { Entry, LessonEntry } from '../content/read-content.ts';
import type { CourseFile } from '../content/schemas.ts';

/** How a lesson speaks of a tool that can hurt: by its name, or by what only it does. */
const spoken: Readonly<Record<CautionKey, RegExp>> = {
  blade: /\brotary (cutter|blade)|\bcraft knife\b/i,
  scissors: /\b(scissors|shears|snips|seam ripper)\b/i,
  pins: /\b(pins?|pinn(ed|ing)) (it|them|the|in place|together|both|through)\b|\bpins\b/i,
  needle: /\b(sewing machine|presser foot|machine needle|stronger needle|foot pedal)\b/i,
  overlock: /\b(overlock(er)?|serger)\b/i,
  iron: /\b(iron (it|them|the|on)|hot iron|steam|fus(e|es|ed|ing) (it|them|the|to)|press (it|them|the|each|both|open|well))\b/i,
  coating: /\b(coated|laminated|vinyl|oilcloth|plastic) (cloth|cotton|fabric|film)\b/i,
  snap: /\bset (the|a|each|your|both) snaps?\b|\bsnap (pliers|setter)\b/i,
  parts: /\bsew (on )?(the|a|each|your|both) buttons?\b|\bbuttons? (on|to) the\b/i,
  zip: /\b(metal|plastic) zips?\b|\bzips? with (metal|plastic) teeth\b|\bteeth of (a|the|your) zips?\b/i,
  magnet: /\bmagnet(s|ic)?\b/i,
};

/** A lesson that lets the reader take up a tool that can hurt, and has no caution for it. */
export function toolsWithoutCaution(entry: LessonEntry): AtOffset[] {
  const given = cautionsIn(entry);
  return (Object.keys(spoken) as CautionKey[]).flatMap((key): AtOffset[] => {
    if (given.some((text) => text === key || spoken[key].test(text))) return [];
    for (const { start, text } of entry.lesson.prose) {
      const at = text.search(spoken[key]);
      if (at >= 0) return [{ at: start + at, severity: 'warning', ...missing(key, 'this lesson does not say so') }];
    }
    return [];
  });
}

/** What the steps and materials of a project call for, and no lesson of a course on it has; said at the course. */
export function stepsWithoutCaution(
  course: Entry<CourseFile>,
  lessons: readonly LessonEntry[],
  { file, variants }: WorkedOut,
): Diagnostic[] {
  if (!file.steps) return [];
  const given = lessons.flatMap(cautionsIn);
  const called = new Set(makeUp(variants[0].inch).flatMap((step) => step.cautions));
  return [...called]
    .filter((key) => !given.some((text) => text === key || spoken[key].test(text)))
    .map((key) => ({
      file: course.file,
      ...course.locate(['project']),
      severity: 'warning',
      ...missing(key, 'no lesson of this course says so'),
    }));
}

/** The tools that the cautions of a lesson are for, and what those say that are for none. */
function cautionsIn({ lesson, text }: LessonEntry): string[] {
  return lesson.words.flatMap(({ name, attributes, part }) => {
    const names = wordCalled(name)?.names ?? {};
    if (!Object.values(names).includes('caution')) return [];
    const of = attributes.find((attribute) => names[attribute.name] === 'caution')?.value;
    return [...(typeof of === 'string' ? [of] : []), text.slice(part.start, part.end)];
  });
}

const missing = (key: CautionKey, where: string): Pick<Diagnostic, 'message' | 'fix'> => ({
  message: `${cautions[key]?.title ?? key}: this can hurt, and ${where}.`,
  fix: `Write <Caution of="${key}" /> where it is taken up.`,
});
