import { quote } from '../../core/measure/index.ts';
import { isClear, limitsOf, readTolerance, slipsOf, sumFor } from '../../core/questions/index.ts';
import type { Pattern } from '../../core/project/index.ts';
import { oncePer } from '../../core/once.ts';
import { alsoProblems } from './also-problems.ts';
import { choiceProblems } from './choice-problems.ts';
import type { Part, WrittenAttribute } from '../content/lesson-text.ts';
import type { Said } from '../content/problem.ts';
import type { WorkedOut } from './project-problems.ts';
import type { LessonEntry } from '../content/read-content.ts';
import { slipProblems } from './slip-problems.ts';

/** Questions that have no answer, and those whose tolerance lets a wrong answer pass for a right one. */
export function questionProblems(entry: LessonEntry, worked: WorkedOut): Said[] {
  return entry.lesson.words.flatMap(({ name, attributes, part }): Said[] => {
    if (name === 'Practice') {
      const size = entry.lesson.words.find((word) => word.name === 'Size' && isWithin(word.part, part));
      if (size) return [{ at: size.part.start, severity: 'error', ...SIZE_IN_PRACTICE }];
    }
    if (name === 'Practice') {
      const problems = [
        ...practiceProblems(attributes, part, editionsOf(worked)),
        ...alsoProblems(attributes, entry.lesson.words),
      ];
      if (problems.length > 0) return problems;
    }
    const chosen = choiceProblems({ name, attributes }, worked);
    if (chosen) return chosen;
    if (name !== 'AskSize' && name !== 'Practice') return [];
    const slips = slipProblems(attributes, editionsOf(worked));
    if (slips.length > 0) return slips;
    const [of, tolerance] = ['of', 'tolerance'].map((name) => attributes.find((attribute) => attribute.name === name));
    if (typeof of?.value !== 'string') return [];
    const none = noAnswer(worked, of.value);
    if (none) return [{ at: of.textAt, severity: 'warning', message: none, mend: 'Ask for another size.' }];
    if (typeof tolerance?.value !== 'string') return [];
    const passes = passingSlip(worked, JSON.stringify([of.value, tolerance.value]));
    if (passes === undefined) return [];
    const message = `So wide a tolerance does not tell the right answer from this slip: ${passes}`;
    return [{ at: tolerance.textAt, severity: 'warning', message, mend: 'Make it smaller.' }];
  });
}

/** A set asks for one answer or for several, and each can be worked out. */
function practiceProblems(attributes: readonly WrittenAttribute[], part: Part, patterns: readonly Pattern[]): Said[] {
  const [of, asks, id] = ['of', 'asks', 'id'].map((name) => attributes.find((attribute) => attribute.name === name));
  const error = (at: number, message: string, mend?: string): Said => ({ at, severity: 'error', message, mend });
  if (!of && !asks) return [error(part.start, '<Practice>: what is asked for?', 'Write of="…", or asks={{"…": "…"}}.')];
  if (!asks) return [];
  if (of) return [error(of.at, '<Practice>: it takes of or asks, and not both.', 'Take one of them out.')];
  if (!id) return [error(asks.at, '<Practice>: several questions need a name.', 'Write id="…".')];
  return Object.keys(Object(asks.value)).flatMap((sum): Said[] => {
    const fault = patterns.map((pattern) => sumFor(sum, pattern)).find(({ ok }) => !ok);
    return fault && !fault.ok ? [error(asks.at, `asks: ${fault.fault.message}`, fault.fault.mend)] : [];
  });
}

const isWithin = (inner: Part, outer: Part) => inner.start > outer.start && inner.end < outer.end;

const SIZE_IN_PRACTICE = {
  message: 'In practice the numbers change, and this size would not.',
  mend: 'Take it out: each exercise lists what is given.',
};

const editionsOf = ({ variants: [{ inch, metric }] }: WorkedOut): Pattern[] => [inch, metric];

/** Why nothing could be answered; undefined also where the formula itself is at fault, which is said elsewhere. */
const noAnswer = oncePer((worked: WorkedOut, of): string | undefined => {
  const sums = editionsOf(worked).map((pattern) => sumFor(of, pattern));
  const none = sums.find((sum) => sum.ok && sum.value.wanted.value <= 0);
  if (!none?.ok) return undefined;
  return `This question has no answer: ${quote(of)} comes to ${none.value.wanted.value < 0 ? 'less than nothing' : 'nothing'}.`;
});

/** What a learner would be told for a slip that counts as right, and would not if the tolerance were left out. */
const passingSlip = oncePer((worked: WorkedOut, question): string | undefined => {
  const [of, written] = JSON.parse(question) as [string, string];
  const tolerance = readTolerance(written, worked.file.units ?? 'inch');
  if (!tolerance) return undefined;
  for (const pattern of editionsOf(worked)) {
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
});
