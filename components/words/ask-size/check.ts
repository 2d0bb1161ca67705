import {
  didYouMean,
  formatQuantity,
  isClear,
  limitsOf,
  quote,
  SAME,
  readTolerance,
  slipKinds,
  slipsOf,
  sumFor,
  type Pattern,
} from '../../../src/core/index.ts';
import { attributeOf, error } from '../check-texts.ts';
import type { AttributeInLesson, LessonAround, LessonMistake, ProjectInLesson, WordInLesson } from '../word.ts';

/**
 * Slips that there are not, a sum that has no answer, a tolerance that lets a wrong answer pass for a right one, a size
 * that the sum does not hold, and slips that cannot be told apart.
 */
export function check(written: WordInLesson, lesson: LessonAround): LessonMistake[] {
  const { project } = lesson;
  const patterns = editionsOf(project);
  const slips = written.attributes.flatMap((attribute) => slipMistakes(attribute, patterns));
  if (slips.length > 0) return slips;
  const [of, tolerance] = [attributeOf(written, 'of'), attributeOf(written, 'tolerance')];
  if (typeof of?.value !== 'string') return [];
  const none = noAnswer(of.value, patterns);
  if (none) return [{ at: of.textAt, severity: 'warning', message: none, fix: 'Ask for another size.' }];
  const passes = typeof tolerance?.value === 'string' && passingSlip(of.value, tolerance.value, project);
  if (passes) {
    const message = `So wide a tolerance does not tell the right answer from this slip: ${passes}`;
    return [{ at: tolerance.textAt, severity: 'warning', message, fix: 'Make it smaller.' }];
  }
  if (written.name !== 'AskSize') return [];
  return [
    ...answerAbove(written, of, lesson),
    ...sizesNotHeld(written, of.value, lesson),
    ...slipsAlike(written, of, patterns),
  ];
}

/** A size in the text above that is the answer. What parts of a lesson print, the page itself keeps back. */
function answerAbove(written: WordInLesson, of: AttributeInLesson, { project, words }: LessonAround): LessonMistake[] {
  const patterns = editionsOf(project);
  const sums = patterns.map((pattern) => sumFor(String(of.value), pattern));
  // A size that somebody is to read off the page takes no sum.
  if (sums.some((sum) => !sum.ok || sum.value.formula.tree.kind === 'name')) return [];
  const isAnswer = (size: string) =>
    patterns.every((pattern, i) => {
      const [printed, asked] = [sumFor(size, pattern), sums[i]!];
      if (!printed.ok || !asked.ok || printed.value.wanted.dimension !== asked.value.wanted.dimension) return false;
      return Math.abs(printed.value.wanted.value - asked.value.wanted.value) < SAME;
    });
  const printed = words.flatMap(({ written: { part, attributes }, word }) => {
    if (part.start >= written.part.end) return [];
    const size = word?.sizeInText?.(Object.fromEntries(attributes.map(({ name, value }) => [name, value])));
    return size !== undefined && isAnswer(size) ? [size] : [];
  });
  if (printed.length === 0) return [];
  const message = `The answer stands above the question: <Size of="${printed[0]}" /> prints it.`;
  return [{ at: of.textAt, severity: 'warning', message, fix: 'Take it out there, or ask for something else.' }];
}

/** A size in the text of a question that its sum does not hold: what learners do with it is not understood. */
function sizesNotHeld(written: WordInLesson, of: string, { project, words }: LessonAround): LessonMistake[] {
  const [pattern] = editionsOf(project);
  const sum = pattern && sumFor(of, pattern);
  if (!sum?.ok) return [];
  const { names } = sum.value.formula;
  const stands = (name: string) => sumFor(name, pattern!);
  return words.flatMap(({ written: { part, attributes }, word }): LessonMistake[] => {
    if (part.start <= written.part.start || part.end >= written.part.end) return [];
    const size = word?.sizeInText?.(Object.fromEntries(attributes.map(({ name, value }) => [name, value])));
    const read = size === undefined ? undefined : stands(size);
    // A sum in the text is worked out for the learner; a name must be a part of the sum, or stand for one.
    if (!read?.ok || read.value.asked === undefined || names.includes(read.value.asked)) return [];
    if (names.some((name) => read.value.formula.text === name || textOf(stands(name)) === size)) return [];
    const message = `The question names ${quote(size!)}, but its sum does not hold it: ${quote(sum.value.formula.text)}.`;
    const fix = `Ask for a sum over ${quote(size!)}, or take it out of the question.`;
    return [{ at: part.start, severity: 'warning', message, fix }];
  });
}

const textOf = (sum: ReturnType<typeof sumFor>) => (sum.ok ? sum.value.formula.text : undefined);

/** Two likely slips may come to the same at the lesson's size. A learner who makes one of them gets no diagnosis. */
function slipsAlike(written: WordInLesson, of: AttributeInLesson, patterns: readonly Pattern[]): LessonMistake[] {
  const [own, forbid] = ['slips', 'forbid'].map((name) => attributeOf(written, name)?.value);
  const question = {
    of: String(of.value),
    slips: Object.entries(own ?? {}).map(([is, say]) => ({ is, say: String(say) })),
    forbid: Array.isArray(forbid) ? forbid.map(String) : [],
  };
  for (const pattern of patterns) {
    const sum = sumFor(question.of, pattern);
    if (!sum.ok) continue;
    const { wanted } = sum.value;
    const { right } = limitsOf(question, wanted, pattern);
    const likely = slipsOf(question, sum.value, pattern).filter(
      ({ likelihood, names }) => likelihood === 'likely' && names.length < 2,
    );
    const pair = likely.flatMap((slip, i) => {
      const other = likely.slice(i + 1).find(({ value }) => Math.abs(value - slip.value) <= right);
      return other ? [[slip, other] as const] : [];
    })[0];
    if (!pair) continue;
    const [slip, other] = pair;
    const at = formatQuantity({ ...wanted, value: slip.value }, pattern);
    const said = pair.map(({ sentence }) => `“${sentence.replace(/\..*$/u, '')}”`);
    const message = `Two likely slips come to ${at} here, so that nobody can tell them apart: ${said.join(' and ')}.`;
    const fix = `Choose sizes that tell them apart, or rule one out: forbid={["${slip.key}"]} or forbid={["${other.key}"]}.`;
    return [{ at: of.textAt, severity: 'warning', message, fix }];
  }
  return [];
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
