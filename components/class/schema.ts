/** The shapes of files that come from elsewhere. Whoever made them, nothing but these shapes gets in. */
import * as z from 'zod/mini';
import { cleanName, LONGEST_NAME } from './names.ts';
import { mostSaved } from '../words/most-saved.ts';
import { MOST_LESSONS, MOST_VALUE, verdicts, type HandIn } from './hand-in.ts';

// The page's policy lets nobody make programs out of texts, not even to check a shape faster.
z.config({ jitless: true });

/** A short text on one line that turns no other text round. Joiners belong to many a writing. */
const line = (most: number) =>
  z.string().check(z.minLength(1), z.maxLength(most), z.regex(/^[^\p{Cc}\p{Cs}\u202a-\u202e\u2066-\u2069]*$/u));
/** Somebody’s name: there is something to see in it once it is clean. */
const Name = line(2 * LONGEST_NAME).check(z.refine((name) => cleanName(name) !== ''));
const count = z.int().check(z.minimum(0), z.maximum(999));

const value = z.number().check(z.minimum(-MOST_VALUE), z.maximum(MOST_VALUE));

const slips = z.array(line(120)).check(z.maxLength(12));

const Answered = z.strictObject({
  name: line(120),
  tries: count,
  right: z.boolean(),
  atOnce: z.boolean(),
  slips,
  slip: z.exactOptional(line(120)),
  value: z.exactOptional(value),
  wanted: z.exactOptional(value),
  edition: z.exactOptional(z.enum(['inch', 'metric'])),
  picked: z.exactOptional(z.array(z.int().check(z.minimum(-1), z.maximum(99))).check(z.maxLength(40))),
});

const Practised = z.strictObject({ name: line(120), exercises: count, atOnce: count, done: z.boolean(), slips });
const Measured = z.strictObject({ name: line(120), verdict: z.enum(verdicts), mistakes: slips });

const Lesson = z.pipe(
  z.strictObject({
    lesson: line(80),
    sections: z.exactOptional(count),
    sewn: z.exactOptional(count),
    // Files from before these were handed in name the sections steps, and lack the rest.
    steps: z.exactOptional(count),
    answers: z.array(Answered).check(z.maxLength(mostSaved.answer)),
    practised: z.exactOptional(z.array(Practised).check(z.maxLength(mostSaved.practice))),
    measured: z.exactOptional(z.array(Measured).check(z.maxLength(mostSaved.measured))),
  }),
  z.transform(({ steps = 0, sections = steps, sewn = 0, ...rest }) => ({ ...rest, sections, sewn })),
);

/** Whether a calendar has that day. */
function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

export const HandInFile: z.ZodMiniType<HandIn> = z.strictObject({
  name: Name,
  course: line(80),
  day: z.string().check(z.regex(/^\d{4}-\d\d-\d\d$/), z.refine(isDay)),
  time: z.exactOptional(z.string().check(z.regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/))),
  lessons: z.array(Lesson).check(z.maxLength(MOST_LESSONS)),
});
