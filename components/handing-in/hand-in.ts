/** What a learner hands in: how far they came and what went wrong, from what their own browser kept. */

/** One question: how often it was tried, how it stands, whether the first try was right, and the slips behind it. */
export type Answered = { name: string; tries: number; right: boolean; atOnce: boolean; slips: string[] };

/** `steps`: how many steps of the lesson are done. */
export type HandedLesson = { lesson: string; steps: number; answers: Answered[] };

/** `name` is what the learner chose to be called; `day` is a date as 2030-12-31. */
export type HandIn = { name: string; course: string; day: string; lessons: HandedLesson[] };

/** A lesson as these pages know it. `path` is its address on this site, `questions` are in the lesson's order. */
export type CourseLesson = {
  id: string;
  title: string;
  /** From the site's root. */
  url: string;
  /** As the browser has it. */
  path: string;
  steps: number;
  questions: { name: string; words: string }[];
};

/** A course as these pages know it. */
export type Course = { id: string; title: string; lessons: CourseLesson[] };

/** Everything that was kept, by key, as JSON text. */
export type Kept = ReadonlyMap<string, string>;

/**
 * What was kept for the lessons of a course. Storage may hold anything: what is not of the right shape is passed over.
 *
 * @example gather(new Map([['answer:/fold/#depth', '{"tries":1,"checked":{"right":true},"firstRight":true}']]), lessons)
 */
export function gather(kept: Kept, lessons: readonly CourseLesson[]): HandedLesson[] {
  return lessons.map(({ id, url, path, steps, questions }) => {
    const done = parsed(kept.get(`done:${url}`));
    return {
      lesson: id,
      steps: Array.isArray(done) ? Math.min(done.length, steps) : 0,
      answers: questions.flatMap(({ name }) => {
        const { tries, checked, firstRight, slips } = asRecord(parsed(kept.get(`answer:${path}#${name}`)));
        if (typeof tries !== 'number' || !(tries > 0)) return [];
        const known = Array.isArray(slips) ? slips.filter((slip) => typeof slip === 'string') : [];
        return [
          {
            name,
            tries: Math.min(999, Math.floor(tries)),
            right: asRecord(checked).right === true,
            atOnce: firstRight === true,
            slips: known.slice(0, 12).map((slip) => slip.slice(0, 120)),
          },
        ];
      }),
    };
  });
}

function parsed(text: string | undefined): unknown {
  try {
    return text === undefined ? undefined : JSON.parse(text);
  } catch {
    return undefined;
  }
}

const asRecord = (value: unknown): Record<string, unknown> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
