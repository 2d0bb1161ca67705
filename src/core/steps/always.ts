/** The fields that every step may have, whatever its verb. */
import { choice, count, group, length, names, number, options, optional, text, yes } from './fields.ts';
import type { ValuesOf } from './fields.ts';

export const always = {
  id: optional(text('A name for the step, for lessons to show. Left out, its number.')),
  makes: optional(text('What its result is called. Left out, the work keeps its name.')),
  says: optional(text('The step in a sentence of your own, in place of the one made from the verb.')),
  times: optional(
    count(
      'How often it is done, each time with the next of every name: 8, or a formula. Left out, a result with a new name is made once.',
    ),
  ),
  now: optional(
    group(
      {
        width: optional(length('Its width after this step.')),
        height: optional(length('Its height after this step.')),
        round: optional(length('How long its opening is all round, along the edge, from seam to seam.')),
        within: optional(length('How far off it may be, where it is not exact. Left out, it is exact.')),
      },
      'What the work measures now; the kit checks it.',
    ),
  ),
  minutes: optional(number('How long one maker takes. Left out, it is estimated.')),
  tools: optional(names('Tools beside the usual ones.', { least: 0 })),
  foot: optional(text('The foot of the machine: edge foot. Left out, the usual one.')),
  'stitch length': optional(
    number('Length of its machine stitches in mm, as on the dial. Left out, what suits the layers that it sews.'),
  ),
  timer: optional(
    group(
      {
        press: optional(number('Seconds that the iron stays on one place.')),
        cool: optional(number('Seconds that the work lies still until it is cold.')),
      },
      'How long to press and to let cool, for the timers beside the machine: { press: 12, cool: 120 }. Left out, what the material says; where that says nothing, learners are sent to its maker.',
    ),
  ),
  'done by': optional(
    choice(['teacher', 'maker'], 'In a class: teacher, where it is done before the class begins; maker if left out.'),
  ),
  'keep with next': optional(yes('The next step follows at once: no session of a class ends between them.')),
  when: optional(options('Only with this option, or with all of these: [flap, snap].')),
  unless: optional(options('Only without this option, or without any of these: [flap, snap].')),
  note: optional(text('Your words to the learner.')),
  'should look': optional(text('How it looks when it is right, in your words.')),
  'if wrong': optional(text('What to do if it went wrong, in your words.')),
} as const;

/** What a step says beside its verb, lengths in mm. */
export type Always = ValuesOf<typeof always>;
