import {
  didYouMean,
  isClear,
  limitsOf,
  quote,
  readTolerance,
  slipKinds,
  slipsOf,
  sumFor,
  type Pattern,
} from '../../../src/core/index.ts';
import { attributeOf, error } from '../check-texts.ts';
import type { AttributeInLesson, LessonAround, LessonMistake, ProjectInLesson, WordInLesson } from '../word.ts';

/** Slips that there are not, a sum that has no answer, and a tolerance that lets a wrong answer pass for a right one. */
export function check(written: WordInLesson, { project }: LessonAround): LessonMistake[] {
  const patterns = editionsOf(project);
  const slips = written.attributes.flatMap((attribute) => slipMistakes(attribute, patterns));
  if (slips.length > 0) return slips;
  const [of, tolerance] = [attributeOf(written, 'of'), attributeOf(written, 'tolerance')];
  if (typeof of?.value !== 'string') return [];
  const none = noAnswer(of.value, patterns);
  if (none) return [{ at: of.textAt, severity: 'warning', message: none, fix: 'Ask for another size.' }];
  if (typeof tolerance?.value !== 'string') return [];
  const passes = passingSlip(of.value, tolerance.value, project);
  if (passes === undefined) return [];
  const message = `So wide a tolerance does not tell the right answer from this slip: ${passes}`;
  return [{ at: tolerance.textAt, severity: 'warning', message, fix: 'Make it smaller.' }];
}

/** The lesson's own way in both editions. */
export const editionsOf = ({ variants: [{ inch, metric }] }: ProjectInLesson): Pattern[] => [inch, metric];

/** Sums of an author's own slips that cannot be worked out, and names of slips that there are not. */
function slipMistakes({ name, value, at }: AttributeInLesson, patterns: readonly Pattern[]): LessonMistake[] {
  if (typeof value !== 'object' || value === null) return [];
  if (name === 'slips') {
    return Object.keys(value).flatMap((sum) => {
      const read = patterns.map((pattern) => sumFor(sum, pattern)).find(({ ok }) => !ok);
      return read && !read.ok ? [error(at, `slips: ${read.fault.message}`, read.fault.fix)] : [];
    });
  }
  if (name !== 'reword' && name !== 'forbid') return [];
  const named = Array.isArray(value) ? value.map(String) : Object.keys(value);
  return named.flatMap((key) => {
    const [kind = ''] = key.split(' ');
    if (slipKinds.some((one) => one === kind) || kind === 'own') return [];
    return [error(at, `${name}: there is no slip ${quote(kind)}.`, didYouMean(kind, slipKinds))];
  });
}

/** Why nothing could be answered; undefined also where the formula itself is at fault, which is said elsewhere. */
function noAnswer(of: string, patterns: readonly Pattern[]): string | undefined {
  const none = patterns.map((pattern) => sumFor(of, pattern)).find((sum) => sum.ok && sum.value.wanted.value <= 0);
  if (!none?.ok) return undefined;
  return `This question has no answer: ${quote(of)} comes to ${none.value.wanted.value < 0 ? 'less than nothing' : 'nothing'}.`;
}

/** What a learner would be told for a slip that counts as right, and would not if the tolerance were left out. */
function passingSlip(of: string, text: string, project: ProjectInLesson): string | undefined {
  const tolerance = readTolerance(text, project.file.units ?? 'inch');
  if (!tolerance) return undefined;
  for (const pattern of editionsOf(project)) {
    const sum = sumFor(of, pattern);
    if (!sum.ok) continue;
    const { wanted } = sum.value;
    const all = slipsOf({ of }, sum.value, pattern);
    const [usual, given] = [limitsOf({ of }, wanted, pattern), limitsOf({ of, tolerance }, wanted, pattern)];
    const passes = all.find(
      (slip) => isClear(slip, all, wanted, usual) && Math.abs(slip.value - wanted.value) <= given.right,
    );
    if (passes) return passes.sentence;
  }
  return undefined;
}
