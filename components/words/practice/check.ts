import { anyOf, didYouMean, quote, sumFor } from '../../../src/core/index.ts';
import { check as checkSum, editionsOf } from '../ask-size/check.ts';
import { attributeOf, error } from '../check-texts.ts';
import { namesIn, textIn } from '../given.ts';
import type { LessonAround, LessonMistake, WordInLesson } from '../word.ts';

/** What a set asks for, whether the questions that it names are there, and what is wrong with its sum. */
export function check(written: WordInLesson, lesson: LessonAround): LessonMistake[] {
  for (const mistakes of [
    sizesIn(written, lesson),
    [...setMistakes(written, lesson), ...alsoMistakes(written, lesson)],
  ])
    if (mistakes.length > 0) return mistakes;
  return checkSum(written, lesson);
}

/** The first size that stands in the text of the set. */
function sizesIn({ part }: WordInLesson, { words }: LessonAround): LessonMistake[] {
  const size = words.find(
    ({ written, word }) => word?.sizeInText && written.part.start > part.start && written.part.end < part.end,
  );
  const message = 'In practice the numbers change, and this size would not.';
  return size ? [error(size.written.part.start, message, 'Take it out: each exercise lists what is given.')] : [];
}

/** A set asks for one answer or for several, and each can be worked out. */
function setMistakes(written: WordInLesson, { project }: LessonAround): LessonMistake[] {
  const [of, asks, id] = ['of', 'asks', 'id'].map((name) => attributeOf(written, name));
  if (!of && !asks)
    return [error(written.part.start, '<Practice>: what is asked for?', 'Write of="…", or asks={{"…": "…"}}.')];
  if (!asks) return [];
  if (of) return [error(of.at, '<Practice>: it takes of or asks, and not both.', 'Take one of them out.')];
  if (!id) return [error(asks.at, '<Practice>: several questions need a name.', 'Write id="…".')];
  return namesIn(asks.value).flatMap((sum): LessonMistake[] => {
    const fault = editionsOf(project)
      .map((pattern) => sumFor(sum, pattern))
      .find(({ ok }) => !ok);
    return fault && !fault.ok ? [error(asks.at, `asks: ${fault.fault.message}`, fault.fault.fix)] : [];
  });
}

/** Each question that the set names must stand in the lesson, and once in the set. */
function alsoMistakes(written: WordInLesson, { words }: LessonAround): LessonMistake[] {
  const [also, rounds] = [attributeOf(written, 'also'), attributeOf(written, 'rounds')];
  if (!also || !Array.isArray(also.value)) return [];
  const said = (message: string, fix: string) => error(also.at, message, fix);
  if (rounds?.value === 1)
    return [
      said('also: a set that ends with the first right answer never comes to these.', 'Write rounds={2} or more.'),
    ];
  const questions = words.flatMap(({ written, word }) => {
    if (!word?.inSets) return [];
    const given = Object.fromEntries(written.attributes.map(({ name, value }) => [name, value]));
    const name = word.saves?.(given)?.name;
    // One that is refused may be meant by what it is about.
    const { inSets } = word;
    const refused = typeof inSets === 'object' ? inSets : undefined;
    return [{ names: refused ? [name, textIn(given.piece)] : [name], refused }];
  });
  const fitting = questions.flatMap(({ names: [name], refused }) => (refused || name === undefined ? [] : [name]));
  const names = also.value.map(String);
  return names.flatMap((name, i): LessonMistake[] => {
    if (names.indexOf(name) < i) return [said(`also: ${quote(name)} stands there twice.`, 'Keep one of them.')];
    if (fitting.includes(name)) return [];
    const refused = questions.find((one) => one.names.includes(name))?.refused;
    if (refused) return [said(`also: ${quote(name)} ${refused.because}`, refused.fix)];
    const fix =
      didYouMean(name, fitting) ??
      (fitting.length > 0 ? `There are: ${anyOf(fitting)}.` : 'Write the question into the lesson, and name it here.');
    return [said(`also: no question of this lesson is called ${quote(name)}.`, fix)];
  });
}
