/** The fields that every step may have, whatever its verb. */
import { choice, group, length, names, number, option, optional, text, yes } from './fields.ts';
import type { ValuesOf } from './fields.ts';

export const always = {
  id: optional(text('A name for the step, for lessons to show. Left out, its number.')),
  makes: optional(text('What its result is called. Left out, the work keeps its name.')),
  says: optional(text('The step in a sentence of your own, in place of the one made from the verb.')),
  now: optional(
    group(
      {
        width: optional(length('Its width after this step.')),
        height: optional(length('Its height after this step.')),
      },
      'What the work measures now; the kit checks it.',
    ),
  ),
  minutes: optional(number('How long one maker takes. Left out, it is estimated.')),
  tools: optional(names('Tools beside the usual ones.', { least: 0 })),
  'done by': optional(
    choice(['teacher', 'maker'], 'In a class: teacher, where it is done before the class begins; maker if left out.'),
  ),
  'keep with next': optional(yes('The next step follows at once: no session of a class ends between them.')),
  when: optional(option('Only with this option.')),
  unless: optional(option('Only without this option.')),
  note: optional(text('Your words to the learner.')),
} as const;

/** What a step says beside its verb, lengths in mm. */
export type Always = ValuesOf<typeof always>;
